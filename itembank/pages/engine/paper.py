"""A4 pages filled from the top: parts are measured first, then drawn where they fit whole.

A part knows its height and how to draw itself. :meth:`Paper.place` keeps the parts it is given
together, so that a heading never stands alone at the foot of a page.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

from itembank.packs.data.pack import Look, Pack
from itembank.pages.engine.document_titles import title_of
from itembank.pages.engine.faces.fonts import ASCENT, face, plain
from itembank.pages.engine.page import theme
from itembank.pages.engine.page.page import Document, Page
from itembank.pages.engine.text.paragraph import Flow, Piece, draw, measure

LEFT = theme.PAPER_MARGIN
RIGHT = theme.A4[0] - theme.PAPER_MARGIN
WIDTH = RIGHT - LEFT
TOP = theme.A4[1] - theme.PAPER_MARGIN
FOOT = 30.0
"""Baseline of the footer: 10 mm, inside what a school printer can print."""
EMPTY_SIDE = "This side is empty: the next copy begins on a new sheet."


class Part(NamedTuple):
    """Something to draw: its height in points, and a call that draws it from a top left corner."""

    height: float
    draw: Callable[[Page, float, float], None]


def printed_ground(look: Look) -> str:
    """Return what is printed all over a page of paper: nothing, unless the tint is to be.

    >>> printed_ground(Look(paper="cream")), printed_ground(Look(paper="cream", print_tint=True))
    ('#FFFFFF', '#FBF3DC')
    """
    return theme.PAPERS[look.paper] if look.print_tint else theme.WHITE


class Copy(NamedTuple):
    """One of the copies that a document holds: its pages, and the seat it is for."""

    pages: list[Page]
    seat: str


class Paper:
    """A document of A4 pages, with the place where the next part goes.

    Args:
        pack: whose paper the pages are for.
        what: the kind of document, such as ``Core sheet``; it opens the title and the footer.
        size: text size in points, in usual print.
        large: whether this is large print, which has no smaller type than 18 points.
        seat: whose copy comes first, where it is anybody's.
    """

    def __init__(
        self, pack: Pack, what: str, size: float, *, large: bool = False, seat: str = ""
    ) -> None:
        self.large = large
        self.size = theme.LARGE_TEXT if large else size
        self.least = theme.LARGE_TEXT if large else theme.PAPER_LEAST
        self._colour = printed_ground(pack.look)
        title = title_of(pack, f"{what}, large print" if large else what)
        self._open(title, f"{what}  •  {pack.lesson.class_name}", seat)

    def _open(self, title: str, footer: str, seat: str = "") -> None:
        """Begin the document with its first page."""
        self.document = Document(title)
        self.bottom = FOOT + self.least + 12
        self._footer = plain(footer)
        self._copies = [Copy([], seat)]
        self.new_page()

    @property
    def seat(self) -> str:
        """Return the seat that this copy is for; empty where none is named."""
        return self._copies[-1].seat

    @property
    def sides(self) -> int:
        """Return how many pages this copy has so far."""
        return len(self._copies[-1].pages)

    def next_copy(self, seat: str) -> None:
        """Begin another copy: on a new sheet also where both of its sides are printed."""
        if self.sides % 2:
            page = self.document.page(theme.A4, self._colour)
            with page.document.tag("P"):
                page.text(LEFT, TOP - self.size, EMPTY_SIDE, self.size, colour=theme.QUIET)
        self._copies.append(Copy([], seat))
        self.new_page()

    @property
    def room(self) -> float:
        """Points left on this page."""
        return self.y - self.bottom

    @property
    def full(self) -> float:
        """Points on an empty page."""
        return TOP - self.bottom

    def new_page(self) -> None:
        """Go to the top of a new page."""
        self.page = self.document.page(theme.A4, self._colour)
        self._copies[-1].pages.append(self.page)
        self.y = TOP

    def place(self, parts: Sequence[Part], x: float = LEFT, gap: float = 0.0) -> None:
        """Draw `parts` below each other, on one page where a page can hold them, then a gap."""
        height = sum(part.height for part in parts)
        # What no page can hold begins here and is divided between parts.
        if self.room < height <= self.full:
            self.new_page()
        for part in parts:
            # At the top there is no more room to be had: what is too tall is drawn all the same.
            if self.room < part.height and self.y < TOP:
                self.new_page()
            part.draw(self.page, x, self.y)
            self.y -= part.height
        self.y -= gap

    def place_apart(self, parts: Sequence[Part], note: str, again: Part) -> None:
        """Draw `parts` below each other, going on over the page between any two of them.

        On a later page the quiet words of `note` say what goes on, and where parts were drawn
        before, `again` repeats the head above them. Both are decoration: reading goes straight
        on. The last two parts stay together, so that no page ends a table with one row.
        """
        for number, part in enumerate(parts):
            height = sum(part.height for part in parts[number:]) if number == len(parts) - 2 else 0
            if self.room < max(part.height, height) and self.y < TOP:
                self.new_page()
                with self.page.artifact():
                    y = self.y - ASCENT * self.size
                    self.page.text(LEFT, y, note, self.size, colour=theme.QUIET)
                self.y -= 1.6 * self.size
                if number:
                    again.draw(self.page, LEFT, self.y)
                    self.y -= again.height
            part.draw(self.page, LEFT, self.y)
            self.y -= part.height

    def finish(self) -> bytes:
        """Write the footers, which say how many pages there are, and return the file."""
        # Only now is it known how many pages a copy has.
        for pages, seat in self._copies:
            footer = f"{self._footer}  •  {seat}" if seat else self._footer
            for number, page in enumerate(pages, start=1):
                said = f"Page {number} of {len(pages)}"
                with page.artifact():
                    page.text(LEFT, FOOT, footer, self.least, colour=theme.QUIET)
                    page.text(RIGHT, FOOT, said, self.least, colour=theme.QUIET, align="right")
        return self.document.finish()


class LoosePaper(Paper):
    """Pages that belong to no one pack: a report, a week, groups to pin up.

    Args:
        title: the title of the document.
        footer: words at the foot of each page.
        size: text size, in points.
    """

    def __init__(self, title: str, footer: str, size: float = theme.PAPER_LEAST) -> None:
        self.large = False
        self.size = self.least = size
        self._colour = theme.WHITE
        self._open(title, footer)


def text_part(
    runs: str | Sequence[Piece],
    width: float,
    size: float,
    *,
    kind: str = "P",
    bold: bool = False,
    colour: str = theme.INK,
    indent: float = 0.0,
    after: float = 0.0,
) -> Part:
    """Return a paragraph or heading, with `after` points of room below it."""
    block = measure(Flow(runs, bold), width - indent, size)

    def show(page: Page, x: float, top: float) -> None:
        with page.document.tag(kind):
            draw(page, block, x + indent, top, colour=colour)

    return Part(block.height + after, show)


def heading_part(text: str, size: float, level: int = 2) -> Part:
    """Return a heading of the given level for text of the given size."""
    large = size + {1: 10, 2: 4, 3: 1}[level]
    kind = f"H{level}"
    return text_part(
        text, WIDTH, large, kind=kind, bold=True, colour=theme.ACCENT, after=0.45 * size
    )


def stack(parts: Sequence[Part]) -> Part:
    """Return parts below each other as one, which is never divided."""

    def show(page: Page, x: float, top: float) -> None:
        for part in parts:
            part.draw(page, x, top)
            top -= part.height

    return Part(sum(part.height for part in parts), show)


def space(height: float) -> Part:
    """Return empty room."""
    return Part(height, lambda _page, _x, _top: None)


def list_part(
    entries: Sequence[str | Sequence[Piece]],
    width: float,
    size: float,
    *,
    mark: str = "•",
    between: float = 0.35,
    after: float = 0.0,
) -> Part:
    """Return a list whose entries start with a bullet, a number or a box to tick.

    `mark` is ``1`` for numbers and ``box`` for boxes; `between` is the room between two
    entries in ems.
    """
    indent = size * 1.7
    blocks = [measure(Flow(entry), width - indent, size) for entry in entries]
    gap = between * size
    numbering = {"1": "Decimal", "•": "Disc"}.get(mark, "None")

    def show(page: Page, x: float, top: float) -> None:
        document = page.document
        with document.tag("L", attributes=f"<</O /List /ListNumbering /{numbering}>>"):
            for number, block in enumerate(blocks, start=1):
                y = top - block.baseline
                with document.tag("LI"):
                    if mark == "box":
                        with page.artifact():
                            side = size * 0.8
                            page.rect(x + 2, y - size * 0.06, side, side, stroke=theme.INK)
                    else:
                        with document.tag("Lbl"):
                            label = str(number) if mark == "1" else mark
                            page.text(
                                x + size * 1.1, y, label, size, bold=mark == "1", align="right"
                            )
                    with document.tag("LBody"):
                        draw(page, block, x + indent, top)
                top -= block.height + gap

    return Part(sum(b.height for b in blocks) + gap * (len(blocks) - 1) + after, show)


def boxed(parts: Sequence[Part], width: float, pad: float) -> Part:
    """Return `parts` below each other in a box."""
    inner = stack(parts)
    height = inner.height + 2 * pad

    def show(page: Page, x: float, top: float) -> None:
        with page.artifact():
            page.rect(x, top - height, width, height, stroke=theme.INK, line=1.3, radius=6)
        inner.draw(page, x + pad, top - pad)

    return Part(height, show)


def writing_line(page: Page, x: float, y: float, right: float) -> None:
    """Draw a dotted line to write on."""
    with page.artifact():
        page.line((x, y), (right, y), colour=theme.WRITING, width=1.0, dash="1.2 2.4")


def label_width(number: int, size: float) -> float:
    """Return the room for a bold question number and the gap after it."""
    return face(True).width("0" * len(str(number))) * size + 0.7 * size
