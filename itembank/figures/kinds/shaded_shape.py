"""A shape in equal parts, some of them shaded: a rectangle, a bar, a hundred square, a circle."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from itembank.figures.circle_points import on_circle
from itembank.figures.drawing import Arc, Area, Drawing, Mark, Point, drawing, rectangle
from itembank.figures.figure import (
    Asked,
    Figure,
    FigureKind,
    Reading,
    Wording,
    asks_reading,
    not_shown,
    register_figure,
)
from itembank.notation import tree as t

MOST_PARTS = 100
MOST_WHOLES = 4
MOST_SLICES = 16
_LONGEST, _HIGHEST = Fraction(12), Fraction(3)
_LEAST, _USUAL = Fraction(1, 2), Fraction(1)
_BETWEEN = Fraction(3, 4)


@dataclass(frozen=True, slots=True)
class ShadedShape(Figure):
    """One shape or several alike, each in equal parts, with some parts shaded.

    A rectangle is cut into `rows` of `columns` parts; a circle is cut into `columns` slices and
    has one row. Parts are counted from 0 along each row from the top left, or clockwise from the
    top, and on through the `wholes`. With `unnamed` the words do not say how many are shaded: for
    a question whose answer that is.

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
    each = figure.rows * figure.columns
    if each < 2:
        return "it needs at least two parts"
    if each > MOST_PARTS or max(figure.rows, figure.columns) > 25:
        return f"it may have at most {MOST_PARTS} parts, and 25 in a row"
    if figure.wholes > MOST_WHOLES:
        return f"there may be at most {MOST_WHOLES} wholes"
    if figure.shape == "circle" and figure.rows != 1:
        return "a circle is cut into one row of slices: say rows = 1"
    if figure.shape == "circle" and figure.columns > MOST_SLICES:
        return f"a circle may have at most {MOST_SLICES} slices"
    if len(figure.shaded) > each * figure.wholes:
        return "more parts are shaded than there are"
    if len({*figure.shaded}) != len(figure.shaded):
        return "a part is shaded twice"
    if any(not 0 <= part < each * figure.wholes for part in figure.shaded):
        return f"the parts are counted from 0 to {each * figure.wholes - 1}"
    return ""


def _drawing(figure: ShadedShape) -> Drawing:
    marks: list[Mark] = []
    shaded = {*figure.shaded}
    each = figure.rows * figure.columns
    gaps = _BETWEEN * (figure.wholes - 1)
    if figure.shape == "circle":
        radius = min(Fraction(3, 2), (_LONGEST - gaps) / figure.wholes / 2)
        for whole in range(figure.wholes):
            centre = Point(radius + whole * (2 * radius + _BETWEEN), radius)
            rim = [on_circle(centre, radius, Fraction(part, each)) for part in range(each)]
            for part in range(each):
                dark = whole * each + part in shaded
                # Clockwise from the top, as parts are counted, so the arc runs back.
                marks.append(
                    Arc(
                        centre,
                        radius,
                        rim[(part + 1) % each],
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
        for part in range(each):
            row, column = divmod(part, figure.columns)
            x, y = x0 + column * across, (figure.rows - 1 - row) * side
            dark = whole * each + part in shaded
            marks.append(
                Area(
                    rectangle(x, y, x + across, y + side),
                    "shaded" if dark else "part",
                    "shade" if dark else "none",
                    "thin" if each > 40 else "normal",
                )
            )
    return drawing(marks)


def _words(figure: ShadedShape) -> str:
    each = figure.rows * figure.columns
    name = "circle" if figure.shape == "circle" else "rectangle"
    if figure.rows == 1:
        cut = f"{each} equal parts"
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
    each = figure.rows * figure.columns
    count = len(figure.shaded)
    found = {
        Reading("shaded"): (count, each),
        Reading("unshaded"): (each * figure.wholes - count, each),
    }.get(reading)
    if found is not None:
        return t.frac(*found)
    if reading == Reading("parts"):
        return t.Int(each * figure.wholes)
    raise not_shown(reading)


_SHAPE = r"(?:the|this|each) (?:shape|rectangle|circle|bar|square|diagram|grid|hundred square)"


def _per_cent(name: str) -> object:
    return lambda figure, found: Asked(t.times(t.Int(100), t.Sym("r")), (("r", Reading(name)),))


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
                rf"what (?:fraction|decimal|percentage) of {_SHAPE} is shaded",
                asks_reading("shaded"),
            ),
            Wording(
                rf"what (?:fraction|decimal|percentage) of {_SHAPE} is not shaded",
                asks_reading("unshaded"),
            ),
            Wording(
                r"what (?:mixed number|number|improper fraction|fraction) is shaded"
                r"(?:, if (?:each|one) (?:shape|rectangle|circle) is 1|, where each "
                r"(?:shape|rectangle|circle) is 1)?",
                asks_reading("shaded"),
            ),
        ),
    )
)
