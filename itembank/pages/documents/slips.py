"""Pupil slips of the starter: two A5 slips side by side on A4 landscape, to be cut apart.

With more than one version, left and right alternate, so that neighbours differ.
"""

from __future__ import annotations

from itembank.packs.data.pack import Pack, Version
from itembank.packs.data.pack_item import PackItem
from itembank.pages.documents.slides import DECIMAL, shortened
from itembank.pages.engine.document_titles import title_of
from itembank.pages.engine.faces.fonts import face, plain
from itembank.pages.engine.page import theme
from itembank.pages.engine.page.page import Document, Page
from itembank.pages.engine.paper import printed_ground
from itembank.pages.engine.text.paragraph import draw
from itembank.pages.parts.sheet.slip_layout import (
    INDENT,
    LABEL,
    LINE,
    Placed,
    Slip,
    arrange_slips,
    on_one_slip,
    slip_share,
)
from itembank.text.in_words import long_date

PAGE = (theme.A4[1], theme.A4[0])
MARGIN = 30.0
WIDTH = PAGE[0] / 2 - 2 * MARGIN
EDGE = 24.0
"""Room above and below a slip: 8.5 mm, inside what a school printer can print."""
TOP = PAGE[1] - EDGE
BOTTOM = EDGE + 2
BELOW_HEAD = 9.0
"""Room that a head takes below its last row, beside what its rule has."""
SIZES = (14.0, 13.0, 12.0)


def slips(pack: Pack) -> bytes:
    """Return the slips as A4 landscape pages.

    Raises:
        ItembankError: one question alone does not fit on a slip.
    """
    document = Document(title_of(pack, "Starter slips"))
    layouts = [_pages(version, pack) for version in pack.versions]
    count = len(pack.versions)
    for sheet in range((count + 1) // 2 if count > 1 else 1):
        left, right = 2 * sheet % count, (2 * sheet + 1) % count
        sides = max(len(layouts[left]), len(layouts[right]))
        for side in range(sides):
            page = document.page(PAGE, printed_ground(pack.look))
            for half, which in enumerate((left, right)):
                if side < len(layouts[which]):
                    _slip(page, pack, pack.versions[which], layouts[which][side], half, side)
            with page.artifact():
                middle = PAGE[0] / 2
                page.line(
                    (middle, 12), (middle, PAGE[1] - 12), colour=theme.RULE, width=0.8, dash="5 4"
                )
    return document.finish()


def on_slip(pack: Pack) -> bool:
    """Tell whether the questions of a pack stand on one side of a slip, in all its versions."""
    room = TOP - BOTTOM - _head_height(pack)
    return all(
        on_one_slip(version.items, WIDTH, room, SIZES[-1], theme.PAPER_LEAST)
        for version in pack.versions
    )


def least_share(item: PackItem) -> float:
    """Return the least share of one side of a slip that a question takes."""
    room = TOP - BOTTOM - _high(2)
    return slip_share(item, WIDTH, room, SIZES[-1], theme.PAPER_LEAST)


def _pages(version: Version, pack: Pack) -> list[Slip]:
    """Return the questions of a version shared over as few slips as their size allows."""
    room = TOP - BOTTOM - _head_height(pack)
    return arrange_slips(version.items, WIDTH, room, SIZES, theme.PAPER_LEAST)


def _when(pack: Pack) -> str:
    return plain(f"{pack.lesson.class_name}  •  {long_date(pack.lesson.date)}")


def _rows(pack: Pack) -> int:
    """Return the rows of a slip's head: three where the date leaves no room for the score."""
    size = theme.PAPER_LEAST
    needed = face().width(_when(pack) + _score(pack)) * size + 14
    return 2 if needed <= WIDTH else 3


def _score(pack: Pack) -> str:
    return f"Score ____ / {pack.marks}"


def _head_height(pack: Pack) -> float:
    return _high(_rows(pack))


def _high(rows: int) -> float:
    """Return how high a head of so many rows stands, with the room below its rule."""
    return (0.5 + 1.7 * rows) * theme.PAPER_LEAST + BELOW_HEAD


def _slip(page: Page, pack: Pack, version: Version, slip: Slip, half: int, side: int) -> None:
    """Draw one slip in the left (0) or right (1) half of the page."""
    document = page.document
    x = half * PAGE[0] / 2 + MARGIN
    first = page.number == 0 and half == 0
    size = theme.PAPER_LEAST
    y = TOP - size
    title = f"Starter {plain(version.letter)}" if len(pack.versions) > 1 else "Starter"
    if side:
        title += " (continued)"
    with document.tag("H1" if first else "H2"):
        page.text(x, y, title, size + 4, bold=True, colour=theme.ACCENT)
    with document.tag("P"):
        page.text(x + WIDTH, y, "Seat code ____", size, align="right")
    when = shortened(_when(pack), WIDTH, size)
    with document.tag("P") if first else page.artifact():
        page.text(x, y - 1.7 * size, when, size, colour=theme.QUIET)
    y -= 1.7 * size * (_rows(pack) - 1)
    with document.tag("P"):
        page.text(x + WIDTH, y, _score(pack), size, align="right")
    y += 1.7 * size
    with page.artifact():
        page.rect(x, y - 2.4 * size, WIDTH, 1.5, fill=theme.ACCENT)
    y = TOP - _head_height(pack)
    if slip.told is not None:
        with document.tag("P"):
            draw(page, slip.told, x, y)
    with document.tag("L", attributes=DECIMAL):
        for placed in slip.placed:
            _question(page, placed, x, y, size)


def _question(page: Page, placed: Placed, x: float, top: float, small: float) -> None:
    """Draw a question and the line for its answer on a slip whose questions start at `top`."""
    document, block = page.document, placed.block
    y = top - placed.top
    with document.tag("LI"):
        with document.tag("Lbl"):
            page.text(
                x + INDENT - 8,
                y - block.baseline,
                str(placed.number),
                block.size,
                bold=True,
                colour=theme.ACCENT,
                align="right",
            )
        with document.tag("LBody"):
            draw(page, block, x + INDENT, y)
    if placed.drawn:
        return
    with page.artifact():
        base, left = y - placed.line, x + WIDTH - LINE
        page.line((left, base), (x + WIDTH, base), colour=theme.WRITING, width=0.9)
        page.text(left - 6, base, LABEL, small, colour=theme.QUIET, align="right")
