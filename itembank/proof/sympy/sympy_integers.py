"""The second road to sequences, common factors and multiples, and rounding.

Importing this module imports sympy.
"""

from __future__ import annotations

import functools
from typing import Any, Literal

import sympy

from itembank.items.asks import Common, Round, Sequence
from itembank.notation import tree as t
from itembank.notation.symbolic import symbol, to_sympy
from itembank.notation.value import NotExact
from itembank.proof.claim.finding import Finding, found, ordinal
from itembank.proof.claim.key_solutions import value_given
from itembank.proof.sympy.sympy_text import sympy_text
from itembank.proof.sympy.sympy_zero import is_zero


def nth_term(ask: Sequence, key: t.Node) -> Finding:
    """Return the polynomial through the terms (Lagrange), and whether the key is it."""
    n = symbol("n")
    values = [to_sympy(term) for term in ask.terms]
    rule = value_given(key)
    if t.symbols(rule) - {"n"}:
        return found("", key, False, "the key is not an expression in n")
    given = to_sympy(rule)
    through = sympy.expand(sympy.interpolate(values, n))
    degree = sympy.degree(through, n) if through.has(n) else 0
    # One term more than the polynomial needs, as the other road asks by its differences.
    plain = degree <= 2 and len(values) >= degree + 2
    ours = sympy_text(through) if plain else ""
    for place, value in enumerate(values, start=1):
        if not is_zero(given.subs(n, place) - value):
            return found(ours, key, False, f"they first differ at the {ordinal(place)} term")
    if not plain:
        raise NotExact("no polynomial of a low degree goes through all of the terms")
    return found(ours, key, is_zero(given - through))


def common(ask: Common, key: t.Node) -> Finding:
    """Return sympy's highest common factor or lowest common multiple, and whether it is the key."""
    values = [to_sympy(node) for node in ask.numbers]
    join = sympy.gcd if ask.detail == "hcf" else sympy.lcm
    if all(value.is_Integer and value > 0 for value in values):
        # The first road takes Euclid's way, so this one takes primes.
        ours = _by_primes(values, min if ask.detail == "hcf" else max)
    elif all(
        value.is_Mul or value.is_Symbol or value.is_Pow or value.is_Integer for value in values
    ):
        ours = functools.reduce(join, values)
    else:
        raise NotExact("these are not whole numbers")
    given = to_sympy(value_given(key))
    return found(sympy_text(ours), key, is_zero(ours - given))


def _by_primes(values: list[Any], pick: Any) -> Any:
    """Return the product of the primes, each to its least or greatest power."""
    factored = [sympy.factorint(value) for value in values]
    primes = {prime for powers in factored for prime in powers}
    return sympy.Integer(1) * sympy.prod(
        sympy.Integer(prime) ** pick(powers.get(prime, 0) for powers in factored)
        for prime in primes
    )


def rounded(ask: Round, key: t.Node) -> Finding:
    """Return the target rounded by sympy, halves away from zero, and whether it is the key."""
    return rounded_value(to_sympy(ask.target), ask.detail, ask.amount, key, ask.way)


def rounded_value(
    worth: Any,
    detail: Literal["places", "figures", "nearest"],
    amount: int,
    key: t.Node,
    way: Literal["nearest", "down", "up"] = "nearest",
) -> Finding:
    """Return a number of sympy's, in base units, rounded as :func:`rounded` does a tree."""
    given = value_given(key)
    if isinstance(worth, list):
        raise NotExact("only one number is rounded")
    value = worth / _unit(given)
    if value.free_symbols:
        raise NotExact("a number with a letter in it cannot be rounded")
    size = sympy.Abs(value)
    if detail == "nearest":
        step = sympy.Integer(amount)
    elif detail == "places":
        step = sympy.Integer(10) ** -amount
    else:
        places = sympy.floor(sympy.log(size, 10)) if size != 0 else sympy.Integer(0)
        # The logarithm is only a guess at the first digit's place: put it right.
        while size >= sympy.Integer(10) ** (places + 1):
            places += 1
        while size != 0 and size < sympy.Integer(10) ** places:
            places -= 1
        step = sympy.Integer(10) ** (places - amount + 1)
    steps = size / step
    whole = {
        "nearest": sympy.floor(steps + sympy.Rational(1, 2)),
        "down": sympy.floor(steps),
        "up": sympy.ceiling(steps),
    }[way]
    ours = sympy.sign(value) * whole * step
    return found(sympy_text(ours), key, is_zero(ours - to_sympy(given) / _unit(given)))


def _unit(node: t.Node) -> Any:
    """Return the size of the unit that a number is given in."""
    from itembank.notation.tree import Int

    match node:
        case t.Neg(of):
            return _unit(of)
        case t.Money(_, sign):
            return to_sympy(t.Money(Int(1), sign))
        case t.Quantity(_, unit):
            return to_sympy(t.Quantity(Int(1), unit))
        case t.Percent():
            return sympy.Rational(1, 100)
    return sympy.Integer(1)
