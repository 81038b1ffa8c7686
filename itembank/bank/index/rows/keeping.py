"""Reads topic files that an index does not know, on several processes, and keeps their rows."""

from __future__ import annotations

import time
from collections import deque
from collections.abc import Iterable, Iterator, Sequence
from typing import TYPE_CHECKING, Any, TypeVar

from itembank.bank.index.rows.topic_rows import (
    FactRow,
    SheetRow,
    facts_of,
    read_sheet,
    read_whole,
    with_faults,
)
from itembank.bank.index.store.index_remark import FEW_ITEMS, Progress, shown
from itembank.bank.index.store.index_store import Store
from itembank.bank.index.store.index_tables import Changed, seal
from itembank.bank.read.topic_text import TopicText
from itembank.files.faults import Fault, FileFaults, decode_bytes
from itembank.items.topics.registry import topic_ids
from itembank.notation.parse import parse
from itembank.processes.machine import cores
from itembank.processes.pool import stream

if TYPE_CHECKING:
    import sqlite3

    from itembank.bank.index.rows.refresh import File

FEW_FILES = 4
"""Of so few new files the items are checked in parts, so that every process has some."""
CHUNK = 250
T = TypeVar("T")


class Unread:
    """What could not be kept: files with faults, as far as they could be read."""

    def __init__(self) -> None:
        self.texts: dict[str, TopicText] = {}
        self.faults: list[Fault] = []
        self.names: set[str] = set()

    def add(self, file: TopicText) -> None:
        """Note a file that has faults."""
        self.texts[file.path.name] = file
        self.names.add(file.path.name)


def read_new(files: Sequence[File], store: Store, report: Progress | None = None) -> Unread:
    """Read files, keep them in the index, and return those that have faults.

    `report` is called with how many items are read, and about how many there are. Without one,
    whoever watches the index is shown it where there are many.
    """
    total = sum(file.held().count(b"[[items]]") for file in files)
    with shown(report, total) as bar:
        return _read_new(files, store, total, bar)


def _read_new(files: Sequence[File], store: Store, total: int, report: Progress | None) -> Unread:
    unread = Unread()
    done = 0

    def texts() -> Iterator[tuple[File, str]]:
        for file in files:
            try:
                yield file, decode_bytes(file.held(), file.path)
            except FileFaults as error:
                unread.faults.extend(error.faults)
                unread.names.add(file.path.name)

    fresh = len(files) >= FEW_FILES and not store.rows("SELECT 1 FROM fact LIMIT 1")
    read = _whole if fresh else _in_parts
    for file, found in read(texts(), Processes(total), store):
        if isinstance(found, TopicText):
            unread.add(found)
            continue
        row, facts = found
        store.write(lambda db, f=file, r=row, x=facts: keep(db, f, r, x))  # type: ignore[misc]
        done += len(row.places)
        if report:
            report(min(done, total), total)
    return unread


Found = tuple[SheetRow, list[FactRow]] | TopicText
Texts = Iterator[tuple["File", str]]


def _whole(texts: Texts, work: Processes, store: Store) -> Iterator[tuple[File, Found]]:
    """Read each file with all of its items in one go: nothing of them is known."""
    calls = (((file, text), (read_whole, text, file.path)) for file, text in texts)
    for (file, _), found in work.in_order(calls):
        yield file, found


def _in_parts(texts: Texts, work: Processes, store: Store) -> Iterator[tuple[File, Found]]:
    """Read each file, then check the items that are new, in parts."""
    calls = (((file, text), (read_sheet, text, file.path)) for file, text in texts)
    for (file, text), read in work.in_order(calls):
        if isinstance(read, TopicText):
            yield file, read
            continue
        row, records = read
        known = _known(store, [own for own, _ in records])
        new = [pair for pair in dict(records).items() if pair[0] not in known]
        parts = (
            (None, (facts_of, row.topic, new[at : at + CHUNK])) for at in range(0, len(new), CHUNK)
        )
        facts: list[FactRow] | None = []
        for _, found in work.in_order(parts):
            if found is None:
                facts = None
            elif facts is not None:
                facts += found
        yield file, with_faults(text, file.path) if facts is None else (row, facts)


def _known(store: Store, owns: Sequence[bytes]) -> set[bytes]:
    found: set[bytes] = set()
    for at in range(0, len(owns), 500):
        part = owns[at : at + 500]
        marks = ", ".join("?" * len(part))
        found |= {
            own for (own,) in store.rows(f"SELECT own FROM fact WHERE own IN ({marks})", part)
        }
    return found


def keep(db: sqlite3.Connection, file: File, row: SheetRow, facts: Iterable[FactRow]) -> None:
    """Keep a file that was read, with the facts of those of its items that are new.

    Raises:
        Changed: a fact that was there is gone.
    """
    db.executemany(
        "INSERT OR IGNORE INTO fact (own, tier, author, retired, content, record, asked, seal) "
        "VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
        [(*fact[:-3], seal(*fact[:-3])) for fact in facts],
    )
    db.executemany(
        "INSERT OR IGNORE INTO words SELECT id, ? FROM fact WHERE own = ?",
        [(fact.words, fact.own) for fact in facts],
    )
    db.executemany(
        "INSERT OR IGNORE INTO digits SELECT id, ?, ? FROM fact WHERE own = ?",
        [(fact.numbers, fact.says, fact.own) for fact in facts],
    )
    name = file.path.name
    about = (name, row.topic, row.title, row.stated, row.lines)
    added = db.execute(
        "INSERT OR IGNORE INTO sheet (name, topic, title, stated, lines, hash, items, last_used, "
        "seal) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
        (*about, file.hash, len(row.places), time.time(), seal(file.hash, *about)),
    )
    if not added.rowcount:
        return  # another program has just read it
    number = added.lastrowid
    db.executemany(
        "INSERT INTO place SELECT ?, ?, ?, ?, ?, ?, ?, id FROM fact WHERE own = ?",
        [(number, at, *place) for at, place in enumerate(row.places)],
    )
    (count,) = db.execute("SELECT COUNT(*) FROM place WHERE sheet = ?", (number,)).fetchone()
    if count != len(row.places):
        raise Changed("what was known of an item is gone")


class Processes:
    """Does work on several processes where there is enough of it, and here where there is not."""

    def __init__(self, items: int) -> None:
        self._many = items > FEW_ITEMS and cores() > 1

    def in_order(self, calls: Iterable[tuple[T, tuple[Any, ...]]]) -> Iterator[tuple[T, Any]]:
        """Yield what each call returns with what came with it; few are begun ahead of time."""
        if not self._many:
            for label, (call, *values) in calls:
                yield label, call(*values)
            return
        # Loaded once, here, so that a copy of this process has it already.
        topic_ids()
        parse("1")
        labels: deque[T] = deque()

        def pieces() -> Iterator[tuple[Any, ...]]:
            for label, call in calls:
                labels.append(label)
                yield call

        for found in stream(_called, pieces()):
            yield labels.popleft(), found


def _called(call: tuple[Any, ...]) -> Any:
    function, *values = call
    return function(*values)
