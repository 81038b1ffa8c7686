"""Congruent triangles: keys from what the words tell, by making every triangle that fits."""

from __future__ import annotations

import itertools
import math
import re

import pytest

from itembank.figures.figure import words
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.notation import line
from itembank.notation import tree as t
from tests.depth import only_whole, some, whole
from tests.figures.kinds.test_two_triangles import Rebuilt, certain, letters, rebuilt, triangles
from tests.generators.graphs.test_graphs_keys import text_of
from tests.generators.mistakes import declared_ones

pytestmark = whole
TOPIC = "geometry.congruent-triangles"


def items(tier: Tier) -> list[Item]:
    topic = find_topic(TOPIC)
    return [topic.item(tier, k) for k in some(topic.spaces[tier].own, 60)]


def name_of(told: Rebuilt) -> str:
    """Return the condition that three labels of each make, by how many sides there are."""
    sides = sum(len(name) == 2 for name in told)
    if sides == 2:
        (corner,) = (name for name in told if len(name) == 1)
        hypotenuse = told[corner] == 90 and any(corner not in name for name in told)
        return "RHS" if hypotenuse else "SAS"
    return {3: "SSS", 1: "ASA"}[sides]


def solved(item: Item) -> str:
    text, said = text_of(item), words(item.figure)
    first, second = rebuilt(said)
    if "Which condition" in text:
        return name_of(first) if certain(item.figure) else "none"
    wanted = re.search(r"(?:length of|angle) (\w+)\.", text)[1]
    bare = {name: size for name, size in first.items() if size in second.values()}
    mine = triangles(bare, letters(first, said, 0))
    theirs = triangles(second, letters(second, said, 1))
    assert len(mine) == len(theirs) == 1
    pairings = [
        dict(zip(letters(second, said, 1), order, strict=True))
        for order in itertools.permutations(letters(first, said, 0))
        if all(
            math.isclose(theirs[0][k], mine[0][letters(first, said, 0).index(corner)])
            for k, corner in enumerate(order)
        )
    ]
    (goes,) = pairings
    partner = "".join(sorted(goes[corner] for corner in wanted))
    if partner in first:
        return f"{first[partner]:g}"
    known = {corner: size for corner, size in first.items() if len(corner) == 1}
    return f"{180 - sum(known.values()):g}"


@pytest.mark.parametrize("tier", Tier)
def test_every_key_is_found_again_from_the_words(tier: Tier) -> None:
    for item in items(tier):
        key = item.key.text if isinstance(item.key, t.Label) else line(item.key).rstrip("°")
        assert solved(item) == key, item.address


def test_every_condition_comes_and_none_does_too() -> None:
    keys = {i.key.text for tier in Tier for i in items(tier) if isinstance(i.key, t.Label)}
    assert keys == {"SSS", "SAS", "ASA", "RHS", "none"}


@only_whole
def test_every_mistake_is_met() -> None:
    topic = find_topic(TOPIC)
    met = {name for name, _ in declared_ones(topic)}
    assert met == {mistake.id for mistake in topic.misconceptions}


ALWAYS = {
    "only-sss": "none", "needs-an-angle": "none", "no-third-angle": "none", "any-angle": "SAS",
    "counts-sides": "SAS", "any-side": "ASA", "angles-are-enough": "ASA", "three-is-sss": "SSS",
    "right-is-rhs": "RHS",
}  # fmt: skip


@pytest.mark.parametrize("tier", Tier)
def test_mistakes_lead_where_they_are_said_to(tier: Tier) -> None:
    topic = find_topic(TOPIC)
    for index in some(topic.spaces[tier].own, 60):
        item, values = topic.item(tier, index), topic.spaces[tier][index]
        first, second = rebuilt(words(item.figure))
        known = [size for name, size in second.items() if len(name) == 1]
        for slip in topic.draft(tier, *values).slips:
            name = slip.misconception.id.removeprefix("geometry.")
            wrong = slip.wrong.text if isinstance(slip.wrong, t.Label) else line(slip.wrong)
            shown = f"{wrong.rstrip('°')}"
            if name in ALWAYS:
                assert wrong == ALWAYS[name]
            elif name == "mixed-letters":
                assert wrong in ("SAS", "ASA")
                assert wrong != item.key
            elif name in ("letters-in-order", "has-a-partner", "stops-at-partner"):
                assert float(shown) in first.values()
            elif name == "ends-swapped":
                angles = [size for part, size in first.items() if len(part) == 1]
                assert float(shown) == 180 - sum(angles)
            elif name == "angles-alike":
                assert float(shown) == 180 / 3
            elif name == "left-to-180":
                assert float(shown) == 180 - float(line(item.key).rstrip("°"))
            else:
                assert name == "congruent-adds-and-stops"
                extra = [size for part, size in first.items() if len(part) == 1]
                assert float(shown) == sum(extra)
                assert {*known} <= {*extra}
