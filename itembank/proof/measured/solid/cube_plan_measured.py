"""Measures a plan of cubes: every cube set up in space, and looked at from above and two sides."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache

import sympy

from itembank.figures.drawing import Area, Drawing, Text
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring, number_tree

Cube = tuple[int, int, int]
"""A cube by how far to the right it stands, how far to the back, and how high, from 0."""


@lru_cache(maxsize=256)
def _cubes(drawing: Drawing) -> frozenset[Cube]:
    numbers = [mark for mark in drawing.of("number") if isinstance(mark, Text)]
    squares = [mark for mark in drawing.of("square") if isinstance(mark, Area)]
    sides = {
        size
        for mark in squares
        for axis in zip(*mark.points, strict=True)
        for size in [sympy.Rational(max(axis)) - sympy.Rational(min(axis))]
    }
    fronts, beside = drawing.of("front"), drawing.of("side")
    if len(sides) != 1 or len(squares) != len(numbers) or len(fronts) != 1 or len(beside) != 1:
        raise NotExact("it is no plan of equal squares with a number in each, and a front")
    (side,) = sides
    low = min(point.y for mark in squares for point in mark.points)
    left = min(point.x for mark in squares for point in mark.points)
    right = max(point.x for mark in squares for point in mark.points)
    front, aside = fronts[0], beside[0]
    if not isinstance(front, Text) or front.at.y >= low:
        raise NotExact("the front is not at the bottom of the plan")
    if not isinstance(aside, Text) or aside.at.x <= right:
        raise NotExact("the side is not at the right of the plan")
    found: set[Cube] = set()
    for mark in squares:
        xs, ys = zip(*mark.points, strict=True)
        if len({*xs}) != 2 or len({*ys}) != 2 or len({*mark.points}) != 4:
            raise NotExact("a square of the plan is no square")
        inside = [
            number
            for number in numbers
            if min(xs) < number.at.x < max(xs) and min(ys) < number.at.y < max(ys)
        ]
        place = [(sympy.Rational(a) - sympy.Rational(b)) / side
                 for a, b in ((min(xs), left), (min(ys), low))]  # fmt: skip
        if len(inside) != 1 or not all(step.is_integer for step in place):
            raise NotExact("a square of the plan is out of its place, or has not one number")
        content = inside[0].content
        if isinstance(content, str):
            raise NotExact("what stands on a square is no number")
        x, y = map(int, place)
        tower = {(x, y, z) for z in range(int(to_sympy(content)))}
        if tower & found or not tower:
            raise NotExact("two squares stand at one place, or one has no cubes")
        found |= tower
    return frozenset(found)


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    cubes = _cubes(drawing)
    seen: dict[Reading, Callable[[int, int, int], tuple[int, ...]]] = {
        Reading("squares", ("plan",)): lambda x, y, z: (x, y),
        Reading("squares", ("front elevation",)): lambda x, y, z: (x, z),
        Reading("squares", ("side elevation",)): lambda x, y, z: (y, z),
        Reading("cubes"): lambda x, y, z: (x, y, z),
    }
    if reading == Reading("cuboid"):
        long = [max(axis) - min(axis) + 1 for axis in zip(*cubes, strict=True)]
        return number_tree(sympy.prod(map(sympy.Integer, long)))
    if reading not in seen:
        raise NotExact("the drawing does not show it")
    return number_tree(sympy.Integer(len({seen[reading](*cube) for cube in cubes})))


MEASURING = Measuring(_measure)
