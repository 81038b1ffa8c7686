"""A cuboid, or a prism on a right-angled triangle, in parallel projection."""

from __future__ import annotations

import re
from fractions import Fraction
from functools import partial
from typing import Literal

from itembank.data_class import dataclass
from itembank.figures.drawing import Drawing, Mark, Point, Stroke, drawing
from itembank.figures.figure import (
    Asked,
    Figure,
    FigureError,
    FigureKind,
    Reading,
    Said,
    Wording,
    not_shown,
    register_figure,
)
from itembank.figures.kinds.labels.labelled_lengths import lengths_fault
from itembank.figures.kinds.labels.near_marks import Near, unit
from itembank.figures.kinds.labels.placed_labels import Sheet, half_size
from itembank.figures.kinds.labels.tried_places import beside
from itembank.figures.kinds.labels.tried_sizes import homeless_in_all, least_sheet
from itembank.figures.kinds.unknown_asked import FIND
from itembank.figures.written_as import in_unit, unit_of
from itembank.notation import tree as t
from itembank.notation.tree.written import shown_line
from itembank.notation.units import UNITS
from itembank.notation.value import exact
from itembank.notation.words import words as said
from itembank.once import once

ALONG, UPWARD = Fraction(2, 5), Fraction(3, 10)
"""How far right and up an edge of length 1 goes that leads away: half its length, as 3-4-5."""
MOST_RATIO = 8
_SIZES = ((8, 4), (9, 5), (11, 6), (12, 8))


@dataclass(frozen=True, slots=True)
class Prism(Figure):
    """A solid with two equal ends: its end's width and height, and its length.

    The end is a rectangle or a right-angled triangle, whose longest side may have its own label,
    `slope`.

    >>> from itembank.notation.parse import parse
    >>> Prism("rectangle", parse("5 cm"), parse("3 cm"), parse("4 cm")).slope is None
    True
    """

    end: Literal["rectangle", "triangle"]
    width: t.Node
    height: t.Node
    length: t.Node
    slope: t.Node | None = None


def _labels(figure: Prism) -> list[tuple[str, t.Node]]:
    found = [("width", figure.width), ("height", figure.height), ("length", figure.length)]
    return found + ([("slope", figure.slope)] if figure.slope is not None else [])


def _fault(figure: Prism) -> str:
    labels = [label for _, label in _labels(figure)]
    if fault := lengths_fault(labels, "its edges"):
        return fault
    values = [exact(label) for label in labels]
    w, h, long = values[:3]
    if max(w, h, long) > MOST_RATIO * min(w, h, long):
        return f"its longest edge is more than {MOST_RATIO} times as long as its shortest"
    if figure.slope is not None:
        if figure.end == "rectangle":
            return "only a triangle has a slope"
        if values[3] ** 2 != w**2 + h**2:
            return (
                f"the side labelled {shown_line(figure.slope)} is not the longest side of a "
                f"right-angled triangle with {shown_line(figure.width)} and "
                f"{shown_line(figure.height)}"
            )
    shape = ("prism", figure.end, h / w, long / w, tuple(map(half_size, labels)))
    if lost := homeless_in_all(partial(_drawn, figure), _SIZES, shape):
        return f"there is no room for the label {lost[0]}"
    return ""


@once
def _sheet(figure: Prism) -> Sheet:
    return least_sheet(partial(_drawn, figure), _SIZES)


def _drawn(figure: Prism, room: tuple[int, int]) -> Sheet:
    wide, high = room
    w, h, long = (exact(node) for node in (figure.width, figure.height, figure.length))
    scale = min(wide / (w + ALONG * long), high / (h + UPWARD * long))
    w, h, dx, dy = w * scale, h * scale, ALONG * long * scale, UPWARD * long * scale
    front = [Point(0, 0), Point(w, 0), Point(w, h), Point(0, h)]
    if figure.end == "triangle":
        # Half a rectangle: without the corner across from the right angle.
        del front[2]
    back = [Point(point.x + dx, point.y + dy) for point in front]
    count = len(front)
    # What faces the way the back is moved is seen; the lowest and the leftmost face are not.
    seen = [k not in (0, count - 1) for k in range(count)]
    marks: list[Mark] = []
    for k in range(count):
        after = (k + 1) % count
        marks.append(_edge(front[k], front[after], True))
        marks.append(_edge(back[k], back[after], seen[k]))
        marks.append(_edge(front[k], back[k], seen[k] or seen[k - 1]))
    sheet = Sheet(marks)

    def put(label: t.Node, a: Point, b: Point, way: Near) -> None:
        ends = ((float(a.x), float(a.y)), (float(b.x), float(b.y)))
        sheet.put(label, beside(label, *ends, way), "edge label")

    put(figure.width, front[0], front[1], (0, -1))
    put(figure.height, front[0], front[-1], (-1, 0))
    put(figure.length, front[1], back[1], (0.6, -0.8))
    if figure.slope is not None:
        ux, uy = unit((float(w), 0.0), (0.0, float(h)))
        put(figure.slope, back[1], back[2], (uy, -ux))
    return sheet


def _edge(a: Point, b: Point, seen: bool) -> Stroke:
    return Stroke((a, b), "edge" if seen else "hidden edge", "normal" if seen else "thin", not seen)


def _drawing(figure: Prism) -> Drawing:
    return drawing(_sheet(figure).marks)


def _words(figure: Prism) -> str:
    w, h, long = (said(node) for node in (figure.width, figure.height, figure.length))
    if figure.end == "rectangle":
        return f"A cuboid is {w} wide, {h} high and {long} long."
    slope = "" if figure.slope is None else f" Its longest side is {said(figure.slope)}."
    return (
        "A prism has a right-angled triangle at each end. The sides at the right angle are "
        f"{w} and {h}.{slope} The prism is {long} long."
    )


def _read(figure: Prism, reading: Reading) -> t.Node:
    w, h, long = (exact(node) for node in (figure.width, figure.height, figure.length))
    name = unit_of(figure.width)
    flat = figure.end == "triangle"
    if reading == Reading("volume") and (not name or f"{name}^3" in UNITS):
        return in_unit(w * h * long / (2 if flat else 1), f"{name}^3" if name else "")
    if reading == Reading("surface area") and (not name or f"{name}^2" in UNITS):
        unit_square = f"{name}^2" if name else ""
        if not flat:
            return in_unit(2 * (w * h + h * long + long * w), unit_square)
        if figure.slope is not None:
            return in_unit(w * h + (w + h + exact(figure.slope)) * long, unit_square)
    raise not_shown(reading)


def _readings(figure: Prism) -> tuple[Reading, ...]:
    name = unit_of(figure.width)
    found = [Reading("volume")] if not name or f"{name}^3" in UNITS else []
    whole = figure.end == "rectangle" or figure.slope is not None
    if whole and (not name or f"{name}^2" in UNITS):
        found.append(Reading("surface area"))
    return tuple(found)


_SOLID = r"(?:the|this) (?P<solid>cuboid|triangular prism|prism|solid|box|cube)"


def _of_it(name: str) -> Said:
    """Return what a wording asks of the solid as a whole, which it calls what it is."""

    def asks(figure: Prism, found: re.Match[str]) -> Asked:
        called = found["solid"].casefold()
        edges = {exact(label) for _, label in _labels(figure)}
        fits = {
            "cube": figure.end == "rectangle" and len(edges) == 1,
            "triangular prism": figure.end == "triangle",
        }.get(called, figure.end == "rectangle" or called in ("prism", "solid"))
        if not fits:
            raise FigureError(f"what it shows is no {called}")
        return Asked(t.Sym("r"), (("r", Reading(name)),))

    return asks


PRISM = register_figure(
    FigureKind(
        "prism",
        Prism,
        fault=_fault,
        bears=dict.fromkeys(("width", "height", "length", "slope"), (t.Quantity,)),
        drawing=_drawing,
        words=_words,
        printed=lambda figure: tuple(label for _, label in _labels(figure)),
        readings=_readings,
        read=_read,
        wordings=(
            Wording(rf"{FIND} the volume of {_SOLID}", _of_it("volume")),
            Wording(rf"{FIND} the (?:total )?surface area of {_SOLID}", _of_it("surface area")),
        ),
    )
)
