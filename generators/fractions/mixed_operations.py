"""Fractions with several operations, to be worked out in the right order."""

from __future__ import annotations

from fractions import Fraction
from math import gcd, lcm
from typing import Any

from generators.fractions._answers import answer_form
from generators.fractions._misconceptions import ADD_ACROSS
from generators.fractions.divide import NO_FLIP
from generators.fractions.multiply import FLIP
from itembank.items.forms.form_rules import number_node, simplest_node
from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.slips import slips
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation.tree import (
    Bracket,
    Frac,
    Int,
    Node,
    Power,
    Product,
    Relation,
    add,
    divide,
    frac,
    sub,
    times,
)

LEFT_TO_RIGHT = Misconception(
    "fractions.order-left-to-right",
    "works from left to right, adding before multiplying",
    "What is 1 + 2 × 3? Which part do you work out first?",
)
ADDS_BEFORE_DIVIDING = Misconception(
    "fractions.order-adds-before-dividing",
    "works from left to right, adding before dividing",
    "What is 1 + 6 ÷ 2? Which part do you work out first?",
)
NO_BRACKETS = Misconception(
    "fractions.order-ignores-brackets",
    "pays no attention to the brackets",
    "What do brackets tell you to do first? Which part did you work out first?",
)
SQUARE_DOUBLES = Misconception(
    "fractions.order-square-doubles",
    "doubles where the fraction should be squared",
    "What is the area of a square with sides of 1/2? Can it be as much as 1?",
)

Pair = tuple[int, int]
"""A fraction as numerator and denominator."""

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


@register
class MixedOperations(Topic):
    """Two and three operations on fractions, with and without brackets and squares."""

    id = "fractions.mixed-operations"
    title = "Fractions and the order of operations"
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
        Tier.SUPPORT: Space(_support, kind=(0, 1), p=EASY, q=EASY, n=(2, 3, 4, 5)),
        Tier.CORE: Space(_core, kind=range(4), p=FULL, q=FULL, r=SMALL),
        Tier.CHALLENGE: Space(_challenge, kind=(0, 1), p=FULL, q=SMALL, r=FULL, s=SMALL[:4]),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            kind, p, q, n = values
            return _sum_product(p, q, (n, 1)) if kind == 0 else _times_sum((n, 1), p, q)
        if tier is Tier.CORE:
            kind, p, q, r = values
            if kind == 0:
                return _sum_product(p, q, r)
            if kind == 3:
                return _difference_times(p, q, r)
            return _sum_divided(p, q, r) if kind == 1 else _divided_by_sum(r, p, q)
        kind, p, q, r, s = values
        return _quotient_of_brackets(p, q, r, s) if kind == 0 else _square_and_quotient(p, q, r)


def _value(pair: Pair) -> Fraction:
    return Fraction(*pair)


def _node(pair: Pair) -> Node:
    return number_node(_value(pair))


def _across(p: Fraction, q: Fraction) -> Fraction:
    return Fraction(p.numerator + q.numerator, p.denominator + q.denominator)


def _chain(*sides: Node) -> Relation:
    """Return the sides joined by =, a side equal to the one before left out."""
    kept = [sides[0]]
    for side in sides[1:]:
        if side != kept[-1]:
            kept.append(side)
    return Relation(kept[0], tuple(("=", side) for side in kept[1:]))


def _combine(say: str, p: Fraction, q: Fraction, op: str) -> Step:
    """Return the line that works out p op q over a common denominator, or by multiplying."""
    left, right = number_node(p), number_node(q)
    if op in "+-":
        bottom = lcm(p.denominator, q.denominator)
        s, t = int(p * bottom), int(q * bottom)
        join = add if op == "+" else sub
        top = s + t if op == "+" else s - t
        over = join(frac(s, bottom), frac(t, bottom))
        result = number_node(Fraction(top, bottom))
        return Step(say, _chain(join(left, right), over, frac(top, bottom), result))
    if op == "×":
        shown: list[Node] = [times(left, right)]
    else:
        q = 1 / q
        turned = frac(q.numerator, q.denominator)
        shown = [divide(left, right), times(left, turned)]
    raw = (p.numerator * q.numerator, p.denominator * q.denominator)
    below: Node = times(Int(p.denominator), Int(q.denominator))
    if 1 in (p.denominator, q.denominator):
        below = Int(raw[1])
    across = Frac(times(Int(p.numerator), Int(q.numerator)), below)
    return Step(say, _chain(*shown, across, frac(*raw), number_node(p * q)))


def _finished(steps: list[Step], value: Fraction) -> tuple[Step, ...]:
    if value > 1 and value.denominator > 1:
        line = _chain(number_node(value), simplest_node(value))
        steps.append(Step("Write it as a mixed number.", line))
    return tuple(steps)


def _draft(
    asked: Node, value: Fraction, steps: list[Step], twin: tuple[object, ...], *wrong: Any
) -> Draft:
    wanted, form = answer_form(value)
    return Draft(
        prompt("Work out {e}." + wanted, e=asked),
        Find(asked),
        simplest_node(value),
        form,
        _finished(steps, value),
        slips(*wrong),
        twin,
    )


def _sum_product(p: Pair, q: Pair, r: Pair) -> Draft:
    """P + q × r."""
    x, y, z = _value(p), _value(q), _value(r)
    steps = [
        _combine("Multiply first.", y, z, "×"),
        _combine("Then add, over a common denominator.", x, y * z, "+"),
    ]
    return _draft(
        add(_node(p), times(_node(q), _node(r))),
        x + y * z,
        steps,
        ("a+b*c", p, *sorted((q, r))),
        (LEFT_TO_RIGHT, (x + y) * z),
        (ADD_ACROSS, _across(x, y * z)),
    )


def _times_sum(n: Pair, p: Pair, q: Pair) -> Draft:
    """N × (p + q)."""
    x, y, z = _value(n), _value(p), _value(q)
    steps = [
        _combine("Work out the brackets first.", y, z, "+"),
        _combine("Then multiply.", x, y + z, "×"),
    ]
    return _draft(
        times(_node(n), Bracket(add(_node(p), _node(q)))),
        x * (y + z),
        steps,
        ("n(a+b)", n, p, q),
        (NO_BRACKETS, x * y + z),
        (ADD_ACROSS, x * _across(y, z)),
    )


def _sum_divided(p: Pair, q: Pair, r: Pair) -> Draft:
    """(p + q) ÷ r."""
    x, y, z = _value(p), _value(q), _value(r)
    steps = [
        _combine("Work out the brackets first.", x, y, "+"),
        _combine("Then divide: multiply by the reciprocal.", x + y, z, "÷"),
    ]
    return _draft(
        divide(Bracket(add(_node(p), _node(q))), _node(r)),
        (x + y) / z,
        steps,
        ("(a+b)/c", p, q, r),
        (NO_BRACKETS, x + y / z),
        (NO_FLIP, (x + y) * z),
        (ADD_ACROSS, _across(x, y) / z),
    )


def _divided_by_sum(r: Pair, p: Pair, q: Pair) -> Draft:
    """R ÷ (p + q)."""
    x, y, z = _value(p), _value(q), _value(r)
    steps = [
        _combine("Work out the brackets first.", x, y, "+"),
        _combine("Then divide: multiply by the reciprocal.", z, x + y, "÷"),
    ]
    return _draft(
        divide(_node(r), Bracket(add(_node(p), _node(q)))),
        z / (x + y),
        steps,
        ("c/(a+b)", p, q, r),
        (NO_BRACKETS, z / x + y),
        (NO_FLIP, z * (x + y)),
        (ADD_ACROSS, z / _across(x, y)),
    )


def _difference_times(p: Pair, q: Pair, r: Pair) -> Draft:
    """(p − q) × r."""
    x, y, z = _value(p), _value(q), _value(r)
    steps = [
        _combine("Work out the brackets first.", x, y, "-"),
        _combine("Then multiply.", x - y, z, "×"),
    ]
    return _draft(
        times(Bracket(sub(_node(p), _node(q))), _node(r)),
        (x - y) * z,
        steps,
        ("(a-b)*c", p, q, r),
        (NO_BRACKETS, x - y * z),
        (FLIP, (x - y) / z),
    )


def _quotient_of_brackets(p: Pair, q: Pair, r: Pair, s: Pair) -> Draft:
    """(p + q) ÷ (r − s)."""
    x, y, z, w = _value(p), _value(q), _value(r), _value(s)
    steps = [
        _combine("Work out the first brackets.", x, y, "+"),
        _combine("Work out the second brackets.", z, w, "-"),
        _combine("Divide: multiply by the reciprocal of the second result.", x + y, z - w, "÷"),
    ]
    return _draft(
        divide(Bracket(add(_node(p), _node(q))), Bracket(sub(_node(r), _node(s)))),
        (x + y) / (z - w),
        steps,
        ("(a+b)/(c-d)", p, q, r, s),
        (NO_FLIP, (x + y) * (z - w)),
        (ADD_ACROSS, _across(x, y) / (z - w)),
    )


def _square_and_quotient(p: Pair, q: Pair, r: Pair) -> Draft:
    """p² + q ÷ r."""
    x, y, z = _value(p), _value(q), _value(r)
    squared = _combine("Square first.", x, x, "×")
    power = Power(Bracket(_node(p)), Int(2))
    assert isinstance(squared.maths, Relation)
    steps = [
        Step(squared.say, Relation(power, (("=", squared.maths.first), *squared.maths.rest))),
        _combine("Divide before you add: multiply by the reciprocal.", y, z, "÷"),
        _combine("Then add, over a common denominator.", x * x, y / z, "+"),
    ]
    asked = add(power, Product(_node(q), (("÷", _node(r)),)))
    return _draft(
        asked,
        x * x + y / z,
        steps,
        ("a^2+b/c", p, q, r),
        (SQUARE_DOUBLES, 2 * x + y / z),
        (ADDS_BEFORE_DIVIDING, (x * x + y) / z),
        (NO_FLIP, x * x + y * z),
    )
