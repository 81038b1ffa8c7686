"""The linear form of a tree in letters: the coefficient of each letter, and the constant."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction
from typing import Any

from itembank.notation import tree as t
from itembank.notation.clock import times_in
from itembank.notation.units import CURRENCY, UNITS
from itembank.notation.value import (
    ZERO,
    NotExact,
    Rational,
    exact,
    fraction_of,
    over,
    power_of,
    worth,
)

Linear = dict[str, Fraction]
"""A linear form: the coefficient of each letter, the constant under the empty string."""
Form = dict[str, Rational]
"""A linear form that is still reckoned with: what is whole in it may be an int."""
Known = Mapping[str, Rational]


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
    return {name: fraction_of(c) for name, c in form_of(node, known or {}).items()}


def form_of(node: t.Node, known: Known) -> Form:
    """Return `node` as a linear form to reckon on with, `known` letters replaced by values.

    Raises
    ------
    NotExact
        If the tree is not linear in the letters that are left.

    >>> from itembank.notation.tree import Sym, juxt, num, sub
    >>> form_of(sub(juxt(num(3), Sym("x")), num(4)), {})
    {'x': 3, '': -4}
    """
    form = LINEAR.get(type(node))
    return form(node, known) if form else {"": worth(node)}


def constant(form: Known) -> Fraction:
    """Return the constant of a linear form in which every letter has coefficient zero."""
    for name, c in form.items():
        if name and c:
            raise NotExact("a letter is left over")
    return fraction_of(form.get("", ZERO))


def _multiply(a: Form, b: Form) -> Form:
    if not any(b):
        c = b.get("", 0)
        return {name: v * c for name, v in a.items()}
    if not any(a):
        c = a.get("", 0)
        return {name: v * c for name, v in b.items()}
    raise NotExact("letters are multiplied together")


def _divide(a: Form, b: Form) -> Form:
    # A letter whose coefficients cancelled to 0 does no harm below the bar.
    if any(c for name, c in b.items() if name):
        raise NotExact("a letter stands in a denominator")
    bottom = b.get("", 0)
    return {name: over(v, bottom) for name, v in a.items()}


def _scaled(form: Form, size: Rational) -> Form:
    return {name: c * size for name, c in form.items()}


def _linear_letter(name: str, known: Known) -> Form:
    return {"": known[name]} if name in known else {name: 1}


def _linear_sum(node: t.Sum, known: Known) -> Form:
    # With a letter the sum may still be a time or a length, so the day goes round in neither.
    if times_in(node) is not None and not t.symbols(node):
        return {"": worth(node)}
    total = dict(form_of(node.first, known))
    for op, term in node.rest:
        for name, c in form_of(term, known).items():
            total[name] = total.get(name, 0) + (c if op == "+" else -c)
    return total


def _linear_product(node: t.Product, known: Known) -> Form:
    product = form_of(node.first, known)
    for op, factor in node.rest:
        form = form_of(factor, known)
        product = _divide(product, form) if op == "÷" else _multiply(product, form)
    return product


def _linear_side_by_side(node: t.Juxt, known: Known) -> Form:
    product: Form = {"": 1}
    for factor in node.factors:
        product = _multiply(product, form_of(factor, known))
    return product


def _linear_mixed_units(node: t.MixedUnits, known: Known) -> Form:
    first, *rest = node.parts
    return form_of(t.Sum(first, tuple(("+", part) for part in rest)), known)


def _linear_power(node: t.Power, known: Known) -> Form:
    base = form_of(node.base, known)
    # Also where a letter stood in it and is known.
    if set(base) <= {""}:
        return {"": power_of(fraction_of(base.get("", 0)), exact(node.exponent))}
    if exact(node.exponent) == 1:
        return base
    raise NotExact("a power of a letter is not linear")


LINEAR: dict[type, Callable[[Any, Known], Form]] = {
    t.Sym: lambda node, known: _linear_letter(node.name, known),
    t.Blank: lambda node, known: _linear_letter("□", known),
    t.Neg: lambda node, known: {name: -c for name, c in form_of(node.of, known).items()},
    t.Bracket: lambda node, known: form_of(node.of, known),
    t.Sum: _linear_sum,
    t.Frac: lambda node, known: _divide(form_of(node.num, known), form_of(node.den, known)),
    t.Juxt: _linear_side_by_side,
    t.Product: _linear_product,
    t.Percent: lambda node, known: _scaled(form_of(node.of, known), Fraction(1, 100)),
    t.Money: lambda node, known: _scaled(form_of(node.amount, known), CURRENCY[node.sign].size),
    t.Quantity: lambda node, known: _scaled(form_of(node.amount, known), UNITS[node.unit].size),
    t.MixedUnits: _linear_mixed_units,
    t.Power: _linear_power,
}
"""How each kind of node depends on the letters in it, where it may do so; else it is a number."""
