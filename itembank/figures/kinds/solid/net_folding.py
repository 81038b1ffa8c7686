"""Folding a net: each rectangle gets its place in space, edge by edge, in whole numbers.

The first rectangle lies flat. Across an edge that two of them share whole, the next one stands at
a right angle to the last. What comes of it is a box if the six are its six faces.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

Spot = tuple[int, int]
Vector = tuple[int, int, int]
Rect = tuple[int, int, int, int]
"""Left, bottom, width and height of a face, in squares."""


class _Laid(NamedTuple):
    """A face in space: where its lower left corner is, and the ways along, up and out of it."""

    corner: Vector
    along: Vector
    up: Vector
    out: Vector


def _plus(a: Vector, b: Vector, times: int = 1) -> Vector:
    return (a[0] + times * b[0], a[1] + times * b[1], a[2] + times * b[2])


def _minus(a: Vector) -> Vector:
    return (-a[0], -a[1], -a[2])


def _across(rect: Rect, other: Rect) -> str:
    """Return on which side of a face another one shares a whole edge with it, or ``""``."""
    (x, y, w, h), (a, b, c, d) = rect, other
    if (y, h) == (b, d):
        return "right" if a == x + w else "left" if a + c == x else ""
    if (x, w) == (a, c):
        return "above" if b == y + h else "below" if b + d == y else ""
    return ""


def _folded(laid: _Laid, rect: Rect, side: str, other: Rect) -> _Laid:
    """Return where a face comes to lie that is folded up across the edge on a side."""
    corner, along, up, out = laid
    if side == "right":
        return _Laid(_plus(corner, along, rect[2]), out, up, _minus(along))
    if side == "above":
        return _Laid(_plus(corner, up, rect[3]), along, out, _minus(up))
    if side == "left":
        # Its right edge stays: its left one is lifted as far as it is wide.
        return _Laid(_plus(corner, out, other[2]), _minus(out), up, along)
    return _Laid(_plus(corner, out, other[3]), along, _minus(out), up)


def laid_in_space(faces: Sequence[Rect]) -> list[frozenset[Vector]] | None:
    """Return the corners of each face after folding, or None where they do not hang together.

    >>> row = [(k, 1, 1, 1) for k in range(4)]
    >>> folded = laid_in_space([*row, (1, 0, 1, 1), (1, 2, 1, 1)])
    >>> len({*folded})
    6
    """
    laid = {0: _Laid((0, 0, 0), (1, 0, 0), (0, 1, 0), (0, 0, 1))}
    left = [0]
    for place in left:
        for number, rect in enumerate(faces):
            side = _across(faces[place], rect)
            if side and number not in laid:
                laid[number] = _folded(laid[place], faces[place], side, rect)
                left.append(number)
    if len(laid) != len(faces):
        return None
    found = []
    for place, (_, _, w, h) in enumerate(faces):
        corner, along, up, _ = laid[place]
        right = _plus(corner, along, w)
        found.append(frozenset((corner, right, _plus(corner, up, h), _plus(right, up, h))))
    return found


def box_of(faces: Sequence[Rect]) -> Vector | None:
    """Return the three edges of the box that six faces fold to, shortest first, or None.

    >>> row = [(0, 2, 1, 3), (1, 2, 2, 3), (3, 2, 1, 3), (4, 2, 2, 3)]
    >>> box_of([*row, (1, 5, 2, 1), (1, 1, 2, 1)])
    (1, 2, 3)
    >>> box_of([(k, 0, 1, 1) for k in range(6)]) is None
    True
    """
    folded = laid_in_space(faces) if len(faces) == 6 else None
    if folded is None:
        return None
    every = [corner for face in folded for corner in face]
    low, high = ([f(c[k] for c in every) for k in range(3)] for f in (min, max))
    sides = set()
    for axis in range(3):
        for end in (low, high):
            others = [k for k in range(3) if k != axis]
            sides.add(
                frozenset(
                    _corner(axis, end[axis], others, (low_edge, high_edge))
                    for low_edge in (low[others[0]], high[others[0]])
                    for high_edge in (low[others[1]], high[others[1]])
                )
            )
    if {*folded} != sides or len(sides) != 6:
        return None
    first, second, third = sorted(high[k] - low[k] for k in range(3))
    return (first, second, third)


def _corner(axis: int, at: int, others: list[int], where: tuple[int, int]) -> Vector:
    found = [0, 0, 0]
    found[axis] = at
    found[others[0]], found[others[1]] = where
    return (found[0], found[1], found[2])


def opposite(faces: Sequence[Rect], place: int) -> int | None:
    """Return which face has no corner in common with one, once all are folded to a box."""
    folded = laid_in_space(faces)
    if folded is None or box_of(faces) is None:
        return None
    (found,) = [k for k, face in enumerate(folded) if not face & folded[place]]
    return found
