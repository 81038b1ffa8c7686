"""The data of a coordinate grid as exact places: its points, lines and shapes."""

from __future__ import annotations

from fractions import Fraction
from math import lcm
from typing import TYPE_CHECKING, TypeAlias

from itembank.figures.kinds.grid.grid_sheet import Outline, Sheet
from itembank.figures.written_as import written_as
from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.once import once

if TYPE_CHECKING:
    from itembank.figures.kinds.grid.coordinate_grid import CoordinateGrid, GridLine, GridShape

Place: TypeAlias = tuple[Fraction, Fraction]


@once
def places(figure: CoordinateGrid) -> dict[str, Place]:
    """Return where each point is, by its letter."""
    return {name: (exact(x), exact(y)) for name, x, y in figure.points}


def line_ends(straight: GridLine) -> tuple[Place, Place]:
    """Return the two places that a line goes through."""
    (a, b), (c, d) = straight.start, straight.end
    return (exact(a), exact(b)), (exact(c), exact(d))


def corners_of(shape: GridShape) -> tuple[Place, ...]:
    """Return the corners of a shape in order."""
    return tuple((exact(x), exact(y)) for x, y in shape.corners)


@once
def sheet_of(figure: CoordinateGrid) -> Sheet:
    """Return all that is drawn, as numbers."""
    return Sheet(
        (figure.left, figure.right, figure.bottom, figure.top),
        (figure.x_step, figure.y_step),
        tuple(places(figure).items()),
        tuple((*line_ends(shape), shape.name, shape.segment) for shape in figure.lines),
        tuple(
            Outline(corners_of(shape), shape.name, shape.closed, shape.dashed)
            for shape in figure.shapes
        ),
        (figure.x_title, figure.y_title),
    )


def off(figure: CoordinateGrid, place: Place) -> bool:
    """Tell whether a place lies outside the grid."""
    (x, across), (y, up) = (value.as_integer_ratio() for value in place)
    return not (
        figure.left * across <= x <= figure.right * across
        and figure.bottom * up <= y <= figure.top * up
    )


def on(place: Place, straight: GridLine) -> bool:
    """Tell whether a place lies on a line."""
    (a, b), (c, d), (x, y) = in_whole(*line_ends(straight), place)
    if (x - a) * (d - b) != (y - b) * (c - a):
        return False
    return not straight.segment or (min(a, c) <= x <= max(a, c) and min(b, d) <= y <= max(b, d))


def in_whole(*at: Place) -> list[tuple[int, int]]:
    """Return places counted in parts of a square that all of them are whole numbers of.

    >>> in_whole((Fraction(1), Fraction(1, 2)), (Fraction(3), Fraction(2)))
    [(2, 1), (6, 4)]
    """
    parts = lcm(*(value.denominator for place in at for value in place))
    return [
        (
            x.numerator * (parts // x.denominator),
            y.numerator * (parts // y.denominator),
        )
        for x, y in at
    ]


def in_halves(figure: CoordinateGrid, place: Place) -> bool:
    """Tell whether a place stands where squares, or halves of them, meet."""
    (x, across), (y, up) = (value.as_integer_ratio() for value in place)
    return not (2 * x % (across * figure.x_step) or 2 * y % (up * figure.y_step))


def number_at(value: Fraction) -> t.Node:
    """Return a coordinate as it is written: whole, or a decimal."""
    return written_as(value, t.Dec("0", "5"))


def pair_at(place: Place) -> t.Listing:
    """Return a place as a pair of coordinates."""
    return t.pair(number_at(place[0]), number_at(place[1]))
