"""The drawing of a polygon: its outline, marks, height and labels, as large as labels need."""

from __future__ import annotations

import math
from fractions import Fraction
from functools import lru_cache
from typing import TYPE_CHECKING

from itembank.figures.drawing import Arc, Area, Content, Mark, Point, Stroke
from itembank.figures.figure import NOT_ACCURATE
from itembank.figures.kinds.placed_labels import (
    GAP,
    Near,
    Sheet,
    beside,
    between,
    exactly,
    half_size,
    reach,
    unit,
)
from itembank.figures.kinds.polygon_shape import Shape, Spot, shape_of
from itembank.once import once

if TYPE_CHECKING:
    from itembank.figures.kinds.polygon import Polygon

_SIZES = ((9, 4), (11, 5), (12, 6), (13, 8), (15, 8))
"""Room for the outline, in ems: the first in which every label has a place is taken."""
_ARC = Fraction(7, 10)
_SQUARE = 0.4
_DASH = 0.22


@once
@lru_cache(maxsize=512)
def polygon_sheet(figure: Polygon) -> Sheet:
    """Return the marks of a polygon at the least size at which all labels have a place."""
    sheet = Sheet(())
    for wide, high in _SIZES:
        sheet = _sheet(figure, wide, high)
        if not sheet.homeless:
            break
    return sheet


def _sheet(figure: Polygon, wide: int, high: int) -> Sheet:
    shape = shape_of(figure)
    xs, ys = zip(*shape.corners, strict=True)
    scale = min(Fraction(wide) / (max(xs) - min(xs)), Fraction(high) / (max(ys) - min(ys)))
    placed = Shape(
        shape.letters,
        tuple(((x - min(xs)) * scale, (y - min(ys)) * scale) for x, y in shape.corners),
    )
    at = {letter: (float(x), float(y)) for letter, (x, y) in _pairs(placed)}
    marks: list[Mark] = [Area(tuple(Point(x, y) for x, y in placed.corners), "polygon")]
    marks += [_square(at[c], *placed.near_rays(c), "right angle") for c in figure.right]
    for number, group in enumerate(figure.equal, 1):
        for side in group:
            marks += _dashes(at[side[0]], at[side[1]], number)
    for number, group in enumerate(figure.parallel, 1):
        shift = 0.8 if any(figure.equal) else 0.0
        first = placed.way(placed.side(group[0]))
        for side in group:
            name = placed.side(side)
            x, y = placed.way(name)
            along = first[0] * x + first[1] * y > 0
            ends = name if along else name[::-1]
            marks += _arrows(at[ends[0]], at[ends[1]], number, shift)
    foot: Near | None = None
    if figure.height is not None:
        made, foot = _height(figure, placed)
        marks += made
    for corner, _ in figure.angles:
        (a, b), (c, d) = placed.rays(corner)
        x, y = placed.spot(corner)
        marks.append(
            Arc(Point(x, y), _ARC, Point(x + a, y + b), Point(x + c, y + d), "angle", weight="thin")
        )
    sheet = Sheet(marks)
    _labels(sheet, figure, placed, at, foot)
    return sheet


def _pairs(shape: Shape) -> list[tuple[str, Spot]]:
    return list(zip(shape.letters, shape.corners, strict=True))


def _square(at: Near, first: Near, other: Near, role: str) -> Stroke:
    (x, y), s = at, _SQUARE
    path = (
        (x + s * first[0], y + s * first[1]),
        (x + s * (first[0] + other[0]), y + s * (first[1] + other[1])),
        (x + s * other[0], y + s * other[1]),
    )
    return Stroke(tuple(exactly(*point) for point in path), role, "thin")


def _dashes(a: Near, b: Near, number: int) -> list[Mark]:
    (ux, uy), x, y = unit(a, b), (a[0] + b[0]) / 2, (a[1] + b[1]) / 2
    out: list[Mark] = []
    for k in range(number):
        far = 0.24 * (k - (number - 1) / 2)
        cx, cy = x + ux * far, y + uy * far
        ends = ((cx - uy * _DASH, cy + ux * _DASH), (cx + uy * _DASH, cy - ux * _DASH))
        out.append(Stroke(tuple(exactly(*end) for end in ends), "dash"))
    return out


def _arrows(a: Near, b: Near, number: int, shift: float) -> list[Mark]:
    (ux, uy), x, y = unit(a, b), (a[0] + b[0]) / 2, (a[1] + b[1]) / 2
    out: list[Mark] = []
    for k in range(number):
        far = 0.3 * (k - (number - 1) / 2) + shift
        tip = (x + ux * (far + 0.12), y + uy * (far + 0.12))
        back = (x + ux * (far - 0.12), y + uy * (far - 0.12))
        path = (
            (back[0] - uy * _DASH, back[1] + ux * _DASH),
            tip,
            (back[0] + uy * _DASH, back[1] - ux * _DASH),
        )
        out.append(Stroke(tuple(exactly(*point) for point in path), "arrowhead"))
    return out


def _height(figure: Polygon, shape: Shape) -> tuple[list[Mark], Near]:
    assert figure.height is not None
    side = shape.side(figure.height.side)
    (ax, ay), (cx, cy) = shape.spot(side[0]), shape.spot(figure.height.corner)
    wx, wy = shape.way(side)
    part = Fraction((cx - ax) * wx + (cy - ay) * wy) / shape.square(side)
    foot = Point(ax + part * wx, ay + part * wy)
    marks: list[Mark] = [Stroke((Point(cx, cy), foot), "height", dashed=True)]
    if not 0 <= part <= 1:
        near = shape.spot(side[0] if part < 0 else side[1])
        marks.append(Stroke((Point(*near), foot), "base made longer", "thin", dashed=True))
    at = (float(foot.x), float(foot.y))
    up = unit(at, (float(cx), float(cy)))
    # The square stands on the longer part of the side, which is always drawn.
    far_end = shape.spot(side[1] if part < Fraction(1, 2) else side[0])
    along = unit(at, (float(far_end[0]), float(far_end[1])))
    marks.append(_square(at, along, up, "height right angle"))
    return marks, at


def _labels(
    sheet: Sheet, figure: Polygon, shape: Shape, at: dict[str, Near], foot: Near | None
) -> None:
    outward = 1 if shape.twice_area < 0 else -1
    edges = [(at[side[0]], at[side[1]]) for side in shape.sides]
    for corner, label in figure.angles:
        rays = shape.near_rays(corner)
        around = between(label, at[corner], *rays, float(_ARC), 4.0, 2.4)
        # Nearer to its own corner than to the others, or it would be taken for theirs; the middle
        # of a wide label may be as near to another.
        much = 1.2 if half_size(label)[0] < 1.5 else 1.0
        others = [spot for name, spot in at.items() if name != corner]
        # Looked at one by one: mostly the first is free.
        kept = (
            place
            for place in around
            if _inside(edges, place) and _nearer(place, at[corner], others, much)
        )
        sheet.put(label, kept, "angle label")
        if sheet.homeless:
            return  # it is drawn larger, or refused; and so below
    if figure.height is not None and figure.height.label is not None and foot is not None:
        label, top = figure.height.label, at[figure.height.corner]
        ux, uy = unit(foot, top)
        places = beside(label, foot, top, (-uy, ux)) + beside(label, foot, top, (uy, -ux))
        # Past a side it would seem to be that side's own label.
        inside = _inside(edges, ((foot[0] + top[0]) / 2, (foot[1] + top[1]) / 2))
        within = (place for place in places if _inside(edges, place) == inside)
        sheet.put(label, within, "height label")
        if sheet.homeless:
            return
    for name, label in figure.sides:
        side = shape.side(name)
        ux, uy = unit(at[side[0]], at[side[1]])
        way = (-uy * outward, ux * outward)
        places = beside(label, at[side[0]], at[side[1]], way)
        # In a notch a place may be nearer to another side, and would be read as that one's.
        kept = (place for place in places if _nearest(label, place, side, shape, at))
        sheet.put(label, kept, "side label")
        if sheet.homeless:
            return
    if figure.lettered:
        for corner in shape.letters:
            first, _ = shape.near_rays(corner)
            turn = math.atan2(first[1], first[0]) + math.radians(shape.degrees(corner) / 2)
            x, y = at[corner]
            turns = [turn + math.pi + more for more in (0, 0.5, -0.5, 1.0, -1.0)]
            ways = [(math.cos(each), math.sin(each)) for each in turns]
            places = [
                (
                    x + wx * (reach(corner, (wx, wy)) + more),
                    y + wy * (reach(corner, (wx, wy)) + more),
                )
                for more in (GAP, 3 * GAP)
                for wx, wy in ways
            ]
            sheet.put(corner, places, "corner")
            if sheet.homeless:
                return
    if not figure.accurate:
        sheet.below(NOT_ACCURATE, "not accurate")


def _nearest(label: Content, place: Near, side: str, shape: Shape, at: dict[str, Near]) -> bool:
    """Tell whether a label is nearer to a side than to every other."""
    w, h = half_size(label)
    left, bottom, right, top = place[0] - w, place[1] - h, place[0] + w, place[1] + h
    box = ((left, bottom), (right, bottom), (right, top), (left, top))

    def far(name: str) -> tuple[float, float]:
        a, b = at[name[0]], at[name[1]]
        gaps = [from_segment(corner, a, b) for corner in box]
        gaps += [
            math.hypot(max(left - x, 0, x - right), max(bottom - y, 0, y - top)) for x, y in (a, b)
        ]
        middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
        # Two sides may be as near where they meet; then their middles tell. Ordinary numbers that
        # differ by so little are equal.
        return round(min(gaps), 6), math.dist(middle, place)

    own = far(side)
    return all(own < far(name) for name in shape.sides if name != side)


def from_segment(place: Near, a: Near, b: Near) -> float:
    """Return how far a place is from a segment.

    >>> from_segment((1.0, 2.0), (0.0, 0.0), (4.0, 0.0)), from_segment((7.0, 4.0), (0, 0), (4, 0))
    (2.0, 5.0)
    """
    wx, wy = b[0] - a[0], b[1] - a[1]
    part = ((place[0] - a[0]) * wx + (place[1] - a[1]) * wy) / (wx * wx + wy * wy)
    part = max(0.0, min(1.0, part))
    return math.hypot(a[0] + part * wx - place[0], a[1] + part * wy - place[1])


def _nearer(place: Near, own: Near, others: list[Near], much: float) -> bool:
    """Tell whether a place is so much nearer to one corner than to every other."""
    mine = much * math.dist(place, own)
    return all(mine <= math.dist(place, far) for far in others)


def _inside(edges: list[tuple[Near, Near]], place: Near) -> bool:
    """Tell whether a place is inside the outline: a ray from it meets the sides an odd number."""
    x, y = place
    count = 0
    for (a, b), (c, d) in edges:
        if (b > y) != (d > y) and x < a + (c - a) * (y - b) / (d - b):
            count += 1
    return count % 2 == 1
