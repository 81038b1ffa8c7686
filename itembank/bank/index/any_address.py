"""Looks up any address: a generated item's, or that of an item of one of several banks."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.errors import ItembankError
from itembank.files.faults import FileFaults, join_words
from itembank.items.item import Item
from itembank.items.topics.registry import UnknownTopic, find_item

if TYPE_CHECKING:
    from itembank.bank.index.opened import KeptBank


def find_any(address: str, folders: Iterable[Path] = ()) -> Item:
    """Return the item at an address: ``topic/tier/number``, or ``BANK:ID`` of one of the banks.

    The banks are read only for an address of theirs. Nothing is proved here.

    Raises:
        UnknownTopic: the address names nothing, or its bank is not in one of `folders`.
        ItembankError: a bank has faults or not this item, or the item needs a person, so that
            nothing but its author's word stands behind its key.

    >>> find_any("ratio.share/core/12").topic
    'ratio.share'
    """
    _, colon, id = address.partition(":")
    if not colon:
        return find_item(address)
    from itembank.bank.question.as_item import NeedsPerson, as_item

    entry = find_bank(address, folders).find(id)
    try:
        return as_item(entry)
    except NeedsPerson as error:
        raise ItembankError(f"{address} needs a person. {error}") from None


def known_topics_of(addresses: Iterable[str], folders: Iterable[Path]) -> dict[str, str]:
    """Return the topics of the items of some banks at some addresses, by address.

    Each bank is opened once, and no words are read of an item that is known to be proved or was
    read here before, so that it is quick. What is left out :func:`find_any` tells about: it names
    nothing, or needs a person, or its bank has faults.
    """
    from itembank.bank.index.opened import with_bank

    wanted: dict[str, list[str]] = {}
    for address in addresses:
        name, _, id = address.partition(":")
        wanted.setdefault(name, []).append(id)
    found: dict[str, str] = {}
    seen: set[str] = set()
    for folder in folders if wanted else ():
        try:
            name, topics = with_bank(folder, lambda bank: (bank.name, _readable(bank, wanted)))
        except ItembankError:
            return {}
        if name in seen:  # an address could mean either
            return {}
        seen.add(name)
        found |= topics
    return found


_read: dict[str, None] = {}
"""The versions of items that were read, and need no person."""
MOST_READ = 10_000


def _readable(bank: KeptBank, wanted: Mapping[str, Sequence[str]]) -> dict[str, str]:
    """Return the topics of the items of a bank at some ids that need no person, by address."""
    from itembank.bank.index.item_standing import outcomes_kept
    from itembank.bank.index.rows_wanted import in_parts
    from itembank.bank.question.as_item import NeedsPerson, as_item
    from itembank.proof.outcome import State

    found = {}
    for part in in_parts(wanted.get(bank.name, ())):
        entries = list(bank.chosen(f"place.id IN ({', '.join('?' * len(part))})", list(part)))
        known = outcomes_kept(bank, [entry for entry in entries if entry.version not in _read])
        for entry in entries:
            outcome = known.get(entry.kept.fact)
            if entry.version not in _read and (outcome is None or outcome.state != State.PROVED):
                try:
                    as_item(entry)
                except NeedsPerson:
                    continue
            while len(_read) >= MOST_READ:
                _read.pop(next(iter(_read)), None)
            _read[entry.version] = None
            found[entry.address] = entry.topic
    return found


def find_bank(address: str, folders: Iterable[Path]) -> KeptBank:
    """Return the bank that an address ``BANK:ID`` names, from those in `folders`.

    Raises:
        UnknownTopic: none of them has that name.
        ItembankError: a bank has faults.
    """
    name = address.partition(":")[0]
    banks = read_banks(folders)
    bank = next((known for known in banks if known.name == name), None)
    if bank is None:
        there = [known.name for known in banks]
        named = f" {'The bank' if len(there) == 1 else 'The banks'} here: {join_words(there)}."
        raise UnknownTopic(
            f"{address}: there is no bank ‘{name}’ here.{named if there else ''}",
            matter="no such bank",
        )
    return bank


def read_banks(folders: Iterable[Path]) -> tuple[KeptBank, ...]:
    """Return the banks in some folders.

    Raises:
        FileFaults: every fault of every one of them.
        ItembankError: two banks have the same name, so that an address could mean either.
    """
    found: list[KeptBank] = []
    faults: FileFaults | None = None
    for folder in folders:
        try:
            found.append(bank_as_it_stands(folder))
        except FileFaults as error:
            faults = FileFaults((*(faults.faults if faults else ()), *error.faults), most=None)
    if faults is not None:
        raise faults
    names: dict[str, KeptBank] = {}
    for bank in found:
        namesake = names.setdefault(bank.name, bank)
        if namesake is not bank:
            raise ItembankError(
                f"The banks in {namesake.folder} and {bank.folder} are both called {bank.name}, so "
                "an address could mean either. Use one of them, or change a name in bank.toml."
            )
    return tuple(found)


def bank_as_it_stands(folder: Path) -> KeptBank:
    """Return the bank in a folder as its files are now; only what is new in them is read.

    Raises:
        FileFaults: anything is wrong with any of its files.
    """
    from itembank.bank.index.opened import open_bank

    return open_bank(folder)
