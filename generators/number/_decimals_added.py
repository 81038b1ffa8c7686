"""Which sums and differences of decimals are asked for, and what the mistakes give.

Numbers are in hundredths.
"""

from __future__ import annotations

from collections.abc import Callable
from enum import IntEnum
from typing import Any

from generators._turns import by_turns
from generators.number import _point_mistakes as m
from generators.number._writing import apart


class Kind(IntEnum):
    """What is added or subtracted."""

    PLUS, MINUS, UNLIKE_PLUS = range(3)
    UNLIKE_MINUS, WHOLE_MINUS, MORE = range(3, 6)
    THREE, BOX_PLUS, BOX_MINUS, CHANGE = range(6, 10)


def _columns(a: int, b: int, digit: Callable[[int, int], int]) -> int:
    """Return what comes of two numbers where each column is worked out by itself."""
    found = 0
    unit = 1
    while a or b:
        found += digit(a % 10, b % 10) * unit
        a, b, unit = a // 10, b // 10, unit * 10
    return found


def _no_carry(a: int, b: int) -> int:
    return _columns(a, b, lambda x, y: (x + y) % 10)


def _small_from_large(a: int, b: int) -> int:
    return _columns(a, b, lambda x, y: abs(x - y))


def _not_reduced(a: int, b: int) -> int:
    return _columns(a, b, lambda x, y: (x - y) % 10)


def _parts_apart(a: int, b: int, places: int) -> int:
    """Return a.7 + b.35 as (a + b).42: the digits after the points added as whole numbers."""
    unit, hundred = (100, 10, 1)[places], 100
    after = (a % hundred) // unit + b % hundred
    ahead = a // hundred + b // hundred
    return ahead * hundred + after if after < 100 else ahead * 1000 + after


Mistake = tuple[Any, int]
"""A mistake and what it comes to, in hundredths."""


def answers_of(kind: int, a: int, b: int, c: int) -> tuple[int, list[Mistake]]:
    """Return the answer, and what the mistakes come to; all numbers are in hundredths."""
    match kind:
        case Kind.PLUS:  # in tenths: 2.7 + 1.5 as 3.12
            split = 100 * (a // 100 + b // 100) + (a % 100 + b % 100) // 10
            return a + b, [(m.PARTS_APART, split), (m.NO_CARRY, _no_carry(a, b))]
        case Kind.MINUS:
            return a - b, [
                (m.SMALL_FROM_LARGE, _small_from_large(a, b)),
                (m.NOT_REDUCED, _not_reduced(a, b)),
            ]
        case Kind.UNLIKE_PLUS:
            return a + b, [(m.RIGHT_ALIGNED, a // 10 + b), (m.PARTS_APART, _parts_apart(a, b, 1))]
        case Kind.UNLIKE_MINUS | Kind.WHOLE_MINUS:
            places = 10 if kind == Kind.UNLIKE_MINUS else 100
            # 5.3 − 1.86 as 5.3 − 1.8 with the 6 brought down.
            down = a - b // places * places + b % places
            return a - b, [(m.BROUGHT_DOWN, down), (m.NOT_REDUCED, _not_reduced(a, b))]
        case Kind.MORE:
            return a - b, [(m.ADDS, a + b), (m.SMALL_FROM_LARGE, _small_from_large(a, b))]
        case Kind.THREE:
            return a - b + c, [(m.ADDS_FIRST, a - b - c), (m.RIGHT_ALIGNED, a - b + c // 10)]
        case Kind.BOX_PLUS:
            return b - a, [(m.SAME_OPERATION, a + b), (m.NOT_REDUCED, _not_reduced(b, a))]
        case Kind.BOX_MINUS:
            return a - b, [(m.SAME_OPERATION, a + b), (m.NOT_REDUCED, _not_reduced(a, b))]
    return c - a - b, [(m.FIRST_ONLY, c - a), (m.ADDS_SECOND, c - a + b)]


def _keep(kind: int, a: int, b: int, c: int = 0) -> bool:
    key, wrong = answers_of(kind, a, b, c)
    return key > 0 and apart(key, a, b, *(answer for _, answer in wrong))


def support_fits(kind: int, a: int, b: int) -> bool:
    """Keep sums that carry and differences that exchange, in tenths; then hundredths added on."""
    tenths_a, tenths_b = a // 10 % 10, b // 10 % 10
    match kind:
        case Kind.PLUS:
            suits = b % 10 == 0 and a > b and tenths_a + tenths_b > 10
        case Kind.MINUS:
            suits = b % 10 == 0 and a > b + 100 and 0 < tenths_a < tenths_b
        case _:
            suits = b % 10 != 0 and tenths_a + tenths_b < 10 and tenths_a != 0 != tenths_b
    return suits and tenths_a != 0 and _keep(kind, a, b)


def core_fits(kind: int, a: int, b: int) -> bool:
    """Keep differences with a place that is empty above, and stories of how much more."""
    match kind:
        case Kind.UNLIKE_MINUS:
            suits = a % 100 != 0 and b % 10 != 0 and b // 10 % 10 != 0
        case Kind.WHOLE_MINUS:
            suits = a % 100 == 0 and b % 10 != 0 and b // 10 % 10 != 0
        case _:
            # Two places in both: 31.40 would be printed as 31.4.
            suits = a % 100 != 0 and b % 10 != 0 and a // 10 % 10 != b // 10 % 10
    if suits and kind == Kind.MORE:
        _, a, b = numbers_compared(a, b)
    return suits and a > b + 40 and _keep(kind, a, b)


def challenge_fits(kind: int, a: int, b: int, c: int) -> bool:
    """Keep three unlike numbers, boxes, and change from a note."""
    match kind:
        case Kind.THREE:
            suits = b % 10 != 0 and c in (60, 340) and a > b + c and a % 100 != 0
        case Kind.BOX_PLUS:
            suits = c == 60 and a % 100 != 0 and b % 10 != 0 and b > a + 100
        case Kind.BOX_MINUS:
            suits = c == 60 and a % 100 != 0 and b % 10 != 0 and a > b + 100
        case _:
            suits = c in (2000, 5000) and b % 5 == 0 and a > 300 and b > 200 and a != b
            suits = suits and a + b < c < 2 * (a + b) + 1500
    return suits and _keep(kind, a, b, c)


# What is compared: how much more the first is than the second, a number of units more than it.
MORE_STORIES = (
    ("A pumpkin from an allotment has a mass of", "Another has a mass of", "kg", 3),
    ("One plank in a bike workshop is", "Another is", "m", 1),
    ("A swimmer’s first race takes", "Her next takes", "s", 28),
    ("One sack in a school kitchen has a mass of", "Another has a mass of", "kg", 5),
)


def numbers_compared(a: int, b: int) -> tuple[int, int, int]:
    """Return which story is told of two amounts, and the amounts as they are in it."""
    told = by_turns(range(len(MORE_STORIES)), a // 10 + b)
    least = 100 * MORE_STORIES[told][-1]
    return told, a + least, b + least
