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
    lines = {name for name, _ in _named_tracks(drawing)}
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


def _tracks(drawing: Drawing) -> list[Stroke]:
    """Return all that a letter may name beside points, in the order of drawing."""
    roles = ("line", "segment", "shape", "path")
    return [mark for mark in drawing.marks if mark.role in roles and isinstance(mark, Stroke)]


def _lines(drawing: Drawing) -> list[tuple[str, Stroke]]:
    return [(n, mark) for n, mark in _named_tracks(drawing) if mark.role in ("line", "segment")]


def _named_tracks(drawing: Drawing) -> list[tuple[str, Stroke]]:
    """Return each line and shape with the letter nearest to it among those that no point has."""
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
    tracks = _tracks(drawing)
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


def _line(drawing: Drawing, name: str) -> Stroke:
    found = [mark for own, mark in _lines(drawing) if not name or own == name.upper()]
    if len(found) != 1:
        raise NotExact("it does not show which line is meant")
    return found[0]


class _Lines:
    """The lines of a drawing in the plane, by their letters and by their equations."""

    def __init__(self, drawing: Drawing, scale: _Scale) -> None:
        self.drawing, self.scale = drawing, scale
        self.tracks = {
            name: sympy.Segment(*map(scale.at, mark.points)) for name, mark in _lines(drawing)
        }

    def track(self, name: str) -> Any:
        """Return a line as far as it is drawn."""
        return sympy.Segment(*map(self.scale.at, _line(self.drawing, name).points))

    def endless(self, name: str) -> Any:
        """Return a line without ends."""
        return sympy.Line(*self.track(name).points)

    def of(self, equation: str) -> str:
        """Return the letter of the line that has an equation."""
        wanted = _of_equation(equation)
        found = [
            name for name, track in self.tracks.items() if track.p1 in wanted and track.p2 in wanted
        ]
        if len(found) != 1:
            raise NotExact("no single line has that equation")
        return found[0]

    def named(self, fits: Any) -> t.Node:
        """Return the letter of the one line that fits."""
        found = [name for name, track in self.tracks.items() if fits(track)]
        if len(found) != 1 or not found[0]:
            raise NotExact("it does not show which line is meant")
        return t.Label(found[0])


def _of_equation(equation: str) -> Any:
    """Return the line of an equation in x and y, by two places on it."""
    form = to_sympy(parse_written(equation))
    form = form.lhs - form.rhs
    x, y = (next((s for s in form.free_symbols if s.name == n), sympy.Dummy()) for n in "xy")
    if form.diff(y) == 0:
        (root,) = sympy.solve(form, x)
        return sympy.Line((root, 0), (root, 1))
    (height,) = sympy.solve(form, y)
    return sympy.Line(*((k, height.subs(x, k)) for k in (0, 1)))


def _equation(line: Any) -> t.Node:
    """Return the equation of a line, solved for y, or for x where it stands upright."""
    if line.slope.is_infinite:
        return t.equals(t.Sym("x"), number_tree(line.p1.x))
    rest = line.p1.y - line.slope * line.p1.x
    right = t.add(t.times(number_tree(line.slope), t.Sym("x")), number_tree(rest))
    return t.equals(t.Sym("y"), right)


def _of_lines(drawing: Drawing, scale: _Scale, reading: Reading) -> t.Node:
    lines, (what, of) = _Lines(drawing, scale), reading
    match what:
        case "point on the line" | "point with equation":
            track = lines.track(*of) if what == "point on the line" else _of_equation(*of)
            on = [name for name, point in _points(drawing, scale).items() if point in track]
            if len(on) != 1:
                raise NotExact("no single point lies on the line")
            return t.Label(on[0])
        case "line with equation":
            return t.Label(lines.of(*of))
        case "line through":
            place = sympy.Point(to_sympy(parse_written(*of)))
            return lines.named(lambda track: place in track)
        case "line parallel":
            given = lines.endless(*of) if len(of[0]) == 1 else _of_equation(*of)
            return lines.named(lambda track: given.is_parallel(track) and track.p1 not in given)
        case "parallel":
            place = sympy.Point(to_sympy(parse_written(of[1])))
            return _equation(lines.endless(of[0]).parallel_line(place))
        case "crossing" | "solution":
            names = of if what == "crossing" else tuple(map(lines.of, of))
            met = sympy.intersection(*map(lines.track, names))
            if len(met) != 1 or not isinstance(met[0], sympy.Point):
                raise NotExact("the lines do not cross on the grid")
            x, y = number_tree(met[0].x), number_tree(met[0].y)
            if what == "crossing":
                return t.pair(x, y)
            return t.Listing((t.equals(t.Sym("x"), x), t.equals(t.Sym("y"), y)))
        case "x where":
            left, _, level = of[0].partition("=")
            track = lines.track(lines.of(f"y = {left}"))
            high = to_sympy(parse_written(level.strip()))
            met = track.intersection(sympy.Line((0, high), (1, high)))
            if len(met) != 1 or not isinstance(met[0], sympy.Point):
                raise NotExact("the line does not come to that height on the grid")
            return number_tree(met[0].x)
    return _of_line(lines, reading)


def _of_line(lines: _Lines, reading: Reading) -> t.Node:
    line = lines.endless(*reading.of)
    if reading.name == "equation":
        return _equation(line)
    if line.slope.is_infinite:
        raise NotExact("an upright line has no gradient")
    if reading.name == "gradient":
        return number_tree(line.slope)
    met = lines.track(*reading.of).intersection(sympy.Line((0, 0), (0, 1)))
    if len(met) != 1:
        raise NotExact("the line does not cross the y-axis on the grid")
    return number_tree(met[0].y)


_LINE_READINGS = frozenset(
    (
        *("gradient", "y-intercept", "equation", "point on the line", "point with equation"),
        *("line with equation", "line through", "line parallel", "parallel", "crossing"),
        *("solution", "x where"),
    )
)


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    scale = _Scale(drawing)
    if reading.name in _LINE_READINGS:
        return _of_lines(drawing, scale, reading)
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
            return _pair(first)
        case "x-coordinate", []:
            return number_tree(first.x)
        case "y-coordinate", []:
            return number_tree(first.y)
        case "midpoint", [second]:
            return _pair(first.midpoint(second))
        case "length", [second]:
            return number_tree(first.distance(second))
        case "gradient between", [second]:
            return number_tree(sympy.Line(first, second).slope)
        case "fourth corner", [second, third]:
            # Half a turn about the middle of the diagonal takes the corner between to it.
            return _pair(second.rotate(sympy.pi, first.midpoint(third)))
    raise NotExact("the drawing does not show it")


def _pair(point: Any) -> t.Node:
    return t.pair(number_tree(point.x), number_tree(point.y))


MEASURING = Measuring(_measure)
