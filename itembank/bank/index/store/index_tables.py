"""The tables of an index, and what every use of them holds to: checks, and all or nothing."""

from __future__ import annotations

import contextlib
import hashlib
import sqlite3
from collections.abc import Callable
from typing import TypeVar

from itembank.errors import ItembankError

APPLICATION = 0x17E4BA4C
"""Marks a SQLite file as one of ours (``PRAGMA application_id``)."""
VERSION = 4
"""Of the tables below; it goes up with every change of them."""

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
CREATE TABLE digits (fact INTEGER PRIMARY KEY, numbers TEXT, says INTEGER);
CREATE TABLE question (fact INTEGER PRIMARY KEY, twin BLOB, shown TEXT, year INTEGER, seal BLOB);
CREATE INDEX question_twin ON question (twin);
CREATE TABLE sought (fact INTEGER PRIMARY KEY, whole BLOB, numbers TEXT, seal BLOB);
CREATE TABLE proof (
    fact INTEGER PRIMARY KEY, state TEXT, says TEXT, first TEXT, second TEXT, modelled INTEGER,
    seal BLOB
);
CREATE TABLE made (
    address TEXT PRIMARY KEY, state TEXT, says TEXT, first TEXT, second TEXT, modelled INTEGER,
    seal BLOB
) WITHOUT ROWID;
CREATE TABLE piece (id INTEGER PRIMARY KEY, hash BLOB UNIQUE);
CREATE TABLE holds (
    sheet INTEGER, at INTEGER, piece INTEGER, PRIMARY KEY (sheet, at)
) WITHOUT ROWID;
CREATE INDEX holds_piece ON holds (piece, sheet);
CREATE TABLE signoff (
    piece INTEGER, at INTEGER, item TEXT, by TEXT, day TEXT, content TEXT, was TEXT, seal BLOB,
    PRIMARY KEY (piece, at)
) WITHOUT ROWID;
CREATE INDEX signoff_item ON signoff (item);
CREATE TABLE whole (mark BLOB PRIMARY KEY, stated TEXT, seal BLOB) WITHOUT ROWID;
"""
# sheet: a topic file, or the sign-offs, as it was read; `stated` is what it says beside its
# items, and `lines` where.
# place: its items in order. fact: an item on a topic, by the hash of both. question, proof: what
# its words ask, and what both roads made of it. sought: of an item whose twins were looked for,
# the numbers that its twins have too, and in which files together. made: as proof, of generated
# items.
# holds: the pieces of a file of sign-offs in order; of one that grows, most stay as they are.
# whole: files that were found to have no fault together; and what a bank.toml says.


T = TypeVar("T")

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


def for_this_run(db: sqlite3.Connection) -> None:
    """Make the tables that hold for this run alone."""
    db.execute("PRAGMA temp_store = MEMORY")
    # Which sheets are the bank's now: of older ones there may be more.
    db.execute("CREATE TABLE IF NOT EXISTS temp.now (sheet INTEGER PRIMARY KEY, at INTEGER)")
    # Outcomes that hold for this run alone: a proof that took too long may be quicker tomorrow.
    db.execute(
        "CREATE TABLE IF NOT EXISTS temp.passing (fact INTEGER PRIMARY KEY, state TEXT, says TEXT, "
        "first TEXT, second TEXT, modelled INTEGER)"
    )


def is_current(db: sqlite3.Connection, code: bytes) -> bool:
    """Return whether the tables are there, and were filled by the program with a mark."""
    (version,) = db.execute("PRAGMA user_version").fetchone()
    if version != VERSION:
        return False
    found = db.execute("SELECT value FROM about WHERE name = 'code'").fetchone()
    return found is not None and bool(found[0] == code)


def make_anew(db: sqlite3.Connection, code: bytes) -> sqlite3.Connection:
    """Make the tables anew; whatever was in them goes, unless another program just made them."""

    def make(db: sqlite3.Connection) -> None:
        if is_current(db, code):
            return
        here = "SELECT type, name FROM sqlite_master WHERE type = 'table'"
        for _, name in db.execute(here).fetchall():
            db.execute(f'DROP TABLE "{name}"')
        for statement in TABLES.split(";"):
            db.execute(statement)
        db.execute("INSERT INTO about VALUES ('code', ?)", (code,))
        db.execute(f"PRAGMA application_id = {APPLICATION}")
        db.execute(f"PRAGMA user_version = {VERSION}")

    all_or_none(db, make)
    return db


def all_or_none(db: sqlite3.Connection, work: Callable[[sqlite3.Connection], T]) -> T:
    """Return what `work` returns; all it writes is written, or nothing."""
    db.execute("BEGIN IMMEDIATE")
    try:
        found = work(db)
        db.execute("COMMIT")
    except BaseException:
        with contextlib.suppress(sqlite3.Error):
            db.execute("ROLLBACK")
        raise
    return found
