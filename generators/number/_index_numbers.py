"""Which bases and indices are asked for."""

from __future__ import annotations

from enum import IntEnum

from generators.number._writing import apart


class Kind(IntEnum):
    """Which law is used on what."""

    TIMES, OVER, RAISED, LETTER_TIMES = range(4)
    THREE, LETTER_OVER, LETTER_RAISED, FRONT, BAR = range(4, 9)
    FRONT_RAISED, FRONT_OVER, TWO_LETTERS, NEGATIVE, UNLIKE = range(9, 14)


def support_fits(kind: int, a: int, m: int, n: int) -> bool:
    """Keep two powers of one number or letter that the mistakes take for something else."""
    match kind:
        case Kind.TIMES | Kind.LETTER_TIMES:
            # The base of a number says nothing new: products of letters, which lead on to the
            # other tiers, are more than those of numbers.
            based = kind == Kind.LETTER_TIMES or a in (2, 3, 7)
            return based and n <= m + 4 and m != n and m * n not in (m + n, 2 * (m + n))
        case Kind.OVER:
            return m > n + 1 and m != 2 * n and m % n == 0
    return m * n != m + n and m**n not in (m * n, m + n) and m <= 6 and n <= 4


def core_fits(kind: int, a: int, m: int, n: int, c: int) -> bool:
    """Keep three powers, letters over a line or raised, and numbers in front."""
    match kind:
        case Kind.THREE:  # xᵐ × x × xⁿ
            return c == 2 and m != n and m * n > m + n + 1
        case Kind.LETTER_OVER:
            return c == 2 and m > n + 1 and m != 2 * n and m % n == 0
        case Kind.LETTER_RAISED:
            return c == 2 and n <= 4 and m**n not in (m * n, m + n) and m * n != m + n
        case Kind.FRONT:  # axᵐ × cxⁿ
            return a != c and a * c != a + c and m * n != m + n and m != n and m + n <= 9
    # (xᵐ × xⁿ)/xᶜ
    total = m + n
    fits = a == 2 and total > c + 1 and m * n not in (total, total + c)
    return fits and apart(c, m, n)


def challenge_fits(kind: int, a: int, m: int, n: int, c: int) -> bool:
    """Keep numbers in front that are raised or divided, two letters, and negative indices."""
    match kind:
        case Kind.FRONT_RAISED:  # (axᵐ)ⁿ
            return c == 2 and n <= 4 and a > 1 and a**n <= 250 and a**n != a * n and m * n != m + n
        case Kind.FRONT_OVER:  # acxᵐ over axⁿ
            return (
                a > 1 < c and m > n + 1 and a * c - a != c and a != c and m % n == 0 and m != 2 * n
            )
        case Kind.TWO_LETTERS:  # axᵐy × cxyⁿ
            return 1 < a != c and a * c != a + c and m != n and m + n <= 9 and m * n > 8
        case Kind.NEGATIVE:  # xᵐ ÷ xⁿ with n above m
            return c == 2 and a == 2 and 1 < m < n - 1
    # 4, 8, 9, 25 or 27 times a power of 2, 3 or 5
    return c == 2 and n == 2 and a <= 6 and m not in (a,) and m >= 2


UNLIKE = ((2, 2), (2, 3), (3, 2), (5, 2), (3, 3), (2, 4))
"""Bases with the index to which the first number of a product is raised: 8 is 2³."""
