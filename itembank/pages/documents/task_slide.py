"""The slide of next tasks: what pupils of each band do after the starter."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from itembank.errors import ItembankError
from itembank.packs.data.pack import Band, Pack
from itembank.pages.documents.slides import TOP, heading
from itembank.pages.engine.document_titles import title_of
from itembank.pages.engine.page import theme
from itembank.pages.engine.page.page import Document, Page
from itembank.pages.engine.page.signs import interval, sign
from itembank.pages.engine.text.paragraph import Block, Flow, Strong, draw, measure
from itembank.pages.parts.slide.score_line import FOOT
from itembank.pages.parts.slide.slide_board import LEFT, RIGHT
from itembank.planning.bands.caution import FOR_PUPILS

SIGN = 42.0
GAP = 10.0
"""Room between columns."""
PAD = 9.0
"""Room between a column's frame and its words."""
NOTICE = f"{FOR_PUPILS} Your teacher may ask you to do something else."


def next_tasks(pack: Pack) -> bytes:
    """Return the slide of next tasks; a second one only where the words need it.

    Raises:
        ItembankError: the words of one band alone do not fit on a slide.
    """
    document = Document(title_of(pack, "Next tasks"))
    notice = measure(Flow(NOTICE), RIGHT - LEFT, 18)
    bottom = FOOT + notice.height + 8
    slides = _share(pack.bands, TOP - bottom)
    for number, (bands, columns) in enumerate(slides):
        page = document.page(theme.SLIDE, theme.PAPERS[pack.look.paper])
        heading(page, pack, "Next tasks" if not number else "More next tasks", not number)
        _columns(page, bands, columns, bottom)
        with document.tag("P"):
            draw(page, notice, LEFT, FOOT + notice.height, colour=theme.QUIET)
    return document.finish()


Column = tuple[list[Block], float]


def _share(bands: Sequence[Band], room: float) -> list[tuple[Sequence[Band], list[Column]]]:
    """Share the bands over as few slides as their words allow."""
    for slides in range(1, len(bands) + 1):
        cuts = [round(i * len(bands) / slides) for i in range(slides + 1)]
        groups = [bands[a:b] for a, b in pairwise(cuts)]
        made = [_set(group, room) for group in groups]
        if all(made):
            return [(group, m) for group, m in zip(groups, made, strict=True) if m]
    raise ItembankError(
        "The words of a band's next task are too long for a slide. "
        f"Shorten the task of one of these bands: {', '.join(band.name for band in bands)}."
    )


def _width(count: int) -> float:
    return (RIGHT - LEFT - GAP * (count - 1)) / count


def _set(bands: Sequence[Band], room: float) -> list[Column] | None:
    """Return the columns set in the largest size at which all fit, or None."""
    inside = _width(len(bands)) - 2 * PAD
    least, most = theme.NEXT_TASK
    for size in range(int(most), int(least) - 1, -1):
        columns = [_column(band, inside, float(size)) for band in bands]
        head = _head(columns)
        if all(_height(column, head) <= room for column in columns) and not any(
            block.cramped for blocks, _ in columns for block in blocks
        ):
            return columns
    return None


def _column(band: Band, width: float, size: float) -> Column:
    task = band.task
    name = measure(Flow([Strong(band.name), f"\n{_marks(band)}"]), width - SIGN - 10, size)
    title = measure(Flow(task.title, bold=True), width, size + 1)
    lines = (
        ("Where", task.where),
        ("First", task.first),
        ("How", task.how),
        ("Stuck?", task.stuck),
        ("Finished?", task.finished),
    )
    rest = [measure(Flow([Strong(label), f" {words}"]), width, size) for label, words in lines]
    return [name, title, *rest], size


def _between(size: float) -> float:
    """Return the room between paragraphs: less where the words are many."""
    return size * (0.45 if size >= 20 else 0.24)


def _marks(band: Band) -> str:
    return "1 mark" if band.lowest == band.highest == 1 else f"{interval(band)} marks"


def _height(column: Column, head: float) -> float:
    blocks, size = column
    rest = blocks[1:]
    text = sum(block.height for block in rest) + _between(size) * (len(rest) - 1)
    return PAD + head + 11 + text + PAD


def _columns(page: Page, bands: Sequence[Band], columns: list[Column], bottom: float) -> None:
    document = page.document
    width = _width(len(bands))
    head = _head(columns)
    x = LEFT
    for band, (blocks, size) in zip(bands, columns, strict=True):
        name, title, *rest = blocks
        with page.artifact():
            page.rect(x, bottom, width, TOP - bottom, fill=theme.WHITE, stroke=theme.RULE, radius=8)
            page.rect(x + PAD, TOP - PAD - 5 - head, width - 2 * PAD, 1.2, fill=theme.RULE)
        top = TOP - PAD
        with document.tag("Sect"):
            sign(page, band, x + PAD, top - (head + SIGN) / 2, SIGN)
            with document.tag("H2"):
                draw(page, name, x + PAD + SIGN + 10, top - (head - name.height) / 2)
            y = top - head - 11
            for number, block in enumerate((title, *rest)):
                with document.tag("P"):
                    draw(page, block, x + PAD, y, colour=theme.INK if number else theme.ACCENT)
                y -= block.height + _between(size)
        x += width + GAP


def _head(columns: list[Column]) -> float:
    """Return the height of the heads of all columns, so that their tasks start level."""
    return max(SIGN, *(blocks[0].height for blocks, _ in columns))
