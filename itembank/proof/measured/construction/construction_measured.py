"""Measures a construction: points by their letters, angles by directions, arcs by their centres.

What was constructed is told from the arcs alone: those from whose centres the line that was drawn
is everywhere equally far.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations

import sympy

from itembank.figures.drawing import Arc, Drawing, Point, Stroke, Text
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.symbolic import symbol, to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring, amount_tree, number_tree

_NEAR = 1e-3
"""How exactly places are drawn, in ems: a tenth of the thinnest stroke is thirty times as much."""


def _far(a: Point, b: Point) -> float:
    return math.hypot(float(a.x - b.x), float(a.y - b.y))


def _aside(at: Point, line: Stroke) -> float:
    """Return how far a point is from the whole straight line through a stroke."""
    a, b = line.points
    cross = (b.x - a.x) * (at.y - a.y) - (b.y - a.y) * (at.x - a.x)
    return abs(float(cross)) / _far(a, b)


def _points(drawing: Drawing) -> dict[str, Point]:
    """Return where each letter's point is: the dot that no other is nearer to."""
    dots = [mark.centre for mark in drawing.of("point") if isinstance(mark, Arc)]
    found: dict[str, Point] = {}
    for mark in drawing.of("name"):
        if not isinstance(mark, Text) or not isinstance(mark.content, str):
            raise NotExact("a letter is no text")
        found[mark.content] = min(dots, key=lambda dot: _far(dot, mark.at))
    if len({*found.values()}) != len(dots) or len(found) != len(dots):
        raise NotExact("a point has no letter of its own")
    return found


def _strokes(drawing: Drawing, *roles: str) -> list[Stroke]:
    marks = [mark for role in roles for mark in drawing.of(role)]
    return [mark for mark in marks if isinstance(mark, Stroke)]


def _lines(drawing: Drawing) -> list[Stroke]:
    return _strokes(drawing, "line", "joined", "drawn")


def _on_one(drawing: Drawing, a: Point, b: Point) -> bool:
    """Tell whether two points lie on one line that is drawn."""
    return any(max(_aside(a, line), _aside(b, line)) < _NEAR for line in _lines(drawing))


def _degrees(drawing: Drawing, name: str) -> Fraction:
    """Return an angle between lines that are drawn, to a quarter of a degree."""
    points = _points(drawing)
    if not {*name} <= {*points} or len({*name}) != 3:
        raise NotExact("the drawing has no such angle")
    first, vertex, last = (points[letter] for letter in name)
    if not (_on_one(drawing, first, vertex) and _on_one(drawing, vertex, last)):
        raise NotExact("an arm of the angle is not drawn")
    ways = [math.atan2(float(at.y - vertex.y), float(at.x - vertex.x)) for at in (first, last)]
    size = abs(math.degrees(ways[0] - ways[1])) % 360
    size = min(size, 360 - size)
    quarters = round(size * 4)
    if abs(size * 4 - quarters) > 0.04:
        raise NotExact("the angle is drawn with no whole number of quarters of a degree")
    return Fraction(quarters, 4)


def _given(drawing: Drawing) -> dict[str, t.Quantity]:
    found = {}
    for mark in drawing.of("given"):
        content = mark.content if isinstance(mark, Text) else None
        if not isinstance(content, t.Relation) or not isinstance(content.first, t.Label):
            raise NotExact("what is given cannot be read")
        ((op, amount),) = content.rest
        if op != "=" or not isinstance(amount, t.Quantity):
            raise NotExact("what is given is no amount")
        found[content.first.text] = amount
    return found


def _share(drawing: Drawing, name: str, other: str) -> sympy.Rational | None:
    """Return how many times a length another is, where the construction has it so.

    That is where both lie on one line that is drawn, or are sides that were joined.
    """
    points = _points(drawing)
    if not {*name, *other} <= {*points}:
        return None
    ends = [points[letter] for letter in name + other]
    along = any(max(_aside(at, line) for at in ends) < _NEAR for line in _lines(drawing))
    long = [_far(*ends[:2]), _far(*ends[2:])]
    equal = abs(long[0] - long[1]) < _NEAR
    drawn = all(_on_one(drawing, *pair) for pair in (ends[:2], ends[2:]))
    if min(long) < _NEAR or not (along or (equal and drawn)):
        return None
    ratio = Fraction(long[0] / long[1]).limit_denominator(8)
    if abs(long[0] / long[1] - ratio) > _NEAR:
        raise NotExact("a length is no simple part of the other")
    return sympy.Rational(ratio.numerator, ratio.denominator)


def _length(drawing: Drawing, name: str) -> t.Node:
    for arc, amount in _given(drawing).items():
        share = _share(drawing, name, arc) if len(arc) == 2 else None
        if share is not None and not t.symbols(amount):
            return amount_tree(to_sympy(amount) * share, amount)
    raise NotExact("the drawing does not give the length")


def _agrees(drawing: Drawing) -> None:
    """Hold the angles that are given to those that are drawn."""
    for name, amount in _given(drawing).items():
        if name.startswith("angle ") and not t.symbols(amount):
            drawn = _degrees(drawing, name.removeprefix("angle "))
            if to_sympy(amount) != sympy.Rational(drawn.numerator, drawn.denominator):
                raise NotExact("an angle is drawn with another size than is given")


def _equal_arcs(drawing: Drawing) -> Iterator[tuple[Point, Point, Stroke]]:
    """Yield each line that was drawn, with the centres of two equal arcs that it halves."""
    arcs = [mark for mark in drawing.of("arc") if isinstance(mark, Arc)]
    centres = {(arc.centre, arc.radius) for arc in arcs if not arc.whole}
    for line in _strokes(drawing, "drawn"):
        for (a, first), (b, second) in combinations(sorted(centres), 2):
            if first == second and all(
                abs(_far(end, a) - _far(end, b)) < _NEAR for end in line.points
            ):
                yield a, b, line


def _called(drawing: Drawing) -> str:
    """Return what was constructed."""
    points = _points(drawing)
    given = _strokes(drawing, "line")
    ends = [{*line.points} for line in given]
    arcs = [mark for mark in drawing.of("arc") if isinstance(mark, Arc)]
    sides = _strokes(drawing, "drawn")
    if len(given) == 1 and len(sides) == 2:
        long = [_far(*line.points) for line in (*given, *sides)]
        corners = {point for line in (*given, *sides) for point in line.points}
        on_ends = all(arc.centre in given[0].points for arc in arcs)
        if max(long) - min(long) < _NEAR and len(corners) == 3 and on_ends:
            return "equilateral triangle"
    if len(sides) != 1:
        raise NotExact("more than one construction is drawn")
    for a, b, line in _equal_arcs(drawing):
        if {a, b} in ends:
            return "perpendicular bisector"
        through = [stroke for stroke in given if max(_aside(a, stroke), _aside(b, stroke)) < _NEAR]
        if not through:
            # Each centre is on an arm of its own, as far from where the arms meet.
            arms = [arm for arm in given for at in (a, b) if _aside(at, arm) < _NEAR]
            vertex = {*arms[0].points} & {*arms[-1].points} if len(arms) == 2 else {*()}
            if len(vertex) == 1 and _aside(next(iter(vertex)), line) < _NEAR:
                return "angle bisector"
            continue
        start = min(line.points, key=lambda end: min(_far(end, at) for at in points.values()))
        if start in points.values():
            on_line = _aside(start, through[0]) < _NEAR
            return f"perpendicular {'at a point on' if on_line else 'from a point to'} a line"
    raise NotExact("the arcs do not show what was constructed")


def _mirrored(drawing: Drawing, name: str) -> str:
    """Return what the line that is drawn is as far from as from a point or a line."""
    points, (line,) = _points(drawing), _strokes(drawing, "drawn")
    if len(name) == 1 and name in points:
        away = points[name]
        for letter, at in points.items():
            if letter != name and all(
                abs(_far(end, away) - _far(end, at)) < _NEAR for end in line.points
            ):
                return letter
    elif len(name) == 2 and {*name} <= {*points}:
        vertex = points[name[0]]
        arm = Stroke((vertex, points[name[1]]))
        tip = max(line.points, key=lambda end: _far(end, vertex))
        if arm.points[0] in line.points or _aside(vertex, line) < _NEAR:
            for letter, at in points.items():
                if letter in name or not _on_one(drawing, vertex, at) or _aside(at, line) < _NEAR:
                    continue
                if abs(_aside(tip, arm) - _aside(tip, Stroke((vertex, at)))) < _NEAR:
                    return name[0] + letter
    raise NotExact("the line that is drawn is as far from nothing else")


def _shortest(drawing: Drawing, offered: tuple[str, ...]) -> str:
    """Return which of some lengths from a point is at right angles to the line that is given."""
    points, (line,) = _points(drawing), _strokes(drawing, "line")
    if not {*"".join(offered)} <= {*points}:
        raise NotExact("a point that is named is not drawn")
    for name in offered:
        start, end = (points[letter] for letter in name)
        if _aside(end, line) < _NEAR and abs(_far(start, end) - _aside(start, line)) < _NEAR:
            return name
    raise NotExact("none of the lengths is at right angles to the line")


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    _agrees(drawing)
    if reading.name == "length" and len(reading.of) == 1:
        return _length(drawing, reading.of[0])
    if reading.name == "angle" and len(reading.of) == 1:
        size = _degrees(drawing, reading.of[0])
        return t.Quantity(number_tree(sympy.Rational(size.numerator, size.denominator)), "°")
    if reading.name == "construction" and (name := _called(drawing)) in reading.of:
        return t.Label(name)
    if reading.name == "as far" and len(reading.of) == 1:
        return t.Label(_mirrored(drawing, reading.of[0]))
    if reading.name == "shortest":
        return t.Label(_shortest(drawing, reading.of))
    raise NotExact("the drawing does not show it")


def _solved(expression: t.Node, value: sympy.Expr) -> t.Relation:
    """Return what the letter of an expression is, where it comes to a value."""
    (name,) = t.symbols(expression)
    (found,) = sympy.solve(to_sympy(expression) - value, symbol(name))
    return t.equals(t.Sym(name), number_tree(found))


def _relations(drawing: Drawing) -> tuple[t.Relation, ...]:
    """Return what each letter is for which what is given is as drawn."""
    given = _given(drawing)
    out = []
    for name, amount in given.items():
        if not t.symbols(amount):
            continue
        if name.startswith("angle "):
            size = _degrees(drawing, name.removeprefix("angle "))
            out.append(_solved(amount, sympy.Rational(size.numerator, size.denominator)))
            continue
        for length, fellow in given.items():
            share = _share(drawing, name, length) if len(length) == 2 and length != name else None
            if share is not None and not t.symbols(fellow):
                out.append(_solved(amount, to_sympy(fellow) * share))
    return tuple(out)


MEASURING = Measuring(_measure, _relations)
