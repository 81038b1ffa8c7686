"""Tables as drawings: ruled cells with their labels, the first row and column in bold."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from itembank.figures.drawing import Content, Drawing, Mark, Point, Stroke, Text, drawing
from itembank.figures.label_room import room

_SIDE = Fraction(2, 5)
_HIGH = Fraction(3, 2)
_TALL = Fraction(12, 5)

Cells = Sequence[Sequence[Content | None]]


NARROW = Fraction(1, 4)
"""The room beside what stands in a cell of a table with many short ones."""


WIDEST = Fraction(33, 2)
"""How wide a table may be, in ems."""


def table_width(cells: Cells, side: Fraction = _SIDE) -> Fraction:
    """Return how wide a table would be with columns alike, in ems.

    `side` is the room on each side of a cell.
    """
    return sum(_alike(_needs(cells), side), Fraction(0))


def least_width(cells: Cells, side: Fraction = _SIDE) -> Fraction:
    """Return how wide a table is at least: each column as wide as it has to be.

    >>> cells = [["", "round", "smooth"], ["7M", "1", "2"]]
    >>> least_width(cells) < table_width(cells)
    True
    """
    return sum(_each(_needs(cells), side), Fraction(0))


def _needs(cells: Cells) -> list[Fraction]:
    """Return how wide the widest cell of each column is."""
    return [
        max((room(cell, True).width for cell in column if cell is not None), default=Fraction(0))
        for column in zip(*cells, strict=True)
    ]


def _each(need: list[Fraction], side: Fraction) -> list[Fraction]:
    return [need[0] + 2 * side, *(max(wide, Fraction(1)) + 2 * side for wide in need[1:])]


def _alike(need: list[Fraction], side: Fraction) -> list[Fraction]:
    """Return the width of each column; all but the first are alike."""
    first, *rest = _each(need, side)
    return [first, *[max(rest)] * len(rest)]


def _widths(cells: Cells, side: Fraction) -> list[Fraction]:
    """Return the width of each column: alike, where that is not too wide for a page."""
    need = _needs(cells)
    alike = _alike(need, side)
    return alike if sum(alike) <= WIDEST else _each(need, side)


def table_drawing(cells: Cells, head_row: bool = True, side: Fraction = _SIDE) -> Drawing:
    """Return a table; a cell that is None stands empty.

    Words are names, in bold; without a row of names above it, those of the first column are.
    """
    widths = _widths(cells, side)
    xs = [Fraction(0)]
    for width in widths:
        xs.append(xs[-1] + width)
    labels = [cell for row in cells for cell in row if cell is not None]
    high = _TALL if any(room(label).height > Fraction(13, 10) for label in labels) else _HIGH
    bottom = -high * len(cells)
    marks: list[Mark] = []
    for number, x in enumerate(xs):
        weight = "heavy" if number == 1 else "normal"
        marks.append(Stroke((Point(x, 0), Point(x, bottom)), "column line", weight))  # type: ignore[arg-type]
    for number in range(len(cells) + 1):
        y = -high * number
        weight = "heavy" if number == 1 and head_row else "normal"
        marks.append(Stroke((Point(0, y), Point(xs[-1], y)), "row line", weight))  # type: ignore[arg-type]
    for down, row in enumerate(cells):
        for across, cell in enumerate(row):
            if cell is None:
                continue
            at = Point((xs[across] + xs[across + 1]) / 2, -high * down - high / 2)
            head = isinstance(cell, str) and (head_row or across == 0)
            marks.append(Text(at, cell, role="head" if head else "cell", bold=head))
    return drawing(marks)
