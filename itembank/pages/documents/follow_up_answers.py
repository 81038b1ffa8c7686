"""The answers of the follow-up sheets, for self-marking: number, key, and short working."""

from __future__ import annotations

from collections.abc import Sequence

from itembank.errors import ItembankError
from itembank.packs.data.pack import Pack, Sheet
from itembank.pages.documents.slides import DECIMAL, lesson_line
from itembank.pages.engine.document_titles import sheet_name
from itembank.pages.engine.page import theme
from itembank.pages.engine.page.page import Page
from itembank.pages.engine.paper import LEFT, WIDTH, Paper, Part, text_part
from itembank.pages.engine.pdf.tagging import Element
from itembank.pages.engine.text.paragraph import Block, Flow, draw, measure
from itembank.pages.parts.questions.even_split import evenest
from itembank.pages.parts.questions.marks_said import counted, total
from itembank.pages.parts.sheet.short_answer import (
    GAP,
    Answer,
    draw_answer,
    room_between,
    short_answer,
)

COLUMN = (WIDTH - GAP) / 2
HOW = (
    "Tick what is right. Where your answer differs, find the first line of your working that "
    "differs, and put it right from there."
)
MARKS = (
    " A right answer earns all the marks of its question. Without one, each line with ‘1 mark’ "
    "beside it that you reached earns that mark."
)


def follow_up_answers(pack: Pack, large: bool = False) -> bytes:
    """Return the answers of all sheets, each sheet together on a page where it fits."""
    paper = Paper(pack, "Follow-up answers", theme.PAPER_LEAST, large=large)
    size = paper.size
    title = text_part(
        "Follow-up answers",
        WIDTH,
        size + 10,
        kind="H1",
        bold=True,
        colour=theme.ACCENT,
        after=0.4 * size,
    )
    lesson = text_part([lesson_line(pack.lesson)], WIDTH, size, colour=theme.QUIET)
    paper.place([title, lesson], gap=0.7 * size)
    for sheet in pack.sheets:
        _sheet(paper, sheet, opening=sheet is pack.sheets[0])
    return paper.finish()


def _sheet(paper: Paper, sheet: Sheet, opening: bool) -> None:
    """Draw a sheet's answers in two columns, on one page where that holds them.

    With `opening` nothing but the title stands above it on its page.

    Raises:
        ItembankError: one answer alone is too long for a page.
    """
    size = paper.size
    head = _heading(f"{sheet_name(sheet.tier)}: {counted(total(sheet.items))}", size)
    says = HOW + MARKS * any(item.marks > 1 for item in sheet.items)
    how = text_part(says, WIDTH, size, after=0.8 * size)
    answers, columns = _answers(sheet, COLUMN, size), 2
    if any(block.cramped for answer in answers for block in (answer.key, *answer.lines)):
        answers, columns = _answers(sheet, WIDTH, size), 1
    above = head.height + how.height
    later = paper.full - _continued(paper, sheet).height - 0.8 * size
    shared = _Shared(answers, columns, later)
    found = shared.out(paper.room - above, paper.full - above, opening)
    if found is None:
        asked = [*filter(None, [sheet.part_finished]), *sheet.items]
        item = asked[max(range(len(answers)), key=lambda i: answers[i].height)]
        raise ItembankError(
            f"The answer to {item.address} on the {sheet_name(sheet.tier).lower()} is too long "
            "for a page. Choose another question or shorten its working."
        )
    anew, groups = found
    if anew:
        paper.new_page()
    for number, group in enumerate(groups):
        if number == 0:
            paper.place([head, how])
        else:
            paper.new_page()
            _going_on(paper, sheet)
        _columns(paper, answers[group.start : group.stop], columns)


class _Shared:
    """Answers in columns to be shared out over pages, with so much room on later pages."""

    def __init__(self, answers: Sequence[Answer], columns: int, later: float) -> None:
        self.answers, self.columns, self.later = answers, columns, later

    def out(self, here: float, anew: float, opening: bool) -> tuple[bool, list[range]] | None:
        """Return the answers of each page, on as few as can be, and whether to begin a new one.

        `here` is the room on the open page, `anew` that on a new one. Where the open page holds
        only the title, which would stand alone, a new one is the last resort.
        """
        counts = range(1, len(self.answers) + 1)
        for count in counts:
            if (found := self._over(here, count)) and (opening or not self._lonely(found)):
                return False, found
            if not opening and (found := self._over(anew, count)):
                return True, found
        return next(((True, found) for n in counts if (found := self._over(anew, n))), None)

    def _over(self, first: float, count: int) -> list[range] | None:
        """Return the answers shared evenly over so many pages, or None where they do not fit."""

        def fullness(group: range, place: int) -> float:
            some = self.answers[group.start : group.stop]
            room = self.later if place else max(first, 1.0)
            return _taller(some, _split(some, self.columns)) / room

        return evenest(len(self.answers), count, fullness, alone=lambda group: len(group) == 1)

    def _lonely(self, groups: Sequence[range]) -> bool:
        return any(len(group) == 1 < len(self.answers) for group in groups)


def _columns(paper: Paper, answers: Sequence[Answer], columns: int) -> None:
    """Draw answers in columns as even as can be, from where the page is filled to."""
    current: Element | None = None
    split = _split(answers, columns)
    for column, place in ((answers[:split], 0), (answers[split:], 1)):
        y = paper.y
        for answer in column:
            current = _draw(paper.page, answer, LEFT + place * (COLUMN + GAP), y, current)
            y -= answer.height
    paper.y -= _taller(answers, split) + 0.6 * paper.size


def _continued(paper: Paper, sheet: Sheet) -> Block:
    return measure(Flow(f"{sheet_name(sheet.tier)}, continued"), WIDTH, paper.size)


def _going_on(paper: Paper, sheet: Sheet) -> None:
    """Draw what goes on here, as decoration: reading goes straight on."""
    block = _continued(paper, sheet)
    with paper.page.artifact():
        draw(paper.page, block, LEFT, paper.y, colour=theme.QUIET)
    paper.y -= block.height + 0.8 * paper.size


def _taller(answers: Sequence[Answer], split: int) -> float:
    """Return the height of the taller column where the first `split` answers are on the left."""
    heights = [answer.height for answer in answers]
    return max(sum(heights[:split]), sum(heights[split:]))


def _split(answers: Sequence[Answer], columns: int) -> int:
    """Return how many answers go on the left to make two columns as even as can be."""
    if columns == 1:
        return len(answers)
    return min(range(1, len(answers) + 1), key=lambda k: (_taller(answers, k), k))


def _heading(text: str, size: float) -> Part:
    block = measure(Flow(text, bold=True), WIDTH, size + 4)

    def show(page: Page, x: float, top: float) -> None:
        with page.artifact():
            page.rect(x, top - 1.5, WIDTH, 1.5, fill=theme.ACCENT)
        with page.document.tag("H2"):
            draw(page, block, x, top - 0.7 * size, colour=theme.ACCENT)

    return Part(block.height + 1.2 * size, show)


def _answers(sheet: Sheet, width: float, size: float) -> list[Answer]:
    """Return a sheet's answers, measured for a column, with topics named where they change."""
    made = []
    if sheet.part_finished is not None:
        made.append(short_answer("Example to finish", sheet.part_finished, "", width, size))
    topic = ""
    for number, item in enumerate(sheet.items, start=1):
        opens = item.topic_title if item.topic != topic else ""
        made.append(short_answer(str(number), item, opens, width, size))
        topic = item.topic
    return made


def _draw(
    page: Page, answer: Answer, x: float, top: float, current: Element | None
) -> Element | None:
    """Draw an answer in the list of its topic, which it opens where it is the first."""
    document = page.document
    if answer.topic is not None:
        with document.tag("H3"):
            draw(page, answer.topic, x, top, colour=theme.QUIET)
        top -= answer.topic.height + room_between(answer.label.size)
    if answer.topic is not None or current is None:
        with document.tag("L", attributes=DECIMAL) as current:
            pass
    with document.back_in(current), document.tag("LI"):
        draw_answer(page, answer, x, top)
    return current
