"""How many marks a question is worth, and which lines of its working earn them.

The rule:

* a question whose solution takes one or two lines is worth one mark;
* a longer one is worth a mark for every two lines, an odd line at the end counting as two: three
  or four lines are two marks, five or six three, seven or eight four;
* the last mark is for the answer; the others, the *method marks*, are spread evenly over the
  lines, each for the working as far as its line.

A line is a step that gives mathematics which the question does not print already: to copy the
question earns nothing. To write in one row what the lines above have found is no line more, but it
is the answer, so the last mark stands there. Whoever writes a question may state other marks;
these are spread in the same way. That a mark is given for a step of method and the last for the
answer is common practice in English mark schemes; how many lines make a mark is a rule of our own,
no source.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from itembank.items.item import Run, Step
from itembank.notation import tree as t

LINES_FOR_ONE = 2


def marks_for(lines: int) -> int:
    """Return how many marks a solution of so many lines is worth.

    >>> [marks_for(lines) for lines in range(9)]
    [1, 1, 1, 2, 2, 3, 3, 4, 4]
    """
    return 1 if lines <= LINES_FOR_ONE else -(-lines // LINES_FOR_ONE)


def working_lines(prompt: Iterable[Run], steps: Sequence[Step]) -> list[int]:
    """Return the places of the steps that count as lines of working.

    >>> from itembank.notation.tree import Int, add, equals
    >>> asked = add(Int(2), Int(3))
    >>> working_lines(("Work out ", asked), (Step("Copy.", asked), Step("Look."),
    ...                                      Step("Add.", equals(asked, Int(5)))))
    [2]
    """
    known: set[t.Node] = {run for run in prompt if not isinstance(run, str)}
    lines = []
    for place, step in enumerate(steps):
        if step.maths is None or step.maths in known:
            continue
        gathers = isinstance(step.maths, t.Listing) and set(step.maths.parts) <= known
        known.add(step.maths)
        if isinstance(step.maths, t.Relation):
            known.add(step.maths.rest[-1][1])
        if not gathers:
            lines.append(place)
    return lines


def spread(marks: int, lines: int) -> list[int]:
    """Return how many marks each line earns, the last line's being for the answer.

    With more marks than lines every line earns one and the answer the rest.

    >>> spread(2, 3), spread(4, 8), spread(1, 2), spread(3, 1), spread(2, 0)
    ([0, 1, 1], [0, 1, 0, 1, 0, 1, 0, 1], [0, 1], [3], [])
    """
    if marks > lines:
        return [*[1] * (lines - 1), marks - lines + 1] if lines else []
    earned = [0] * lines
    for number in range(1, marks + 1):
        earned[-(-number * lines // marks) - 1] += 1
    return earned


def usual_marks(prompt: Iterable[Run], steps: Sequence[Step]) -> int:
    """Return how many marks a question is worth by the rule above."""
    return marks_for(len(working_lines(prompt, steps)))


def step_marks(prompt: Iterable[Run], steps: Sequence[Step], marks: int) -> list[int]:
    """Return the marks that each step earns of those that a question is worth.

    All of them are 0 where one mark, or no line of working, leaves nothing to tell.

    >>> from itembank.items.topics.registry import find_item
    >>> item = find_item("equations.both-sides/core/3")
    >>> item.marks, step_marks(item.prompt, item.steps, item.marks)
    (2, [0, 1, 1])
    """
    by_step = [0] * len(steps)
    if marks > 1:
        lines = working_lines(prompt, steps)
        for place, earned in zip(lines, spread(marks, len(lines)), strict=True):
            by_step[place] = earned
        last = max(
            (place for place, step in enumerate(steps) if step.maths is not None), default=-1
        )
        if lines and last > lines[-1]:
            by_step[lines[-1]] -= 1
            by_step[last] += 1
    return by_step
