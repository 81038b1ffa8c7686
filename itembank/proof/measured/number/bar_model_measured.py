"""Measures a bar model: lengths of boxes and brackets, and the one amount that gives the scale."""

from __future__ import annotations

from typing import Any, NamedTuple

import sympy

from itembank.figures.drawing import Area, Drawing, Stroke, Text
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring, amount_tree


class _Box(NamedTuple):
    left: Any
    right: Any
    low: Any
    high: Any
    shaded: bool


def _boxes(drawing: Drawing) -> list[_Box]:
    found = []
    for mark in (*drawing.of("box"), *drawing.of("shaded box")):
        if not isinstance(mark, Area) or len(mark.points) != 4:
            raise NotExact("a box is no rectangle")
        xs = sorted({sympy.Rational(x) for x, _ in mark.points})
        ys = sorted({sympy.Rational(y) for _, y in mark.points})
        if len(xs) != 2 or len(ys) != 2:
            raise NotExact("a box is no rectangle")
        found.append(_Box(xs[0], xs[1], ys[0], ys[1], mark.role == "shaded box"))
    return found


def _rows(boxes: list[_Box]) -> dict[Any, list[_Box]]:
    """Return the boxes of each bar in order, by how high it stands; they touch, and start at 0."""
    rows: dict[Any, list[_Box]] = {}
    for box in sorted(boxes, key=lambda box: box.left):
        rows.setdefault(box.low, []).append(box)
    for row in rows.values():
        edge = sympy.Integer(0)
        for box in row:
            if box.left != edge:
                raise NotExact("the boxes of a bar do not stand side by side")
            edge = box.right
    return rows


def _amounts(drawing: Drawing, boxes: list[_Box]) -> list[tuple[t.Node, Any]]:
    """Return each amount that is printed with the length it stands for."""
    rows = _rows(boxes)
    whole = sum((row[-1].right for row in rows.values()), sympy.Integer(0))
    found = []
    for mark in drawing.marks:
        if not isinstance(mark, Text) or isinstance(mark.content, str):
            continue
        x, y = sympy.Rational(mark.at.x), sympy.Rational(mark.at.y)
        if mark.role == "in box":
            inside = [b for b in boxes if b.left < x < b.right and b.low < y < b.high]
            if len(inside) != 1:
                raise NotExact("an amount stands in no box")
            found.append((mark.content, inside[0].right - inside[0].left))
        elif mark.role == "bar total":
            below = [b for stroke in drawing.of("bracket") if (b := _span(stroke, x, y))]
            if len(below) != 1:
                raise NotExact("an amount stands over no bracket")
            found.append((mark.content, below[0]))
        elif mark.role == "total":
            found.append((mark.content, _all_spanned(drawing, rows, whole)))
    return found


def _span(stroke: object, x: Any, y: Any) -> Any:
    """Return how long a bracket is whose middle stands under a place, else None."""
    if not isinstance(stroke, Stroke):
        return None
    xs = [sympy.Rational(point.x) for point in stroke.points]
    top = max(sympy.Rational(point.y) for point in stroke.points)
    near = 0 < y - top < 1
    return max(xs) - min(xs) if (max(xs) + min(xs)) / 2 == x and near else None


def _all_spanned(drawing: Drawing, rows: dict[Any, list[_Box]], whole: Any) -> Any:
    (bracket,) = drawing.of("all bracket")
    if not isinstance(bracket, Stroke):
        raise NotExact("what all bars come to stands at no bracket")
    xs = [sympy.Rational(point.x) for point in bracket.points]
    ys = [sympy.Rational(point.y) for point in bracket.points]
    if len(rows) == 1:
        if max(xs) - min(xs) != whole:
            raise NotExact("the bracket is not as long as the bar")
    elif min(ys) != min(rows) or max(ys) != max(row[0].high for row in rows.values()):
        raise NotExact("the bracket does not reach from the first bar to the last")
    return whole


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    boxes = _boxes(drawing)
    rows = _rows(boxes)
    amounts = [(node, size) for node, size in _amounts(drawing, boxes) if not t.symbols(node)]
    scales = {to_sympy(node) / size for node, size in amounts}
    if len(scales) != 1:
        raise NotExact("the amounts do not give one scale")
    (scale,) = scales
    like = amounts[0][0]
    if reading == Reading("part"):
        unit = sympy.Integer(0)
        for box in boxes:  # the longest length of which every box is a multiple
            unit = _common(unit, box.right - box.left)
        for mark in drawing.of("unit"):  # marks of units in a longer box
            if isinstance(mark, Stroke):
                unit = _common(unit, sympy.Rational(mark.points[0].x))
        return amount_tree(scale * unit, like)
    if reading == Reading("whole"):
        return amount_tree(scale * sum(row[-1].right for row in rows.values()), like)
    if reading == Reading("shaded"):
        dark = sum((b.right - b.left for b in boxes if b.shaded), sympy.Integer(0))
        return amount_tree(scale * dark, like)
    if reading.name == "bar":
        for mark in drawing.of("name"):
            if isinstance(mark, Text) and str(mark.content).casefold() == reading.of[0].casefold():
                y = sympy.Rational(mark.at.y)
                for row in rows.values():
                    if row[0].low < y < row[0].high:
                        return amount_tree(scale * row[-1].right, like)
    raise NotExact("the drawing does not show it")


def _common(first: Any, other: Any) -> Any:
    while other:
        first, other = other, first % other
    return first


MEASURING = Measuring(_measure)
