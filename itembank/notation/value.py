"""The value face: what a tree is worth, in exact rational arithmetic.

It does without sympy, so that every item can be checked as it is made. What a tree with letters
is worth, :mod:`.linear` and :mod:`.algebra` say.

Quantities and money are worth their size in the base unit of their dimension
(:mod:`itembank.notation.units`), so 40 cm and 0.4 m are worth the same.

>>> from itembank.notation.tree import add, frac
>>> exact(add(frac(1, 2), frac(1, 3)))
Fraction(5, 6)
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from functools import lru_cache
from math import isqrt
from typing import Any, TypeAlias

from itembank.notation import tree as t
from itembank.notation.clock import DAY, NEXT_DAY, clock_seconds, times_in
from itembank.notation.right_ratios import angle_of, ratio_of
from itembank.notation.units import CURRENCY, UNITS

Rational: TypeAlias = Fraction | int
"""A number on its way to an exact value: one that is whole may stay an int, which is far quicker
to reckon with. Two of them are divided by :func:`over` alone, since int / int is a float."""

ZERO = Fraction(0)

# A pupil's question never needs more; typed text must not make us compute 9^9^9.
LARGEST_EXPONENT = 64

LARGEST_BITS = 8_192
"""The most binary digits a power may come to, so that towers of powers stay small."""


class NotExact(t.NotationError):
    """The tree has no exact value of the kind asked for (a letter, a surd, a name)."""


def exact(node: t.Node) -> Fraction:
    """Return the exact rational value of `node`.

    Raises
    ------
    NotExact
        If the tree holds a letter, an irrational root, a ratio, a list or a relation, or
        divides by zero.

    >>> from itembank.notation.tree import Dec, Mixed, Percent, Int
    >>> exact(Mixed(2, 3, 4)), exact(Dec("0", "1", "6")), exact(Percent(Int(40)))
    (Fraction(11, 4), Fraction(1, 6), Fraction(2, 5))
    """
    return fraction_of(worth(node))


def fraction_of(value: Rational) -> Fraction:
    """Return a number that was reckoned with as a fraction, itself where it is one.

    >>> fraction_of(3), fraction_of(Fraction(1, 2))
    (Fraction(3, 1), Fraction(1, 2))
    """
    # Asked of int: whether something is a Fraction goes through the abstract numbers.
    return _whole(value) if isinstance(value, int) else value


def worth(node: t.Node) -> Rational:
    """Return the value of `node` as :func:`exact` does, to reckon on with.

    >>> worth(t.Int(3)), worth(t.Frac(t.Int(6), t.Int(2)))
    (3, Fraction(3, 1))
    """
    found = EXACT.get(type(node))
    if found is None:
        raise NotExact(f"{type(node).__name__} has no value of its own")
    return found(node)


def exact_or_none(node: t.Node) -> Fraction | None:
    """Return the exact rational value of `node`, or None where it has none.

    >>> from itembank.notation.tree import Int, Sym
    >>> exact_or_none(Int(3)), exact_or_none(Sym("x"))
    (Fraction(3, 1), None)
    """
    try:
        return exact(node)
    except t.NotationError:
        return None


def decimal_value(node: t.Dec) -> Fraction:
    """Return the value of a decimal; a recurring block of n digits is worth block/(10^n − 1).

    >>> decimal_value(t.Dec("1", "", "7"))
    Fraction(16, 9)
    """
    scale = 10 ** len(node.places)
    value = Fraction(int(node.whole + node.places), scale)
    if node.recurring:
        # 0.(ab) is ab/100 + ab/10 000 + …, a geometric series that sums to ab/99.
        value += Fraction(int(node.recurring), (10 ** len(node.recurring) - 1) * scale)
    return value


def parts(node: t.Node) -> tuple[Fraction, ...]:
    """Return the values of the parts of a ratio or list, or the one value of anything else.

    >>> from itembank.notation.tree import Int, ratio
    >>> parts(ratio(Int(3), Int(20)))
    (Fraction(3, 1), Fraction(20, 1))
    """
    if isinstance(node, t.Ratio | t.Listing):
        return tuple(exact(part) for part in node.parts)
    return (exact(node),)


def sides(node: t.Relation) -> list[tuple[t.Node, str, t.Node]]:
    """Return a relation as its neighbouring pairs of sides, each with its sign.

    >>> from itembank.notation.tree import Int, equals
    >>> sides(equals(Int(1), Int(2), Int(3)))
    [(Int(n=1), '=', Int(n=2)), (Int(n=2), '=', Int(n=3))]
    """
    left, pairs = node.first, []
    for op, right in node.rest:
        pairs.append((left, str(op), right))
        left = right
    return pairs


def over(top: Rational, bottom: Rational) -> Fraction:
    """Return top ÷ bottom, exactly.

    Raises
    ------
    NotExact
        It divides by zero.
    """
    if not bottom:
        raise NotExact("this divides by zero")
    if isinstance(top, int):
        return Fraction(top, bottom) if isinstance(bottom, int) else top / bottom
    return top / bottom


def _of_the_day(total: Rational, times: int | None) -> Rational:
    """Return a sum with times of day in it: a time goes round, a length of time may not."""
    # A sum that comes to a time is a point on the clock: 23:50 + 20 min is 00:10. A length of
    # time below zero would say that the day changed between, which nothing printed does.
    if times == 1:
        return total % DAY
    if total < 0:
        raise NotExact(NEXT_DAY)
    return total


def power_of(base: Fraction, exponent: Fraction) -> Fraction:
    """Return a power.

    Raises
    ------
    NotExact
        The exponent is no whole number, or the power too large to be meant.
    """
    if exponent.denominator != 1 or abs(exponent) > LARGEST_EXPONENT:
        raise NotExact(f"the exponent {exponent} is not a whole number up to {LARGEST_EXPONENT}")
    if (
        max(base.numerator.bit_length(), base.denominator.bit_length()) * abs(exponent)
        > LARGEST_BITS
    ):
        raise NotExact("this power is too large")
    if exponent < 0 and not base:
        raise NotExact("this divides by zero")
    return base**exponent.numerator


def _root(of: Fraction, index: int) -> Fraction:
    def whole_root(n: int) -> int:
        if n.bit_length() > LARGEST_BITS:
            raise NotExact("this root is of too large a number")
        # Below 10^15 a float is near enough to round to the root, and the check settles it.
        guess = round(n ** (1 / index)) if n < 10**15 else _floor_root(n, index)
        if guess**index != n:
            raise NotExact("this root is not a rational number")
        return guess

    # The cube root of −8 is −2, but no real number has the square −4.
    if of < 0 and index % 2 == 0:
        raise NotExact("a negative number has no such root")
    sign = -1 if of < 0 else 1
    # In lowest terms, a fraction is a perfect power just where top and bottom both are.
    return Fraction(sign * whole_root(abs(of.numerator)), whole_root(of.denominator))


def _floor_root(n: int, index: int) -> int:
    if index in (2, 4):
        return isqrt(n) if index == 2 else isqrt(isqrt(n))
    if not n:
        return 0
    # Newton's method from above, where the steps only ever fall until the root is reached.
    # Never below the root: n < 2^bits, so its root is less than 2^(bits/index).
    guess = 1 << (n.bit_length() // index + 1)
    while True:
        better = ((index - 1) * guess + n // guess ** (index - 1)) // index
        if better >= guess:
            return guess
        guess = better


def _trig(node: t.Trig) -> Fraction:
    found = (angle_of if node.inverse else ratio_of)(node.name, exact(node.of))
    if found is None:
        raise NotExact(f"this {'angle' if node.inverse else 'ratio'} is not a fraction")
    return found


def _sum(node: t.Sum) -> Rational:
    total = worth(node.first)
    for op, term in node.rest:
        total = total + worth(term) if op == "+" else total - worth(term)
    times = times_in(node)
    return total if times is None else _of_the_day(total, times)


def _product(node: t.Product) -> Rational:
    total = worth(node.first)
    for op, factor in node.rest:
        total = over(total, worth(factor)) if op == "÷" else total * worth(factor)
    return total


def _side_by_side(node: t.Juxt) -> Rational:
    total: Rational = 1
    for factor in node.factors:
        total *= worth(factor)
    return total


@lru_cache(maxsize=4096)
def _whole(n: int) -> Fraction:
    """Return a whole number as a fraction: the same small ones are met again and again."""
    return Fraction(n)


EXACT: dict[type, Callable[[Any], Rational]] = {
    t.Int: lambda node: node.n,
    t.Dec: decimal_value,
    t.Frac: lambda node: over(worth(node.num), worth(node.den)),
    t.Mixed: lambda node: node.whole + over(node.num, node.den),
    t.Neg: lambda node: -worth(node.of),
    t.Bracket: lambda node: worth(node.of),
    t.Sum: _sum,
    t.Product: _product,
    t.Juxt: _side_by_side,
    t.Percent: lambda node: over(worth(node.of), 100),
    t.Money: lambda node: worth(node.amount) * CURRENCY[node.sign].size,
    t.Quantity: lambda node: worth(node.amount) * UNITS[node.unit].size,
    t.MixedUnits: lambda node: sum(map(worth, node.parts)),
    t.ClockTime: lambda node: clock_seconds(node),
    t.Power: lambda node: power_of(exact(node.base), exact(node.exponent)),
    t.Root: lambda node: _root(exact(node.of), node.index),
    t.Trig: _trig,
}
"""What each kind of node is worth, on the first road; one that is not here has no value."""
