"""Looks at each answer of the conversation of ``itembank bank add`` as it is typed.

A check returns the answer as it is meant, or raises an ItembankError that says what to type
instead.
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from itembank.cli.bank.writing.item_typed import mistake, working_line
from itembank.cli.words.ask import Check, note
from itembank.errors import ItembankError
from itembank.files.faults import join_words, nearest
from itembank.text.whole_number import whole_number
from itembank.work.bank.question_fields import (
    Fields,
    check_id,
    check_mistake,
    check_so_far,
    check_words,
)

if TYPE_CHECKING:
    from collections.abc import Sequence


def a_prompt(typed: str) -> str:
    """Check a question."""
    for remark in check_words(typed):
        note(str(remark))
    return typed


def a_line_for(fields: Fields, name: str) -> Check:
    """Return a check of a line of mathematics that will stand in a question as `name`."""

    def check(typed: str) -> str:
        check_so_far({**fields, name: typed})
        return typed

    return check


def a_model_line(fields: Fields) -> Check:
    """Return a check of a line of the model of a question."""

    def check(typed: str) -> str:
        check_so_far({**fields, "model": [typed]})
        return typed

    return check


def a_word(kind: str, words: Sequence[str]) -> Check:
    """Return a check that takes one of `words`, in capitals or not."""

    def check(typed: str) -> str:
        same = [word for word in words if word.lower() == typed.lower()]
        if same:
            return same[0]
        near = nearest(typed.lower(), words, 1)
        raise ItembankError(
            f"There is no {kind} ‘{typed}’. Did you mean {near[0]}?"
            if near
            else f"There is no {kind} ‘{typed}’. It may be {join_words(list(words), 'or')}."
        )

    return check


BY_WORKING = "by its working"
"""What stands for no number of marks: the lines of working say how many."""


def a_number_of_marks(typed: str) -> str:
    """Check a number of marks, or the words that leave it to the lines of working."""
    from itembank.bank.model.fields import MOST_MARKS

    if typed == BY_WORKING:
        return typed
    if not 1 <= (whole_number(typed) or 0) <= MOST_MARKS:
        raise ItembankError(f"Write a whole number from 1 to {MOST_MARKS}.")
    return typed


def a_working_line(typed: str) -> str:
    """Check a line of working."""
    check_so_far({"working": [working_line(typed)]})
    return typed


def a_mistake(typed: str) -> str:
    """Check a likely mistake."""
    check_mistake(mistake(typed))
    return typed


def a_free_id(folder: Path) -> Check:
    """Return a check of an id that no question of the bank in a folder has."""

    def check(typed: str) -> str:
        check_id(folder, typed)
        return typed

    return check
