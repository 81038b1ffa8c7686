"""A map of rows by weeks: the figure in each cell, and how light the cell is, say the same."""

from __future__ import annotations

from collections.abc import Sequence

from . import theme
from .fonts import face
from .page import Page
from .paper import Part
from .slides import shortened
from .table import HEADER, ROW_HEADER
from .tagging import Element

NAME = 152.0
CELL = 27.0
HIGH = 19.0
WEEKS = 13
"""Weeks beside each other: a term's."""
STEPS = (
    (theme.ACCENT, theme.WHITE),
    (theme.tint(theme.ACCENT, 0.75), theme.WHITE),
    (theme.tint(theme.ACCENT, 0.42), theme.INK),
    (theme.tint(theme.ACCENT, 0.2), theme.INK),
    (theme.WHITE, theme.INK),
)
"""Fill and ink of a cell, from the fewest right to the most; they part in grey as well."""
FROM = (0.0, 0.4, 0.6, 0.75, 0.9)
"""The share from which each step counts."""


def shade(share: float) -> tuple[str, str]:
    """Return the fill and the ink of a share.

    >>> shade(1.0) == STEPS[-1], shade(0.1) == STEPS[0]
    (True, True)
    """
    return STEPS[max(place for place, low in enumerate(FROM) if share >= low - 1e-9)]


def heat_map(
    weeks: Sequence[tuple[str, str]],
    rows: Sequence[tuple[str, Sequence[float | None]]],
    size: float,
) -> list[list[Part]]:
    """Return a table for each stretch of weeks, each as parts that may stand on two pages.

    A week's name comes in two short lines. Rows without a figure in a stretch are left out.
    """
    found = []
    for start in range(0, len(weeks), WEEKS):
        part = slice(start, start + WEEKS)
        some = [(name, cells[part]) for name, cells in rows]
        some = [row for row in some if any(cell is not None for cell in row[1])]
        if some:
            found.append(_table(weeks[part], some, size))
    return found


def _table(
    weeks: Sequence[tuple[str, str]],
    rows: Sequence[tuple[str, Sequence[float | None]]],
    size: float,
) -> list[Part]:
    tables: list[Element] = []
    head = 2.5 * size

    def first(page: Page, x: float, top: float) -> None:
        document = page.document
        with document.tag("Table") as table:
            tables.append(table)
            with document.tag("TR"):
                with document.tag("TH", attributes=HEADER):
                    page.text(x, top - 2.1 * size, "Topic", size, bold=True)
                for place, (day, month) in enumerate(weeks):
                    middle = x + NAME + (place + 0.5) * CELL
                    with document.tag("TH", attributes=HEADER):
                        page.text(middle, top - size, f"{day} ", size, bold=True, align="centre")
                        page.text(middle, top - 2.1 * size, month, size, align="centre")
            row(page, x, top - head, 0)

    def row(page: Page, x: float, top: float, number: int) -> None:
        document = page.document
        name, cells = rows[number]
        base = top - HIGH / 2 - 0.35 * size
        with document.tag("TR"):
            with document.tag("TH", attributes=ROW_HEADER):
                page.text(x, base, shortened(name, NAME - 8, size), size)
            for place, share in enumerate(cells):
                left = x + NAME + place * CELL
                with document.tag("TD"):
                    _cell(page, left, top, base, share, size)

    def later(number: int) -> Part:
        def show(page: Page, x: float, top: float) -> None:
            with page.document.back_in(tables[-1]):
                row(page, x, top, number)

        return Part(HIGH, show)

    return [Part(head + HIGH, first), *(later(number) for number in range(1, len(rows)))]


def _cell(
    page: Page, left: float, top: float, base: float, share: float | None, size: float
) -> None:
    if share is None:
        page.text(left + CELL / 2, base, "·", size, colour=theme.QUIET, align="centre")
        return
    fill, ink = shade(share)
    with page.artifact():
        page.rect(left, top - HIGH, CELL, HIGH, fill=fill, stroke=theme.RULE, line=0.6)
    text = str(round(100 * share))
    assert face().width(text) * size < CELL
    page.text(left + CELL / 2, base, text, size, colour=ink, align="centre")
