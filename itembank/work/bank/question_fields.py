"""A question in the making, as a plain table of its fields: what it lacks, what is wrong with it.

A table is as it will stand in the topic's file, and may hold as little as its words. Each part
can be looked at as it is written; the whole is tried in :mod:`itembank.work.bank.trying`.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import TYPE_CHECKING, Any

from itembank.errors import ItembankError
from itembank.remark import Remark

if TYPE_CHECKING:
    from pathlib import Path

    from itembank.bank.model.fields import BankItem
    from itembank.bank.question.given.maths import FieldFault

Fields = dict[str, Any]

ORDER = (
    *("id", "tier", "task", "prompt", "figure", "options", "choose", "key", "form", "marks"),
    *("model", "find", "constants", "not_needed", "accept", "working", "from_year"),
    *("author", "licence", "source", "created"),
    *("retired", "retired_because", "misconceptions"),
)
"""The parts of a question, in their usual order."""
_FOR_FILES = {"missing": "work-out", "find-letter": "solve", "extreme": "choose"}
"""Tasks of the words that stand in a file under another name."""
_FIRST: Fields = {"id": "new", "tier": "core", "prompt": "New", "key": "1"}
"""Stands for what is not written yet."""


class ItemFaults(ItembankError):
    """What is wrong with a question, field by field; the message has a line for each."""

    def __init__(self, faults: Sequence[FieldFault]) -> None:
        self.faults = tuple(faults)
        super().__init__("\n".join(fault.message for fault in faults))


def in_order(fields: Mapping[str, Any]) -> Fields:
    """Return the fields in their usual order, without those that say nothing."""
    return {name: fields[name] for name in ORDER if fields.get(name) not in (None, "", [], {})}


def checked_item(fields: Mapping[str, Any]) -> BankItem:
    """Return the question that some fields make.

    Raises:
        ItemFaults: it has faults; all of them are told.
    """
    from pydantic import ValidationError

    from itembank.bank.model.fields import BankItem
    from itembank.bank.model.model_faults import sentences
    from itembank.bank.question.given.maths import FieldFault
    from itembank.bank.read.item_checks import new_item_faults

    try:
        item = BankItem.model_validate(dict(fields))
    except ValidationError as error:
        found = [FieldFault(where, text) for where, text in sentences(error, BankItem)]
        raise ItemFaults(found) from None
    if faults := list(new_item_faults(item)):
        raise ItemFaults(faults)
    return item


def check_so_far(fields: Mapping[str, Any]) -> None:
    """Read the mathematics of a question that is not whole yet.

    Raises:
        ItemFaults: something of it cannot be read.
    """
    there = {name: value for name, value in fields.items() if value}
    checked_item({**_FIRST, **there, "id": _FIRST["id"]})


def check_words(prompt: str) -> tuple[Remark, ...]:
    """Read the words of a question, and return what its author ought to know of them.

    Raises:
        ItemFaults: its mathematics cannot be read.

    >>> [str(remark)[:21] for remark in check_words("Work out 3 + 4.")]
    ['It has no braces: its']
    """
    from itembank.bank.question.given.maths import split_prompt

    check_so_far({"prompt": prompt})
    has_maths = any(is_maths for _, is_maths, _ in split_prompt(prompt))
    if has_maths or not any(char.isdigit() for char in prompt):
        return ()
    says = "It has no braces: its numbers print as words, and its key cannot be proved."
    return (Remark(says),)


def check_mistake(mistake: Mapping[str, Any]) -> None:
    """Read a likely mistake by itself.

    Raises:
        ItemFaults: its wrong answer cannot be read.
    """
    # No pupil's answer is this key, so that only the mistake itself is looked at.
    check_so_far({"key": "987654321", "misconceptions": [mistake]})


def check_id(folder: Path, id: str) -> None:
    """Say so where a question cannot have an id in the bank in a folder.

    Raises:
        ItembankError: it is not written as one, or is taken.
    """
    from itembank.work.bank.bank_facts import ids_in

    checked_item({**_FIRST, "id": id})
    if id in ids_in(folder, id):
        raise ItembankError(f"‘{id}’ is taken. Write another.")


def likely_task(prompt: str) -> str:
    """Return the task that a question's words set, or ``""`` where they leave it open.

    >>> likely_task("Solve {2x = 6}."), likely_task("Write in order, smallest first: {1, 3}")
    ('solve', 'order')
    """
    from itembank.bank.model.fields import BankItem
    from itembank.bank.question.asking import NeedsPerson, question_of
    from itembank.bank.question.given.maths import UnreadableMaths, read_maths

    item = BankItem(id="new", tier="core", prompt=prompt, key="1")
    try:
        question = question_of(item, read_maths(item))
    except (NeedsPerson, UnreadableMaths):
        return ""
    return _FOR_FILES.get(question.task, question.task)


def why_a_model(fields: Mapping[str, Any]) -> str:
    """Return why the words alone do not say the mathematics behind them, or ``""`` if they do.

    >>> why_a_model({"tier": "core", "prompt": "Solve {2x = 6}.", "key": "x = 3"})
    ''

    Raises:
        ItemFaults: there are faults in what is written so far.
    """
    from itembank.bank.question.asking import NeedsPerson, ask_of
    from itembank.bank.question.given.maths import read_maths

    item = checked_item({"id": "new", **in_order(fields)})
    try:
        ask_of(item, read_maths(item))
    except NeedsPerson as error:
        return str(error)
    return ""


def usual_form(fields: Mapping[str, Any]) -> str:
    """Return the form that the answer has where the question states none.

    Raises:
        ItemFaults: there are faults in what is written so far.
    """
    from itembank.bank.question.as_item import form_of
    from itembank.bank.question.given.maths import read_maths

    item = checked_item({"id": "new", **in_order({**fields, "form": None})})
    return form_of(item, read_maths(item))


def mistake_fields(wrong: str, name: str, ask: str, taken: Iterable[str] = ()) -> Fields:
    """Return a likely mistake; its id is made from its name, unlike those in `taken`.

    >>> mistake_fields("4/10", "adds across", "Is it more than 3/4?")["id"]
    'adds-across'
    """
    words = "".join(c if c.isascii() and c.isalnum() else " " for c in name.lower()).split()
    stem = "-".join(words[:4]) or "mistake"
    used, id, number = set(taken), stem, 1
    while id in used:
        number += 1
        id = f"{stem}-{number}"
    return {"id": id, "name": name, "wrong": wrong, "ask": ask}
