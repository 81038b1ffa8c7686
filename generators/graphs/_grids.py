"""Coordinate grids for questions, and what is said in their working."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from itembank.figures.kinds.grid.coordinate_grid import CoordinateGrid, GridLine
from itembank.items.forms.form_rules import decimal_node
from itembank.notation import tree as t

Spot = tuple[int, int]


def number(value: Fraction | int) -> t.Node:
    """Return a coordinate as it is written: whole, or a decimal."""
    return decimal_node(value)


def pair(x: Fraction | int, y: Fraction | int) -> t.Listing:
    """Return a point's coordinates.

    >>> from itembank.notation.line import line
    >>> line(pair(3, Fraction(-5, 2)))
    '(3, -2.5)'
    """
    return t.pair(number(x), number(y))


def grid(
    edges: tuple[int, int, int, int],
    points: Iterable[tuple[str, Spot]] = (),
    lines: tuple[GridLine, ...] = (),
) -> CoordinateGrid:
    """Return a grid of squares from left to right and bottom to top, with points on it."""
    left, right, bottom, top = edges
    placed = tuple((name, t.num(x), t.num(y)) for name, (x, y) in points)
    return CoordinateGrid(left, right, bottom, top, points=placed, lines=lines)


def steps_from(start: Spot, end: Spot) -> str:
    """Return the way from one place to another, in squares.

    >>> steps_from((0, 0), (3, -2)), steps_from((1, 1), (1, 5))
    ('3 right and 2 down', '4 up')
    """
    across, up = end[0] - start[0], end[1] - start[1]
    parts = []
    if across:
        parts.append(f"{abs(across)} {'right' if across > 0 else 'left'}")
    if up:
        parts.append(f"{abs(up)} {'up' if up > 0 else 'down'}")
    return " and ".join(parts) or "nowhere"
