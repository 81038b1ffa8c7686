"""Solids: keys found again in ball arithmetic from the printed words alone."""

from __future__ import annotations

import random
import re

import pytest
from flint import arb

from itembank.items.item import Tier
from itembank.items.topics.registry import find_topic
from tests.generators.measured_again import Solver, Worth, amounts, holds, text_of

EACH = 50


def cuboid(text: str) -> Worth:
    given = amounts(text)
    if "How many fit" in text:
        counts = [given[k] / given[k + 3] for k in range(3)]
        for count in counts:
            assert abs(count - round(float(count))) < arb("1e-30"), text  # they fit whole
        return Worth(counts[0] * counts[1] * counts[2])
    if "How deep" in text:
        long, wide, water = given
        return Worth(water / long / wide, 1)
    if "How long is each edge" in text:
        return Worth(given[0].root(3), 1)
    if "has a volume of" in text:
        volume, first, other = given
        said = {word for word in ("height", "width", "length") if f"its {word}" in text}
        known = {"wide": "width", "high": "height", "long": "length"}
        # The edge that is asked for is the one that is not given.
        assert said == {*known.values()} - {known[w] for w in known if f" {w}" in text}
        return Worth(volume / first / other, 1)
    a, b, c = given
    return Worth(a * b * c, 3)


def prism(text: str) -> Worth:
    given = amounts(text)
    if "trapezium" in text:
        a, b, h, long = given
        return Worth((a + b) * h * long / 2, 3)
    if "height of the triangle" in text and "has a volume" in text:
        volume, long, base = given
        return Worth(volume / long / base * 2, 1)
    if "How long is the prism" in text:
        volume, end = given
        return Worth(volume / end, 1)
    if "has an area of" in text:
        end, long = given
        return Worth(end * long, 3)
    assert "triangle" in text
    base, high, long = given
    return Worth(base * high * long / 2, 3)


SOLVERS: dict[str, Solver] = {
    "geometry.volume-of-cuboids": cuboid,
    "geometry.volume-of-prisms": prism,
}


@pytest.mark.parametrize("topic", SOLVERS)
@pytest.mark.parametrize("tier", list(Tier))
def test_a_key_is_found_again_from_the_words(topic: str, tier: Tier) -> None:
    source = find_topic(topic)
    size = len(source.spaces[tier])
    for index in random.Random(f"{topic}/{tier}").sample(range(size), EACH):
        item = source.item(tier, index)
        holds(item, SOLVERS[topic](re.sub(r"\[A cuboid is", "[", text_of(item))))
