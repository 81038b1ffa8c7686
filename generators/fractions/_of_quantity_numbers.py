"""Which fractions of quantities are asked for."""

from __future__ import annotations

from math import gcd


def support_fits(unit: int, d: int, m: int) -> bool:
    """Keep 1/d of d × m; with m = d the two wrong answers would be the same."""
    return m != d


def core_fits(kind: int, d: int, a: int, m: int) -> bool:
    """Keep a/d of d × m so that there are two different wrong answers."""
    if a >= d or gcd(a, d) != 1:
        return False
    # One part and the rest are the same when a = d − 1; then dividing by a must work out.
    return a != d - 1 or (m * d) % a == 0


def challenge_fits(kind: int, f: tuple[int, int], g: tuple[int, int], m: int) -> bool:
    """Keep a second fraction of the rest (0 to 2), and what two fractions leave (3 to 5)."""
    (a, b), (c, d) = f, g
    n = b * d * m
    # Amounts may not be large, and an amount need not have both denominators as factors twice.
    if n > 240 or n < 20 or f == g:
        return False
    first, second = n * a // b, n * c // d
    if kind < 3:
        rest = n - first
        # The second fraction of the rest, of the whole and of the first part all differ.
        return 2 * first != n and rest * c % d == 0 and first * c % d == 0
    left = n - first - second
    of_rest = (n - first) * c
    return (
        left > 0
        and 2 * left != n
        and of_rest % d == 0
        and n - first - of_rest // d != n - left
        and (a, b) < (c, d)
    )
