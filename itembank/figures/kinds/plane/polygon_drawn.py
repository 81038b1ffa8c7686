"""The drawing of a polygon: its outline, marks, height and labels, as large as labels need."""

from __future__ import annotations

import math
from collections.abc import Iterator
from fractions import Fraction
from functools import partial
from typing import TYPE_CHECKING

from itembank.figures.drawing import Arc, Area, Mark, Stroke, Weight
from itembank.figures.kinds.labels.near_marks import Curve, Near, Path, Track, sketched, unit
from itembank.figures.kinds.labels.placed_labels import Sheet, half_size
from itembank.figures.kinds.labels.tried_sizes import homeless_in_all, least_sheet
from itembank.figures.kinds.plane.polygon_labels import ARC, placed_labels
from itembank.figures.kinds.plane.polygon_scaled import Scaled
from itembank.figures.kinds.plane.polygon_shape import shape_of
from itembank.once import once

if TYPE_CHECKING:
    from itembank.figures.kinds.plane.polygon import Polygon

_SIZES = ((9, 4), (11, 5), (12, 6), (13, 8), (15, 8))
"""Room for the outline, in ems: the first in which every label has a place is taken."""
_SQUARE = 0.4
_DASH = 0.22


@once
def polygon_sheet(figure: Polygon) -> Sheet:
    """Return the marks of a polygon at the least size at which all labels have a place."""
    return least_sheet(partial(sheet_within, figure), _SIZES)


def without_place(figure: Polygon) -> list[str]:
    """Return the labels that have no place at any size."""
    return homeless_in_all(partial(sheet_within, figure), _SIZES, laid_out_by(figure))


def laid_out_by(figure: Polygon) -> tuple[object, ...]:
    """Return what the layout hangs on: lines and marks, and how large the labels are."""
    height = figure.height
    label = height.label if height is not None else None
    return (
        "polygon",
        shape_of(figure).corners,
        (figure.names, figure.lettered, figure.accurate),
        tuple((side, half_size(label)) for side, label in figure.sides),
        tuple((corner, half_size(label)) for corner, label in figure.angles),
        (figure.right, figure.equal, figure.parallel),
        height and (height.side, height.corner, None if label is None else half_size(label)),
    )


def sheet_within(figure: Polygon, room: tuple[int, int]) -> Sheet:
    """Return the marks of a polygon whose outline has so much room, in ems."""
    placed = Scaled(shape_of(figure), *room)
    shape, at = placed.shape, placed.at
    marks: list[Track] = [_outline(placed)]
    marks += [_right_angle(placed, corner) for corner in figure.right]
    for number, group in enumerate(figure.equal, 1):
        for side in group:
            marks += _dashes(at[side[0]], at[side[1]], number)
    for number, group in enumerate(figure.parallel, 1):
        shift = 0.8 if any(figure.equal) else 0.0
        first = shape.way(shape.side(group[0]))
        for side in group:
            name = shape.side(side)
            x, y = shape.way(name)
            along = first[0] * x + first[1] * y > 0
            ends = name if along else name[::-1]
            marks += _arrows(at[ends[0]], at[ends[1]], number, shift)
    foot: Near | None = None
    if figure.height is not None:
        made, foot = _height(figure, placed)
        marks += made
    marks += [_arc(placed, corner) for corner, _ in figure.angles]
    sheet = Sheet(marks)
    placed_labels(sheet, figure, placed, foot)
    return sheet


def _outline(placed: Scaled) -> Path:
    def made() -> Mark:
        return Area(tuple(map(placed.spot, placed.shape.letters)), "polygon")

    corners = [*placed.at.values()]
    return Path([*corners, corners[0]], "normal", made)


def _arc(placed: Scaled, corner: str) -> Curve:
    first, last = placed.around(corner)

    def made() -> Mark:
        ends = placed.spot(first), placed.spot(last)
        return Arc(placed.spot(corner), Fraction(7, 10), *ends, "angle", weight="thin")

    at = placed.at
    return Curve(at[corner], ARC, (at[first], at[last]), "thin", made)


def _right_angle(placed: Scaled, corner: str) -> Path:
    letters, at = placed.shape.letters, placed.at
    k = letters.index(corner)
    legs = (math.dist(at[corner], at[letters[n % len(letters)]]) for n in (k - 1, k + 1))
    # In a narrow triangle a mark of the usual size would lie nearer to another corner.
    size = min(_SQUARE, 0.4 * min(legs))
    return _square(at[corner], *placed.rays(corner), "right angle", size)


def _square(at: Near, first: Near, other: Near, role: str, size: float = _SQUARE) -> Path:
    (x, y), s = at, size
    path = (
        (x + s * first[0], y + s * first[1]),
        (x + s * (first[0] + other[0]), y + s * (first[1] + other[1])),
        (x + s * other[0], y + s * other[1]),
    )
    return sketched(path, role, "thin")


def _dashes(a: Near, b: Near, number: int) -> Iterator[Path]:
    (ux, uy), x, y = unit(a, b), (a[0] + b[0]) / 2, (a[1] + b[1]) / 2
    for k in range(number):
        far = 0.24 * (k - (number - 1) / 2)
        cx, cy = x + ux * far, y + uy * far
        ends = ((cx - uy * _DASH, cy + ux * _DASH), (cx + uy * _DASH, cy - ux * _DASH))
        yield sketched(ends, "dash")


def _arrows(a: Near, b: Near, number: int, shift: float) -> Iterator[Path]:
    (ux, uy), x, y = unit(a, b), (a[0] + b[0]) / 2, (a[1] + b[1]) / 2
    for k in range(number):
        far = 0.3 * (k - (number - 1) / 2) + shift
        tip = (x + ux * (far + 0.12), y + uy * (far + 0.12))
        back = (x + ux * (far - 0.12), y + uy * (far - 0.12))
        path = (
            (back[0] - uy * _DASH, back[1] + ux * _DASH),
            tip,
            (back[0] + uy * _DASH, back[1] - ux * _DASH),
        )
        yield sketched(path, "arrowhead")


def _height(figure: Polygon, placed: Scaled) -> tuple[list[Track], Near]:
    assert figure.height is not None
    side, corner = placed.shape.side(figure.height.side), figure.height.corner
    (ax, ay), (bx, by), (cx, cy) = (placed.whole(letter) for letter in (*side, corner))
    wx, wy = bx - ax, by - ay
    part, whole = (cx - ax) * wx + (cy - ay) * wy, wx * wx + wy * wy
    foot = (ax * whole + part * wx, ay * whole + part * wy, whole)
    at = placed.near(*foot)

    def dashed(end: str, role: str, weight: Weight = "normal") -> Path:
        def made() -> Mark:
            return Stroke((placed.spot(end), placed.exact(*foot)), role, weight, dashed=True)

        return Path([placed.at[end], at], weight, made)

    marks: list[Track] = [dashed(corner, "height")]
    if not 0 <= part <= whole:
        marks.append(dashed(side[0] if part < 0 else side[1], "base made longer", "thin"))
    up = unit(at, placed.at[corner])
    # The square stands on the longer part of the side, which is always drawn.
    along = unit(at, placed.at[side[1] if 2 * part < whole else side[0]])
    marks.append(_square(at, along, up, "height right angle"))
    return marks, at
