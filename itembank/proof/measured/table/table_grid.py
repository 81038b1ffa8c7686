"""The cells of a drawn table: what stands between which of its lines."""

from __future__ import annotations

from itertools import pairwise
from typing import Any

import sympy

from itembank.figures.drawing import Content, Drawing, Stroke, Text
from itembank.notation.value import NotExact


def cells_of(drawing: Drawing) -> list[list[Content | None]]:
    """Return what stands in each cell, row by row; None in an empty one."""
    xs = _lines(drawing, "column line", 0)
    ys = _lines(drawing, "row line", 1)[::-1]
    grid: list[list[Content | None]] = [[None] * (len(xs) - 1) for _ in range(len(ys) - 1)]
    for mark in drawing.marks:
        if not isinstance(mark, Text):
            continue
        column = _between(xs, sympy.Rational(mark.at.x))
        row = _between(ys[::-1], sympy.Rational(mark.at.y))
        row = len(grid) - 1 - row
        if grid[row][column] is not None:
            raise NotExact("two labels stand in one cell")
        grid[row][column] = mark.content
    return grid


def _lines(drawing: Drawing, role: str, which: int) -> list[Any]:
    found = set()
    for mark in drawing.of(role):
        places = {point[which] for point in mark.points} if isinstance(mark, Stroke) else set()
        if len(places) != 1:
            raise NotExact("a line of the table is not straight")
        found.add(sympy.Rational(places.pop()))
    if len(found) < 3:
        raise NotExact("the table has too few lines")
    return sorted(found)


def _between(lines: list[Any], place: Any) -> int:
    for number, (low, high) in enumerate(pairwise(lines)):
        if low < place < high:
            return number
    raise NotExact("a label stands outside the table")
