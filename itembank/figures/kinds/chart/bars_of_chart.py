"""How a bar chart is drawn: its axis with lines, its bars, its names and its legend."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from itembank.figures.drawing import (
    Area,
    Drawing,
    Fill,
    Mark,
    Point,
    Stroke,
    Text,
    drawing,
    rectangle,
)
from itembank.figures.kinds.chart.chart_axis import LINE, axis_lines
from itembank.figures.label_room import UP, room, text_width

if TYPE_CHECKING:
    from itembank.figures.kinds.chart.bar_chart import BarChart

_BAR = Fraction(1)
_GAP = Fraction(1, 2)
_WIDE = Fraction(14)
_FILLS: tuple[Fill, ...] = ("shade", "dots")


def _columns(figure: BarChart) -> tuple[Fraction, Fraction]:
    """Return the width of a category and of one of its bars."""
    count = len(figure.series)
    need = max(text_width(name) for name in figure.categories) + Fraction(3, 10)
    bar = _BAR if count == 1 else Fraction(7, 10)
    return max(need, count * bar + _GAP), bar


def chart_room(figure: BarChart) -> str:
    """Return that the names of categories take too much room, as a clause, or ``""``."""
    wide, _ = _columns(figure)
    if wide * len(figure.categories) > _WIDE:
        return "the names of its categories do not fit side by side: shorten them"
    return ""


def bar_chart_drawing(figure: BarChart) -> Drawing:
    """Return what is drawn of a bar chart."""
    wide, bar = _columns(figure)
    top = max(value for row in figure.series for value in row.values)
    lines = -(-top // figure.scale)
    across = wide * len(figure.categories)
    marks: list[Mark] = []
    marks += axis_lines(lines, figure.scale, figure.between, across)
    high = lines * LINE
    marks.append(Stroke((Point(0, 0), Point(0, high + Fraction(1, 4))), "axis"))
    for place, name in enumerate(figure.categories):
        middle = place * wide + wide / 2
        marks.append(Text(Point(middle, -Fraction(1, 5)), name, up="top", role="category"))
        for which, row in enumerate(figure.series):
            left = middle - bar * len(figure.series) / 2 + which * bar
            tall = Fraction(row.values[place], figure.scale) * LINE
            if tall:
                corners = rectangle(left, 0, left + bar, tall)
                # Paper first: no line of the axis shows through a bar.
                marks.append(Area(corners, "", "paper", outline=False))
                marks.append(Area(corners, f"bar {which}", _FILLS[which]))
    y = high + Fraction(1, 2)
    if figure.counts:
        marks.append(Text(Point(-Fraction(1, 5), y), figure.counts, "left", "bottom", "counts"))
        y += room(figure.counts).height + Fraction(1, 5)
    if figure.title:
        title = Text(Point(across / 2, y), figure.title, up="bottom", role="title", bold=True)
        marks.append(title)
    if len(figure.series) > 1:
        y = -Fraction(1, 5) - room(figure.categories[0]).height - Fraction(2, 5)
        x = Fraction(0)
        for which, row in enumerate(figure.series):
            corners = rectangle(x, y - UP, x + UP, y)
            marks.append(Area(corners, f"legend {which}", _FILLS[which]))
            spot = Point(x + UP + Fraction(1, 4), y - UP / 2)
            marks.append(Text(spot, row.name, "left", role="series"))
            x += UP + text_width(row.name) + Fraction(5, 4)
    return drawing(marks)
