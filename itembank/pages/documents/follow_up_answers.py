"""The answers of the follow-up sheets, for self-marking: number, key, and short working."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from itembank.packs.data.pack import Maths, Pack, PackItem, Sheet
from itembank.pages.documents.slides import DECIMAL, lesson_line
from itembank.pages.engine import theme
from itembank.pages.engine.document_titles import sheet_name
from itembank.pages.engine.fonts import face
from itembank.pages.engine.page import Page
from itembank.pages.engine.paper import LEFT, WIDTH, Paper, Part, text_part
from itembank.pages.engine.paragraph import Block, Flow, Piece, draw, measure
from itembank.pages.engine.tagging import Element
from itembank.pages.parts.answers import key_shown
from itembank.pages.parts.marks_said import counted, total
from itembank.pages.parts.solutions import chain

GAP = 26.0
COLUMN = (WIDTH - GAP) / 2
HOW = (
    "Tick what is right. Where your answer differs, find the first line of your working that "
    "differs, and put it right from there."
)
MARKS = (
    " A right answer earns all the marks of its question. Without one, each line with ‘1 mark’ "
    "beside it that you reached earns that mark."
)


class Answer(NamedTuple):
    """An answer as measured: its topic's name where that opens here, and its parts.

    `left` is where the box of the key starts, `working` where the lines of working start;
    with `beside` the first of those stands on the line of the key. `up` is the height above
    the baseline of the first line, `height` that of everything with the room after it.
    """

    topic: Block | None
    label: Block
    key: Block
    worth: Block | None
    lines: list[Block]
    left: float
    working: float
    beside: bool
    up: float
    height: float


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
        _sheet(paper, sheet)
    return paper.finish()


def _sheet(paper: Paper, sheet: Sheet) -> None:
    """Draw a sheet's answers in two columns, on one page where that holds them."""
    size = paper.size
    head = _heading(f"{sheet_name(sheet.tier)}: {counted(total(sheet.items))}", size)
    says = HOW + MARKS * any(item.marks > 1 for item in sheet.items)
    how = text_part(says, WIDTH, size, after=0.8 * size)
    answers, columns = _answers(sheet, COLUMN, size), 2
    if any(block.cramped for answer in answers for block in (answer.key, *answer.lines)):
        answers, columns = _answers(sheet, WIDTH, size), 1

    def split_of(some: Sequence[Answer]) -> int:
        return _best(some) if columns == 2 else len(some)

    whole = head.height + how.height + _taller(answers, split_of(answers))
    least = head.height + how.height + answers[0].height
    if paper.room < (whole if whole <= paper.full else least):
        paper.new_page()
    paper.place([head, how])
    current: Element | None = None
    while answers:
        count = len(answers)
        while count > 1 and _taller(answers[:count], split_of(answers[:count])) > paper.room:
            count -= 1
        split = split_of(answers[:count])
        for column, place in ((answers[:split], 0), (answers[split:count], 1)):
            y = paper.y
            for answer in column:
                current = _draw(paper.page, answer, LEFT + place * (COLUMN + GAP), y, current)
                y -= answer.height
        paper.y -= _taller(answers[:count], split) + 0.6 * size
        answers = answers[count:]
        if answers:
            paper.new_page()
            _going_on(paper, f"{sheet_name(sheet.tier)}, continued")
            current = None


def _going_on(paper: Paper, words: str) -> None:
    """Draw what goes on here, as decoration: reading goes straight on."""
    block = measure(Flow(words), WIDTH, paper.size)
    with paper.page.artifact():
        draw(paper.page, block, LEFT, paper.y, colour=theme.QUIET)
    paper.y -= block.height + 0.8 * paper.size


def _taller(answers: Sequence[Answer], split: int) -> float:
    """Return the height of the taller column where the first `split` answers are on the left."""
    heights = [answer.height for answer in answers]
    return max(sum(heights[:split]), sum(heights[split:]))


def _best(answers: Sequence[Answer]) -> int:
    """Return how many answers go on the left to make the columns as even as can be."""
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
        made.append(_answer("Example to finish", sheet.part_finished, "", width, size))
    topic = ""
    for number, item in enumerate(sheet.items, start=1):
        opens = item.topic_title if item.topic != topic else ""
        made.append(_answer(str(number), item, opens, width, size))
        topic = item.topic
    return made


def _answer(name: str, item: PackItem, opens: str, width: float, size: float) -> Answer:
    pad = _pad(size)
    topic = measure(Flow(opens), width, size) if opens else None
    label = measure(Flow(name, bold=True), width, size)
    indent = face(True).width("00") * size + 0.7 * size
    left = max(indent, label.width + 0.7 * size)
    worth, room = None, 0.0
    if item.marks > 1:
        worth = measure(Flow(f"[{counted(item.marks)}]"), width, size)
        room = _before_worth(size) + worth.width
    key = measure(Flow(key_shown(item), bold=True), width - left - 2 * pad - room, size)
    shown = chain(item.steps)
    if not item.many and [step.line for step in shown] == [item.key.line]:
        shown = []
    maths = [Flow(_line(*pair)) for pair in zip(shown, _earned(item), strict=False)]
    working = left + key.width + 2 * pad + room + size
    lines = [measure(flow, width - working, size) for flow in maths]
    beside = left == indent and all(not b.cramped and len(b.lines) == 1 for b in lines)
    if not beside:
        working = indent
        lines = [measure(flow, width - indent, size) for flow in maths]
    up, down = key.baseline + pad, key.height - key.baseline + pad
    rest = lines
    if beside and lines:
        up = max(up, lines[0].baseline)
        down = max(down, lines[0].height - lines[0].baseline)
        rest = lines[1:]
    height = up + down + sum(line.height + _between(size) for line in rest) + 0.9 * size
    if topic is not None:
        height += topic.height + _between(size)
    return Answer(topic, label, key, worth, lines, left, working, beside, up, height)


def _earned(item: PackItem) -> list[int]:
    """Return the marks of each line of working but the last, whose mark is for the answer."""
    earned = [step.marks for step in item.steps if step.maths is not None]
    return [*earned[:-1], 0]


def _line(shown: Maths, earned: int) -> list[Piece]:
    return [shown, f"\u00a0\u00a0 {counted(earned)}"] if earned else [shown]


def _before_worth(size: float) -> float:
    return 0.6 * size


def _pad(size: float) -> float:
    return 0.3 * size


def _between(size: float) -> float:
    return 0.42 * size


def _draw(
    page: Page, answer: Answer, x: float, top: float, current: Element | None
) -> Element | None:
    """Draw an answer in the list of its topic, which it opens where it is the first."""
    document = page.document
    if answer.topic is not None:
        with document.tag("H3"):
            draw(page, answer.topic, x, top, colour=theme.QUIET)
        top -= answer.topic.height + _between(answer.label.size)
    if answer.topic is not None or current is None:
        with document.tag("L", attributes=DECIMAL) as current:
            pass
    with document.back_in(current), document.tag("LI"):
        _draw_entry(page, answer, x, top)
    return current


def _draw_entry(page: Page, answer: Answer, x: float, top: float) -> None:
    document = page.document
    label, key, lines = answer.label, answer.key, answer.lines
    size = label.size
    pad, between = _pad(size), _between(size)
    baseline = top - answer.up
    with document.tag("Lbl"):
        draw(page, label, x, baseline + label.baseline, colour=theme.ACCENT)
    with document.tag("LBody"):
        high = baseline + key.baseline
        with page.artifact():
            page.rect(
                x + answer.left,
                high - key.height - pad,
                key.width + 2 * pad,
                key.height + 2 * pad,
                fill=theme.WHITE,
                stroke=theme.INK,
                line=1.4,
                radius=3,
            )
        with document.tag("P"):
            draw(page, key, x + answer.left + pad, high)
            if answer.worth is not None:
                right = x + answer.left + key.width + 2 * pad + _before_worth(size)
                draw(page, answer.worth, right, baseline + answer.worth.baseline)
        low = baseline - (key.height - key.baseline) - pad
        for number, line in enumerate(lines):
            if answer.beside and number == 0:
                start = baseline + line.baseline
                low = min(low, start - line.height)
            else:
                start = low - between
                low = start - line.height
            with document.tag("P"):
                draw(page, line, x + answer.working, start)
