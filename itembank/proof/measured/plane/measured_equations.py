"""What equations between the labels of a drawing settle, by sympy's row reduction."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

import sympy

from itembank.notation import tree as t
from itembank.notation.symbolic import to_sympy
from itembank.proof.measured.measure import number_tree


class Settled:
    """Linear expressions that are nought; what has no label is got rid of before the letters."""

    def __init__(self, zeros: Iterable[Any]) -> None:
        rows = [sympy.sympify(zero) for zero in zeros]
        letters = sorted({s for row in rows for s in row.free_symbols}, key=_order)
        self.rows: list[Any] = []
        if letters:
            matrix, constants = sympy.linear_eq_to_matrix(rows, letters)
            reduced, _ = matrix.row_join(-constants).rref()
            columns = sympy.Matrix([*letters, 1])
            self.rows = [row for row in reduced * columns if row != 0]
        self._solved = {
            min(row.free_symbols, key=_order): row for row in self.rows if row.free_symbols
        }

    def value(self, expression: Any) -> Any:
        """Return what an expression comes to, None where it is not settled."""
        left = sympy.sympify(expression)
        for letter, row in self._solved.items():
            left = sympy.expand(left - left.coeff(letter) * row)
        return left if not left.free_symbols else None

    def relations(self, units: Mapping[str, t.Node]) -> tuple[t.Relation, ...]:
        """Return the equations between the printed letters alone."""
        out = []
        for row in self.rows:
            names = sorted(map(str, row.free_symbols))
            if all(len(name) == 1 for name in names):
                left: t.Node = t.Int(0)
                for name in names:
                    factor = number_tree(row.coeff(sympy.Symbol(name, real=True)))
                    left = t.add(left, t.times(factor, t.Sym(name)))
                constant = -row.subs(dict.fromkeys(row.free_symbols, 0))
                size = to_sympy(units[names[0]]) if names and names[0] in units else 1
                right = number_tree(constant / size)
                unit = units.get(names[0]) if names else None
                if isinstance(unit, t.Quantity):
                    right = t.Quantity(right, unit.unit)
                out.append(t.equals(left, right))
        return tuple(out)


def _order(symbol: Any) -> tuple[bool, str]:
    return (len(str(symbol)) == 1, str(symbol))


def unit_of_letters(labels: Iterable[t.Node], bare: str = "") -> dict[str, t.Node]:
    """Return the unit of each letter that has none behind it: `bare`, or that of other labels."""
    kept = list(labels)
    other = next((node.unit for node in kept if isinstance(node, t.Quantity)), "")
    unit = bare or other
    return {
        name: t.Quantity(t.Int(1), unit)
        for node in kept
        if unit and not isinstance(node, t.Quantity)
        for name in t.symbols(node)
    }
