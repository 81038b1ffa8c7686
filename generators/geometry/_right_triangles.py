"""Which right-angled triangles are asked for."""

from __future__ import annotations

from fractions import Fraction
from math import isqrt

from generators.geometry._calculator import root_of

BASIC = (
    (3, 4, 5),
    (5, 12, 13),
    (8, 15, 17),
    (7, 24, 25),
    (20, 21, 29),
    (9, 40, 41),
    (12, 35, 37),
    (28, 45, 53),
    (11, 60, 61),
    (16, 63, 65),
    (33, 56, 65),
    (48, 55, 73),
    (13, 84, 85),
    (36, 77, 85),
    (39, 80, 89),
    (65, 72, 97),
)


def triple_of(index: int, k: int) -> tuple[int, int, int]:
    """Return whole sides of a right-angled triangle, the longest last.

    >>> triple_of(0, 3)
    (9, 12, 15)
    """
    a, b, c = BASIC[index]
    return a * k, b * k, c * k


def _is_square(n: int) -> bool:
    return isqrt(n) ** 2 == n


def support_fits(index: int, k: int, unit: str, box: bool) -> bool:
    """Keep triangles that are not too large for their unit."""
    c = triple_of(index, k)[2]
    if box and unit == "mm":
        return False
    return c <= (50 if unit == "m" else 100)


def core_fits(kind: str, a: int, b: int, k: int) -> bool:
    """Keep shorter sides, roundings, and triangles with a right angle or nearly one."""
    if kind == "short":  # a shorter side of a triple: index, which one, and how large
        return a < len(BASIC) and b < 2 and k >= 1 and triple_of(a, k)[2] <= 65
    if kind == "long":  # the longest side, rounded
        return k == 0 and 3 <= a < b <= 20 and not _is_square(a * a + b * b) and (a + b) % 2 == 0
    if kind == "other":  # a shorter side, rounded: b is the longest
        fits = k == 0 and 4 <= a < b <= 20 and not _is_square(b * b - a * a)
        return fits and (a + b) % 3 == 0 and 4 * a > b
    # The signs of a triangle with sides a, b and a + b less k.
    c = a + b - k
    fits = kind == "sign" and 1 <= k <= 6 and 4 <= a < b < c <= 20 and a + b > c
    near = abs(a * a + b * b - c * c) <= 40
    return fits and near and (a * a + b * b == c * c or (a + b + k) % 3 == 0)


def challenge_fits(kind: str, a: int, b: int, k: int) -> bool:
    """Keep ladders, ways across a field, and areas whose triangle has whole sides."""
    if kind == "ladder":  # a tenths long, b tenths from the wall
        fits = (
            k == 0
            and 21 <= a <= 60
            and 5 <= b <= 24
            and b * b > 2 * a
            and 5 * b < 2 * a
            and a % 10
            and b % 10
        )
        return bool(fits) and (a + b) % 6 == 0 and not _is_square(a * a - b * b)
    if kind == "across":  # the diagonal of a field saves so much
        fits = k == 0 and 40 <= a <= 120 and a % 5 == 0 and b % 5 == 0 and a < b <= 120
        return fits and not _is_square(a * a + b * b)
    if kind == "rectangle":  # a triple: the area from the diagonal and a side
        return a < len(BASIC) and b < 2 and k >= 1 and triple_of(a, k)[2] <= 52
    # an isosceles triangle: half the base is one side of a triple
    return kind == "isosceles" and a < len(BASIC) and b < 2 and k >= 1 and triple_of(a, k)[2] <= 52


def core_legs(kind: str, a: int, b: int, k: int) -> tuple[Fraction, Fraction]:
    """Return the legs of the triangle of a question of the core tier: level and upright."""
    if kind == "short":
        triple = triple_of(a, k)
        return Fraction(triple[b]), Fraction(triple[1 - b])
    if kind == "long":
        return (Fraction(a), Fraction(b)) if a % 2 else (Fraction(b), Fraction(a))
    other = root_of(Fraction(b * b - a * a))
    return (Fraction(a), other) if a % 2 else (other, Fraction(a))
