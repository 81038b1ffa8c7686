"""How a bar model is drawn: boxes to one scale, names at the left, amounts on brackets."""

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
from itembank.figures.figure import WIDEST
from itembank.figures.label_room import room
from itembank.notation.line import shown_line

if TYPE_CHECKING:
    from itembank.figures.kinds.number.bar_model import BarModel

_LONG = Fraction(11)
_SHORT = Fraction(5)
"""How long the longest bar is at least, whatever stands beside it."""
_EDGE = Fraction(1, 2)
_HIGH = Fraction(3, 2)
_TALL = Fraction(12, 5)
"""How high a bar is whose boxes hold fractions."""
_BETWEEN = Fraction(3, 10)
_GAP = Fraction(3, 10)
_HOOK = Fraction(1, 4)
_TICK = Fraction(3, 20)
"""How far the marks of units reach into a box of several."""


def _unit(figure: BarModel) -> Fraction:
    longest = max(sum(box.units for box in bar.boxes) for bar in figure.bars)
    # What stands to the left and to the right of the bars takes its room from theirs.
    beside = max((room(bar.name).width + _GAP for bar in figure.bars if bar.name), default=0)
    if figure.total is not None and len(figure.bars) > 1:
        beside += 2 * _GAP + _HOOK + room(figure.total).width
    long = max(min(_LONG, WIDEST - _EDGE - beside), _SHORT)
    return min(Fraction(2), long / longest)


def _high(figure: BarModel) -> Fraction:
    labels = [box.label for bar in figure.bars for box in bar.boxes if box.label is not None]
    tall = any(room(label).height > Fraction(13, 10) for label in labels)
    return _TALL if tall else _HIGH


def box_room(figure: BarModel) -> str:
    """Return which label does not fit into its box, as a clause, or ``""``."""
    unit = _unit(figure)
    for bar in figure.bars:
        for box in bar.boxes:
            if box.label is not None and room(box.label).width + _GAP > box.units * unit:
                return f"the label {shown_line(box.label)} does not fit into its box"
    return ""


def bar_model_drawing(figure: BarModel) -> Drawing:
    """Return what is drawn of a bar model."""
    unit, high = _unit(figure), _high(figure)
    marks: list[Mark] = []
    y = Fraction(0)
    right = max(sum(box.units for box in bar.boxes) for bar in figure.bars) * unit
    rows = []
    for bar in reversed(figure.bars):
        low, top, x = y, y + high, Fraction(0)
        rows.append((low, top))
        for box in bar.boxes:
            corners = rectangle(x, low, x + box.units * unit, top)
            fill: Fill = "shade" if box.shaded and box.label is None else "none"
            marks.append(Area(corners, "shaded box" if box.shaded else "box", fill))
            for count in range(1, box.units):
                for edge, way in ((low, _TICK), (top, -_TICK)):
                    mark = (Point(x + count * unit, edge), Point(x + count * unit, edge + way))
                    marks.append(Stroke(mark, "unit", "thin"))
            if box.label is not None:
                middle = Point(x + box.units * unit / 2, (low + top) / 2)
                marks.append(Text(middle, box.label, role="in box"))
            x += box.units * unit
        if bar.name:
            label = Text(Point(-_GAP, (low + top) / 2), bar.name, "right", role="name")
            marks.append(label)
        y = top
        if bar.total is not None:
            level = top + _HOOK
            path = (Point(0, top + _GAP / 3), Point(0, level), Point(x, level))
            marks.append(Stroke((*path, Point(x, top + _GAP / 3)), "bracket", "thin"))
            label = Text(Point(x / 2, level + _GAP / 2), bar.total, up="bottom", role="bar total")
            marks.append(label)
            y = level + _GAP / 2 + room(bar.total).height
        y += _BETWEEN
    if figure.total is not None:
        low, top = rows[0][0], rows[-1][1]
        if len(rows) == 1:
            level = low - _HOOK
            path = (Point(0, low - _GAP / 3), Point(0, level), Point(right, level))
            marks.append(Stroke((*path, Point(right, low - _GAP / 3)), "all bracket", "thin"))
            at = Point(right / 2, level - _GAP / 2)
            marks.append(Text(at, figure.total, up="top", role="total"))
        else:
            x = right + _GAP + _HOOK
            ends = (Point(x - _HOOK, top), Point(x, top), Point(x, low), Point(x - _HOOK, low))
            marks.append(Stroke(ends, "all bracket", "thin"))
            at = Point(x + _GAP, (low + top) / 2)
            marks.append(Text(at, figure.total, "left", role="total"))
    return drawing(marks)
