"""Which terms are collected."""

from __future__ import annotations


def support_fits(kind: int, a: int, b: int, c: int, d: int) -> bool:
    """Keep sums of one letter, of a letter and a number, and of two letters, no term twice."""
    if kind < 2:
        return c == 2 and d == 1 and a != b and (kind == 0 or a > b + 1)
    if kind == 2:
        return d == 1 and len({a, b, c}) == 3 and a + b != c
    return len({a, b, c}) == 3 and d != b and a + c != b + d and d != c


def core_fits(kind: int, a: int, b: int, c: int, d: int) -> bool:
    """Keep two letters, a letter and numbers, squares, and products, with terms taken away."""
    if kind == 0:  # ax − by − cx + dy
        return c not in (a, d) and b != d and a != b and a + d != b + c
    if kind == 1:  # ax − b − cx + d
        return abs(b - d) > 1 and c - a > 1 and b + c != a + d
    if kind == 2:  # ax² + bx + cx² − dx
        return abs(b - d) > 1 and a != b and c <= 5 and a + c not in (b, d - b, b - d)
    # axy + bx − cyx + dx
    return a > c + 1 and len({a, b, c, d}) == 4 and a + b + d != c


def challenge_fits(kind: int, a: int, b: int, c: int, d: int) -> bool:
    """Keep perimeters, fractions, what is to be added, squares in products, and third sides."""
    if kind == 0:  # a bed ax + b long and cx − d wide
        return a > c and b > d and d > 1
    if kind == 1:  # (1/a)x + by − (1/c)x − dy
        return a < 5 and c % a == 0 and c > a and b < d
    if kind == 2:  # to ax − by add what makes cx + dy
        return c > a + 1 and b > 1 and d > 1 and b != d and c - a not in (b + d, d - b)
    if kind == 3:  # ax²y + bxy² − cx²y + dxy²
        return a > c + 1 and b in (c, c + 1, c + 3) and b != d and a != b
    # A triangle: perimeter ax + b, two sides cx − d and x + 1 or so.
    return a > c + 3 and d > 1 and b > d and c > 1
