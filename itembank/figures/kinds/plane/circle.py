"""A circle with its radius or its diameter, or a sector with its radius and angle."""

from __future__ import annotations

import re
from fractions import Fraction
from functools import partial

from itembank.data_class import dataclass
from itembank.figures.circle_points import in_direction
from itembank.figures.drawing import Arc, Drawing, Mark, Point, Stroke, drawing
from itembank.figures.figure import (
    Asked,
    Figure,
    FigureError,
    FigureKind,
    Reading,
    Wording,
    asks_reading,
    not_shown,
    register_figure,
)
from itembank.figures.kinds.labels.labelled_lengths import lengths_fault
from itembank.figures.kinds.labels.near_marks import Near
from itembank.figures.kinds.labels.placed_labels import Sheet, half_size
from itembank.figures.kinds.labels.tried_places import beside, between
from itembank.figures.kinds.labels.tried_sizes import homeless_in_all, least_sheet
from itembank.figures.kinds.unknown_asked import FIND
from itembank.figures.written_as import in_unit, of_pi, unit_of
from itembank.notation import tree as t
from itembank.notation.tree.written import shown_line
from itembank.notation.units import UNITS
from itembank.notation.value import exact
from itembank.notation.words import words as said
from itembank.once import once

_RADII = (Fraction(2), Fraction(5, 2), Fraction(3), Fraction(4), Fraction(5))
_DOT = Fraction(7, 100)
LEAST_SECTOR = 20


@dataclass(frozen=True, slots=True)
class Circle(Figure):
    """A whole circle, or with `sector` a slice of so many degrees, its lengths labelled.

    >>> from itembank.notation.parse import parse
    >>> Circle(radius=parse("5 cm")).sector
    0
    """

    radius: t.Node | None = None
    diameter: t.Node | None = None
    sector: int = 0


def _fault(figure: Circle) -> str:
    given = [length for length in (figure.radius, figure.diameter) if length is not None]
    if not given:
        return "it needs a radius or a diameter"
    if fault := lengths_fault(given, "its lengths"):
        return fault
    values = [exact(length) for length in given]
    if len(values) == 2 and values[1] != 2 * values[0]:
        return f"its diameter {shown_line(given[1])} is not twice its radius {shown_line(given[0])}"
    if figure.sector and not LEAST_SECTOR <= figure.sector <= 360 - LEAST_SECTOR:
        return f"a sector may have {LEAST_SECTOR} to {360 - LEAST_SECTOR} degrees"
    if figure.sector and figure.diameter is not None:
        return "a sector shows its radius, not a diameter"
    if lost := homeless_in_all(partial(_at, figure), _RADII, _shape(figure)):
        return f"there is no room for the label {lost[0]}"
    return ""


@once
def _sheet(figure: Circle) -> Sheet:
    return least_sheet(partial(_at, figure), _RADII)


def _shape(figure: Circle) -> tuple[object, ...]:
    """Return what the layout hangs on: how large the labels are, and not what they say."""
    sizes = [
        None if label is None else half_size(label) for label in (figure.radius, figure.diameter)
    ]
    return "circle", *sizes, figure.sector


def _at(figure: Circle, radius: Fraction) -> Sheet:
    return _sector(figure, radius) if figure.sector else _whole(figure, radius)


def _near(point: Point) -> Near:
    return float(point.x), float(point.y)


def _whole(figure: Circle, radius: Fraction) -> Sheet:
    centre = Point(0, 0)
    right = Point(radius, 0)
    marks: list[Mark] = [
        Arc(centre, radius, right, right, "circle"),
        Arc(centre, _DOT, right, right, "centre", "ink"),
    ]
    # With a diameter that lies level, the radius goes up.
    end = in_direction(centre, radius, 60 if figure.diameter is not None else 0)
    left = Point(-radius, 0)
    if figure.radius is not None:
        marks.append(Stroke((centre, end), "radius"))
    if figure.diameter is not None:
        marks.append(Stroke((left, right), "diameter"))
    sheet = Sheet(marks)
    if figure.diameter is not None:
        places = beside(figure.diameter, _near(left), _near(right), (0, -1))
        sheet.put(figure.diameter, places, "diameter label")
    if figure.radius is not None:
        way = (0.0, 1.0) if figure.diameter is None else (-0.866, 0.5)
        places = beside(figure.radius, (0, 0), _near(end), way)
        sheet.put(figure.radius, places, "radius label")
    return sheet


def _sector(figure: Circle, radius: Fraction) -> Sheet:
    assert figure.radius is not None
    centre = Point(0, 0)
    start, end = in_direction(centre, radius, 0), in_direction(centre, radius, figure.sector)
    marks: list[Mark] = [
        Arc(centre, radius, start, end, "sector", sector=True),
        Arc(centre, Fraction(7, 10), start, end, "angle", weight="thin"),
    ]
    sheet = Sheet(marks)
    angle = t.Quantity(t.Int(figure.sector), "°")
    rays = (_near(start), _near(end))
    places = between(angle, (0, 0), rays, 0.7, float(radius) * 0.9)
    sheet.put(angle, places, "angle label")
    # Under the level edge; of a large sector, where that is inside, it stands there too.
    sheet.put(figure.radius, beside(figure.radius, (0, 0), _near(start), (0, -1)), "radius label")
    return sheet


def _drawing(figure: Circle) -> Drawing:
    return drawing(_sheet(figure).marks)


def _words(figure: Circle) -> str:
    if figure.sector:
        assert figure.radius is not None
        return (
            f"A sector of a circle has the radius {said(figure.radius)} and the angle "
            f"{figure.sector} degrees."
        )
    given = [
        f"the {name} {said(label)}"
        for name, label in (("radius", figure.radius), ("diameter", figure.diameter))
        if label is not None
    ]
    return f"A circle has {' and '.join(given)}."


def _read(figure: Circle, reading: Reading) -> t.Node:
    like = figure.radius if figure.radius is not None else figure.diameter
    assert like is not None
    unit = unit_of(like)
    square = f"{unit}^2" if unit else ""
    r = exact(like) if figure.radius is not None else exact(like) / 2
    if reading == Reading("radius"):
        return in_unit(r, unit)
    part = Fraction(figure.sector or 360, 360)
    if figure.sector:
        if reading == Reading("angle"):
            return t.Quantity(t.Int(figure.sector), "°")
        if reading == Reading("arc"):
            return of_pi(2 * r * part, unit)
    elif reading == Reading("diameter"):
        return in_unit(2 * r, unit)
    elif reading == Reading("circumference"):
        return of_pi(2 * r, unit)
    if reading == Reading("area") and (not square or square in UNITS):
        return of_pi(r * r * part, square)
    raise not_shown(reading)


def _readings(figure: Circle) -> tuple[Reading, ...]:
    names = ("radius", "angle", "arc") if figure.sector else ("radius", "diameter", "circumference")
    like = figure.radius if figure.radius is not None else figure.diameter
    assert like is not None
    area = not unit_of(like) or f"{unit_of(like)}^2" in UNITS
    return (*map(Reading, names), *((Reading("area"),) if area else ()))


def _printed(figure: Circle) -> tuple[t.Node, ...]:
    angle = (t.Quantity(t.Int(figure.sector), "°"),) if figure.sector else ()
    given = (figure.radius, figure.diameter)
    return (*(label for label in given if label is not None), *angle)


def _of_it(figure: Circle, found: re.Match[str]) -> Asked:
    """Return what is asked of the shape as a whole, which is called what it is."""
    called = found["shape"].casefold()
    degrees = {"circle": 0, "quarter circle": 90, "semicircle": 180}.get(called, figure.sector)
    if figure.sector != degrees or (called == "sector" and not figure.sector):
        raise FigureError(f"what it shows is no {called}")
    return Asked(t.Sym("r"), (("r", Reading(found["name"].casefold())),))


CIRCLE = register_figure(
    FigureKind(
        "circle",
        Circle,
        fault=_fault,
        bears=dict.fromkeys(("radius", "diameter"), (t.Quantity,)),
        drawing=_drawing,
        words=_words,
        printed=_printed,
        readings=_readings,
        read=_read,
        wordings=(
            Wording(
                rf"{FIND} the (?P<name>radius|diameter|circumference|area) of (?:the|this) "
                r"(?P<shape>circle|sector|semicircle|quarter circle)",
                _of_it,
            ),
            Wording(
                rf"{FIND} the (?:length of the arc|arc length)(?: of (?:the|this) sector)?",
                asks_reading("arc"),
            ),
        ),
    )
)
