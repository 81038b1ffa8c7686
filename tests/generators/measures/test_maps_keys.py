"""Keys and likely mistakes on maps, worked out again in millimetres from the words alone."""

from __future__ import annotations

import random
import re
from fractions import Fraction

import pytest

from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.notation import tree as t
from itembank.notation.value import exact
from tests.depth import cases, whole
from tests.generators.graphs.test_graphs_keys import text_of
from tests.generators.mistakes import each_mistake, own_items

COUNT = cases(30, 80, 80)
MM = {"cm": 10, "km": 1_000_000}


def sampled(tier: Tier) -> list[Item]:
    topic = find_topic("measures.maps")
    return random.Random(f"maps {tier}").sample(list(own_items(topic, tier)), COUNT)


def lengths(text: str) -> list[tuple[Fraction, str]]:
    return [(Fraction(n), unit) for n, unit in re.findall(r"([\d.]+) (cm|km)(?!\^)", text)]


def in_units(node: t.Node) -> Fraction:
    assert isinstance(node, t.Quantity)
    return exact(t.children(node)[0])


class Asked:
    """What a question says: the factor from map to ground, and what is measured on one of them."""

    def __init__(self, item: Item) -> None:
        self.text = text_of(item)
        found = lengths(self.text)
        scale = re.search(r"1 : (\d+)", self.text)
        if scale:
            self.factor = Fraction(int(scale[1]))
        else:
            (_, _), (each, _), *found = found
            self.each = each
            self.factor = each * MM["km"] / MM["cm"]
        self.parts = [amount for amount, _ in found]
        self.area = re.search(r"([\d.]+) cm\^2", self.text)
        self.back = "on the map, in centimetres" in self.text

    def key(self) -> Fraction:
        if self.area:
            side = self.factor * MM["cm"] / MM["km"]
            return Fraction(self.area[1]) * side * side
        if self.back:
            return self.parts[0] * MM["km"] / self.factor / MM["cm"]
        return sum(self.parts) * MM["cm"] * self.factor / MM["km"]


WAYS = {
    "adds": lambda a: a.parts[0] + a.each,
    "divides": lambda a: a.parts[0] / a.each,
    "thousand": lambda a: a.key() * 10 if a.back else a.key() / 10,
    "thousand-in-kilometre": lambda a: a.key() / 100 if a.back else a.key() * 100,
    "one-part": lambda a: a.parts[-1] * a.factor / 100_000,
    "scale-once": lambda a: Fraction(a.area[1]) * a.factor / 100_000,
    "square-as-length": lambda a: Fraction(a.area[1]) * a.factor**2 / 100_000,
}


@whole
@pytest.mark.parametrize("tier", list(Tier))
def test_keys_are_what_the_words_give(tier: Tier) -> None:
    for item in sampled(tier):
        assert in_units(item.key) == Asked(item).key(), item.address


@whole
def test_mistakes_are_what_the_wrong_ways_give() -> None:
    met = set()
    for item in [item for tier in Tier for item in sampled(tier)]:
        for slip in each_mistake(item):
            name = slip.misconception.id.removeprefix("measures.maps-")
            met.add(name)
            assert in_units(slip.wrong) == WAYS[name](Asked(item)), (item.address, name)
    topic = find_topic("measures.maps")
    assert met == {m.id.removeprefix("measures.maps-") for m in topic.misconceptions}


@pytest.mark.parametrize(("scale", "centimetres"), [(25_000, 4), (50_000, 2), (20_000, 5)])
def test_a_kilometre_on_walking_maps(scale: int, centimetres: int) -> None:
    """4 cm on a 1 : 25 000 map, 2 cm on a 1 : 50 000 map (any map reader; common practice)."""
    found = [
        item
        for item in own_items(find_topic("measures.maps"), Tier.CORE)
        if item.twin[1:] == ("distance", scale, 4 * centimetres, 0)
    ]
    assert [in_units(item.key) for item in found] == [2]
