"""Which divisions of decimals are asked for."""

from __future__ import annotations

from enum import IntEnum


class Kind(IntEnum):
    """What is divided by what."""

    BY_WHOLE, BY_TENS, WHOLES = range(3)
    BY_TENTHS, BOTH, SHARED, FILLED = range(3, 7)
    KNOWN, LINE, BOX, HUNDREDTHS = range(7, 11)


def support_fits(kind: int, a: int, b: int) -> bool:
    """Keep quotients in tenths, decimals divided by 10, 100 and 1000, and whole by whole."""
    match kind:
        case Kind.BY_WHOLE:
            # The quotient has so many tenths.
            return 2 <= b <= 9 and 12 <= a <= 99 and a % 10 != 0 and a * b % 10 != 0
        case Kind.BY_TENS:
            return b <= 3 and a >= 11 and a % 10 != 0
    # A whole number of halves, quarters or fifths that ends.
    return b in (4, 5, 8) and a % b != 0 and b < a <= 60 and a % 2 == 1


def core_fits(kind: int, a: int, b: int) -> bool:
    """Keep division by tenths, a price that is shared, and what can be filled."""
    match kind:
        case Kind.BY_TENTHS:  # a is the quotient, a whole number
            return 2 <= b <= 9 and 3 <= a <= 40 and a * b % 10 == 0 and a != b
        case Kind.BOTH:  # a tenths is the quotient
            return 2 <= b <= 9 and 12 <= a <= 99 and a % 10 != 0 and a != b
        case Kind.SHARED:  # each pays a in units of 5 p
            return 3 <= b <= 8 and a >= 30 and a % 20 != 0 and a * b // 20 % b != 0
    return b in (2, 3, 4, 6, 7, 8) and 6 <= a <= 40 and a * b % 10 != 0


def challenge_fits(kind: int, a: int, b: int, shift: int) -> bool:
    """Keep quotients from a known one, products over a line, boxes, and hundredths below."""
    match kind:
        case Kind.KNOWN:
            # One in six: there are plenty.
            suits = (a + b + shift) % 6 == 0 and a >= 13 and a != b
            return suits and a % 10 != 0 != b % 10
        case Kind.LINE:
            # 0.a × 0.c over 0.0d: a whole quotient; c and d are the digits of b.
            c, d = divmod(b, 10)
            suits = shift == 0 and 2 <= a <= 9 and c > 1 < d and a != c and d not in (a, c)
            return suits and a * c % d == 0
        case Kind.BOX:
            return shift == 0 and 2 <= a <= 9 and b >= 13 and b % 10 != 0 and a * b % 10 != 0
    return shift == 0 and 2 <= a <= 9 and b >= 13 and b % 10 != 0
