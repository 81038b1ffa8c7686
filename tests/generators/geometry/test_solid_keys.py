"""Solids: keys found again in ball arithmetic from the printed words alone."""

from __future__ import annotations

import random
import re

import pytest

from itembank.items.item import Tier
from itembank.items.topics.registry import find_topic
from tests.balls import arb
from tests.depth import cases, whole
from tests.generators.asked_plainly import plain
from tests.generators.geometry.measured_again import Solver, Worth, amounts, holds, text_of

EACH = cases(20, 50, 50)


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


def cylinder(text: str) -> Worth:
    pi, given = arb.pi(), amounts(text)
    if "poured" in text:
        first, deep, second = given
        return Worth(first**2 * deep / second**2, 1)
    if "has a volume of" in text:
        volume, other = given
        if "its height" in text:
            assert "a radius of" in text
            return Worth(volume / pi / other**2, 1)
        r = (volume / pi / other).sqrt()
        return Worth(2 * r if "its diameter" in text else r, 1)
    across, high = given
    assert ("diameter" in text) != ("radius" in text)
    r = across / 2 if "diameter" in text else across
    around = 2 * pi * r * high
    if "curved surface area" in text:
        return Worth(around, 2)
    if "total surface area" in text:
        return Worth(around + 2 * pi * r * r, 2)
    assert "volume" in text or "litres" in text
    return Worth(pi * r * r * high, 3)


def surface(text: str) -> Worth:
    given = amounts(text)
    if "net of a cuboid" in text:
        return Worth(sum((2 * given[k] * given[k + 1] for k in (0, 2, 4)), arb(0)), 2)
    if "without a lid" in text:
        a, b, c = given
        return Worth(a * b + 2 * c * (a + b), 2)
    if "square base" in text:
        side, whole = given
        return Worth(side * side * (whole - 2 * side * side) / (4 * side), 3)
    if "has a surface area" in text:
        edge = (given[0] / 6).sqrt()
        return Worth(edge**3, 3) if "its volume" in text else Worth(edge, 1)
    if "triangle" in text:
        w, h, slope, long = given
        assert abs(w * w + h * h - slope * slope) < arb("1e-30")
        return Worth(w * h + (w + h + slope) * long, 2)
    a, b, c = given
    return Worth(2 * (a * b + b * c + c * a), 2)


SOLVERS: dict[str, Solver] = {
    "geometry.volume-of-cuboids": cuboid,
    "geometry.volume-of-prisms": prism,
    "geometry.cylinders": cylinder,
    "geometry.surface-area": surface,
}


@whole
@pytest.mark.parametrize("topic", SOLVERS)
@pytest.mark.parametrize("tier", list(Tier))
def test_a_key_is_found_again_from_the_words(topic: str, tier: Tier) -> None:
    source = find_topic(topic)
    own = plain(source, tier)
    asked: set[bool] = set()
    for index in random.Random(f"{topic}/{tier}").sample(own, EACH):
        item = source.item(tier, index)
        asked.add("surface area" in text_of(item))
        holds(item, SOLVERS[topic](re.sub(r"\[A cuboid is", "[", text_of(item))))
    if topic == "geometry.cylinders":
        assert asked == ({False} if tier is Tier.SUPPORT else {False, True})
