"""A shape on the drawing of a grid by itself: its corners are reflected and turned by sympy."""

from __future__ import annotations

from typing import Any

import sympy

from itembank.notation.value import NotExact

Corners = list[Any]


def _middle(corners: Corners) -> Any:
    return sympy.Point(*(sum(c[k] for c in corners) / len(corners) for k in (0, 1)))


def _sides(corners: Corners) -> set[frozenset[Any]]:
    return {frozenset((corners[k - 1], corners[k])) for k in range(len(corners))}


def mirrors(corners: Corners) -> list[Any]:
    """Return the lines of symmetry: they go through the middle of all corners.

    The first corner that is not the middle stays in its place or goes to another one, and the
    line is then known; it is kept where every side comes to be a side.
    """
    middle = _middle(corners)
    first = next(corner for corner in corners if corner != middle)
    found = []
    for other in corners:
        if other == first:
            line = sympy.Line(middle, first)
        elif other.distance(middle) == first.distance(middle):
            line = sympy.Segment(first, other).perpendicular_bisector()
        else:
            continue
        if _sides([corner.reflect(line) for corner in corners]) == _sides(corners):
            found.append(line)
    return found


def order_of_turns(corners: Corners) -> int:
    """Return how often a shape falls on itself in a full turn about its middle."""
    middle = _middle(corners)
    count = 0
    for way in ((1, 0), (0, 1), (-1, 0), (0, -1)):
        # Corners where squares meet have no other turn than quarters (no regular polygon but the
        # square has all its corners on a square lattice; from memory).
        turned = [
            sympy.Point(
                middle.x + way[0] * (c.x - middle.x) - way[1] * (c.y - middle.y),
                middle.y + way[1] * (c.x - middle.x) + way[0] * (c.y - middle.y),
            )
            for c in corners
        ]
        count += _sides(turned) == _sides(corners)
    return count


def only_mirror(corners: Corners) -> Any:
    """Return the one line of symmetry; raises NotExact where there is not one."""
    found = mirrors(corners)
    if len(found) != 1:
        raise NotExact("the shape has not one line of symmetry")
    return found[0]
