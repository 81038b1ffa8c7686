"""Measures a number line: places between the numbers that stand under it."""

from __future__ import annotations

from typing import Any

import sympy

from itembank.figures.drawing import Drawing, Stroke, Text
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.parse import parse_written
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring, number_tree


def _scale(drawing: Drawing) -> tuple[list[Any], list[tuple[Any, Any]]]:
    """Return where the marks stand, and the numbers under them with theirs."""
    ticks = [
        sympy.Rational(mark.points[0].x)
        for mark in drawing.of("tick")
        if isinstance(mark, Stroke) and mark.points[0].x == mark.points[-1].x
    ]
    numbers = []
    for mark in drawing.of("number"):
        if isinstance(mark, Text) and not isinstance(mark.content, str):
            x = sympy.Rational(mark.at.x)
            if x not in ticks:
                raise NotExact("a number stands under no mark of the line")
            numbers.append((x, to_sympy(mark.content)))
    if len(numbers) < 2:
        raise NotExact("the line shows fewer than two numbers")
    (x0, low), *others = sorted(numbers, key=lambda pair: pair[0])
    step = (others[-1][1] - low) / (others[-1][0] - x0)
    if any(low + (x - x0) * step != value for x, value in others):
        raise NotExact("the numbers do not stand where they belong")
    gaps = {b - a for a, b in zip(sorted(ticks), sorted(ticks)[1:], strict=False)}
    if len(gaps) != 1:
        raise NotExact("the steps of the line are not equal")
    return sorted(ticks), sorted(numbers, key=lambda pair: pair[0])


def _points(drawing: Drawing) -> dict[str, Any]:
    """Return the value at which each lettered pointer points."""
    ticks, numbers = _scale(drawing)
    (x0, low), (x1, high) = numbers[0], numbers[-1]
    pointers = [mark for mark in drawing.of("pointer") if isinstance(mark, Stroke)]
    found = {}
    for mark in drawing.of("point"):
        if isinstance(mark, Text) and isinstance(mark.content, str):
            tip = next((p.points[-1].x for p in pointers if p.points[0].x == mark.at.x), None)
            if tip is None:
                raise NotExact(f"no arrow goes from {mark.content}")
            x = sympy.Rational(tip)
            if x not in ticks:
                raise NotExact(f"{mark.content} points beside the marks of the line")
            found[mark.content] = low + (x - x0) * (high - low) / (x1 - x0)
    return found


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    if reading == Reading("step"):
        ticks, numbers = _scale(drawing)
        (x0, low), (x1, high) = numbers[0], numbers[-1]
        return number_tree((ticks[1] - ticks[0]) * (high - low) / (x1 - x0))
    points = _points(drawing)
    if reading.name == "number" and reading.of[0].upper() in points:
        return number_tree(points[reading.of[0].upper()])
    if reading.name == "letter":
        wanted = to_sympy(parse_written(reading.of[0]))
        for name, value in points.items():
            if value == wanted:
                return t.Label(name)
    raise NotExact("the drawing does not show it")


MEASURING = Measuring(_measure)
