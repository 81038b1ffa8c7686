"""The symbolic face: a tree as a sympy expression or equation, node by node.

This is the second road to every key, so it shares no arithmetic with
:mod:`itembank.notation.value`: all numbers are built by sympy itself. Importing this
module imports sympy.

>>> from itembank.notation.tree import add, frac
>>> to_sympy(add(frac(1, 2), frac(1, 3)))
5/6
"""

from __future__ import annotations

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
    match node:
        case t.Int(n):
            return sympy.Integer(n)
        case t.Dec(whole, places, recurring):
            value = sympy.Rational(f"{whole}.{places or '0'}")
            if recurring:
                # A geometric series: the block, shifted past `places`, times 1/(1 − 10^−n).
                block = sympy.Integer(recurring) / sympy.Integer(10) ** (
                    len(places) + len(recurring)
                )
                value += block / (1 - sympy.Integer(10) ** -len(recurring))
            return value
        case t.Sym(name):
            return symbol(name)
        case t.Blank():
            return symbol("□")
        case t.Frac(top, bottom):
            return to_sympy(top) / to_sympy(bottom)
        case t.Mixed(whole, n, d):
            return sympy.Integer(whole) + sympy.Rational(n, d)
        case t.Neg(of):
            return -to_sympy(of)
        case t.Percent(of):
            return to_sympy(of) / 100
        case t.Money(amount, sign):
            return to_sympy(amount) * _size(CURRENCY[sign].size)
        case t.Quantity(amount, unit):
            return to_sympy(amount) * _size(UNITS[unit].size)
        case t.MixedUnits(parts):
            return sympy.Add(*(to_sympy(part) for part in parts))
        case t.ClockTime():
            return _clock(node)
        case t.Power(base, exponent):
            return to_sympy(base) ** to_sympy(exponent)
        case t.Root(of, index):
            return sympy.real_root(to_sympy(of), index)
        case t.Bracket(of):
            return to_sympy(of)
        case t.Juxt(factors):
            return sympy.Mul(*(to_sympy(factor) for factor in factors))
        case t.Sum(first, rest):
            total = sympy.Add(
                to_sympy(first),
                *(to_sympy(term) if op == "+" else -to_sympy(term) for op, term in rest),
            )
            return total if times_in(node) is None else _of_the_day(total, times_in(node) == 1)
        case t.Product(first, rest):
            value = to_sympy(first)
            for pop, factor in rest:
                value = value / to_sympy(factor) if pop == "÷" else value * to_sympy(factor)
            return value
        case t.Ratio(parts) | t.Listing(parts) | t.Either(parts):
            return [to_sympy(part) for part in parts]
        case t.Relation(first, links):
            left, found = to_sympy(first), []
            for rop, right_node in links:
                right = to_sympy(right_node)
                found.append(_RELATIONS[rop](left, right))
                left = right
            return found[0] if len(found) == 1 else found
    raise t.NotationError(f"{type(node).__name__} has no value")
