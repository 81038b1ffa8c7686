"""Measures a two-way table: its cells by their lines, what is empty by sympy's linear solver."""

from __future__ import annotations

from functools import lru_cache
from typing import Any

import sympy

from itembank.figures.drawing import Drawing
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring, number_tree
from itembank.proof.measured.table.table_grid import cells_of


@lru_cache(maxsize=64)
def _solved(drawing: Drawing) -> tuple[dict[tuple[str, str], Any], dict[str, Any]]:
    """Return the value of each cell by its names, and of each letter; None where it is open."""
    head, *body = cells_of(drawing)
    columns = [str(name).casefold() for name in head[1:]]
    rows = [str(row[0]).casefold() for row in body]
    symbols: list[Any] = []
    letters: dict[str, Any] = {}
    grid: list[list[Any]] = []
    for r, row in enumerate(body):
        grid.append([])
        for c, cell in enumerate(row[1:]):
            if cell is None or isinstance(cell, str | t.Sym):
                symbols.append(sympy.Symbol(f"cell_{r}_{c}"))
                grid[-1].append(symbols[-1])
                if isinstance(cell, t.Sym):
                    letters[cell.name] = symbols[-1]
            else:
                grid[-1].append(to_sympy(cell))
    equations = [sum(row[:-1]) - row[-1] for row in grid]
    equations += [sum(column[:-1]) - column[-1] for column in zip(*grid, strict=True)]
    found = sympy.linsolve(equations, symbols) if symbols else None
    if symbols:
        if not found:
            raise NotExact("the totals of the table disagree")
        (values,) = found
        settled = dict(zip(symbols, values, strict=True))
    else:
        settled = {}
        if any(equations):
            raise NotExact("the totals of the table disagree")
    cells = {
        (rows[r], columns[c]): settled.get(value, value)
        for r, row in enumerate(grid)
        for c, value in enumerate(row)
    }
    return cells, {name: settled[symbol] for name, symbol in letters.items()}


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    cells, letters = _solved(drawing)
    value = None
    if reading.name == "count":
        row, column = (part.casefold() for part in reading.of)
        value = cells.get((row, column))
    elif reading.name == "letter":
        value = letters.get(reading.of[0])
    if value is None or not value.is_Rational:
        raise NotExact("the drawing does not show it")
    return number_tree(value)


MEASURING = Measuring(_measure)
