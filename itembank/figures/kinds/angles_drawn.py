"""The drawing of angles: lines and rays at their true directions, an arc and a label in each."""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache
from itertools import pairwise
from typing import TYPE_CHECKING

from itembank.figures.circle_points import in_direction, unit_point
from itembank.figures.drawing import Arc, Exact, Mark, Point, Stroke
from itembank.figures.figure import NOT_ACCURATE
from itembank.figures.kinds.near_marks import Near, exactly
from itembank.figures.kinds.placed_labels import Sheet
from itembank.figures.kinds.tried_places import between
from itembank.once import once

if TYPE_CHECKING:
    from itembank.figures.kinds.angles import Angles

_RAYS = tuple(Fraction(k, 2) for k in range(5, 13))
"""How long rays are, in ems: the first with which every label has a place is taken."""
_APART, _BEYOND, _HALF = Fraction(4), Fraction(8, 5), Fraction(7)
"""The most that parallel lines are apart, the line across reaches beyond, and half of one is."""
_SQUARE = Fraction(2, 5)
_HEAD = Fraction(11, 50)

Sector = tuple[Point, int, int]
"""An angle: its vertex, and the directions in degrees it goes between, anticlockwise."""


@once
@lru_cache(maxsize=512)
def angles_sheet(figure: Angles) -> Sheet:
    """Return the marks of a figure of angles, as small as its labels allow."""
    sheet = Sheet(())
    for ray in _RAYS:
        sheet = _sheet(figure, ray)
        if not sheet.crowded:
            break
    return sheet


def _sheet(figure: Angles, ray: Fraction) -> Sheet:
    lines, sectors = _lines(figure, ray)
    marks: list[Mark] = [*lines]
    arcs = [Fraction(7, 10)] * len(sectors)
    for number, (vertex, start, end) in enumerate(sectors, 1):
        ends = (in_direction(vertex, 1, start), in_direction(vertex, 1, end))
        if number in figure.right:
            marks.append(_square(vertex, start, end))
        elif any(number == each for each, _ in figure.labels):
            # Angles side by side have arcs of two sizes, so that each is seen to end.
            arcs[number - 1] = Fraction(7 if number % 2 else 8, 10)
            marks.append(Arc(vertex, arcs[number - 1], *ends, "angle", weight="thin"))
    sheet, long = Sheet(marks), float(ray)
    for number, label in sorted(figure.labels, key=lambda each: _span(sectors[each[0] - 1])):
        vertex, start, end = sectors[number - 1]
        first, other = (_near(unit_point(Fraction(turn, 360))) for turn in (start, end))
        at = _near(vertex)
        # Nearer to its own crossing than to the other, or it would be taken for that one's.
        others = {_near(other) for other, _, _ in sectors} - {at}
        places = between(
            label,
            at,
            (first, other),
            float(arcs[number - 1]),
            long * 0.85,
            long * 0.36,
            long=(long, long) if len(sectors) < 8 else (0, 0),
            others=[*others],
        )
        sheet.put(label, places, "angle label")
        if sheet.crowded:
            return sheet  # it is drawn larger, or refused
    if not figure.accurate:
        sheet.below(NOT_ACCURATE, "not accurate")
    return sheet


def _span(sector: Sector) -> int:
    return (sector[2] - sector[1]) % 360


def _near(point: tuple[Exact, Exact]) -> Near:
    return float(point[0]), float(point[1])


def _square(vertex: Point, start: int, end: int) -> Stroke:
    first = in_direction(vertex, _SQUARE, start)
    last = in_direction(vertex, _SQUARE, end)
    corner = Point(first.x + last.x - vertex.x, first.y + last.y - vertex.y)
    return Stroke((first, corner, last), "right angle", "thin")


def _lines(figure: Angles, ray: Fraction) -> tuple[list[Stroke], list[Sector]]:
    centre, turn = Point(0, 0), figure.turn
    if figure.arrangement in ("line", "point"):
        at = (180 if figure.arrangement == "line" else 90) + turn
        sectors, strokes = [], []
        directions = [at]
        for size in figure.sizes:
            sectors.append((centre, (at - size) % 360, at % 360))
            at -= size
            directions.append(at)
        if figure.arrangement == "line":
            ends = (in_direction(centre, ray, directions[0]), in_direction(centre, ray, at))
            strokes.append(Stroke(ends, "line"))
            directions = directions[1:]
        strokes += [
            Stroke((centre, in_direction(centre, ray, way)), "ray") for way in directions[:-1]
        ]
        return strokes, sectors
    (size,) = figure.sizes
    across = turn + size

    def round_(vertex: Point) -> list[Sector]:
        ways = [turn, across, turn + 180, across + 180, turn + 360]
        return [(vertex, a % 360, b % 360) for a, b in pairwise(ways)]

    def through(vertex: Point, way: int, far: Exact, role: str) -> Stroke:
        ends = (in_direction(vertex, far, way + 180), in_direction(vertex, far, way))
        return Stroke(ends, role)

    if figure.arrangement == "crossing":
        strokes = [through(centre, turn, ray, "line"), through(centre, across, ray, "line")]
        return strokes, round_(centre)
    # Wide labels need longer lines, and no more room between them.
    apart = min(ray * Fraction(6, 5), _APART) / unit_point(Fraction(size, 360)).y
    beyond = min(ray / 2, _BEYOND)
    upper = in_direction(centre, apart, across)
    middle = in_direction(centre, apart / 2, across)
    strokes = [through(middle, across, apart / 2 + beyond, "line")]
    for vertex in (upper, centre):
        # Both lines begin and end side by side, whatever the slant of what crosses them.
        far = min(ray * 2, _HALF)
        step = (middle.x - vertex.x, middle.y - vertex.y)
        ux, uy = unit_point(Fraction(turn % 360, 360))
        along = step[0] * ux + step[1] * uy
        mid = Point(vertex.x + along * ux, vertex.y + along * uy)
        strokes.append(through(mid, turn, far, "line"))
        tip = in_direction(mid, far - Fraction(1, 2), turn)
        strokes.append(_head(tip, turn))
    return strokes, round_(upper) + round_(centre)


def _head(tip: Point, way: int) -> Stroke:
    x, y = _near(tip)
    ux, uy = _near(unit_point(Fraction(way % 360, 360)))
    size = float(_HEAD)
    back = (x - ux * size, y - uy * size)
    ends = (
        exactly(back[0] - uy * size, back[1] + ux * size),
        tip,
        exactly(back[0] + uy * size, back[1] - ux * size),
    )
    return Stroke(ends, "arrowhead")
