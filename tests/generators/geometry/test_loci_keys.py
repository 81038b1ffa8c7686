"""Keys and mistakes on points at a distance, found again with square roots, from what is said."""

from __future__ import annotations

import random
import re
from math import hypot

import pytest

from itembank.figures.figure import words
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.notation import tree as t
from tests.depth import cases, whole
from tests.figures.grid_reader import grid_said
from tests.generators.asked_plainly import plain
from tests.generators.graphs.test_graphs_keys import text_of
from tests.generators.mistakes import each_mistake

COUNT = cases(30, 80, 80)
At = dict[str, tuple[float, float]]


def sampled(tier: Tier) -> list[Item]:
    topic = find_topic("geometry.loci")
    chance = random.Random(f"loci {tier}")
    return [topic.item(tier, k) for k in chance.sample(plain(topic, tier), COUNT)]


def placed(item: Item) -> At:
    points = grid_said(words(item.figure)).points
    return {name: (float(x), float(y)) for name, (x, y) in points.items()}


def far(at: At, one: str, other: str) -> float:
    (a, b), (c, d) = at[one], at[other]
    return hypot(a - c, b - d)


def units(text: str) -> int:
    return int(re.search(r"than (\d) units", text)[1])


def fits(text: str, at: At, name: str) -> bool:
    found = True
    if "as far from A as from B" in text:
        found = abs(far(at, name, "A") - far(at, name, "B")) < 1e-9
    if "nearer to A than to B" in text:
        found = far(at, name, "A") < far(at, name, "B") - 1e-9
    if "units" in text:
        found = found and far(at, name, "A") < units(text) - 1e-9
    return found


@whole
@pytest.mark.parametrize("tier", list(Tier))
def test_one_point_alone_lies_there(tier: Tier) -> None:
    for item in sampled(tier):
        at, text = placed(item), text_of(item)
        assert [t.Label(name) for name in "PQR" if fits(text, at, name)] == [item.key], item.address


def on_line(at: At, name: str) -> bool:
    (a, b), (c, d), (e, f) = at["A"], at["B"], at[name]
    return abs((c - a) * (f - b) - (d - b) * (e - a)) < 1e-9


def longer_way(at: At, name: str) -> float:
    (a, b), (c, d) = at["A"], at[name]
    return max(abs(a - c), abs(b - d))


WAYS = {
    "circle": lambda text, at, name: abs(far(at, name, "A") - far(at, "A", "B")) < 1e-9,
    "on-line": lambda text, at, name: on_line(at, name),
    "longer-way": lambda text, at, name: longer_way(at, name) < units(text) < far(at, name, "A"),
    "more": lambda text, at, name: far(at, name, "A") > units(text),
    "first-only": lambda text, at, name: (
        far(at, name, "A") < far(at, name, "B") and far(at, name, "A") > units(text)
    ),
    "second-only": lambda text, at, name: (
        far(at, name, "A") > far(at, name, "B") and far(at, name, "A") < units(text)
    ),
}


@whole
def test_mistakes_lead_to_the_points_that_are_named() -> None:
    met = set()
    for item in [item for tier in Tier for item in sampled(tier)]:
        at, text = placed(item), text_of(item)
        for slip in each_mistake(item):
            name = slip.misconception.id.removeprefix("geometry.loci-")
            met.add(name)
            assert WAYS[name](text, at, slip.wrong.text), (item.address, name)
    topic = find_topic("geometry.loci")
    told = {"half-gap", "adds-ways"}  # shown by questions in words alone
    assert met | told == {m.id.removeprefix("geometry.loci-") for m in topic.misconceptions}
