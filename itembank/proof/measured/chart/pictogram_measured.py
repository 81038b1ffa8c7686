"""Measures a pictogram: the area of the squares in each row, against the square of the key."""

from __future__ import annotations

import re
from typing import Any

import sympy

from itembank.figures.drawing import Area, Drawing, Text
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring, area_of, number_tree


def _rows(drawing: Drawing) -> dict[str, Any]:
    (key,), (says,) = drawing.of("key"), drawing.of("key says")
    found = (
        re.match(r"= (\d+)", says.content)
        if isinstance(says, Text) and isinstance(says.content, str)
        else None
    )
    if not isinstance(key, Area) or found is None:
        raise NotExact("the pictogram has no key")
    size = area_of(key.points)
    if not size:
        raise NotExact("the square of the key has no size")
    worth = sympy.Integer(int(found[1])) / size
    rows = {
        sympy.Rational(mark.at.y): str(mark.content)
        for mark in drawing.of("category")
        if isinstance(mark, Text)
    }
    values = dict.fromkeys(rows.values(), sympy.Integer(0))
    for mark in drawing.of("square"):
        if not isinstance(mark, Area):
            continue
        ys = [sympy.Rational(point.y) for point in mark.points]
        beside = [name for y, name in rows.items() if min(ys) <= y <= max(ys)]
        if len(beside) != 1:
            raise NotExact("a square stands in no row")
        values[beside[0]] += worth * area_of(mark.points)
    return values


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    rows = _rows(drawing)
    if reading == Reading("total"):
        return number_tree(sum(rows.values(), sympy.Integer(0)))
    if reading.name == "value":
        for name, value in rows.items():
            if name.casefold() == reading.of[0].casefold():
                return number_tree(value)
    if reading.name in ("largest", "smallest"):
        best = (max if reading.name == "largest" else min)(rows.values())
        names = [name for name, value in rows.items() if value == best]
        if len(names) == 1:
            return t.Label(names[0])
    raise NotExact("the drawing does not show it")


MEASURING = Measuring(_measure)
