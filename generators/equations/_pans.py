"""Equations on the pans of a balance, for working."""

from __future__ import annotations

from itembank.figures.figure import fault
from itembank.figures.kinds.balance import Balance
from itembank.notation import tree as t

MOST = 6
"""The most blocks on a pan: more are no help to the eye."""


def on_pans(equation: t.Relation) -> Balance | None:
    """Return a balance that shows an equation, or None where it has no such picture.

    Each side is a number, some of one letter, or both added.

    >>> from itembank.notation.parse import parse
    >>> shown = on_pans(parse("2x + 3 = 11"))
    >>> shown.left if shown else None
    (Sym(name='x'), Sym(name='x'), Int(n=3))
    >>> on_pans(parse("x - 3 = 11")) is None
    True
    """
    sides = [_blocks(side) for side in (equation.first, equation.rest[-1][1])]
    if not all(sides) or max(map(len, sides)) > MOST:
        return None
    balance = Balance(*sides)
    return None if fault(balance) else balance


def _blocks(side: t.Node) -> tuple[t.Node, ...]:
    """Return the blocks of one side; none where it cannot stand on a pan."""
    match side:
        case t.Int(n):
            return (side,) if n > 0 else ()
        case t.Sym():
            return (side,)
        case t.Juxt(factors=(t.Int(n), t.Sym() as letter)):
            return (letter,) * n
        case t.Sum(first=first, rest=rest) if all(op == "+" for op, _ in rest):
            rows = [_blocks(part) for part in (first, *(part for _, part in rest))]
            return tuple(block for row in rows for block in row) if all(rows) else ()
    return ()
