"""Sums of several operations on fractions: each with its working and wrong answers."""

from __future__ import annotations

from fractions import Fraction
from math import lcm
from typing import Any

from generators.fractions._answers import answer_form
from generators.fractions._misconceptions import ADD_ACROSS
from generators.fractions.divide import NO_FLIP
from generators.fractions.multiply import FLIP
from itembank.items.forms.form_rules import number_node, simplest_node
from itembank.items.item import Draft, Find, Misconception, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

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


def _value(pair: Pair) -> Fraction:
    return Fraction(*pair)


def _node(pair: Pair) -> t.Node:
    return number_node(_value(pair))


def _across(p: Fraction, q: Fraction) -> Fraction:
    return Fraction(p.numerator + q.numerator, p.denominator + q.denominator)


def _chain(*sides: t.Node) -> t.Relation:
    """Return the sides joined by =, a side equal to the one before left out."""
    kept = [sides[0]]
    for side in sides[1:]:
        if side != kept[-1]:
            kept.append(side)
    return t.Relation(kept[0], tuple(("=", side) for side in kept[1:]))


def _combine(say: str, p: Fraction, q: Fraction, op: str) -> Step:
    """Return the line that works out p op q over a common denominator, or by multiplying."""
    left, right = number_node(p), number_node(q)
    if op in "+-":
        bottom = lcm(p.denominator, q.denominator)
        p_top, q_top = int(p * bottom), int(q * bottom)
        join = t.add if op == "+" else t.sub
        top = p_top + q_top if op == "+" else p_top - q_top
        over = join(t.frac(p_top, bottom), t.frac(q_top, bottom))
        result = number_node(Fraction(top, bottom))
        return Step(say, _chain(join(left, right), over, t.frac(top, bottom), result))
    if op == "×":
        shown: list[t.Node] = [t.times(left, right)]
    else:
        q = 1 / q
        turned = t.frac(q.numerator, q.denominator)
        shown = [t.divide(left, right), t.times(left, turned)]
    raw = (p.numerator * q.numerator, p.denominator * q.denominator)
    below: t.Node = t.times(t.Int(p.denominator), t.Int(q.denominator))
    # Nobody writes 3 × 1 below a bar.
    if 1 in (p.denominator, q.denominator):
        below = t.Int(raw[1])
    across = t.Frac(t.times(t.Int(p.numerator), t.Int(q.numerator)), below)
    return Step(say, _chain(*shown, across, t.frac(*raw), number_node(p * q)))


def _finished(steps: list[Step], value: Fraction) -> tuple[Step, ...]:
    if value > 1 and value.denominator > 1:
        line = _chain(number_node(value), simplest_node(value))
        steps.append(Step("Write it as a mixed number.", line))
    return tuple(steps)


def _draft(
    asked: t.Node, value: Fraction, steps: list[Step], twin: tuple[object, ...], *wrong: Any
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


def sum_product(p: Pair, q: Pair, r: Pair) -> Draft:
    """P + q × r."""
    x, y, z = _value(p), _value(q), _value(r)
    steps = [
        _combine("Multiply first.", y, z, "×"),
        _combine("Then add, over a common denominator.", x, y * z, "+"),
    ]
    return _draft(
        t.add(_node(p), t.times(_node(q), _node(r))),
        x + y * z,
        steps,
        ("a+b*c", p, *sorted((q, r))),
        (LEFT_TO_RIGHT, (x + y) * z),
        (ADD_ACROSS, _across(x, y * z)),
    )


def times_sum(n: Pair, p: Pair, q: Pair) -> Draft:
    """N × (p + q)."""
    x, y, z = _value(n), _value(p), _value(q)
    steps = [
        _combine("Work out the brackets first.", y, z, "+"),
        _combine("Then multiply.", x, y + z, "×"),
    ]
    return _draft(
        t.times(_node(n), t.Bracket(t.add(_node(p), _node(q)))),
        x * (y + z),
        steps,
        ("n(a+b)", n, p, q),
        (NO_BRACKETS, x * y + z),
        (ADD_ACROSS, x * _across(y, z)),
    )


def sum_divided(p: Pair, q: Pair, r: Pair) -> Draft:
    """(p + q) ÷ r."""
    x, y, z = _value(p), _value(q), _value(r)
    steps = [
        _combine("Work out the brackets first.", x, y, "+"),
        _combine("Then divide: multiply by the reciprocal.", x + y, z, "÷"),
    ]
    return _draft(
        t.divide(t.Bracket(t.add(_node(p), _node(q))), _node(r)),
        (x + y) / z,
        steps,
        ("(a+b)/c", p, q, r),
        (NO_BRACKETS, x + y / z),
        (NO_FLIP, (x + y) * z),
        (ADD_ACROSS, _across(x, y) / z),
    )


def divided_by_sum(r: Pair, p: Pair, q: Pair) -> Draft:
    """R ÷ (p + q)."""
    x, y, z = _value(p), _value(q), _value(r)
    steps = [
        _combine("Work out the brackets first.", x, y, "+"),
        _combine("Then divide: multiply by the reciprocal.", z, x + y, "÷"),
    ]
    return _draft(
        t.divide(_node(r), t.Bracket(t.add(_node(p), _node(q)))),
        z / (x + y),
        steps,
        ("c/(a+b)", p, q, r),
        (NO_BRACKETS, z / x + y),
        (NO_FLIP, z * (x + y)),
        (ADD_ACROSS, z / _across(x, y)),
    )


def difference_times(p: Pair, q: Pair, r: Pair) -> Draft:
    """(p − q) × r."""
    x, y, z = _value(p), _value(q), _value(r)
    steps = [
        _combine("Work out the brackets first.", x, y, "-"),
        _combine("Then multiply.", x - y, z, "×"),
    ]
    return _draft(
        t.times(t.Bracket(t.sub(_node(p), _node(q))), _node(r)),
        (x - y) * z,
        steps,
        ("(a-b)*c", p, q, r),
        (NO_BRACKETS, x - y * z),
        (FLIP, (x - y) / z),
    )


def quotient_of_brackets(p: Pair, q: Pair, r: Pair, s: Pair) -> Draft:
    """(p + q) ÷ (r − s)."""
    x, y, z, w = _value(p), _value(q), _value(r), _value(s)
    steps = [
        _combine("Work out the first brackets.", x, y, "+"),
        _combine("Work out the second brackets.", z, w, "-"),
        _combine("Divide: multiply by the reciprocal of the second result.", x + y, z - w, "÷"),
    ]
    return _draft(
        t.divide(t.Bracket(t.add(_node(p), _node(q))), t.Bracket(t.sub(_node(r), _node(s)))),
        (x + y) / (z - w),
        steps,
        ("(a+b)/(c-d)", p, q, r, s),
        (NO_FLIP, (x + y) * (z - w)),
        (ADD_ACROSS, _across(x, y) / (z - w)),
    )


def square_and_quotient(p: Pair, q: Pair, r: Pair) -> Draft:
    """p² + q ÷ r."""
    x, y, z = _value(p), _value(q), _value(r)
    squared = _combine("Square first.", x, x, "×")
    power = t.Power(t.Bracket(_node(p)), t.Int(2))
    assert isinstance(squared.maths, t.Relation)
    steps = [
        Step(squared.say, t.Relation(power, (("=", squared.maths.first), *squared.maths.rest))),
        _combine("Divide before you add: multiply by the reciprocal.", y, z, "÷"),
        _combine("Then add, over a common denominator.", x * x, y / z, "+"),
    ]
    asked = t.add(power, t.Product(_node(q), (("÷", _node(r)),)))
    return _draft(
        asked,
        x * x + y / z,
        steps,
        ("a^2+b/c", p, q, r),
        (SQUARE_DOUBLES, 2 * x + y / z),
        (ADDS_BEFORE_DIVIDING, (x * x + y) / z),
        (NO_FLIP, x * x + y * z),
    )
