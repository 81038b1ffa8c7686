"""Which products of decimals are asked for."""

from __future__ import annotations

from enum import IntEnum


class Kind(IntEnum):
    """What is multiplied."""

    TENTHS_BY_WHOLE, TENTHS, BY_TENS = range(3)
    LONGER, HUNDREDTHS, TWO_DIGITS, COST = range(3, 7)
    KNOWN, POWER, BOX, THREE = range(7, 11)


def support_fits(kind: int, a: int, b: int) -> bool:
    """Keep products of the tables in tenths, and decimals multiplied by 10, 100 and 1000."""
    match kind:
        case Kind.TENTHS_BY_WHOLE:
            return 2 <= a <= 9 and 2 <= b <= 12 and a * b >= 10 and a * b % 10 != 0
        case Kind.TENTHS:
            return 2 <= a <= 9 and 2 <= b <= 9 and a != b and a * b % 10 != 0
    # So many hundredths by 10 to the power b.
    return b <= 3 and a >= 11 and a % 100 != 0


def core_fits(kind: int, a: int, b: int) -> bool:
    """Keep a.b × 0.c, hundredths by tenths, a.b × c.d, and a price of so many kilograms."""
    match kind:
        case Kind.LONGER:
            return 12 <= a <= 99 and a % 10 > 1 and 2 <= b <= 9 and a * b % 10 != 0
        case Kind.HUNDREDTHS:
            return 2 <= a <= 9 and 2 <= b <= 9 and a * b >= 10
        case Kind.TWO_DIGITS:
            return 12 <= a <= 45 and 12 <= b <= 35 and a % 10 > 1 and b % 10 > 1 and a != b
    # Pence a kilogram and tenths of a kilogram, with whole pence to pay.
    return a >= 85 and a % 10 in (0, 5) and 12 <= b <= 38 and b % 10 != 0 and a * b % 10 == 0


def challenge_fits(kind: int, a: int, b: int, shift: int) -> bool:
    """Keep products from a known one, powers, boxes, and three factors."""
    match kind:
        case Kind.KNOWN:
            # One in six: there are plenty.
            suits = (a + b + shift) % 6 == 0 and a >= 13 and a != b
            return suits and a % 10 != 0 != b % 10 and a * b % 10 != 0
        case Kind.POWER:
            return a <= 12 and a != 10 and b in (12, 13) and shift <= 1 and a ** (b - 10) > 9
        case Kind.BOX:
            return 2 <= a <= 9 and 13 <= b <= 99 and b % 10 != 0 and shift == 0
    # 0.a × 0.c × 0.d from a and the digits of b
    c, d = divmod(b, 10)
    return shift == 0 and 2 <= a <= 9 and 1 < c < d and a not in (c, d) and a * c * d % 10 != 0
