"""Measures the lines of a coordinate grid: their equations, and what holds between two."""

from __future__ import annotations

from typing import Any

import sympy

from itembank.figures.drawing import Drawing
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.parse import parse_written
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.grid.grid_places_measured import (
    Scale,
    line_called,
    lines_of,
    points_of,
)
from itembank.proof.measured.measure import number_tree


class _Lines:
    """The lines of a drawing in the plane, by their letters and by their equations."""

    def __init__(self, drawing: Drawing, scale: Scale) -> None:
        self.drawing, self.scale = drawing, scale
        self.tracks = {
            name: sympy.Segment(*map(scale.at, mark.points)) for name, mark in lines_of(drawing)
        }

    def track(self, name: str) -> Any:
        """Return a line as far as it is drawn."""
        return sympy.Segment(*map(self.scale.at, line_called(self.drawing, name).points))

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


def equation_of(line: Any) -> t.Node:
    """Return the equation of a line, solved for y, or for x where it stands upright."""
    if line.slope.is_infinite:
        return t.equals(t.Sym("x"), number_tree(line.p1.x))
    rest = line.p1.y - line.slope * line.p1.x
    right = t.add(t.times(number_tree(line.slope), t.Sym("x")), number_tree(rest))
    return t.equals(t.Sym("y"), right)


def of_lines(drawing: Drawing, scale: Scale, reading: Reading) -> t.Node:
    """Return what is measured of the lines of a grid; raises NotExact where it is not there."""
    lines, (what, of) = _Lines(drawing, scale), reading
    match what:
        case "point on the line" | "point with equation":
            track = lines.track(*of) if what == "point on the line" else _of_equation(*of)
            on = [name for name, point in points_of(drawing).items() if point in track]
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
            return equation_of(lines.endless(of[0]).parallel_line(place))
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
        return equation_of(line)
    if line.slope.is_infinite:
        raise NotExact("an upright line has no gradient")
    if reading.name == "gradient":
        return number_tree(line.slope)
    met = lines.track(*reading.of).intersection(sympy.Line((0, 0), (0, 1)))
    if len(met) != 1:
        raise NotExact("the line does not cross the y-axis on the grid")
    return number_tree(met[0].y)


LINE_READINGS = frozenset(
    (
        *("gradient", "y-intercept", "equation", "point on the line", "point with equation"),
        *("line with equation", "line through", "line parallel", "parallel", "crossing"),
        *("solution", "x where"),
    )
)
