"""Writes what sympy has worked out in line notation, so that a teacher can read it.

Importing this module imports sympy.
"""

from __future__ import annotations

from typing import Any

import sympy

from itembank.notation import tree as t
from itembank.proof.claim.finding import text


def sympy_text(value: Any, proportional: bool = False) -> str:
    """Return a sympy expression, or a list of them, as people may read it.

    >>> x = sympy.Symbol("x", real=True)
    >>> sympy_text(x**2 - 5 * x / 2 + sympy.sqrt(2)), sympy_text([sympy.Rational(1, 2), x])
    ('x^2 - (5/2)x + √2', '1/2, x')
    """
    try:
        if isinstance(value, list | tuple):
            nodes = tuple(node_of(_tidy(part)) for part in value)
            if len(nodes) == 1:
                return text(nodes[0])
            return text(t.Ratio(nodes) if proportional else t.Listing(nodes))
        return text(node_of(value))
    except t.NotationError:
        return str(value)


def _tidy(value: Any) -> Any:
    """Return a number without roots in its denominator; an expression as it is."""
    return value if value.free_symbols or value.is_Rational else sympy.radsimp(sympy.expand(value))


def node_of(value: Any) -> t.Node:
    """Return a sympy expression as a tree.

    Raises:
        NotationError: it holds something that school notation has no sign for.
    """
    if value.could_extract_minus_sign() and not value.is_Add:
        of = node_of(-value)
        return t.Neg(t.Bracket(of) if isinstance(of, t.Sum) else of)
    if value.is_Integer:
        return t.Int(int(value))
    if value.is_Rational:
        return t.Frac(t.Int(int(value.p)), t.Int(int(value.q)))
    if value.is_Symbol:
        return t.Sym(value.name)
    if value == sympy.pi:
        return t.Sym("π")
    if value.is_Add:
        return _sum(value)
    if value.is_Pow:
        return _power(value)
    if value.is_Mul:
        return _product(value)
    raise t.NotationError(f"{value} has no school notation")


def _sum(value: Any) -> t.Node:
    top, bottom = value.as_numer_denom()
    if bottom != 1 and bottom.free_symbols:
        return t.Frac(node_of(sympy.expand(top)), node_of(bottom))
    letters = sorted(value.free_symbols, key=str)
    if letters and value.is_polynomial(*letters):
        first, *others = [node_of(term) for term in value.as_ordered_terms()]
    else:
        # A negative term does not lead where a positive one can.
        terms = sorted(value.args, key=lambda term: term.could_extract_minus_sign())
        first, *others = [node_of(term) for term in terms]
    rest: list[tuple[t.SumOp, t.Node]] = [
        ("-", term.of) if isinstance(term, t.Neg) else ("+", term) for term in others
    ]
    return t.Sum(first, tuple(rest))


def _power(value: Any) -> t.Node:
    base, exponent = value.as_base_exp()
    if exponent.is_Rational and exponent.p == 1 and exponent.q in (2, 3, 4):
        return t.Root(node_of(base), int(exponent.q))
    if exponent.could_extract_minus_sign():
        return t.Frac(t.Int(1), node_of(base**-exponent))
    below = node_of(base)
    return t.Power(
        below if isinstance(below, t.Int | t.Sym) else t.Bracket(below), node_of(exponent)
    )


def _product(value: Any) -> t.Node:
    top, bottom = sympy.fraction(value)
    if bottom != 1:
        number = sympy.Rational(value.as_coeff_Mul()[0])
        # A number before letters, (3/4)x, where one bar over everything would hide it.
        if bottom.is_Integer and not number.is_Integer and (value / number).is_polynomial():
            rest = node_of(value / number)
            if isinstance(rest, t.Sym | t.Power | t.Juxt | t.Bracket):
                more = rest.factors if isinstance(rest, t.Juxt) else (rest,)
                return t.Juxt((node_of(number), *more))
        return t.Frac(node_of(top), node_of(bottom))
    factors = [node_of(factor) for factor in value.as_ordered_factors()]
    shown = tuple(
        t.Bracket(factor) if isinstance(factor, t.Sum | t.Frac) else factor for factor in factors
    )
    if any(isinstance(factor, t.Int) for factor in shown[1:]) or any(
        not isinstance(factor, t.Int | t.Sym | t.Power | t.Root | t.Bracket) for factor in shown
    ):
        return t.Product(shown[0], tuple(("×", factor) for factor in shown[1:]))
    return t.Juxt(shown)
