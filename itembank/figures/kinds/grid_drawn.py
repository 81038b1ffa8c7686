"""The drawing of a coordinate grid: squares, axes, numbers at the edges, points and lines.

The numbers stand along the left and the lower edge, where no point and no line comes near them.
"""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache
from typing import NamedTuple

from itembank.figures.drawing import (
    Box,
    Drawing,
    Mark,
    Point,
    Stroke,
    Text,
    drawing,
    text_box,
)
from itembank.figures.label_room import room
from itembank.notation import tree as t

Place = tuple[Fraction, Fraction]
Path = tuple[Point, Point]


class Sheet(NamedTuple):
    """What is drawn, as numbers: edges, steps, points, and lines with name and whether they end."""

    edges: tuple[int, int, int, int]
    steps: tuple[int, int]
    points: tuple[tuple[str, Place], ...]
    lines: tuple[tuple[Place, Place, str, bool], ...]


_CROSS = Fraction(3, 16)
_FREE = Fraction(1, 8)
_FAR = Fraction(3, 2)
"""The square of how far a line's letter is from any point: further than that point's own."""
_WIDE, _HIGH, _AT_MOST = Fraction(13), Fraction(6), Fraction(15, 2)
_USUAL, _LEAST = Fraction(7, 12), Fraction(3, 8)


def _square(sheet: Sheet) -> Fraction:
    left, right, bottom, top = sheet.edges
    columns, rows = (right - left) // sheet.steps[0], (top - bottom) // sheet.steps[1]
    high = min(max(_USUAL, _HIGH / rows), _AT_MOST / rows)
    return max(_LEAST, min(Fraction(1), _WIDE / columns, high))


def _at(sheet: Sheet, place: Place) -> Point:
    square = _square(sheet)
    x = (place[0] - sheet.edges[0]) / sheet.steps[0] * square
    y = (place[1] - sheet.edges[2]) / sheet.steps[1] * square
    return Point(x, y)


def _every(low: int, high: int, step: int, square: Fraction, upright: bool) -> list[int]:
    """Return the numbers that are printed along an axis: as many as have room."""
    numbers = list(range(low, high + step, step))
    rooms = [room(t.num(n)) for n in numbers]
    need = max(each.height if upright else each.width + Fraction(1, 6) for each in rooms)
    skip = next(n for n in (1, 2, 5, 10, 20) if n * square >= need or n == 20)
    # Counted from 0 where it is shown, so that round numbers are printed.
    kept = [n for n in numbers if n % (skip * step) == 0]
    return kept if len(kept) > 1 else [numbers[0], numbers[-1]]


def _line_ends(sheet: Sheet, a: Place, b: Place) -> tuple[Point, Point]:
    """Return where a straight line enters and leaves the grid (Liang and Barsky, from memory)."""
    left, right, bottom, top = sheet.edges
    (x, y), (dx, dy) = a, (b[0] - a[0], b[1] - a[1])
    low, high = [], []
    for step, start, least, most in ((dx, x, left, right), (dy, y, bottom, top)):
        if step:
            first, second = sorted(((least - start) / step, (most - start) / step))
            low.append(first)
            high.append(second)
    ends = (max(low), min(high))
    first_end, second_end = ((x + s * dx, y + s * dy) for s in ends)
    return _at(sheet, first_end), _at(sheet, second_end)


@lru_cache(maxsize=256)
def _letters(sheet: Sheet) -> tuple[list[Text], str]:
    """Return the letters at places where they touch nothing, and which have none."""
    strokes = _paths(sheet)
    centres = {name: _at(sheet, place) for name, place in sheet.points}
    crosses = [
        Box(*map(Fraction, (x - _CROSS, y - _CROSS, x + _CROSS, y + _CROSS)))
        for x, y in centres.values()
    ]
    left, right, bottom, top = sheet.edges
    low, high = (
        _at(sheet, (Fraction(left), Fraction(bottom))),
        _at(sheet, (Fraction(right), Fraction(top))),
    )
    wanted = [(name, [centre]) for name, centre in centres.items()]
    for path, (_, _, name, _) in zip(strokes, sheet.lines, strict=True):
        if name:
            (a, b), (c, d) = path
            parts = [Fraction(n, 16) for n in (14, 13, 12, 2, 3, 4, 10, 6)]
            wanted.append((name, [Point(a + s * (c - a), b + s * (d - b)) for s in parts]))
    zero = _axes(sheet)
    placed: list[Text] = []
    for name, starts in wanted:
        need = room(name)
        reach_x, reach_y = need.width / 2 + _CROSS + _FREE, need.height / 2 + _CROSS / 2
        ways = [(1, 1), (-1, 1), (1, -1), (-1, -1), (1, 0), (-1, 0), (0, 1), (0, -1)]
        # Off the axes where there is room, else on one.
        tries = [(c, way, axes) for axes in (zero, []) for c in starts for way in ways]
        for centre, (dx, dy), axes in tries:
            far_y = reach_y + _FREE if dx == 0 else reach_y
            label = Text(
                Point(centre.x + dx * reach_x, centre.y + dy * far_y),
                name,
                role="letter",
                paper=True,
            )
            box = text_box(label)
            inside = (
                box.left >= low.x + _FREE
                and box.right <= high.x - _FREE
                and box.bottom >= low.y + _FREE
                and box.top <= high.y - _FREE
            )
            if not (
                inside
                and not any(box.meets(cross, _FREE / 2) for cross in crosses)
                and not any(box.meets(text_box(other), _FREE) for other in placed)
                and not any(_cut(a, b, box) for a, b in (*strokes, *axes))
                and _own(label, sheet, centres, strokes)
            ):
                continue
            placed.append(label)
            break
        else:
            return [], name
    return placed, ""


def _own(label: Text, sheet: Sheet, centres: dict[str, Point], paths: list[Path]) -> bool:
    """Tell whether a letter stands plainly by what it names: its own point, or its own line."""
    gaps = {
        other: (label.at.x - x) ** 2 + (label.at.y - y) ** 2 for other, (x, y) in centres.items()
    }
    mine = gaps.pop(str(label.content), None)
    if mine is not None:
        return all(2 * mine < gap for gap in gaps.values())
    away = {
        name: _away(label.at, *path)
        for (_, _, name, _), path in zip(sheet.lines, paths, strict=True)
    }
    mine = away.pop(str(label.content))
    return all(gap > _FAR for gap in gaps.values()) and all(2 * mine < d for d in away.values())


def _away(at: Point, a: Point, b: Point) -> Fraction:
    """Return the square of the distance of a place from a stroke."""
    dx, dy = b.x - a.x, b.y - a.y
    along = Fraction((at.x - a.x) * dx + (at.y - a.y) * dy) / (dx**2 + dy**2)
    along = min(max(along, Fraction(0)), Fraction(1))
    return Fraction((a.x + along * dx - at.x) ** 2 + (a.y + along * dy - at.y) ** 2)


def _cut(a: Point, b: Point, box: Box) -> bool:
    """Tell whether a stroke comes into a box, or near it."""
    low, high = Fraction(0), Fraction(1)
    wide = Box(box.left - _FREE, box.bottom - _FREE, box.right + _FREE, box.top + _FREE)
    for start, step, least, most in (
        (a.x, b.x - a.x, wide.left, wide.right),
        (a.y, b.y - a.y, wide.bottom, wide.top),
    ):
        if not step:
            if not least < start < most:
                return False
            continue
        first, second = sorted(((least - start) / Fraction(step), (most - start) / Fraction(step)))
        low, high = max(low, first), min(high, second)
    return low < high


def unplaced(sheet: Sheet) -> str:
    """Return that a letter has no room, as a clause, or ``""``."""
    _, name = _letters(sheet)
    return f"there is no room for the letter {name}" if name else ""


def _paths(sheet: Sheet) -> list[Path]:
    return [
        (_at(sheet, a), _at(sheet, b)) if segment else _line_ends(sheet, a, b)
        for a, b, _, segment in sheet.lines
    ]


def _axes(sheet: Sheet) -> list[Path]:
    """Return the x-axis and the y-axis; where 0 is not on the grid, its lower or left edge."""
    left, right, bottom, top = sheet.edges
    x = Fraction(0 if left <= 0 <= right else left)
    y = Fraction(0 if bottom <= 0 <= top else bottom)
    ends = (
        ((Fraction(left), y), (Fraction(right), y)),
        ((x, Fraction(bottom)), (x, Fraction(top))),
    )
    return [(_at(sheet, a), _at(sheet, b)) for a, b in ends]


def grid_drawing(sheet: Sheet) -> Drawing:
    """Return the drawing of a grid."""
    left, right, bottom, top = sheet.edges
    square = _square(sheet)
    low = _at(sheet, (Fraction(left), Fraction(bottom)))
    high = _at(sheet, (Fraction(right), Fraction(top)))
    marks: list[Mark] = []
    for n in range((right - left) // sheet.steps[0] + 1):
        path = (Point(n * square, low.y), Point(n * square, high.y))
        marks.append(Stroke(path, "upright", "thin"))
    for n in range((top - bottom) // sheet.steps[1] + 1):
        path = (Point(low.x, n * square), Point(high.x, n * square))
        marks.append(Stroke(path, "level", "thin"))
    level, upright = _axes(sheet)
    marks.append(Stroke(level, "x axis"))
    marks.append(Stroke(upright, "y axis"))
    zero = Point(upright[0].x, level[0].y)
    gap = Fraction(1, 4)
    rows = _every(bottom, top, sheet.steps[1], square, True)
    # Above the number at the top, where there is one: it may reach as far as the axis.
    above = Fraction(5, 8) if top in rows else gap
    marks.append(Text(Point(high.x + gap, zero.y), t.Sym("x"), "left", role="axis name"))
    marks.append(Text(Point(zero.x, high.y + above), t.Sym("y"), up="bottom", role="axis name"))
    for n in _every(left, right, sheet.steps[0], square, False):
        x = _at(sheet, (Fraction(n), Fraction(bottom))).x
        marks.append(Text(Point(x, -Fraction(9, 16)), t.num(n), up="top", role="x number"))
    for n in rows:
        y = _at(sheet, (Fraction(left), Fraction(n))).y
        marks.append(Text(Point(-gap, y), t.num(n), "right", role="y number"))
    letters, _ = _letters(sheet)
    marks += letters
    for path, (_, _, _, segment) in zip(_paths(sheet), sheet.lines, strict=True):
        marks.append(Stroke(path, "segment" if segment else "line", "heavy"))
    for _, place in sheet.points:
        x, y = _at(sheet, place)
        for way in (1, -1):
            ends = (
                Point(x - _CROSS, y - way * _CROSS),
                Point(x + _CROSS, y + way * _CROSS),
            )
            marks.append(Stroke(ends, "point"))
    return drawing(marks)
