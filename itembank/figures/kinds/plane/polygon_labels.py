"""Where the labels of a polygon stand: its sides, angles, corners and height."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import TYPE_CHECKING

from itembank.figures.drawing import Content
from itembank.figures.figure import NOT_ACCURATE
from itembank.figures.kinds.labels.near_marks import GAP, Near, unit
from itembank.figures.kinds.labels.placed_labels import Sheet, half_size
from itembank.figures.kinds.labels.tried_places import beside, between
from itembank.figures.kinds.plane.polygon_scaled import Scaled

if TYPE_CHECKING:
    from itembank.figures.kinds.plane.polygon import Height, Polygon


ARC = 0.7


def placed_labels(sheet: Sheet, figure: Polygon, placed: Scaled, foot: Near | None) -> None:
    """Put all labels, or as many as have a place; the polygon is drawn larger then, or refused."""
    _angle_labels(sheet, figure, placed)
    if figure.height is not None and foot is not None and not sheet.crowded:
        _height_label(sheet, figure.height, placed, foot)
    if not sheet.crowded:
        _side_labels(sheet, figure, placed)
    if figure.lettered and not sheet.crowded:
        _letters(sheet, placed)
    if not figure.accurate and not sheet.crowded:
        sheet.below(NOT_ACCURATE, "not accurate")


def _angle_labels(sheet: Sheet, figure: Polygon, placed: Scaled) -> None:
    at = placed.at
    for corner, label in figure.angles:
        # Nearer to its own corner than to the others, or it would be taken for theirs; the middle
        # of a wide label may be as near to another.
        first, last = placed.around(corner)
        around = between(
            label,
            at[corner],
            placed.rays(corner),
            ARC,
            4.0,
            2.4,
            long=(math.dist(at[corner], at[first]), math.dist(at[corner], at[last])),
            others=[spot for name, spot in at.items() if name != corner],
            much=1.2 if half_size(label)[0] < 1.5 else 1.0,
        )
        sheet.put(label, (place for place in around if _inside(placed, place)), "angle label")
        if sheet.crowded:
            return


def _height_label(sheet: Sheet, height: Height, placed: Scaled, foot: Near) -> None:
    label, top = height.label, placed.at[height.corner]
    if label is None:
        return
    ux, uy = unit(foot, top)
    places = beside(label, foot, top, (-uy, ux)) + beside(label, foot, top, (uy, -ux))
    # Past a side it would seem to be that side's own label.
    inside = _inside(placed, ((foot[0] + top[0]) / 2, (foot[1] + top[1]) / 2))
    within = (place for place in places if _inside(placed, place) == inside)
    sheet.put(label, within, "height label")


def _side_labels(sheet: Sheet, figure: Polygon, placed: Scaled) -> None:
    outward = 1 if placed.shape.twice_area < 0 else -1
    for name, label in figure.sides:
        side = placed.shape.side(name)
        a, b = placed.at[side[0]], placed.at[side[1]]
        ux, uy = unit(a, b)
        places = beside(label, a, b, (-uy * outward, ux * outward))
        # In a notch a place may be nearer to another side, and would be read as that one's.
        kept = (place for place in places if _nearest(label, place, side, placed))
        sheet.put(label, kept, "side label")
        if sheet.crowded:
            return


def _letters(sheet: Sheet, placed: Scaled) -> None:
    for corner in placed.shape.letters:
        (first_x, first_y), _ = placed.rays(corner)
        turn = math.atan2(first_y, first_x) + math.radians(placed.degrees(corner) / 2)
        sheet.put(corner, _outside(corner, placed.at[corner], turn + math.pi), "corner")
        if sheet.crowded:
            return


def _outside(corner: str, at: Near, turn: float) -> Iterator[Near]:
    """Yield places for the letter of a corner, in a direction and beside it, near ones first."""
    w, h = half_size(corner)
    for more in (GAP, 3 * GAP):
        for aside in (0, 0.5, -0.5, 1.0, -1.0):
            x, y = math.cos(turn + aside), math.sin(turn + aside)
            far = w * abs(x) + h * abs(y) + more
            yield at[0] + x * far, at[1] + y * far


def _nearest(label: Content, place: Near, side: str, placed: Scaled) -> bool:
    """Tell whether a label is nearer to a side than to every other."""
    at = placed.at
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
    # No part of a label is farther from its middle than half a diagonal.
    plainly = own[0] + math.hypot(w, h) + 1e-3
    return all(
        from_segment(place, at[name[0]], at[name[1]]) > plainly or own < far(name)
        for name in placed.shape.sides
        if name != side
    )


def from_segment(place: Near, a: Near, b: Near) -> float:
    """Return how far a place is from a segment.

    >>> from_segment((1.0, 2.0), (0.0, 0.0), (4.0, 0.0)), from_segment((7.0, 4.0), (0, 0), (4, 0))
    (2.0, 5.0)
    """
    wx, wy = b[0] - a[0], b[1] - a[1]
    part = ((place[0] - a[0]) * wx + (place[1] - a[1]) * wy) / (wx * wx + wy * wy)
    part = max(0.0, min(1.0, part))
    return math.hypot(a[0] + part * wx - place[0], a[1] + part * wy - place[1])


def _inside(placed: Scaled, place: Near) -> bool:
    """Tell whether a place is inside the outline: a ray from it meets the sides an odd number."""
    x, y = place
    inside = False
    corners = [*placed.at.values()]
    c, d = corners[-1]
    for end in corners:
        a, b = c, d
        c, d = end
        if (b > y) != (d > y) and x < a + (c - a) * (y - b) / (d - b):
            inside = not inside
    return inside
