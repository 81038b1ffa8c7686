"""Which products and quotients of negative numbers are asked for, and what the mistakes give."""

from __future__ import annotations

from enum import IntEnum
from fractions import Fraction

from generators.number import _signs as m
from generators.number._writing import apart
from itembank.items.wrong_answers import Wrong


class Kind(IntEnum):
    """What is multiplied or divided."""

    NEGATIVE_FIRST, NEGATIVE_SECOND, BOTH, DIVIDE = range(4)
    DIVIDE_BOTH, SQUARE, THREE, MIXED, BOX = range(4, 9)
    POWERS, BAR, LONG_BOX, TWO_NUMBERS = range(9, 13)


def answers_of(kind: int, a: int, b: int, c: int) -> tuple[int, tuple[Wrong, ...]]:
    """Return the answer, and what the mistakes come to."""
    match kind:
        case Kind.NEGATIVE_FIRST:
            return -a * b, ((m.LOSES_SIGN, a * b), (m.ADDS_INSTEAD, b - a))
        case Kind.NEGATIVE_SECOND:
            return -a * b, ((m.LOSES_SIGN, a * b), (m.READS_AS_TAKE, a - b))
        case Kind.BOTH:
            return a * b, ((m.KEEPS_MINUS, -a * b), (m.READS_AS_TAKE, -a - b))
        case Kind.DIVIDE:
            return -a, ((m.LOSES_SIGN, a), (m.ADDS_INSTEAD, -a * b - b))
        case Kind.DIVIDE_BOTH:
            return a, ((m.KEEPS_MINUS, -a), (m.ADDS_INSTEAD, -a * b + b))
        case Kind.SQUARE:
            return a * a + b, ((m.SQUARE_NEGATIVE, b - a * a), (m.DOUBLES, b - 2 * a))
        case Kind.THREE:
            return a * b * c, ((m.KEEPS_MINUS, -a * b * c), (m.READS_AS_TAKE, -a * b - c))
        case Kind.MIXED:
            return a + b * c, ((m.LOSES_SIGN, a - b * c), (m.LEFT_TO_RIGHT, -(a - b) * c))
        case Kind.BOX:
            return b, ((m.KEEPS_MINUS, -b), (m.ADDS_INSTEAD, a - a * b))
        case Kind.POWERS:
            return (
                -(a**3) - b * b,
                ((m.SQUARE_NEGATIVE, b * b - a**3), (m.DOUBLES, 2 * b - 3 * a)),
            )
        case Kind.BAR:
            # (−ac + bc)/(−c) × (−2)
            return (b - a) * 2, ((m.ALL_CANCEL, (a - b) * 2), (m.ADDS_SIZES, -(a + b) * 2))
        case Kind.LONG_BOX:
            # −a × □ + b = −c
            return (
                (b + c) // a,
                ((m.KEEPS_MINUS, -(b + c) // a), (m.NOT_UNDONE, Fraction(c - b, a))),
            )
    return a, ()


def _keep(kind: int, a: int, b: int, c: int) -> bool:
    key, wrong = answers_of(kind, a, b, c)
    return apart(key, *(answer for _, answer in wrong))


def support_fits(kind: int, a: int, b: int) -> bool:
    """Keep products of the tables, of two different numbers."""
    return a != b and _keep(kind, a, b, 0)


def core_fits(kind: int, a: int, b: int, c: int) -> bool:
    """Keep quotients of two negatives, squares, three factors, and a product to be taken away."""
    match kind:
        case Kind.DIVIDE_BOTH | Kind.BOX:
            suits = c == 2 and a != b and a > 2 < b
        case Kind.SQUARE:
            suits = c == 2 and a > 2 and a != b
        case Kind.THREE:
            suits = a <= 6 and b <= 9 and c <= 6 and apart(a, b, c) and a * b * c <= 200
        case _:
            suits = apart(a, b, c) and b <= 9 and c <= 9
    return suits and _keep(kind, a, b, c)


def challenge_fits(kind: int, a: int, b: int, c: int) -> bool:
    """Keep powers of negatives, a fraction line, a longer box, and two numbers to be found."""
    match kind:
        case Kind.POWERS:
            suits = c == 2 and a <= 5 and b <= 12 and a != b
        case Kind.BAR:
            suits = a > b and 3 <= c <= 6 and apart(a, b, c) and a - b > 1
        case Kind.LONG_BOX:
            suits = (b + c) % a == 0 and a >= 3 and apart(a, b, c) and (b + c) // a > 2
        case _:
            # One is positive, the other negative; told apart from their sum by their product.
            return c == 2 and a != b and abs(a - b) > 1 and a > 2
    return suits and _keep(kind, a, b, c)
