"""A question from what was typed: the options of a command, or the answers of a conversation.

A record is a plain table, as it will stand in the topic's file.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING, Any

from itembank.errors import ItembankError
from itembank.text.whole_number import whole_number

if TYPE_CHECKING:
    from itembank.bank.model.bank import Bank
    from itembank.bank.model.fields import BankItem

Record = dict[str, Any]

ORDER = (
    *("id", "tier", "task", "prompt", "options", "choose", "key", "form", "marks", "model", "find"),
    *("constants", "not_needed", "accept", "working", "from_year"),
    *("author", "licence", "source", "created"),
    *("retired", "retired_because", "misconceptions"),
)
"""In which order the keys of an item are written."""


def in_order(record: Record) -> Record:
    """Return the record with its keys in the usual order, without those that say nothing."""
    return {key: record[key] for key in ORDER if record.get(key) not in (None, "", [], {})}


def as_bank_item(record: Record) -> BankItem:
    """Return the record as an item.

    Raises:
        ItembankError: it has faults; all of them are told, a line each.
    """
    from itembank.bank.model.fields import BankItem
    from itembank.bank.read.item_checks import new_item_faults
    from itembank.files.fields.record import NotRead, read

    try:
        item = read(BankItem, record)
    except NotRead as error:
        raise ItembankError(str(error)) from None
    faults = [fault.message for fault in new_item_faults(item)]
    if faults:
        raise ItembankError("\n".join(faults))
    return item


def working_line(text: str) -> list[str]:
    """Return a line of working from ``WORDS | MATHEMATICS``.

    >>> working_line("Add | 9/12 + 2/12 = 11/12"), working_line("Look for a common factor.")
    (['Add', '9/12 + 2/12 = 11/12'], ['Look for a common factor.', ''])
    """
    words, _, line = (part.strip() for part in text.partition("|"))
    return [words, line]


def mistake(text: str, taken: Iterable[str] = ()) -> Record:
    """Return a likely mistake from ``WRONG ANSWER | WHAT THEY DO | WHAT TO ASK``.

    Its id is made from what they do, unlike those in `taken`.

    Raises:
        ItembankError: a part is missing.

    >>> mistake("4/10 | adds across | Is it more than 3/4?")["id"]
    'adds-across'
    """
    parts = [part.strip() for part in text.split("|")]
    if len(parts) != 3 or not all(parts):
        raise ItembankError(
            f"‘{text}’ is not a likely mistake. Write the wrong answer, what they do and what to "
            "ask, with | between: 4/10 | adds tops and bottoms | Is it more than 3/4?"
        )
    wrong, name, question = parts
    words = "".join(c if c.isascii() and c.isalnum() else " " for c in name.lower()).split()
    id = numbered("-".join(words[:4]) or "mistake", taken)
    return {"id": id, "name": name, "wrong": wrong, "ask": question}


def numbered(stem: str, taken: Iterable[str]) -> str:
    """Return `stem`, or the first of ``stem-2``, ``stem-3`` … that is not taken."""
    used = set(taken)
    name, number = stem, 1
    while name in used:
        number += 1
        name = f"{stem}-{number}"
    return name


def next_id(bank: Bank, topic: str) -> str:
    """Return a free id for a question on `topic`: ``share-1`` for one on ``ratio.share``."""
    from itembank.bank.write.edit import free_id

    return free_id(topic.rpartition(".")[2], (entry.item.id for entry in bank.entries()))


def pair(text: str, shape: str) -> tuple[str, str]:
    """Return the two sides of a text such as ``NAME=WORTH``; `shape` says how to write it.

    Raises:
        ItembankError: there are not two sides.
    """
    name, sign, worth = (part.strip() for part in text.partition("="))
    if not (name and sign and worth):
        raise ItembankError(f"‘{text}’ has to be written as {shape}.")
    return name, worth


def the_topic(bank: Bank, typed: str, title: str | None) -> tuple[str, str]:
    """Return the id and title of the topic that is meant, one of the bank's or the tool's.

    A topic of the department's own is new where it has a title.

    Raises:
        ItembankError: there is no such topic; the nearest are named.
    """
    from itembank.files.faults import join_words, nearest
    from itembank.items.topics.registry import find_topic, topic_ids

    own = {topic.id: topic.title for topic in bank.topics}
    wanted = typed.strip().lower()
    if wanted in own:
        return wanted, own[wanted]
    if wanted in topic_ids():
        return wanted, find_topic(wanted).title
    if title:
        _check_topic_id(wanted)
        return wanted, title
    near = nearest(wanted, dict.fromkeys([*own, *topic_ids()]))
    advice = f"Did you mean {join_words(near, 'or')}? " if near else ""
    own_one = "a topic of your own takes a title: --title."
    if "." not in wanted:
        own_one = "one is written as strand.topic, as in ratio.share."
    raise ItembankError(
        f"There is no topic ‘{typed}’. {advice}‘itembank topics’ lists them; {own_one}"
    )


def _check_topic_id(topic: str) -> None:
    from itembank.bank.model.fields import TOPIC_ID

    if not TOPIC_ID.match(topic):
        raise ItembankError(
            f"A topic is written as strand.topic, as in ratio.share, not ‘{topic}’."
        )


def whole_numbers(values: Sequence[str], option: str) -> list[int]:
    """Return the whole numbers that were typed for an option.

    Raises:
        ItembankError: one is none.
    """
    for value in values:
        if whole_number(value) is None:
            raise ItembankError(f"{option} needs a whole number, such as {option} 180.")
    return [int(value) for value in values]
