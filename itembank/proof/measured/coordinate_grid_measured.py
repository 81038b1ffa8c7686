"""Measures a coordinate grid: the numbers at its edges give the scale, and the rest is geometry."""

from __future__ import annotations

from itertools import pairwise
from typing import Any

import sympy

from itembank.figures.drawing import Drawing, Stroke, Text, text_box
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.parse import parse_written
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring, number_tree


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
    each = (high - low) / (b - a)
    if any(low + (at - a) * each != value for at, value in numbers):
        raise NotExact("the numbers do not stand where they belong")
    for name in ("x axis", "y axis"):
        for mark in drawing.of(name):
            level = 1 if name == "x axis" else 0
            if isinstance(mark, Stroke) and mark.points[0][level] != mark.points[-1][level]:
                raise NotExact("an axis slants")
    return low - a * each, each


class _Scale:
    """Coordinates of places, by the numbers at the edges."""

    def __init__(self, drawing: Drawing) -> None:
        self.x = _axis(drawing, "x number", "upright", 0)
        self.y = _axis(drawing, "y number", "level", 1)

    def at(self, place: Any) -> Any:
        """Return the point of the plane at a place of the drawing."""
        x, y = (sympy.Rational(value) for value in place)
        return sympy.Point(self.x[0] + x * self.x[1], self.y[0] + y * self.y[1])


def _letters(drawing: Drawing) -> list[tuple[str, Any]]:
    found = []
    for mark in drawing.of("letter"):
        if isinstance(mark, Text) and isinstance(mark.content, str):
            box = text_box(mark)
            middle = ((box.left + box.right) / 2, (box.bottom + box.top) / 2)
            found.append((mark.content, sympy.Point(*map(sympy.Rational, middle))))
    return found


def _points(drawing: Drawing, scale: _Scale) -> dict[str, Any]:
    """Return the point that each letter stands nearest to, by the crossing of its strokes."""
    strokes = [mark for mark in drawing.of("point") if isinstance(mark, Stroke)]
    centres = []
    for stroke, other in zip(strokes[::2], strokes[1::2], strict=True):
        ends = [sympy.Point(*map(sympy.Rational, p)) for p in (*stroke.points, *other.points)]
        middle = ends[0].midpoint(ends[1])
        if middle != ends[2].midpoint(ends[3]):
            raise NotExact("a cross is not drawn about one place")
        centres.append(middle)
    lines = {name for name, _ in _named_lines(drawing)}
    letters = [(name, at) for name, at in _letters(drawing) if name not in lines]
    found: dict[str, Any] = {}
    for centre in centres:
        name, _ = min(letters, key=lambda letter: _gap(letter[1], centre), default=("", None))
        if not name or name in found:
            raise NotExact("it does not show which letter is which point's")
        found[name] = scale.at((centre.x, centre.y))
    return found


def _gap(here: Any, other: Any) -> Any:
    return (here.x - other.x) ** 2 + (here.y - other.y) ** 2


def _lines(drawing: Drawing) -> list[Stroke]:
    marks = (*drawing.of("line"), *drawing.of("segment"))
    return [mark for mark in drawing.marks if mark in marks and isinstance(mark, Stroke)]


def _named_lines(drawing: Drawing) -> list[tuple[str, Stroke]]:
    """Return each line with the letter that is nearest to it among those that no point has."""
    crosses = [
        sympy.Point(*map(sympy.Rational, mark.points[0])).midpoint(
            sympy.Point(*map(sympy.Rational, mark.points[1]))
        )
        for mark in drawing.of("point")
        if isinstance(mark, Stroke)
    ]
    letters = _letters(drawing)
    taken = {min(letters, key=lambda x: _gap(x[1], cross))[0] for cross in crosses if letters}
    left = [(name, at) for name, at in letters if name not in taken]
    lines = _lines(drawing)
    named: dict[int, str] = {}
    for name, at in left:
        gaps = [_away(mark, at) for mark in lines]
        if not gaps:
            raise NotExact("a letter stands by nothing")
        named[gaps.index(min(gaps))] = name
    return [(named.get(place, ""), mark) for place, mark in enumerate(lines)]


def _away(mark: Stroke, at: Any) -> Any:
    ends = [sympy.Point(*map(sympy.Rational, point)) for point in mark.points]
    return sympy.Segment(*ends).distance(at)


def _line(drawing: Drawing, name: str) -> Stroke:
    found = [mark for own, mark in _named_lines(drawing) if not name or own == name]
    if len(found) != 1:
        raise NotExact("it does not show which line is meant")
    return found[0]


def _of_line(drawing: Drawing, scale: _Scale, reading: Reading) -> t.Node:
    mark = _line(drawing, reading.of[0].upper() if reading.of else "")
    ends = [scale.at(point) for point in mark.points]
    if reading.name == "point on the line":
        track = sympy.Segment(*ends)
        on = [name for name, point in _points(drawing, scale).items() if point in track]
        if len(on) != 1:
            raise NotExact("no single point lies on the line")
        return t.Label(on[0])
    line = sympy.Line(*ends)
    if line.slope.is_infinite:
        raise NotExact("an upright line has no gradient")
    if reading.name == "gradient":
        return number_tree(line.slope)
    met = sympy.Segment(*ends).intersection(sympy.Line((0, 0), (0, 1)))
    if len(met) != 1:
        raise NotExact("the line does not cross the y-axis on the grid")
    return number_tree(met[0].y)


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    scale = _Scale(drawing)
    if reading.name in ("gradient", "y-intercept", "point on the line"):
        return _of_line(drawing, scale, reading)
    points = _points(drawing, scale)
    if reading.name == "letter":
        wanted = to_sympy(parse_written(reading.of[0]))
        for name, point in points.items():
            if [point.x, point.y] == wanted:
                return t.Label(name)
        raise NotExact("no point stands there")
    if not reading.of or any(name.upper() not in points for name in reading.of):
        raise NotExact("the drawing does not show it")
    first, *others = (points[name.upper()] for name in reading.of)
    match reading.name, others:
        case "coordinates", []:
            return t.pair(number_tree(first.x), number_tree(first.y))
        case "x-coordinate", []:
            return number_tree(first.x)
        case "y-coordinate", []:
            return number_tree(first.y)
        case "midpoint", [second]:
            middle = first.midpoint(second)
            return t.pair(number_tree(middle.x), number_tree(middle.y))
        case "length", [second]:
            return number_tree(first.distance(second))
    raise NotExact("the drawing does not show it")


MEASURING = Measuring(_measure)
