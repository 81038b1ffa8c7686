"""Corners of shapes with given angles, at whole numbers."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import product

from itembank.notation import tree as t

Corners = tuple[tuple[t.Node, t.Node], ...]
_SIDE = 1000


def at(*spots: tuple[int, int]) -> Corners:
    """Return corners at whole numbers."""
    return tuple((t.num(x), t.num(y)) for x, y in spots)


def triangle_corners(a: int, b: int) -> Corners:
    """Return a triangle with so many degrees at A and B, its side AB level and 1000 long.

    With equal angles at A and B its other sides are exactly equal, and a right angle at A or B
    is exactly right.

    >>> [tuple(node.n for node in spot) for spot in triangle_corners(45, 90)]
    [(0, 0), (1000, 0), (1000, 1000)]
    """
    first, other = math.radians(a), math.radians(b)
    high = _SIDE * math.sin(first) * math.sin(other) / math.sin(first + other)
    along = _SIDE // 2 if a == b else round(high * math.cos(first) / math.sin(first))
    return at((0, 0), (_SIDE, 0), (along, round(high)))


def quadrilateral_corners(
    angles: Sequence[int], *, level: bool = False, high: int = 480
) -> Corners:
    """Return a quadrilateral with so many degrees at A, B, C and D, its side AB level.

    With `level` its angles at A and D make 180°, and its sides AB and DC are exactly parallel.
    A right angle at A or B is exactly right.
    """
    a, b, c, _ = angles
    made = []
    for far in (600, 500, 700, 400, 800, 900, 300, 1100):
        dx, dy = far * _cos(a), far * _sin(a)
        # From B in the direction of C, and from C in the direction of D, as far as is needed.
        ux, uy, vx, vy = _cos(180 - b), _sin(180 - b), _cos(360 - b - c), _sin(360 - b - c)
        cross = ux * vy - uy * vx
        if abs(cross) < 0.05:
            continue
        wx, wy = dx - _SIDE, dy
        second, third = (wx * vy - wy * vx) / cross, (ux * wy - uy * wx) / cross
        top = round(dy)
        along = _SIDE + second * ux, second * uy
        spots = ((0, 0), (_SIDE, 0), (round(along[0]), top if level else round(along[1])))
        low = min(0, high - max(dy, along[1]))
        made.append(((min(second, third, far, 330), low), at(*spots, (round(dx), top))))
    return max(made, key=lambda row: row[0])[1]


def _cos(degrees: int) -> float:
    return 0.0 if degrees % 180 == 90 else math.cos(math.radians(degrees))


def _sin(degrees: int) -> float:
    return math.sin(math.radians(degrees))


def parallelogram_corners(a: int, far: int = 560) -> Corners:
    """Return a parallelogram with so many degrees at A, its side AB level and 1000 long.

    >>> [tuple(node.n for node in spot) for spot in parallelogram_corners(90)]
    [(0, 0), (1000, 0), (1000, 560), (0, 560)]
    """
    x, y = round(far * _cos(a)), round(far * _sin(a))
    return at((0, 0), (_SIDE, 0), (_SIDE + x, y), (x, y))


def polygon_corners(angles: Sequence[int]) -> Corners:
    """Return a polygon with so many degrees at its corners, its first side level.

    Of several sets of lengths that close the polygon a wide and low one is taken with no short
    side.
    """
    count = len(angles)
    ways, heading = [], 0
    for angle in (*angles[1:], angles[0]):
        ways.append((_cos(heading), _sin(heading)))
        heading += 180 - angle
    made: list[tuple[tuple[float, float], Corners]] = []
    for lengths in product((1100, 700), *[(600, 420)] * (count - 3)):
        x = y = 0.0
        spots = [(0, 0)]
        for far, (ux, uy) in zip(lengths, ways, strict=False):
            x, y = x + far * ux, y + far * uy
            spots.append((round(x), round(y)))
        (ux, uy), (vx, vy) = ways[-2:]
        cross = ux * vy - uy * vx
        second, last = (-x * vy + y * vx) / cross, (-ux * y + uy * x) / cross
        spots.append((round(x + second * ux), round(y + second * uy)))
        xs, ys = zip(*spots, strict=True)
        flat = (max(xs) - min(xs)) / (max(ys) - min(ys))
        made.append(((min(second, last, 330), flat), at(*spots)))
    return max(made, key=lambda row: row[0])[1]


def low_triangle(a: int, b: int, top: int) -> tuple[int, int, int]:
    """Return angles that go by size as these do, of a triangle that is wide and low."""
    if a == b:
        return (46, 46, 88) if top < 90 else (43, 43, 94)
    small, large = (42, 49) if top < 90 else (38, 50)
    return (small, large, 180 - small - large) if a < b else (large, small, 180 - small - large)
