"""Measures a scatter graph: where its crosses stand, by the numbers at the edges, and its line."""

from __future__ import annotations

from typing import Any

import sympy

from itembank.figures.drawing import Drawing, Stroke
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.value import NotExact
from itembank.once import once
from itembank.proof.measured.grid.grid_places_measured import Scale, scale_of
from itembank.proof.measured.measure import Measuring, number_tree


@once
def _points(drawing: Drawing) -> list[Any]:
    """Return the middle of each cross."""
    scale = scale_of(drawing)
    strokes = [mark for mark in drawing.of("datum") if isinstance(mark, Stroke)]
    found = []
    for stroke, bar in zip(strokes[::2], strokes[1::2], strict=True):
        ends = [sympy.Point(*map(sympy.Rational, p)) for p in (*stroke.points, *bar.points)]
        middle = ends[0].midpoint(ends[1])
        if middle != ends[2].midpoint(ends[3]):
            raise NotExact("a cross is not drawn about one place")
        found.append(scale.at((middle.x, middle.y)))
    return found


def _line(drawing: Drawing, scale: Scale) -> Any:
    drawn = [mark for mark in drawing.of("segment") if isinstance(mark, Stroke)]
    if len(drawn) != 1:
        raise NotExact("it does not show one line of best fit")
    return sympy.Segment(*map(scale.at, drawn[0].points))


def _side(line: Any, point: Any) -> Any:
    """Return on which side of a line, from left to right, a point is: positive above it."""
    way, off = line.p2 - line.p1, point - line.p1
    return sympy.sign(way.x * off.y - way.y * off.x)


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    scale = scale_of(drawing)
    points = _points(drawing)
    match reading:
        case Reading("count", ()):
            return t.Int(len(points))
        case Reading("more" | "less" as way, (axis, value)):
            limit = sympy.Rational(value)
            held = [getattr(point, axis) - limit for point in points]
            return t.Int(sum(bool(gap > 0 if way == "more" else gap < 0) for gap in held))
        case Reading("value", (axis, value)):
            other = "y" if axis == "x" else "x"
            (found,) = [p for p in points if getattr(p, axis) == sympy.Rational(value)]
            return number_tree(getattr(found, other))
        case Reading("estimate", (axis, value)):
            at = sympy.Rational(value)
            level = sympy.Line((at, 0), (at, 1)) if axis == "x" else sympy.Line((0, at), (1, at))
            met = _line(drawing, scale).intersection(level)
            if len(met) != 1 or not isinstance(met[0], sympy.Point):
                raise NotExact("the line does not go there")
            return number_tree(met[0].y if axis == "x" else met[0].x)
        case Reading("above the line" | "below the line" as side, ()):
            line = _line(drawing, scale)
            wanted = 1 if side.startswith("above") else -1
            return t.Int(sum(_side(line, point) == wanted for point in points))
        case Reading("outlier", ()):
            line = sympy.Line(*_line(drawing, scale).points)
            # Straight across, not along the upright: the order is the same.
            far = sorted(points, key=lambda point: line.distance(point))
            if line.distance(far[-1]) <= 2 * line.distance(far[-2]):
                raise NotExact("no single point is far from the line")
            return t.pair(number_tree(far[-1].x), number_tree(far[-1].y))
        case Reading("correlation", ()):
            return _correlation(points)
    raise NotExact("the drawing does not show it")


def _correlation(points: list[Any]) -> t.Node:
    """Return whether each two points agree in order (Kendall, 1938; from memory)."""
    signs = {
        sympy.sign((here.x - point.x) * (here.y - point.y))
        for place, here in enumerate(points)
        for point in points[:place]
    }
    if signs not in ({1}, {-1}):
        raise NotExact("its points do not all rise, or all fall")
    return t.Label("positive" if signs == {1} else "negative")


MEASURING = Measuring(_measure)
