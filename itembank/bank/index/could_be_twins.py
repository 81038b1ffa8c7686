"""Which items could ask the same as one, told without reading their words.

Twins share every number (:mod:`~itembank.bank.question.canonical`). Nearly always a number stands
in digits; a few come from words, as the 2 of *half*. So an item can be a twin only where each
number of the other stands in it in digits, or it has words for numbers of that size. Of a large
bank few are left to be read.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING, Any, NamedTuple

from itembank.bank.index.rows.numbers_held import SAYS_LARGE, SAYS_SMALL, numbers_in, plain
from itembank.bank.index.store.index_tables import IndexFailed, seal

if TYPE_CHECKING:
    from itembank.bank.index.opened import KeptBank
    from itembank.bank.index.rows.kept_entry import KeptEntry
    from itembank.notation.tree import Node

_NOT_COUNTED = frozenset("012")
"""Too many words may stand for these."""
_NOT_READ = b""
_SMALL = 12
"""The words for numbers up to this are not those for numbers beyond it."""


class CouldBe(NamedTuple):
    """The facts of items that could be twins of one, those with the most numbers alike first."""

    facts: list[int]
    again: bool
    """Whether this was asked before of the same item."""


def could_be_twins(bank: KeptBank, entry: KeptEntry) -> CouldBe:
    """Return the items that could be twins of one, and whose words were not read yet.

    They are none where this was asked before of the same files and all of them were read.
    """
    fact, own = entry.kept.fact, entry.kept.own
    for whole, kept, sealed in bank.store.rows(
        "SELECT whole, numbers, seal FROM sought WHERE fact = ?", [fact]
    ):
        if seal(own, whole, kept) != sealed:
            raise IndexFailed("a row is damaged")
        if whole == bank.read.whole:
            return CouldBe([], True)
        numbers = json.loads(kept)
        wanted = None if numbers is None else frozenset(numbers)
        return CouldBe(_could_be(bank, entry, wanted), whole == _NOT_READ)
    return CouldBe(_could_be(bank, entry, numbers_asked(entry)), False)


def note_sought(bank: KeptBank, entries: Iterable[KeptEntry], *, all_read: bool = True) -> None:
    """Note the numbers of some items, and whether all that could be their twins were read."""
    rows = []
    whole = bank.read.whole if all_read else _NOT_READ
    for entry in entries:
        fact, own = entry.kept.fact, entry.kept.own
        if not bank.store.rows("SELECT 1 FROM sought WHERE fact = ? AND whole = ?", [fact, whole]):
            numbers = numbers_asked(entry)
            text = json.dumps(None if numbers is None else sorted(numbers))
            rows.append((fact, whole, text, seal(own, whole, text)))
    if rows:
        bank.store.write_if_can(
            lambda db: db.executemany("INSERT OR REPLACE INTO sought VALUES (?, ?, ?, ?)", rows)
        )


def _could_be(bank: KeptBank, entry: KeptEntry, wanted: frozenset[str] | None) -> list[int]:
    if wanted is None:
        return _of_the_same_words(bank, entry)
    large = sorted(number for number in wanted if "." in number or int(number) > _SMALL)
    conditions = []
    for numbers, says in ((large, SAYS_LARGE), (sorted(wanted.difference(large)), SAYS_SMALL)):
        if numbers:
            has = " AND ".join("instr(digits.numbers, ?) > 0" for _ in numbers)
            conditions.append(f"({has} OR digits.says & {says})")
    values = [f" {number} " for number in (*large, *sorted(wanted.difference(large)))]
    # Numbers first: few items are left to be looked up by the rest.
    query = (
        f"SELECT digits.fact, digits.numbers FROM digits WHERE {' AND '.join(conditions) or '1'} "
        "AND NOT EXISTS (SELECT 1 FROM question WHERE question.fact = digits.fact) "
        "AND EXISTS (SELECT 1 FROM place JOIN temp.now USING (sheet) "
        "WHERE place.fact = digits.fact)"
    )
    own = numbers_in(_texts(entry.kept.fields()))
    found = [
        (len(own.symmetric_difference(numbers.split())), fact)
        for fact, numbers in bank.store.rows(query, values)
    ]
    return [fact for _, fact in sorted(found)]


_UNREAD = (
    "SELECT DISTINCT fact.id, fact.record FROM temp.now JOIN place USING (sheet) "
    "JOIN fact ON fact.id = place.fact JOIN words ON words.fact = fact.id "
    "LEFT JOIN question ON question.fact = fact.id WHERE question.fact IS NULL"
)


def _of_the_same_words(bank: KeptBank, entry: KeptEntry) -> list[int]:
    """Return the facts of items whose prompts have the words of one, whatever stands between."""
    longest = max(_words(entry.kept.fields()["prompt"]), key=len, default="")
    rows = bank.store.each(f"{_UNREAD} AND instr(words.words, ?) > 0", [longest])
    same = _words(entry.kept.fields()["prompt"])
    return [fact for fact, record in rows if _words(json.loads(record)["prompt"]) == same]


def _words(prompt: str) -> list[str]:
    return re.findall(r"[^\s.,:;!?]+", prompt.casefold())


def numbers_asked(entry: KeptEntry) -> frozenset[str] | None:
    """Return the numbers of what an item asks that stand in it in digits, as they are compared.

    None where a person has to say what it asks.
    """
    from itembank.bank.index.rows.topic_rows import item_of
    from itembank.bank.question.as_item import read_item
    from itembank.items.asks import kind_of
    from itembank.notation.tree import NotationError

    item = item_of(entry.kept.record)
    try:
        read = read_item(item, item.id, entry.topic)
    except NotationError:
        return None
    _, row, bag = kind_of(read.ask).twin(read.ask, read.form)
    here = numbers_in(_texts(entry.kept.fields()))
    return frozenset(here.intersection(_written((*row, *bag))) - _NOT_COUNTED)


def _written(nodes: Iterable[Node]) -> Iterator[str]:
    """Yield the numbers that are parts of trees. A time of day is written in two ways."""
    from itembank.notation import tree as t

    for part in (part for node in nodes for part in t.walk(node)):
        match part:
            case t.Int(number):
                yield str(number)
            case t.Dec(whole, places, ""):
                yield plain(f"{whole}.{places}")
            case t.Mixed(whole_part, top, bottom):
                yield from map(str, (whole_part, top, bottom))


def _texts(stated: dict[str, Any]) -> list[str]:
    """Return the texts of an item from which what it asks is read."""
    options = stated.get("options", {})
    return [stated["prompt"], *stated.get("model", ()), stated.get("find", ""), *options.values()]
