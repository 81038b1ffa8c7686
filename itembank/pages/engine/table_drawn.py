"""Tables on paper, measured whole before they are drawn; rows are never divided."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

from itembank.packs.data.pack_item import Maths
from itembank.pages.engine.page import theme
from itembank.pages.engine.page.page import Page
from itembank.pages.engine.paper import Part, space, stack
from itembank.pages.engine.pdf.tagging import Element
from itembank.pages.engine.text.paragraph import Block, Flow, Piece, draw, measure

HEADER = "<</O /Table /Scope /Column>>"
ROW_HEADER = "<</O /Table /Scope /Row>>"

Contents = str | Sequence[Piece] | Maths


class Cell(NamedTuple):
    """A cell with something drawn before its words, in `room` points."""

    contents: Contents
    room: float = 0.0
    sign: Callable[[Page, float, float], None] | None = None


class Pieces(NamedTuple):
    """A table that may go on over the page: `rows`, the first with the head above it.

    `again` is the head once more, drawn as decoration above rows on a later page.
    """

    rows: list[Part]
    again: Part


def table_part(
    head: Sequence[str],
    rows: Sequence[Sequence[Contents | Cell]],
    widths: Sequence[float],
    size: float,
    *,
    after: float = 0.0,
    row_headers: bool = False,
) -> Part:
    """Return a table with a head and thin lines between rows, which is never divided.

    `widths` are those of the columns, in points, with the room between columns. With
    `row_headers` the first cell of each row names the row.
    """
    made = table_pieces(head, rows, widths, size, row_headers=row_headers)
    return stack([*made.rows, space(after)])


def table_pieces(
    head: Sequence[str],
    rows: Sequence[Sequence[Contents | Cell]],
    widths: Sequence[float],
    size: float,
    *,
    row_headers: bool = False,
) -> Pieces:
    """Return the same table in rows, to be drawn in turn; they all stand in one ``Table``."""
    gap = 0.9 * size
    pad = 0.3 * size
    top_row = [
        measure(Flow(text, bold=True), width - gap, size)
        for text, width in zip(head, widths, strict=True)
    ]
    head_height = _height(top_row, pad)
    width = sum(widths)
    tables: list[Element] = []

    def show_head(page: Page, x: float, top: float, tagged: bool = True) -> None:
        document = page.document
        at = x
        for block, column in zip(top_row, widths, strict=True):
            with document.tag("TH", attributes=HEADER) if tagged else page.artifact():
                draw(page, block, at, top - pad)
            at += column
        _line(page, x, top - head_height, width, 1.2, theme.INK)

    def piece(number: int) -> Part:
        row = [
            _cell(cell, column - gap, size)
            for cell, column in zip(rows[number], widths, strict=True)
        ]
        height = _height([block for _, block in row], pad)

        def show_row(page: Page, x: float, top: float) -> None:
            document = page.document
            with document.tag("TR"):
                _draw_row(page, row, widths, x, top - pad, row_headers)
            if number < len(rows) - 1:
                _line(page, x, top - height, width, 0.6, theme.RULE)

        def show(page: Page, x: float, top: float) -> None:
            document = page.document
            if number:
                # Later rows go into the table that the first began, also on the next page.
                with document.back_in(tables[-1]):
                    show_row(page, x, top)
                return
            with document.tag("Table") as table:
                tables.append(table)
                with document.tag("TR"):
                    show_head(page, x, top)
                show_row(page, x, top - head_height)

        return Part(height + (0.0 if number else head_height), show)

    again = Part(head_height, lambda page, x, top: show_head(page, x, top, tagged=False))
    return Pieces([piece(number) for number in range(len(rows))], again)


def _draw_row(
    page: Page,
    row: Sequence[tuple[Cell, Block]],
    widths: Sequence[float],
    x: float,
    top: float,
    row_headers: bool,
) -> None:
    document = page.document
    # All cells of a row stand on one baseline, however tall a fraction is in one of them.
    up = max(block.baseline for _, block in row)
    for place, ((cell, block), column) in enumerate(zip(row, widths, strict=True)):
        named = row_headers and place == 0
        kind, attributes = ("TH", ROW_HEADER) if named else ("TD", "")
        with document.tag(kind, attributes=attributes):
            if cell.sign is not None:
                cell.sign(page, x, top - up)
            draw(page, block, x + cell.room, top - up + block.baseline)
        x += column


def _cell(given: Contents | Cell, width: float, size: float) -> tuple[Cell, Block]:
    cell = given if isinstance(given, Cell) else Cell(given)
    contents = [cell.contents] if isinstance(cell.contents, Maths) else cell.contents
    return cell, measure(Flow(contents), width - cell.room, size)


def _height(blocks: Sequence[Block], pad: float) -> float:
    up = max(block.baseline for block in blocks)
    return up + max(block.height - block.baseline for block in blocks) + 2 * pad


def _line(page: Page, x: float, y: float, width: float, weight: float, colour: str) -> None:
    with page.artifact():
        page.line((x, y), (x + width, y), colour=colour, width=weight)
