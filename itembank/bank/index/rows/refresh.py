"""Brings an index up to what a bank's files hold now, reading no file that it knows already.

A topic file is known by its name and the hash of what it holds. The files of a bank together
are known by the hash of all of these: where that is kept, they were found to have no fault.
"""

from __future__ import annotations

import hashlib
import json
import time
from collections.abc import Sequence
from dataclasses import field
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

from itembank.bank.index.store.index_remark import Progress as Progress
from itembank.bank.index.store.index_store import Store
from itembank.bank.index.store.index_tables import Changed, IndexFailed, seal
from itembank.bank.index.store.stamps import hash_of, read_stamped, stamp_of
from itembank.bank.model.bank import BANK_FILE, SIGNOFF_FILE, topic_files
from itembank.data_class import dataclass
from itembank.files.disk import JOURNAL_FILE
from itembank.files.faults import Fault, FileFaults, decode_bytes, decode_text

if TYPE_CHECKING:
    import sqlite3

    from itembank.bank.read.topic_text import TopicText

KEPT_FOR = 24 * 3600.0
"""Seconds for which what a file held before stays: a command under way may still look it up."""
KEPT_AT_LEAST = 600.0
"""The same, where what files held before takes more room than what they hold now."""


@dataclass(frozen=True, slots=True)
class Sheet:
    """A topic file as the index has it."""

    number: int
    name: str
    topic: str
    title: str
    stated: str
    lines: str


@dataclass(slots=True)
class Read:
    """What a bank's files hold, as an index has them now; or what is wrong with them."""

    stated: dict[str, Any] | None = None
    """What ``bank.toml`` says: name, title, terms and authors."""
    sheets: list[Sheet] = field(default_factory=list)
    faults: list[Fault] = field(default_factory=list)
    whole: bytes = b""
    """The hash that stands for what all the files hold together."""


class File(NamedTuple):
    """A file of a bank: what it held just now is `data`, or what its hash says."""

    path: Path
    hash: bytes
    data: bytes | None
    faults: tuple[Fault, ...] = ()

    def held(self) -> bytes:
        """Return what the file held when it was hashed.

        Raises:
            Changed: it holds something else by now.
        """
        if self.data is not None:
            return self.data
        try:
            data = self.path.read_bytes()
        except OSError as error:
            raise Changed(str(error)) from None
        # What is kept under a hash must be what was hashed, or the index would lie from then on.
        if hash_of(data) != self.hash:
            raise Changed("a file changed while it was read")
        return data


def refresh(folder: Path, store: Store, report: Progress | None = None) -> Read:
    """Return what the bank in `folder` holds; whatever is new is read, and kept in the index.

    Raises:
        IndexFailed: the index is damaged, or files go on changing while they are read.
    """
    if (folder / JOURNAL_FILE).exists():
        from itembank.bank.saving.bank_lock import finish_saving

        finish_saving(folder)
    read = Read()
    first, *files = look_at([folder / BANK_FILE, *topic_files(folder)], store)
    read.stated = _bank_file(first, store, read.faults)
    read.faults += [fault for file in files for fault in file.faults]
    files = [file for file in files if not file.faults]
    known = _known(store)
    new = [file for file in files if (file.path.name, file.hash) not in known]
    faulty: dict[str, TopicText] = {}
    if new:
        from itembank.bank.index.rows.keeping import read_new

        unread = read_new(new, store, report)
        faulty = unread.texts
        read.faults += unread.faults
        files = [file for file in files if file.path.name not in unread.names]
        known = _known(store)
    try:
        read.sheets = [known[file.path.name, file.hash] for file in files]
    except KeyError:  # another program has cleared it away meanwhile
        raise Changed("what was read is gone") from None
    store.note_now([sheet.number for sheet in read.sheets])
    if new:
        store.write(lambda db: _clear(db, read.sheets))
    mark = read.whole = _mark([first, *files])
    if faulty or read.faults or not store.rows("SELECT 1 FROM whole WHERE mark = ?", [mark]):
        _together(folder, faulty, read, store)
        if not read.faults:
            store.write_if_can(lambda db: _note_whole(db, mark))
    return read


def _together(folder: Path, faulty: dict[str, TopicText], read: Read, store: Store) -> None:
    """Note every fault of the files together, after those that they have by themselves."""
    from itembank.bank.index.rows.kept_checks import faults_together

    read.faults += [fault for file in faulty.values() for fault in file.faults]
    authors = None if read.stated is None else read.stated["authors"]
    read.faults += faults_together(folder, read.sheets, faulty, authors, store)


def _mark(files: Sequence[File]) -> bytes:
    """Return the hash that stands for files together."""
    names = [[file.path.name, file.hash.hex()] for file in files]
    return hashlib.sha256(json.dumps(names).encode()).digest()


def _note_whole(db: sqlite3.Connection, mark: bytes) -> None:
    db.execute("INSERT OR REPLACE INTO whole VALUES (?, '', ?)", (mark, seal("")))


def look_at(paths: Sequence[Path], store: Store) -> list[File]:
    """Return every file with its hash; those whose stamp is known are not read."""
    stamps = {
        name: (stamp, hash)
        for name, stamp, hash, sealed in store.rows("SELECT * FROM stamp")
        if seal(name, stamp, hash) == sealed
    }
    found, settled = [], []
    for path in paths:
        try:
            stamp, _ = stamp_of(path)
            before, hash = stamps.get(path.name, ("", b""))
            if stamp == before:
                found.append(File(path, hash, None))
                continue
            data, stamp, is_settled = read_stamped(path)
        except OSError as error:
            found.append(File(path, b"", None, _unreadable(path, error)))
            continue
        found.append(File(path, hash_of(data), data))
        if is_settled:
            row = (path.name, stamp, found[-1].hash)
            settled.append((*row, seal(*row)))
    if settled:
        store.write_if_can(
            lambda db: db.executemany("INSERT OR REPLACE INTO stamp VALUES (?, ?, ?, ?)", settled)
        )
    return found


def _unreadable(path: Path, error: OSError) -> tuple[Fault, ...]:
    try:
        decode_text(path)
    except FileFaults as faults:
        return faults.faults
    return (Fault(str(path), 0, f"This cannot be read: {error.strerror}."),)


def _bank_file(file: File, store: Store, faults: list[Fault]) -> dict[str, Any] | None:
    """Return what ``bank.toml`` says, or None where it has faults."""
    if not file.faults:
        for stated, sealed in store.rows(
            "SELECT stated, seal FROM whole WHERE mark = ?", [file.hash]
        ):
            if seal(stated) != sealed:
                raise IndexFailed("a row is damaged")
            return dict(json.loads(stated))
    from itembank.bank.read.load import no_bank_file, read_bank_file

    if not file.path.exists():
        faults.append(no_bank_file(file.path))
        return None
    if file.faults:
        faults.extend(file.faults)
        return None
    try:
        text = decode_bytes(file.held(), file.path)
    except FileFaults as error:
        faults.extend(error.faults)
        return None
    found = read_bank_file(text, file.path, faults)
    if found is None:
        return None
    stated = {
        "name": found.name,
        "title": found.title,
        "terms": found.terms,
        "authors": dict(found.authors),
    }
    text = json.dumps(stated)
    store.write(
        lambda db: db.execute(
            "INSERT OR REPLACE INTO whole VALUES (?, ?, ?)", (file.hash, text, seal(text))
        )
    )
    return stated


def _known(store: Store) -> dict[tuple[str, bytes], Sheet]:
    found = {}
    query = "SELECT hash, seal, id, name, topic, title, stated, lines FROM sheet"
    for hash, sealed, *rest in store.rows(query):
        if seal(hash, *rest[1:]) != sealed:
            raise IndexFailed("a row is damaged")
        found[rest[1], hash] = Sheet(*rest)
    return found


def _clear(db: sqlite3.Connection, sheets: Sequence[Sheet]) -> None:
    """Note which sheets are in use, and clear away those that nobody needs any more."""
    now = time.time()
    used = [(now, sheet.number) for sheet in sheets]
    db.executemany("UPDATE sheet SET last_used = ? WHERE id = ?", used)
    # Of the sign-offs the last that were read stay: nearly all of them come again.
    last = f"SELECT MAX(id) FROM sheet WHERE name = '{SIGNOFF_FILE}'"
    here = f"(id IN (SELECT sheet FROM temp.now) OR id IN ({last}))"
    (held,) = db.execute(f"SELECT TOTAL(items) FROM sheet WHERE {here}").fetchone()
    (over,) = db.execute(f"SELECT TOTAL(items) FROM sheet WHERE NOT {here}").fetchone()
    oldest = now - (KEPT_FOR if over <= held else KEPT_AT_LEAST)
    gone = f"SELECT id FROM sheet WHERE NOT {here} AND last_used < ?"
    if not db.execute(f"{gone} LIMIT 1", (oldest,)).fetchone():
        return
    db.execute(f"DELETE FROM place WHERE sheet IN ({gone})", (oldest,))
    db.execute(f"DELETE FROM holds WHERE sheet IN ({gone})", (oldest,))
    db.execute(f"DELETE FROM sheet WHERE id IN ({gone})", (oldest,))
    db.execute("DELETE FROM fact WHERE id NOT IN (SELECT fact FROM place)")
    db.execute("DELETE FROM piece WHERE id NOT IN (SELECT piece FROM holds)")
    db.execute("DELETE FROM signoff WHERE piece NOT IN (SELECT id FROM piece)")
    db.execute("DELETE FROM sought")  # it counts on the words of others
    for table in ("words", "digits", "question", "proof"):
        db.execute(f"DELETE FROM {table} WHERE fact NOT IN (SELECT id FROM fact)")
