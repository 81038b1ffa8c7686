"""The plan of a solid made of cubes: how many stand on each square, and where the front is."""

from __future__ import annotations

import re
from fractions import Fraction

from itembank.data_class import dataclass
from itembank.figures.drawing import Area, Drawing, Mark, Point, Text, drawing, rectangle
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
from itembank.notation import tree as t
from itembank.text.in_words import counted

MOST, HIGHEST = 4, 9
_SIDE = Fraction(8, 5)


@dataclass(frozen=True, slots=True)
class CubePlan(Figure):
    """How many cubes stand on each square of a plan, row by row from the back to the front.

    >>> CubePlan(((2, 1, 3), (1, 0, 2))).heights[0]
    (2, 1, 3)
    """

    heights: tuple[tuple[int, ...], ...]


def _columns(figure: CubePlan) -> list[tuple[int, ...]]:
    return list(zip(*figure.heights, strict=True))


def _fault(figure: CubePlan) -> str:
    rows = figure.heights
    if not 1 <= len(rows) <= MOST or not 1 <= len(rows[0]) <= MOST:
        return f"it may have 1 to {MOST} rows and columns"
    if len({len(row) for row in rows}) > 1:
        return "its rows are to be of one length"
    if any(not 0 <= height <= HIGHEST for row in rows for height in row):
        return f"0 to {HIGHEST} cubes stand on a square"
    edges = (rows[0], rows[-1], _columns(figure)[0], _columns(figure)[-1])
    if not all(map(any, edges)):
        return "a row or a column at its edge has no cubes: leave it out"
    return ""


def _drawing(figure: CubePlan) -> Drawing:
    marks: list[Mark] = []
    high = len(figure.heights) * _SIDE
    for at, row in enumerate(figure.heights):
        for across, height in enumerate(row):
            left, top = across * _SIDE, high - at * _SIDE
            if not height:
                continue
            marks.append(Area(rectangle(left, top - _SIDE, left + _SIDE, top), "square"))
            middle = Point(left + _SIDE / 2, top - _SIDE / 2)
            marks.append(Text(middle, t.Int(height), role="number"))
    wide = len(figure.heights[0]) * _SIDE
    marks.append(Text(Point(wide / 2, -Fraction(1, 3)), "Front", up="top", role="front"))
    marks.append(Text(Point(wide + Fraction(2, 5), high / 2), "Side", "left", role="side"))
    return drawing(marks)


def _words(figure: CubePlan) -> str:
    rows, columns = len(figure.heights), len(figure.heights[0])
    held = "; ".join(
        ", ".join(str(height) if height else "none" for height in row) for row in figure.heights
    )
    return (
        f"A solid is made of equal cubes. Its plan has {counted(rows, 'row')} and "
        f"{counted(columns, 'column')}, and says how many cubes stand on each square. From the "
        f"back to the front, each row from left to right: {held}."
    )


def _read(figure: CubePlan, reading: Reading) -> t.Node:
    cells = [height for row in figure.heights for height in row]
    found = {
        Reading("cubes"): sum(cells),
        Reading("squares", ("plan",)): sum(height > 0 for height in cells),
        Reading("squares", ("front elevation",)): sum(map(max, _columns(figure))),
        Reading("squares", ("side elevation",)): sum(map(max, figure.heights)),
        Reading("cuboid"): len(cells) * max(cells),
    }
    if reading not in found:
        raise not_shown(reading)
    return t.Int(found[reading])


VIEWS = ("plan", "front elevation", "side elevation")


def _more(figure: CubePlan, found: re.Match[str]) -> Asked:
    views = [found["first"].casefold(), found["second"].casefold()]
    first, second = (Reading("squares", (view,)) for view in views)
    if int(_read(figure, first).n) <= int(_read(figure, second).n):  # type: ignore[union-attr]
        raise FigureError(f"the {views[0]} has not more squares than the {views[1]}")
    return Asked(t.sub(t.Sym("a"), t.Sym("b")), (("a", first), ("b", second)))


_VIEW = rf"(?P<{{}}>{'|'.join(VIEWS)})"

CUBE_PLAN = register_figure(
    FigureKind(
        "cube plan",
        CubePlan,
        fault=_fault,
        drawing=_drawing,
        words=_words,
        printed=lambda figure: tuple(
            t.Int(height) for row in figure.heights for height in row if height
        ),
        readings=lambda figure: (
            Reading("cubes"),
            *(Reading("squares", (view,)) for view in VIEWS),
            Reading("cuboid"),
        ),
        read=_read,
        wordings=(
            Wording(
                r"how many cubes (?:are there(?: altogether| in all)?|is the solid made of)",
                asks_reading("cubes"),
            ),
            Wording(
                rf"how many squares does the {_VIEW.format('view')} have",
                lambda figure, found: Asked(
                    t.Sym("r"), (("r", Reading("squares", (found["view"].casefold(),))),)
                ),
            ),
            Wording(
                rf"how many more squares does the {_VIEW.format('first')} have than the "
                rf"{_VIEW.format('second')}",
                _more,
            ),
            Wording(
                r"what is the least number of cubes that (?:have|has) to be added to make a cuboid",
                lambda figure, found: Asked(
                    t.sub(t.Sym("a"), t.Sym("b")),
                    (("a", Reading("cuboid")), ("b", Reading("cubes"))),
                ),
            ),
        ),
    )
)
