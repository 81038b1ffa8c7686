"""The drawing of angles: lines and rays at their true directions, an arc and a label in each."""

from __future__ import annotations

from fractions import Fraction
from functools import partial
from itertools import pairwise
from typing import TYPE_CHECKING

from itembank.figures.drawing import Exact, Stroke
from itembank.figures.figure import NOT_ACCURATE
from itembank.figures.kinds.labels.near_marks import Path, Track, exactly, rounded
from itembank.figures.kinds.labels.placed_labels import Sheet, half_size
from itembank.figures.kinds.labels.tried_places import between
from itembank.figures.kinds.labels.tried_sizes import homeless_in_all, least_sheet
from itembank.figures.kinds.labels.whole_points import ORIGIN, Whole, arc, stroke, way
from itembank.once import once

if TYPE_CHECKING:
    from itembank.figures.kinds.plane.angles import Angles

_RAYS = tuple(Fraction(k, 2) for k in range(5, 13))
"""How long rays are, in ems: the first with which every label has a place is taken."""
_APART, _BEYOND, _HALF = Fraction(4), Fraction(8, 5), Fraction(7)
"""The most that parallel lines are apart, the line across reaches beyond, and half of one is."""
_SQUARE = Fraction(2, 5)
_HEAD = Fraction(11, 50)

Sector = tuple[Whole, int, int]
"""An angle: its vertex, and the directions in degrees it goes between, anticlockwise."""


@once
def angles_sheet(figure: Angles) -> Sheet:
    """Return the marks of a figure of angles, as small as its labels allow."""
    return least_sheet(partial(_sheet, figure), _RAYS)


def without_place(figure: Angles) -> list[str]:
    """Return the labels that have no place however long the rays are."""
    labels = tuple((number, half_size(label)) for number, label in figure.labels)
    lines = figure.arrangement, figure.sizes, figure.turn
    shape = ("angles", *lines, figure.right, labels, figure.accurate)
    return homeless_in_all(partial(_sheet, figure), _RAYS, shape)


def _sheet(figure: Angles, ray: Fraction) -> Sheet:
    lines, sectors = _lines(figure, ray)
    marks: list[Track] = [*lines]
    at = {vertex: vertex.near for vertex, _, _ in sectors}
    labelled = {number for number, _ in figure.labels}
    arcs = [Fraction(7, 10)] * len(sectors)
    for number, (vertex, start, end) in enumerate(sectors, 1):
        if number in figure.right:
            marks.append(_square(vertex, start, end))
        elif number in labelled:
            # Angles side by side have arcs of two sizes, so that each is seen to end.
            arcs[number - 1] = Fraction(7 if number % 2 else 8, 10)
            ends = (vertex.moved(1, start), vertex.moved(1, end))
            marks.append(arc(vertex, arcs[number - 1], ends, "angle", "thin"))
    sheet, long = Sheet(marks), float(ray)
    for number, label in sorted(figure.labels, key=lambda row: _span(sectors[row[0] - 1])):
        vertex, start, end = sectors[number - 1]
        # Nearer to its own crossing than to the other, or it would be taken for that one's.
        others = {*at.values()} - {at[vertex]}
        places = between(
            label,
            at[vertex],
            (way(start).near, way(end).near),
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


def _square(vertex: Whole, start: int, end: int) -> Path:
    first, last = vertex.moved(_SQUARE, start), vertex.moved(_SQUARE, end)
    return stroke((first, first.moved(_SQUARE, end), last), "right angle", "thin")


def _lines(figure: Angles, ray: Fraction) -> tuple[list[Path], list[Sector]]:
    turn = figure.turn
    if figure.arrangement in ("line", "point"):
        at = (180 if figure.arrangement == "line" else 90) + turn
        sectors, strokes = [], []
        directions = [at]
        for size in figure.sizes:
            sectors.append((ORIGIN, (at - size) % 360, at % 360))
            at -= size
            directions.append(at)
        if figure.arrangement == "line":
            ends = (ORIGIN.moved(ray, directions[0]), ORIGIN.moved(ray, at))
            strokes.append(stroke(ends, "line"))
            directions = directions[1:]
        strokes += [
            stroke((ORIGIN, ORIGIN.moved(ray, direction)), "ray") for direction in directions[:-1]
        ]
        return strokes, sectors
    (size,) = figure.sizes
    across = turn + size

    def round_(vertex: Whole) -> list[Sector]:
        ways = [turn, across, turn + 180, across + 180, turn + 360]
        return [(vertex, a % 360, b % 360) for a, b in pairwise(ways)]

    def through(vertex: Whole, degrees: int, far: Exact, role: str) -> Path:
        ends = (vertex.moved(far, degrees + 180), vertex.moved(far, degrees))
        return stroke(ends, role)

    if figure.arrangement == "crossing":
        strokes = [through(ORIGIN, turn, ray, "line"), through(ORIGIN, across, ray, "line")]
        return strokes, round_(ORIGIN)
    # Wide labels need longer lines, and no more room between them.
    up = way(size)
    apart = min(ray * Fraction(6, 5), _APART) * Fraction(up.over, up.y)
    beyond = min(ray / 2, _BEYOND)
    upper, middle = ORIGIN.moved(apart, across), ORIGIN.moved(apart / 2, across)
    strokes = [through(middle, across, apart / 2 + beyond, "line")]
    # Both lines begin and end side by side, whatever the slant of what crosses them.
    far = min(ray * 2, _HALF)
    for vertex in (upper, ORIGIN):
        mid = vertex.moved(middle.plus(vertex, -1).along(turn), turn)
        strokes.append(through(mid, turn, far, "line"))
        strokes.append(_head(mid.moved(far - Fraction(1, 2), turn), turn))
    return strokes, round_(upper) + round_(ORIGIN)


def _head(tip: Whole, degrees: int) -> Path:
    x, y = tip.near
    ux, uy = way(degrees % 360).near
    size = float(_HEAD)
    back = (x - ux * size, y - uy * size)
    ends = (
        (back[0] - uy * size, back[1] + ux * size),
        (back[0] + uy * size, back[1] - ux * size),
    )

    def made() -> Stroke:
        return Stroke((exactly(*ends[0]), tip.exact, exactly(*ends[1])), "arrowhead")

    return Path([rounded(*ends[0]), tip.near, rounded(*ends[1])], "normal", made)
