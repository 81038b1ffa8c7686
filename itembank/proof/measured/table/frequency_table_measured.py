"""Measures a frequency table: its two rows by their lines, averages by sympy's sums."""

from __future__ import annotations

import sympy

from itembank.figures.drawing import Drawing
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.parse import ParseError, parse_written
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring, number_tree
from itembank.proof.measured.table.table_grid import cells_of


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    grid = cells_of(drawing)
    if len(grid) != 2:
        raise NotExact("the table has not two rows")
    (_, *values), (_, *counts) = grid
    if any(cell is None or isinstance(cell, str) for cell in counts) or None in values:
        raise NotExact("a cell of the table is empty")
    often = [to_sympy(cell) for cell in counts]  # type: ignore[arg-type]
    named = all(isinstance(value, str) for value in values)
    if reading == Reading("total"):
        return number_tree(sympy.Add(*often))
    if reading.name == "value":
        for value, count in zip(values, often, strict=True):
            if _same(value, reading.of[0]):
                return number_tree(count)
    if reading.name in ("largest", "smallest"):
        best = sympy.Max(*often) if reading.name == "largest" else sympy.Min(*often)
        at = [place for place, count in enumerate(often) if count == best]
        if len(at) == 1:
            value = values[at[0]]
            return t.Label(value) if isinstance(value, str) else value  # type: ignore[return-value]
    if not named and not reading.of:
        numbers = [to_sympy(value) for value in values]  # type: ignore[arg-type]
        return number_tree(_of_all(numbers, often, reading.name))
    raise NotExact("the drawing does not show it")


def _same(value: object, text: str) -> bool:
    if isinstance(value, str):
        return value.casefold() == text.casefold()
    try:
        return bool(to_sympy(value) == to_sympy(parse_written(text)))  # type: ignore[arg-type]
    except (ParseError, t.NotationError):
        return False


def _of_all(numbers: list[sympy.Expr], often: list[sympy.Expr], name: str) -> sympy.Expr:
    count = sympy.Add(*often)
    if name in ("mean", "sum"):
        added = sympy.Add(*(n * f for n, f in zip(numbers, often, strict=True)))
        return added / count if name == "mean" else added
    seen = [(n, f) for n, f in zip(numbers, often, strict=True) if f > 0]
    if name == "range":
        return sympy.Max(*(n for n, _ in seen)) - sympy.Min(*(n for n, _ in seen))
    if name == "median":
        # The least value that half of all reach, counted from below and from above.
        low = next(n for n, _ in seen if 2 * sum(f for m, f in seen if m <= n) >= count)
        high = next(n for n, _ in seen[::-1] if 2 * sum(f for m, f in seen if m >= n) >= count)
        return (low + high) / 2
    raise NotExact("the drawing does not show it")


MEASURING = Measuring(_measure)
