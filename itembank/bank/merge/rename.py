"""Items under new ids: one that is renamed, and several of one id that are all kept.

The id is part of a record (:mod:`.records`), so an item under a new id is a new record with the
sign-offs of the old one. Where other records have the old id, as after a merge, the old one is
left behind as a retired *trace*: merging with a bank that still has it under the old id then
finds it retired, and does not bring the question back to be settled again. Merging stays the
union of all records. A renamed item that was alone under its id leaves no trace.
"""

from __future__ import annotations

import datetime
import re
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace

from itembank.bank.merge.union import Key, conflicting
from itembank.bank.model.field_types import ITEM_ID
from itembank.bank.model.item_records import Holding, Kept, Record, Records, named
from itembank.errors import ItembankError


@dataclass(frozen=True)
class Renamed:
    """A bank with items under new ids. `moved` says which record each of them was.

    `ids` are the ids it concerns, old and new.
    """

    holding: Holding
    moved: Mapping[Key, Key]
    ids: tuple[tuple[str, str], ...]


def keep_all(holding: Holding, wanted: str, new: Sequence[str], on: datetime.date) -> Renamed:
    """Return the holding with one item of a conflict under the plain id, the others under new ids.

    `new` are ids for the others, in the order of the ids they go by; where there are too few,
    free ones are made up.

    Raises:
        ItembankError: `wanted` is not one of several items in use under one base id, or an id
            of `new` is taken, is not one, or has no item left to go to.
    """
    chosen = conflicting(holding, wanted)
    base = chosen.record.item.id
    others = [
        (name, stored)
        for name, stored in sorted(named(holding).items())
        if stored.record.item.id == base and stored.retired is None and stored != chosen
    ]
    if len(new) > len(others):
        count = "one question" if len(others) == 1 else f"{len(others)} questions"
        raise ItembankError(
            f"Beside ‘{wanted}’ there is {count} with its id, and {len(new)} new ids are given."
        )
    ids: list[str] = []
    for id in new:
        refuse_id(holding, id, ids)
        ids.append(id)
    while len(ids) < len(others):
        ids.append(free_id(base, {*_taken(holding), *ids}))
    return _moved(
        holding, [(name, stored, id) for (name, stored), id in zip(others, ids, strict=True)], on
    )


def rename(holding: Holding, old: str, new: str, on: datetime.date) -> Renamed:
    """Return the holding with the item that goes by `old` under the id `new`.

    Raises:
        ItembankError: there is no item `old`, it is the retired version of another, or `new`
            is taken or is not an id.
    """
    stored = named(holding)[old]
    refuse_id(holding, new)
    base = stored.record.item.id
    if stored.retired is not None and len(holding.kept[base]) > 1:
        raise ItembankError(
            f"‘{old}’ is a retired version of {base} and keeps its id, so that a merge does not "
            "bring it back."
        )
    return _moved(holding, [(old, stored, new)], on)


def refuse_id(holding: Holding, id: str, also: Collection[str] = ()) -> None:
    """Raise an ItembankError where an id cannot be given to an item: it is taken, or is not one."""
    if not ITEM_ID.match(id) or "." in id:
        raise ItembankError(
            f"‘{id}’ cannot be an id: write lower-case letters, digits and hyphens, "
            "as in garden-12."
        )
    taken = {*_taken(holding), *also}
    if id in taken:
        near = free_id(id, taken)
        raise ItembankError(f"The id ‘{id}’ is taken. Choose another; {near} is free.")


def _taken(holding: Holding) -> set[str]:
    # The sign-offs of an item that is gone would pass for those of one that took its id.
    return {*holding.kept, *holding.elsewhere, *(signoff.item for signoff in holding.loose)}


def free_id(base: str, taken: Collection[str]) -> str:
    """Return an id like `base` that is not taken: the next number after the highest there is.

    >>> free_id("garden-12", {"garden-12", "garden-30", "bus-99"}), free_id("pond", {"pond"})
    ('garden-31', 'pond-2')
    """
    stem = re.sub(r"-?\d+\Z", "", base) or base
    numbers = [
        int(match[1])
        for id in (base, *taken)
        if (match := re.fullmatch(rf"{re.escape(stem)}-(\d{{1,9}})", id))
    ]
    # After the highest, and not in a gap: old packs may name the question that was there.
    number = max(numbers, default=1) + 1
    while f"{stem}-{number}" in taken:
        number += 1
    return f"{stem}-{number}"


def _moved(holding: Holding, moves: Sequence[tuple[str, Kept, str]], on: datetime.date) -> Renamed:
    kept: dict[str, Records] = dict(holding.kept)
    moved: dict[Key, Key] = {}
    for _, stored, new in moves:
        base, key = stored.record.item.id, stored.record.hash
        record = Record(stored.record.topic, stored.record.item.model_copy(update={"id": new}))
        signoffs = frozenset(replace(signoff, item=new) for signoff in stored.signoffs)
        kept[new] = {record.hash: Kept(record, stored.retired, signoffs)}
        moved[base, key] = (new, record.hash)
        records = dict(kept[base])
        if len(holding.kept[base]) > 1:
            records[key] = replace(stored, retired=(on, f"renamed: it is kept as {new}"))
        else:
            del records[key]
        kept[base] = records
    kept = {base: records for base, records in kept.items() if records}
    return Renamed(replace(holding, kept=kept), moved, tuple((old, new) for old, _, new in moves))
