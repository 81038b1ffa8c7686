"""Measures a line graph: how high each point stands against the lines of its axis."""

from __future__ import annotations

from functools import lru_cache
from itertools import pairwise
from typing import Any

import sympy

from itembank.figures.drawing import Arc, Drawing, Stroke, Text
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.value import NotExact
from itembank.proof.measured.chart.bar_chart_measured import axis_scale
from itembank.proof.measured.measure import Measuring, number_tree


@lru_cache(maxsize=64)
def _points(drawing: Drawing) -> dict[str, Any]:
    """Return the value at each named place, held to the lines, the joins and the marks."""
    zero, worth = axis_scale(drawing)
    names = {
        sympy.Rational(mark.at.x): str(mark.content)
        for mark in drawing.of("place")
        if isinstance(mark, Text)
    }
    uprights = {
        sympy.Rational(mark.points[0].x)
        for mark in drawing.of("upright")
        if isinstance(mark, Stroke) and len({point.x for point in mark.points}) == 1
    }
    spots = {
        (sympy.Rational(mark.centre.x), sympy.Rational(mark.centre.y))
        for mark in drawing.of("point")
        if isinstance(mark, Arc)
    }
    corners = sorted(spots)
    places = sorted(names)
    if not {x for x, _ in spots} <= {*names}:
        raise NotExact("a point stands over no name")
    joined = [
        tuple((sympy.Rational(x), sympy.Rational(y)) for x, y in pair)
        for mark in drawing.of("graph")
        if isinstance(mark, Stroke)
        for pair in pairwise(mark.points)
    ]
    neighbours = [
        (left, right)
        for left, right in pairwise(corners)
        if places.index(right[0]) == places.index(left[0]) + 1
    ]
    if sorted(joined) != neighbours:
        raise NotExact("the line does not join the points that stand side by side, in order")
    over = [x for x, _ in corners]
    if len({*over}) != len(over) or uprights != {*names}:
        raise NotExact("two points stand over one name, or a name is without its line")
    lines = {
        sympy.Rational(mark.points[0].y)
        for role in ("line", "small line")
        for mark in drawing.of(role)
        if isinstance(mark, Stroke) and len({point.y for point in mark.points}) == 1
    }
    if any(y not in lines for _, y in corners):
        raise NotExact("a point stands at no line of the axis")
    return {names[x]: (y - zero) * worth for x, y in corners}


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    points = _points(drawing)
    without = [
        str(mark.content)
        for mark in drawing.of("place")
        if isinstance(mark, Text) and str(mark.content) not in points
    ]
    if reading.name == "missing" and len(without) == 1:
        return t.Label(without[0])
    if without and reading.name != "value":
        raise NotExact("a point is missing: of all of them nothing is known")
    if reading.name == "value":
        for name, value in points.items():
            if [name.casefold()] == [wanted.casefold() for wanted in reading.of]:
                return number_tree(value)
    if reading.name in ("largest", "smallest") and not reading.of:
        best = (sympy.Max if reading.name == "largest" else sympy.Min)(*points.values())
        found = [name for name, value in points.items() if value == best]
        if len(found) == 1:
            return t.Label(found[0])
    if reading.name == "place" and len(reading.of) == 1:
        found = [name for name, value in points.items() if str(value) == reading.of[0]]
        if len(found) == 1:
            return t.Label(found[0])
    raise NotExact("the drawing does not show it")


MEASURING = Measuring(_measure)
