"""A shape in equal parts, some of them shaded: a rectangle, a bar, a hundred square, a circle."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Literal

from itembank.data_class import dataclass
from itembank.figures.circle_points import on_circle
from itembank.figures.drawing import Arc, Area, Drawing, Mark, Point, drawing, rectangle
from itembank.figures.figure import (
    Asked,
    DrawWording,
    Figure,
    FigureError,
    FigureKind,
    Reading,
    Said,
    ToDraw,
    Wording,
    not_shown,
    register_figure,
)
from itembank.notation import tree as t
from itembank.text.in_words import counted

MOST_PARTS = 100
MOST_WHOLES = 4
MOST_SLICES = 16
_LONGEST, _HIGHEST = Fraction(12), Fraction(3)
_USUAL = Fraction(1)
_BETWEEN = Fraction(3, 4)


@dataclass(frozen=True, slots=True)
class ShadedShape(Figure):
    """One shape or several alike, each in equal parts, with some parts shaded.

    A rectangle is cut into `rows` of `columns` parts; a circle is cut into `columns` slices and
    has one row. Parts are counted from 0 along each row from the top left, or clockwise from the
    top, and on through the `wholes`.

    >>> ShadedShape("circle", 1, 6, (0, 1))
    ShadedShape(shape='circle', rows=1, columns=6, shaded=(0, 1), wholes=1)
    """

    shape: Literal["rectangle", "circle"]
    rows: int
    columns: int
    shaded: tuple[int, ...]
    wholes: int = 1


def _fault(figure: ShadedShape) -> str:
    if figure.rows < 1 or figure.columns < 1 or figure.wholes < 1:
        return "it needs at least one row, one column and one whole"
    parts = figure.rows * figure.columns
    if parts < 2:
        return "it needs at least two parts"
    if parts > MOST_PARTS or max(figure.rows, figure.columns) > 25:
        return f"it may have at most {MOST_PARTS} parts, and 25 in a row"
    if figure.wholes > MOST_WHOLES:
        return f"there may be at most {MOST_WHOLES} wholes"
    if figure.shape == "circle" and figure.rows != 1:
        return "a circle is cut into one row of slices: say rows = 1"
    if figure.shape == "circle" and figure.columns > MOST_SLICES:
        return f"a circle may have at most {MOST_SLICES} slices"
    if len(figure.shaded) > parts * figure.wholes:
        return "more parts are shaded than there are"
    if len({*figure.shaded}) != len(figure.shaded):
        return "a part is shaded twice"
    if any(not 0 <= part < parts * figure.wholes for part in figure.shaded):
        return f"the parts are counted from 0 to {parts * figure.wholes - 1}"
    return ""


def _drawing(figure: ShadedShape) -> Drawing:
    marks: list[Mark] = []
    shaded = {*figure.shaded}
    parts = figure.rows * figure.columns
    gaps = _BETWEEN * (figure.wholes - 1)
    if figure.shape == "circle":
        radius = min(Fraction(3, 2), (_LONGEST - gaps) / figure.wholes / 2)
        for whole in range(figure.wholes):
            centre = Point(radius + whole * (2 * radius + _BETWEEN), radius)
            rim = [on_circle(centre, radius, Fraction(part, parts)) for part in range(parts)]
            for part in range(parts):
                dark = whole * parts + part in shaded
                # Clockwise from the top, as parts are counted, so the arc runs back.
                marks.append(
                    Arc(
                        centre,
                        radius,
                        rim[(part + 1) % parts],
                        rim[part],
                        "shaded" if dark else "part",
                        "shade" if dark else "none",
                        sector=True,
                    )
                )
        return drawing(marks)
    room = (_LONGEST - gaps) / figure.wholes
    side = min(_USUAL, room / figure.columns, _HIGHEST / figure.rows)
    # A bar of few parts is longer than it is high.
    across = min(2 * side, room / figure.columns) if figure.rows == 1 else side
    for whole in range(figure.wholes):
        x0 = whole * (across * figure.columns + _BETWEEN)
        for part in range(parts):
            row, column = divmod(part, figure.columns)
            x, y = x0 + column * across, (figure.rows - 1 - row) * side
            dark = whole * parts + part in shaded
            marks.append(
                Area(
                    rectangle(x, y, x + across, y + side),
                    "shaded" if dark else "part",
                    "shade" if dark else "none",
                    "thin" if parts > 40 else "normal",
                )
            )
    return drawing(marks)


def _words(figure: ShadedShape) -> str:
    parts = figure.rows * figure.columns
    name = "circle" if figure.shape == "circle" else "rectangle"
    if figure.rows == 1:
        cut = f"{parts} equal parts"
    else:
        cut = f"{figure.rows} rows of {figure.columns} equal parts"
    if figure.wholes == 1:
        first = f"A {name} is divided into {cut}."
    else:
        first = f"There are {figure.wholes} {name}s of the same size, each divided into {cut}."
    count = len(figure.shaded)
    said = "None of the parts is" if not count else "1 of the parts is"
    if count > 1:
        said = f"{count} of the parts are"
    return f"{first} {said} shaded."


def _read(figure: ShadedShape, reading: Reading) -> t.Node:
    parts = figure.rows * figure.columns
    count = len(figure.shaded)
    found = {
        Reading("shaded"): (count, parts),
        Reading("unshaded"): (parts * figure.wholes - count, parts),
    }.get(reading)
    if found is not None:
        return t.frac(*found)
    if reading == Reading("parts"):
        return t.Int(parts * figure.wholes)
    raise not_shown(reading)


_ANY = "shape|diagram"
_NAMES = rf"(?P<shape>{_ANY}|grid|hundred square|square|rectangle|bar|circle)"


def is_called(figure: ShadedShape, name: str) -> bool:
    """Tell whether a shape may be called by a name.

    >>> bar = ShadedShape("rectangle", 1, 4, (0,))
    >>> is_called(bar, "bar"), is_called(bar, "circle")
    (True, False)
    """
    if name in _ANY.split("|"):
        return True
    if (name == "circle") != (figure.shape == "circle"):
        return False
    square = figure.rows == figure.columns
    return {
        "bar": figure.rows == 1,
        "square": square,
        "hundred square": square and figure.rows == 10,
        "grid": figure.rows > 1,
    }.get(name, True)


def _of_one(name: str) -> Said:
    """Return what a wording asks of a single shape, which it calls what it is."""

    def asks(figure: ShadedShape, found: re.Match[str]) -> Asked:
        if figure.wholes > 1 or not is_called(figure, found["shape"].casefold()):
            raise FigureError(f"what it shows is not one {found['shape']}")
        return Asked(t.Sym("r"), (("r", Reading(name)),))

    return asks


def _of_wholes(figure: ShadedShape, found: re.Match[str]) -> Asked:
    """Return how much is shaded; of several shapes it has to be said that each is 1."""
    called = found["shape"] or found["other"]
    if called is None and figure.wholes > 1:
        raise FigureError("it is not said which of its shapes is 1")
    if called is not None and not is_called(figure, called.casefold()):
        raise FigureError(f"what it shows is no {called}")
    return Asked(t.Sym("r"), (("r", Reading("shaded")),))


def _in_box(figure: ShadedShape, found: re.Match[str]) -> Asked:
    """Return the part of the fraction that stands in a box: □/4 or 3/□ of the shape."""
    asked = _of_one("unshaded" if found["no"] else "shaded")(figure, found)
    r = t.Sym("r")
    if found["under"]:
        return Asked(t.times(r, t.Int(int(found["under"]))), asked.readings)
    return Asked(t.divide(t.Int(int(found["over"])), r), asked.readings)


def _parts_compared(figure: ShadedShape, found: re.Match[str]) -> Asked:
    """Return the ratio of the parts that are shaded to those that are not, or the other way."""
    names = (found["first"].casefold(), found["second"].casefold())
    if {*names} != {"shaded", "unshaded"}:
        raise FigureError("the two parts of the ratio are the same")
    m, n = t.Sym("m"), t.Sym("n")
    return Asked(t.Ratio((m, n)), (("m", Reading(names[0])), ("n", Reading(names[1]))))


def _shade(figure: ShadedShape, found: re.Match[str]) -> ToDraw:
    """Return that a fraction of one shape is to be shaded, whichever of its parts."""
    if figure.wholes > 1 or not is_called(figure, found["shape"].casefold()):
        raise FigureError(f"what it shows is not one {found['shape']}")
    top, bottom = int(found["top"]), int(found["bottom"])
    parts = Fraction(top * figure.rows * figure.columns, bottom)
    if parts.denominator != 1 or not 0 < top < bottom:
        raise FigureError("that fraction of it is no number of its parts")
    return ToDraw(
        "shaded",
        ((Reading("shaded"), t.frac(top, bottom)),),
        f"any {counted(int(parts), 'part')}",
    )


SHADED_SHAPE = register_figure(
    FigureKind(
        "shaded shape",
        ShadedShape,
        fault=_fault,
        drawing=_drawing,
        words=_words,
        printed=lambda figure: (),
        readings=lambda figure: (Reading("shaded"), Reading("unshaded"), Reading("parts")),
        read=_read,
        wordings=(
            Wording(
                rf"what (?:fraction|decimal|percentage) of (?:the|this) {_NAMES} is shaded",
                _of_one("shaded"),
            ),
            Wording(
                rf"what (?:fraction|decimal|percentage) of (?:the|this) {_NAMES} is not shaded",
                _of_one("unshaded"),
            ),
            Wording(
                r"what (?:mixed number|number|improper fraction|fraction) is shaded"
                rf"(?:, if (?:each|one) {_NAMES} is 1|, where each "
                r"(?P<other>shape|rectangle|circle) is 1)?",
                _of_wholes,
            ),
            Wording(
                r"which number goes in the box, if \{(?:□/(?P<under>\d{1,3})|(?P<over>\d{1,3})/□)\}"
                rf" of (?:the|this) {_NAMES} is (?P<no>not )?shaded",
                _in_box,
            ),
            Wording(
                r"what is the ratio of (?P<first>shaded|unshaded) parts to "
                r"(?P<second>shaded|unshaded) parts",
                _parts_compared,
            ),
        ),
        drawn_answers=(
            DrawWording(
                r"shade \{(?P<top>\d{1,2})/(?P<bottom>[1-9]\d{0,2})\} of (?:the|this) "
                rf"{_NAMES}",
                _shade,
            ),
        ),
    )
)
