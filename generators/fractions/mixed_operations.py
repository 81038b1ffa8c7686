"""Fractions with several operations, to be worked out in the right order."""

from __future__ import annotations

from fractions import Fraction
from math import gcd
from typing import Any

from generators.fractions._misconceptions import ADD_ACROSS
from generators.fractions._operations import (
    ADDS_BEFORE_DIVIDING,
    LEFT_TO_RIGHT,
    NO_BRACKETS,
    SQUARE_DOUBLES,
    Pair,
    difference_times,
    divided_by_sum,
    quotient_of_brackets,
    square_and_quotient,
    sum_divided,
    sum_product,
    times_sum,
)
from generators.fractions.divide import NO_FLIP
from generators.fractions.multiply import FLIP
from itembank.items import kinds
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Draft, Tier
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

EASY: tuple[Pair, ...] = (
    (1, 2),
    (1, 3),
    (2, 3),
    (1, 4),
    (3, 4),
    (1, 5),
    (2, 5),
    (3, 5),
    (1, 6),
    (5, 6),
    (1, 8),
    (3, 8),
    (5, 8),
    (1, 10),
    (3, 10),
    (1, 12),
    (1, 15),
    (2, 15),
    (1, 16),
    (3, 16),
    (1, 20),
    (3, 20),
)
FULL: tuple[Pair, ...] = (
    (1, 2),
    (1, 3),
    (2, 3),
    (1, 4),
    (3, 4),
    (2, 5),
    (3, 5),
    (4, 5),
    (5, 6),
    (3, 8),
)
SMALL: tuple[Pair, ...] = ((1, 2), (2, 3), (1, 4), (3, 4), (2, 5), (5, 6))
LARGEST_BOTTOM = 60


def _support(kind: int, p: Pair, q: Pair, n: int) -> bool:
    """Keep p + q × n (kind 0) and n × (p + q) (kind 1), the sum not whole."""
    if p == q:
        return False
    (a, b), (c, d) = p, q
    top = a * d + b * c * n if kind == 0 else n * (a * d + b * c)
    # One bottom is a multiple of the other, and the answer is a proper fraction.
    if top >= b * d or (b % d and d % b):
        return False
    if kind == 1:
        return a * d < b * c and (n * a * d + c * b) * (b + d) != n * (a + c) * b * d
    # Working left to right and working across must not give the same wrong answer.
    common = gcd(c * n, d)
    return (a * d + b * c) * n * (b + d // common) != b * d * (a + c * n // common)


def _core(kind: int, p: Pair, q: Pair, r: Pair) -> bool:
    """Keep p + q × r, (p + q) ÷ r, r ÷ (p + q), (p − q) × r with numbers of moderate size."""
    (a, b), (c, d), (e, f) = p, q, r
    if p in (q, r) or q == r or (kind == 0 and q > r):
        return False
    if kind == 0:
        top, bottom = a * d * f + b * c * e, b * d * f
        common = gcd(c * e, d * f)
        across = (a + c * e // common, b + d * f // common)
        if (a * d + b * c) * e * across[1] == b * d * f * across[0]:
            return False
    elif kind == 3:
        if a * d <= b * c or a * d * f == b * c * (e + f):
            return False
        top, bottom = (a * d - b * c) * e, b * d * f
    else:
        if a * d >= b * c or a * d + b * c == b * d:
            return False
        top, bottom = (a * d + b * c) * f, b * d * e
        if kind == 2:
            top, bottom = bottom, top
    return top != bottom and bottom // gcd(top, bottom) <= LARGEST_BOTTOM


def _challenge(kind: int, p: Pair, q: Pair, r: Pair, s: Pair) -> bool:
    """Keep (p + q) ÷ (r − s), and p² + q ÷ r with s unused and so fixed."""
    (a, b), (c, d), (e, f), (g, h) = p, q, r, s
    if kind == 1:
        if s != SMALL[0] or q == r:
            return False
        top, bottom = a * a * d * e + b * b * c * f, b * b * d * e
    else:
        if a * d >= b * c or e * h <= f * g or p == r or q == r:
            return False
        top = (a * d + b * c) * f * h
        bottom = b * d * (e * h - f * g)
        if top == bottom:
            return False
    return top % bottom != 0 and bottom // gcd(top, bottom) <= 50


def _gone_wrong(kind: int, p: Pair, q: Pair, r: Pair) -> tuple[kinds.WrongSolution, ...]:
    """Return how calculations with fractions are done in the wrong order."""
    x, y, z = Fraction(*p), Fraction(*q), Fraction(*r)
    X, Z = number_node(x), number_node(z)
    wrong = kinds.WrongSolution
    if kind == 0:
        lines = (t.times(number_node(x + y), Z), number_node((x + y) * z))
        return (wrong(LEFT_TO_RIGHT, lines),)
    if kind == 1:
        lines = (t.add(X, number_node(y / z)), number_node(x + y / z))
        turned = (t.divide(number_node(x + y), Z), t.times(number_node(x + y), Z))
        return (
            wrong(NO_BRACKETS, lines),
            wrong(NO_FLIP, (*turned, number_node((x + y) * z)), 2),
        )
    if kind == 2:
        turned = (t.divide(Z, number_node(x + y)), t.times(Z, number_node(x + y)))
        return (wrong(NO_FLIP, (*turned, number_node(z * (x + y))), 2),)
    if x > y * z:
        return (wrong(NO_BRACKETS, (t.sub(X, number_node(y * z)), number_node(x - y * z))),)
    return ()


def _gone_wrong_whole(kind: int, p: Pair, q: Pair, n: int) -> tuple[kinds.WrongSolution, ...]:
    if kind == 0:
        return _gone_wrong(0, p, q, (n, 1))
    x, y = Fraction(*p), Fraction(*q)
    lines = (t.add(number_node(n * x), number_node(y)), number_node(n * x + y))
    return (kinds.WrongSolution(NO_BRACKETS, lines),)


@register
class MixedOperations(Topic):
    """Two and three operations on fractions, with and without brackets and squares."""

    id = "fractions.mixed-operations"
    title = "Fractions and the order of operations"
    statements = ("number.priority", "number.operations")
    misconceptions = (
        LEFT_TO_RIGHT,
        ADDS_BEFORE_DIVIDING,
        NO_BRACKETS,
        SQUARE_DOUBLES,
        ADD_ACROSS,
        NO_FLIP,
        FLIP,
    )
    prerequisites = ("fractions.add-unlike", "fractions.multiply", "fractions.divide")
    spaces = {
        Tier.SUPPORT: kinds.with_wrong_solutions(
            kinds.with_claims_and_matches(
                Space(_support, kind=(0, 1), p=EASY, q=EASY, n=(2, 3, 4, 5))
            ),
            _gone_wrong_whole,
        ),
        Tier.CORE: kinds.with_wrong_solutions(
            kinds.with_claims_and_matches(Space(_core, kind=range(4), p=FULL, q=FULL, r=SMALL)),
            _gone_wrong,
        ),
        Tier.CHALLENGE: kinds.with_claims_and_matches(
            Space(_challenge, kind=(0, 1), p=FULL, q=SMALL, r=FULL, s=SMALL[:4])
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            kind, p, q, n = values
            return sum_product(p, q, (n, 1)) if kind == 0 else times_sum((n, 1), p, q)
        if tier is Tier.CORE:
            kind, p, q, r = values
            if kind == 0:
                return sum_product(p, q, r)
            if kind == 3:
                return difference_times(p, q, r)
            return sum_divided(p, q, r) if kind == 1 else divided_by_sum(r, p, q)
        kind, p, q, r, s = values
        return quotient_of_brackets(p, q, r, s) if kind == 0 else square_and_quotient(p, q, r)
