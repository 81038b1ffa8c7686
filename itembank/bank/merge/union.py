"""Merges two banks: everything that is in either, and a report of what came together.

Nothing is dropped. Where the banks hold different items under one id, all are kept under ids of
their own until one of them is chosen (:func:`settle`) and the others are retired, or until all
are kept for good (:mod:`.rename`); merging again brings nothing back. What is joined is described
in :mod:`.records`; writing it into a bank's folder is :mod:`.merge_files`.
"""

from __future__ import annotations

import datetime
from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import field, replace
from typing import TYPE_CHECKING

from itembank.bank.model.item_records import (
    Holding,
    Kept,
    Made,
    Records,
    TopicFacts,
    hold,
    in_use,
    join,
    named,
)
from itembank.bank.model.no_item import no_item
from itembank.bank.model.signed import SignOff
from itembank.bank.question.twins import Group, item_key, twin_groups, twin_mark
from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.files.faults import join_words

if TYPE_CHECKING:
    from itembank.bank.model.bank import Bank

Key = tuple[str, str]
"""A base id and the hash of a record under it."""


@dataclass(frozen=True, slots=True)
class Conflict:
    """Different items under one base id: the ids they go by now, and what has to be done."""

    base: str
    ids: tuple[str, ...]
    says: str


@dataclass(frozen=True, slots=True)
class MergeReport:
    """What came together. Ids are those of the merged bank."""

    only_first: tuple[str, ...] = ()
    only_second: tuple[str, ...] = ()
    same: tuple[str, ...] = ()
    conflicts: tuple[Conflict, ...] = ()
    renamed: tuple[tuple[str, str], ...] = ()
    """Ids of the first bank that changed, old and new."""
    retired: tuple[str, ...] = ()
    """Items retired in one bank and in use in the other: now retired."""
    signoffs: tuple[SignOff, ...] = ()
    """Sign-offs that the first bank did not have."""
    twins: tuple[Group, ...] = ()
    clashes: tuple[str, ...] = ()
    """Facts on which the banks differ, a sentence each."""

    @property
    def sound(self) -> bool:
        """Whether nothing is left for a person to settle."""
        return not (self.conflicts or self.clashes)


@dataclass(frozen=True)
class Merge:
    """Two banks merged: the items by their ids, and the report."""

    holding: Holding
    report: MergeReport
    items: dict[str, Kept] = field(default_factory=dict)


def hold_bank(bank: Bank, signoffs: Iterable[SignOff] = ()) -> Holding:
    """Return all of a bank as what can be joined."""
    items = ((entry.topic, entry.item) for entry in bank.entries())
    topics = {
        t.id: TopicFacts(frozenset([t.title]), frozenset(t.prerequisites)) for t in bank.topics
    }
    made: dict[str, Counter[Made]] = {
        topic.id: Counter([*topic.generated, *topic.pinned]) for topic in bank.topics
    }
    # A role that an earlier merge put together is taken apart again.
    authors = {code: frozenset(role.split(BOTH)) for code, role in bank.authors.items()}
    return replace(hold(items, bank.terms, signoffs), topics=topics, made=made, authors=authors)


BOTH = " / "
"""Stands between the roles that two banks give to one author code."""


def merge_banks(
    first: Bank,
    other: Bank,
    signoffs: Iterable[SignOff] = (),
    other_signoffs: Iterable[SignOff] = (),
    marks: Mapping[Key, bytes] | None = None,
) -> Merge:
    """Return two banks merged, with their sign-offs; nothing is written.

    `marks` are those of twins, as far as they are known: what is not is worked out.
    """
    merge = merge_holdings(hold_bank(first, signoffs), hold_bank(other, other_signoffs), marks)
    clashes = (*_licence_clash(first, other), *merge.report.clashes)
    return replace(merge, report=replace(merge.report, clashes=clashes))


def merge_holdings(
    mine: Holding, other: Holding, marks: Mapping[Key, bytes] | None = None
) -> Merge:
    """Return everything in either holding, and what came together; as :func:`merge_banks`."""
    holding = join(mine, other)
    items = named(holding)
    first: list[str] = []
    second: list[str] = []
    same: list[str] = []
    retired: list[str] = []
    for name, stored in items.items():
        sides = [_find(side, stored) for side in (mine, other)]
        (same if all(sides) else first if sides[0] else second).append(name)
        if stored.retired and any(side is not None and side.retired is None for side in sides):
            retired.append(name)
    before = named(mine)
    now = {(stored.record.item.id, stored.record.hash): name for name, stored in items.items()}
    moved = (
        (old, now[stored.record.item.id, stored.record.hash]) for old, stored in before.items()
    )
    report = MergeReport(
        only_first=tuple(first),
        only_second=tuple(second),
        same=tuple(same),
        conflicts=tuple(_conflicts(mine, other, holding, items)),
        renamed=tuple((old, new) for old, new in moved if old != new),
        retired=tuple(retired),
        signoffs=_gained(before, mine, items, holding),
        twins=tuple(_twins(items, marks or {})),
        clashes=tuple(_clashes(holding)),
    )
    return Merge(holding, report, items)


def signoffs_of(items: dict[str, Kept], holding: Holding) -> list[SignOff]:
    """Return every sign-off under the id its item goes by, and those without an item."""
    found = [
        replace(signoff, item=name) for name, stored in items.items() for signoff in stored.signoffs
    ]
    return [*found, *holding.loose]


def settle(holding: Holding, wanted: str, on: datetime.date) -> Holding:
    """Return the holding with one item of a conflict kept in use, the others retired.

    The one kept has the plain id from then on.

    Raises:
        ItembankError: `wanted` is not one of several items in use under one base id.
    """
    chosen = conflicting(holding, wanted).record
    base = chosen.item.id
    why = f"settled: the version {chosen.hash[:8]} is kept as {base}"
    settled: Records = {
        # Retired and not dropped: merged again with a bank that has them still, they stay settled.
        key: stored if key == chosen.hash or stored.retired else replace(stored, retired=(on, why))
        for key, stored in holding.kept[base].items()
    }
    return replace(holding, kept={**holding.kept, base: settled})


def conflicting(holding: Holding, wanted: str) -> Kept:
    """Return the item that goes by `wanted`, one of several in use under one base id.

    Raises:
        ItembankError: it is not one of several, or there is none.
    """
    items = named(holding)
    if wanted not in items:
        raise no_item(wanted, items, "this bank")
    chosen = items[wanted].record
    base = chosen.item.id
    records = holding.kept[base]
    if len(in_use(records)) < 2 or records[chosen.hash].retired:
        names = [name for name, stored in items.items() if stored.record.item.id == base]
        used = [name for name in names if items[name].retired is None]
        if len(used) > 1:
            raise ItembankError(f"‘{wanted}’ is retired. Choose one of {join_words(used, 'or')}.")
        raise ItembankError(
            f"There is nothing to settle about ‘{wanted}’: no other item has its id."
        )
    return items[wanted]


def _find(holding: Holding, stored: Kept) -> Kept | None:
    return holding.kept.get(stored.record.item.id, {}).get(stored.record.hash)


def _conflicts(
    first: Holding, other: Holding, holding: Holding, items: dict[str, Kept]
) -> Iterable[Conflict]:
    names: dict[str, list[str]] = {}
    for name, stored in items.items():
        names.setdefault(stored.record.item.id, []).append(name)
    for base, records in holding.kept.items():
        if len(records) == 1:
            continue
        used, ids = in_use(records), tuple(sorted(names[base]))
        sides = [side.kept.get(base, {}) for side in (first, other)]
        if len(used) > 1:
            live = tuple(name for name in ids if items[name].retired is None)
            says = f"{join_words(live)} are different items with one id. Keep one of them, or all."
            yield Conflict(base, live, says)
        elif not used and any(in_use(side) for side in sides):
            says = "This was settled in two ways, so that every one of its items is retired."
            yield Conflict(base, ids, says)
        elif used and all(len(side) < len(records) for side in sides if side) and all(sides):
            says = f"One bank retired it while the other changed it. The changed one is {base}."
            yield Conflict(base, ids, says)


def _gained(
    before: dict[str, Kept], first: Holding, items: dict[str, Kept], holding: Holding
) -> tuple[SignOff, ...]:
    had = {
        (stored.record.item.id, stored.record.hash, stored.signoffs) for stored in before.values()
    }
    known = {(base, key): signoffs for base, key, signoffs in had}
    found = [
        replace(signoff, item=name)
        for name, stored in items.items()
        for signoff in stored.signoffs
        - known.get((stored.record.item.id, stored.record.hash), frozenset())
    ]
    found += holding.loose - first.loose
    # They come out of sets, whose order is another one in each run of the program.
    return tuple(sorted(found, key=lambda s: (s.item, s.on, s.by, s.content)))


def _twins(items: dict[str, Kept], marks: Mapping[Key, bytes]) -> Iterable[Group]:
    """Yield groups of twins among the items in use; those under one base id are conflicts."""
    keyed = []
    for name, stored in items.items():
        if stored.retired is None:
            record = stored.record
            mark = marks.get((record.item.id, record.hash))
            keyed.append((name, (mark or twin_mark(item_key(record.item, record.topic)),)))
    for group in twin_groups(keyed):
        if len({items[name].record.item.id for name in group}) > 1:
            yield group


def _clashes(holding: Holding) -> Iterable[str]:
    for code, roles in holding.authors.items():
        if len(roles) > 1:
            listed = join_words([f"‘{role}’" for role in sorted(roles)])
            yield f"The author code {code} stands for {listed}."
    for topic, facts in holding.topics.items():
        if len(facts.titles) > 1:
            listed = join_words([f"‘{title}’" for title in sorted(facts.titles)])
            yield f"The topic {topic} has the titles {listed}."
    for base, records in holding.kept.items():
        if len(records) > 1 and len({stored.record.topic for stored in records.values()}) > 1:
            topics = join_words(sorted({stored.record.topic for stored in records.values()}))
            yield f"Items with the id {base} are in the topics {topics}."


def _licence_clash(first: Bank, other: Bank) -> Iterable[str]:
    if first.terms != other.terms:
        names = [f"{bank.terms or 'none'} ({bank.name})" for bank in (first, other)]
        yield f"The banks have different licences: {join_words(names)}. Each item keeps its own."
