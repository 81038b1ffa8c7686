"""Measures two sets with shading: which regions the shaded shapes cover, and that they fill them.

A region is known by a point in it, which is inside a circle or not by its distance from the centre.
How large each shaded shape should be comes from the areas of two circles that overlap.
"""

from __future__ import annotations

import math
from fractions import Fraction
from functools import lru_cache

import sympy

from itembank.figures.drawing import Arc, Area, Drawing, Point, Text
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring, area_of, number_tree
from itembank.proof.measured.sets.venn_diagram_measured import places_of

_CLOSE = 0.01
"""How near an area has to be to that of its region: its edge is straight for a few degrees."""


def _circles(drawing: Drawing) -> tuple[Arc, Arc]:
    found = [mark for mark in drawing.of("set") if isinstance(mark, Arc) and mark.whole]
    if len(found) != 2 or found[0].radius != found[1].radius:
        raise NotExact("there are not two equal circles")
    first, second = sorted(found, key=lambda circle: circle.centre.x)
    return first, second


def _areas(drawing: Drawing) -> dict[tuple[bool, bool], tuple[Point, float]]:
    """Return a point of each region, inside the left and the right circle or not, and its area."""
    left, right = _circles(drawing)
    (frame,) = (mark for mark in drawing.of("all") if isinstance(mark, Area))
    radius, apart = float(left.radius), float(right.centre.x - left.centre.x)
    if not 0 < apart < 2 * radius:
        raise NotExact("the circles do not overlap")
    # The lens of two equal circles (the usual formula, from memory).
    lens = 2 * radius**2 * math.acos(apart / (2 * radius)) - apart / 2 * math.sqrt(
        4 * radius**2 - apart**2
    )
    circle = math.pi * radius**2
    x, y = left.centre
    third = Fraction(left.radius) / 3
    points = {
        (True, False): Point(x - 2 * third, y),
        (True, True): Point(Fraction(x + right.centre.x) / 2, y),
        (False, True): Point(right.centre.x + 2 * third, y),
        (False, False): Point(frame.points[0].x, frame.points[0].y),
    }
    corner = points[False, False]
    points[False, False] = Point(corner.x + third / 4, corner.y + third / 4)
    whole = float(area_of(frame.points))
    sizes = {
        (True, False): circle - lens,
        (True, True): lens,
        (False, True): circle - lens,
        (False, False): whole - 2 * circle + lens,
    }
    for place, at in points.items():
        inside = tuple(_near(at, ring.centre) < radius**2 for ring in (left, right))
        if inside != place:
            raise NotExact("a point is not in its region")
    return {place: (at, sizes[place]) for place, at in points.items()}


def _near(a: Point, b: Point) -> float:
    return float((a.x - b.x) ** 2 + (a.y - b.y) ** 2)


def _within(at: Point, corners: tuple[Point, ...]) -> bool:
    """Tell whether a point is inside a shape, by how often a ray to the right leaves it."""
    crossed = False
    for a, b in zip(corners, (*corners[1:], corners[0]), strict=True):
        if (a.y > at.y) != (b.y > at.y):
            x = a.x + (b.x - a.x) * (at.y - a.y) / (b.y - a.y)
            crossed ^= bool(x > at.x)
    return crossed


@lru_cache(maxsize=256)
def _dark(drawing: Drawing) -> frozenset[tuple[bool, bool]]:
    """Return which regions are shaded."""
    regions, found = _areas(drawing), set()
    for mark in drawing.of("shaded"):
        if not isinstance(mark, Area) or mark.fill in ("none", "paper"):
            raise NotExact("what should be shaded is not")
        covered = [place for place, (at, _) in regions.items() if _within(at, mark.points)]
        if len(covered) != 1 or covered[0] in found:
            raise NotExact("a shaded shape is no single region")
        size = regions[covered[0]][1]
        if abs(float(area_of(mark.points)) - size) > _CLOSE * size:
            raise NotExact("a shaded shape does not fill its region")
        found.add(covered[0])
    return frozenset(found)


def _names(drawing: Drawing) -> list[str]:
    """Return the names of the left and the right circle: each stands nearest to its own."""
    circles, names = _circles(drawing), ["", ""]
    for mark in drawing.of("name"):
        if isinstance(mark, Text):
            gaps = [_near(mark.at, circle.centre) for circle in circles]
            names[gaps.index(min(gaps))] = str(mark.content)
    if not all(names):
        raise NotExact("a set has no name")
    return names


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    if reading.name not in ("shaded", "left") or len(reading.of) != 1:
        raise NotExact("the drawing does not show it")
    dark = _dark(drawing)
    wanted = places_of(reading.of[0], _names(drawing))
    if reading.name == "shaded":
        return number_tree(sympy.Integer(len(wanted & dark)))
    return number_tree(sympy.Integer(4 - len(wanted | dark)))


MEASURING = Measuring(_measure)
