"""Merges a bank into another on the disk, and settles the conflicts that this leaves.

The files of the bank that is merged into keep their comments and their order: only ids,
retirements and what is new are written. Everything is worked out first, so that a report can be
looked at, and then saved in one go or not at all.
"""

from __future__ import annotations

import datetime
from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from pathlib import Path
from typing import NamedTuple

from itembank.bank.index.kept_signoffs import (
    all_signoffs,
    signed_ids,
    signoff_hash,
    signoffs_like,
)
from itembank.bank.index.opened import KeptBank, KeptTopic, with_bank
from itembank.bank.index.store.index_tables import Changed
from itembank.bank.index.store.stamps import hash_of
from itembank.bank.merge.changed_texts import Files, changed_texts
from itembank.bank.merge.compare import twin_marks
from itembank.bank.merge.prepared import Prepared
from itembank.bank.merge.rename import Renamed, keep_all, rename
from itembank.bank.merge.union import (
    Key,
    MergeReport,
    hold_bank,
    merge_banks,
    settle,
    signoffs_of,
)
from itembank.bank.model.bank import BANK_FILE, SIGNOFF_FILE, Bank, BankTopic, topic_files
from itembank.bank.model.item_records import Holding, named, record_of
from itembank.bank.model.signed import SignOff
from itembank.bank.proof.signoff import read_signoffs
from itembank.bank.proof.signoff_edit import edited_signoffs
from itembank.bank.saving.bank_lock import finish_saving
from itembank.bank.saving.save import Snapshot, take, take_bytes


def prepare_merge(into: Path | str, other: Path | str) -> Prepared:
    """Return what it takes to merge the bank in the folder `other` into the one in `into`.

    Raises:
        FileFaults: one of the banks cannot be read.
        ItembankError: an item stands in its file in a way that the tool cannot edit.
    """
    folder = Path(into)
    finish_saving(folder)
    # As they were just before the bank was read: what somebody saves after that is noticed when
    # this is saved.
    paths = [*topic_files(folder), folder / BANK_FILE, folder / SIGNOFF_FILE]
    files = {path: take(path) for path in paths}
    target, marks, signed = with_bank(folder, _with_marks)
    source, others, also_signed = with_bank(other, _with_marks)
    merge = merge_banks(target, source, signed, also_signed, marks | others)
    changes = changed_texts(target, files, merge.holding, merge.items)
    words = f"{source.name} merged"
    return Prepared(target.folder, changes, merge.report, tuple(files.values()), words)


def _with_marks(whole: KeptBank) -> tuple[Bank, dict[Key, bytes], list[SignOff]]:
    """Return a bank, the marks of the twins of its records, and its sign-offs."""
    bank = _read(whole, whole.kept_topics)
    marks = {}
    for entry, mark in zip(bank.entries(), twin_marks(whole), strict=True):
        record = record_of(entry.topic, entry.item, bank.terms)
        marks[record.item.id, record.hash] = mark
    return bank, marks, all_signoffs(whole)


def _read(whole: KeptBank, topics: Iterable[KeptTopic]) -> Bank:
    """Return a bank with some of its topics, each of whose items is read once."""
    return Bank(
        whole.folder,
        whole.name,
        whole.title,
        whole.terms,
        dict(whole.authors),
        tuple(
            BankTopic(t.id, t.title, t.path, t.entries, t.generated, t.pinned, t.prerequisites)
            for t in topics
        ),
    )


def prepare_settle(folder: Path | str, wanted: str, on: datetime.date) -> Prepared:
    """Return what it takes to keep the item `wanted` of a conflict and retire the others.

    Raises:
        FileFaults: the bank cannot be read.
        ItembankError: there is no such item, or nothing to settle about it.
    """

    def settled(holding: Holding, name: str) -> Renamed:
        return Renamed(settle(holding, name, on), {}, ())

    return _changed(Path(folder), wanted, settled, f"{wanted} kept, of its versions")


def prepare_keep_all(
    folder: Path | str, wanted: str, new: Sequence[str], on: datetime.date
) -> Prepared:
    """Return what it takes to keep the item `wanted` of a conflict, and the others under new ids.

    Raises:
        FileFaults: the bank cannot be read.
        ItembankError: as :func:`~itembank.bank.merge.rename.keep_all`.
    """
    words = f"{wanted} kept, and its other versions under new ids"
    return _changed(
        Path(folder), wanted, lambda holding, name: keep_all(holding, name, new, on), words
    )


def prepare_rename(folder: Path | str, old: str, new: str, on: datetime.date) -> Prepared:
    """Return what it takes to give the item `old` the id `new`, with its sign-offs.

    Raises:
        FileFaults: the bank cannot be read.
        ItembankError: as :func:`~itembank.bank.merge.rename.rename`.
    """
    return _changed(
        Path(folder),
        old,
        lambda holding, name: rename(holding, name, new, on),
        f"{old} renamed {new}",
    )


def _changed(
    folder: Path, wanted: str, change: Callable[[Holding, str], Renamed], words: str
) -> Prepared:
    """Return what it takes to change the versions of one item.

    Of the sign-offs only theirs are read, as the index has them, and only theirs are written
    anew, if their file is as the tool writes it.
    """
    part = with_bank(folder, lambda bank: _part(bank, wanted))
    new = change(part.holding, part.name)
    signed = edited_signoffs(
        part.signed.raw or b"",
        part.signoffs,
        signoffs_of(named(new.holding), new.holding),
        {base: to for (base, _), (to, _) in new.moved.items() if base not in new.holding.kept},
    )
    if signed is None:
        part = with_bank(folder, lambda bank: _part(bank, wanted, whole_file=True))
        new = change(part.holding, part.name)
    changes: list[tuple[Snapshot, str | bytes]] = [
        *changed_texts(part.bank, part.files, new.holding, named(new.holding), new.moved)
    ]
    if signed is not None and signed != (part.signed.raw or b""):
        changes.append((part.signed, signed))
    return Prepared(folder, tuple(changes), MergeReport(renamed=new.ids), words=words)


class _Part(NamedTuple):
    """The part of a bank that an item is in: the topics that have one with the same base id."""

    bank: Bank
    files: Files
    holding: Holding
    name: str
    """The id that the item goes by."""
    signed: Snapshot
    """The file of sign-offs."""
    signoffs: list[SignOff]
    """Those of the item's versions."""


def _part(whole: KeptBank, wanted: str, whole_file: bool = False) -> _Part:
    entry = whole.find(wanted)
    base = entry.id.partition(".")[0]
    alike = list(whole.chosen("place.id = ? OR place.id GLOB ?", [base, f"{base}.*"]))
    topics = [topic for topic in whole.kept_topics if topic.id in {pair.topic for pair in alike}]
    signed = take_bytes(whole.folder / SIGNOFF_FILE)
    files = {whole.folder / BANK_FILE: take(whole.folder / BANK_FILE)}
    if whole_file:
        files[signed.path] = take(signed.path)
    for topic in topics:
        file = files[topic.path] = take(topic.path)
        if hash_of(file.raw or b"") != whole.hash_of(topic):
            raise Changed("a file changed while it was read")
    bank = _read(whole, topics)
    signoffs = signoffs_like(whole, base)
    taken = {id.partition(".")[0] for id in whole.ids()} | signed_ids(whole)
    if signed.raw is not None and hash_of(signed.raw) != signoff_hash(whole):
        raise Changed("the sign-offs changed while they were read")
    holding = hold_bank(bank, read_signoffs(bank.folder) if whole_file else signoffs)
    holding = replace(holding, elsewhere=frozenset(taken - set(holding.kept)))
    record = record_of(entry.topic, entry.item, bank.terms)
    # An item that was edited since the merge is still in its file under the mark it had then.
    here = (record.item.id, record.hash)
    name = next(n for n, e in named(holding).items() if (e.record.item.id, e.record.hash) == here)
    return _Part(bank, files, holding, name, signed, signoffs)
