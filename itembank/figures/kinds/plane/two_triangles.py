"""Two triangles side by side, some sides and angles told: whether and why they are congruent.

They are not drawn accurately: what their labels say together settles what is asked.

>>> from itembank.notation.parse import parse
>>> spots = tuple((t.Int(x), t.Int(y)) for x, y in ((0, 0), (7, 0), (3, 4)))
>>> def triangle(names, told):
...     sides = tuple((side, parse(label)) for side, label in told.items())
...     return Polygon(spots, names, lettered=True, sides=sides, accurate=False)
>>> pair = TwoTriangles(
...     triangle("ABC", {"AB": "7 cm", "BC": "6 cm", "CA": "5 cm"}),
...     triangle("PQR", {"PQ": "7 cm", "QR": "6 cm", "RP": "5 cm"}),
... )
>>> read(pair, Reading("condition"))
Label(text='SSS')
"""

from __future__ import annotations

import dataclasses
import re
from fractions import Fraction

from itembank.data_class import dataclass
from itembank.figures.drawing import Arc, Area, Drawing, Mark, Point, Stroke, Text, drawing
from itembank.figures.figure import (
    NOT_ACCURATE,
    Asked,
    Figure,
    FigureError,
    FigureKind,
    Reading,
    Wording,
    asks_reading,
    kind_of,
    not_shown,
    read,
    register_figure,
)
from itembank.figures.kinds.labels.placed_labels import Sheet
from itembank.figures.kinds.labels.tried_sizes import has_room
from itembank.figures.kinds.plane.congruence import Told, condition, partner_value
from itembank.figures.kinds.plane.polygon import Polygon
from itembank.figures.kinds.plane.polygon_drawn import laid_out_by, sheet_within
from itembank.figures.kinds.plane.polygon_faults import polygon_fault
from itembank.figures.kinds.plane.polygon_shape import shape_of
from itembank.figures.kinds.unknown_asked import FIND
from itembank.figures.written_as import in_unit, unit_of
from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.once import once

__all__ = ["TWO_TRIANGLES", "TwoTriangles", "read"]

_SIZES = ((4, 5), (5, 5), (4, 6), (5, 6), (6, 6), (5, 7), (6, 7))
"""Room for the outline of each, in ems: the first in which all labels have a place is taken."""
_GAP = Fraction(1)


@dataclass(frozen=True, slots=True)
class TwoTriangles(Figure):
    """Two triangles whose corners have letters, all of them different, labelled with numbers."""

    first: Polygon
    second: Polygon


def _fault(figure: TwoTriangles) -> str:
    for triangle, which in ((figure.first, "first"), (figure.second, "second")):
        if wrong := polygon_fault(triangle):
            return f"of the {which} one {wrong}"
        if len(triangle.corners) != 3 or not triangle.lettered or triangle.accurate:
            return f"the {which} one is to be a triangle with letters, not drawn accurately"
        if triangle.equal or triangle.parallel or triangle.height is not None:
            return f"the {which} one is to have no marks but labels and right angles"
        labels = [label for _, label in (*triangle.sides, *triangle.angles)]
        if any(t.symbols(label) for label in labels):
            return f"the labels of the {which} one are to be numbers"
    if {*shape_of(figure.first).letters} & {*shape_of(figure.second).letters}:
        return "the two have a letter in common"
    if len({unit_of(label) for label in _lengths(figure)}) > 1:
        return "their lengths are to be in one unit"
    return "there is no room for its labels" if _without_room(figure) else ""


def _lengths(figure: TwoTriangles) -> list[t.Node]:
    return [label for _, label in (*figure.first.sides, *figure.second.sides)]


def _sheets(figure: TwoTriangles) -> tuple[list[Mark], list[Mark]] | None:
    """Return the marks of both at the least size in which all labels have a place."""
    for room in _SIZES:
        if sheets := _both_fit(figure, room):
            return sheets[0].marks, sheets[1].marks
    return None


def _without_room(figure: TwoTriangles) -> bool:
    """Tell whether some label has no place, whatever the size."""
    shape = ("two triangles", laid_out_by(figure.first), laid_out_by(figure.second))
    return not has_room(shape, lambda: any(_both_fit(figure, room) for room in reversed(_SIZES)))


def _both_fit(figure: TwoTriangles, room: tuple[int, int]) -> tuple[Sheet, Sheet] | None:
    """Return the sheets of both if all their labels have a place in so much room for each."""
    first, second = _plain(figure)
    sheet = sheet_within(first, room)
    if sheet.crowded:
        return None
    other = sheet_within(second, room)
    return None if other.crowded else (sheet, other)


@once
def _plain(figure: TwoTriangles) -> tuple[Polygon, Polygon]:
    """Return both without the words below them, which stand once under both."""
    first, second = (
        dataclasses.replace(triangle, accurate=True) for triangle in (figure.first, figure.second)
    )
    return first, second


def _drawing(figure: TwoTriangles) -> Drawing:
    sheets = _sheets(figure)
    assert sheets is not None
    left, right = map(drawing, sheets)
    across = left.right + _GAP - right.left
    marks = [*left.marks, *(_moved(mark, across) for mark in right.marks)]
    low = min(left.bottom, right.bottom) - Fraction(3, 10)
    middle = (left.left + right.right + across) / 2
    marks.append(Text(Point(middle, low), NOT_ACCURATE, up="top", role="not accurate"))
    return drawing(marks)


def _moved(mark: Mark, x: Fraction) -> Mark:
    """Return a mark so far to the right."""

    def there(point: Point) -> Point:
        return Point(point.x + x, point.y)

    match mark:
        case Text():
            return dataclasses.replace(mark, at=there(mark.at))
        case Arc():
            ends = there(mark.start), there(mark.end)
            return dataclasses.replace(mark, centre=there(mark.centre), start=ends[0], end=ends[1])
        case Stroke() | Area():
            return dataclasses.replace(mark, points=tuple(map(there, mark.points)))


def _words(figure: TwoTriangles) -> str:
    said = [
        kind_of(triangle).words(dataclasses.replace(triangle, accurate=True))
        for triangle in (figure.first, figure.second)
    ]
    return f"Two triangles stand side by side. {' '.join(said)} {NOT_ACCURATE}."


def told_of(triangle: Polygon) -> Told:
    """Return what is told of a triangle: sides and angles by the number of their corner.

    A side bears the number of the corner across from it; its length is in the base unit.
    """
    letters = shape_of(triangle).letters
    sides = {
        next(k for k, letter in enumerate(letters) if letter not in side): exact(label)
        for side, label in triangle.sides
    }
    angles = {
        letters.index(corner): exact(label)
        for corner, label in triangle.angles
        if isinstance(label, t.Quantity)
    }
    angles |= {letters.index(corner): Fraction(90) for corner in triangle.right}
    return Told(sides, angles)


def _part(figure: TwoTriangles, reading: Reading) -> tuple[int, str, int]:
    """Return of which triangle a side or an angle is, and the number of its corner."""
    name = reading.of[0].upper()
    for which, triangle in enumerate((figure.first, figure.second)):
        shape = shape_of(triangle)
        if reading.name == "side" and len(name) == 2 and (side := shape.side(name)):
            return which, "side", next(k for k in range(3) if shape.letters[k] not in side)
        if reading.name == "angle" and (corner := shape.angle(name)):
            return which, "angle", shape.letters.index(corner)
    raise not_shown(reading)


def _read(figure: TwoTriangles, reading: Reading) -> t.Node:
    told = told_of(figure.first), told_of(figure.second)
    if reading == Reading("condition"):
        found = condition(*told)
        if not found:
            raise not_shown(reading)
        return t.Label(found)
    if len(reading.of) != 1:
        raise not_shown(reading)
    which, kind, at = _part(figure, reading)
    value = partner_value(told[which], told[1 - which], kind, at)
    if value is None:
        raise not_shown(reading)
    if kind == "angle":
        return in_unit(value, "°")
    return next(label for label in _lengths(figure) if exact(label) == value)


def _readings(figure: TwoTriangles) -> tuple[Reading, ...]:
    maybe = [Reading("condition")]
    for triangle in (figure.first, figure.second):
        shape = shape_of(triangle)
        maybe += [Reading("side", (side,)) for side in shape.sides]
        maybe += [Reading("angle", (corner,)) for corner in shape.letters]
    found = []
    for reading in maybe:
        try:
            _read(figure, reading)
        except FigureError:
            continue
        found.append(reading)
    return tuple(found)


def _printed(figure: TwoTriangles) -> tuple[t.Node, ...]:
    both = figure.first, figure.second
    return tuple(node for triangle in both for node in kind_of(triangle).printed(triangle))


def _condition(figure: TwoTriangles, found: re.Match[str]) -> Asked:
    return Asked(t.Sym("r"), (("r", Reading("condition")),))


TWO_TRIANGLES = register_figure(
    FigureKind(
        "two triangles",
        TwoTriangles,
        fault=_fault,
        bears=dict.fromkeys(("first", "second"), (t.Quantity,)),
        drawing=_drawing,
        words=_words,
        printed=_printed,
        readings=_readings,
        read=_read,
        wordings=(
            Wording(
                r"which condition shows that the (?:two )?triangles are congruent: "
                r"SSS, SAS, ASA, RHS or none",
                _condition,
            ),
            Wording(
                rf"{FIND} the length of (?:the )?(?:side )?(?P<name>[a-z]{{2}})",
                asks_reading("side", "name"),
            ),
            Wording(
                rf"{FIND} (?:the size of )?(?:the )?angle (?:at )?(?P<name>[a-z]|[a-z]{{3}})",
                asks_reading("angle", "name"),
            ),
        ),
        accurate=lambda figure: False,
    )
)
