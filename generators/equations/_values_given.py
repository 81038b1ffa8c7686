"""A value of the letter for which an inequality is true: any that fits is right."""

from __future__ import annotations

from fractions import Fraction
from math import ceil, floor
from typing import Any

from itembank.items.asks.give import Give
from itembank.items.item import Draft, Misconception, Step, Tier, prompt
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips, told_apart
from itembank.notation import tree as t
from itembank.notation.value import exact

BOUND_COUNTS = Misconception(
    "equations.inequality-bound-counts",
    "takes the number at the end to fit where it does not",
    "Put your number into both sides. Is one side less than the other, or are they equal?",
)


def _fits(solved: t.Relation, value: int) -> bool:
    (op, side), bound = solved.rest[0], exact(solved.rest[0][1])
    assert side is not None
    return {
        "<": value < bound,
        ">": value > bound,
        "≤": value <= bound,
        "≥": value >= bound,
    }[op]


def _whole_beyond(solved: t.Relation) -> int:
    """Return the first whole number that fits, and is not the bound itself."""
    op, bound = solved.rest[0][0], Fraction(exact(solved.rest[0][1]))
    return ceil(bound) - 1 if op in "<≤" else floor(bound) + 1


def _wrong(asked: Draft, key: t.Relation) -> list[tuple[Misconception, int]]:
    """Return the numbers that fit what comes of a mistake, and not the question."""
    found: list[tuple[Misconception, int]] = []
    if key.rest[0][0] in "<>":
        found.append((BOUND_COUNTS, int(exact(key.rest[0][1]))))
    for slip in told_apart(asked.slips):
        if isinstance(slip.wrong, t.Relation):
            value = _whole_beyond(slip.wrong)
            if not _fits(key, value) and value not in [number for _, number in found]:
                found.append((slip.misconception, value))
    return found


def value_given(topic: Topic, tier: Tier, of: tuple[Any, ...]) -> Draft:
    """Return the question for one value that makes an inequality of the topic true."""
    asked = topic.make(tier, *of)
    key = asked.key
    assert isinstance(key, t.Relation)
    (relation,) = (run for run in asked.prompt if isinstance(run, t.Relation))
    x = key.first
    assert isinstance(x, t.Sym)
    value = _whole_beyond(key)
    return Draft(
        prompt("Write down a value of {x} for which {e}.", x=x, e=relation),
        Give((x,), (relation,)),
        t.num(value),
        "value",
        (*asked.steps, Step("Any number that fits this will do, such as:", t.num(value))),
        slips(*_wrong(asked, key)),
        ("a value", *asked.twin),
    )


def with_values(spaces: dict[Tier, Space], name: str, count: int = 100) -> dict[Tier, Space]:
    """Return the spaces of a topic, with inequalities that ask for one value at their ends.

    `name` is the topic's id. An inequality of which no two mistakes are seen is left out.
    """

    def kept(tier: Tier) -> Any:
        def keep(of: tuple[Any, ...]) -> bool:
            from itembank.items.topics.registry import find_topic

            asked = find_topic(name).make(tier, *of)
            assert isinstance(asked.key, t.Relation)
            return len(_wrong(asked, asked.key)) > 1

        return keep

    return {
        tier: space.also(value_given, kept(tier), of=space.some(count))
        for tier, space in spaces.items()
    }
