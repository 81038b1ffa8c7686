"""Measures a function machine: its boxes from left to right along the arrows, undone by sympy."""

from __future__ import annotations

from typing import Any

import sympy

from itembank.figures.drawing import Area, Drawing, Stroke, Text
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.parse import parse_written
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring, number_tree


def _end(drawing: Drawing, role: str) -> tuple[Any, Any]:
    (mark,) = drawing.of(role)
    if not isinstance(mark, Text):
        raise NotExact("an end of the machine has no number")
    x = sympy.Rational(mark.at.x)
    return x, None if isinstance(mark.content, str) else to_sympy(mark.content)


def _boxes(drawing: Drawing) -> list[tuple[Any, str]]:
    found = []
    for label in drawing.of("does"):
        if not isinstance(label, Text) or not isinstance(label.content, str):
            raise NotExact("a box says nothing")
        around = [
            box
            for box in drawing.of("machine")
            if isinstance(box, Area)
            and min(p.x for p in box.points) < label.at.x < max(p.x for p in box.points)
            and min(p.y for p in box.points) < label.at.y < max(p.y for p in box.points)
        ]
        if len(around) != 1:
            raise NotExact("what a box does stands in no box")
        found.append((sympy.Rational(label.at.x), label.content))
    return sorted(found)


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    (start, given), (stop, wanted) = _end(drawing, "input"), _end(drawing, "output")
    boxes = _boxes(drawing)
    arrows = [mark for mark in drawing.of("arrow") if isinstance(mark, Stroke)]
    if len(arrows) != len(boxes) + 1 or any(a.points[0].x >= a.points[-1].x for a in arrows):
        raise NotExact("the arrows do not lead from one box to the next")
    places = [start, *(x for x, _ in boxes), stop]
    for arrow, a, b in zip(
        sorted(arrows, key=lambda arrow: arrow.points[0].x), places[:-1], places[1:], strict=True
    ):
        if not a < arrow.points[0].x < arrow.points[-1].x < b:
            raise NotExact("an arrow leads from nowhere")
    letter = sympy.Symbol("put_in")
    value: Any = letter
    for _, does in boxes:
        sign, _, number = does.partition(" ")
        amount = to_sympy(parse_written(number))
        value = {
            "+": value + amount,
            "−": value - amount,
            "×": value * amount,
            "÷": value / amount,
        }[sign]
    if given is None:
        if wanted is None:
            raise NotExact("neither end of the machine has a number")
        (given,) = sympy.solve(sympy.Eq(value, wanted), letter)
    out = value.subs(letter, given)
    if reading == Reading("output"):
        return number_tree(out)
    if reading == Reading("input"):
        return number_tree(sympy.sympify(given))
    raise NotExact("the drawing does not show it")


MEASURING = Measuring(_measure)
