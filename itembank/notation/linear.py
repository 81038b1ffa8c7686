"""The linear form of a tree in letters: the coefficient of each letter, and the constant."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from typing import Any

from itembank.notation import tree as t
from itembank.notation.clock import times_in
from itembank.notation.units import CURRENCY, UNITS
from itembank.notation.value import ONE, ZERO, NotExact, exact, over, power_of

Linear = dict[str, Fraction]
"""A linear form: the coefficient of each letter, the constant under the empty string."""


def linear(node: t.Node, known: dict[str, Fraction] | None = None) -> Linear:
    """Return `node` as a linear form in its letters, `known` letters replaced by values.

    Raises
    ------
    NotExact
        If the tree is not linear in the letters that are left.

    >>> from itembank.notation.tree import Sym, juxt, num, sub
    >>> linear(sub(juxt(num(3), Sym("x")), num(4)))
    {'x': Fraction(3, 1), '': Fraction(-4, 1)}
    """
    form = LINEAR.get(type(node))
    return form(node, known or {}) if form else {"": exact(node)}


def constant(form: Linear) -> Fraction:
    """Return the constant of a linear form in which every letter has coefficient zero."""
    if any(c for name, c in form.items() if name):
        raise NotExact("a letter is left over")
    return form.get("", ZERO)


def _multiply(a: Linear, b: Linear) -> Linear:
    if not any(name for name in b):
        c = b.get("", ZERO)
        return {name: v * c for name, v in a.items()}
    if not any(name for name in a):
        c = a.get("", ZERO)
        return {name: v * c for name, v in b.items()}
    raise NotExact("letters are multiplied together")


def _divide(a: Linear, b: Linear) -> Linear:
    # A letter whose coefficients cancelled to 0 does no harm below the bar.
    if any(c for name, c in b.items() if name):
        raise NotExact("a letter stands in a denominator")
    bottom = b.get("", ZERO)
    return {name: over(v, bottom) for name, v in a.items()}


def _scaled(form: Linear, size: Fraction | int) -> Linear:
    return {name: c * size for name, c in form.items()}


def _linear_letter(name: str, known: Linear) -> Linear:
    return {"": known[name]} if name in known else {name: ONE}


def _linear_sum(node: t.Sum, known: Linear) -> Linear:
    # With a letter the sum may still be a time or a length, so the day goes round in neither.
    if times_in(node) is not None and not t.symbols(node):
        return {"": exact(node)}
    total = dict(linear(node.first, known))
    for op, term in node.rest:
        for name, c in linear(term, known).items():
            total[name] = total.get(name, ZERO) + (c if op == "+" else -c)
    return total


def _linear_product(node: t.Product, known: Linear) -> Linear:
    product = linear(node.first, known)
    for op, factor in node.rest:
        form = linear(factor, known)
        product = _divide(product, form) if op == "÷" else _multiply(product, form)
    return product


def _linear_side_by_side(node: t.Juxt, known: Linear) -> Linear:
    product: Linear = {"": ONE}
    for factor in node.factors:
        product = _multiply(product, linear(factor, known))
    return product


def _linear_mixed_units(node: t.MixedUnits, known: Linear) -> Linear:
    first, *rest = node.parts
    return linear(t.Sum(first, tuple(("+", part) for part in rest)), known)


def _linear_power(node: t.Power, known: Linear) -> Linear:
    base = linear(node.base, known)
    # Also where a letter stood in it and is known.
    if set(base) <= {""}:
        return {"": power_of(base.get("", ZERO), exact(node.exponent))}
    if exact(node.exponent) == 1:
        return base
    raise NotExact("a power of a letter is not linear")


LINEAR: dict[type, Callable[[Any, Linear], Linear]] = {
    t.Sym: lambda node, known: _linear_letter(node.name, known),
    t.Blank: lambda node, known: _linear_letter("□", known),
    t.Neg: lambda node, known: {name: -c for name, c in linear(node.of, known).items()},
    t.Bracket: lambda node, known: linear(node.of, known),
    t.Sum: _linear_sum,
    t.Frac: lambda node, known: _divide(linear(node.num, known), linear(node.den, known)),
    t.Juxt: _linear_side_by_side,
    t.Product: _linear_product,
    t.Percent: lambda node, known: _scaled(linear(node.of, known), Fraction(1, 100)),
    t.Money: lambda node, known: _scaled(linear(node.amount, known), CURRENCY[node.sign].size),
    t.Quantity: lambda node, known: _scaled(linear(node.amount, known), UNITS[node.unit].size),
    t.MixedUnits: _linear_mixed_units,
    t.Power: _linear_power,
}
"""How each kind of node depends on the letters in it, where it may do so; else it is a number."""
