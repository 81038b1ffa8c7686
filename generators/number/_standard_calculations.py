"""Which calculations in standard form are asked for."""

from __future__ import annotations

from enum import IntEnum


class Kind(IntEnum):
    """What is worked out."""

    TIMES, OVER = range(2)
    LONG_TIMES, LONG_OVER, SAME_SUM = range(2, 5)
    SUM, DIFFERENCE, SQUARE, STORY = range(5, 9)


def support_fits(kind: int, a: int, b: int, p: int, q: int) -> bool:
    """Keep products and quotients that are in standard form as soon as they are worked out."""
    if p == q or p * q in (p + q, p + q + 1):
        return False
    if kind == Kind.TIMES:
        return a <= 45 and a % 10 != 0 and a * b < 100 and a * b % 10 != 0 and b > 1
    # ab tenths over b: the quotient is a tenths.
    return a * b < 100 and a % 10 != 0 and b > 1 and p > q + 1 and p % q == 0 and p != 2 * q


def core_fits(kind: int, a: int, b: int, p: int, q: int) -> bool:
    """Keep those whose first number has to be put right, and sums over one power of 10."""
    match kind:
        case Kind.LONG_TIMES:
            fits = a % 10 != 0 and 3 <= b <= 9 and a * b > 100 and p != q and q != 2
            return fits and a <= 95 and p * q not in (p + q, p + q + 1)
        case Kind.LONG_OVER:
            # b over a number of tenths: the quotient is below 1.
            return a in (25, 4, 5, 8) and b in (1, 2, 3) and p > q + 2 and below_one(a, b)
    # a tenths and b, both × 10ᵖ, more than 10 together.
    return q == 2 and a % 10 != 0 and a + 10 * b > 101 and b > 1 and a > 12


def below_one(a: int, b: int) -> bool:
    """Tell whether a quotient of the first numbers is less than 1."""
    bottom = a if a > 9 else 10 * a
    return 1000 * b % bottom == 0 and 10 * b < bottom


def challenge_fits(kind: int, a: int, b: int, p: int, q: int) -> bool:
    """Keep sums and differences of unlike powers, squares, and stories of large numbers."""
    match kind:
        case Kind.SUM | Kind.DIFFERENCE:
            return a % 10 != 0 and b > 1 and p in (q + 1, q + 2) and a > 12
        case Kind.SQUARE:
            return (
                b == 2 and q == 2 and p >= 3 and a in (3, 4, 5, 6, 7, 8, 9, 12, 15, 25) and p <= 7
            )
    return b >= 3 and p in (6, 7, 8) and q == 2 and a > 12 and a % 10 != 0 and a * b > 100
