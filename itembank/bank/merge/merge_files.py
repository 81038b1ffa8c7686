"""Merges a bank into another on the disk, and settles the conflicts that this leaves.

The files of the bank that is merged into keep their comments and their order: only ids,
retirements and what is new are written. Everything is worked out first, so that a report can be
looked at, and then saved in one go or not at all.
"""

from __future__ import annotations

import datetime
import re
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from itembank.bank.index.index_tables import Changed
from itembank.bank.index.opened import KeptBank, KeptTopic, with_bank
from itembank.bank.index.stamps import hash_of
from itembank.bank.merge.compare import twin_marks
from itembank.bank.merge.rename import Renamed, keep_all, rename
from itembank.bank.merge.union import (
    BOTH,
    Key,
    MergeReport,
    hold_bank,
    merge_banks,
    settle,
    signoffs_of,
)
from itembank.bank.model.bank import BANK_FILE, SIGNOFF_FILE, Bank, BankTopic, topic_files
from itembank.bank.model.fields import BankItem, PinnedItem
from itembank.bank.model.item_records import NO_LICENCE, Holding, Kept, Made, named, record_of
from itembank.bank.proof.signoff import read_signoffs, signoffs_text
from itembank.bank.read.item_checks import is_generated
from itembank.bank.saving.bank_lock import finish_saving
from itembank.bank.saving.save import Snapshot, save, take
from itembank.bank.write.as_toml import field_toml, topic_toml
from itembank.bank.write.blocks import with_block, with_fields, with_item, without_item
from itembank.errors import ItembankError
from itembank.files.together import Together
from itembank.items.topics.registry import find_topic


@dataclass(frozen=True)
class Prepared:
    """Changes to a bank's files that are worked out and not yet saved."""

    folder: Path
    changes: tuple[tuple[Snapshot, str], ...]
    report: MergeReport = field(default_factory=MergeReport)
    read: tuple[Snapshot, ...] = ()

    def save(self) -> list[Path]:
        """Save every file that changes, or none; return which did.

        Raises:
            ItembankError: as :func:`~itembank.bank.saving.save.save`.
        """
        if self.changes:
            save(self.folder, self.changes)
        return [before.path for before, _ in self.changes]

    def save_copy(self, folder: Path) -> None:
        """Save the whole bank, as it is after the changes, in a new folder; leave the old one.

        The folder is there whole or not at all.

        Raises:
            ChangedSince: a file of the bank is not as it was when it was read.
            ItembankError: there is something in `folder`, or it cannot be written.
        """
        files: dict[str, bytes | None] = {}
        try:
            for path in sorted(self.folder.rglob("*")):
                name = path.relative_to(self.folder).as_posix()
                if not any(part.startswith(".") for part in Path(name).parts):
                    files[name] = None if path.is_dir() else path.read_bytes()
        except OSError as error:
            raise ItembankError(
                f"{error.filename}: this cannot be read: {error.strerror}."
            ) from None
        for before in self.read:
            before.refuse_newer()
        for before, text in self.changes:
            files[before.path.relative_to(self.folder).as_posix()] = before.encode(text)
        try:
            with Together() as change:
                change.folder(folder, files, free=True)
        except FileExistsError:
            raise ItembankError(
                f"There is something in {folder} already. Name a new folder."
            ) from None
        except OSError as error:
            raise ItembankError(
                f"{folder}: the bank cannot be written there: {error.strerror}."
            ) from None


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
    changes = _changes(target, files, merge.holding, merge.items)
    return Prepared(target.folder, changes, merge.report, tuple(files.values()))


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
    return Prepared(bank.folder, _changes(bank, files, settled, named(settled)))


def prepare_keep_all(
    folder: Path | str, wanted: str, new: Sequence[str], on: datetime.date
) -> Prepared:
    """Return what it takes to keep the item `wanted` of a conflict, and the others under new ids.

    Raises:
        FileFaults: the bank cannot be read.
        ItembankError: as :func:`~itembank.bank.merge.rename.keep_all`.
    """
    bank, files, holding, name = _found(Path(folder), wanted)
    return _prepared(bank, files, keep_all(holding, name, new, on))


def prepare_rename(folder: Path | str, old: str, new: str, on: datetime.date) -> Prepared:
    """Return what it takes to give the item `old` the id `new`, with its sign-offs.

    Raises:
        FileFaults: the bank cannot be read.
        ItembankError: as :func:`~itembank.bank.merge.rename.rename`.
    """
    bank, files, holding, name = _found(Path(folder), old)
    return _prepared(bank, files, rename(holding, name, new, on))


def _prepared(bank: Bank, files: Files, renamed: Renamed) -> Prepared:
    holding = renamed.holding
    changes = _changes(bank, files, holding, named(holding), renamed.moved)
    return Prepared(bank.folder, changes, MergeReport(renamed=renamed.ids))


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


Files = dict[Path, Snapshot]


def _changes(
    bank: Bank,
    files: Files,
    holding: Holding,
    items: Mapping[str, Kept],
    moved: Mapping[Key, Key] | None = None,
) -> tuple[tuple[Snapshot, str], ...]:
    texts = {path: file.text for path, file in files.items()}
    new = _edit_items(bank, texts, items, moved or {})
    _add_items(bank, texts, holding, new)
    _add_made(bank, texts, holding)
    _edit_heads(bank, texts, holding)
    _edit_authors(bank, texts, holding)
    path = bank.folder / SIGNOFF_FILE
    signoffs = signoffs_of(dict(items), holding)
    if signoffs:
        texts[path] = signoffs_text(signoffs, _signed_anew(texts[path], holding, moved or {}))
    found = ((files.get(path) or take(path), text) for path, text in texts.items())
    return tuple((before, text) for before, text in found if text != before.text)


def _signed_anew(text: str, holding: Holding, moved: Mapping[Key, Key]) -> str:
    """Give the sign-offs of items that left no trace their new ids, where they stand."""
    for (base, _), (new, _) in moved.items():
        if base not in holding.kept:
            text = re.sub(rf'^item = "{re.escape(base)}"$', f'item = "{new}"', text, flags=re.M)
    return text


def _edit_items(
    bank: Bank, texts: dict[Path, str], items: Mapping[str, Kept], moved: Mapping[Key, Key]
) -> dict[str, Kept]:
    """Give the items of the bank their ids and retirements; return the items it lacks."""
    names = {(each.record.item.id, each.record.hash): name for name, each in items.items()}
    new = dict(items)
    passing: list[tuple[Path, str, str]] = []
    for entry in bank.entries():
        item, path = entry.item, entry.path
        record = record_of(entry.topic, item, bank.terms)
        here = (record.item.id, record.hash)
        name = names[moved.get(here, here)]
        if name not in new:  # the same item was there twice, under ids of a conflict
            texts[path] = without_item(texts[path], item.id)
            continue
        fields = _history(new.pop(name))
        if fields == _history_of(item) and name == item.id:
            continue
        # Ids may change places, so each goes by one that no item can have in between.
        between = f"BETWEEN {len(passing)}"
        texts[path] = with_fields(texts[path], item.id, {**fields, "id": between})
        passing.append((path, between, name))
    for path, between, name in passing:
        texts[path] = with_fields(texts[path], between, {"id": name})
    return new


def _history(each: Kept) -> dict[str, Any]:
    day, why = each.retired or (None, None)
    return {"retired": day, "retired_because": why or None}


def _history_of(item: BankItem) -> dict[str, Any]:
    return {"retired": item.retired, "retired_because": item.retired_because}


def _add_items(
    bank: Bank, texts: dict[Path, str], holding: Holding, new: Mapping[str, Kept]
) -> None:
    default = bank.terms or NO_LICENCE
    for name, each in new.items():
        record = each.record
        licence = None if record.item.licence == default else record.item.licence
        fields = {"id": name, "licence": licence, **_history(each)}
        path = _topic_path(bank, texts, holding, record.topic)
        texts[path] = with_item(texts[path], record.item.model_copy(update=fields))


def _topic_path(bank: Bank, texts: dict[Path, str], holding: Holding, topic: str) -> Path:
    """Return the file of a topic; one that is not there yet is begun."""
    path = bank.folder / f"{topic}.toml"
    if path not in texts:
        facts = holding.topics[topic]
        title: str | None = min(facts.titles)
        if is_generated(topic) and title == find_topic(topic).title:
            title = None
        texts[path] = topic_toml(topic, title, sorted(facts.prerequisites))
    return path


def _add_made(bank: Bank, texts: dict[Path, str], holding: Holding) -> None:
    there: dict[str, Counter[Made]] = {
        topic.id: Counter([*topic.generated, *topic.pinned]) for topic in bank.topics
    }
    for topic, made in holding.made.items():
        for element in sorted((made - there.get(topic, Counter())).elements(), key=repr):
            path = _topic_path(bank, texts, holding, topic)
            texts[path] = with_block(texts[path], _made_toml(element))


def _made_toml(made: Made) -> str:
    name = "pinned" if isinstance(made, PinnedItem) else "generated"
    fields = made.model_dump(exclude_defaults=True)
    rows = "".join(f"{key} = {field_toml(value)}\n" for key, value in fields.items())
    return f"[[{name}]]\n{rows}"


def _edit_heads(bank: Bank, texts: dict[Path, str], holding: Holding) -> None:
    """Add the prerequisites that the other bank's topics have."""
    for topic in bank.topics:
        missing = holding.topics[topic.id].prerequisites - set(topic.prerequisites)
        if missing:
            needed = [*topic.prerequisites, *sorted(missing)]
            texts[topic.path] = _with_head(texts[topic.path], "prerequisites", needed)


def _with_head(text: str, key: str, value: Sequence[str]) -> str:
    import tomlkit

    lines = text.split("\n")
    end = next((at for at, line in enumerate(lines) if line.lstrip().startswith("[[")), len(lines))
    head: Any = tomlkit.parse("\n".join(lines[:end]) + "\n")
    head[key] = list(value)
    return "\n".join([*tomlkit.dumps(head).rstrip("\n").split("\n"), "", *lines[end:]])


def _edit_authors(bank: Bank, texts: dict[Path, str], holding: Holding) -> None:
    """Add the author codes of the other bank; a code with two roles has both."""
    wanted = {code: _role(bank.authors.get(code), roles) for code, roles in holding.authors.items()}
    changed = {code: role for code, role in wanted.items() if bank.authors.get(code) != role}
    if not changed:
        return
    import tomlkit

    path = bank.folder / BANK_FILE
    document: Any = tomlkit.parse(texts[path])
    if "authors" not in document:
        document["authors"] = tomlkit.table()
    for code, role in changed.items():
        document["authors"][code] = role
    texts[path] = tomlkit.dumps(document)


def _role(ours: str | None, roles: Iterable[str]) -> str:
    if ours is not None and set(ours.split(BOTH)) == set(roles):
        return ours
    return BOTH.join(sorted(roles))
