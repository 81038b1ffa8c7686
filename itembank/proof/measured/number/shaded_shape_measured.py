"""Measures a shaded shape: the area of each part, by its corners or by the angle of its slice."""

from __future__ import annotations

from functools import lru_cache
from typing import Any

import sympy

from itembank.figures.drawing import Arc, Area, Drawing, Mark
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring, area_of, number_tree

_FINEST = 400
"""The largest denominator that an angle of a slice is taken for."""


def _area(mark: Mark) -> Any:
    """Return the area of a part; of a slice, as a fraction of its whole circle."""
    if isinstance(mark, Area):
        return area_of(mark.points)
    if isinstance(mark, Arc) and mark.sector:
        x, y = mark.centre
        turns = [
            sympy.atan2(sympy.Rational(point.y - y), sympy.Rational(point.x - x)) / (2 * sympy.pi)
            for point in (mark.start, mark.end)
        ]
        part = float((turns[1] - turns[0]).evalf(15)) % 1
        nearest = sympy.Rational(part).limit_denominator(_FINEST)
        if abs(float(nearest) - part) > 1e-5:
            raise NotExact("a slice is no simple fraction of its circle")
        return nearest
    raise NotExact("a part is no closed shape")


def _wholes(drawing: Drawing, parts: list[tuple[Mark, Any]]) -> Any:
    """Return the area of one whole: of a circle, or of the parts that stand edge to edge."""
    if all(isinstance(mark, Arc) for mark, _ in parts):
        centres = {mark.centre for mark, _ in parts if isinstance(mark, Arc)}
        if sum(area for _, area in parts) != len(centres):
            raise NotExact("the slices do not fill their circles")
        return sympy.Integer(1)
    groups: list[list[tuple[Area, Any]]] = []
    for mark, area in sorted(parts, key=lambda part: min(p.x for p in part[0].points)):  # type: ignore[union-attr]
        assert isinstance(mark, Area)
        left = min(point.x for point in mark.points)
        for group in groups:
            if left <= max(p.x for shape, _ in group for p in shape.points):
                group.append((mark, area))
                break
        else:
            groups.append([(mark, area)])
    sizes = {sum(area for _, area in group) for group in groups}
    if len(sizes) != 1:
        raise NotExact("the wholes are not of one size")
    return sizes.pop()


@lru_cache(maxsize=64)
def _sizes(drawing: Drawing) -> tuple[Any, Any, Any, int]:
    """Return the areas of what is shaded, of what is not, of one whole, and how many parts."""
    marks = (*drawing.of("shaded"), *drawing.of("part"))
    parts = [(mark, _area(mark)) for mark in marks]
    if len({area for _, area in parts}) != 1:
        raise NotExact("the parts are not equal")
    dark = [area for mark, area in parts if getattr(mark, "fill", "none") != "none"]
    light = [area for mark, area in parts if getattr(mark, "fill", "none") == "none"]
    zero = sympy.Integer(0)
    return sum(dark, zero), sum(light, zero), _wholes(drawing, parts), len(parts)


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    dark, light, whole, count = _sizes(drawing)
    if reading == Reading("shaded"):
        return number_tree(dark / whole)
    if reading == Reading("unshaded"):
        return number_tree(light / whole)
    if reading == Reading("parts"):
        return t.Int(count)
    raise NotExact("the drawing does not show it")


MEASURING = Measuring(_measure)
