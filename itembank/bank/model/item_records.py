"""Items as merging sees them: whole records under base ids, with what was added to them since.

A record is everything a person wrote about an item, its topic included. Retirement and
sign-offs are not part of it: they are added to a record, and two copies of a bank may have
added different ones. A :class:`Holding` is all of a bank in this shape. Joining two holdings
(:func:`join`) takes the union of everything, so that it does not matter in which order, or how
often, banks are joined; the ids in use follow from what there is (:func:`named`).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import Any

from itembank.bank.model.content import record_hash_of
from itembank.bank.model.fields import BankItem, GeneratedSet, PinnedItem
from itembank.bank.model.signed import Retirement, SignOff

FEWEST_DIGITS = 4
"""Digits of a record's hash that a conflict's ids show, more where they would be equal."""


NO_LICENCE = "none stated"
"""What an item says that has no licence, in a bank whose items have one."""


def carried_licence(own: str | None, here: str | None, there: str | None) -> str | None:
    """Return the licence to write out for an item that goes to another bank; None for none.

    `own` is the item's, `here` its bank's, `there` the other bank's: to say nothing there would
    put the item under a licence that nobody granted.

    >>> carried_licence(None, "MIT", "CC0-1.0"), carried_licence(None, None, "MIT")
    ('MIT', 'none stated')
    >>> carried_licence(None, "MIT", "MIT"), carried_licence("CC0-1.0", "MIT", None)
    (None, None)
    """
    return None if own or here == there else here or NO_LICENCE


@dataclass(frozen=True)
class Record:
    """One item as written: under its base id, its licence stated, without its retirement."""

    topic: str
    item: BankItem

    @cached_property
    def hash(self) -> str:
        """Return the hash of everything written."""
        return record_hash_of(self.item, self.topic)


def record_of(topic: str, item: BankItem, licence: str | None = None) -> Record:
    """Return the record of an item; `licence` is its bank's own.

    >>> from itembank.bank.model.fields import BankItem
    >>> item = BankItem(id="a-1.3f2a", tier="core", prompt="Work out {1 + 1}.", key="2")
    >>> record_of("number.add", item).item.id
    'a-1'
    """
    changes: dict[str, Any] = {"id": item.base, "retired": None, "retired_because": None}
    changes["licence"] = item.licence or licence or NO_LICENCE
    return Record(topic, item.model_copy(update=changes))


@dataclass(frozen=True)
class Kept:
    """A record with what was added to it."""

    record: Record
    retired: Retirement | None = None
    signoffs: frozenset[SignOff] = frozenset()

    def join(self, other: Kept) -> Kept:
        """Return the record with what either copy added; the earliest retirement holds."""
        days = [record.retired for record in (self, other) if record.retired is not None]
        return replace(
            self, retired=min(days, default=None), signoffs=self.signoffs | other.signoffs
        )


@dataclass(frozen=True)
class TopicFacts:
    """What a topic's file says beside its items; several titles are a clash to be told."""

    titles: frozenset[str] = frozenset()
    prerequisites: frozenset[str] = frozenset()


Records = dict[str, Kept]
"""Records under one base id, by their hashes."""
Made = GeneratedSet | PinnedItem


@dataclass(frozen=True)
class Holding:
    """All of a bank, but for its name, title and licence, as what can be joined."""

    kept: Mapping[str, Records] = field(default_factory=dict)
    topics: Mapping[str, TopicFacts] = field(default_factory=dict)
    made: Mapping[str, Counter[Made]] = field(default_factory=dict)
    authors: Mapping[str, frozenset[str]] = field(default_factory=dict)
    loose: frozenset[SignOff] = frozenset()
    """Sign-offs of items that are not there."""
    elsewhere: frozenset[str] = frozenset()
    """Base ids of items of the same bank that are left out here, since nothing is to change."""


def hold(
    items: Iterable[tuple[str, BankItem]],
    licence: str | None = None,
    signoffs: Iterable[SignOff] = (),
) -> Holding:
    """Return the items of a bank, each with its topic, as a holding."""
    by_id: dict[str, set[SignOff]] = {}
    for signoff in signoffs:
        by_id.setdefault(signoff.item, set()).add(signoff)
    kept: dict[str, Records] = {}
    for topic, item in items:
        record = record_of(topic, item, licence)
        retired = (item.retired, item.retired_because or "") if item.retired else None
        signed = frozenset(replace(record, item=item.base) for record in by_id.pop(item.id, ()))
        _add(kept, Kept(record, retired, signed))
    loose = frozenset(signoff for left in by_id.values() for signoff in left)
    return Holding(kept=kept, loose=loose)


def _add(kept: dict[str, Records], record: Kept) -> None:
    records = kept.setdefault(record.record.item.id, {})
    before = records.get(record.record.hash)
    records[record.record.hash] = before.join(record) if before else record


def join(first: Holding, other: Holding) -> Holding:
    """Return everything that is in either holding."""
    kept: dict[str, Records] = {}
    for holding in (first, other):
        for records in holding.kept.values():
            for stored in records.values():
                _add(kept, stored)
    topics = {
        name: TopicFacts(
            *(
                getattr(first.topics.get(name, TopicFacts()), fact)
                | getattr(other.topics.get(name, TopicFacts()), fact)
                for fact in ("titles", "prerequisites")
            )
        )
        for name in (*first.topics, *(name for name in other.topics if name not in first.topics))
    }
    # Equal sets twice in one file stay two: the union of bags takes the larger count.
    made = {
        name: first.made.get(name, Counter()) | other.made.get(name, Counter())
        for name in (*first.made, *(name for name in other.made if name not in first.made))
    }
    authors = {
        code: first.authors.get(code, frozenset()) | other.authors.get(code, frozenset())
        for code in (*first.authors, *(code for code in other.authors if code not in first.authors))
    }
    return Holding(kept, topics, made, authors, first.loose | other.loose)


def named(holding: Holding) -> dict[str, Kept]:
    """Return every record under the id it goes by.

    The only record under a base id, or the only one that is not retired, has the base id. The
    others, and all where several are in use, have the base id, a dot and the first digits of
    their hash. Where all of several are retired, the one retired last has the base id.
    """
    found: dict[str, Kept] = {}
    for base, records in holding.kept.items():
        plain = _plain(records)
        digits = _digits(records)
        for key, stored in records.items():
            found[base if key == plain else f"{base}.{key[:digits]}"] = stored
    return found


def in_use(records: Records) -> list[str]:
    """Return the hashes of the records that are not retired."""
    return [key for key, stored in records.items() if stored.retired is None]


def _plain(records: Records) -> str | None:
    used = in_use(records)
    if not used:
        return max(records, key=lambda key: (records[key].retired, key))
    return used[0] if len(used) == 1 else None


def _digits(records: Records) -> int:
    digits = FEWEST_DIGITS
    # Under one id one of two questions would take the place of the other, unsaid.
    while len({key[:digits] for key in records}) < len(records):
        digits += 1
    return digits
