"""Finds twins: the same question in disguise, in one bank, across banks, or among generated items.

What makes two questions one is in :mod:`.canonical`. A word problem is known by its model. A
question that has no mathematics to prove it from is known by its words alone, so that at least
a copy of it is found.
"""

from __future__ import annotations

import hashlib
import json
import re
from collections.abc import Iterable
from typing import TYPE_CHECKING

from itembank.bank.model.fields import BankItem
from itembank.bank.question.as_item import read_item
from itembank.bank.question.canonical import canonical
from itembank.bank.question.generated_sets import made_addresses
from itembank.items.topics.registry import find_item
from itembank.notation import tree as t

if TYPE_CHECKING:
    from itembank.bank.model.bank import Bank, Entry

__all__ = ["bank_twins", "canonical", "item_key", "twin_groups", "twin_mark", "twins"]

Key = tuple[object, ...]
Group = tuple[str, ...]
"""The addresses of items that are one question."""


def item_key(item: BankItem, topic: str = "") -> Key:
    """Return what an item has in common with its twins, and with nothing else.

    >>> item = BankItem(id="a-1", tier="core", prompt="Work out {3/4 + 1/6}.", key="11/12")
    >>> other = BankItem(id="b-1", tier="core", prompt="Add: {1/6 + 3/4}", key="11/12")
    >>> item_key(item) == item_key(other)
    True
    """
    try:
        return read_item(item, item.id, topic).twin
    except t.NotationError:
        return words_key(item)


def words_key(item: BankItem) -> Key:
    """Return what an item that has no mathematics to prove it from has in common with its twins.

    >>> words_key(BankItem(id="a-1", tier="core", prompt="Which bed, A or B?", key="A"))
    ('words', 'which bed a or b')
    """
    said = " ".join(re.findall(r"[^\s.,:;!?]+", item.prompt.casefold()))
    if item.figure is None:
        return ("words", said)
    # Of another picture the same words ask something else.
    return ("words", said, json.dumps(item.figure, sort_keys=True))


def twin_mark(key: tuple[object, ...]) -> bytes:
    """Return a mark that is equal for equal keys of twins, and for no others.

    >>> twin_mark(("find", 1)) == twin_mark(("find", 1)), twin_mark(("find", 1)) == twin_mark(())
    (True, False)
    """
    return hashlib.blake2b(
        repr(_plain(key)).encode("utf-8", "surrogatepass"), digest_size=16
    ).digest()


def _plain(value: object) -> object:
    # An enumeration's member is equal to its text, and would be written otherwise.
    if isinstance(value, str):
        return str.__str__(value)
    if isinstance(value, tuple | list):
        return tuple(_plain(part) for part in value)
    return value


def twin_groups(keyed: Iterable[tuple[str, Key]]) -> list[Group]:
    """Return the names that share a key, in the order in which they come; each group sorted.

    >>> twin_groups([("b", (1,)), ("c", (2,)), ("a", (1,))])
    [('a', 'b')]
    """
    names: dict[Key, set[str]] = {}
    for name, key in keyed:
        names.setdefault(key, set()).add(name)
    return [tuple(sorted(group)) for group in names.values() if len(group) > 1]


def twins(entries: Iterable[Entry]) -> list[Group]:
    """Return the groups of entries, by address, that are one question in disguise.

    The entries may be of one bank or of several.
    """
    return twin_groups((entry.address, item_key(entry.item)) for entry in entries)


def bank_twins(*banks: Bank, generated: bool = True) -> list[Group]:
    """Return the twins in and across banks, generated items that the banks hold among them.

    Groups of generated items alone are left out: their topics see to those.
    """
    keyed = [(entry.address, item_key(entry.item)) for bank in banks for entry in bank.entries()]
    written = {name for name, _ in keyed}
    if generated:
        made = (a for bank in banks for topic in bank.topics for a in made_addresses(topic))
        for address in dict.fromkeys(made):
            item = find_item(address)
            keyed.append((address, canonical(item.ask, item.form)))
    return [group for group in twin_groups(keyed) if written.intersection(group)]
