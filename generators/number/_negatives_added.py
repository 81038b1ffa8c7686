"""Which sums with negative numbers are asked for, what they come to, and what the mistakes give."""

from __future__ import annotations

from enum import IntEnum

from generators.number import _signs as m
from generators.number._writing import apart
from itembank.items.wrong_answers import Wrong


class Kind(IntEnum):
    """What is added to what, or taken from it."""

    UP, BELOW, DOWN, WARMER, COLDER = range(5)
    TAKE_NEGATIVE, ADD_NEGATIVE, BOTH_NEGATIVE, FUND = range(5, 9)
    THREE, BOX_FIRST, BOX_SECOND, RANGE = range(9, 13)


def answers_of(kind: int, a: int, b: int, c: int) -> tuple[int, tuple[Wrong, ...]]:
    """Return the answer, and what the mistakes come to."""
    match kind:
        case Kind.UP | Kind.WARMER:
            return b - a, ((m.ADDS_SIZES, -a - b), (m.DROPS_MINUS, a + b))
        case Kind.BELOW | Kind.COLDER:
            return a - b, ((m.SMALL_FROM_LARGE, b - a), (m.ADDS_SIZES, -a - b))
        case Kind.DOWN:
            return -a - b, ((m.TWO_MINUSES, a + b), (m.WRONG_WAY, b - a))
        case Kind.TAKE_NEGATIVE:
            return a + b, ((m.DROPS_BRACKET, a - b), (m.ADDS_SIZES, -a - b))
        case Kind.ADD_NEGATIVE:
            return -a - b, ((m.TWO_MINUSES, a + b), (m.DROPS_SECOND, b - a))
        case Kind.BOTH_NEGATIVE:
            return b - a, ((m.DROPS_BRACKET, -a - b), (m.TWO_MINUSES, a + b))
        case Kind.FUND:
            return b - a - c, ((m.DROPS_MINUS, a + b - c), (m.SMALL_FROM_LARGE, a + c - b))
        case Kind.THREE:
            return b - a - c, ((m.DROPS_BRACKET, -a - b - c), (m.DROPS_SECOND, b - a + c))
        case Kind.BOX_FIRST:
            return -a - b, ((m.DROPS_BRACKET, a - b), (m.DROPS_MINUS, a + b))
        case Kind.BOX_SECOND:
            return -a - b, ((m.WRONG_WAY, a - b), (m.DROPS_MINUS, a + b))
    sizes = (a, b, c)
    return (
        b + max(a, c),
        ((m.DROPS_MINUS, max(sizes) - min(sizes)), (m.SIZE_FOR_VALUE, b + min(a, c))),
    )


def _keep(kind: int, a: int, b: int, c: int = 0) -> bool:
    if a == b or c in (a, b):
        return False
    key, wrong = answers_of(kind, a, b, c)
    return key not in (0, 1) and apart(key, *(answer for _, answer in wrong))


def support_fits(kind: int, a: int, b: int) -> bool:
    """Keep small numbers; temperatures end between −15 and 25 degrees."""
    match kind:
        case Kind.BELOW:
            suits = a < b
        case Kind.WARMER:
            suits = a <= 9 and 5 <= b <= 16
        case Kind.COLDER:
            suits = 3 <= a < b <= 16
        case _:
            suits = True
    return suits and _keep(kind, a, b)


def core_fits(kind: int, a: int, b: int, c: int) -> bool:
    """Keep sums with a number in brackets, and an account that stays below nothing."""
    if kind == Kind.FUND:
        return (
            20 <= a <= 60
            and a % 5 == b % 5 == 0
            and c >= 50
            and b >= 40
            and b < a + c
            and a + b > c
            and _keep(kind, a, b, c)
        )
    return c == 0 and a <= 25 and b <= 25 and _keep(kind, a, b)


def challenge_fits(kind: int, a: int, b: int, c: int) -> bool:
    """Keep sums of three numbers, boxes, and the range of three temperatures."""
    match kind:
        case Kind.BOX_FIRST | Kind.BOX_SECOND:
            return c == 0 and a > 2 < b and _keep(kind, a, b)
        case Kind.RANGE:
            return 2 < a <= 12 and 1 < b <= 9 and 2 < c <= 12 and _keep(kind, a, b, c)
    # Every second one: there are plenty.
    return (a + b + c) % 2 == 0 and 2 < c <= 12 and a > 2 < b and _keep(kind, a, b, c)
