"""Keys of transformation topics found again from what is printed and said.

Images are found by walking the grid: an image is the one place that stands as the transformation
says (as far from the mirror, at a right angle to it; as far from the centre; so many times as
far). Nothing here uses the figures' own readings.
"""

from __future__ import annotations

import random
import re
from collections.abc import Callable, Iterator
from fractions import Fraction
from itertools import product

import pytest

from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.notation.line import line
from tests.figures.grid_reader import GridSaid, Spot
from tests.generators.graphs.test_graphs_keys import COUNT, numbers, seen, text_of, written

Fits = Callable[[Spot, Spot], bool]


def everywhere() -> Iterator[Spot]:
    yield from product(range(-40, 41), repeat=2)


def plain(value: Fraction) -> Fraction | int:
    """Return a whole number as one: thousands of places are tried, and fractions are slow."""
    return value.numerator if value.denominator == 1 else value


def pairs_of(said: GridSaid) -> list[tuple[Spot, Spot]]:
    """Return each corner of shape P with the one of shape Q that it went to."""
    shapes = ([tuple(map(plain, at)) for at in said.shapes[name]] for name in "PQ")
    return [*zip(*shapes, strict=True)]


def told(text: str) -> Fits:
    """Return whether a place and an image fit what a transformation says."""
    if found := re.search(r"translation of (.+)", text):
        across = up = 0
        for count, way in re.findall(r"(\d+) squares? (\w+)", found[1]):
            size = int(count) * (1 if way in ("right", "up") else -1)
            across, up = (across + size, up) if way in ("left", "right") else (across, up + size)
        return lambda p, q: (q[0] - p[0], q[1] - p[1]) == (across, up)
    if found := re.search(r"reflection in the (?:line )?(.+)", text):
        said = {"x-axis": "y = 0", "y-axis": "x = 0"}.get(found[1], found[1])
        if said == "y = x":
            # The middle is on the line, and the way there goes one down for one along.
            return lambda p, q: p[0] + q[0] == p[1] + q[1] and q[0] - p[0] == p[1] - q[1]
        letter, _, value = said.partition(" = ")
        at, k = "xy".index(letter), Fraction(value)
        double = plain(2 * k)
        return lambda p, q: p[1 - at] == q[1 - at] and p[at] + q[at] == double
    found = re.search(r"rotation of (\d+)°(?: (\w+))? about (.+)", text)
    if found:
        centre = place(found[3])
        clockwise = found[2] == "clockwise"
        return lambda p, q: turns(p, q, centre, int(found[1]), clockwise)
    found = re.search(r"scale factor (\d+), centre (.+)", text)
    assert found, text
    k, centre = int(found[1]), place(found[2])
    return lambda p, q: all(q[n] - centre[n] == k * (p[n] - centre[n]) for n in (0, 1))


def place(text: str) -> Spot:
    if text == "the origin":
        return 0, 0
    x, y = map(plain, numbers(text))
    return x, y


def turns(p: Spot, q: Spot, centre: Spot, degrees: int, clockwise: bool) -> bool:
    """Tell by lengths, dot and cross products whether a place turns to another."""
    (a, b), (c, d) = [(at[0] - centre[0], at[1] - centre[1]) for at in (p, q)]
    if a * a + b * b != c * c + d * d:
        return False
    dot, cross = a * c + b * d, a * d - b * c
    if degrees == 180:
        return cross == 0 and dot < 0
    left = (degrees == 90) != clockwise
    return dot == 0 and (cross > 0) == left


def image_or_object(item: Item) -> str:
    text, said = text_of(item).rstrip("?"), seen(item)
    point = tuple(map(plain, said.points["A"]))
    if "takes shape" in text:
        first, second = said.shapes["P"], said.shapes["Q"]
        (shift,) = {(q[0] - p[0], q[1] - p[1]) for p, q in zip(first, second, strict=True)}
        return written((point[0] + shift[0], point[1] + shift[1]))
    fits = told(text)
    back = "whose image is A" in text
    (found,) = [at for at in everywhere() if (fits(at, point) if back else fits(point, at))]
    return written(found)


def reflect(item: Item) -> str:
    if "mirror line" not in text_of(item):
        return image_or_object(item)
    pairs = pairs_of(seen(item))
    for at, letter in enumerate("xy"):
        middles = {Fraction(p[at] + q[at], 2) for p, q in pairs}
        if len(middles) == 1 and all(p[1 - at] == q[1 - at] for p, q in pairs):
            return f"{letter} = {middles.pop()}"
    raise AssertionError(item.address)


def rotate(item: Item) -> str:
    if "centre of the rotation" not in text_of(item):
        return image_or_object(item)
    pairs = pairs_of(seen(item))
    (centre,) = [
        at
        for at in everywhere()
        if any(all(turns(p, q, at, 90, way) for p, q in pairs) for way in (True, False))
    ]
    return written(centre)


def enlarge(item: Item) -> str:
    text = text_of(item)
    if "takes shape" not in text:
        return image_or_object(item)
    pairs = pairs_of(seen(item))
    (a, b), (c, d) = pairs[:2]
    k = plain(Fraction(d[0] - b[0] or d[1] - b[1]) / (c[0] - a[0] or c[1] - a[1]))
    if "scale factor of" in text:
        return str(k)
    (centre,) = [
        at
        for at in everywhere()
        if all(q[n] - at[n] == k * (p[n] - at[n]) for p, q in pairs for n in (0, 1))
    ]
    return written(centre)


KEYS: dict[str, Callable[[Item], str]] = {
    "transformations.translate": image_or_object,
    "transformations.reflect": reflect,
    "transformations.rotate": rotate,
    "transformations.enlarge": enlarge,
}


@pytest.mark.parametrize("name", KEYS)
def test_keys_are_found_again(name: str) -> None:
    topic = find_topic(name)
    for tier in Tier:
        own = topic.spaces[tier].own
        for index in random.Random(f"{name} {tier}").sample(own, min(len(own), COUNT)):
            item = topic.item(tier, index)
            assert line(item.key) == KEYS[name](item), (item.address, text_of(item))
