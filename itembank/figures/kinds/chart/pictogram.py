"""A pictogram: rows of squares, each of which stands for so many; half and quarter squares too."""

from __future__ import annotations

from fractions import Fraction

from itembank.data_class import dataclass
from itembank.figures.drawing import Area, Drawing, Mark, Point, Text, drawing, rectangle
from itembank.figures.figure import (
    Figure,
    FigureKind,
    Reading,
    not_shown,
    register_figure,
)
from itembank.figures.kinds.chart.chart_axis import name_fault
from itembank.figures.kinds.chart.chart_names import Shown, folded
from itembank.figures.kinds.chart.chart_wordings import SORTS, counts_wording
from itembank.figures.kinds.chart.missing_asked import ROW, Missing, missing_wordings
from itembank.notation import tree as t
from itembank.text.in_words import counted

MOST_ROWS, MOST_SQUARES = 6, 9
_SIDE = Fraction(1)
_STEP = Fraction(5, 4)
_HALF = _SIDE / 2


@dataclass(frozen=True, slots=True)
class Pictogram(Figure):
    """Rows of squares by name; the key says that one square stands for `each` of `what`.

    A value may leave a quarter, a half or three quarters of a square over.

    >>> Pictogram(("Mon", "Tue"), (8, 10), 4, "trays").each
    4
    """

    categories: tuple[str, ...]
    values: tuple[int, ...]
    each: int
    what: str = ""


def _fault(figure: Pictogram) -> str:
    if not 2 <= len(figure.categories) <= MOST_ROWS:
        return f"it may have 2 to {MOST_ROWS} rows"
    if found := name_fault(figure.categories, "rows"):
        return found
    if len(figure.values) != len(figure.categories):
        return "it has a value for each row"
    if not 1 <= figure.each <= 10_000:
        return "a square stands for 1 to 10,000"
    for value in figure.values:
        if value < 0 or value > figure.each * MOST_SQUARES:
            return f"a row holds at most {MOST_SQUARES} squares"
        if (Fraction(4 * value, figure.each)).denominator != 1:
            return f"the value {value} is no whole number of quarters of a square"
    return "" if any(figure.values) else "all of its rows are empty"


def _drawing(figure: Pictogram) -> Drawing:
    marks: list[Mark] = []
    start = Fraction(1, 2)
    for place, (name, value) in enumerate(zip(figure.categories, figure.values, strict=True)):
        y = -place * Fraction(3, 2)
        marks.append(Text(Point(0, y + _HALF), name, "right", role="category"))
        quarters = int(Fraction(4 * value, figure.each))
        for number in range(-(-quarters // 4)):
            x = start + number * _STEP
            left = min(4, quarters - 4 * number)
            marks.append(Area(_piece(x, y, left), "square", "shade"))
    low = -len(figure.categories) * Fraction(3, 2)
    marks.append(Text(Point(0, low + _HALF), "Key", "right", role="key word", bold=True))
    marks.append(Area(rectangle(start, low, start + _SIDE, low + _SIDE), "key", "shade"))
    says = f"= {figure.each} {figure.what}".strip()
    marks.append(Text(Point(start + _STEP, low + _HALF), says, "left", role="key says"))
    return drawing(marks)


def _piece(x: Fraction, y: Fraction, quarters: int) -> tuple[Point, ...]:
    """Return so many quarters of a square: the left half first, from the bottom."""
    if quarters == 4:
        return rectangle(x, y, x + _SIDE, y + _SIDE)
    if quarters == 2:
        return rectangle(x, y, x + _HALF, y + _SIDE)
    if quarters == 1:
        return rectangle(x, y, x + _HALF, y + _HALF)
    return (
        *(Point(x, y), Point(x + _SIDE, y), Point(x + _SIDE, y + _HALF)),
        *(Point(x + _HALF, y + _HALF), Point(x + _HALF, y + _SIDE), Point(x, y + _SIDE)),
    )


_PARTS = {0: "", 1: "a quarter", 2: "a half", 3: "three quarters"}


def _squares(figure: Pictogram, value: int) -> str:
    whole, over = divmod(int(Fraction(4 * value, figure.each)), 4)
    if not over:
        return counted(whole, "square") if whole else "no squares"
    if whole:
        return f"{whole} and {_PARTS[over]} squares"
    return "half a square" if over == 2 else f"{_PARTS[over]} of a square"


def _words(figure: Pictogram) -> str:
    what = f" {figure.what}" if figure.what else ""
    rows = "; ".join(
        f"{name} has {_squares(figure, value)}"
        for name, value in zip(figure.categories, figure.values, strict=True)
    )
    return f"In a pictogram one square stands for {figure.each}{what}. {rows}."


def _read(figure: Pictogram, reading: Reading) -> t.Node:
    names = [folded(name) for name in figure.categories]
    if reading.name == "value" and len(reading.of) == 1 and folded(reading.of[0]) in names:
        return t.Int(figure.values[names.index(folded(reading.of[0]))])
    if reading == Reading("total"):
        return t.Int(sum(figure.values))
    if reading.name in ("largest", "smallest") and not reading.of:
        best = (max if reading.name == "largest" else min)(figure.values)
        if figure.values.count(best) == 1:
            return t.Label(figure.categories[figure.values.index(best)])
    raise not_shown(reading)


def _readings(figure: Pictogram) -> tuple[Reading, ...]:
    found = [Reading("total"), *(Reading("value", (name,)) for name in figure.categories)]
    for name, best in (("largest", max), ("smallest", min)):
        if figure.values.count(best(figure.values)) == 1:
            found.append(Reading(name))
    return tuple(found)


PICTOGRAM = register_figure(
    FigureKind(
        "pictogram",
        Pictogram,
        fault=_fault,
        drawing=_drawing,
        words=_words,
        printed=lambda figure: (t.Int(figure.each), *map(t.Label, figure.categories)),
        readings=_readings,
        read=_read,
        wordings=(
            *missing_wordings(
                ROW, lambda figure: Missing(figure.categories, figure.what, figure.each)
            ),
            counts_wording(lambda figure: Shown(figure.categories, (), figure.what, sort=SORTS)),
        ),
    )
)
