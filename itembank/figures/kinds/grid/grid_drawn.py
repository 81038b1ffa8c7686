"""The drawing of a coordinate grid: squares, axes, numbers at the edges, points and lines.

The numbers stand along the left and the lower edge, where no point and no line comes near them.
"""

from __future__ import annotations

from fractions import Fraction

from itembank.figures.drawing import (
    Drawing,
    Mark,
    Point,
    Stroke,
    Text,
    drawing,
)
from itembank.figures.kinds.grid.grid_letters import CROSS
from itembank.figures.kinds.grid.grid_sheet import (
    Outline,
    Place,
    Sheet,
    at,
    letter_lost,
    letters_of,
    line_ends,
    scale,
)
from itembank.figures.label_room import room
from itembank.notation import tree as t

Path = tuple[Point, Point]


def _square(sheet: Sheet) -> Fraction:
    return scale(sheet.edges, sheet.steps)[0] * sheet.steps[0]


def _every(low: int, high: int, step: int, square: Fraction, upright: bool) -> list[int]:
    """Return the numbers that are printed along an axis: as many as have room."""
    numbers = list(range(low, high + step, step))
    rooms = [room(t.num(n)) for n in numbers]
    need = max(space.height if upright else space.width + Fraction(1, 6) for space in rooms)
    skip = next(n for n in (1, 2, 5, 10, 20) if n * square >= need or n == 20)
    # Counted from 0 where it is shown, so that round numbers are printed.
    kept = [n for n in numbers if n % (skip * step) == 0]
    return kept if len(kept) > 1 else [numbers[0], numbers[-1]]


def unplaced(sheet: Sheet) -> str:
    """Return that a letter has no room, as a clause, or ``""``."""
    lost = letter_lost(sheet)
    return f"there is no room for the letter {lost}" if lost else ""


def _paths(sheet: Sheet) -> list[Path]:
    return [
        (at(sheet, a), at(sheet, b)) if segment else line_ends(sheet, a, b)
        for a, b, _, segment in sheet.lines
    ]


def _outline(sheet: Sheet, shape: Outline) -> tuple[Point, ...]:
    """Return the corners of a shape in the drawing; a closed one ends where it starts."""
    corners = tuple(at(sheet, corner) for corner in shape.corners)
    return (*corners, corners[0]) if shape.closed else corners


def _axes(sheet: Sheet) -> list[Path]:
    """Return the x-axis and the y-axis; where 0 is not on the grid, its lower or left edge."""
    left, right, bottom, top = sheet.edges
    x = Fraction(0 if left <= 0 <= right else left)
    y = Fraction(0 if bottom <= 0 <= top else bottom)
    ends = (
        ((Fraction(left), y), (Fraction(right), y)),
        ((x, Fraction(bottom)), (x, Fraction(top))),
    )
    return [(at(sheet, a), at(sheet, b)) for a, b in ends]


def _axis_names(sheet: Sheet, high: Point, zero: Point, above: Fraction) -> list[Mark]:
    """Return x and y at the ends of the axes, or what the axes show along their edges."""
    across, up = sheet.titles
    marks: list[Mark] = []
    if across:
        low = -Fraction(9, 16) - room(t.Int(0)).height - Fraction(1, 8)
        marks.append(Text(Point(Fraction(high.x) / 2, low), across, up="top", role="x title"))
    else:
        place = Point(high.x + Fraction(1, 4), zero.y)
        marks.append(Text(place, t.Sym("x"), "left", role="axis name"))
    if up:
        place = Point(-Fraction(1, 2), high.y + above)
        marks.append(Text(place, up, "left", "bottom", role="y title"))
    else:
        marks.append(Text(Point(zero.x, high.y + above), t.Sym("y"), up="bottom", role="axis name"))
    return marks


def grid_drawing(sheet: Sheet) -> Drawing:
    """Return the drawing of a grid."""
    left, right, bottom, top = sheet.edges
    square = _square(sheet)
    low = at(sheet, (Fraction(left), Fraction(bottom)))
    high = at(sheet, (Fraction(right), Fraction(top)))
    marks: list[Mark] = []
    for n in range((right - left) // sheet.steps[0] + 1):
        path = (Point(n * square, low.y), Point(n * square, high.y))
        marks.append(Stroke(path, "upright", "faint"))
    for n in range((top - bottom) // sheet.steps[1] + 1):
        path = (Point(low.x, n * square), Point(high.x, n * square))
        marks.append(Stroke(path, "level", "faint"))
    level, upright = _axes(sheet)
    marks.append(Stroke(level, "x axis"))
    marks.append(Stroke(upright, "y axis"))
    zero = Point(upright[0].x, level[0].y)
    gap = Fraction(1, 4)
    rows = _every(bottom, top, sheet.steps[1], square, True)
    # Above the number at the top, where there is one: it may reach as far as the axis.
    above = Fraction(5, 8) if top in rows else gap
    marks += _axis_names(sheet, high, zero, above)
    for n in _every(left, right, sheet.steps[0], square, False):
        x = at(sheet, (Fraction(n), Fraction(bottom))).x
        marks.append(Text(Point(x, -Fraction(9, 16)), t.num(n), up="top", role="x number"))
    for n in rows:
        y = at(sheet, (Fraction(left), Fraction(n))).y
        marks.append(Text(Point(-gap, y), t.num(n), "right", role="y number"))
    letters = letters_of(sheet).points()
    marks += [Text(spot, name, role="letter", paper=True) for name, spot in letters]
    for shape in sheet.shapes:
        role = "shape" if shape.closed else "path"
        marks.append(Stroke(_outline(sheet, shape), role, "heavy", shape.dashed))
    for path, (_, _, _, segment) in zip(_paths(sheet), sheet.lines, strict=True):
        marks.append(Stroke(path, "segment" if segment else "line", "heavy"))
    for _, place in sheet.points:
        marks += [Stroke(path, "point") for path in cross_at(sheet, place)]
    return drawing(marks)


def cross_at(sheet: Sheet, place: Place) -> tuple[Path, Path]:
    """Return the two strokes of a cross that stands at a place."""
    x, y = at(sheet, place)
    first, second = (
        (Point(x - CROSS, y - way * CROSS), Point(x + CROSS, y + way * CROSS)) for way in (1, -1)
    )
    return first, second
