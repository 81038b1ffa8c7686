"""One answer of a follow-up sheet: its number, key and short working, measured and drawn."""

from __future__ import annotations

from typing import NamedTuple

from itembank.packs.data.pack_item import Maths, PackItem
from itembank.pages.engine.faces.fonts import face
from itembank.pages.engine.page import theme
from itembank.pages.engine.page.page import Page
from itembank.pages.engine.text.paragraph import Block, Flow, Piece, draw, measure
from itembank.pages.parts.questions.answers import key_shown
from itembank.pages.parts.questions.marks_said import counted
from itembank.pages.parts.questions.solutions import chain

GAP = 26.0


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


def short_answer(name: str, item: PackItem, opens: str, width: float, size: float) -> Answer:
    """Return an answer as it stands in a column of a width; `opens` is its topic."""
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
    if item.key_picture is not None:
        maths.insert(0, Flow([item.key_picture]))
    working = left + key.width + 2 * pad + room + size
    lines = [measure(flow, width - working, size) for flow in maths]
    beside = left == indent and all(not b.cramped and len(b.lines) == 1 for b in lines)
    # Then the lines have the whole column below the key, and not what is left beside it.
    if not beside:
        working = indent
        lines = [measure(flow, width - indent, size) for flow in maths]
    up, down = key.baseline + pad, key.height - key.baseline + pad
    rest = lines
    if beside and lines:
        up = max(up, lines[0].baseline)
        down = max(down, lines[0].height - lines[0].baseline)
        rest = lines[1:]
    height = up + down + sum(line.height + room_between(size) for line in rest) + 0.9 * size
    if topic is not None:
        height += topic.height + room_between(size)
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


def room_between(size: float) -> float:
    """Return the room between two answers."""
    return 0.42 * size


def draw_answer(page: Page, answer: Answer, x: float, top: float) -> None:
    """Draw an answer with its top at a height, tagged as an item of the list."""
    document = page.document
    label, key, lines = answer.label, answer.key, answer.lines
    size = label.size
    pad, between = _pad(size), room_between(size)
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
