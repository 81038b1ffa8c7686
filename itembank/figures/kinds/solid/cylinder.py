"""A cylinder that stands on one of its circles, in parallel projection."""

from __future__ import annotations

import re
from fractions import Fraction
from functools import cache, partial
from math import lcm

from itembank.data_class import dataclass
from itembank.figures.circle_points import unit_point
from itembank.figures.drawing import Area, Drawing, drawing
from itembank.figures.figure import (
    Asked,
    Figure,
    FigureError,
    FigureKind,
    Reading,
    Wording,
    not_shown,
    register_figure,
)
from itembank.figures.kinds.labels.labelled_lengths import lengths_fault
from itembank.figures.kinds.labels.near_marks import Path, Track
from itembank.figures.kinds.labels.placed_labels import Sheet, half_size
from itembank.figures.kinds.labels.tried_places import beside
from itembank.figures.kinds.labels.tried_sizes import homeless_in_all, least_sheet
from itembank.figures.kinds.labels.whole_points import Whole, arc, stroke, whole
from itembank.figures.kinds.unknown_asked import FIND
from itembank.figures.written_as import in_unit, of_pi, unit_of
from itembank.notation import tree as t
from itembank.notation.units import UNITS
from itembank.notation.value import exact
from itembank.notation.words import words as said
from itembank.once import once

FLAT = Fraction(3, 10)
"""How deep a level circle is drawn, as a part of its width."""
AROUND = 48
"""How many corners stand for a circle: on a slide it is nowhere half a point off."""
MOST_RATIO = 5
_SIZES = ((6, 6), (8, 7), (9, 8), (10, 9))
"""The most room for the solid without its labels, in ems: the first that holds its labels."""
_DOT = Fraction(7, 100)


@dataclass(frozen=True, slots=True)
class Cylinder(Figure):
    """A cylinder: the radius or the diameter of its ends, and its height.

    >>> from itembank.notation.parse import parse
    >>> Cylinder(parse("8 cm"), radius=parse("5 cm")).diameter is None
    True
    """

    height: t.Node
    radius: t.Node | None = None
    diameter: t.Node | None = None


def _labels(figure: Cylinder) -> list[tuple[str, t.Node]]:
    found = (("radius", figure.radius), ("diameter", figure.diameter), ("height", figure.height))
    return [(name, label) for name, label in found if label is not None]


def _across(figure: Cylinder) -> t.Node:
    """Return the length that its ends are given by."""
    return next(label for _, label in _labels(figure))


def _sizes(figure: Cylinder) -> tuple[Fraction, Fraction]:
    """Return the radius and the height, in base units."""
    given = exact(_across(figure))
    return (given if figure.radius is not None else given / 2), exact(figure.height)


def _fault(figure: Cylinder) -> str:
    if (figure.radius is None) == (figure.diameter is None):
        return "it needs a radius or a diameter, and not both"
    labels = [label for _, label in _labels(figure)]
    if fault := lengths_fault(labels, "its lengths"):
        return fault
    radius, height = _sizes(figure)
    if max(2 * radius, height) > MOST_RATIO * min(2 * radius, height):
        return (
            f"its height may be at most {MOST_RATIO} times its diameter, and its diameter at "
            f"most {MOST_RATIO} times its height"
        )
    shape = (
        *("cylinder", figure.radius is None, height / radius),
        *(half_size(label) for _, label in _labels(figure)),
    )
    if lost := homeless_in_all(partial(_drawn, figure), _SIZES, shape):
        return f"there is no room for the label {lost[0]}"
    return ""


@once
def _sheet(figure: Cylinder) -> Sheet:
    return least_sheet(partial(_drawn, figure), _SIZES)


@cache
def _ways_around() -> tuple[Whole, ...]:
    """Return the points of a circle of radius 1, the last of which is the first again."""
    return tuple(whole(unit_point(Fraction(k, AROUND))) for k in range(AROUND + 1))


def _drawn(figure: Cylinder, room: tuple[int, int]) -> Sheet:
    wide, high = room
    radius, height = _sizes(figure)
    scale = min(wide / (2 * radius), high / (height + 2 * FLAT * radius))
    r, h = radius * scale, height * scale

    # Counted in parts that the radius, the height and how deep a circle is are whole numbers of.
    parts = lcm(r.denominator, h.denominator) * FLAT.denominator
    across, up, deep = (int(size * parts) for size in (r, h, FLAT * r))
    around = [Whole(across * x, deep * y, parts * over) for x, y, over in _ways_around()]
    raised = [Whole(x, y + up * (over // parts), over) for x, y, over in around]

    half = AROUND // 2
    middle, right, left = Whole(0, up, parts), Whole(across, up, parts), Whole(-across, up, parts)
    top = tuple(raised[:AROUND])
    marks: list[Track] = [
        Path(
            [point.near for point in (*top, top[0])],
            "normal",
            lambda: Area(tuple(point.exact for point in top), "top"),
        ),
        stroke(tuple(around[half:]), "edge"),
        stroke(tuple(around[: half + 1]), "hidden edge", "thin", dashed=True),
        stroke((Whole(-across, 0, parts), left), "wall"),
        stroke((Whole(across, 0, parts), right), "wall"),
        arc(middle, _DOT, (right, right), "centre", fill="ink"),
    ]
    if figure.radius is not None:
        marks.append(stroke((middle, right), "radius"))
    else:
        marks.append(stroke((left, right), "diameter"))
    sheet = Sheet(marks)
    name, label = _labels(figure)[0]
    # Over the end, and no farther from the line than it has to be.
    _, tall = half_size(label)
    aims = (Fraction(1, 2), Fraction(2, 5)) if name == "radius" else (Fraction(0),)
    aside = [float(r * aim) for aim in aims]
    over = [(x, float(h) + tall + 0.05 * step) for step in range(2, 45) for x in aside]
    sheet.put(label, over, f"{name} label")
    wall = ((float(r), 0.0), (float(r), float(h)))
    sheet.put(figure.height, beside(figure.height, *wall, (1, 0)), "height label")
    return sheet


def _drawing(figure: Cylinder) -> Drawing:
    return drawing(_sheet(figure).marks)


def _words(figure: Cylinder) -> str:
    (name, across), (_, high) = _labels(figure)
    return f"A cylinder has the {name} {said(across)} and the height {said(high)}."


def _read(figure: Cylinder, reading: Reading) -> t.Node:
    r, h = _sizes(figure)
    name = unit_of(figure.height)
    if reading == Reading("radius"):
        return in_unit(r, name)
    if reading == Reading("diameter"):
        return in_unit(2 * r, name)
    times = {
        Reading("volume"): (r * r * h, 3),
        Reading("area of the base"): (r * r, 2),
        Reading("curved surface area"): (2 * r * h, 2),
        Reading("surface area"): (2 * r * h + 2 * r * r, 2),
    }
    if reading in times:
        value, power = times[reading]
        unit = f"{name}^{power}" if name else ""
        if not unit or unit in UNITS:
            return of_pi(value, unit)
    raise not_shown(reading)


def _readings(figure: Cylinder) -> tuple[Reading, ...]:
    name = unit_of(figure.height)
    found = ["radius", "diameter"]
    if not name or f"{name}^2" in UNITS:
        found += ["area of the base", "curved surface area", "surface area"]
    if not name or f"{name}^3" in UNITS:
        found.append("volume")
    return tuple(map(Reading, found))


_SOLID = r"(?:the|this) (?:cylinder|solid)"
_NAMED = {"total surface area": "surface area"}


def _of_it(figure: Cylinder, found: re.Match[str]) -> Asked:
    called = found["name"].casefold()
    reading = Reading(_NAMED.get(called, called))
    if reading not in _readings(figure):
        raise FigureError("there is no unit for that")
    return Asked(t.Sym("r"), (("r", reading),))


def _base(figure: Cylinder, found: re.Match[str]) -> Asked:
    return Asked(t.Sym("r"), (("r", Reading("area of the base")),))


CYLINDER = register_figure(
    FigureKind(
        "cylinder",
        Cylinder,
        fault=_fault,
        bears=dict.fromkeys(("height", "radius", "diameter"), (t.Quantity,)),
        drawing=_drawing,
        words=_words,
        printed=lambda figure: tuple(label for _, label in _labels(figure)),
        readings=_readings,
        read=_read,
        wordings=(
            Wording(
                rf"{FIND} the (?P<name>volume|(?:total |curved )?surface area|radius|diameter) of "
                rf"{_SOLID}",
                _of_it,
            ),
            Wording(rf"{FIND} the area of the base of {_SOLID}", _base),
        ),
    )
)
