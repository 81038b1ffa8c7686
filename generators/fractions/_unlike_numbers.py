"""Which fractions with different denominators are added."""

from __future__ import annotations

from math import gcd, lcm


def support_fits(op: int, b: int, a: int, k: int, c: int) -> bool:
    """One denominator is a multiple of the other; the answer is proper and needs no cancelling."""
    d = b * k
    top = a * k + (c if op else -c)
    return (
        a < b
        and c < d <= 30
        and 0 < top < d
        and gcd(a, b) == 1
        and gcd(c, d) == 1
        and gcd(top, d) == 1
        # Numerators that are equal make the wrong methods of subtraction end in 0.
        and (op == 1 or a > c)
    )


def core_fits(op: int, b: int, a: int, d: int, c: int) -> bool:
    """Neither denominator is a multiple of the other, and the common one is at most 60."""
    if b == d or a >= b or c >= d or b % d == 0 or d % b == 0:
        return False
    if gcd(a, b) != 1 or gcd(c, d) != 1 or b * d // gcd(b, d) > 60:
        return False
    if op:
        return b < d and a * d + c * b != b * d
    top = a * d - c * b
    if a <= c or top <= 0:
        return False
    # Neither wrong method may give the right answer.
    return (a - c) * b * d != top * abs(b - d) and (a - c) * gcd(b, d) != top


def challenge_fits(kind: int, triple: tuple[int, int, int], a: int, c: int, e: int) -> bool:
    """Three fractions, or what two fractions of a whole leave."""
    b, d, f = triple
    if a >= b or c >= d or gcd(a, b) != 1 or gcd(c, d) != 1:
        return False
    if kind:
        # The story has two fractions, so the third numerator has nothing to say.
        return e == 1 and a * d + c * b < b * d
    if e >= f or gcd(e, f) != 1:
        return False
    top, bottom = a * d * f + c * b * f - e * b * d, b * d * f
    raw, below = a + c - e, b + d - f
    if raw <= 0 or below <= 0 or top <= 0 or top == bottom:
        return False
    # Neither wrong method may give the right answer.
    return raw * bottom != top * below and raw * bottom != top * lcm(b, d, f)
