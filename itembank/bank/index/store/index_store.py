"""The file of an index: opened where it is ours and sound, and done without where it is not.

Every row is named by what it was made from, so whoever writes it writes the same; rows are added
and never changed, until nobody has needed them for a day. Two programs may so use one index at
the same time, each seeing the bank as it read it itself. Where the file cannot be written, all
goes on in memory.
"""

from __future__ import annotations

import contextlib
import os
import sqlite3
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from typing import Any, TypeVar

from itembank.bank.index.store.code_mark import code_mark
from itembank.bank.index.store.index_place import index_path, make_private_folder
from itembank.bank.index.store.index_remark import tell
from itembank.bank.index.store.index_tables import (
    APPLICATION,
    DAMAGE,
    VERSION,
    IndexFailed,
    all_or_none,
    for_this_run,
    is_current,
    make_anew,
)
from itembank.bank.index.store.old_indexes import clear_old, note_use, remove_index

PATIENCE = 5.0
"""Seconds to wait while another program writes."""

T = TypeVar("T")
_WITHOUT = "The bank is read without its index: {}."
_ANEW = "The index of this bank was damaged. It is made anew."


class Store:
    """The tables of one bank's index, on the disk or in memory."""

    def __init__(self, path: Path | None = None) -> None:
        self.path: Path | None = None
        self._db = self._opened(path) if path is not None else None
        if self._db is None:
            self._db = make_anew(sqlite3.connect(":memory:", isolation_level=None), code_mark())
        for_this_run(self._db)

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
            return all_or_none(self._db, work)
        except DAMAGE as error:
            # A table that is gone would be gone from a copy in memory too.
            disk = isinstance(error, sqlite3.OperationalError) and not _is_damage(error)
            if self.path is None or not disk:
                raise IndexFailed(str(error)) from None
            self._go_on_in_memory(error)
        try:
            return all_or_none(self._db, work)
        except DAMAGE as error:
            raise IndexFailed(str(error)) from None

    def write_if_can(self, work: Callable[[sqlite3.Connection], object]) -> None:
        """Write what only saves time later; where it cannot be written, that is no matter."""
        assert self._db is not None
        # Damage too: what is read next of a damaged index shows it.
        with contextlib.suppress(*DAMAGE):
            all_or_none(self._db, work)

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
                remove_index(self.path)
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
            remove_index(path)
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
        if empty or not is_current(db, code_mark()):
            make_anew(db, code_mark())
            clear_old(path)
        else:
            note_use(path)
        return db

    def _go_on_in_memory(self, error: Exception) -> None:
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
        for_this_run(here)
        here.executemany("INSERT INTO temp.now VALUES (?, ?)", now)


_PLAIN = (
    ("locked", "another program has been writing to it for a while"),
    ("full", "the disk is full"),
    ("readonly", "it may only be read"),
    ("unable to open", "it cannot be opened"),
    ("I/O", "the disk would not take it"),
)


def _plain(error: Exception) -> str:
    """Return an error of SQLite's in plain words."""
    return next((said for word, said in _PLAIN if word in str(error)), str(error))


def _is_damage(error: Exception) -> bool:
    """Whether an error of SQLite's tells of a table that is gone, say, and not of the disk."""
    return any(word in str(error) for word in ("no such", "malformed", "has no column", "syntax"))


def _make_private(path: Path) -> None:
    """Make an empty file that its owner alone may read, or leave the one that is there."""
    handle = os.open(path, os.O_RDWR | os.O_CREAT | getattr(os, "O_NOFOLLOW", 0), 0o600)
    os.close(handle)
