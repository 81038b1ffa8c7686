"""A growing pattern: the first patterns of a row, each with so many tiles more than the last."""

from __future__ import annotations

from fractions import Fraction
from typing import Literal

from itembank.data_class import dataclass
from itembank.figures.drawing import Arc, Area, Drawing, Mark, Point, Text, drawing, rectangle
from itembank.figures.figure import (
    Figure,
    FigureKind,
    Reading,
    Wording,
    asks_reading,
    not_shown,
    register_figure,
)
from itembank.notation import tree as t
from itembank.text.whole_number import whole_number

MOST_SHOWN, MOST_TILES, FURTHEST = 5, 40, 1000
_TILE = Fraction(3, 5)
_DOT = Fraction(11, 50)
_BETWEEN = Fraction(1)
_ORDINALS = ("first", "second", "third", "fourth", "fifth")


@dataclass(frozen=True, slots=True)
class GrowingPattern(Figure):
    """Patterns 1, 2, 3, …: the first of `first` tiles, each of `more` tiles more than the last.

    Tiles stand in rows: one of `first` tiles, and on it one of `more` for each step since. So a
    pattern is low, and a starter with two of them keeps to its slide.

    >>> GrowingPattern(2, 3).shown
    3
    """

    first: int
    more: int
    tiles: Literal["squares", "dots"] = "squares"
    shown: int = 3


def _fault(figure: GrowingPattern) -> str:
    if not 3 <= figure.shown <= MOST_SHOWN:
        return f"3 to {MOST_SHOWN} patterns are shown"
    if not 1 <= figure.first <= 6 or not 1 <= figure.more <= 6:
        return "a row has 1 to 6 tiles"
    if figure.first + (figure.shown - 1) * figure.more > MOST_TILES:
        return f"a pattern has at most {MOST_TILES} tiles"
    return ""


def _rows(figure: GrowingPattern, number: int) -> list[int]:
    return [figure.first, *[figure.more] * (number - 1)]


def _drawing(figure: GrowingPattern) -> Drawing:
    marks: list[Mark] = []
    x = Fraction(0)
    for number in range(1, figure.shown + 1):
        rows = _rows(figure, number)
        wide = max(max(rows) * _TILE, Fraction(4))
        start = x + (wide - max(rows) * _TILE) / 2
        for row, count in enumerate(rows):
            for place in range(count):
                left, low = start + place * _TILE, row * _TILE
                role = f"tile {number}"
                if figure.tiles == "squares":
                    corners = rectangle(left, low, left + _TILE, low + _TILE)
                    marks.append(Area(corners, role, "paper"))
                else:
                    centre = Point(left + _TILE / 2, low + _TILE / 2)
                    rim = Point(centre.x + _DOT, centre.y)
                    marks.append(Arc(centre, _DOT, rim, rim, role, "ink"))
        below = Point(x + wide / 2, -Fraction(1, 5))
        marks.append(Text(below, f"Pattern {number}", up="top", role="number"))
        x += wide + _BETWEEN
    return drawing(marks)


def _words(figure: GrowingPattern) -> str:
    noun = "square tiles" if figure.tiles == "squares" else "dots"
    counts = ", ".join(
        f"pattern {number} has {sum(_rows(figure, number))}"
        for number in range(1, figure.shown + 1)
    )
    return f"Patterns made of {noun} grow by the same number each time: {counts}."


def _read(figure: GrowingPattern, reading: Reading) -> t.Node:
    count = whole_number(reading.of[0]) if len(reading.of) == 1 else None
    if reading.name == "tiles" and count is not None and 1 <= count <= FURTHEST:
        return t.Int(figure.first + (count - 1) * figure.more)
    if reading.name == "pattern" and count is not None:
        steps, over = divmod(count - figure.first, figure.more)
        if not over and 0 <= steps < FURTHEST:
            return t.Int(steps + 1)
    if reading == Reading("nth term"):
        rest = figure.first - figure.more
        letter = t.juxt(t.Int(figure.more), t.Sym("n")) if figure.more > 1 else t.Sym("n")
        if not rest:
            return letter
        return t.add(letter, t.Int(rest)) if rest > 0 else t.add(letter, t.Neg(t.Int(-rest)))
    raise not_shown(reading)


def _readings(figure: GrowingPattern) -> tuple[Reading, ...]:
    asked = (*range(1, figure.shown + 1), figure.shown + 1, 10, 50)
    counts = (figure.first + 7 * figure.more, figure.first + figure.more)
    return (
        *(Reading("tiles", (str(number),)) for number in asked),
        *(Reading("pattern", (str(count),)) for count in counts),
        Reading("nth term"),
    )


_TILES = r"how many (?:square )?(?:tiles|squares|dots|counters)"

GROWING_PATTERN = register_figure(
    FigureKind(
        "growing pattern",
        GrowingPattern,
        fault=_fault,
        drawing=_drawing,
        words=_words,
        printed=lambda figure: tuple(t.Int(n) for n in range(1, figure.shown + 1)),
        readings=_readings,
        read=_read,
        wordings=(
            Wording(
                rf"{_TILES} (?:are there in|does|has|are needed for|make|are in) "
                r"pattern (?:number )?\{?(?P<number>\d{1,4})\}?(?: have)?",
                asks_reading("tiles", "number"),
            ),
            Wording(
                r"(?:which|what number) pattern has (?:exactly )?\{?(?P<count>\d{1,6})\}? "
                r"(?:tiles|squares|dots|counters)",
                asks_reading("pattern", "count"),
            ),
            Wording(
                r"(?:find|write(?: down)?|what is) (?:the nth term(?: of the numbers? of "
                r"(?:tiles|squares|dots))?|an expression for the number of (?:tiles|squares|dots) "
                r"in pattern \{?n\}?)",
                asks_reading("nth term"),
            ),
        ),
    )
)
