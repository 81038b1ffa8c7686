"""Keys on names of shapes, found again from what is said, by what leaves a shape as it is.

Which ways of renaming the corners keep all distances settles what a quadrilateral is: a square has
eight, a kite the one that keeps two corners. Nothing here looks at the figures' own readings.
"""

from __future__ import annotations

import random
import re
from fractions import Fraction
from itertools import permutations

import pytest

from itembank.figures.figure import words
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.notation import tree as t
from tests.depth import cases, whole
from tests.figures.grid_reader import Spot, grid_said
from tests.generators.asked_plainly import plain
from tests.generators.graphs.test_graphs_keys import text_of
from tests.generators.mistakes import each_mistake

COUNT = cases(45, 80, 80)


def square(a: Spot, b: Spot) -> Fraction:
    return (a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2


def kept(corners: list[Spot]) -> list[tuple[int, ...]]:
    """Return the ways round the corners that keep all distances."""
    count = len(corners)
    rounds = [
        tuple((start + way * k) % count for k in range(count))
        for start in range(count)
        for way in (1, -1)
    ]
    return [
        to
        for to in rounds
        if all(
            square(corners[i], corners[j]) == square(corners[to[i]], corners[to[j]])
            for i in range(count)
            for j in range(i)
        )
    ]


def area_twice(corners: list[Spot]) -> Fraction:
    pairs = zip(corners, [*corners[1:], corners[0]], strict=True)
    return sum((a[0] * b[1] - a[1] * b[0] for a, b in pairs), Fraction(0))


def slopes(corners: list[Spot]) -> list[tuple[Spot, Spot]]:
    return [*zip(corners, [*corners[1:], corners[0]], strict=True)]


def parallel(one: tuple[Spot, Spot], other: tuple[Spot, Spot]) -> bool:
    (a, b), (c, d) = one, other
    return (b[0] - a[0]) * (d[1] - c[1]) == (b[1] - a[1]) * (d[0] - c[0])


def convex(corners: list[Spot]) -> bool:
    signs = {area_twice([corners[k - 1], corners[k], corners[(k + 1) % 4]]) > 0 for k in range(4)}
    flat = any(
        area_twice([corners[k - 1], corners[k], corners[(k + 1) % 4]]) == 0 for k in range(4)
    )
    return len(signs) == 1 and not flat


def name_of(corners: list[Spot]) -> str:
    """Return the name that says most."""
    if len(corners) == 3:
        sides = sorted(square(a, b) for a, b in slopes(corners))
        gap = sides[2] - sides[0] - sides[1]
        return "right-angled" if gap == 0 else "obtuse-angled" if gap > 0 else "acute-angled"
    ways = kept(corners)
    fixed = sorted(sum(k == to for k, to in enumerate(way)) for way in ways)
    sides = slopes(corners)
    if not convex(corners):
        return ""
    found = {
        (0, 0, 0, 0, 0, 2, 2, 4): "square",
        (0, 0, 0, 4): "rectangle",
        (0, 2, 2, 4): "rhombus",
        (2, 4): "kite",
    }.get(tuple(fixed))
    if found:
        return found
    if fixed == [0, 4]:
        half = any(all(to == (k + 2) % 4 for k, to in enumerate(way)) for way in ways)
        return "parallelogram" if half else "isosceles trapezium"
    pairs = [parallel(sides[k], sides[k + 2]) for k in (0, 1)]
    return "trapezium" if any(pairs) else ""


def sampled(tier: Tier) -> list[Item]:
    topic = find_topic("geometry.shapes")
    chance = random.Random(f"shapes {tier}")
    return [topic.item(tier, k) for k in chance.sample(plain(topic, tier), COUNT)]


@whole
@pytest.mark.parametrize("tier", [Tier.SUPPORT, Tier.CORE])
def test_the_name_is_what_the_renamings_of_corners_give(tier: Tier) -> None:
    names = set()
    for item in sampled(tier):
        (corners,) = grid_said(words(item.figure)).shapes.values()
        names.add(name_of(corners))
        assert item.key == t.Label(name_of(corners)), item.address
        offered = re.split(", | or ", text_of(item).partition(": ")[2].rstrip("?"))
        assert {item.key.text, *(slip.wrong.text for slip in each_mistake(item))} == {*offered}
    assert len(names) >= 7


@whole
def test_one_point_alone_makes_the_shape_in_whatever_order() -> None:
    for item in sampled(Tier.CHALLENGE):
        at = grid_said(words(item.figure)).points
        text = text_of(item)
        wanted = re.search(r"makes a (\w+) with", text)[1]
        offered = re.findall(r"[P-S]", text.partition("makes")[0])
        fitting = [
            name
            for name in offered
            if any(
                name_of([*order, at[name]]) == wanted
                for order in permutations([at["A"], at["B"], at["C"]])
            )
        ]
        assert [item.key.text] == fitting, item.address


@whole
def test_mistakes_on_the_corner_are_what_the_wrong_ways_give() -> None:
    met = set()
    for item in sampled(Tier.CHALLENGE):
        at = grid_said(words(item.figure)).points
        (ax, ay), (bx, by), (cx, cy) = (at[name] for name in "ABC")
        kite = "kite" in text_of(item)
        ways = {
            "parallel-only": (ax + cx - bx, ay + cy - by) if kite else (bx + cx - ax, by + cy - ay),
            "straight-on": (2 * ax - bx, 2 * ay - by),
            "swaps-steps": (cx + ay - by, cy + ax - bx),
        }
        for slip in each_mistake(item):
            name = slip.misconception.id.removeprefix("geometry.shapes-")
            met.add(name)
            assert at[slip.wrong.text] == ways[name], (item.address, name)
    assert met == {"parallel-only", "straight-on", "swaps-steps"}
