"""The marks of the follow-up sheets in the teacher's notes: what each mark is for."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from itembank.packs.data.pack import Pack, Sheet
from itembank.packs.data.pack_item import Maths, PackItem
from itembank.pages.engine.document_titles import sheet_name
from itembank.pages.engine.paper import WIDTH, Paper, heading_part, stack, text_part
from itembank.pages.engine.table_drawn import table_pieces
from itembank.pages.engine.text.paragraph import Piece
from itembank.pages.parts.questions.answers import key_shown
from itembank.pages.parts.questions.marks_said import counted, total
from itembank.pages.parts.teacher.script import mid_sentence

HOW = (
    "A right answer earns all the marks of its question. Otherwise give each mark below for the "
    "working as far as that line, set out in any way, even where a slip of arithmetic spoils the "
    "numbers. The last mark is for the answer alone. Questions that are not listed are worth "
    "1\u00a0mark, for the answer."
)


class Earned(NamedTuple):
    """Marks of a question with what they are for; without `maths` they are for the answer."""

    marks: int
    say: str
    maths: Maths | None


def earned(item: PackItem) -> list[Earned]:
    """Return what each mark of a question is for, the answer's last."""
    steps = [step for step in item.steps if step.marks]
    if not steps:
        return [Earned(item.marks, "the answer", None)]
    method = [Earned(step.marks, plain(step.say), step.maths) for step in steps[:-1]]
    return [*method, Earned(steps[-1].marks, "the answer", None)]


def plain(say: str) -> str:
    """Return the words of a step as they stand inside a sentence.

    A name before a colon keeps its capital.

    >>> plain("Subtract 7 from both sides."), plain("Pack B: divide to find the price of one.")
    ('subtract 7 from both sides', 'Pack B: divide to find the price of one')
    """
    return (say if ":" in say else mid_sentence(say)).rstrip(". ")


def method_marks(paper: Paper, pack: Pack) -> None:
    """Draw, sheet by sheet, what the marks of the questions worth more than one are for."""
    opening = [
        heading_part("Marks on the follow-up sheets", paper.size),
        text_part(HOW, WIDTH, paper.size, after=0.6 * paper.size),
    ]
    for sheet in pack.sheets:
        rows = list(_rows(sheet))
        if not rows:
            continue
        title = f"{sheet_name(sheet.tier)}: {counted(total(sheet.items))}"
        number, answer = 0.13 * WIDTH, 0.24 * WIDTH
        widths = (number, WIDTH - number - answer, answer)
        pieces = table_pieces(("Question", "Method", "Answer"), rows, widths, paper.size)
        top = stack([*opening, heading_part(title, paper.size, 3), pieces.rows[0]])
        if paper.room < top.height:  # nothing of it stands here that could go on
            paper.new_page()
        paper.place_apart([top, *pieces.rows[1:]], f"{title}, continued", pieces.again)
        paper.y -= paper.size
        opening = []


def _rows(sheet: Sheet) -> Iterator[tuple[str, list[Piece], list[Piece]]]:
    """Yield a row for each question worth more than a mark: a line for each method mark."""
    for number, item in enumerate(sheet.items, start=1):
        if item.marks == 1:
            continue
        *method, answer = earned(item)
        words: list[Piece] = []
        for place, mark in enumerate(method):
            start = "\n" if place else ""
            words.append(f"{start}{counted(mark.marks)}: {mark.say}: ")
            words.append(mark.maths or "")
        if not words:  # no line of working is worth a mark by itself
            words.append("for the answer alone")
        yield str(number), words, [f"{counted(answer.marks)}: ", *key_shown(item)]
