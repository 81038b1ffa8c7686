"""What contradicts itself in the data of a coordinate grid."""

from __future__ import annotations

from itertools import combinations, pairwise
from typing import TYPE_CHECKING

from itembank.figures.kinds.grid.grid_drawn import unplaced
from itembank.figures.kinds.grid.grid_places import (
    Place,
    corners_of,
    in_halves,
    in_whole,
    line_ends,
    off,
    on,
    pair_at,
    places,
    sheet_of,
)
from itembank.figures.kinds.grid.grid_spots import Spot
from itembank.figures.label_room import text_width
from itembank.notation import tree as t
from itembank.notation.line import shown_line

if TYPE_CHECKING:
    from itembank.figures.kinds.grid.coordinate_grid import CoordinateGrid

MOST_ACROSS, MOST_UP = 30, 20
MOST_POINTS, MOST_LINES = 10, 4
MOST_SHAPES, MOST_CORNERS = 3, 10
LARGEST = 10_000
WIDEST_TITLE = 13


def grid_fault(figure: CoordinateGrid) -> str:
    """Return what contradicts itself in the data of a grid, as a clause, or ``""``."""
    for low, high, step, most, name in (
        (figure.left, figure.right, figure.x_step, MOST_ACROSS, "across"),
        (figure.bottom, figure.top, figure.y_step, MOST_UP, "up"),
    ):
        if max(abs(low), abs(high)) > LARGEST:
            return f"its axes may go as far as {LARGEST}"
        if step < 1 or low % step or high % step:
            return f"its ends {name} are to be whole squares of {step}"
        if not 2 <= (high - low) // step <= most:
            return f"it may have 2 to {most} squares {name}"
    if len(figure.points) > MOST_POINTS or len(figure.lines) > MOST_LINES:
        return f"it may have at most {MOST_POINTS} points and {MOST_LINES} lines"
    if len(figure.shapes) > MOST_SHAPES:
        return f"it may have at most {MOST_SHAPES} shapes"
    return (
        _fault_of_titles(figure)
        or _fault_of_points(figure)
        or _fault_of_lines(figure)
        or _fault_of_shapes(figure)
        or unplaced(sheet_of(figure))
    )


def _fault_of_titles(figure: CoordinateGrid) -> str:
    for title in (figure.x_title, figure.y_title):
        if not title.isprintable() or text_width(title) > WIDEST_TITLE:
            return f"the title of an axis may be {WIDEST_TITLE} wide, counted in heights of letters"
    if bool(figure.x_title) != bool(figure.y_title):
        return "either both axes have a title or none"
    return ""


def _fault_of_shapes(figure: CoordinateGrid) -> str:
    for shape in figure.shapes:
        called = f"the shape {shape.name}" if shape.name else "a shape"
        least = 3 if shape.closed else 2
        if not least <= len(shape.corners) <= MOST_CORNERS:
            return f"{called} may have {least} to {MOST_CORNERS} corners"
        try:
            corners = corners_of(shape)
        except t.NotationError:
            return "coordinates are to be numbers"
        if any(off(figure, corner) or not in_halves(figure, corner) for corner in corners):
            return f"{called} has a corner that is not on the grid"
        if any(a == b for a, b in pairwise(corners)):
            return f"{called} has one corner twice"
        if shape.closed and (wrong := _fault_of_outline(corners)):
            return f"{called} {wrong}"
    if sum(not shape.name for shape in figure.shapes) > 1:
        return "of several shapes only one may have no letter"
    if figure.shapes and figure.lines and not all(shape.name for shape in figure.shapes):
        return "beside a line a shape has a letter"
    return ""


def _fault_of_outline(corners: tuple[Place, ...]) -> str:
    """Return what keeps corners from going round a shape, each of them a real one."""
    spots = in_whole(*corners)
    # On to the first two again, so that each corner stands between its neighbours once.
    around = [*spots, *spots[:2]]
    for (a, b), (c, d), (e, f) in zip(around, around[1:], around[2:], strict=False):
        if (c - a) * (f - d) == (d - b) * (e - c):
            return "has three corners in a row on one straight line"
    sides = [*pairwise((*spots, spots[0]))]
    for (i, side), (j, other) in combinations(enumerate(sides), 2):
        # Neighbours meet at their corner.
        if 1 < j - i < len(sides) - 1 and _meet(*side, *other):
            return "crosses itself"
    return ""


def _meet(a: Spot, b: Spot, c: Spot, d: Spot) -> bool:
    """Tell whether two strokes have a place in common."""

    def side(p: Spot, q: Spot, r: Spot) -> int:
        turn = (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])
        return (turn > 0) - (turn < 0)

    if side(a, b, c) * side(a, b, d) > 0 or side(c, d, a) * side(c, d, b) > 0:
        return False
    # Two on one straight line may still be apart: then one ends before the other begins.
    return all(
        min(a[k], b[k]) <= max(c[k], d[k]) and min(c[k], d[k]) <= max(a[k], b[k]) for k in (0, 1)
    )


def _fault_of_points(figure: CoordinateGrid) -> str:
    names = [name for name, _, _ in figure.points]
    names += [line.name for line in figure.lines] + [shape.name for shape in figure.shapes]
    names = [name for name in names if name]
    if any(len(name) != 1 or not "A" <= name <= "Z" for name in names):
        return "its points, lines and shapes are to be named by single capital letters"
    if twice := next((name for name in names if names.count(name) > 1), ""):
        return f"two things have the letter {twice}"
    try:
        at = places(figure)
    except t.NotationError:
        return "coordinates are to be numbers"
    for name, place in at.items():
        if off(figure, place):
            return f"the point {name} is at {shown_line(pair_at(place))}, which is off the grid"
        if not in_halves(figure, place):
            return f"the point {name} stands between the halves of squares"
    for (name, here), (other, there) in combinations(at.items(), 2):
        if here == there:
            return f"the points {name} and {other} stand at one place"
    return ""


def _fault_of_lines(figure: CoordinateGrid) -> str:
    at = places(figure)
    for line in figure.lines:
        called = f"the line {line.name}" if line.name else "a line"
        try:
            ends = line_ends(line)
        except t.NotationError:
            return "coordinates are to be numbers"
        if ends[0] == ends[1]:
            return f"{called} needs two places to go through"
        if any(off(figure, end) or not in_halves(figure, end) for end in ends):
            return f"{called} goes through a place that is not on the grid"
        for name in line.points:
            if name not in at:
                return f"{called} is said to go through {name}, and there is no such point"
            if not on(at[name], line):
                place = shown_line(pair_at(at[name]))
                return f"{called} is said to go through {name}, and misses it: {name} is at {place}"
    if len(figure.lines) > 1 and sum(not line.name for line in figure.lines) > 1:
        return "of several lines only one may have no letter"
    return ""
