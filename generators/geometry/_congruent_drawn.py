"""Pairs of triangles with some sides and angles told: their sizes, and how they are drawn."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from fractions import Fraction
from typing import NamedTuple

from generators.geometry._angles import deg
from itembank.figures.kinds.plane.polygon import Polygon
from itembank.figures.kinds.plane.two_triangles import TwoTriangles
from itembank.items.forms.form_rules import decimal_node
from itembank.notation import tree as t


class Sizes(NamedTuple):
    """The angles of a triangle in degrees, and the side across from each in tenths of 1 cm.

    Angles are whole; sides are right to a tenth (by the law of sines, worked out once).
    """

    angles: tuple[int, int, int]
    sides: tuple[int, int, int]


TRIANGLES = tuple(
    Sizes(row[:3], row[3:])
    for row in (
        (50, 57, 73, 64, 70, 80), (46, 65, 69, 77, 97, 100), (55, 61, 64, 103, 110, 113),
        (53, 59, 68, 56, 60, 65), (46, 61, 73, 70, 85, 93), (56, 59, 65, 87, 90, 95),
        (51, 63, 66, 102, 117, 120), (44, 65, 71, 69, 90, 94), (53, 56, 71, 76, 79, 90),
        (51, 60, 69, 70, 78, 84), (48, 61, 71, 51, 60, 65), (46, 63, 71, 105, 130, 138),
        (53, 61, 66, 105, 115, 120), (48, 64, 68, 48, 58, 60), (49, 59, 72, 88, 100, 111),
        (51, 54, 75, 49, 51, 61),
    )
)  # fmt: skip
"""Triangles of three unlike sides, the angles and the sides from the smallest up."""
RIGHT = (
    *((30, 40, 50), (50, 120, 130), (60, 80, 100), (40, 75, 85), (90, 120, 150), (28, 45, 53)),
    *((20, 48, 52), (36, 77, 85), (25, 60, 65), (65, 72, 97), (33, 56, 65), (48, 55, 73)),
    *((35, 84, 91), (39, 52, 65), (45, 60, 75), (24, 70, 74)),
)
"""Right-angled triangles by their sides in tenths of 1 cm: Pythagorean triples, and tenths."""
_LETTERS = (("ABC", "PQR"), ("ABC", "DEF"), ("DEF", "XYZ"), ("JKL", "STU"), ("KLM", "PQR"))
_TURNS = ((1, 1), (-1, 1), (1, -1), (-1, -1))
Spots = tuple[tuple[int, int], ...]


class Parts(NamedTuple):
    """What is told of a triangle: a length in tenths across from each corner, and angles."""

    sides: Mapping[int, int]
    angles: Mapping[int, int]

    def more(self, kind: str, at: int, size: int) -> Parts:
        """Return the same with another side or angle told."""
        if kind == "side":
            return Parts({**self.sides, at: size}, self.angles)
        return Parts(self.sides, {**self.angles, at: size})


def parts(sizes: Sizes, sides: Iterable[int] = (), angles: Iterable[int] = ()) -> Parts:
    """Return some of the sides and angles of a triangle, by their corners."""
    return Parts({k: sizes.sides[k] for k in sides}, {k: sizes.angles[k] for k in angles})


def length(tenths: int) -> t.Node:
    """Return a length, given in tenths, as it stands at a side: the prompt tells the unit."""
    return decimal_node(Fraction(tenths, 10))


def spots(sizes: Sizes) -> Spots:
    """Return where the corners stand: as the sizes say, the longest side upright."""
    _, b, c = sizes.sides
    turn = math.radians(sizes.angles[0])
    return (
        (0, 0),
        (0, c * 50),
        (round(b * 50 * math.sin(turn)), round(b * 50 * math.cos(turn))),
    )


def right_spots(row: tuple[int, int, int]) -> Spots:
    """Return the corners of a right-angled triangle, whose right angle is the last of them."""
    return (0, row[1]), (row[0], 0), (0, 0)


class Pair(NamedTuple):
    """Two triangles whose corners 0, 1 and 2 go together, with the letters of each."""

    figure: TwoTriangles
    names: tuple[str, str]

    def side(self, which: int, across: int) -> str:
        """Return what the side across from a corner is called, its letters in order."""
        return "".join(sorted(self.names[which][k] for k in range(3) if k != across))


def pair(first: Parts, second: Parts, at: tuple[Spots, Spots], place: int) -> Pair:
    """Return two triangles: `place` says by which letters, and how the second is turned."""
    letters = _LETTERS[place % len(_LETTERS)]
    names = letters[0], _rotated(letters[1], place % 3)
    turn = _TURNS[place % 4]
    turned = tuple((x * turn[0], y * turn[1]) for x, y in at[1])
    return Pair(
        TwoTriangles(_drawn(first, at[0], names[0]), _drawn(second, turned, names[1])), names
    )


def _rotated(letters: str, by: int) -> str:
    return letters[by:] + letters[:by]


def _drawn(told: Parts, at: Spots, names: str) -> Polygon:
    return Polygon(
        tuple((t.num(x), t.num(y)) for x, y in at),
        names,
        lettered=True,
        sides=tuple(
            ("".join(names[k] for k in range(3) if k != across), length(size))
            for across, size in told.sides.items()
        ),
        angles=tuple((names[k], deg(size)) for k, size in told.angles.items() if size != 90),
        right="".join(names[k] for k, size in told.angles.items() if size == 90),
        accurate=False,
    )
