"""How a pie chart is drawn: sectors, a pointer to the labels of each, right angles, the total."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from itembank.figures.circle_points import on_circle
from itembank.figures.drawing import (
    Across,
    Arc,
    Drawing,
    Mark,
    Point,
    Stroke,
    Text,
    Up,
    drawing,
    text_box,
)
from itembank.notation import tree as t
from itembank.once import once

if TYPE_CHECKING:
    from itembank.figures.kinds.pie_chart import PieChart

_CENTRE = Point(0, 0)
_RADIUS = Fraction(2)
_POINTS_TO = Fraction(23, 10)
_LABEL_AT = Fraction(49, 20)
_CORNER = Fraction(2, 5)
_LINE = Fraction(21, 20)
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


@once
def label_texts(figure: PieChart) -> tuple[tuple[str, str, Text], ...]:
    """Return the labels at each sector: its name, what the label says, and the label."""
    found = []
    for (name, start, end), (_, degrees) in zip(_turns(figure), figure.sectors, strict=True):
        way = on_circle(_CENTRE, 1, (start + end) / 2)
        x, y = way.x * _LABEL_AT, way.y * _LABEL_AT
        aside, above = abs(Fraction(way.x)), abs(Fraction(way.y))
        across: Across = "centre" if aside < _SIDE else "left" if way.x > 0 else "right"
        size = _size(figure, name, degrees)
        rows: list[tuple[str, str | t.Node]] = [("name", name)]
        rows += [] if size is None else [("angle", size)]
        up: Up = "middle" if above < _LEVEL else "bottom" if way.y > 0 else "top"
        lines = len(rows) - 1
        first = {"middle": _LINE * lines / 2, "bottom": _LINE * lines, "top": Fraction(0)}[up]
        for row, (role, content) in enumerate(rows):
            at = Point(x, y + first - _LINE * row)
            found.append((name, role, Text(at, content, across, up, role)))
    return tuple(found)


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
    labels = [text for _, _, text in label_texts(figure)]
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
