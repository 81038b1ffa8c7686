"""The follow-up sheets: support, core and challenge, each on A4 with room to work."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import pairwise
from typing import NamedTuple

from itembank.packs.model import Band, Pack, PackItem, Sheet, TierName

from . import theme
from .fonts import CAP_HEIGHT, face
from .page import Page
from .paper import LEFT, RIGHT, WIDTH, Paper, Part, boxed, label_width, text_part
from .paper import writing_line as write
from .questions import prompt
from .signs import sign
from .slides import DECIMAL, lesson_line
from .tagging import Element
from .text import Block, Flow, Strong, draw, measure
from .working import steps_part

GAP = 18.0
"""Room between two columns."""
SHORT_LINES = 2
"""A question of so many lines in half the width stands beside its neighbour."""
SIDES = 2
"""A sheet takes no more sides than this while working room can still be given up."""
LEAST_SHARE = 0.45
"""Least working room, as a share of what a question would like."""
EASY_SHARE = 0.8
"""With at least this share of its working room a sheet stays on fewer sides."""
MOST_SHARE = 1.6
"""With more than this the page looks empty rather than roomy."""


def support(pack: Pack) -> bytes:
    """Return the support sheet."""
    return follow_up(pack, "support")


def core(pack: Pack) -> bytes:
    """Return the core sheet."""
    return follow_up(pack, "core")


def challenge(pack: Pack) -> bytes:
    """Return the challenge sheet."""
    return follow_up(pack, "challenge")


DRAWERS: dict[TierName, Callable[[Pack], bytes]] = {
    "support": support,
    "core": core,
    "challenge": challenge,
}
"""What draws the sheet of each tier."""


def sheet_name(tier: TierName) -> str:
    """Return a sheet's title.

    >>> sheet_name("core")
    'Core sheet'
    """
    return f"{tier.capitalize()} sheet"


def follow_up(pack: Pack, tier: TierName) -> bytes:
    """Return the sheet of a tier: examples where it has them, then questions with room to work.

    Raises:
        ValueError: the pack has no sheet of that tier.
    """
    sheet = next((sheet for sheet in pack.sheets if sheet.tier == tier), None)
    if sheet is None:
        raise ValueError(f"the pack has no {tier} sheet")
    paper = Paper(pack, sheet_name(tier), theme.PAPER_TEXT)
    _head(paper, pack, tier)
    for example in examples(sheet, WIDTH, paper.size):
        paper.place([example], gap=0.9 * paper.size)
    _questions(paper, sheet.items)
    return paper.finish()


# Head


def _head(paper: Paper, pack: Pack, tier: TierName) -> None:
    """Draw the sheet's name, whose bands it is for, the lesson, and a place for the seat code."""
    page, size = paper.page, paper.size
    document = page.document
    large = size + 8
    y = paper.y - large * CAP_HEIGHT - 4
    with document.tag("H1"):
        page.text(LEFT, y, sheet_name(tier), large, bold=True, colour=theme.ACCENT)
    x = LEFT + face(True).width(sheet_name(tier)) * large + 1.2 * size
    seat = "Seat code"
    line = 4.3 * size
    right = RIGHT - line - 6
    room = right - face().width(seat) * size - size - x
    _signs(page, [b for b in pack.bands if b.task.tier == tier], x, y, size, room)
    with document.tag("P"):
        page.text(right, y, seat, size, align="right")
    with page.artifact():
        page.line((RIGHT - line, y - 2), (RIGHT, y - 2), width=1.0)
    lesson = text_part([lesson_line(pack.lesson)], WIDTH, size, colour=theme.QUIET)
    paper.y = y - 0.75 * size
    lesson.draw(page, LEFT, paper.y)
    paper.y -= lesson.height + 0.45 * size
    with page.artifact():
        page.rect(LEFT, paper.y, WIDTH, 1.8, fill=theme.ACCENT)
    paper.y -= 1.1 * size


def _signs(page: Page, bands: Sequence[Band], x: float, y: float, size: float, room: float) -> None:
    """Draw the signs of bands, with their names where there is room, inside `room` points."""
    side = 1.75 * size
    names = [measure(Flow(band.name), 1e6, size) for band in bands]
    named = sum(side + 0.4 * size + name.width + size for name in names) - size <= room
    for band, name in zip(bands, names, strict=True):
        if room < side:
            return
        sign(page, band, x, y - 0.5 * size, side)
        step = side + 0.6 * size
        if named:
            with page.document.tag("P"):
                draw(page, name, x + side + 0.4 * size, y + name.baseline)
            step = side + 0.4 * size + name.width + size
        x += step
        room -= step


# Examples


def examples(sheet: Sheet, width: float, size: float) -> list[Part]:
    """Return the boxes that open a sheet: a worked example and one to finish."""
    found = []
    pad = 0.8 * size
    if sheet.worked is not None:
        found.append(_example(sheet.worked, "Worked example", width, size, pad, False))
    if sheet.part_finished is not None:
        title = "Now finish this one"
        found.append(_example(sheet.part_finished, title, width, size, pad, True))
    return found


def _example(
    item: PackItem, title: str, width: float, size: float, pad: float, unfinished: bool
) -> Part:
    inside = width - 2 * pad
    parts = [
        text_part(title, inside, size, kind="H2", bold=True, colour=theme.ACCENT, after=0.5 * size),
        text_part(prompt(item), inside, size, after=0.7 * size),
    ]
    lines = sum(step.maths is not None for step in item.steps)
    hidden = lines - lines // 2 if unfinished else 0
    if item.steps:
        parts.append(steps_part(item.steps, inside, size, hidden=hidden, after=0.6 * size))
    if unfinished:
        parts.append(_answer_to_write(inside, size))
    else:
        parts.append(text_part([Strong("Answer: "), item.key], inside, size))
    return boxed(parts, width, pad)


def _answer_to_write(width: float, size: float) -> Part:
    height = 1.5 * size

    def show(page: Page, x: float, top: float) -> None:
        with page.document.tag("P"):
            label = page.text(x, top - height + 0.4 * size, "Answer:", size, bold=True)
        write(page, x + label + 0.5 * size, top - height + 0.4 * size - 2, x + width * 0.5)

    return Part(height, show)


# Questions


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


def rows(items: Sequence[PackItem], size: float, least: float) -> list[Row]:
    """Return the questions in rows: short neighbours of one topic stand beside each other.

    Three stand in a row where they are the last of their topic and need a line each, so that
    none is left to take a row alone.
    """
    half, third = (WIDTH - GAP) / 2, (WIDTH - 2 * GAP) / 3
    changes = [True, *(a.topic != b.topic for a, b in pairwise(items))]
    # Where topics change at every turn their names would tell the method, not guide the eye.
    named = sum(changes) <= len({item.topic for item in items}) + 2
    opens = [named and change for change in changes]
    flows = [Flow(prompt(item)) for item in items]
    indent = label_width(10, size)

    def fitting(numbers: Sequence[int], width: float, lines: int) -> list[Cell]:
        """Return questions as cells of a row, or none where one of them needs more room."""
        cells = []
        for k in numbers:
            block = measure(flows[k], width - indent, size)
            if lines and (len(block.lines) > lines or block.cramped):
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
    lines = max(min(5, max(3, len(cell.item.steps))) for cell in cells)
    title = 0.0
    if any(cell.opens for cell in cells):
        title = max(_topic(cells, c, width, least).height for c in cells if c.opens) + 1.3 * least
    up = max(cell.block.baseline for cell in cells)
    down = max(cell.block.height - cell.block.baseline for cell in cells)
    return Row(cells, width, title, up + down, (1.6 * lines + 2.5) * size)


def _topic(cells: Sequence[Cell], cell: Cell, width: float, least: float) -> Block:
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


def _questions(paper: Paper, items: Sequence[PackItem]) -> None:
    made = rows(items, paper.size, paper.least)
    used = len(paper.document.pages)
    pages, share = share_out(made, paper.room, paper.full, SIDES - used + 1)
    current: Element | None = None
    for number, page in enumerate(pages):
        if number:
            paper.new_page()
        if not page:
            continue
        fixed = sum(row.heading + row.text for row in page)
        # What a page has left over goes to its own questions, up to a bound.
        most = (paper.room - fixed) / sum(row.wish for row in page)
        own = min(most, max(share, min(MOST_SHARE, share * 1.5)))
        for place, row in enumerate(page):
            current = _draw_row(paper, row, own * row.wish, current, ruled=place > 0)


def _draw_row(
    paper: Paper, row: Row, working: float, current: Element | None, ruled: bool
) -> Element | None:
    """Draw a row of questions, in the list of its topic, with the room for working below.

    A thin line divides it from another topic above where it is `ruled`.
    """
    document, page, size = paper.document, paper.page, paper.size
    top = paper.y - row.heading
    up = max(cell.block.baseline for cell in row.cells)
    bottom = top - row.text - working
    for place, cell in enumerate(row.cells):
        x = LEFT + place * (row.width + GAP)
        if cell.opens:
            title = _topic(row.cells, cell, row.width, paper.least)
            high = top + row.heading - 0.5 * paper.least
            if place == 0 and ruled:
                with page.artifact():
                    page.line((LEFT, paper.y), (RIGHT, paper.y), colour=theme.RULE, width=0.8)
            with document.tag("H2"):
                draw(page, title, x, high, colour=theme.QUIET)
        if cell.opens or current is None:
            with document.tag("L", attributes=DECIMAL) as current:
                pass
        with document.back_in(current), document.tag("LI"):
            with document.tag("Lbl"):
                page.text(x, top - up, str(cell.number), size, bold=True, colour=theme.ACCENT)
            with document.tag("LBody"):
                indent = label_width(10, size)
                draw(page, cell.block, x + indent, top - up + cell.block.baseline)
        _answer_line(page, x, bottom + 1.4 * size, row.width, paper)
    paper.y = bottom
    return current


def _answer_line(page: Page, x: float, y: float, width: float, paper: Paper) -> None:
    label = face().width("Answer") * paper.least + 6
    line = min(8.5 * paper.size, width - label - label_width(10, paper.size))
    with page.artifact():
        page.line((x + width - line, y), (x + width, y), colour=theme.QUIET, width=0.9)
        page.text(
            x + width - line - 6, y + 1, "Answer", paper.least, colour=theme.QUIET, align="right"
        )
