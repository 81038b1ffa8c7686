"""A question's own working as a row of calculations."""

from __future__ import annotations

from itembank.items.item import Draft
from itembank.items.kinds.draft_worth import worth
from itembank.notation import tree as t

Calculation = tuple[t.Node, t.Node]
"""What is worked out in a line, and what it comes to."""


def value_of(answer: t.Node) -> t.Node:
    """Return the value that an answer gives: of *x = 3* the number."""
    return answer.rest[-1][1] if isinstance(answer, t.Relation) else answer


def calculations(asked: Draft) -> list[Calculation]:
    """Return the calculations of a working, or none where it is more than these.

    >>> from itembank.items.topics.registry import find_topic
    >>> from itembank.notation.line import line
    >>> topic = find_topic("statistics.mean")
    >>> [tier, *_] = topic.spaces
    >>> row = calculations(topic.make(tier, *topic.spaces[tier][0]))
    >>> [line(made) for _, made in row][-1]
    '6'
    """
    row = []
    for step in asked.steps:
        if step.maths is None:
            continue
        if not isinstance(step.maths, t.Relation):
            return []
        sides = [step.maths.first, *(side for _, side in step.maths.rest)]
        if any(sign != "=" for sign, _ in step.maths.rest):
            return []
        if isinstance(sides[0], t.Sym):
            del sides[0]
        if len(sides) < 2 or any(_no_calculation(side) for side in sides):
            return []
        row.append((sides[0], sides[-1]))
    if not row or worth(row[-1][1]) != worth(asked.key) or worth(row[-1][0]) != worth(asked.key):
        return []
    return row


def _no_calculation(side: t.Node) -> bool:
    return isinstance(side, t.Ratio) or bool(t.symbols(side) - {"π"})
