"""A line of working starts where the line before it ended, where one thing is worked out."""

from __future__ import annotations

import random
from itertools import pairwise

import pytest

from itembank.items.item import Find, Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.notation import line
from itembank.notation import tree as t
from tests.depth import cases, whole

CHAINED = (
    *("fractions.add-like", "fractions.add-unlike", "fractions.add-mixed", "fractions.multiply"),
    *("fractions.divide", "fractions.lowest-terms", "fractions.improper-mixed"),
    *("fractions.of-quantity", "ratio.simplest-form", "ratio.unit-form"),
)
SAMPLE = cases(60, 240, 240)


def sides(item: Item) -> list[list[str]]:
    """Return the sides of each line of working that says two things are equal."""
    return [
        [line(step.maths.first), *(line(side) for _, side in step.maths.rest)]
        for step in item.steps
        if isinstance(step.maths, t.Relation)
    ]


@whole
@pytest.mark.parametrize("name", CHAINED)
def test_each_line_starts_where_the_line_before_ended(name: str) -> None:
    topic = find_topic(name)
    seen = 0
    for tier in Tier:
        own = topic.spaces[tier].own
        for index in random.Random(str(tier)).sample(own, min(SAMPLE, len(own))):
            item = topic.item(tier, index)
            if not isinstance(item.ask, Find) or item.ask.relations:
                continue
            lines = sides(item)
            assert lines[0][0] == line(item.ask.target), item.address
            for before, after in pairwise(lines):
                assert before[-1] == after[0], (item.address, before, after)
            assert lines[-1][-1] == line(item.key), item.address
            seen += 1
    # Of `fractions.of-quantity` it is half of one tier: the rest has a picture, or goes backwards.
    assert seen > SAMPLE * 5 // 12


@whole
def test_amounts_keep_their_unit_to_the_end() -> None:
    # An answer with a unit comes from a last line that has it.
    for name in ("ratio.share", "ratio.one-part", "ratio.difference", "ratio.proportion"):
        topic = find_topic(name)
        for tier in Tier:
            own = topic.spaces[tier].own
            for index in random.Random(str(tier)).sample(own, min(SAMPLE, len(own))):
                item = topic.item(tier, index)
                shown = [side for sides_ in sides(item) for side in sides_[-1:]]
                assert all(part in shown for part in line(item.key).split(", ")), item.address
