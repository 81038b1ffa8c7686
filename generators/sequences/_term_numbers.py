"""Which terms are asked for."""

from __future__ import annotations


def support_fits(kind: int, a: int, b: int, n: int) -> bool:
    """Keep rules that rise and fall, and their first four terms."""
    if kind == 0:  # an + b or an − b
        return abs(b) != a and n not in (a, abs(b)) and a * n + b > 0 and a + n != a * n and n > 2
    if kind == 1:  # ten times b, less an
        return b > 2 and 10 * b - a * n > 0 and n > 2 and a != n and a + n != a * n
    return n == 4 and b != 0 and a != b and a + b > 0  # the first four terms


def core_fits(kind: int, a: int, b: int, n: int) -> bool:
    """Keep rules with n², which term a number is, and the terms of rows."""
    if kind == 0:  # n² + an or n² − an, or n² + b
        size = -a if (a + n) % 2 == 0 else a
        apart = b == 1 or (n + size) ** 2 not in (2 * n + size, n * n + size)
        return b in (1, 2) and n > 3 and a not in (2, n) and apart
    if kind == 1:  # which term is it
        return b % 3 != 0 and (a * (a * n + b) + b) > 0 and n > 4 and 0 < a * n + b != n
    return b > 0 and n > 2 and a > 1 and a != n  # rows n + 2 … and n


def challenge_fits(kind: int, a: int, b: int, n: int) -> bool:
    """Keep a rule found from two terms, where two sequences meet, and an² − bn."""
    if kind == 0:  # a first term and a step from two terms
        return b not in (0, a, 2 * a) and n < 8
    if kind == 1:  # where two sequences meet
        return n > 3 and a > 2 and b > 0 and a * n - b != n
    return n > 2 and a in (2, 3, 4, 5) and b not in (0, a) and n < 9  # an² − bn
