"""The line at the foot of an answer slide: which score stands in which band."""

from __future__ import annotations

from itembank.packs.data.pack import Pack, Version
from itembank.pages.engine.faces.fonts import plain
from itembank.pages.engine.page import theme
from itembank.pages.engine.page.page import Page
from itembank.pages.engine.page.signs import interval, sign
from itembank.pages.engine.text.paragraph import Flow, Strong, draw, measure
from itembank.pages.parts.slide.slide_board import LEFT, RIGHT

FOOT = 12.0
"""Height of the lowest ink."""


class ScoreLine:
    """The foot of the last answer slide: what to add up, and which score shows which band.

    All of it stands on one line where it fits, with the words to add up above it where it does
    not; long names of bands are broken. Below stands which questions have other right answers.
    """

    SIGN = 30.0
    GAP = 8.0
    APART = 20.0

    def __init__(self, pack: Pack, version: Version, others: str = "") -> None:
        self.notice = measure(Flow(others), RIGHT - LEFT, theme.SLIDE_SMALL) if others else None
        self.low = FOOT + (self.notice.height + 6 if self.notice else 0.0)
        what = Strong("Add up your marks")
        if len(pack.versions) > 1:
            # So that it is read out on each version's slide: a foot like others would be left out.
            what = Strong(f"Version {plain(version.letter)}: add up your marks")
        self.lead = measure(Flow([what, f" out of {pack.marks}."]), 600, 20)
        self.beside = False
        flows = [Flow([Strong(interval(band)), f"\u00a0\u00a0{band.name}"]) for band in pack.bands]
        for size, beside in ((22, True), (20, True), (18, True), (20, False), (18, False)):
            self.cells = [measure(flow, 1e6, size) for flow in flows]
            self.beside = beside
            if self._width() <= RIGHT - LEFT:
                break
        else:
            count = len(flows)
            room = (RIGHT - LEFT - self.APART * (count - 1)) / count - self.SIGN - self.GAP
            self.cells = [measure(flow, room, theme.SLIDE_SMALL) for flow in flows]
        self.row = max(self.SIGN, *(block.height for block in self.cells))
        above = 0.0 if self.beside else self.lead.height + 6
        self.height = self.low - FOOT + self.row + 6 + above

    def _width(self) -> float:
        bands = sum(self.SIGN + self.GAP + block.width for block in self.cells)
        bands += self.APART * (len(self.cells) - 1)
        return bands + (self.lead.width + self.APART if self.beside else 0.0)

    def draw(self, page: Page, pack: Pack) -> None:
        """Draw the line at the foot of `page`."""
        document = page.document
        with page.artifact():
            page.rect(LEFT, FOOT + self.height, RIGHT - LEFT, 1.2, fill=theme.RULE)
        with document.tag("P"):
            high = self._centred(self.lead.height) if self.beside else FOOT + self.height - 6
            draw(page, self.lead, LEFT, high)
        x = LEFT + (self.lead.width if self.beside else 0.0)
        # The bands are spread over the line, so that none looks like part of the words before.
        spare = RIGHT - LEFT - self._width()
        gap = self.APART + max(0.0, spare) / (len(self.cells) + (0 if self.beside else -1))
        x += gap if self.beside else 0.0
        with document.tag("L", attributes="<</O /List /ListNumbering /None>>"):
            for band, words in zip(pack.bands, self.cells, strict=True):
                with document.tag("LI"), document.tag("LBody"):
                    sign(page, band, x, self.low + (self.row - self.SIGN) / 2, self.SIGN)
                    with document.tag("P"):
                        draw(page, words, x + self.SIGN + self.GAP, self._centred(words.height))
                x += self.SIGN + self.GAP + words.width + gap
        if self.notice:
            with document.tag("P"):
                draw(page, self.notice, LEFT, FOOT + self.notice.height, colour=theme.QUIET)

    def _centred(self, height: float) -> float:
        return self.low + (self.row + height) / 2
