"""Which quadratic expressions are factorised."""

from __future__ import annotations

from math import gcd


def support_fits(kind: int, a: int, b: int) -> bool:
    """Keep x² + (a + b)x + ab with different numbers, and the search for the numbers alone."""
    return a < b and b - a < 12 and (kind == 0 or (a > 1 and a + b < 22))


def core_fits(kind: int, a: int, b: int) -> bool:
    """Keep numbers of one sign or two, and differences of two squares."""
    if kind == 0:  # (x + a)(x − b)
        return a != b and abs(a - b) < 10 and a * b <= 120
    if kind == 1:  # (x − a)(x − b)
        return a < b and a * b <= 120
    return b == 1 and a > 2  # x² − a²


def challenge_fits(kind: int, p: int, a: int, b: int) -> bool:
    """Keep a number before x², common factors, and areas."""
    if kind == 0:  # (px + a)(x ± b)
        return p in (2, 3, 5) and a != b and a % p > 0 and a != p * b and a + p * b < 30
    if kind == 1:  # p²x² − a²
        return b == 1 and gcd(p, a) == 1 and a > 1
    if kind == 2:  # p(x + a)(x − b)
        return a != b and a * b < 40 and abs(a - b) < 7
    # An area of x² + (a + b)x + ab, x + a wide.
    return p == 2 and a < b
