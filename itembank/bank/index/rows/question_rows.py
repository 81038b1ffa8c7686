"""What an item's words ask, as an index keeps it: what prints, and what its twins share with it.

Reading the words takes longer than all else but the proof, so it is done only where a command
needs it, and kept.
"""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any, NamedTuple

from itembank.bank.index.rows.topic_rows import item_of
from itembank.bank.question.as_item import form_and_many, read_item
from itembank.bank.question.given.maths import Maths, read_maths
from itembank.bank.question.twins import twin_mark, words_key
from itembank.bank.question.year import year_of
from itembank.items.asks import kind_of
from itembank.items.forms.form_rules import form_words
from itembank.items.item import Item, Step
from itembank.items.marks import usual_marks
from itembank.items.measures.years import FIRST_YEAR_KS3
from itembank.notation.line import shown_line
from itembank.notation.tree import NotationError

if TYPE_CHECKING:
    from itembank.bank.model.fields import BankItem


class QuestionRow(NamedTuple):
    """What the words of one item ask."""

    twin: bytes
    shown: str
    year: int
    """The first year group it suits."""


def question_of_record(topic: str, record: str) -> QuestionRow:
    """Return what an item asks that an index has as JSON."""
    item = item_of(record)
    made: Item | None = None
    try:
        made = read_item(item, item.id, topic)
    except NotationError:
        key, year = words_key(item), item.from_year or FIRST_YEAR_KS3
    else:
        key, year = made.twin, year_of(made, item)
    return QuestionRow(twin_mark(key), json.dumps(shown(item, made), ensure_ascii=False), year)


def shown(item: BankItem, made: Item | None = None) -> dict[str, Any]:
    """Return what prints of an item as text, whether or not its answer can be worked out.

    Mathematics stands as a line in a list of its own among the text of the prompt. What was
    `made` of it, if anything, says its form, so that the words are read once.
    """
    maths = read_maths(item)
    form, many = form_and_many(item, maths) if made is None else (made.form, kind_of(made.ask).many)
    steps = tuple(
        Step(words, node) for (words, _), node in zip(item.working, maths.working, strict=True)
    )
    return {
        "prompt": pieces(maths),
        "key": shown_line(maths.key),
        "form": form_words(form),
        "marks": usual_marks(maths.runs, steps) if item.marks is None else item.marks,
        "steps": [
            [step.say, "" if step.maths is None else shown_line(step.maths)] for step in steps
        ],
        "slips": [
            [shown_line(wrong), slip.name, slip.ask]
            for slip, wrong in zip(item.misconceptions, maths.wrong, strict=True)
        ],
        "many": many,
        "picture": _picture(item),
    }


def _picture(item: BankItem) -> dict[str, Any] | None:
    """Return the data of an item's figure and its words; None where it has none."""
    if item.figure is None:
        return None
    from itembank.figures.figure import FigureError, words
    from itembank.figures.figure_data import from_data

    try:
        said = words(from_data(item.figure))
    except FigureError:  # a bank says so where it is read
        said = ""
    return {"data": item.figure, "words": said}


def pieces(maths: Maths) -> list[str | list[str]]:
    """Return a prompt in pieces: text as it is, mathematics as a line in a list of its own."""
    return [run if isinstance(run, str) else [shown_line(run)] for run in maths.runs]
