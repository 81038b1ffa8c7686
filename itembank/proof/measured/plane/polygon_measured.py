"""Measures a polygon: corners, dashes and arrowheads where they stand, labels by what is nearest.

Lengths and areas come from the corners and the scale that the labelled lengths give; angles that
are labelled come from equations between what the marks say of sides and corners.
"""

from __future__ import annotations

from functools import lru_cache

import sympy

from itembank.figures.drawing import Drawing
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring, amount_tree, number_tree
from itembank.proof.measured.plane.measured_equations import unit_of_letters
from itembank.proof.measured.plane.polygon_outline import Outline, unit_like
from itembank.proof.measured.plane.right_triangles_measured import RightTriangle


@lru_cache(maxsize=128)
def _outline(drawing: Drawing) -> Outline:
    return Outline(drawing)


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    shape = _outline(drawing)
    if reading.name == "angle" and len(reading.of) == 1:
        name = reading.of[0].upper()
        value = shape.settled.value(shape.angle(shape.names[name[len(name) // 2]]))
        if value is not None:
            return t.Quantity(number_tree(value), "°")
        return _right_triangle(shape).angle(shape.names[name[len(name) // 2]])
    elif reading.name == "unknown" and len(reading.of) == 1:
        return _unknown(shape, t.Sym(reading.of[0]))
    elif reading.name == "side" and len(reading.of) == 1:
        a, b = (shape.names[letter] for letter in reading.of[0].upper())
        side = a if (a + 1) % shape.count == b else b
        # Of a right-angled triangle it comes from the labels: some of its corners are only near
        # their places, where a root or a sine says where they are.
        try:
            return _right_triangle(shape).side(side)
        except NotExact:
            return _length(shape, [side])
    elif reading == Reading("perimeter"):
        return _length(shape, list(range(shape.count)))
    elif reading == Reading("area"):
        scale, like = shape.scale()
        area = abs(shape.twice_area()) / 2 * scale**2
        if isinstance(like, t.Quantity):
            return amount_tree(area, t.Quantity(t.Int(1), f"{like.unit}^2"))
        return number_tree(area)
    raise NotExact("the drawing does not show it")


def _right_triangle(shape: Outline) -> RightTriangle:
    labels = [(node, 0) for node in shape.side_labels.values() if not isinstance(node, str)]
    return RightTriangle(shape, unit_like(labels), shape.accurate)


def _unknown(shape: Outline, letter: t.Sym) -> t.Node:
    """Return what a letter comes to that labels one side or one angle alone."""
    sides = [side for side, label in shape.side_labels.items() if label == letter]
    corners = [corner for corner, label in shape.angle_labels.items() if label == letter]
    if len(sides) + len(corners) != 1:
        raise NotExact("the letter labels no one side or angle")
    triangle = _right_triangle(shape)
    return triangle.side(sides[0]) if sides else triangle.angle(corners[0])


def _length(shape: Outline, sides: list[int]) -> t.Node:
    """Return how long sides are together: by the scale, else by what their labels settle."""
    like = unit_like([(n, 0) for n in shape.side_labels.values() if not isinstance(n, str)])
    try:
        scale, like = shape.scale()
        total = sum(sympy.sqrt(shape.square(side)) * scale for side in sides)
        return amount_tree(sympy.nsimplify(sympy.simplify(total)), like)
    except NotExact:
        value = shape.settled.value(sum(shape.side(side) for side in sides))
        if value is None:
            raise
        return amount_tree(value, like)


def _relations(drawing: Drawing) -> tuple[t.Relation, ...]:
    shape = _outline(drawing)
    lengths = [label for label in shape.side_labels.values() if not isinstance(label, str)]
    units = unit_of_letters(lengths) | unit_of_letters([*shape.angle_labels.values()], "°")
    return shape.settled.relations(units)


MEASURING = Measuring(_measure, _relations)
