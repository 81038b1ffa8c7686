"""Merges a bank into another on the disk, and settles the conflicts that this leaves.

The files of the bank that is merged into keep their comments and their order: only ids,
retirements and what is new are written. Everything is worked out first, so that a report can be
looked at, and then saved in one go or not at all.
"""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Sequence
from dataclasses import replace
from pathlib import Path

from itembank.bank.index.index_tables import Changed
from itembank.bank.index.opened import KeptBank, KeptTopic, with_bank
from itembank.bank.index.stamps import hash_of
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
)
from itembank.bank.model.bank import BANK_FILE, SIGNOFF_FILE, Bank, BankTopic, topic_files
from itembank.bank.model.item_records import Holding, named, record_of
from itembank.bank.proof.signoff import read_signoffs
from itembank.bank.saving.bank_lock import finish_saving
from itembank.bank.saving.save import take


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
    target, marks = with_bank(folder, _with_marks)
    source, others = with_bank(other, _with_marks)
    signoffs = read_signoffs(target.folder), read_signoffs(source.folder)
    merge = merge_banks(target, source, *signoffs, marks | others)
    changes = changed_texts(target, files, merge.holding, merge.items)
    words = f"{source.name} merged"
    return Prepared(target.folder, changes, merge.report, tuple(files.values()), words)


def _with_marks(whole: KeptBank) -> tuple[Bank, dict[Key, bytes]]:
    """Return a bank, and the marks of the twins of its records."""
    bank = _read(whole, whole.kept_topics)
    marks = {}
    for entry, mark in zip(bank.entries(), twin_marks(whole), strict=True):
        record = record_of(entry.topic, entry.item, bank.terms)
        marks[record.item.id, record.hash] = mark
    return bank, marks


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
    bank, files, holding, name = _found(Path(folder), wanted)
    settled = settle(holding, name, on)
    changes = changed_texts(bank, files, settled, named(settled))
    return Prepared(bank.folder, changes, words=f"{wanted} kept, of its versions")


def prepare_keep_all(
    folder: Path | str, wanted: str, new: Sequence[str], on: datetime.date
) -> Prepared:
    """Return what it takes to keep the item `wanted` of a conflict, and the others under new ids.

    Raises:
        FileFaults: the bank cannot be read.
        ItembankError: as :func:`~itembank.bank.merge.rename.keep_all`.
    """
    bank, files, holding, name = _found(Path(folder), wanted)
    words = f"{wanted} kept, and its other versions under new ids"
    return _prepared(bank, files, keep_all(holding, name, new, on), words)


def prepare_rename(folder: Path | str, old: str, new: str, on: datetime.date) -> Prepared:
    """Return what it takes to give the item `old` the id `new`, with its sign-offs.

    Raises:
        FileFaults: the bank cannot be read.
        ItembankError: as :func:`~itembank.bank.merge.rename.rename`.
    """
    bank, files, holding, name = _found(Path(folder), old)
    return _prepared(bank, files, rename(holding, name, new, on), f"{old} renamed {new}")


def _prepared(bank: Bank, files: Files, renamed: Renamed, words: str) -> Prepared:
    holding = renamed.holding
    changes = changed_texts(bank, files, holding, named(holding), renamed.moved)
    return Prepared(bank.folder, changes, MergeReport(renamed=renamed.ids), words=words)


def _found(folder: Path, wanted: str) -> tuple[Bank, Files, Holding, str]:
    """Return the part of a bank that an item is in, its files, what they hold, and the item's id.

    That part is the topics that have an item with the same base id.
    """
    return with_bank(folder, lambda bank: _part(bank, wanted))


def _part(whole: KeptBank, wanted: str) -> tuple[Bank, Files, Holding, str]:
    entry = whole.find(wanted)
    base = entry.id.partition(".")[0]
    alike = list(whole.chosen("place.id = ? OR place.id GLOB ?", [base, f"{base}.*"]))
    topics = [topic for topic in whole.kept_topics if topic.id in {pair.topic for pair in alike}]
    files = {path: take(path) for path in (whole.folder / BANK_FILE, whole.folder / SIGNOFF_FILE)}
    for topic in topics:
        file = files[topic.path] = take(topic.path)
        if hash_of(file.raw or b"") != whole.hash_of(topic):
            raise Changed("a file changed while it was read")
    bank = _read(whole, topics)
    holding = hold_bank(bank, read_signoffs(bank.folder))
    left_out = frozenset(id.partition(".")[0] for id in whole.ids()) - set(holding.kept)
    holding = replace(holding, elsewhere=left_out)
    record = record_of(entry.topic, entry.item, bank.terms)
    # An item that was edited since the merge is still in its file under the mark it had then.
    here = (record.item.id, record.hash)
    name = next(n for n, e in named(holding).items() if (e.record.item.id, e.record.hash) == here)
    return bank, files, holding, name
