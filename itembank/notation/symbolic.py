"""The symbolic face: a tree as a sympy expression or equation, node by node.

This is the second road to every key, so it shares no arithmetic with
:mod:`itembank.notation.value`: all numbers are built by sympy itself. Importing this
module imports sympy.

>>> from itembank.notation.tree import add, frac
>>> to_sympy(add(frac(1, 2), frac(1, 3)))
5/6
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import sympy

from itembank.notation import tree as t
from itembank.notation.clock import NEXT_DAY, times_in
from itembank.notation.units import CURRENCY, UNITS

_RELATIONS = {
    "=": sympy.Eq,
    "<": sympy.Lt,
    ">": sympy.Gt,
    "≤": sympy.Le,
    "≥": sympy.Ge,
    "≠": sympy.Ne,
}


def symbol(name: str) -> Any:
    """Return the sympy symbol for a letter; every letter stands for a real number."""
    return sympy.pi if name == "π" else sympy.Symbol(name, real=True)


def _size(size: Any) -> Any:
    return sympy.Rational(size.numerator, size.denominator)


def _clock(node: t.ClockTime) -> Any:
    """Return the seconds since midnight, by the hour hand: noon and midnight are 12."""
    hour = sympy.Integer(node.hour)
    if node.half:
        hour = sympy.Mod(hour, 12)
    since = hour + sympy.Rational(node.minute or 0, 60)
    return (since + 12 if node.half == "pm" else since) * 3600


def _of_the_day(total: Any, time: bool) -> Any:
    """Return a sum with times of day in it: a time goes round, a length of time may not."""
    # Mod of a letter would stand in the way of every solver.
    if total.free_symbols:
        return total
    if time:
        return sympy.Mod(total, 24 * 3600)
    if total.is_negative:
        raise t.NotationError(NEXT_DAY)
    return total


def to_sympy(node: t.Node) -> Any:
    """Return `node` as a sympy expression, quantities in the base unit of their dimension.

    A relation of two sides becomes a sympy relation; a longer one, a list of them.
    Ratios and lists become Python lists of expressions.

    Raises
    ------
    NotationError
        If the tree holds a name, which has no value.

    >>> from itembank.notation.tree import Int, Sym, equals, juxt
    >>> to_sympy(equals(juxt(Int(3), Sym("x")), Int(6)))
    Eq(3*x, 6)
    """
    worth = SYMPY.get(type(node))
    if worth is None:
        raise t.NotationError(f"{type(node).__name__} has no value")
    return worth(node)


def _dec(node: t.Dec) -> Any:
    places, recurring = node.places, node.recurring
    # From the digits as text: a float would make 0.1 another number.
    value = sympy.Rational(f"{node.whole}.{places or '0'}")
    if recurring:
        # A geometric series: the block, shifted past `places`, times 1/(1 − 10^−n).
        block = sympy.Integer(recurring) / sympy.Integer(10) ** (len(places) + len(recurring))
        value += block / (1 - sympy.Integer(10) ** -len(recurring))
    return value


def _trig(node: t.Trig) -> Any:
    of = to_sympy(node.of)
    if not node.inverse:
        made = {"sin": sympy.sin, "cos": sympy.cos, "tan": sympy.tan}[node.name]
        return made(of * sympy.pi / 180)
    if node.name != "tan" and (abs(of) - 1).is_positive:
        raise t.NotationError("no angle has a sine or cosine of more than 1")
    turned = {"sin": sympy.asin, "cos": sympy.acos, "tan": sympy.atan}[node.name]
    return turned(of) * 180 / sympy.pi


def _sum(node: t.Sum) -> Any:
    # One Add for all terms: to add one by one, sympy would sort them anew each time.
    total = sympy.Add(
        to_sympy(node.first),
        *(to_sympy(term) if op == "+" else -to_sympy(term) for op, term in node.rest),
    )
    times = times_in(node)
    return total if times is None else _of_the_day(total, times == 1)


def _product(node: t.Product) -> Any:
    value = to_sympy(node.first)
    for op, factor in node.rest:
        value = value / to_sympy(factor) if op == "÷" else value * to_sympy(factor)
    return value


def _relation(node: t.Relation) -> Any:
    left, found = to_sympy(node.first), []
    for op, side in node.rest:
        right = to_sympy(side)
        found.append(_RELATIONS[op](left, right))
        left = right
    return found[0] if len(found) == 1 else found


def _parts(node: t.Ratio | t.Listing | t.Either) -> Any:
    return [to_sympy(part) for part in node.parts]


SYMPY: dict[type, Callable[[Any], Any]] = {
    t.Int: lambda node: sympy.Integer(node.n),
    t.Dec: _dec,
    t.Sym: lambda node: symbol(node.name),
    t.Blank: lambda node: symbol("□"),
    t.Frac: lambda node: to_sympy(node.num) / to_sympy(node.den),
    t.Mixed: lambda node: sympy.Integer(node.whole) + sympy.Rational(node.num, node.den),
    t.Neg: lambda node: -to_sympy(node.of),
    t.Bracket: lambda node: to_sympy(node.of),
    t.Sum: _sum,
    t.Product: _product,
    t.Juxt: lambda node: sympy.Mul(*(to_sympy(factor) for factor in node.factors)),
    t.Percent: lambda node: to_sympy(node.of) / 100,
    t.Money: lambda node: to_sympy(node.amount) * _size(CURRENCY[node.sign].size),
    t.Quantity: lambda node: to_sympy(node.amount) * _size(UNITS[node.unit].size),
    t.MixedUnits: lambda node: sympy.Add(*(to_sympy(part) for part in node.parts)),
    t.ClockTime: _clock,
    t.Power: lambda node: to_sympy(node.base) ** to_sympy(node.exponent),
    t.Root: lambda node: sympy.real_root(to_sympy(node.of), node.index),
    t.Trig: _trig,
    t.Ratio: _parts,
    t.Listing: _parts,
    t.Either: _parts,
    t.Relation: _relation,
}
"""What each kind of node is on the second road; one that is not here has no value."""
