"""Whether a relation holds, its letters worth what is known of them."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from itembank.notation import tree as t
from itembank.notation.algebra import algebra
from itembank.notation.quotients import Quotient, number
from itembank.notation.value import NotExact, sides
from itembank.proof.exact.reckoning.elimination import evaluate
from itembank.proof.exact.reckoning.ranges import SIGNS
from itembank.proof.exact.reckoning.surd import surd


def true(relation: t.Relation, known: dict[str, Fraction] | None = None) -> bool:
    """Return whether a relation holds, its letters worth what `known` says.

    Ratios are compared by proportion, lists item by item.

    Raises:
        NotExact: a letter is not known, or a side has no exact value.

    >>> from itembank.notation import parse
    >>> true(parse("6 : 4 = 3 : 2")), true(parse("√12 = 2√3 < 3.5")), true(parse("√2 > 3/2"))
    (True, True, False)
    """
    known = known or {}
    for left, op, right in sides(relation):
        if isinstance(left, t.Ratio | t.Listing) or isinstance(right, t.Ratio | t.Listing):
            if op not in ("=", "≠"):
                raise NotExact("a ratio or a list is equal to another or not, and has no order")
            if _same_row(left, right, known) != (op == "="):
                return False
        elif not _holds(left, op, right, known):
            return False
    return True


def _same_row(left: t.Node, right: t.Node, known: dict[str, Fraction]) -> bool:
    """Tell whether two ratios are in proportion, or two lists the same number by number."""
    a, b = _all(left, known), _all(right, known)
    if len(a) != len(b):
        return False
    if isinstance(left, t.Ratio) and isinstance(right, t.Ratio):
        return in_proportion(a, b)
    return a == b


def in_proportion(a: Sequence[Fraction], b: Sequence[Fraction]) -> bool:
    """Tell whether two rows of numbers, of one length, are in one ratio.

    >>> in_proportion([Fraction(6), Fraction(4)], [Fraction(3), Fraction(2)])
    True
    >>> in_proportion([Fraction(0), Fraction(0)], [Fraction(3), Fraction(2)])
    False
    """
    # Against a part that is not zero: the cross products with a zero agree for any other parts.
    k = next((i for i, part in enumerate(b) if part), None)
    if k is None or not a[k]:
        return False
    return all(x * b[k] == y * a[k] for x, y in zip(a, b, strict=True))


def _holds(left: t.Node, op: str, right: t.Node, known: dict[str, Fraction]) -> bool:
    try:
        # Most lines are rational, and that is the quick way.
        gap = evaluate(left, known) - evaluate(right, known)
        sign = (gap > 0) - (gap < 0)
    except NotExact:
        at = {name: number(value) for name, value in known.items()}
        a, b = algebra(left, at), algebra(right, at)
        if op == "=":
            return a == b
        sign = surd(a - b).sign
    return sign in SIGNS[op]


def _all(node: t.Node, known: dict[str, Fraction]) -> list[Fraction]:
    pieces = node.parts if isinstance(node, t.Ratio | t.Listing) else (node,)
    return [evaluate(piece, known) for piece in pieces]


def expression_parts(node: t.Node) -> list[Quotient]:
    """Return an expression, or each part of a ratio, as a quotient of polynomials."""
    return [algebra(part) for part in (node.parts if isinstance(node, t.Ratio) else (node,))]


def values_of(node: t.Node) -> list[Quotient]:
    """Return the numbers of a list, of a relation's sides, or the one number."""
    if isinstance(node, t.Listing):
        return [value for part in node.parts for value in values_of(part)]
    if isinstance(node, t.Relation):
        return [
            value for side in (node.first, *(b for _, b in node.rest)) for value in values_of(side)
        ]
    return expression_parts(node)
