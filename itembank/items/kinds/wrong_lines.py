"""Spot the mistake: a worked solution in which one line does not follow."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from itembank.items.asks.faulty_line import FaultyLine, line_name
from itembank.items.item import Draft, Misconception, Slip, Step
from itembank.items.kinds.lot import lot
from itembank.items.kinds.mistakes import OTHER_LINE
from itembank.items.wrong_answers import told_apart
from itembank.notation import tree as t

NAMES = (
    "Aisha", "Ben", "Chidi", "Dev", "Ewa", "Farid", "Grace", "Hana", "Ivan", "Jamal", "Kemi",
    "Leo", "Mei", "Nadia", "Omar", "Priya", "Rosa", "Sam", "Tariq", "Yusuf", "Zoe",
)  # fmt: skip
"""Those whose solutions are looked at: plain first names from many backgrounds."""

Does = Literal["works out", "solves", "simplifies", "expands", "factorises"]


def spot_the_mistake(
    question: t.Node,
    lines: Sequence[t.Node],
    wrong: int,
    right: t.Node,
    *,
    mistake: Misconception,
    steps: tuple[Step, ...],
    twin: tuple[object, ...],
    does: Does = "works out",
) -> Draft:
    r"""Return the question which line of a solution is wrong, and what the answer should be.

    Parameters
    ----------
    question, lines
        What is worked out or solved, and the lines that lead on from it, two to four.
    wrong
        The number of the line that does not follow from the one before, from 1; those after it
        follow from it.
    right
        What the question comes to.
    mistake
        The mistake of that line.
    steps, twin
        The working as it should be, and what tells the question from others.
    does
        What is done: an equation is solved, and nothing else is.

    >>> from itembank.notation import parse
    >>> across = Misconception("m.across", "adds across", "What is 1/2 + 1/2?")
    >>> made = spot_the_mistake(
    ...     parse("1/2 + 1/3"), (parse("3/6 + 2/6"), parse("5/12")), 2, parse("5/6"),
    ...     mistake=across, steps=(), twin=(2, 3),
    ... )
    >>> made.key.parts[0].text, made.prompt[-1]
    ('line 2', '\nWhich line is wrong? What should the answer be?')
    """
    key = t.Listing((line_name(wrong), right))
    # A line that follows is blamed where what is wrong shows: mostly in the last one.
    blamed = len(lines) if wrong < len(lines) else wrong - 1
    runs: list[str | t.Node] = [f"{NAMES[lot(len(NAMES), twin)]} {does} ", question]
    for number, line in enumerate(lines, start=1):
        runs += [f"{'.' if number == 1 else ''}\nLine {number}:\u00a0", line]
    return Draft(
        (*runs, "\nWhich line is wrong? What should the answer be?"),
        FaultyLine(question, tuple(lines)),
        key,
        "line-and-result",
        (Step(f"Line {wrong} does not follow from the line before. Put right:"), *steps),
        told_apart(
            (
                Slip(mistake, t.Listing((line_name(wrong), lines[-1]))),
                Slip(OTHER_LINE, t.Listing((line_name(blamed), right))),
            )
        ),
        ("spot the mistake", *twin),
        2,
    )
