"""A map of rows by weeks: the figure in each cell, and how light the cell is, say the same."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import AbstractContextManager
from typing import TypeAlias

from itembank.pages.engine.faces.fonts import face
from itembank.pages.engine.page import theme
from itembank.pages.engine.page.page import Page
from itembank.pages.engine.paper import WIDTH, Part
from itembank.pages.engine.pdf.tagging import Element
from itembank.pages.engine.table_drawn import HEADER, ROW_HEADER, Pieces
from itembank.pages.engine.text.paragraph import Flow, draw, measure

CELL = 27.0
HIGH = 19.0
WIDEST_NAME = 290.0
"""Room for a row's name where few weeks leave it; a name that needs more takes more lines."""
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


SCORED = "s"
"""Stands in a cell instead of a figure where the row was only part of a score."""
Shown: TypeAlias = float | str | None
"""What a cell holds: a share, :data:`SCORED`, or nothing."""


def shade(share: float) -> tuple[str, str]:
    """Return the fill and the ink of a share.

    >>> shade(1.0) == STEPS[-1], shade(0.1) == STEPS[0]
    (True, True)
    """
    # By the figure that is printed: 39.6 % stands there as 40, and the legend has 40 lighter.
    printed = round(100 * share)
    return STEPS[max(place for place, low in enumerate(FROM) if printed >= round(100 * low))]


def legend_part(size: float) -> Part:
    """Return the steps of the map, each with its shares written into it."""
    ends = [*(round(100 * low) for low in FROM[1:]), 101]
    texts = [f"{round(100 * low)}–{end - 1}" for low, end in zip(FROM, ends, strict=True)]
    wide = 2 * CELL

    def show(page: Page, x: float, top: float) -> None:
        base = top - HIGH / 2 - 0.35 * size
        with page.document.tag("P"):
            for (fill, ink), text in zip(STEPS, texts, strict=True):
                with page.artifact():
                    page.rect(x, top - HIGH, wide, HIGH, fill=fill, stroke=theme.RULE, line=0.6)
                page.text(x + wide / 2, base, text, size, colour=ink, align="centre")
                x += wide
            page.text(x + 0.5 * size, base, "% right", size)

    return Part(HIGH + 0.6 * size, show)


def heat_map(
    weeks: Sequence[tuple[str, str]],
    rows: Sequence[tuple[str, Sequence[Shown]]],
    size: float,
) -> list[Pieces]:
    """Return a table for each stretch of weeks, each as parts that may stand on two pages.

    A week's name comes in two short lines. Rows with nothing in a stretch are left out.
    """
    room = min(WIDTH - min(len(weeks), WEEKS) * CELL, WIDEST_NAME)
    found = []
    for start in range(0, len(weeks), WEEKS):
        part = slice(start, start + WEEKS)
        some = [(name, cells[part]) for name, cells in rows]
        some = [row for row in some if any(cell is not None for cell in row[1])]
        if some:
            found.append(_table(weeks[part], some, room, size))
    return found


def _table(
    weeks: Sequence[tuple[str, str]],
    rows: Sequence[tuple[str, Sequence[Shown]]],
    room: float,
    size: float,
) -> Pieces:
    tables: list[Element] = []
    head = 2.5 * size
    names = [measure(Flow(name), room - 8, size) for name, _ in rows]
    # Of a row or two there would be more names than figures to read out.
    many = len(rows) * len(weeks) >= len(rows) + len(weeks) + 1
    name_tag = ("TH", "", ROW_HEADER) if many else ("TD", "", "")
    high = [max(HIGH, name.height + 4) for name in names]

    def first(page: Page, x: float, top: float) -> None:
        document = page.document
        with document.tag("Table") as table:
            tables.append(table)
            with document.tag("TR"):
                heads(page, x, top)
            row(page, x, top - head, 0)

    def heads(page: Page, x: float, top: float, tagged: bool = True) -> None:
        def cell() -> AbstractContextManager[object]:
            return page.document.tag("TH", attributes=HEADER) if tagged else page.artifact()

        with cell():
            page.text(x, top - 2.1 * size, "Topic", size, bold=True)
        for place, (day, month) in enumerate(weeks):
            middle = x + room + (place + 0.5) * CELL
            with cell():
                page.text(middle, top - size, f"{day} ", size, bold=True, align="centre")
                page.text(middle, top - 2.1 * size, month, size, align="centre")

    def row(page: Page, x: float, top: float, number: int) -> None:
        document = page.document
        with document.tag("TR"):
            with document.tag(*name_tag):
                draw(page, names[number], x, top - (high[number] - names[number].height) / 2)
            for place, share in enumerate(rows[number][1]):
                left = x + room + place * CELL
                with document.tag("TD"):
                    _cell(page, left, top, high[number], share, size)

    def later(number: int) -> Part:
        def show(page: Page, x: float, top: float) -> None:
            with page.document.back_in(tables[-1]):
                row(page, x, top, number)

        return Part(high[number], show)

    parts = [Part(head + high[0], first), *(later(number) for number in range(1, len(rows)))]
    again = Part(head, lambda page, x, top: heads(page, x, top, tagged=False))
    return Pieces(parts, again)


def _cell(page: Page, left: float, top: float, high: float, share: Shown, size: float) -> None:
    base = top - high / 2 - 0.35 * size
    if share is None:
        page.text(left + CELL / 2, base, "·", size, colour=theme.QUIET, align="centre")
        return
    if isinstance(share, str):
        page.text(left + CELL / 2, base, share, size, align="centre")
        return
    fill, ink = shade(share)
    with page.artifact():
        page.rect(left, top - high, CELL, high, fill=fill, stroke=theme.RULE, line=0.6)
    text = str(round(100 * share))
    assert face().width(text) * size < CELL
    page.text(left + CELL / 2, base, text, size, colour=ink, align="centre")
