"""Measures a table of probabilities: its two rows by their lines, a letter by sympy's equation."""

from __future__ import annotations

from typing import Any

import sympy

from itembank.figures.drawing import Content, Drawing
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring, number_tree
from itembank.proof.measured.table.table_grid import cells_of


def _rows(drawing: Drawing) -> tuple[list[str], list[t.Node]]:
    """Return the outcomes and what is printed below each."""
    grid = cells_of(drawing)
    if len(grid) != 2:
        grid = [list(row) for row in zip(*grid, strict=True)]  # two columns instead
    if len(grid) != 2:
        raise NotExact("the table has neither two rows nor two columns")
    (_, *names), (_, *chances) = grid
    if any(not isinstance(name, str) for name in names):
        raise NotExact("an outcome has no name")
    if any(chance is None or isinstance(chance, str) for chance in chances):
        raise NotExact("an outcome has no probability")
    return [str(name) for name in names], [_node(chance) for chance in chances]


def _node(content: Content | None) -> t.Node:
    assert content is not None
    assert not isinstance(content, str)
    return content


def _values(drawing: Drawing) -> dict[str, Any]:
    names, chances = _rows(drawing)
    values = [to_sympy(chance) for chance in chances]
    letters = sympy.Add(*values).free_symbols
    if len(letters) > 1:
        raise NotExact("several letters stand in the table")
    if letters:
        (settled,) = sympy.solve(sympy.Add(*values) - 1, [*letters], dict=True)
        values = [value.subs(settled) for value in values]
    if sympy.Add(*values) != 1 or any(value < 0 for value in values):
        raise NotExact("the probabilities do not add up to 1")
    return {name.casefold(): value for name, value in zip(names, values, strict=True)}


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    values = _values(drawing)
    wanted = [name.casefold() for name in reading.of]
    if reading.name in ("probability", "not") and wanted and {*wanted} <= {*values}:
        either = sympy.Add(*(values[name] for name in wanted))
        return number_tree(either if reading.name == "probability" else 1 - either)
    if reading.name in ("largest", "smallest") and not wanted:
        best = (sympy.Max if reading.name == "largest" else sympy.Min)(*values.values())
        found = [name for name in _rows(drawing)[0] if values[name.casefold()] == best]
        if len(found) == 1:
            return t.Label(found[0])
    raise NotExact("the drawing does not show it")


def _relations(drawing: Drawing) -> tuple[t.Relation, ...]:
    _, chances = _rows(drawing)
    if not any(t.symbols(chance) for chance in chances):
        return ()
    return (t.equals(t.add(*chances), t.Int(1)),)


MEASURING = Measuring(_measure, _relations)
