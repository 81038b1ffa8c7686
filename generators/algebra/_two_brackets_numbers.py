"""Which two brackets are expanded."""

from __future__ import annotations


def support_fits(kind: int, a: int, b: int) -> bool:
    """Keep (x + a)(x + b) with a below b, and one negative number that is not the other's size."""
    if kind == 0:
        return a < b and (a, b) != (2, 2)
    return a != b and abs(a - b) < 9


def core_fits(kind: int, a: int, b: int, c: int) -> bool:
    """Keep two negative numbers, squares, a number before x, and rectangles."""
    if kind == 0:  # (x − a)(x − b)
        return c == 2 and 1 < a < b
    if kind in (1, 2):  # (x + a)², (x − a)²
        return b == 1 and c == 2 and a > 2
    if kind == 3:  # (cx + a)(x + b)
        return a != b and c * b != a and b > 1
    # A rectangle x + a by x − b
    return c == 2 and b > 1 and a > b + 1


def challenge_fits(kind: int, a: int, b: int, c: int, d: int) -> bool:
    """Keep numbers before both letters, differences of products, and gardens with a pond."""
    if kind == 0:  # (ax − b)(cx − d)
        return 1 < a < c and d in (1, 3, 5, 7) and b != d and a * d != b * c and b > 1
    if kind == 1:  # (ax + b)² or (ax − b)²
        return a > 1 and a != b and c == 2 and d < 3
    if kind == 2:  # (x + a)(x − b) − (x − c)²
        return a != b and d == 1 and b > 1 and a - b + 2 * c != 0 and a * b + c * c != 0
    # A garden x + b by x + d, with a pond a by x in it: a below b and d
    return a + 1 < b < d and c == 2
