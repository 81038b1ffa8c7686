"""The slides of a pack: the starter and its answers."""

from __future__ import annotations

from collections.abc import Sequence

from itembank.packs.data.pack import Lesson, Pack, Version
from itembank.pages.engine.document_titles import title_of
from itembank.pages.engine.faces.fonts import face, plain
from itembank.pages.engine.page import theme
from itembank.pages.engine.page.page import Document, Page
from itembank.pages.engine.text.paragraph import Block, Flow, answered, draw, measure
from itembank.pages.parts.questions.answers import others_said
from itembank.pages.parts.questions.instructions import shared
from itembank.pages.parts.questions.question_cell import NUMBER_GAP
from itembank.pages.parts.slide.board import arrange, fits_slides
from itembank.pages.parts.slide.score_line import FOOT, ScoreLine
from itembank.pages.parts.slide.slide_board import LEFT, RIGHT, Slide, Spot
from itembank.planning.bands.caution import FOR_PUPILS, ON_A_SHEET
from itembank.text.in_words import counted, long_date

HEAD = theme.SLIDE[1] - 40.0
"""Height of the line under the heading."""
TITLE = 28.0
"""Type size of a slide's title."""
TOP = HEAD - 8.0
FOOT_SIZE = 18.0
HOW_TO_WORK = FOOT_SIZE * 1.2
"""Height of the line on how to work, at the foot of the starter."""
MOST_ROOM = TOP - FOOT - 42.0
"""Height of the room for questions on a slide with nothing more at its foot than scores."""
DECIMAL = "<</O /List /ListNumbering /Decimal>>"


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


def heading(page: Page, pack: Pack, title: str, first: bool, notice: str = "") -> None:
    """Draw a slide's heading: its title on the left, on the right the lesson or a `notice`."""
    document = page.document
    y = theme.SLIDE[1] - 33.0
    with document.tag("H1" if first else "H2"):
        page.text(LEFT, y, title, TITLE, bold=True, colour=theme.ACCENT)
        width = face(True).width(title) * TITLE
    text = _beside(pack.lesson, RIGHT - LEFT - width - 40) if first else pack.lesson.class_name
    text = shortened(plain(notice or text), RIGHT - LEFT - width - 40, 18)
    with document.tag("P") if first or notice else page.artifact():
        page.text(RIGHT, y, text, 18, colour=theme.QUIET, align="right")
    with page.artifact():
        page.rect(LEFT, HEAD, RIGHT - LEFT, 2.5, fill=theme.ACCENT)


def _notice(lesson: Lesson, title: str) -> str:
    """Return the class and what bands are for, in as many words as stand beside a title."""
    room = RIGHT - LEFT - face(True).width(title) * TITLE - 40
    whole, short = (f"{lesson.class_name}  •  {words}" for words in (FOR_PUPILS, ON_A_SHEET))
    return whole if face().width(plain(whole)) * 18 <= room else short


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


def _draw(document: Document, pack: Pack, answers: bool) -> None:
    for version, slides in zip(pack.versions, _slides(pack), strict=True):
        for number, slide in enumerate(slides, start=1):
            page = document.page(theme.SLIDE, _paper(pack))
            title = _slide_title(pack, version, "Answers" if answers else "Starter")
            if len(slides) > 1:
                title += f": {_which(slide)}"
            last = number == len(slides)
            notice = _notice(pack.lesson, title) if answers and last else ""
            heading(page, pack, title, page.number == 0, notice)
            _questions(page, slide, answers)
            if answers and last:
                ScoreLine(pack, version, _others(slide)).draw(page, pack)
            else:
                _footer(page, pack, version, slide, answers, last)


_last: list[tuple[Pack, list[list[Slide]]]] = []
"""The pack drawn last with its slides: the starter and its answers are drawn after each other."""


def _slides(pack: Pack) -> list[list[Slide]]:
    """Return the slides of each version, worked out once for the starter and its answers."""
    if not _last or _last[0][0] is not pack:
        bottom = bottom_of(pack)
        made = [arrange(version.items, TOP, bottom) for version in pack.versions]
        _last[:] = [(pack, made)]
    return _last[0][1]


def on_slides(pack: Pack, count: int) -> bool:
    """Tell whether the starter stands on so many slides, in all its versions."""
    bottom = bottom_of(pack)
    return all(fits_slides(version.items, TOP, bottom, count) for version in pack.versions)


def bottom_of(pack: Pack) -> float:
    """Return the lowest a question may reach: below it stands the foot of either slide."""
    # Of all versions the one with the most to say of its answers: their slides look alike.
    others = max((others_said(enumerate(v.items, 1)) for v in pack.versions), key=len)
    told = max(_told_high(_told(version)) for version in pack.versions)
    scores = max(ScoreLine(pack, version, others).height for version in pack.versions)
    return FOOT + max(scores, HOW_TO_WORK + told) + 6


def _told(version: Version) -> list[str]:
    """Return what is said at the foot of a slide with all questions of a version."""
    numbers = range(1, len(version.items) + 1)
    return [instruction.words(numbers) for instruction in shared(version.items)]


def _told_high(told: Sequence[str]) -> float:
    """Return how high what is told at the foot stands."""
    return _told_block(told).height + 4 if any(told) else 0.0


def _told_block(told: Sequence[str]) -> Block:
    return measure(Flow(" ".join(told)), RIGHT - LEFT, FOOT_SIZE)


def _others(slide: Slide) -> str:
    """Return which questions of a slide have other right answers."""
    return others_said((spot.number, spot.item) for spot in slide.spots)


def _which(slide: Slide) -> str:
    """Return which questions a slide holds, in words."""
    first, last = slide.spots[0].number, slide.spots[-1].number
    if first == last:
        return f"question {first}"
    return f"questions {first} {'and' if last == first + 1 else 'to'} {last}"


def _paper(pack: Pack) -> str:
    return theme.PAPERS[pack.look.paper]


def _slide_title(pack: Pack, version: Version, what: str) -> str:
    return f"{what}, version {plain(version.letter)}" if len(pack.versions) > 1 else what


def _footer(
    page: Page, pack: Pack, version: Version, slide: Slide, answers: bool, last: bool
) -> None:
    """Draw the foot: what questions ask of their answers, how to work, or that more comes."""
    top = FOOT + HOW_TO_WORK
    if not last:
        what = "answers" if answers else "questions"
        with page.artifact():
            text = f"More {what} on the next slide"
            page.text(RIGHT, FOOT + 6, text, FOOT_SIZE, colour=theme.QUIET, align="right")
    else:
        marks = counted(pack.marks, "mark")
        words = f"Work on your own, in silence, and show your steps. {marks} in all."
        if len(pack.versions) > 1:
            words = (
                f"Version {plain(version.letter)}, {marks} in all. Work on your own, in silence."
            )
        with page.document.tag("P"):
            page.text(LEFT, FOOT + 6, words, FOOT_SIZE, colour=theme.QUIET)
    told = [_others(slide)] if answers else slide.told
    if any(told):
        block = _told_block(told)
        with page.document.tag("P"):
            draw(page, block, LEFT, top + block.height + 4)


def _questions(page: Page, slide: Slide, answers: bool) -> None:
    document = page.document
    with page.artifact():
        for y in slide.rules:
            page.rect(LEFT, y - 0.4, RIGHT - LEFT, 0.8, fill=theme.RULE)
    with document.tag("L", attributes=DECIMAL):
        for spot in slide.spots:
            with document.tag("LI"):
                _question(page, spot, slide.size, answers)


def _question(page: Page, spot: Spot, size: float, answers: bool) -> None:
    document = page.document
    made = spot.cell
    baseline = spot.top - made.baseline
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
            question = answered(made.question) if answers else made.question
            draw(page, question, x, spot.top - made.question_top, colour=colour)
        if answers:
            _answer(page, spot)


def _answer(page: Page, spot: Spot) -> None:
    """Draw an arrow and the answer in a box: seen as the answer without any colour."""
    made = spot.cell
    left = spot.x + made.answer_x - made.pad
    top = spot.top - made.answer_top
    low, high = top - made.answer.height - made.pad + 2, top + made.pad - 2
    middle = spot.top - made.arrow
    with page.artifact():
        page.rect(
            left,
            low,
            made.answer.width + 2 * made.pad,
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
        draw(page, made.answer, spot.x + made.answer_x, top)
