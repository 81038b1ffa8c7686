"""Bounds below and above what a tree is worth, in rational numbers: by intervals, node by node.

Every bound is proved: an operation gives the least and the greatest that its parts allow, a root
is taken in whole numbers, and what has more digits than asked is widened, never cut. No float
takes part. Where both bounds round alike, so does the number between them.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from itertools import product
from typing import Any

from itembank.notation import tree as t
from itembank.notation.sines import PI, angle_bounds, ratio_bounds
from itembank.notation.units import CURRENCY, UNITS
from itembank.notation.value import LARGEST_BITS, LARGEST_EXPONENT, NotExact, exact_or_none

Bounds = tuple[Fraction, Fraction]

PI_PLACES = 50


def bounds(node: t.Node, digits: int) -> Bounds:
    """Return bounds of what a tree is worth, each step widened to so many decimal places.

    Raises
    ------
    NotExact
        A letter other than π is in it, or something that has no bounds here.

    >>> from itembank.notation.parse import parse
    >>> low, high = bounds(parse("√(50/π)"), 20)
    >>> float(low), high - low < Fraction(1, 10**18)
    (3.989422804014327, True)
    """
    # Exactly where that can be: bounds that were widened cannot tell a half from what is near it.
    value = exact_or_none(node)
    if value is not None:
        return value, value
    handler = _BOUNDS.get(type(node))
    if handler is None:
        raise NotExact(f"{type(node).__name__} has no bounds here")
    low, high = handler(node, digits)
    return _widened(low, high, digits)


def _widened(low: Fraction, high: Fraction, digits: int) -> Bounds:
    """Return bounds of so many places, at least as wide: so that the numbers stay short."""
    scale = 10**digits
    return Fraction((low * scale).__floor__(), scale), Fraction((high * scale).__ceil__(), scale)


def _sym(node: t.Sym, _: int) -> Bounds:
    if node.name != "π":
        raise NotExact("a number with a letter in it cannot be rounded")
    # PI is cut off, so π lies between it and one more in its last place.
    return PI, PI + Fraction(1, 10**PI_PLACES)


def _times(a: Bounds, b: Bounds) -> Bounds:
    ends = [x * y for x, y in product(a, b)]
    return min(ends), max(ends)


def _over(a: Bounds, b: Bounds) -> Bounds:
    if b[0] <= 0 <= b[1]:
        raise NotExact("this divides by a number too near to zero")
    return _times(a, (1 / b[1], 1 / b[0]))


def _sum(node: t.Sum, digits: int) -> Bounds:
    low, high = bounds(node.first, digits)
    for op, term in node.rest:
        a, b = bounds(term, digits)
        low, high = (low + a, high + b) if op == "+" else (low - b, high - a)
    return low, high


def _product(node: t.Product, digits: int) -> Bounds:
    total = bounds(node.first, digits)
    for op, factor in node.rest:
        ends = bounds(factor, digits)
        total = _over(total, ends) if op == "÷" else _times(total, ends)
    return total


def _juxt(node: t.Juxt, digits: int) -> Bounds:
    total = (Fraction(1), Fraction(1))
    for factor in node.factors:
        total = _times(total, bounds(factor, digits))
    return total


def _power(node: t.Power, digits: int) -> Bounds:
    exponent = exact_or_none(node.exponent)
    if exponent is None or exponent.denominator != 1 or not 0 < exponent <= LARGEST_EXPONENT:
        raise NotExact("the exponent is not a whole number that can be worked out here")
    base = bounds(node.base, digits)
    if max(abs(end).numerator.bit_length() for end in base) * exponent > LARGEST_BITS:
        raise NotExact("this power is too large")
    # Factor by factor: the squares of -1 and 2 would leave out 0, which lies between them.
    total = base
    for _ in range(int(exponent) - 1):
        total = _times(total, base)
    return total


def _root(node: t.Root, digits: int) -> Bounds:
    # A root near 0 is known to half as many places as what stands under it.
    low, high = bounds(node.of, 2 * digits)
    if low < 0:
        raise NotExact("what stands under the root may be negative")
    return root_below(low, node.index, digits), root_below(high, node.index, digits) + Fraction(
        1, 10**digits
    )


def root_below(value: Fraction, index: int, digits: int) -> Fraction:
    """Return the root of a number that is not negative, cut off after so many places.

    >>> root_below(Fraction(2), 2, 3), root_below(Fraction(27), 3, 1)
    (Fraction(707, 500), Fraction(3, 1))
    """
    scale = 10**digits
    whole = (value * scale**index).__floor__()
    if not whole:
        return Fraction(0)
    # Newton's method from above, in whole numbers: the steps only fall until the root is reached.
    guess = 1 << (whole.bit_length() // index + 1)
    while True:
        better = ((index - 1) * guess + whole // guess ** (index - 1)) // index
        if better >= guess:
            return Fraction(guess, scale)
        guess = better


def _trig(node: t.Trig, digits: int) -> Bounds:
    of = bounds(node.of, digits)
    return (angle_bounds if node.inverse else ratio_bounds)(node.name, of, digits)


def _neg(node: t.Neg, digits: int) -> Bounds:
    low, high = bounds(node.of, digits)
    return -high, -low


def _scaled(size: Fraction, of: t.Node, digits: int) -> Bounds:
    low, high = bounds(of, digits)
    return low * size, high * size


_BOUNDS: dict[type, Callable[[Any, int], Bounds]] = {
    t.Sym: _sym,
    t.Neg: _neg,
    t.Bracket: lambda node, digits: bounds(node.of, digits),
    t.Sum: _sum,
    t.Product: _product,
    t.Juxt: _juxt,
    t.Frac: lambda node, digits: _over(bounds(node.num, digits), bounds(node.den, digits)),
    t.Power: _power,
    t.Root: _root,
    t.Trig: _trig,
    t.Percent: lambda node, digits: _scaled(Fraction(1, 100), node.of, digits),
    t.Money: lambda node, digits: _scaled(CURRENCY[node.sign].size, node.amount, digits),
    t.Quantity: lambda node, digits: _scaled(UNITS[node.unit].size, node.amount, digits),
}
