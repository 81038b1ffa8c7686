"""The outline of a PDF (ISO 32000-1, 12.3.3): its headings, to find one's way in a reader."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from itembank.pages.engine.pdf.tagging import text_string


@dataclass
class Heading:
    """A heading: its level from 1, its words, its page from 0, and its top in points."""

    level: int
    title: str = ""
    page: int = 0
    top: float = 0.0

    def add(self, text: str, page: int, top: float) -> None:
        """Take in words that were drawn; the first say where the heading is."""
        if not self.title:
            self.page, self.top = page, top
        self.title += text


def nested(headings: list[Heading]) -> list[int | None]:
    """Return, per heading, the place of the one it belongs under: the last of a lower level.

    >>> nested([Heading(1), Heading(2), Heading(2)])
    [None, 0, 0]
    """
    found: list[int | None] = []
    open_ones: list[int] = []
    for place, heading in enumerate(headings):
        while open_ones and headings[open_ones[-1]].level >= heading.level:
            open_ones.pop()
        found.append(open_ones[-1] if open_ones else None)
        open_ones.append(place)
    return found


def add_outline(document: Any, headings: list[Heading], page_names: list[str]) -> None:
    """Add an outline to a ReportLab PDF document, closed below its second level."""
    from itembank.pages.engine.pdf.pdf_objects import Outline, Raw

    above = nested(headings)
    below: dict[int | None, list[int]] = {}
    for place, parent in enumerate(above):
        below.setdefault(parent, []).append(place)
    names = {place: f"OL{place}" for place in range(len(headings))}

    def number(doc: Any, name: str) -> str:
        return f"{doc.idToObjectNumberAndVersion[name][0]} 0 R"

    def ends(doc: Any, places: list[int]) -> str:
        return f"/First {number(doc, names[places[0]])} /Last {number(doc, names[places[-1]])}"

    def write(place: int) -> Any:
        heading, siblings = headings[place], below[above[place]]
        at = siblings.index(place)

        def syntax(doc: Any) -> str:
            parent = above[place]
            parts = [
                f"<</Title {text_string(heading.title)}",
                f"/Parent {number(doc, 'Outline' if parent is None else names[parent])}",
                f"/Dest [{number(doc, page_names[heading.page])} /XYZ null {heading.top:.2f} null]",
            ]
            if at:
                parts.append(f"/Prev {number(doc, names[siblings[at - 1]])}")
            if at + 1 < len(siblings):
                parts.append(f"/Next {number(doc, names[siblings[at + 1]])}")
            if place in below:
                # Less than 0: closed at first, with so many below it.
                sign = "" if heading.level == 1 else "-"
                parts.append(f"{ends(doc, below[place])} /Count {sign}{len(below[place])}")
            return " ".join(parts) + ">>"

        return Raw(syntax)

    # What is seen at first: the top level, and what stands under its headings of level 1.
    shown = sum(
        parent is None or (headings[parent].level == 1 and above[parent] is None)
        for parent in above
    )
    document.Outlines = Outline(
        lambda doc: f"<</Type /Outlines {ends(doc, below[None])} /Count {shown}>>"
    )
    document.Catalog.Outlines = document.Reference(document.Outlines, "Outline")
    for place, name in names.items():
        document.Reference(write(place), name)
