"""The slides of a pack: the starter and its answers."""

from __future__ import annotations

import datetime
from collections.abc import Sequence

from itembank.packs.model import Band, Lesson, Pack, Version
from itembank.planning.caution import FOR_PUPILS

from . import theme
from .fonts import face, plain
from .page import Document, Page
from .questions import LEFT, NUMBER_GAP, PAD, RIGHT, Slide, Spot, arrange
from .signs import interval, sign
from .text import Block, Flow, Strong, draw, measure

HEAD = theme.SLIDE[1] - 58.0
"""Height of the line under the heading."""
TOP = HEAD - 14.0
FOOT = 18.0
"""Height of the lowest ink."""
DECIMAL = "<</O /List /ListNumbering /Decimal>>"


def long_date(day: datetime.date) -> str:
    """Return a date as written in an exercise book.

    >>> long_date(datetime.date(2026, 11, 30))
    'Monday 30 November 2026'
    """
    days = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
    months = (
        *("January", "February", "March", "April", "May", "June"),
        *("July", "August", "September", "October", "November", "December"),
    )
    return f"{days[day.weekday()]} {day.day} {months[day.month - 1]} {day.year}"


def lesson_line(lesson: Lesson) -> str:
    """Return the class, the date and the title on one line."""
    return plain(f"{lesson.class_name}  •  {long_date(lesson.date)}  •  {lesson.title}")


def shortened(text: str, width: float, size: float) -> str:
    """Return `text`, cut with an ellipsis where it is wider than `width` points."""
    regular = face()
    if regular.width(text) * size <= width:
        return text
    while text and regular.width(text + "…") * size > width:
        text = text[:-1]
    return text.rstrip() + "…"


def heading(page: Page, pack: Pack, title: str, first: bool) -> None:
    """Draw a slide's heading: its title on the left, the lesson on the right."""
    document = page.document
    y = theme.SLIDE[1] - 45.0
    with document.tag("H1" if first else "H2"):
        width = page.text(LEFT, y, title, 30, bold=True, colour=theme.ACCENT)
    text = _beside(pack.lesson, RIGHT - LEFT - width - 40) if first else pack.lesson.class_name
    text = shortened(plain(text), RIGHT - LEFT - width - 40, 18)
    with document.tag("P") if first else page.artifact():
        page.text(RIGHT, y, text, 18, colour=theme.QUIET, align="right")
    with page.artifact():
        page.rect(LEFT, HEAD, RIGHT - LEFT, 2.5, fill=theme.ACCENT)


def _beside(lesson: Lesson, width: float) -> str:
    """Return the lesson as fully as fits: without its weekday or date rather than cut short."""
    whole = lesson_line(lesson)
    short = f"{lesson.class_name}  •  {lesson.title}"
    for text in (whole, whole.replace(long_date(lesson.date).partition(" ")[0] + " ", "", 1)):
        if face().width(text) * 18 <= width:
            return text
    return short


def starter(pack: Pack) -> bytes:
    """Return the starter as slides."""
    document = Document(title_of(pack, "Starter"))
    _draw(document, pack, answers=False)
    return document.finish()


def answers(pack: Pack) -> bytes:
    """Return the answers as slides: the same questions at the same places."""
    document = Document(title_of(pack, "Answers"))
    _draw(document, pack, answers=True)
    return document.finish()


def title_of(pack: Pack, what: str) -> str:
    """Return a document's title: what it is, the lesson, the class and the date."""
    lesson = pack.lesson
    return f"{what}: {lesson.title}, {lesson.class_name}, {long_date(lesson.date)}"


def _draw(document: Document, pack: Pack, answers: bool) -> None:
    bands = ScoreLine(pack)
    for version in pack.versions:
        slides = arrange(version.items, pack.look, TOP, FOOT + bands.height + 10)
        for number, slide in enumerate(slides, start=1):
            page = document.page(theme.SLIDE, _paper(pack))
            title = _slidetitle_of(pack, version, "Answers" if answers else "Starter")
            if len(slides) > 1:
                title += f": {_which(slide)}"
            heading(page, pack, title, page.number == 0)
            _questions(page, slide, answers)
            last = number == len(slides)
            if answers and last:
                bands.draw(page, pack)
            else:
                _footer(page, pack, version, answers, last)


def _which(slide: Slide) -> str:
    """Return which questions a slide holds, in words."""
    first, last = slide.spots[0].number, slide.spots[-1].number
    if first == last:
        return f"question {first}"
    return f"questions {first} {'and' if last == first + 1 else 'to'} {last}"


def _paper(pack: Pack) -> str:
    return theme.PAPERS[pack.look.paper]


def _slidetitle_of(pack: Pack, version: Version, what: str) -> str:
    return f"{what}, version {plain(version.letter)}" if len(pack.versions) > 1 else what


def _footer(page: Page, pack: Pack, version: Version, answers: bool, last: bool) -> None:
    """Draw the quiet line at the foot: how to work, or that more comes."""
    if not last:
        what = "answers" if answers else "questions"
        with page.artifact():
            text = f"More {what} on the next slide"
            page.text(RIGHT, FOOT + 6, text, 20, colour=theme.QUIET, align="right")
        return
    marks = "1 mark" if pack.marks == 1 else f"{pack.marks} marks"
    words = f"Work on your own, in silence, and show your steps. {marks} in all."
    if len(pack.versions) > 1:
        words = f"Version {plain(version.letter)}, {marks} in all. Work on your own, in silence."
    with page.document.tag("P"):
        page.text(LEFT, FOOT + 6, words, 20, colour=theme.QUIET)


def _questions(page: Page, slide: Slide, answers: bool) -> None:
    document = page.document
    with document.tag("L", attributes=DECIMAL):
        for spot in slide.spots:
            with document.tag("LI"):
                _question(page, spot, slide.size, answers)


def _question(page: Page, spot: Spot, size: float, answers: bool) -> None:
    document = page.document
    made = spot.cell
    baseline = spot.top - made.question.baseline
    with document.tag("Lbl"):
        page.text(
            spot.x + made.indent - NUMBER_GAP,
            baseline,
            str(spot.number),
            size,
            bold=True,
            colour=theme.ACCENT,
            align="right",
        )
    x = spot.x + made.indent
    with document.tag("LBody"):
        with document.tag("P"):
            colour = theme.QUIET if answers else theme.INK
            draw(page, made.question, x, spot.top, colour=colour)
        if answers:
            _answer(page, spot, x)


def _answer(page: Page, spot: Spot, x: float) -> None:
    """Draw an arrow and the answer in a box: seen as the answer without any colour."""
    made = spot.cell
    left = x + made.answer_x - PAD
    top = spot.top - made.answer_top
    low, high = top - made.answer.height - PAD + 2, top + PAD - 2
    middle = spot.top - made.arrow + made.answer.size * 0.26
    with page.artifact():
        page.rect(
            left,
            low,
            made.answer.width + 2 * PAD,
            high - low,
            fill=theme.WHITE,
            stroke=theme.INK,
            line=2.2,
            radius=5,
        )
    tip = left - 4
    with page.figure("Answer:", (tip - 20, middle - 6, tip, middle + 6)):
        page.line((tip - 20, middle), (tip - 6, middle), width=2.6)
        page.polygon([(tip, middle), (tip - 9, middle + 6), (tip - 9, middle - 6)], fill=theme.INK)
    with page.document.tag("P"):
        draw(page, made.answer, x + made.answer_x, top)


class ScoreLine:
    """The foot of the last answer slide: what to add up, and which score shows which band.

    With up to three bands the words to add up stand on their left, with more above them. Below
    it all stands that bands are not a grade.
    """

    SIGN = 40.0
    GAP = 10.0

    def __init__(self, pack: Pack) -> None:
        beside = len(pack.bands) <= 3
        words = "Add up your marks" if beside else "Add up your marks:"
        self.lead = measure(
            Flow([Strong(words), f"{chr(10) if beside else ' '}out of {pack.marks}"]), 600, 20
        )
        self.left = LEFT + (self.lead.width + 28 if beside else 0.0)
        self.width = (RIGHT - self.left) / len(pack.bands)
        inside = self.width - self.SIGN - self.GAP - 8
        self.cells = _band_words(pack.bands, inside)
        self.row = max(self.SIGN, *(block.height for block in self.cells))
        if beside:
            self.row = max(self.row, self.lead.height)
        self.beside = beside
        self.notice = measure(Flow(FOR_PUPILS), RIGHT - LEFT, 18)
        self.low = FOOT + self.notice.height + 10
        self.height = self.low - FOOT + self.row + 8 + (0.0 if beside else self.lead.height + 6)

    def draw(self, page: Page, pack: Pack) -> None:
        """Draw the line at the foot of `page`."""
        document = page.document
        with page.artifact():
            page.rect(LEFT, FOOT + self.height, RIGHT - LEFT, 1.2, fill=theme.RULE)
        with document.tag("P"):
            high = self._centred(self.lead.height) if self.beside else FOOT + self.height - 7
            draw(page, self.lead, LEFT, high)
        x = self.left
        with document.tag("L", attributes="<</O /List /ListNumbering /None>>"):
            for band, words in zip(pack.bands, self.cells, strict=True):
                with document.tag("LI"), document.tag("LBody"):
                    sign(page, band, x, self.low + (self.row - self.SIGN) / 2, self.SIGN)
                    with document.tag("P"):
                        draw(page, words, x + self.SIGN + self.GAP, self._centred(words.height))
                x += self.width
        with document.tag("P"):
            draw(page, self.notice, LEFT, FOOT + self.notice.height, colour=theme.QUIET)

    def _centred(self, height: float) -> float:
        return self.low + (self.row + height) / 2


def _band_words(bands: Sequence[Band], width: float) -> list[Block]:
    """Return each band's scores and name, all in the largest size that their room allows."""
    flows = [Flow([Strong(interval(band)), f"\n{band.name}"]) for band in bands]
    blocks: list[Block] = []
    for size in (22, 20, 18):
        blocks = [measure(flow, width, size) for flow in flows]
        if all(len(block.lines) <= 2 and not block.cramped for block in blocks):
            break
    return blocks
