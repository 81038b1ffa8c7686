"""What is drawn of a coordinate grid, as numbers, and where its places stand in the drawing."""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache
from math import gcd
from typing import NamedTuple

from itembank.figures.drawing import Point
from itembank.figures.kinds.grid import grid_letters
from itembank.figures.kinds.grid.grid_letters import (
    Letters,
    Named,
    Surroundings,
    letter_places,
    lost_letter,
)
from itembank.figures.kinds.grid.grid_spots import Ratio
from itembank.once import once

Place = tuple[Fraction, Fraction]
Path = tuple[Point, Point]


class Outline(NamedTuple):
    """A shape, or a path that does not come back: its corners in order."""

    corners: tuple[Place, ...]
    name: str
    closed: bool
    dashed: bool


class Sheet(NamedTuple):
    """What is drawn, as numbers: edges, steps, points, and lines with name and whether they end."""

    edges: tuple[int, int, int, int]
    steps: tuple[int, int]
    points: tuple[tuple[str, Place], ...]
    lines: tuple[tuple[Place, Place, str, bool], ...]
    shapes: tuple[Outline, ...] = ()
    titles: tuple[str, str] = ("", "")


_WIDE, _HIGH, _AT_MOST = Fraction(13), Fraction(6), Fraction(15, 2)
_USUAL, _LEAST = Fraction(7, 12), Fraction(3, 8)


@lru_cache(maxsize=256)
def scale(edges: tuple[int, int, int, int], steps: tuple[int, int]) -> tuple[Fraction, Fraction]:
    """Return how many ems 1 across, and 1 up, takes."""
    left, right, bottom, top = edges
    columns, rows = (right - left) // steps[0], (top - bottom) // steps[1]
    high = min(max(_USUAL, _HIGH / rows), _AT_MOST / rows)
    square = max(_LEAST, min(Fraction(1), _WIDE / columns, high))
    return square / steps[0], square / steps[1]


def at(sheet: Sheet, place: Place) -> Point:
    """Return where a place of the grid stands in its drawing."""
    across, up = scale(sheet.edges, sheet.steps)
    return Point((place[0] - sheet.edges[0]) * across, (place[1] - sheet.edges[2]) * up)


@once
def letters_of(sheet: Sheet) -> Letters:
    """Return where the letters stand so that they touch nothing, or which has no place."""
    return letter_places(_surroundings(sheet))


def letter_lost(sheet: Sheet) -> str:
    """Return the first letter that has no place, or ``""``: quicker than to place them well."""
    return lost_letter(_surroundings(sheet))


def _surroundings(sheet: Sheet) -> Surroundings:
    left, right, bottom, top = sheet.edges
    ground = _Ground(sheet)
    x = 0 if left <= 0 <= right else left
    y = 0 if bottom <= 0 <= top else bottom
    axes = (
        (ground.whole(left, y), ground.whole(right, y)),
        (ground.whole(x, bottom), ground.whole(x, top)),
    )
    lines = [
        Named(ground.segment(a, b) if segment else ground.line(a, b), name)
        for a, b, name, segment in sheet.lines
    ]
    shapes = [Named(ground.outline(shape), shape.name, shape.closed) for shape in sheet.shapes]
    return Surroundings(
        ground.whole(left, bottom),
        ground.whole(right, top),
        axes,
        tuple((name, ground.place(place)) for name, place in sheet.points),
        (*lines, *shapes),
    )


class _Ground:
    """Places in the drawing of a grid in whole numbers: a grid has to be quick to refuse."""

    def __init__(self, sheet: Sheet) -> None:
        self.sheet = sheet
        across, up = scale(sheet.edges, sheet.steps)
        self._across, self._up = across.as_integer_ratio(), up.as_integer_ratio()

    def place(self, place: Place) -> grid_letters.Place:
        x, y = place
        return self.parts(x.as_integer_ratio(), y.as_integer_ratio())

    def whole(self, x: int, y: int) -> grid_letters.Place:
        return self.parts((x, 1), (y, 1))

    def parts(self, x: Ratio, y: Ratio) -> grid_letters.Place:
        left, _, bottom, _ = self.sheet.edges
        return _drawn(x, left, self._across), _drawn(y, bottom, self._up)

    def outline(self, shape: Outline) -> tuple[grid_letters.Place, ...]:
        corners = tuple(map(self.place, shape.corners))
        return (*corners, corners[0]) if shape.closed else corners

    def segment(self, a: Place, b: Place) -> tuple[grid_letters.Place, ...]:
        return self.place(a), self.place(b)

    def line(self, a: Place, b: Place) -> tuple[grid_letters.Place, ...]:
        """Return where a straight line enters and leaves the grid, as :func:`line_ends`."""
        first, last = through_grid(self.sheet, a, b)
        return self.parts(*first), self.parts(*last)


def _drawn(value: Ratio, low: int, size: Ratio) -> Ratio:
    top, bottom = (value[0] - low * value[1]) * size[0], value[1] * size[1]
    same = gcd(top, bottom)
    return top // same, bottom // same


def through_grid(sheet: Sheet, a: Place, b: Place) -> tuple[tuple[Ratio, Ratio], ...]:
    """Return where a straight line enters and leaves a grid (Liang and Barsky, from memory).

    >>> places = (Fraction(1, 2), Fraction(0)), (Fraction(1), Fraction(1, 2))
    >>> sheet = Sheet((0, 4, 0, 2), (1, 1), (), ())
    >>> through_grid(sheet, *places)
    (((1, 2), (0, 2)), ((5, 2), (4, 2)))
    """
    left, right, bottom, top = sheet.edges
    # All in whole numbers: in parts of a square that both places are whole numbers of.
    whole = 1
    for n in (*a, *b):
        whole = whole * n.denominator // gcd(whole, n.denominator)
    x, y, end_x, end_y = (n.numerator * (whole // n.denominator) for n in (*a, *b))
    enters: Ratio | None = None
    leaves: Ratio | None = None
    for start, step, least, most in ((x, end_x - x, left, right), (y, end_y - y, bottom, top)):
        if step:
            first, last = least * whole - start, most * whole - start
            if step < 0:
                first, last, step = -last, -first, -step
            if enters is None or first * enters[1] > enters[0] * step:
                enters = first, step
            if leaves is None or last * leaves[1] < leaves[0] * step:
                leaves = last, step
    assert enters is not None
    assert leaves is not None
    return tuple(
        ((x * by + part * (end_x - x), whole * by), (y * by + part * (end_y - y), whole * by))
        for part, by in (enters, leaves)
    )


def line_ends(sheet: Sheet, a: Place, b: Place) -> tuple[Point, Point]:
    """Return where a straight line enters and leaves the drawing of a grid."""
    first, last = (at(sheet, (Fraction(*x), Fraction(*y))) for x, y in through_grid(sheet, a, b))
    return first, last
