"""Plans and elevations: keys and mistakes from the words of the picture, by blocks of numpy."""

from __future__ import annotations

import re

import pytest

from itembank.figures.figure import words
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.notation.value import exact
from tests.figures.kinds.test_cube_plan import block
from tests.generators.graphs.test_graphs_keys import text_of
from tests.generators.mistakes import each_mistake, own_items


def seen(item: Item) -> dict[str, int]:
    solid = block(words(item.figure))
    return {
        "all": int(solid.sum()),
        "plan": int(solid.any(axis=2).sum()),
        "front": int(solid.any(axis=0).sum()),
        "side": int(solid.any(axis=1).sum()),
        "front row": int(solid[-1].sum()),
        "base": solid.shape[0] * solid.shape[1],
        "tall": int(solid.any(axis=(0, 1)).sum()),
    }


def answer(item: Item) -> int:
    text, found = text_of(item), seen(item)
    if "altogether" in text:
        return found["all"]
    if more := re.search(r"does the (front|side) elevation have than the (front|side)", text):
        return found[more[1]] - found[more[2]]
    if view := re.search(r"does the (front|side) elevation have\?", text):
        return found[view[1]]
    assert "to make a cuboid" in text
    return found["base"] * found["tall"] - found["all"]


@pytest.mark.parametrize("tier", list(Tier))
def test_a_block_of_cubes_gives_the_key(tier: Tier) -> None:
    items = list(own_items(find_topic("geometry.plans"), tier))
    assert len(items) >= 200
    for item in items:
        assert exact(item.key) == answer(item), item.address


def other(item: Item, found: dict[str, int]) -> int:
    return found["side" if "does the front" in text_of(item) else "front"]


WAYS = {
    "counts-squares": lambda item, found: found["plan"],
    "front-row": lambda item, found: found["front row"],
    "all-cubes": lambda item, found: found["all"],
    "other-side": other,
    "whole-cuboid": lambda item, found: found["base"] * found["tall"],
    "one-layer-less": lambda item, found: found["base"] * (found["tall"] - 1) - found["all"],
    "added": lambda item, found: found["front"] + found["side"],
    "only-first": lambda item, found: max(found["front"], found["side"]),
}


def test_mistakes_lead_where_they_are_said_to() -> None:
    met = set()
    for tier in Tier:
        for item in own_items(find_topic("geometry.plans"), tier):
            found = seen(item)
            for slip in each_mistake(item):
                name = slip.misconception.id.removeprefix("geometry.plans-")
                met.add(name)
                assert exact(slip.wrong) == WAYS[name](item, found), (item.address, name)
    assert met == set(WAYS)
