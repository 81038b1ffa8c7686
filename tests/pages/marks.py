"""What is drawn where: every stretch of text and every formula, as the page object is told."""

from __future__ import annotations

from contextlib import contextmanager
from typing import NamedTuple

from itembank.packs.data.pack_item import Maths, PackItem
from itembank.pages.engine.faces.fonts import ASCENT, DESCENT, face
from itembank.pages.engine.page.page import Document, Page


class Mark(NamedTuple):
    """Something visible: its page, its box, its text size and the words, if they are text."""

    page: int
    x0: float
    y0: float
    x1: float
    y1: float
    size: float
    text: str
    artifact: bool
    kind: str


@contextmanager
def recorded(monkeypatch):
    """Record the marks drawn inside; the files that they would make are not written.

    What is in a file is held by the tests of tagging, of text and of whole packs.
    """
    found: list[Mark] = []
    show, formula = Page._show, Page._draw_formula

    def note_text(self, x, y, text, size, bold):
        width = face(bold).width(text.rstrip()) * size
        box = (x, y - DESCENT * size, x + width, y + ASCENT * size)
        found.append(
            Mark(self.number, *box, size, text, self._artifact, self.document.current.kind)
        )
        show(self, x, y, text, size, bold)

    def note_formula(self, x, y, layout, size, colour):
        box = (
            x,
            y - layout.descent * size,
            x + layout.width * size,
            y + layout.ascent * size,
        )
        found.append(Mark(self.number, *box, size, "", self._artifact, "Formula"))
        formula(self, x, y, layout, size, colour)

    def close_pages(document):
        for page in document.pages:
            page.close()
        return b""

    monkeypatch.setattr(Document, "finish", close_pages)
    monkeypatch.setattr(Page, "_show", note_text)
    monkeypatch.setattr(Page, "_draw_formula", note_formula)
    try:
        yield found
    finally:
        monkeypatch.undo()


def overlapping(marks, slack=0.6):
    """Yield pairs of marks on one page whose boxes overlap by more than `slack` points.

    The boxes are those of the tallest and deepest characters of the face, so that marks whose
    boxes are apart have ink that is apart.
    """
    pages: dict[int, list[Mark]] = {}
    for mark in marks:
        pages.setdefault(mark.page, []).append(mark)
    for there in pages.values():
        there.sort(key=lambda mark: -mark.y1)
        for i, one in enumerate(there):
            for other in there[i + 1 :]:
                if other.y1 <= one.y0 + slack:
                    break
                wide = min(one.x1, other.x1) - max(one.x0, other.x0)
                high = min(one.y1, other.y1) - max(one.y0, other.y0)
                if wide > slack and high > slack:
                    yield one, other


def printed(maths: Maths) -> str:
    """Return what a search or a copy of a page reads for a formula: its line as it is printed."""
    return maths.line.replace('"', "")


def key_printed(item: PackItem) -> str:
    """Return what is read of a question's key, which is one of several where many are right."""
    key = printed(item.key)
    return f"for example {key} (others are right)" if item.many else key
