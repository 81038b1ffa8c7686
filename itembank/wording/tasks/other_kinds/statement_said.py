"""Reads a statement that says what a question asks for: the question, and the answer it gives.

*True or false? The area of the triangle is 24 cm².* says of a question that some wording reads,
*What is the area of the triangle?*, what its answer is.

>>> from itembank.notation import parse
>>> said = statement_said(("True or false? The mode is ", parse("3"), ". Be ready to say why."))
>>> said.questions[0]
('What is the mode?',)
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import NamedTuple

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.text.late_pattern import late
from itembank.wording.tasks.other_kinds.kinds_said import WHY

Runs = tuple[Run, ...]

ASKED = ("What {be} {thing}?", "Work out {thing}.", "Find {thing}.", "Write down {thing}.")
"""The questions that a statement may answer, in the order in which they are tried."""

_BEGINS = late(r"\btrue or false\? ", re.I)
_END = late(rf"[.!]{WHY}", re.I)
_IS = late(r"(?P<thing>.*) (?P<be>is|are) ", re.S)
_STOPS = late(r"[.?!;:]")


class StatementSaid(NamedTuple):
    """An answer, and the prompts that may ask for it: the first that is understood does."""

    answer: t.Node
    questions: tuple[Runs, ...]


def statement_said(runs: Sequence[Run]) -> StatementSaid | None:
    """Return what a statement says, and of which questions; None where it is no such statement.

    >>> from itembank.notation import parse
    >>> statement_said(("True or false? The mode is not ", parse("3"), ".")) is None
    True
    """
    starts = [
        (place, found)
        for place, run in enumerate(runs)
        if isinstance(run, str)
        for found in _BEGINS.finditer(_spaced(run))
    ]
    if len(starts) != 1:
        return None
    place, found = starts[0]
    run = _spaced(str(runs[place]))
    before = joined((*runs[:place], run[: found.start()].rstrip()))
    after = joined((run[found.end() :], *runs[place + 1 :]))
    if before and not (isinstance(before[-1], str) and before[-1].endswith((".", "?"))):
        return None
    return _statement(before, after)


def _spaced(words: str) -> str:
    return re.sub(r"\s", " ", words)


def _statement(before: Runs, after: Runs) -> StatementSaid | None:
    if len(after) < 3:
        return None
    *thing, last, answer, end = after
    if isinstance(answer, str) or not (isinstance(last, str) and isinstance(end, str)):
        return None
    found = _IS.fullmatch(_spaced(last))
    if found is None or not _END.fullmatch(_spaced(end)):
        return None
    words: list[Run] = [*thing, found["thing"]]
    if any(isinstance(run, str) and _STOPS.search(run) for run in words):
        return None
    first = words[0]
    if not isinstance(first, str) or not first[:1].isalpha():
        return None
    words[0] = first[0].lower() + first[1:]
    return StatementSaid(
        answer, tuple(_asking(before, form, found["be"], tuple(words)) for form in ASKED)
    )


def _asking(before: Runs, form: str, be: str, thing: Runs) -> Runs:
    opening, _, closing = form.format(be=be, thing="\0").partition("\0")
    return joined((*before, " " if before else "", opening, *thing, closing))


def joined(runs: Sequence[Run]) -> Runs:
    """Return runs with neighbouring words made one, and none that is empty.

    >>> joined(("What is ", "", "the mode?"))
    ('What is the mode?',)
    """
    made: list[Run] = []
    for run in runs:
        last = made[-1] if made else None
        if isinstance(run, str) and isinstance(last, str):
            made[-1] = last + run
        elif run != "":
            made.append(run)
    return tuple(made)
