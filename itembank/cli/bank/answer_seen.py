"""Looks at each answer of the conversation of ``itembank bank add`` as it is typed.

A check returns the answer as it is meant, or raises an ItembankError that says what to type
instead.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from itembank.cli.bank.item_typed import Record, as_bank_item, mistake, working_line
from itembank.cli.words.ask import Check, note
from itembank.errors import ItembankError
from itembank.files.faults import join_words, nearest
from itembank.text.whole_number import whole_number

if TYPE_CHECKING:
    from collections.abc import Sequence

    from itembank.bank.model.bank import Bank

FOR_FILES = {"missing": "work-out", "find-letter": "solve", "extreme": "choose"}
"""Tasks of the words that stand in a file under another name."""


def likely_task(prompt: str) -> str:
    """Return the task that a question's words set, or ``""`` where they leave it open.

    >>> likely_task("Solve {2x = 6}."), likely_task("Write in order, smallest first: {1, 3}")
    ('solve', 'order')
    """
    from itembank.bank.model.fields import BankItem
    from itembank.bank.question.asking import NeedsPerson, question_of
    from itembank.bank.question.maths import UnreadableMaths, read_maths

    item = BankItem(id="new", tier="core", prompt=prompt, key="1")
    try:
        question = question_of(item, read_maths(item))
    except (NeedsPerson, UnreadableMaths):
        return ""
    return FOR_FILES.get(question.task, question.task)


def a_prompt(typed: str) -> str:
    """Check a question."""
    from itembank.bank.question.maths import split_prompt

    readable({"prompt": typed, "key": "1"})
    has_maths = any(is_maths for _, is_maths, _ in split_prompt(typed))
    if not has_maths and any(char.isdigit() for char in typed):
        note("It has no braces: its numbers print as words, and its key cannot be proved.")
    return typed


def a_line_for(record: Record, name: str) -> Check:
    """Return a check of a line of mathematics that will stand in the record as `name`."""

    def check(typed: str) -> str:
        readable({**record, name: typed})
        return typed

    return check


def a_model_line(record: Record) -> Check:
    """Return a check of a line of the model of a question."""

    def check(typed: str) -> str:
        readable({**record, "model": [typed]})
        return typed

    return check


def readable(record: Record) -> None:
    """Read the mathematics there is so far; raises ItembankError where it cannot be read."""
    there = {name: value for name, value in record.items() if value}
    as_bank_item({"tier": "core", **there, "id": "new"})


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
    readable({"prompt": "New", "key": "1", "working": [working_line(typed)]})
    return typed


def a_mistake(typed: str) -> str:
    """Check a likely mistake."""
    # No pupil's answer is this key, so that only the mistake itself is looked at.
    readable({"prompt": "New", "key": "987654321", "misconceptions": [mistake(typed)]})
    return typed


def a_free_id(bank: Bank) -> Check:
    """Return a check of an id that no question of the bank has."""
    used = {entry.item.id for entry in bank.entries()}

    def check(typed: str) -> str:
        as_bank_item({"id": typed, "tier": "core", "prompt": "New", "key": "1"})
        if typed in used:
            raise ItembankError(f"‘{typed}’ is taken. Write another.")
        return typed

    return check
