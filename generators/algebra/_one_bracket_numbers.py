"""Which brackets are expanded."""

from __future__ import annotations


def support_fits(kind: int, a: int, b: int, c: int) -> bool:
    """Keep products with different numbers: a(x ± c), a(bx ± c)."""
    if kind in (0, 1, 4):
        return b == 2 and a != c and c > 1
    return b > 1 and len({a, b, c}) == 3


def core_fits(kind: int, a: int, b: int, c: int, d: int) -> bool:
    """Keep a minus or a letter before the bracket, two brackets, and areas."""
    if kind == 0:  # −a(bx − c) or −a(bx + c)
        return d < 3 and len({a, b, c}) == 3 and c > 1
    if kind == 1:  # x(bx + c) or ax(x − c)
        return d < 3 and a < 6 and len({a, b, c}) == 3 and c > 1
    if kind == 2:  # a(x + b) + c(x − d)
        return a != c and b != d and a * b != c * d and b - d != a * b - c * d and 1 not in (c, d)
    # A plot a wide and bx + c long.
    return d == 1 and len({a, b, c}) == 3


def challenge_fits(kind: int, a: int, b: int, c: int, d: int) -> bool:
    """Keep brackets taken away, letters before two of them, and areas with a hole."""
    if kind == 0:  # a(x + b) − c(x − d)
        return a > c > 1 and b != d and d > 1 and a * b not in (c * d, c * d + b + d, b + d - c * d)
    if kind == 1:  # ax(bx − y) − x(cx − dy)
        return a * b > c + 1 and a != d and b > 1
    if kind == 2:  # 1a − b(cx − d)
        return b > 1 and d > 1 and len({a, b, c, d}) > 2 and c < 5
    # A plot a by bx + d, and in it a bed c by x + 1.
    return a > c + 1 and b > 1 and d > 1 and a * d > c + 1 and a != b
