"""The second road to expressions and formulas. Importing this module imports sympy."""

from __future__ import annotations

import itertools
from typing import Any

import sympy

from itembank.items.asks import Rewrite, Subject
from itembank.notation import tree as t
from itembank.notation.symbolic import symbol, to_sympy
from itembank.notation.value import NotExact
from itembank.proof.claim.finding import Finding, found
from itembank.proof.claim.key_solutions import Misfit, subjects_given
from itembank.proof.sympy.sympy_text import sympy_text
from itembank.proof.sympy.sympy_zero import is_zero


def rewritten(ask: Rewrite, key: t.Node) -> Finding:
    """Return sympy's expansion of an expression, and whether the key is worth the same.

    >>> from itembank.notation import parse
    >>> ask = Rewrite(parse("(x + 2)(x + 3)"), "expand")
    >>> rewritten(ask, parse("x^2 + 5x + 7")).fault
    'it comes to x^2 + 5x + 6, the key says x^2 + 5x + 7'
    """
    if isinstance(key, t.Relation | t.Listing | t.Either | t.Ratio):
        return found("", key, False, "the key is not an expression")
    ours, theirs = to_sympy(ask.target), to_sympy(key)
    if is_zero(ours - theirs):
        return Finding(sympy_text(theirs))
    return found(sympy_text(sympy.expand(sympy.cancel(ours))), key, False)


def subject(ask: Subject, key: t.Node) -> Finding:
    """Return sympy's formula with the letter alone, and whether the key says the same.

    >>> from itembank.notation import parse
    >>> ask = Subject(parse("y = 3x + 2"), t.Sym("x"))
    >>> subject(ask, parse("x = (y - 2)/3")).fault
    ''
    """
    relation, letter = ask.relation, ask.letter
    if len(relation.rest) != 1 or relation.rest[0][0] != "=":
        raise NotExact("this is not one equation")
    gap = to_sympy(relation.first) - to_sympy(relation.rest[0][1])
    name = symbol(letter.name)
    # A fraction is zero where its top is, so that the letter may stand below a bar as well.
    formula = sympy.Poly(sympy.numer(sympy.together(gap)), name)
    powers = {k for (k,) in formula.monoms()}
    power = formula.degree()
    if power < 1 or powers - {0, power}:
        raise NotExact(f"sympy cannot bring {letter.name} to one side")
    value = -formula.nth(0) / formula.nth(power)
    ours = f"{letter.name} = {sympy_text(sympy.cancel(value))}" if power == 1 else ""
    try:
        given = subjects_given(key, letter)
    except Misfit as error:
        return found(ours, key, False, str(error))
    if any(not is_zero(_raised(to_sympy(node), power) - value) for node in given):
        return found(ours, key, False)
    if power == 1 and len(given) > 1:
        return found(ours, key, False)
    if power % 2 == 0:
        # Roots with the right power differ by a sign, or are one root written in two ways.
        pairs = itertools.combinations(map(to_sympy, given), 2)
        if not any(is_zero(root + partner) for root, partner in pairs):
            raise NotExact("the key gives one of two roots")
    return found(ours, key, True)


def _raised(value: Any, power: int) -> Any:
    """Return a power, real roots of letters taken for the roots that undo it."""
    if power == 1:
        return value
    plain = value.replace(
        lambda part: isinstance(part, sympy.Piecewise),
        lambda part: part.args[-1].expr,
    )
    return sympy.powdenest(sympy.expand_power_base(plain**power, force=True), force=True)
