"""Which powers and roots are asked for."""

from __future__ import annotations

from collections.abc import Callable
from enum import IntEnum
from math import gcd, isqrt
from typing import NamedTuple

from generators.number._writing import apart
from itembank.notation import tree as t


class Kind(IntEnum):
    """Which power or root is asked for."""

    POWER, ROOT, CUBE_ROOT, AS_POWER, AS_PRODUCT = range(5)
    ROOT_OF_SUM, DIFFERENCE, PRODUCT, NOUGHT, ROOTS = range(5, 10)
    EDGING, NEGATIVE_INDEX, FRACTIONS, ORDER = range(10, 14)


def support_fits(kind: int, a: int, n: int) -> bool:
    """Keep powers up to some hundreds and their roots; those that a mistake gives too are out."""
    match kind:
        case Kind.POWER:
            low = a**n <= 400 or (a == 10 and n <= 6) or (a == 2 and n <= 10)
            return low and apart(a**n, a * n, n**a)
        case Kind.ROOT:
            return n == 2 and 3 <= a <= 20
        case Kind.CUBE_ROOT:
            return n == 3 and a in (2, 3, 4, 5, 6, 10)
    return 2 < n <= 6 and a <= 12 and a != n and apart(a**n, a * n, n**a)


def core_fits(kind: int, a: int, b: int, c: int, d: int) -> bool:
    """Keep a root of a sum, differences and products of powers, powers 0 and 1, sums of roots."""
    match kind:
        case Kind.ROOT_OF_SUM:
            # √(a² + b²) with a whole root; or √(a² − b²), for d = 3.
            if c != 2 or a == b:
                return False
            total = a * a + b * b if d == 2 else a * a - b * b
            return total > 0 and isqrt(total) ** 2 == total and (d == 3 or a < b)
        case Kind.DIFFERENCE:
            suits = a != b and a**c <= 250 and b**d <= 250 and a**c - b**d > 1
            return suits and b >= 2 and apart(a**c - b**d, abs(a * c - b * d), c**a - d**b)
        case Kind.PRODUCT:
            small = a < b and a**c * b**d <= 1000 and a * b != 4
            return small and apart(a**c * b**d, a * c * b * d, (a * b) ** (c + d))
        case Kind.NOUGHT:
            return c == 2 and d == 2 and a != b
    # √(a²) + ∛(b³), or the difference for d = 3
    suits = c == 2 and b <= 6 and a != b and a >= 3 and b >= 2 and d <= 3
    sign = 1 if d == 2 else -1
    return (
        suits
        and (d == 2 or a > b + 1)
        and apart(6 * (a + sign * b), 3 * a * a + sign * 2 * b**3, 6 * a * a + sign * 6 * b**3)
    )


def challenge_fits(kind: int, a: int, b: int, c: int) -> bool:
    """Keep edgings of squares, negative indices, sums of powers of fractions, and orders."""
    match kind:
        case Kind.EDGING:
            return b == 2 and c == 2 and a >= 6 and a != 16 and a <= 25
        case Kind.NEGATIVE_INDEX:
            return c == 2 and b > 1 < a and a**b <= 150 and (a, b) != (2, 2)
        case Kind.FRACTIONS:
            # (1/2)^b + (a/4 or a/5 …)²: the second fraction has the denominator c.
            return c >= 3 and 1 <= a < c and b in (2, 3) and gcd(a, c) == 1
    return _ordered(a, b, c)


class Thing(NamedTuple):
    """A number in a list, as it is printed: its size, and what mistakes take it for."""

    node: t.Node
    size: float
    without_root: float
    times_index: float


def things_to_order(a: int, b: int, c: int) -> tuple[Thing, ...]:
    """Return things to be put in order: each as printed, its size, and sizes by mistakes."""
    # The square root of a number that is no square, a power of 2 or 3, and two whole numbers.
    base, index = ((2, 3), (3, 2), (2, 4), (2, 2))[c - 2]
    under = 10 * a + b
    power = base**index
    return (
        Thing(t.Root(t.Int(under)), under**0.5, under, under / 2),
        Thing(t.Power(t.Int(base), t.Int(index)), power, power, base * index),
        Thing(t.Int(a), a, a, a),
        Thing(t.Int(b + 2), b + 2, b + 2, b + 2),
    )


WAYS: tuple[Callable[[Thing], float], ...] = (
    lambda thing: thing.size,
    lambda thing: thing.without_root,
    lambda thing: thing.times_index,
)


def listed_by(things: tuple[Thing, ...], way: Callable[[Thing], float]) -> t.Listing:
    """Return things in the order that a way of comparing puts them in."""
    return t.Listing(tuple(thing.node for thing in sorted(things, key=way)))


def _ordered(a: int, b: int, c: int) -> bool:
    if not (1 <= a <= 12 and 1 <= b <= 9 and 2 <= c <= 5) or a == b + 2:
        return False
    under = 10 * a + b
    if isqrt(under) ** 2 == under:
        return False
    things = things_to_order(a, b, c)
    for sizes in zip(*(thing[1:] for thing in things), strict=True):
        if len({*sizes}) < 4:
            return False
    return apart(*(listed_by(things, way) for way in WAYS))
