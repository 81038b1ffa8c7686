"""Exact points near a circle: rational, and nearer to the true place than any printer can show.

A point of the circle has rational coordinates where the tangent of half its angle is rational
(the classical parametrisation of the unit circle, from memory):
``((1 - s²)/(1 + s²), 2s/(1 + s²))``. So each point given here is
exactly on the circle, and its direction is off by less than a thousandth of a degree.
"""

from __future__ import annotations

import math
from fractions import Fraction
from functools import lru_cache

from itembank.figures.drawing import Exact, Point

_FINE = 1 << 17


@lru_cache(maxsize=4096)
def unit_point(turn: Fraction) -> Point:
    """Return the point of the unit circle at a part of a whole turn, anticlockwise from the right.

    Quarters of a turn are exact; others are off by less than a thousandth of a degree.

    >>> unit_point(Fraction(1, 4))
    Point(x=0, y=1)
    >>> point = unit_point(Fraction(1, 6))
    >>> point.x**2 + point.y**2 == 1, round(float(point.x), 5)
    (True, 0.5)
    """
    turn %= 1
    quarter, rest = divmod(turn * 4, 1)
    # Within the first quarter half the angle is at most 45 degrees, where the tangent is tame.
    half = Fraction(round(math.tan(float(rest) * math.pi / 4) * _FINE), _FINE)
    x, y = (1 - half**2) / (1 + half**2), 2 * half / (1 + half**2)
    for _ in range(int(quarter)):
        x, y = -y, x
    return Point(_plain(x), _plain(y))


def on_circle(centre: Point, radius: Exact, part: Fraction) -> Point:
    """Return the point of a circle at a part of a turn *clockwise from the top*, as on a clock.

    >>> on_circle(Point(0, 0), 2, Fraction(1, 4))
    Point(x=2, y=0)
    """
    x, y = unit_point(Fraction(1, 4) - part)
    return Point(centre.x + radius * x, centre.y + radius * y)


def in_direction(start: Point, length: Exact, degrees: Exact) -> Point:
    """Return the point so far from another, so many degrees anticlockwise from the right.

    >>> in_direction(Point(1, 1), 3, 180)
    Point(x=-2, y=1)
    """
    x, y = _direction(degrees)
    return Point(start.x + length * x, start.y + length * y)


@lru_cache(maxsize=4096)
def _direction(degrees: Exact) -> Point:
    return unit_point(Fraction(degrees) / 360)


def _plain(value: Fraction) -> Exact:
    return int(value) if value.denominator == 1 else value
