"""The least share of a slide that a question takes, of all columns that it may stand in.

Columns of whole questions always leave some room empty, so questions that take nearly all of a
slide between them do not stand on it.
"""

from __future__ import annotations

from itembank.packs.data.pack_item import PackItem
from itembank.pages.engine.page import theme
from itembank.pages.engine.text.paragraph import Flow
from itembank.pages.parts.questions.answers import key_on_slide
from itembank.pages.parts.questions.question_cell import cell, prompt
from itembank.pages.parts.slide.slide_board import COLUMN_GAP, LEFT, RIGHT
from itembank.pages.parts.slide.slide_ways import FIGURES_LEAST, TIGHTEST
from itembank.pages.parts.slide.strips import SOME_WIDTHS, UNITS


def least_share(item: PackItem, shown: bool, room: float) -> float | None:
    """Return the least share of a slide's room that a question takes, set the closest.

    None where it stands in no column. Where its figure is `shown` by another question, the words
    that say so take its place. `room` is the height of all questions on a slide.
    """
    least = theme.SLIDE_QUESTION[0]
    setting = TIGHTEST.setting._replace(pictures=FIGURES_LEAST[-1] / least)
    question, answer = Flow(prompt(item, (), True, 1 if shown else None)), Flow(key_on_slide(item))
    across = RIGHT - LEFT + COLUMN_GAP
    shares = []
    for parts in SOME_WIDTHS:
        made = cell(question, answer, parts * across / UNITS - COLUMN_GAP, least, 1, setting)
        if not (made.question.cramped or made.answer.cramped):
            high = made.height + TIGHTEST.between
            shares.append(high / (room + TIGHTEST.between) * parts / UNITS)
    return min(shares, default=None)
