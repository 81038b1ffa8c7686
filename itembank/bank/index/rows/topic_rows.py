"""Reads a topic file into what an index keeps of it; a file with faults is not kept.

What depends on an item and its topic alone is a *fact*, named by a hash of both. It is worked
out once, wherever the item stands and whatever else its file holds.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import NamedTuple

from itembank.bank.index.rows.numbers_held import numbers_held
from itembank.bank.model.content import content_hash_of
from itembank.bank.model.fields import BankItem
from itembank.bank.read.item_checks import checked_maths
from itembank.bank.read.topic_text import TopicText, check_items, read_topic
from itembank.data_class import dataclass
from itembank.items.topics.registry import find_topic, topic_ids
from itembank.notation.line import shown_line


class PlaceRow(NamedTuple):
    """Where an item stands in its file, and which fact it is."""

    id: str
    author: str | None
    line: int
    id_line: int
    author_line: int
    own: bytes


class FactRow(NamedTuple):
    """What is known of an item by itself, but for what its words ask."""

    own: bytes
    tier: str
    author: str | None
    retired: int
    content: str
    record: str
    asked: str
    words: str
    numbers: str
    says: int
    """With `numbers`, as :class:`~itembank.bank.index.rows.numbers_held.NumbersHeld`."""


@dataclass(frozen=True, slots=True)
class SheetRow:
    """A topic file without a fault of its own."""

    topic: str
    title: str
    stated: str
    """Its head, its sets and its pinned items, as JSON."""
    lines: str
    """The lines of these, as JSON."""
    places: tuple[PlaceRow, ...]


Records = list[tuple[bytes, str]]
"""Items as JSON, each with the hash that names it on its topic."""


def own_hash(topic: str, record: str) -> bytes:
    """Return the hash that names an item on a topic."""
    return hashlib.blake2b(f"{topic}\0{record}".encode(), digest_size=16).digest()


def record_of(item: BankItem) -> str:
    """Return an item as JSON; what it leaves out is left out."""
    return item.model_dump_json(exclude_defaults=True)


def item_of(record: str) -> BankItem:
    """Return the item that :func:`record_of` wrote down.

    >>> item = BankItem(id="a-1", tier="core", prompt="Work out {1 + 1}.", key="2")
    >>> item_of(record_of(item)) == item
    True
    """
    return BankItem.model_validate_json(record)


def read_sheet(text: str, path: Path) -> tuple[SheetRow, Records] | TopicText:
    """Return a topic file as rows, its items still to be checked; or with its faults."""
    file = read_topic(text, path)
    records = [record_of(placed.item) for placed in file.items]
    row = _row(file, records)
    if row is None:
        return checked(file)
    return row, [(at.own, record) for at, record in zip(row.places, records, strict=True)]


def read_whole(text: str, path: Path) -> tuple[SheetRow, list[FactRow]] | TopicText:
    """Return a topic file as rows with the facts of all its items; or with its faults."""
    file = read_topic(text, path)
    records = [record_of(placed.item) for placed in file.items]
    row = _row(file, records)
    if row is None:
        return checked(file)
    facts = []
    for placed, place, record in zip(file.items, row.places, records, strict=True):
        fact = _fact(placed.item, record, row.topic, place.own)
        if fact is None:
            return checked(file)
        facts.append(fact)
    return row, facts


def with_faults(text: str, path: Path) -> TopicText:
    """Return a topic file with everything that is wrong with it and its items."""
    return checked(read_topic(text, path))


def checked(file: TopicText) -> TopicText:
    """Return a topic file with what is wrong with its items noted too."""
    file.note_fields(check_items([(placed.index, placed.item) for placed in file.items]))
    return file


def facts_of(topic: str, records: Iterable[tuple[bytes, str]]) -> list[FactRow] | None:
    """Return the facts of items, or None where one of them has a fault."""
    found = []
    for own, record in records:
        fact = _fact(item_of(record), record, topic, own)
        if fact is None:
            return None
        found.append(fact)
    return found


def _row(file: TopicText, records: Sequence[str]) -> SheetRow | None:
    """Return a topic file as a row, or None where it has faults."""
    head = file.head
    if file.faults or head is None:
        return None
    places = []
    for placed, record in zip(file.items, records, strict=True):
        item = placed.item
        at = (placed.line, placed.id_line, placed.author_line)
        places.append(PlaceRow(item.id, item.author, *at, own_hash(head.topic, record)))
    sets = [made.model_dump(mode="json", exclude_defaults=True) for made, _ in file.generated]
    stated = {
        "head": head.model_dump(mode="json", exclude_defaults=True),
        "generated": sets,
        "pinned": [pin.model_dump(mode="json") for pin, _ in file.pinned],
    }
    lines = {
        "topic": file.topic_line,
        "prerequisites": file.prerequisites_line,
        "generated": [at for _, at in file.generated],
        "pinned": [at for _, at in file.pinned],
    }
    known = head.title is not None or head.topic in topic_ids()
    title = head.title or (find_topic(head.topic).title if known else "")
    return SheetRow(head.topic, title, json.dumps(stated), json.dumps(lines), tuple(places))


def _fact(item: BankItem, record: str, topic: str, own: bytes) -> FactRow | None:
    """Return what is known of an item by itself, or None where it has a fault."""
    maths, faults = checked_maths(item)
    if faults or maths is None:
        return None
    asked = [run if isinstance(run, str) else [shown_line(run)] for run in maths.runs]
    return FactRow(
        own,
        item.tier,
        item.author,
        int(item.retired is not None),
        content_hash_of(item, topic),
        record,
        json.dumps(asked, ensure_ascii=False),
        searched(item),
        *numbers_held(item.prompt, [*item.model, item.find or "", *item.options.values()]),
    )


def searched(item: BankItem) -> str:
    """Return the text that a search for words looks through, in small letters.

    >>> item = BankItem(id="a-1", tier="core", prompt="The Bus costs {£2}.", key="£2")
    >>> "the bus" in searched(item)
    True
    """
    return "\n".join(_texts(item)).casefold()


def _texts(item: BankItem) -> Iterator[str]:
    yield from (item.id, item.prompt, item.key, *item.model)
    yield from (" ".join(step) for step in item.working)
    yield from (f"{slip.name} {slip.wrong} {slip.ask}" for slip in item.misconceptions)
