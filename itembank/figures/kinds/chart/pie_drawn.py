"""How a pie chart is drawn: sectors, a pointer to the labels of each, right angles, the total."""

from __future__ import annotations

import math
from fractions import Fraction
from functools import lru_cache
from typing import TYPE_CHECKING, NamedTuple

from itembank.figures.circle_points import on_circle
from itembank.figures.drawing import (
    Across,
    Arc,
    Content,
    Drawing,
    Exact,
    Mark,
    Point,
    Stroke,
    Text,
    Up,
    drawing,
    text_box,
)
from itembank.figures.kinds.labels.whole_points import Whole, whole
from itembank.figures.kinds.linear_facts import plain
from itembank.figures.label_room import room
from itembank.notation import tree as t
from itembank.once import once

if TYPE_CHECKING:
    from itembank.figures.kinds.chart.pie_chart import PieChart

_CENTRE = Point(0, 0)
_RADIUS = Fraction(2)
_POINTS_TO = Fraction(23, 10)
_LABEL_AT = 49
"""In twentieths of an em."""
_CORNER = Fraction(2, 5)
_LINE = 21
"""In twentieths of an em."""
_SIDE, _LEVEL = Fraction(1, 10), Fraction(7, 20)
"""Nearer to upright, labels stand over the pointer's end; nearer to level, on both sides of it."""


def _turns(figure: PieChart) -> list[tuple[str, Fraction, Fraction]]:
    """Return each sector's name, and where it begins and ends in parts of a turn."""
    found, start = [], Fraction(0)
    for name, degrees in figure.sectors:
        end = start + Fraction(degrees, 360)
        found.append((name, start, end))
        start = end
    return found


def _size(figure: PieChart, name: str, degrees: int) -> t.Node | None:
    letter = dict(figure.letters).get(name)
    if letter:
        return t.Quantity(t.Sym(letter), "°")
    return None if degrees == 90 else t.Quantity(t.Int(degrees), "°")


class Label(NamedTuple):
    """A label, and where it stands: x and y in parts of which `over` are an em."""

    name: str
    role: str
    content: Content
    across: Across
    up: Up
    x: int
    y: int
    over: int

    @property
    def text(self) -> Text:
        """Return it as it is drawn."""
        at = Point(Fraction(self.x, self.over), Fraction(self.y, self.over))
        return Text(at, self.content, self.across, self.up, self.role)


@once
def labels_of(figure: PieChart) -> tuple[Label, ...]:
    """Return the labels at each sector, in whole numbers: most are only looked at for room."""
    found = []
    start = 0
    for name, degrees in figure.sectors:
        # Clockwise from the top, so half a sector is so many half degrees.
        x, y, over = _way(2 * start + degrees)
        start += degrees
        across: Across = "left" if x > 0 else "right"
        if abs(x) * _SIDE.denominator < _SIDE.numerator * over:
            across = "centre"
        size = _size(figure, name, degrees)
        rows: list[tuple[str, Content]] = [("name", name)]
        rows += [] if size is None else [("angle", size)]
        up: Up = "bottom" if y > 0 else "top"
        if abs(y) * _LEVEL.denominator < _LEVEL.numerator * over:
            up = "middle"
        lines = len(rows) - 1
        # In fortieths of an em, since the middle of two lines is half a line down.
        first = {"middle": _LINE * lines, "bottom": 2 * _LINE * lines, "top": 0}[up]
        for row, (role, content) in enumerate(rows):
            down = (first - 2 * _LINE * row) * over
            at = (2 * _LABEL_AT * x, 2 * _LABEL_AT * y + down, 40 * over)
            found.append(Label(name, role, content, across, up, *at))
    return tuple(found)


@lru_cache(maxsize=1024)
def _way(half_degrees: int) -> Whole:
    """Return the point of the unit circle so many half degrees clockwise from the top."""
    return whole(on_circle(_CENTRE, 1, Fraction(half_degrees, 720)))


@lru_cache(maxsize=4096)
def _size_of(content: Content) -> tuple[Exact, Exact]:
    """Return how wide and how high a label is, in parts of which `_FINE` are an em."""
    need = room(content)
    return plain(need.width * _FINE), plain(need.height * _FINE)


_FINE = 400
"""Of so many parts of an em the sizes of labels are mostly whole numbers; any number is exact."""


_HALVES = {"left": 0, "bottom": 0, "centre": 1, "middle": 1, "right": 2, "top": 2}
"""How many halves of a label's size lie before its place."""


def too_near(figure: PieChart) -> tuple[str, str] | None:
    """Return the names of two sectors whose labels do not fit side by side, None if all do."""
    labels = labels_of(figure)
    # All in one kind of part, so that no fraction is compared.
    parts = math.lcm(*(label.over for label in labels), _FINE)
    boxes = []
    for label in labels:
        wide, high = (size * (parts // _FINE) for size in _size_of(label.content))
        x, y = label.x * (parts // label.over), label.y * (parts // label.over)
        # All twice as large, so that half a label is whole too.
        left = 2 * x - _HALVES[label.across] * wide
        low = 2 * y - _HALVES[label.up] * high
        boxes.append((label.name, left, low, left + 2 * wide, low + 2 * high))
    gap = 2 * parts // 5  # a fifth of an em
    for place, (name, left, low, right, top) in enumerate(boxes):
        for other, first, bottom, last, most in boxes[place + 1 :]:
            if (
                left < last + gap
                and first < right + gap
                and low < most + gap
                and bottom < top + gap
                and name != other
            ):
                return name, other
    return None


def pie_drawing(figure: PieChart) -> Drawing:
    """Return what is drawn of a pie chart."""
    marks: list[Mark] = []
    letters = dict(figure.letters)
    for (name, start, end), (_, degrees) in zip(_turns(figure), figure.sectors, strict=True):
        a, b = (on_circle(_CENTRE, _RADIUS, part) for part in (start, end))
        # Clockwise from the top, so the arc runs back.
        marks.append(Arc(_CENTRE, _RADIUS, b, a, "sector", sector=True))
        middle = (start + end) / 2
        ends = (
            on_circle(_CENTRE, _RADIUS, middle),
            on_circle(_CENTRE, _POINTS_TO, middle),
        )
        marks.append(Stroke(ends, "pointer", "thin"))
        if degrees == 90 and name not in letters:
            c, d = (on_circle(_CENTRE, _CORNER, part) for part in (start, end))
            marks.append(Stroke((c, Point(c.x + d.x, c.y + d.y), d), "right angle", "thin"))
    labels = [label.text for label in labels_of(figure)]
    marks += labels
    boxes = [text_box(label) for label in labels]
    low = min(-_POINTS_TO, *(box.bottom for box in boxes)) - Fraction(1, 4)
    if figure.total:
        said = f"Total: {figure.total} {figure.counted}"
        marks.append(Text(Point(0, low), said, up="top", role="total"))
    if figure.title:
        high = max(_POINTS_TO, *(box.top for box in boxes)) + Fraction(1, 4)
        marks.append(Text(Point(0, high), figure.title, up="bottom", role="title", bold=True))
    return drawing(marks)
