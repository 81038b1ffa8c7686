"""The file of an index: opened where it is ours and sound, and done without where it is not.

Every row is named by what it was made from, so whoever writes it writes the same; rows are added
and never changed, until nobody has needed them for a day. Two programs may so use one index at
the same time, each seeing the bank as it read it itself. Where the file cannot be written, all
goes on in memory.
"""

from __future__ import annotations

import contextlib
import hashlib
import os
import sqlite3
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from typing import Any, TypeVar

from itembank.bank.index.code_mark import code_mark
from itembank.bank.index.index_place import index_path, make_private_folder
from itembank.bank.index.index_remark import tell
from itembank.errors import ItembankError

APPLICATION = 0x17E4BA4C
"""Marks a SQLite file as one of ours (``PRAGMA application_id``)."""
VERSION = 1
"""Of the tables below; it goes up with every change of them."""
PATIENCE = 5.0
"""Seconds to wait while another program writes."""

TABLES = """
CREATE TABLE about (name TEXT PRIMARY KEY, value BLOB) WITHOUT ROWID;
CREATE TABLE stamp (name TEXT PRIMARY KEY, stamp TEXT, hash BLOB, seal BLOB) WITHOUT ROWID;
CREATE TABLE sheet (
    id INTEGER PRIMARY KEY, name TEXT, hash BLOB, topic TEXT, title TEXT, stated TEXT, lines TEXT,
    items INTEGER, last_used REAL, seal BLOB, UNIQUE (name, hash)
);
CREATE TABLE place (
    sheet INTEGER, at INTEGER, id TEXT, author TEXT, line INTEGER, id_line INTEGER,
    author_line INTEGER, fact INTEGER, PRIMARY KEY (sheet, at)
) WITHOUT ROWID;
CREATE INDEX place_id ON place (id);
CREATE INDEX place_fact ON place (fact);
CREATE TABLE fact (
    id INTEGER PRIMARY KEY, own BLOB UNIQUE, tier TEXT, author TEXT, retired INTEGER,
    content TEXT, record TEXT, asked TEXT, seal BLOB
);
CREATE TABLE words (fact INTEGER PRIMARY KEY, words TEXT);
CREATE TABLE question (fact INTEGER PRIMARY KEY, twin BLOB, shown TEXT, year INTEGER, seal BLOB);
CREATE INDEX question_twin ON question (twin);
CREATE TABLE proof (
    fact INTEGER PRIMARY KEY, state TEXT, says TEXT, first TEXT, second TEXT, modelled INTEGER,
    seal BLOB
);
CREATE TABLE made (
    address TEXT PRIMARY KEY, state TEXT, says TEXT, first TEXT, second TEXT, modelled INTEGER,
    seal BLOB
) WITHOUT ROWID;
CREATE TABLE signoff (
    sheet INTEGER, at INTEGER, item TEXT, by TEXT, day TEXT, content TEXT, was TEXT, seal BLOB,
    PRIMARY KEY (sheet, at)
) WITHOUT ROWID;
CREATE INDEX signoff_item ON signoff (sheet, item);
CREATE TABLE whole (mark BLOB PRIMARY KEY, stated TEXT, seal BLOB) WITHOUT ROWID;
"""
# sheet: a topic file, or the sign-offs, as it was read; `stated` is what it says beside its
# items, and `lines` where.
# place: its items in order. fact: an item on a topic, by the hash of both. question, proof: what
# its words ask, and what both roads made of it. made: the same of generated items.
# whole: files that were found to have no fault together; and what a bank.toml says.

T = TypeVar("T")
_WITHOUT = "The bank is read without its index: {}."
_ANEW = "The index of this bank was damaged. It is made anew."


DAMAGE = (sqlite3.DatabaseError, UnicodeDecodeError)
"""What SQLite raises of a file that is none of its own, or not what it wrote."""


class IndexFailed(ItembankError):
    """The index cannot be used any further; what was asked can be asked again without it."""

    def __init__(self, why: str) -> None:
        super().__init__(f"The bank's index cannot be read ({why}). Run this once more.")


class Changed(IndexFailed):
    """A file of the bank, or the index itself, changed while it was read."""


def seal(*parts: object) -> bytes:
    """Return the check that is kept with a row, so that a damaged one is not believed.

    >>> seal("a", 1) == seal("a", 1), seal("a", 1) == seal("a1", "")
    (True, False)
    """
    joined = "\0".join(part.hex() if isinstance(part, bytes) else str(part) for part in parts)
    return hashlib.blake2b(joined.encode("utf-8", "surrogatepass"), digest_size=8).digest()


class Store:
    """The tables of one bank's index, on the disk or in memory."""

    def __init__(self, path: Path | None = None) -> None:
        self.path: Path | None = None
        self._db = self._opened(path) if path is not None else None
        if self._db is None:
            self._db = _fresh(sqlite3.connect(":memory:", isolation_level=None))
        _settle(self._db)

    @classmethod
    def of(cls, folder: Path) -> Store:
        """Return the index of the bank in a folder; what keeps it from being used is remarked."""
        try:
            path = index_path(folder)
        except RuntimeError:
            path = None
            tell(_WITHOUT.format("this account has no home folder to keep one in"))
        return cls(path)

    def rows(self, query: str, values: Iterable[object] = ()) -> list[Any]:
        """Return the rows of a query.

        Raises:
            IndexFailed: the index is damaged, or was taken away.
        """
        assert self._db is not None
        try:
            return self._db.execute(query, tuple(values)).fetchall()
        except DAMAGE as error:
            raise IndexFailed(str(error)) from None

    def each(self, query: str, values: Iterable[object] = ()) -> Iterator[Any]:
        """Yield the rows of a query as they are read; for many of them. Raises as :meth:`rows`."""
        assert self._db is not None
        try:
            yield from self._db.execute(query, tuple(values))
        except DAMAGE as error:
            raise IndexFailed(str(error)) from None

    def write(self, work: Callable[[sqlite3.Connection], T]) -> T:
        """Return what `work` returns; all it writes is written, or nothing.

        Where the disk takes no more, or another program will not let go, what there is of the
        index is brought into memory, and the work is done there.

        Raises:
            IndexFailed: the index is damaged.
        """
        assert self._db is not None
        try:
            return _all_or_none(self._db, work)
        except sqlite3.OperationalError as error:
            if self.path is None:
                raise IndexFailed(str(error)) from None
            self._go_on_in_memory(error)
        except DAMAGE as error:
            raise IndexFailed(str(error)) from None
        return _all_or_none(self._db, work)

    def write_if_can(self, work: Callable[[sqlite3.Connection], object]) -> None:
        """Write what only saves time later; where it cannot be written, that is no matter."""
        assert self._db is not None
        with contextlib.suppress(sqlite3.OperationalError):
            _all_or_none(self._db, work)

    def note_now(self, sheets: Iterable[int]) -> None:
        """Note which sheets are the bank's now."""
        assert self._db is not None
        self._db.execute("DELETE FROM temp.now")
        rows = [(number, at) for at, number in enumerate(sheets)]
        self._db.executemany("INSERT INTO temp.now VALUES (?, ?)", rows)

    def discard(self) -> None:
        """Take the index off the disk, since it is damaged."""
        self.close()
        if self.path is not None:
            with contextlib.suppress(OSError):
                _remove(self.path)
            tell(_ANEW)

    def close(self) -> None:
        """Let go of the file."""
        if self._db is not None:
            with contextlib.suppress(sqlite3.Error):
                self._db.close()

    def _without(self, why: str) -> None:
        tell(_WITHOUT.format(why))

    def _opened(self, path: Path) -> sqlite3.Connection | None:
        """Return the index at a path, made if it is not there; None where there is to be none."""
        try:
            make_private_folder(path.parent)
            _make_private(path)
        except OSError:
            if not os.access(path, os.R_OK):
                self._without(f"{path.parent} cannot be written to")
                return None
        try:
            return self._checked(path)
        except DAMAGE as error:
            if isinstance(error, sqlite3.OperationalError) and not _is_damage(error):
                self._without(f"{path}: {_plain(error)}")
                return None
        # A cache that is damaged is worth nothing: it is made anew.
        try:
            _remove(path)
            _make_private(path)
            db = self._checked(path)
        except (OSError, *DAMAGE):
            self._without(f"{path} is damaged and cannot be replaced; remove it")
            return None
        tell(_ANEW)
        return db

    def _checked(self, path: Path) -> sqlite3.Connection | None:
        """Return the index at a path ready for use, or None where it is not ours to use."""
        db = sqlite3.connect(path, timeout=PATIENCE, isolation_level=None)
        try:
            return self._ready(db, path)
        except BaseException:
            db.close()
            raise

    def _ready(self, db: sqlite3.Connection, path: Path) -> sqlite3.Connection | None:
        (owner,), (version,) = (
            db.execute(f"PRAGMA {name}").fetchone() for name in ("application_id", "user_version")
        )
        empty = not db.execute("SELECT 1 FROM sqlite_master LIMIT 1").fetchone()
        if not empty and owner != APPLICATION:
            db.close()
            self._without(f"{path} is some other program's file; remove it to have an index")
            return None
        if version > VERSION:
            db.close()
            self._without(f"{path} was made by a newer version of itembank")
            return None
        if not empty and version < VERSION:
            tell("The index of this bank is an older version's. It is made anew.")
        self.path = path
        if empty or version < VERSION or not _is_current(db):
            _fresh(db)
        return db

    def _go_on_in_memory(self, error: sqlite3.Error) -> None:
        assert self._db is not None
        here = sqlite3.connect(":memory:", isolation_level=None)
        try:
            self._db.backup(here)
            now = self._db.execute("SELECT sheet, at FROM temp.now").fetchall()
        except DAMAGE as damage:
            raise IndexFailed(str(damage)) from None
        self.close()
        tell(f"The index of this bank cannot be written: {_plain(error)}. It is done without.")
        self._db, self.path = here, None
        _settle(here)
        here.executemany("INSERT INTO temp.now VALUES (?, ?)", now)


_PLAIN = (
    ("locked", "another program has been writing to it for a while"),
    ("full", "the disk is full"),
    ("readonly", "it may only be read"),
    ("unable to open", "it cannot be opened"),
    ("I/O", "the disk would not take it"),
)


def _plain(error: sqlite3.Error) -> str:
    """Return an error of SQLite's in plain words."""
    return next((said for word, said in _PLAIN if word in str(error)), str(error))


def _is_damage(error: Exception) -> bool:
    """Whether an error of SQLite's tells of a table that is gone, say, and not of the disk."""
    return any(word in str(error) for word in ("no such", "malformed", "has no column", "syntax"))


def _is_current(db: sqlite3.Connection) -> bool:
    found = db.execute("SELECT value FROM about WHERE name = 'code'").fetchone()
    return found is not None and found[0] == code_mark()


def _settle(db: sqlite3.Connection) -> None:
    db.execute("PRAGMA temp_store = MEMORY")
    # Which sheets are the bank's now: of older ones there may be more.
    db.execute("CREATE TABLE IF NOT EXISTS temp.now (sheet INTEGER PRIMARY KEY, at INTEGER)")
    # Outcomes that hold for this run alone: a proof that took too long may be quicker tomorrow.
    db.execute(
        "CREATE TABLE IF NOT EXISTS temp.passing (fact INTEGER PRIMARY KEY, state TEXT, says TEXT, "
        "first TEXT, second TEXT, modelled INTEGER)"
    )


def _fresh(db: sqlite3.Connection) -> sqlite3.Connection:
    """Make the tables anew; whatever was in them goes."""

    def make(db: sqlite3.Connection) -> None:
        here = "SELECT type, name FROM sqlite_master WHERE type = 'table'"
        for _, name in db.execute(here).fetchall():
            db.execute(f'DROP TABLE "{name}"')
        for statement in TABLES.split(";"):
            db.execute(statement)
        db.execute("INSERT INTO about VALUES ('code', ?)", (code_mark(),))
        db.execute(f"PRAGMA application_id = {APPLICATION}")
        db.execute(f"PRAGMA user_version = {VERSION}")

    _all_or_none(db, make)
    return db


def _all_or_none(db: sqlite3.Connection, work: Callable[[sqlite3.Connection], T]) -> T:
    db.execute("BEGIN IMMEDIATE")
    try:
        found = work(db)
        db.execute("COMMIT")
    except BaseException:
        with contextlib.suppress(sqlite3.Error):
            db.execute("ROLLBACK")
        raise
    return found


def _make_private(path: Path) -> None:
    """Make an empty file that its owner alone may read, or leave the one that is there."""
    handle = os.open(path, os.O_RDWR | os.O_CREAT | getattr(os, "O_NOFOLLOW", 0), 0o600)
    os.close(handle)


def _remove(path: Path) -> None:
    for end in ("", "-journal", "-wal", "-shm"):
        with contextlib.suppress(FileNotFoundError):
            path.with_name(path.name + end).unlink()
