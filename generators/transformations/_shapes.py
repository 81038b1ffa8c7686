"""Shapes on a grid for transformations, and how their questions are put."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from fractions import Fraction

from itembank.figures.kinds.grid.coordinate_grid import CoordinateGrid, GridShape
from itembank.items.forms.form_rules import decimal_node
from itembank.notation import tree as t

Spot = tuple[int, int]
FOUR = (-6, 6, -5, 5)

TRIANGLES: tuple[tuple[Spot, Spot, Spot], ...] = (
    ((0, 0), (2, 0), (0, 1)),
    ((0, 0), (1, 2), (-1, 2)),
    ((0, 0), (-2, 1), (-1, -1)),
    ((0, 0), (2, 1), (2, -1)),
    ((0, 0), (-1, -2), (1, -1)),
    ((0, 0), (-2, 0), (-2, 2)),
)
"""Triangles by how far their corners lie from the first, which is the one with a letter."""

SCALENE: tuple[tuple[Spot, ...], ...] = (
    ((0, 0), (3, 0), (0, 1)),
    ((0, 0), (1, 0), (1, 3)),
    ((0, 0), (2, 0), (3, 2)),
    ((0, 0), (1, 0), (1, 1), (2, 1), (2, 2), (0, 2)),
)
"""Shapes without symmetry."""


def pair(x: Fraction | int, y: Fraction | int) -> t.Listing:
    """Return a point's coordinates."""
    return t.pair(decimal_node(x), decimal_node(y))


def placed(shape: Sequence[Spot], at: Spot) -> tuple[Spot, ...]:
    """Return a shape moved so that its first corner stands at a place."""
    return tuple((x + at[0], y + at[1]) for x, y in shape)


def inside(corners: Sequence[Spot], edges: tuple[int, int, int, int] = FOUR, gap: int = 0) -> bool:
    """Tell whether all corners lie on a grid, so far from its edges."""
    left, right, bottom, top = edges
    return all(
        left + gap <= x <= right - gap and bottom + gap <= y <= top - gap for x, y in corners
    )


def outline(corners: Sequence[Spot], name: str = "") -> GridShape:
    """Return a shape of a grid."""
    return GridShape(tuple((t.num(x), t.num(y)) for x, y in corners), name)


def picture(
    shapes: Sequence[GridShape],
    points: Sequence[tuple[str, Spot]] = (),
    edges: tuple[int, int, int, int] = FOUR,
) -> CoordinateGrid:
    """Return a grid with shapes and lettered points."""
    left, right, bottom, top = edges
    rows = tuple((name, t.num(x), t.num(y)) for name, (x, y) in points)
    return CoordinateGrid(left, right, bottom, top, points=rows, shapes=tuple(shapes))


def image(corners: Sequence[Spot], move: Callable[[Spot], Spot]) -> tuple[Spot, ...]:
    """Return where corners go."""
    return tuple(move(corner) for corner in corners)


def ways(across: int, up: int) -> str:
    """Return how far one place is from another, in squares.

    >>> ways(3, -2)
    '3 right and 2 down'
    """
    return (
        f"{abs(across)} {'right' if across >= 0 else 'left'} and "
        f"{abs(up)} {'up' if up >= 0 else 'down'}"
    )
