"""Which calculations are asked for, what they come to, and what the mistakes give."""

from __future__ import annotations

from enum import IntEnum
from fractions import Fraction

from generators.number._order_mistakes import (
    ADDS_FIRST,
    IN_A_LINE,
    LEFT_TO_RIGHT,
    NO_BRACKETS,
    SQUARES_ALL,
    SQUARES_EACH,
    STOPS,
    TAKES_FIRST_OFF,
    TIMES_FIRST,
)
from generators.number._writing import apart
from itembank.items.wrong_answers import Wrong


class Kind(IntEnum):
    """How a calculation is built."""

    PLUS_TIMES, MINUS_OVER, BRACKET_TIMES, MINUS_PLUS = range(4)
    PLUS_SQUARE, BAR, OVER_TIMES, MINUS_BRACKET, CHANGE = range(4, 9)
    SQUARE_INSIDE, LONG_BAR, BOX, SQUARE_AND_ROOT = range(9, 13)


def wrong_results(kind: int, a: int, b: int, c: int, d: int) -> tuple[Wrong, ...]:
    """Return what the mistakes come to, for the filter and for the item."""
    match kind:
        case Kind.PLUS_TIMES:
            return ((LEFT_TO_RIGHT, (a + b) * c), (STOPS, b * c))
        case Kind.MINUS_OVER:
            return ((LEFT_TO_RIGHT, Fraction(a - b, c)), (STOPS, b // c))
        case Kind.BRACKET_TIMES:
            return ((NO_BRACKETS, a - b * c), (STOPS, a - b))
        case Kind.MINUS_PLUS:
            return ((ADDS_FIRST, a - b - c), (STOPS, a - b))
        case Kind.PLUS_SQUARE:
            return ((SQUARES_ALL, a + (b * c) ** 2), (LEFT_TO_RIGHT, (a + b) * c * c))
        case Kind.BAR:
            return ((IN_A_LINE, a - Fraction(b, c) + d), (STOPS, Fraction(a - b, c)))
        case Kind.OVER_TIMES:
            return ((TIMES_FIRST, Fraction(a, b * c)), (STOPS, a // b))
        case Kind.MINUS_BRACKET:
            return ((LEFT_TO_RIGHT, (a - b) * (c - d)), (NO_BRACKETS, a - b * c - d))
        case Kind.CHANGE:
            return ((TAKES_FIRST_OFF, 100 - a * b + c * d), (STOPS, 100 - a * b))
        case Kind.SQUARE_INSIDE:
            return (
                (LEFT_TO_RIGHT, (a - b) * (c + d * d)),
                (SQUARES_ALL, a - b * (c + d) ** 2),
            )
        case Kind.LONG_BAR:
            return (
                (IN_A_LINE, a * a - Fraction(b, c) * d - 3),
                (STOPS, (a * a - b) // (c * d)),
            )
        case Kind.BOX:
            # From left to right: a + b, and then times the box.
            return ((LEFT_TO_RIGHT, Fraction(b * d, a + b)), (STOPS, b * d - a))
    return (
        (SQUARES_EACH, a * a + b * b - c * d),
        (LEFT_TO_RIGHT, ((a + b) ** 2 - c) * d),
    )


def value_of(kind: int, a: int, b: int, c: int, d: int) -> int:
    """Return what the calculation comes to; for the box, what goes into it."""
    match kind:
        case Kind.PLUS_TIMES:
            return a + b * c
        case Kind.MINUS_OVER:
            return a - b // c
        case Kind.BRACKET_TIMES:
            return (a - b) * c
        case Kind.MINUS_PLUS:
            return a - b + c
        case Kind.PLUS_SQUARE:
            return a + b * c * c
        case Kind.BAR:
            return (a - b) // (c + d)
        case Kind.OVER_TIMES:
            return a // b * c
        case Kind.MINUS_BRACKET:
            return a - b * (c - d)
        case Kind.CHANGE:
            return 100 - a * b - c * d
        case Kind.SQUARE_INSIDE:
            return a - b * (c + d * d)
        case Kind.LONG_BAR:
            return (a * a - b) // (c * d) - 3
        case Kind.BOX:
            return d - a // b
    return (a + b) ** 2 - c * d


def _told_apart(kind: int, a: int, b: int, c: int, d: int) -> bool:
    value = value_of(kind, a, b, c, d)
    return value > 1 and apart(value, *(answer for _, answer in wrong_results(kind, a, b, c, d)))


def support_fits(kind: int, a: int, b: int, c: int) -> bool:
    """Keep small calculations of two operations in which no number comes twice."""
    if not apart(a, b, c):
        return False
    match kind:
        case Kind.PLUS_TIMES:
            suits = a <= 20 and b <= 12
        case Kind.MINUS_OVER:
            suits = a > b and b % c == 0 and b > 2 * c
        case Kind.BRACKET_TIMES:
            suits = b < a <= 20 and a - b > 2 and c != a - b
        case _:
            suits = a > b + c and b > c
    return suits and _told_apart(kind, a, b, c, 0)


def core_fits(kind: int, a: int, b: int, c: int, d: int) -> bool:
    """Keep calculations with a square, a fraction bar, a division first or brackets; a story."""
    if not apart(a, b, c) or d in (a, b, c):
        return False
    match kind:
        case Kind.PLUS_SQUARE:
            suits = d == 1 and b <= 6 and c >= 3 and a <= 20 and b != 2
        case Kind.BAR:
            suits = a > b and c > 1 and d > 1 and (a - b) % (c + d) == 0 and a - b > c + d
        case Kind.OVER_TIMES:
            suits = d == 1 and a % b == 0 and 1 < c != a // b > 2 and b > 1
        case Kind.MINUS_BRACKET:
            suits = 1 < d < c <= 12 and 1 < b <= 6 and c - d > 1 and a > b * (c - d)
        case _:
            # So many at so much each: 2 to 9 things at £2 to £12; both cost some of the £100.
            suits = 2 <= a <= 9 and 2 <= b <= 12 and c >= 2 <= d <= 9 and 30 < a * b + c * d < 98
    return suits and _told_apart(kind, a, b, c, d)


def challenge_fits(kind: int, a: int, b: int, c: int, d: int) -> bool:
    """Keep calculations of three operations or more, and sums that are worked out backwards."""
    if not apart(a, b, c, d):
        return False
    match kind:
        case Kind.SQUARE_INSIDE:
            suits = b <= 5 and c <= 9 and 2 < d <= 5 and a > b * (c + d * d) and a % 10 == 0
        case Kind.LONG_BAR:
            suits = (
                5 <= a <= 12
                and b <= 20
                and c <= 6
                and d <= 6
                and (a * a - b) % (c * d) == 0
                and (a * a - b) // (c * d) > 4
            )
        case Kind.BOX:
            # a + b × □ = b × d, where a is a multiple of b.
            suits = a % b == 0 and c == 9 and 3 <= b <= 9 and a // b < d - 2 and b * d != 2 * a
        case _:
            suits = 3 <= a <= 7 and 3 <= b <= 7 and c in (4, 5, 6, 8) and 2 < d <= 12 and a != b
    return suits and _told_apart(kind, a, b, c, d)
