"""Measures a bar chart: how high each bar stands against the lines of its axis."""

from __future__ import annotations

from typing import Any

import sympy

from itembank.figures.drawing import Area, Drawing, Point, Stroke, Text
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring, number_tree


def axis_scale(drawing: Drawing) -> tuple[Any, Any]:
    """Return where 0 stands on an upright axis, and how much one em is worth."""
    lines = {
        sympy.Rational(mark.points[0].y)
        for mark in drawing.of("line")
        if isinstance(mark, Stroke) and mark.points[0].y == mark.points[-1].y
    }
    numbers = []
    for mark in drawing.of("number"):
        if isinstance(mark, Text) and not isinstance(mark.content, str):
            y = sympy.Rational(mark.at.y)
            if y not in lines:
                raise NotExact("a number of the axis stands at no line")
            numbers.append((y, to_sympy(mark.content)))
    numbers.sort()
    if len(numbers) < 2:
        raise NotExact("the axis shows fewer than two numbers")
    (low, first), (high, last) = numbers[0], numbers[-1]
    worth = (last - first) / (high - low)
    if any(first + (y - low) * worth != value for y, value in numbers):
        raise NotExact("the numbers of the axis are not evenly spaced")
    return low - first / worth, worth


def _bars(drawing: Drawing) -> dict[tuple[str, str], Any]:
    """Return the value of each bar by its category and its series' name."""
    zero, worth = axis_scale(drawing)
    places = {
        sympy.Rational(mark.at.x): mark.content
        for mark in drawing.of("category")
        if isinstance(mark, Text) and isinstance(mark.content, str)
    }
    series = _series(drawing)
    found: dict[tuple[str, str], Any] = {
        (name, row): sympy.Integer(0) for name in places.values() for row in series.values()
    }
    for fill, row in series.items():
        for mark in drawing.marks:
            if not isinstance(mark, Area) or not mark.role.startswith("bar") or mark.fill != fill:
                continue
            xs = [sympy.Rational(point.x) for point in mark.points]
            ys = [sympy.Rational(point.y) for point in mark.points]
            if min(ys) != zero:
                raise NotExact("a bar does not stand on the axis")
            if len({*xs}) != 2 or len({*ys}) != 2:
                raise NotExact("a bar is no rectangle")
            middle = (min(xs) + max(xs)) / 2
            near = min(places, key=lambda x: abs(x - middle))
            found[places[near], row] = (max(ys) - zero) * worth
    return found


def _series(drawing: Drawing) -> dict[str, str]:
    """Return the name of each series by its filling, as the legend says."""
    names = [mark for mark in drawing.of("series") if isinstance(mark, Text)]
    legend = [
        mark for mark in drawing.marks if isinstance(mark, Area) and mark.role.startswith("legend")
    ]
    if not names:
        fills = {m.fill for m in drawing.marks if isinstance(m, Area) and m.role == "bar 0"}
        if len(fills) > 1:
            raise NotExact("bars of one series are filled in two ways")
        return dict.fromkeys(fills, "")
    found: dict[str, str] = {}
    for name in names:
        gaps = [_apart(box, name.at) for box in legend]
        found[legend[gaps.index(min(gaps))].fill] = str(name.content)
    if len(found) != len(names):
        raise NotExact("the legend shows one filling twice")
    return found


def _apart(box: Area, at: Point) -> Any:
    return abs(sympy.Rational(box.points[1].x - at.x)) + abs(sympy.Rational(box.points[0].y - at.y))


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    bars = _bars(drawing)
    folded = {(a.casefold(), b.casefold()): value for (a, b), value in bars.items()}
    category, row = (*(part.casefold() for part in reading.of), "", "")[:2]
    if reading.name == "value" and (category, row) in folded:
        return number_tree(folded[category, row])
    own = {name: value for (name, series), value in bars.items() if series.casefold() == category}
    if reading.name == "total":
        held = own if category else bars
        return number_tree(sum(held.values(), sympy.Integer(0)))
    if reading.name in ("largest", "smallest") and own:
        best = max(own.values()) if reading.name == "largest" else min(own.values())
        names = [name for name, value in own.items() if value == best]
        if len(names) == 1:
            return t.Label(names[0])
    raise NotExact("the drawing does not show it")


MEASURING = Measuring(_measure)
