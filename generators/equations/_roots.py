"""How quadratic equations and their solutions are written, and the step from a product of 0."""

from __future__ import annotations

from fractions import Fraction

from generators.equations._writing import side
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Step
from itembank.notation import tree as t

ZERO = t.Int(0)
FACTOR_NOUGHT = "A product is 0 where one of its factors is 0."


def root_is(x: t.Sym, value: Fraction | int) -> t.Relation:
    """Return the line that says one solution."""
    return t.equals(x, number_node(value))


def root_or(x: t.Sym, *values: Fraction | int) -> t.Node:
    """Return the line that says all solutions, each once."""
    found = [root_is(x, value) for value in dict.fromkeys(values)]
    return t.Either(tuple(found)) if len(found) > 1 else found[0]


def two_brackets(x: t.Sym, a: int, b: int) -> t.Juxt:
    """Return (x + a)(x + b)."""
    return t.Juxt((t.Bracket(side(1, x, a)), t.Bracket(side(1, x, b))))


def trinomial(x: t.Sym, middle: int, end: int, lead: int = 1) -> t.Node:
    """Return lead·x² + middle·x + end, without what is 0."""
    square = t.juxt(t.Int(lead), t.Power(x, t.Int(2)))
    more = [t.juxt(t.num(middle), x)] if middle else []
    return t.add(square, *more, *([t.num(end)] if end else []))


def factors_told(a: int, b: int) -> str:
    """Return the sentence that finds the two numbers of the brackets."""

    def said(n: int) -> str:
        return str(n).replace("-", "−")

    return (
        f"Factorise: {said(a)} and {said(b)} multiply to {said(a * b)} and add up to {said(a + b)}."
    )


def either_bracket(x: t.Sym, a: int, b: int) -> Step:
    """Return the line that x + a or x + b is 0."""
    cases = t.equals(side(1, x, a), ZERO), t.equals(side(1, x, b), ZERO)
    return Step(FACTOR_NOUGHT, t.Either(cases))
