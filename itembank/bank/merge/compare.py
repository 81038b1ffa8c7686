"""Compares two banks: what is in one only, what is the same, and what differs, field by field."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

from itembank.bank.index.kept_words import twins_kept
from itembank.bank.index.opened import KeptBank
from itembank.bank.model.item_changes import Change, changes
from itembank.bank.question.twins import Group, item_key, twin_mark
from itembank.data_class import dataclass

if TYPE_CHECKING:
    from itembank.bank.model.bank import Bank, Entry


@dataclass(frozen=True, slots=True)
class Difference:
    """One item that both banks hold and do not hold alike."""

    id: str
    changes: tuple[Change, ...]


@dataclass(frozen=True, slots=True)
class Comparison:
    """What two banks have in common. Ids are in the order of the banks' files."""

    only_first: tuple[str, ...]
    only_second: tuple[str, ...]
    same: tuple[str, ...]
    different: tuple[Difference, ...]
    twins: tuple[tuple[Group, Group], ...]
    """Ids in the first bank, and ids in the second, that are one question in disguise."""

    @property
    def equal(self) -> bool:
        """Whether both banks hold the same items."""
        return not (self.only_first or self.only_second or self.different)


def compare(base: Bank, other: Bank) -> Comparison:
    """Return how `other` differs from `base`.

    A change's `was` is what the first bank says, and its `now` what the second says. Two items
    are the same where every field is, with the topic, the retirement, and the licence that
    each has from its bank.
    """
    first, second = (_by_id(bank) for bank in (base, other))
    found = {id: changes(first[id], second[id]) for id in first if id in second}
    return Comparison(
        only_first=tuple(id for id in first if id not in second),
        only_second=tuple(id for id in second if id not in first),
        same=tuple(id for id, changed in found.items() if not changed),
        different=tuple(Difference(id, changed) for id, changed in found.items() if changed),
        twins=tuple(_across(base, other)),
    )


def _by_id(bank: Bank) -> dict[str, dict[str, Any]]:
    return {entry.item.id: _data(entry, bank.terms) for entry in bank.entries()}


def _data(entry: Entry, licence: str | None) -> dict[str, Any]:
    data = entry.item.model_dump(mode="json", exclude={"id"})
    return {"topic": entry.topic, **data, "licence": data["licence"] or licence}


def _across(base: Bank, other: Bank) -> Iterator[tuple[Group, Group]]:
    first, second = (_by_key(bank) for bank in (base, other))
    for key, ids in first.items():
        # The same ids on both sides are told as same or different already.
        if key in second and second[key] != ids:
            yield tuple(sorted(ids)), tuple(sorted(second[key]))


def _by_key(bank: Bank) -> dict[bytes, set[str]]:
    found: dict[bytes, set[str]] = {}
    for entry, mark in zip(bank.entries(), twin_marks(bank), strict=True):
        found.setdefault(mark, set()).add(entry.item.id)
    return found


def twin_marks(bank: Bank) -> list[bytes]:
    """Return the mark of each item's twins, in the order of the files.

    It takes reading the words of each, which is done once where the bank has an index.
    """
    if isinstance(bank, KeptBank):
        return twins_kept(bank, list(bank.chosen()))
    return [twin_mark(item_key(entry.item, entry.topic)) for entry in bank.entries()]
