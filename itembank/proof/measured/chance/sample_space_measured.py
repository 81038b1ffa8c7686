"""Measures a sample space: each cell by the column and the row it stands in."""

from __future__ import annotations

from functools import lru_cache
from typing import Any

import sympy

from itembank.figures.drawing import Area, Drawing, Stroke, Text
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.parse import parse_written
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring

_RULES = {"+": lambda a, b: a + b, "−": lambda a, b: abs(a - b), "×": lambda a, b: a * b}
_TESTS: dict[str, Any] = {
    "is": lambda value, bound: sympy.Eq(value, bound),
    "more than": lambda value, bound: value > bound,
    "less than": lambda value, bound: value < bound,
    "at least": lambda value, bound: value >= bound,
    "at most": lambda value, bound: value <= bound,
    "multiple of": lambda value, bound: bound > 0 and sympy.Mod(value, bound) == 0,
    "even": lambda value, _: sympy.Mod(value, 2) == 0,
    "odd": lambda value, _: sympy.Mod(value, 2) == 1,
}


def _labels(drawing: Drawing, role: str) -> dict[tuple[Any, Any], Any]:
    """Return what stands in the boxes of a role, by the middle of each box."""
    boxes: dict[tuple[Any, Any], None] = {}
    for mark in drawing.of(f"{role} box"):
        if isinstance(mark, Area):
            xs, ys = zip(*mark.points, strict=True)
            if len({*xs}) != 2 or len({*ys}) != 2:
                raise NotExact("a cell is no rectangle")
            boxes[((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)] = None
    found = {
        (mark.at.x, mark.at.y): mark.content for mark in drawing.of(role) if isinstance(mark, Text)
    }
    if not {*found} <= {*boxes} or (role != "rule" and {*found} != {*boxes}):
        raise NotExact("a label does not stand in the middle of its cell")
    return found


@lru_cache(maxsize=64)
def _values(drawing: Drawing) -> list[Any]:
    """Return what each cell shows; raises NotExact where it is not what its row and column say."""
    columns = {x: node for (x, _), node in _labels(drawing, "first").items()}
    rows = {y: node for (_, y), node in _labels(drawing, "second").items()}
    cells = _labels(drawing, "cell")
    if {*cells} != {(x, y) for x in columns for y in rows}:
        raise NotExact("the cells do not stand under their columns and beside their rows")
    if not _set_apart(drawing, [*columns], [*rows], cells):
        raise NotExact("the lines do not part the cells from what they come from")
    sign = next(iter(_labels(drawing, "rule").values()), "")
    values = []
    for (x, y), node in cells.items():
        value = to_sympy(node)
        pair = (to_sympy(columns[x]), to_sympy(rows[y]))
        if value != (_RULES[sign](*pair) if sign else [*pair]):
            raise NotExact("a cell does not show what its column and row come to")
        values.append(value)
    return values


def _set_apart(drawing: Drawing, xs: list[Any], ys: list[Any], cells: dict[Any, Any]) -> bool:
    """Tell whether one line lies above all cells and below their columns, one left of all."""
    level, upright = [], []
    for mark in drawing.of("head line"):
        if not isinstance(mark, Stroke) or len(mark.points) != 2:
            return False
        a, b = mark.points
        if a.y == b.y and min(a.x, b.x) <= min(xs) and max(a.x, b.x) >= max(xs):
            level.append(a.y)
        if a.x == b.x and min(a.y, b.y) <= min(ys) and max(a.y, b.y) >= max(ys):
            upright.append(a.x)
    heads = {y for _, y in _labels(drawing, "first")}
    sides = {x for x, _ in _labels(drawing, "second")}
    return (
        len(level) == len(upright) == 1
        and max(y for _, y in cells) < level[0] < min(heads)
        and max(sides) < upright[0] < min(x for x, _ in cells)
    )


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    values = _values(drawing)
    if reading == Reading("outcomes"):
        return t.Int(len(values))
    if reading.name == "outcomes" and reading.of[0] in _TESTS:
        test, *bounds = reading.of
        bound = to_sympy(parse_written(bounds[0])) if bounds else sympy.Integer(0)
        if not any(isinstance(value, list) for value in values):
            return t.Int(sum(bool(_TESTS[test](value, bound)) for value in values))
    raise NotExact("the drawing does not show it")


MEASURING = Measuring(_measure)
