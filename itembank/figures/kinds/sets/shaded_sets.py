"""Two sets in a rectangle that stands for all, some of its four regions shaded."""

from __future__ import annotations

import re
from collections.abc import Iterable
from fractions import Fraction

from itembank.data_class import dataclass
from itembank.figures.circle_points import in_direction
from itembank.figures.drawing import Arc, Area, Drawing, Mark, Point, Text, drawing, rectangle
from itembank.figures.figure import (
    DrawWording,
    Figure,
    FigureKind,
    Reading,
    ToDraw,
    not_shown,
    register_figure,
)
from itembank.figures.kinds.sets.set_notation import BOTH, FIRST, NEITHER, SECOND, SETS, regions_of
from itembank.notation import tree as t

REGIONS = (FIRST, BOTH, SECOND, NEITHER)
_RADIUS = Fraction(5, 2)
_LEFT, _RIGHT = Point(Fraction(17, 5), Fraction(7, 2)), Point(Fraction(59, 10), Fraction(7, 2))
_WIDE, _HIGH = Fraction(93, 10), Fraction(7)
_FINE = 5
"""How many degrees of a circle the edge of a shaded region goes straight."""


@dataclass(frozen=True, slots=True)
class ShadedSets(Figure):
    """Two sets, called by capital letters, and which regions are shaded.

    A region is *first* or *second* (in that set alone), *both* or *neither*.

    >>> ShadedSets("A", "B", ("first", "both")).second
    'B'
    """

    first: str
    second: str
    shaded: tuple[str, ...] = ()


def _fault(figure: ShadedSets) -> str:
    if not all(re.fullmatch("[A-Z]", name) for name in (figure.first, figure.second)):
        return "its sets are named by capital letters"
    if figure.first == figure.second:
        return "its two sets have one name"
    if strange := [name for name in figure.shaded if name not in REGIONS]:
        return f"it has no region ‘{strange[0][:20]}’: name first, second, both or neither"
    if len({*figure.shaded}) != len(figure.shaded):
        return "a region is shaded twice"
    return ""


def _round(centre: Point, start: int, end: int) -> Iterable[Point]:
    """Yield points of a circle from one direction to another, in degrees, either way."""
    step = _FINE if end > start else -_FINE
    return (in_direction(centre, _RADIUS, turn) for turn in range(start, end + step, step))


def _edge(region: str) -> tuple[Point, ...]:
    """Return the edge of a region; the circles cross at 60° on either side of level."""
    if region == BOTH:
        return (*_round(_LEFT, -60, 60), *_round(_RIGHT, 120, 240))
    if region == FIRST:
        return (*_round(_LEFT, 60, 300), *_round(_RIGHT, 240, 120))
    if region == SECOND:
        return (*_round(_RIGHT, -120, 120), *_round(_LEFT, 60, -60))
    # In from the left edge, round both circles clockwise, and out again.
    way_in = Point(0, _LEFT.y)
    return (
        *(Point(0, 0), Point(_WIDE, 0), Point(_WIDE, _HIGH), Point(0, _HIGH), way_in),
        *_round(_LEFT, 180, 60),
        *_round(_RIGHT, 120, -120),
        *_round(_LEFT, 300, 180),
        way_in,
    )


def _drawing(figure: ShadedSets) -> Drawing:
    marks: list[Mark] = [
        Area(_edge(region), "shaded", "shade", outline=False)
        for region in REGIONS
        if region in figure.shaded
    ]
    marks.append(Area(rectangle(0, 0, _WIDE, _HIGH), "all"))
    for centre in (_LEFT, _RIGHT):
        rim = Point(centre.x + _RADIUS, centre.y)
        marks.append(Arc(centre, _RADIUS, rim, rim, "set"))
    for name, x in ((figure.first, Fraction(3, 5)), (figure.second, _WIDE - Fraction(3, 5))):
        place = Point(x, _HIGH - Fraction(4, 5))
        marks.append(Text(place, name, role="name", bold=True, paper=True))
    return drawing(marks)


def _words(figure: ShadedSets) -> str:
    told = f"A Venn diagram has two sets, {figure.first} and {figure.second}, that overlap."
    called = {
        FIRST: f"{figure.first} only",
        BOTH: "both sets",
        SECOND: f"{figure.second} only",
        NEITHER: "neither set",
    }
    dark = [called[region] for region in REGIONS if region in figure.shaded]
    if not dark:
        return f"{told} Nothing is shaded."
    return f"{told} Shaded is {' and '.join(f'what is in {region}' for region in dark)}."


def _read(figure: ShadedSets, reading: Reading) -> t.Node:
    if reading.name in ("shaded", "left") and len(reading.of) == 1:
        wanted = regions_of(reading.of[0], figure.first, figure.second)
        dark = {*figure.shaded}
        if reading.name == "shaded":
            return t.Int(len(wanted & dark))
        return t.Int(len({*REGIONS} - wanted - dark))
    raise not_shown(reading)


def _readings(figure: ShadedSets) -> tuple[Reading, ...]:
    a, b = figure.first, figure.second
    every = (a, b, f"{a} ∩ {b}", f"{a} ∪ {b}", f"{a}′ ∩ {b}", f"{a} ∩ {b}′", f"({a} ∪ {b})′")
    return tuple(Reading(name, (sets,)) for sets in every for name in ("shaded", "left"))


def _shade(figure: ShadedSets, found: re.Match[str]) -> ToDraw:
    """Return that all regions of a set are to be shaded, and no others."""
    sets = found["sets"].replace("'", "′").replace("’", "′")
    wanted = regions_of(sets, figure.first, figure.second)
    return ToDraw(
        "shaded",
        (
            (Reading("shaded", (sets,)), t.Int(len(wanted))),
            # All regions outside it are left: to shade more is not what was asked.
            (Reading("left", (sets,)), t.Int(len(REGIONS) - len(wanted))),
        ),
    )


SHADED_SETS = register_figure(
    FigureKind(
        "shaded sets",
        ShadedSets,
        fault=_fault,
        drawing=_drawing,
        words=_words,
        printed=lambda figure: (t.Label(figure.first), t.Label(figure.second)),
        readings=_readings,
        read=_read,
        drawn_answers=(
            DrawWording(rf'shade \{{?"?{SETS}"?\}}?(?: (?:in|on) the (?:venn )?diagram)?', _shade),
        ),
    )
)
