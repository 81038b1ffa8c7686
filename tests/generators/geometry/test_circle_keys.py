"""Circles: keys found again in ball arithmetic from the printed words alone."""

from __future__ import annotations

import random
import re

import pytest

from itembank.items.item import Tier
from itembank.items.topics.registry import find_topic
from tests.balls import arb
from tests.depth import cases, whole
from tests.generators.asked_plainly import plain
from tests.generators.geometry.measured_again import (
    Solver,
    Worth,
    after,
    amount,
    amounts,
    holds,
    text_of,
)

EACH = cases(20, 50, 50)


def radius(text: str) -> arb:
    """Return the radius of the one circle that is spoken of."""
    if "radius" in text and "Work out its radius" not in text:
        return after(text, "the radius|a radius of|radius")
    return after(text, "the diameter|a diameter of|diameter") / 2


def circumference(text: str) -> Worth:
    pi = arb.pi()
    if "wheel" in text:
        turns = re.search(r"turns (\d+) times", text)
        assert turns
        return Worth(pi * amounts(text)[0] * int(turns[1]), 1)
    if "semicircle" in text:
        across = amounts(text)[0]
        return Worth(pi * across / 2 + across, 1)
    if back := re.search(r"its (radius|diameter)\.", text):
        around = amounts(text)[0]
        return Worth(around / pi / (2 if back[1] == "radius" else 1), 1)
    if "arc" in text:
        degrees = re.search(r"the angle (\d+) degrees", text)
        assert degrees
        return Worth(2 * pi * radius(text) * int(degrees[1]) / 360, 1)
    assert "circumference" in text
    return Worth(2 * pi * radius(text), 1)


def area(text: str) -> Worth:
    pi = arb.pi()
    if back := re.search(r"Work out its (radius|diameter|circumference)\.", text):
        r = (amounts(text)[0] / pi).sqrt()
        return Worth({"radius": r, "diameter": 2 * r, "circumference": 2 * pi * r}[back[1]], 1)
    if "goes all the way" in text:
        inner, wide = amounts(text)[:2]
        return Worth(pi * (wide * wide + 2 * inner * wide), 2)
    if "largest circle" in text:
        side = amounts(text)[0]
        return Worth(side * side * (1 - pi / 4), 2)
    degrees = re.search(r"the angle (\d+) degrees", text)
    named = re.search(r"area of the (circle|semicircle|quarter circle|sector)", text)
    part = int(degrees[1]) if degrees else 360
    if named:
        assert {"circle": 360, "semicircle": 180, "quarter circle": 90}.get(named[1], part) == part
    return Worth(pi * radius(text) ** 2 * part / 360, 2)


SOLVERS: dict[str, Solver] = {
    "geometry.circumference": circumference,
    "geometry.area-of-circles": area,
}


@whole
@pytest.mark.parametrize("topic", SOLVERS)
@pytest.mark.parametrize("tier", list(Tier))
def test_a_key_is_found_again_from_the_words(topic: str, tier: Tier) -> None:
    source = find_topic(topic)
    own = plain(source, tier)
    for index in random.Random(f"{topic}/{tier}").sample(own, EACH):
        item = source.item(tier, index)
        holds(item, SOLVERS[topic](text_of(item)))


def test_an_amount_is_read_with_its_unit() -> None:
    assert abs(amount(("5", "π", "cm^2")) - arb.pi() * 5 / 10000) < arb("1e-30")
