"""Solids with flat faces in space: their corners, faces and edges, and how they are seen.

Lengths are tenths of an em. A solid stands on a base in the plane of x and y, z going up; or it
lies, so that one of its ends looks at the reader. It is drawn in parallel projection: what leads
away goes up, and where the solid lies to the right too.
"""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache
from math import lcm
from typing import NamedTuple

Spot = tuple[Fraction, Fraction]
Corner = tuple[int, int, int]

STANDING: dict[int, tuple[tuple[int, int], ...]] = {
    3: ((38, -32), (9, 49), (-47, -17)),
    4: ((41, 29), (-29, 41), (-41, -29), (29, -41)),
    5: ((48, 14), (1, 50), (-47, 16), (-30, -40), (29, -41)),
    6: ((49, 9), (17, 47), (-32, 38), (-49, -9), (-17, -47), (32, -38)),
    7: ((39, 31), (0, 50), (-39, 31), (-49, -11), (-22, -45), (22, -45), (49, -11)),
    8: ((49, 8), (29, 41), (-8, 49), (-41, 29), (-49, -8), (-29, -41), (8, -49), (41, -29)),
}
"""Nearly regular bases, turned so that no corner hides another."""
LYING: dict[int, tuple[tuple[int, int], ...]] = {
    3: ((-35, -20), (35, -20), (0, 40)),
    4: ((-28, -28), (28, -28), (28, 28), (-28, 28)),
    5: ((-24, -32), (24, -32), (38, 12), (0, 40), (-38, 12)),
    6: ((-20, -35), (20, -35), (40, 0), (20, 35), (-20, 35), (-40, 0)),
    8: ((-15, -37), (15, -37), (37, -15), (37, 15), (15, 37), (-15, 37), (-37, 15), (-37, -15)),
}
"""Nearly regular ends, each on one of its sides."""
NEAREST = Fraction(1, 4)
"""How near a corner may come to another, or to an edge that does not end there, in ems."""


class Model(NamedTuple):
    """A solid: corners in space; faces as rounds of corners; from where it is seen."""

    corners: tuple[Corner, ...]
    faces: tuple[tuple[int, ...], ...]
    lying: bool

    @property
    def spots(self) -> tuple[Spot, ...]:
        """Where each corner is drawn, in ems."""
        right, up = _LEADS[self.lying]
        return tuple(((x + right * y) / 10, (z + up * y) / 10) for x, y, z in self.corners)

    @property
    def edges(self) -> dict[tuple[int, int], list[int]]:
        """Each edge by its two corners, and the two faces that meet in it."""
        found: dict[tuple[int, int], list[int]] = {}
        for number, face in enumerate(self.faces):
            for a, b in zip(face, (*face[1:], face[0]), strict=True):
                found.setdefault((min(a, b), max(a, b)), []).append(number)
        return found

    @property
    def seen(self) -> tuple[bool, ...]:
        """Tell for each face whether it looks at the reader; the solid bulges everywhere."""
        return _seen(self)

    def _looks(self, face: tuple[int, ...], middle: Corner, away: Corner) -> bool:
        """Tell whether a face looks at the reader; `middle` is that of the corners, so many times.

        Only signs are looked at, so whole numbers do: a multiple of each point and direction.
        """
        a, b, c = (self.corners[corner] for corner in face[:3])
        out = _cross(_minus(b, a), _minus(c, a))
        count = len(self.corners)
        outward = _dot(out, _minus((count * a[0], count * a[1], count * a[2]), middle))
        return _dot(out, away) * (-1 if outward < 0 else 1) < 0


_LEADS = {
    False: (Fraction(0), Fraction(2, 5)),
    True: (Fraction(1, 2), Fraction(1, 4)),
}
"""How far right and up on the page a length of 1 leads that goes away from the reader."""


@lru_cache(maxsize=512)
def _seen(solid: Model) -> tuple[bool, ...]:
    xs, ys, zs = zip(*solid.corners, strict=True)
    right, up = _LEADS[solid.lying]
    # Nothing moves on the page along it: as 20 times as long it is whole.
    away = (int(-20 * right), 20, int(-20 * up))
    middle = (sum(xs), sum(ys), sum(zs))
    return tuple(solid._looks(face, middle, away) for face in solid.faces)


def _minus(a: Corner, b: Corner) -> Corner:
    return a[0] - b[0], a[1] - b[1], a[2] - b[2]


def _dot(a: Corner, b: Corner) -> int:
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def _cross(a: Corner, b: Corner) -> Corner:
    return (
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
    )


@lru_cache(maxsize=512)
def model(kind: str, sides: int, height: int, lying: bool) -> Model:
    """Return a solid on a base of so many sides; its parts above each other are equally high.

    >>> len(model("prism", 6, 45, False).corners), len(model("pyramid", 6, 40, False).faces)
    (12, 7)
    """
    base = (LYING if lying else STANDING)[sides]
    low = tuple((x, 0, y) if lying else (x, y, 0) for x, y in base)
    high = tuple((x, height, z) if lying else (x, y, height) for x, y, z in low)
    first, second = tuple(range(sides)), tuple(range(sides, 2 * sides))
    if kind == "pyramid":
        return Model((*low, (0, 0, height)), (first, *_to_point(first, sides)), lying)
    if kind == "double pyramid":
        tops = (*_to_point(first, sides), *_to_point(first, sides + 1))
        return Model((*low, (0, 0, height), (0, 0, -height)), tops, lying)
    walls = tuple((a, b, sides + b, sides + a) for a, b in zip(first, (*first[1:], 0), strict=True))
    if kind == "prism":
        return Model((*low, *high), (first, *walls, second), lying)
    top = (0, 0, height + 2 * height // 3)
    return Model((*low, *high, top), (first, *walls, *_to_point(second, 2 * sides)), lying)


def _to_point(ring: tuple[int, ...], top: int) -> tuple[tuple[int, ...], ...]:
    return tuple((a, b, top) for a, b in zip(ring, (*ring[1:], ring[0]), strict=True))


def runs_together(solid: Model) -> bool:
    """Tell whether two corners, or a corner and an edge that is not its own, look like one.

    >>> runs_together(model("prism", 5, 45, False)), runs_together(model("prism", 5, 30, False))
    (False, True)
    """
    # In whole numbers, so many times as far apart.
    times = lcm(*(value.denominator for spot in solid.spots for value in spot))
    spots = [(int(x * times), int(y * times)) for x, y in solid.spots]
    least = (NEAREST * times) ** 2
    for a, b in solid.edges:
        for corner, spot in enumerate(spots):
            if corner not in (a, b):
                square, over = _far(spot, spots[a], spots[b])
                if square < least * over:
                    return True
    return False


def _far(spot: tuple[int, int], a: tuple[int, int], b: tuple[int, int]) -> tuple[int, int]:
    """Return the square of how far a place is from a line that ends at two others, as a ratio.

    A line that has no length counts as met.
    """
    along = (b[0] - a[0], b[1] - a[1])
    off = (spot[0] - a[0], spot[1] - a[1])
    square = along[0] ** 2 + along[1] ** 2
    if not square:
        return 0, 1
    share = off[0] * along[0] + off[1] * along[1]
    if share <= 0:
        return off[0] ** 2 + off[1] ** 2, 1
    if share >= square:
        return (spot[0] - b[0]) ** 2 + (spot[1] - b[1]) ** 2, 1
    return (off[0] * along[1] - off[1] * along[0]) ** 2, square
