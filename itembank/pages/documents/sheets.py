"""The follow-up sheets: support, core and challenge, each on A4 with room to work."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from itembank.packs.data.pack import Pack, Sheet
from itembank.packs.data.pack_item import PackItem, TierName
from itembank.pages.documents.sheet_head import Head, draw_head
from itembank.pages.documents.slides import DECIMAL
from itembank.pages.engine.document_titles import sheet_name
from itembank.pages.engine.faces.fonts import face
from itembank.pages.engine.page import theme
from itembank.pages.engine.page.page import Page
from itembank.pages.engine.paper import (
    LEFT,
    RIGHT,
    WIDTH,
    Paper,
    Part,
    boxed,
    label_width,
    text_part,
)
from itembank.pages.engine.paper import writing_line as write
from itembank.pages.engine.pdf.tagging import Element
from itembank.pages.engine.text.paragraph import Strong, draw
from itembank.pages.parts.questions.answers import key_shown
from itembank.pages.parts.questions.marks_said import how_many_each, total
from itembank.pages.parts.questions.question_cell import asked, solved
from itembank.pages.parts.questions.solutions import steps_part
from itembank.pages.parts.sheet.rows import AFTER_TOLD, GAP, Row, topic_name
from itembank.pages.parts.sheet.sheet_pages import (
    LEAST_SHARE,
    MOST_SHARE,
    TIGHT_SHARE,
    Room,
    on_pages,
    share_of,
)
from itembank.planning.bands.caution import ON_A_SHEET

SIDES = 2
"""A sheet takes no more sides than this while there is another way to set it."""


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


def follow_up(pack: Pack, tier: TierName) -> bytes:
    """Return the sheet of a tier: examples where it has them, then questions with room to work.

    Raises:
        ValueError: the pack has no sheet of that tier.
    """
    sheet = next((sheet for sheet in pack.sheets if sheet.tier == tier), None)
    if sheet is None:
        raise ValueError(f"the pack has no {tier} sheet")
    paper = Paper(pack, sheet_name(tier), theme.PAPER_TEXT)
    draw_sheet(paper, pack, sheet)
    return paper.finish()


def draw_sheet(paper: Paper, pack: Pack, sheet: Sheet) -> None:
    """Draw a sheet from the top of the page that is open."""
    open_sheet(paper, pack, sheet)
    draw_questions(paper, sheet.items)


def open_sheet(paper: Paper, pack: Pack, sheet: Sheet) -> None:
    """Draw what stands above a sheet's questions: its head and its examples."""
    bands = [band for band in pack.bands if band.task.tier == sheet.tier]
    # Where the sheet shows whose it is, it says that a band is no grade.
    words = (how_many_each(sheet.items), ON_A_SHEET if bands else "")
    draw_head(paper, pack, Head(sheet_name(sheet.tier), bands, words, total(sheet.items)))
    for example in examples(sheet, WIDTH, paper.size):
        paper.place([example], gap=0.9 * paper.size)


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
        text_part((asked if unfinished else solved)(item), inside, size, after=0.7 * size),
    ]
    hidden = item.left_to_finish if unfinished else 0
    if item.steps:
        parts.append(steps_part(item.steps, inside, size, hidden=hidden, after=0.6 * size))
    if unfinished and not item.drawn:
        parts.append(_answer_to_write(inside, size))
    elif not unfinished:
        parts.append(text_part([Strong("Answer: "), *key_shown(item)], inside, size))
    return boxed(parts, width, pad)


def _answer_to_write(width: float, size: float) -> Part:
    height = 1.5 * size

    def show(page: Page, x: float, top: float) -> None:
        with page.document.tag("P"):
            page.text(x, top - height + 0.4 * size, "Answer:", size, bold=True)
        label = face(True).width("Answer:") * size
        write(page, x + label + 0.5 * size, top - height + 0.4 * size - 2, x + width * 0.5)

    return Part(height, show)


# Questions


def draw_questions(paper: Paper, items: Sequence[PackItem], topics: bool = True) -> None:
    """Draw questions with room to work, going on over the page; with `topics` they are named."""
    pages, share = on_pages(items, paper.size, paper.least, room_on(paper), topics)
    current: Element | None = None
    for number, page in enumerate(pages):
        if number:
            paper.new_page()
        if not page:
            continue
        # What a page has left over goes to its own questions, up to a bound.
        own = max(share, min(MOST_SHARE, share_of(page, paper.room)))
        for place, row in enumerate(page):
            current = _draw_row(paper, row, own * row.wish, current, ruled=place > 0)


def room_on(paper: Paper) -> Room:
    """Return what is left for questions below what is drawn on the page that is open."""
    # Who needs large print writes large too: there no working room is given up for a side.
    tight = LEAST_SHARE if paper.large else TIGHT_SHARE
    return Room(paper.room, paper.full, SIDES - paper.sides + 1, tight)


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
            title = topic_name(row.cells, cell, row.width, paper.least)
            high = paper.y - 0.5 * paper.least
            if place == 0 and ruled:
                with page.artifact():
                    page.line((LEFT, paper.y), (RIGHT, paper.y), colour=theme.RULE, width=0.8)
            with document.tag("H2"):
                draw(page, title, x, high, colour=theme.QUIET)
        if row.told is not None and place == 0:
            with document.tag("P"):
                draw(page, row.told, LEFT, top + row.told.height + AFTER_TOLD * size)
            current = None
        if cell.opens or current is None:
            with document.tag("L", attributes=DECIMAL) as current:
                pass
        with document.back_in(current), document.tag("LI"):
            with document.tag("Lbl"):
                page.text(x, top - up, str(cell.number), size, bold=True, colour=theme.ACCENT)
            with document.tag("LBody"):
                indent = label_width(10, size)
                draw(page, cell.block, x + indent, top - up + cell.block.baseline)
        if not cell.item.drawn:
            _answer_line(page, x, bottom + 1.4 * size, row.width, paper)
    paper.y = bottom
    return current


def _answer_line(page: Page, x: float, y: float, width: float, paper: Paper) -> None:
    label = face().width("Answer") * paper.least + 6
    line = min(8.5 * paper.size, width - label - label_width(10, paper.size))
    with page.artifact():
        page.line((x + width - line, y), (x + width, y), colour=theme.WRITING, width=0.9)
        page.text(
            x + width - line - 6, y + 1, "Answer", paper.least, colour=theme.QUIET, align="right"
        )
