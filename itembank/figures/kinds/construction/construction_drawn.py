"""The drawing of a construction: the lines that are given, arcs, and the lines that are drawn."""

from __future__ import annotations

import math
from collections.abc import Iterator
from fractions import Fraction
from typing import TYPE_CHECKING

from itembank.figures.circle_points import unit_point
from itembank.figures.drawing import Exact, Point
from itembank.figures.kinds.construction.construction_facts import begins_with
from itembank.figures.kinds.labels.near_marks import Near, Track
from itembank.figures.kinds.labels.placed_labels import Sheet, half_size
from itembank.figures.kinds.labels.tried_sizes import homeless_in_all
from itembank.figures.kinds.labels.whole_points import Whole, arc, stroke, way, whole
from itembank.notation import tree as t
from itembank.once import once

if TYPE_CHECKING:
    from itembank.figures.kinds.construction.construction import Construction

_RADIUS = Fraction(7, 2)
_ARM = Fraction(21, 5)
_BEYOND = Fraction(3, 5)
_DOT = Fraction(7, 100)
_SPREAD = 11.0
"""How many degrees an arc reaches to each side of where it is crossed."""
_FINE = 1 << 20


class _Plan:
    """Marks before they are turned, and the points that bear letters, in order."""

    def __init__(self) -> None:
        self.lines: list[tuple[str, Point, Point]] = []
        self.arcs: list[tuple[Point, Exact, float, float]] = []
        self.points: list[Point] = []

    def cross(self, centre: Point, radius: Exact, at: Point) -> None:
        """Draw a short arc round a centre, where it is crossed."""
        way = math.degrees(math.atan2(float(at.y - centre.y), float(at.x - centre.x)))
        self.arcs.append((centre, radius, way - _SPREAD, way + _SPREAD))


def _along(way: Point, far: Exact) -> Point:
    return Point(way.x * far, way.y * far)


@once
def construction_sheet(figure: Construction) -> Sheet:
    """Return the marks of a construction, with its letters and what is given under it."""
    plan = _Plan()
    if figure.shape == "perpendicular bisector":
        _bisector(figure, plan)
    elif figure.shape == "perpendicular from a point to a line":
        _from_point(plan)
    else:
        _angle(figure, plan)
    turn = way(figure.turn)

    def turned(at: Point) -> Whole:
        return whole(at).turned(turn)

    marks: list[Track] = [
        stroke((turned(a), turned(b)), role, "normal" if role != "drawn" else "heavy")
        for role, a, b in plan.lines
    ]
    for centre, radius, first, last in plan.arcs:
        at = turned(centre)
        ends = _way(at, first + figure.turn), _way(at, last + figure.turn)
        marks.append(arc(at, radius, ends, "arc", "thin"))
    points = [turned(point) for point in plan.points]
    rims = [at.plus(Whole(1, 0)) for at in points]
    marks += [
        arc(at, _DOT, (rim, rim), "point", fill="ink") for at, rim in zip(points, rims, strict=True)
    ]
    sheet = Sheet(marks)
    near = [at.near for at in points]
    middle = (sum(x for x, _ in near) / len(near), sum(y for _, y in near) / len(near))
    for letter, spot in zip(figure.letters, near, strict=True):
        others = [place for place in near if place != spot]
        sheet.put(letter, _own(_round(letter, spot, middle), spot, others), "name")
    for name, amount in figure.given:
        sheet.below(_told(name, amount), "given")
    return sheet


def without_place(figure: Construction) -> list[str]:
    """Return the letters and amounts that have no place."""
    labels = (*figure.letters, *(_told(*given) for given in figure.given))
    lines = figure.shape, figure.size, figure.halved, figure.joined, figure.turn
    shape = ("construction", *lines, tuple(map(half_size, labels)))
    return homeless_in_all(lambda only: construction_sheet(figure), (None,), shape)


def _told(name: str, amount: t.Node) -> t.Node:
    return t.equals(t.Label(name), amount)


def _way(at: Whole, degrees: float) -> Whole:
    """Return a point in a direction, which only has to be near."""
    turn = math.radians(degrees)
    return at.plus(Whole(round(1000 * math.cos(turn)), round(1000 * math.sin(turn)), 1000))


def _own(places: Iterator[Near], at: Near, others: list[Near]) -> Iterator[Near]:
    """Yield the places that are a good deal nearer to a point than to any other."""
    left, up = at
    for x, y in places:
        far = math.hypot(x - left, y - up) * 1.2
        for a, b in others:
            if math.hypot(x - a, y - b) <= far:
                break
        else:
            yield x, y


def _round(letter: str, at: Near, middle: Near) -> Iterator[Near]:
    """Yield places round a point for its letter: near first, and rather away from the middle."""
    x, y = at
    w, h = half_size(letter)
    out = math.atan2(y - middle[1], x - middle[0])
    ways: list[tuple[float, float, float]] = []
    for k in range(16):
        turn = out + math.pi / 8 * ((k + 1) // 2) * (-1) ** k
        across, rise = math.cos(turn), math.sin(turn)
        far = w * abs(across) + h * abs(rise) + 0.2
        ways.append((across, rise, far))
        yield x + across * far, y + rise * far
    for more in (0.15, 0.3, 0.45, 0.6, 0.75):
        for across, rise, far in ways:
            yield x + across * (far + more), y + rise * (far + more)


def _bisector(figure: Construction, plan: _Plan) -> None:
    way = unit_point(Fraction(figure.size, 360))
    across, up = way.x * _RADIUS, way.y * _RADIUS
    a, b, c, d = Point(-across, 0), Point(across, 0), Point(0, up), Point(0, -up)
    plan.lines.append(("line", a, b))
    if figure.joined:
        plan.lines += [("joined", a, c), ("joined", b, c)]
    plan.lines.append(("drawn", Point(0, up + _BEYOND), Point(0, -up - _BEYOND)))
    for centre in (a, b):
        for at in (c, d):
            plan.cross(centre, _RADIUS, at)
    plan.points += [a, b, c, d, Point(0, 0)]


_HALF, _UP, _OPENED = Fraction(9, 5), Fraction(12, 5), Fraction(3)
"""A right-angled triangle, 3 : 4 : 5: from the foot of a perpendicular to where arcs cross."""


def _from_point(plan: _Plan) -> None:
    a, b = Point(Fraction(-16, 5), 0), Point(4, 0)
    p, q = Point(0, _UP), Point(0, -_UP)
    left, right = Point(-_HALF, 0), Point(_HALF, 0)
    plan.lines += [("line", a, b), ("drawn", p, Point(0, -_UP - _BEYOND))]
    for at in (left, right):
        plan.cross(p, _OPENED, at)
        plan.cross(at, _OPENED, q)
    plan.points += [a, b, p, q, Point(0, 0)]


def _angle(figure: Construction, plan: _Plan) -> None:
    centre, begun = Point(0, 0), begins_with(figure.shape)
    size = Fraction(figure.size) if begun is None else begun
    first, last = Point(1, 0), unit_point(size / 360)
    opened = Fraction(2)
    a, c = _along(last, _ARM), _along(first, _ARM)
    if figure.shape == "equilateral triangle":
        opened = Fraction(17, 5)
        a, c = _along(last, opened), _along(first, opened)
        plan.lines += [("line", centre, c), ("drawn", centre, a), ("drawn", c, a)]
        plan.cross(centre, opened, a)
        plan.cross(c, opened, a)
    elif begun == 90:
        opened = _HALF
        a, left, right = Point(0, _UP), Point(-_HALF, 0), Point(_HALF, 0)
        plan.lines.append(("line", Point(Fraction(-14, 5), 0), c))
        plan.lines.append(("drawn", centre, Point(0, _UP + _BEYOND)))
        plan.cross(centre, opened, left)
        if not figure.halved:
            plan.cross(centre, opened, right)
        plan.cross(left, _OPENED, a)
        plan.cross(right, _OPENED, a)
    else:
        plan.lines += [("line", centre, c), ("line", centre, a)]
    plan.points += [a, centre, c]
    if figure.halved:
        plan.arcs.append((centre, opened, -6.0, float(size) + 6.0))
    for _ in range(figure.halved):
        size /= 2
        share = Fraction(3, 4) if figure.shape == "equilateral triangle" else Fraction(1)
        compass = opened * (share if size <= 50 else Fraction(3, 2))
        near, far = _along(first, opened), _along(last, opened)
        last = unit_point(size / 360)
        at = _along(last, _reached(opened, compass, size))
        plan.cross(near, compass, at)
        plan.cross(far, compass, at)
        long = max(_ARM, _past(at))
        plan.lines.append(("drawn", centre, _along(last, long)))
        plan.points.append(at)


def _reached(opened: Fraction, compass: Fraction, half: Fraction) -> Fraction:
    """Return how far from the vertex equal arcs cross, to less than any printer can show."""
    turn = math.radians(float(half))
    aside = float(opened) * math.sin(turn)
    far = float(opened) * math.cos(turn) + math.sqrt(float(compass) ** 2 - aside**2)
    return Fraction(round(far * _FINE), _FINE)


def _past(at: Point) -> Fraction:
    """Return a length that reaches past a point from the vertex."""
    return Fraction(round(math.hypot(float(at.x), float(at.y)) * 10), 10) + _BEYOND
