"""Where things are on the drawing of a grid: by the numbers at its edges, letters by nearness."""

from __future__ import annotations

from itertools import pairwise
from typing import Any

import sympy

from itembank.figures.drawing import Drawing, Stroke, Text, text_box
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.once import once


def _axis(drawing: Drawing, role: str, lines: str, place: int) -> tuple[Any, Any]:
    """Return what stands at place 0 of an axis, and how much one em is worth."""
    strokes = [mark for mark in drawing.of(lines) if isinstance(mark, Stroke)]
    if any(mark.points[0][place] != mark.points[-1][place] for mark in strokes):
        raise NotExact("a line of the grid is not straight across")
    rows = sorted(sympy.Rational(mark.points[0][place]) for mark in strokes)
    if len({b - a for a, b in pairwise(rows)}) != 1:
        raise NotExact("the squares are not equal")
    numbers = []
    for mark in drawing.of(role):
        if isinstance(mark, Text) and not isinstance(mark.content, str):
            at = sympy.Rational(mark.at[place])
            if at not in rows:
                raise NotExact("a number stands at no line of the grid")
            numbers.append((at, to_sympy(mark.content)))
    if len(numbers) < 2:
        raise NotExact("an axis shows fewer than two numbers")
    (a, low), (b, high) = numbers[0], numbers[-1]
    step = (high - low) / (b - a)
    if any(low + (at - a) * step != value for at, value in numbers):
        raise NotExact("the numbers do not stand where they belong")
    for name in ("x axis", "y axis"):
        for mark in drawing.of(name):
            level = 1 if name == "x axis" else 0
            if isinstance(mark, Stroke) and mark.points[0][level] != mark.points[-1][level]:
                raise NotExact("an axis slants")
    return low - a * step, step


class Scale:
    """Coordinates of places, by the numbers at the edges."""

    def __init__(self, drawing: Drawing) -> None:
        self.x = _axis(drawing, "x number", "upright", 0)
        self.y = _axis(drawing, "y number", "level", 1)

    def at(self, place: Any) -> Any:
        """Return the point of the plane at a place of the drawing."""
        x, y = (sympy.Rational(value) for value in place)
        return sympy.Point(self.x[0] + x * self.x[1], self.y[0] + y * self.y[1])


scale_of = once(Scale)


@once
def letters_of(drawing: Drawing) -> list[tuple[str, Any]]:
    """Return each letter with the middle of its room."""
    found = []
    for mark in drawing.of("letter"):
        if isinstance(mark, Text) and isinstance(mark.content, str):
            box = text_box(mark)
            middle = ((box.left + box.right) / 2, (box.bottom + box.top) / 2)
            found.append((mark.content, sympy.Point(*map(sympy.Rational, middle))))
    return found


@once
def points_of(drawing: Drawing) -> dict[str, Any]:
    """Return the point that each letter stands nearest to, by the crossing of its strokes."""
    strokes = [mark for mark in drawing.of("point") if isinstance(mark, Stroke)]
    centres = []
    for stroke, bar in zip(strokes[::2], strokes[1::2], strict=True):
        ends = [sympy.Point(*map(sympy.Rational, p)) for p in (*stroke.points, *bar.points)]
        middle = ends[0].midpoint(ends[1])
        if middle != ends[2].midpoint(ends[3]):
            raise NotExact("a cross is not drawn about one place")
        centres.append(middle)
    scale = scale_of(drawing)
    lines = {name for name, _ in named_tracks(drawing)}
    letters = [(name, at) for name, at in letters_of(drawing) if name not in lines]
    found: dict[str, Any] = {}
    for centre in centres:
        name, _ = min(letters, key=lambda letter: _gap(letter[1], centre), default=("", None))
        if not name or name in found:
            raise NotExact("it does not show which letter is which point's")
        found[name] = scale.at((centre.x, centre.y))
    return found


def _gap(here: Any, other: Any) -> Any:
    return (here.x - other.x) ** 2 + (here.y - other.y) ** 2


def tracks_of(drawing: Drawing) -> list[Stroke]:
    """Return all that a letter may name beside points, in the order of drawing."""
    roles = ("line", "segment", "shape", "path")
    return [mark for mark in drawing.marks if mark.role in roles and isinstance(mark, Stroke)]


def lines_of(drawing: Drawing) -> list[tuple[str, Stroke]]:
    """Return each straight line with its letter, ``""`` where it has none."""
    return [(n, mark) for n, mark in named_tracks(drawing) if mark.role in ("line", "segment")]


@once
def named_tracks(drawing: Drawing) -> list[tuple[str, Stroke]]:
    """Return each line and shape with the letter nearest to it among those that no point has."""
    crosses = [
        sympy.Point(*map(sympy.Rational, mark.points[0])).midpoint(
            sympy.Point(*map(sympy.Rational, mark.points[1]))
        )
        for mark in drawing.of("point")
        if isinstance(mark, Stroke)
    ]
    letters = letters_of(drawing)
    taken = {min(letters, key=lambda x: _gap(x[1], cross))[0] for cross in crosses if letters}
    left = [(name, at) for name, at in letters if name not in taken]
    tracks = tracks_of(drawing)
    named: dict[int, str] = {}
    for name, at in left:
        gaps = [_away(mark, at) for mark in tracks]
        if not gaps:
            raise NotExact("a letter stands by nothing")
        named[gaps.index(min(gaps))] = name
    return [(named.get(place, ""), mark) for place, mark in enumerate(tracks)]


def _away(mark: Stroke, at: Any) -> Any:
    """Return the square of the distance of a place from the nearest stroke of a track."""
    corners = [sympy.Point(*map(sympy.Rational, point)) for point in mark.points]
    return min(_gap(_nearest(a, b, at), at) for a, b in pairwise(corners))


def _nearest(a: Any, b: Any, at: Any) -> Any:
    way = b - a
    along = (at - a).dot(way) / way.dot(way)
    return a + way * sympy.Min(sympy.Max(along, 0), 1)


def line_called(drawing: Drawing, name: str) -> Stroke:
    """Return the line of a letter, or the single line; raises NotExact."""
    found = [mark for own, mark in lines_of(drawing) if not name or own == name.upper()]
    if len(found) != 1:
        raise NotExact("it does not show which line is meant")
    return found[0]
