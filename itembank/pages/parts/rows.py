"""Questions on a sheet in rows, and the working room they get on each page."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from itembank.packs.data.pack import PackItem
from itembank.pages.engine.paper import WIDTH, label_width
from itembank.pages.engine.paragraph import Block, Flow, measure
from itembank.pages.parts.board import prompt
from itembank.pages.parts.working_room import lines_of_working

GAP = 18.0
"""Room between two columns."""
SHORT_LINES = 2
"""A question of so many lines in half the width stands beside its neighbour."""
LEAST_SHARE = 0.45
"""Least working room, as a share of what a question would like."""
EASY_SHARE = 0.8
"""With at least this share of its working room a sheet stays on fewer sides."""
MOST_SHARE = 1.6
"""With more than this the page looks empty rather than roomy."""


class Cell(NamedTuple):
    """A question as measured; `opens` says that its topic starts here."""

    number: int
    item: PackItem
    block: Block
    opens: bool


class Row(NamedTuple):
    """One question over the full width, or two or three beside each other.

    Heights are in points: `heading` for topic names above, `text` for the questions, `wish` for
    the working room that the longest solution would like.
    """

    cells: list[Cell]
    width: float
    heading: float
    text: float
    wish: float

    def height(self, share: float) -> float:
        """Return the height of the row with a share of its working room."""
        return self.heading + self.text + share * self.wish


def rows(items: Sequence[PackItem], size: float, least: float, topics: bool = True) -> list[Row]:
    """Return the questions in rows: short neighbours of one topic stand beside each other.

    Topics are named above their questions, unless told not to be.

    Three stand in a row where they are the last of their topic and need a line each, so that
    none is left to take a row alone.
    """
    half, third = (WIDTH - GAP) / 2, (WIDTH - 2 * GAP) / 3
    changes = [True, *(a.topic != b.topic for a, b in pairwise(items))]
    # Where topics change at every turn their names would tell the method, not guide the eye.
    named = topics and sum(changes) <= len({item.topic for item in items}) + 2
    opens = [named and change for change in changes]
    flows = [Flow(prompt(item)) for item in items]
    widest = [max((cluster.width for cluster in flow.clusters), default=0.0) for flow in flows]
    indent = label_width(10, size)

    def fitting(numbers: Sequence[int], width: float, lines: int) -> list[Cell]:
        """Return questions as cells of a row, or none where one of them needs more room."""
        cells = []
        for k in numbers:
            # A formula is never broken only to save a row.
            if lines and widest[k] * size > width - indent:
                return []
            block = measure(flows[k], width - indent, size)
            if lines and len(block.lines) > lines:
                return []
            cells.append(Cell(k + 1, items[k], block, opens[k]))
        return cells

    out = []
    i = 0
    while i < len(items):
        end = next((k for k in range(i + 1, len(items)) if opens[k]), len(items))
        # Two topics share a row only where each of them has this one question.
        lonely = end == i + 1 and (i + 2 == len(items) or (i + 2 < len(items) and opens[i + 2]))
        width, cells = third, fitting(range(i, end), third, 1) if end == i + 3 else []
        if not cells and (end > i + 1 or (lonely and opens[i])):
            width, cells = half, fitting(range(i, i + 2), half, SHORT_LINES)
        if not cells:
            width, cells = WIDTH, fitting([i], WIDTH, 0)
        out.append(_row(cells, width, size, least))
        i += len(cells)
    return out


def _row(cells: list[Cell], width: float, size: float, least: float) -> Row:
    lines = max(lines_of_working(cell.item) for cell in cells)
    title = 0.0
    if any(cell.opens for cell in cells):
        title = (
            max(topic_name(cells, c, width, least).height for c in cells if c.opens) + 1.3 * least
        )
    up = max(cell.block.baseline for cell in cells)
    down = max(cell.block.height - cell.block.baseline for cell in cells)
    return Row(cells, width, title, up + down, (1.6 * lines + 2.5) * size)


def topic_name(cells: Sequence[Cell], cell: Cell, width: float, least: float) -> Block:
    """Return the name of a cell's topic: over the whole row where it is the row's only topic."""
    alone = sum(one.opens for one in cells) == 1
    return measure(Flow(cell.item.topic_title), WIDTH if alone else width, least)


def share_out(
    made: Sequence[Row], first: float, full: float, sides: int
) -> tuple[list[list[Row]], float]:
    """Return rows page by page, with the share of working room that all of them can have.

    `first` is the room on the page already begun, `full` that on the others, `sides` how many
    pages there may be. As few pages as leave room enough are taken; more than `sides` only
    where the least working room leaves no other way.
    """
    found: list[list[Row]] = []
    for pages in range(1, len(made) + 2):
        floor = LEAST_SHARE if pages >= sides else EASY_SHARE
        for step in range(round(MOST_SHARE * 20), round(floor * 20) - 1, -1):
            found = _fill(made, step / 20, first, full)
            if len(found) <= pages:
                return found, step / 20
    return found, LEAST_SHARE


def _fill(made: Sequence[Row], share: float, first: float, full: float) -> list[list[Row]]:
    """Fill pages from the top with rows of the given share."""
    out: list[list[Row]] = [[]]
    room = first
    for row in made:
        height = row.height(share)
        if height > room and (out[-1] or room < full):
            out.append([])
            room = full
        out[-1].append(row)
        room -= height
    return out
