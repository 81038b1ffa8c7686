"""Measures a circle: its lines against its rim, its slice by the directions of its edges."""

from __future__ import annotations

import math
from typing import Any

import sympy

from itembank.figures.drawing import Arc, Drawing, Stroke, Text
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring, amount_tree, number_tree


def _square(a: Any, b: Any) -> Any:
    return sum((sympy.Rational(p) - sympy.Rational(q)) ** 2 for p, q in zip(a, b, strict=True))


def _label(drawing: Drawing, role: str) -> t.Node | None:
    for mark in drawing.of(role):
        if isinstance(mark, Text) and not isinstance(mark.content, str):
            return mark.content
    return None


def _radius(drawing: Drawing, rim: Arc) -> tuple[Any, t.Node]:
    """Return the radius in base units, and a label to write lengths like."""
    square = sympy.Rational(rim.radius) ** 2
    found: list[tuple[Any, t.Node]] = []
    label = _label(drawing, "radius label")
    for mark in drawing.of("radius"):
        if not isinstance(mark, Stroke) or mark.points[0] != rim.centre:
            raise NotExact("the radius does not begin at the centre")
        if _square(*mark.points) != square:
            raise NotExact("the radius does not end on the circle")
    if label is not None:
        if not drawing.of("radius") and not rim.sector:
            raise NotExact("a radius is labelled and none is drawn")
        found.append((to_sympy(label), label))
    label = _label(drawing, "diameter label")
    for mark in drawing.of("diameter"):
        if not isinstance(mark, Stroke) or _square(*mark.points) != 4 * square:
            raise NotExact("the diameter is not as long as two radii")
        if any(_square(point, rim.centre) != square for point in mark.points):
            raise NotExact("the diameter does not go from rim to rim")
        if label is not None:
            found.append((to_sympy(label) / 2, label))
    if len({value for value, _ in found}) != 1:
        raise NotExact("the labels do not give one radius")
    return found[0]


def _part(drawing: Drawing, rim: Arc) -> Any:
    """Return which part of a circle is drawn: by its edges, and by its label."""
    if not rim.sector:
        if not rim.whole:
            raise NotExact("the circle is not whole")
        return sympy.Integer(1)
    turns = [
        math.atan2(float(point.y - rim.centre.y), float(point.x - rim.centre.x))
        for point in (rim.start, rim.end)
    ]
    degrees = math.degrees(turns[1] - turns[0]) % 360
    label = _label(drawing, "angle label")
    if label is None or abs(float(to_sympy(label)) - degrees) > 0.01:
        raise NotExact("the sector is drawn with another angle than its label says")
    return to_sympy(label) / 360


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    (rim,) = (*drawing.of("circle"), *drawing.of("sector"))
    if not isinstance(rim, Arc):
        raise NotExact("there is no circle")
    radius, like = _radius(drawing, rim)
    part = _part(drawing, rim)
    if reading == Reading("angle") and rim.sector:
        return t.Quantity(number_tree(part * 360), "°")
    if reading == Reading("radius"):
        return amount_tree(radius, like)
    if reading == Reading("diameter") and not rim.sector:
        return amount_tree(2 * radius, like)
    if reading in (Reading("circumference"), Reading("arc")):
        return _times_pi(2 * radius * part, like)
    if reading == Reading("area"):
        square = t.Quantity(t.Int(1), f"{like.unit}^2") if isinstance(like, t.Quantity) else like
        return _times_pi(radius**2 * part, square)
    raise NotExact("the drawing does not show it")


def _times_pi(value: Any, like: t.Node) -> t.Node:
    found = amount_tree(value, like)
    if isinstance(found, t.Quantity):
        return t.Quantity(t.Bracket(t.times(found.amount, t.Sym("π"))), found.unit)
    return t.times(found, t.Sym("π"))


MEASURING = Measuring(_measure)
