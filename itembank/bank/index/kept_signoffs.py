"""Who has signed a bank's items, as an index keeps it: what is new in their file is read once."""

from __future__ import annotations

import datetime
import hashlib
import json
import sqlite3
import time
from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.bank.index.rows.refresh import File, look_at
from itembank.bank.index.rows_wanted import in_parts
from itembank.bank.index.store.index_remark import FEW_ITEMS, shown
from itembank.bank.index.store.index_tables import Changed, IndexFailed, seal
from itembank.bank.model.bank import SIGNOFF_FILE
from itembank.bank.model.content import printed_on
from itembank.bank.model.signed import SignOff
from itembank.bank.proof.signoff import SignState, state_by

if TYPE_CHECKING:
    from itembank.bank.index.opened import KeptBank
    from itembank.bank.index.rows.kept_entry import KeptEntry
    from itembank.bank.index.store.index_store import Store

Row = tuple[str, str, str, str, str, bytes]
"""Item, author, day, hash of the content, the content as JSON, and the row's check."""
AT_A_TIME = 5_000
"""About so many sign-offs are written down together."""


def sign_states(bank: KeptBank, entries: Sequence[KeptEntry]) -> list[SignState]:
    """Return who has signed each item, and what has changed since.

    Raises:
        FileFaults: the sign-offs cannot be read.
    """
    own: dict[str, list[SignOff]] = {}
    for signed in signoffs_on(bank, [entry.id for entry in entries]):
        own.setdefault(signed.item, []).append(signed)
    return [
        state_by(entry.kept.content, own.get(entry.id, ()), partial(_says, entry))
        for entry in entries
    ]


def signoffs_on(bank: KeptBank, ids: Sequence[str]) -> list[SignOff]:
    """Return the sign-offs of some items, in the order of their file.

    Raises:
        FileFaults: the sign-offs cannot be read.
    """
    sheet = signoff_sheet(bank)
    found: list[SignOff] = []
    for part in in_parts(ids if sheet is not None else []):
        found += _where(bank, sheet, f"item IN ({', '.join('?' * len(part))})", part)
    return found


def signoffs_like(bank: KeptBank, base: str) -> list[SignOff]:
    """Return the sign-offs of every version of an item, in the order of their file.

    Raises:
        FileFaults: the sign-offs cannot be read.
    """
    condition = "(item = ? OR item GLOB ?)"
    return list(_where(bank, signoff_sheet(bank), condition, [base, f"{base}.*"]))


def all_signoffs(bank: KeptBank) -> list[SignOff]:
    """Return every sign-off of a bank, in the order of their file.

    Raises:
        FileFaults: the sign-offs cannot be read.
    """
    return list(dict.fromkeys(_where(bank, signoff_sheet(bank), "1", [])))


def signed_ids(bank: KeptBank) -> set[str]:
    """Return the id of every item that has a sign-off, whether or not the item is there.

    Raises:
        FileFaults: the sign-offs cannot be read.
    """
    query = "SELECT DISTINCT item FROM holds JOIN signoff USING (piece) WHERE holds.sheet = ?"
    return {id for (id,) in bank.store.rows(query, [signoff_sheet(bank)])}


def signoff_hash(bank: KeptBank) -> bytes | None:
    """Return the hash of what the file of sign-offs held when it was read; None for no file.

    Raises:
        FileFaults: it cannot be read.
    """
    query = "SELECT hash FROM sheet WHERE id = ?"
    return next((bytes(hash) for (hash,) in bank.store.rows(query, [signoff_sheet(bank)])), None)


def _where(
    bank: KeptBank, sheet: int | None, condition: str, values: Sequence[str]
) -> Iterator[SignOff]:
    query = (
        "SELECT item, by, day, content, was, seal FROM signoff CROSS JOIN holds USING (piece) "
        f"WHERE {condition} AND holds.sheet = ? ORDER BY holds.at, signoff.at"
    )
    for *row, sealed in bank.store.each(query, [*values, sheet]):
        if seal(*row) != sealed:
            raise IndexFailed("a row is damaged")
        item, by, day, content, was = row
        on = datetime.date.fromisoformat(day)
        yield SignOff(item, by, on, content, json.loads(was))


def _says(entry: KeptEntry) -> dict[str, object]:
    return printed_on(entry.item, entry.topic)


def signoff_sheet(bank: KeptBank) -> int | None:
    """Return which sheet of the index holds the sign-offs as they are now; None for no file.

    Raises:
        FileFaults: they cannot be read.
    """
    path = bank.folder / SIGNOFF_FILE
    if not path.exists():
        return None
    (file,) = look_at([path], bank.store)
    if file.faults:
        return _read_whole(bank, file)
    sheet = _sheet(bank.store, file)
    if sheet is None:
        sheet = _read_in_pieces(bank.store, file)
    return _read_whole(bank, file) if sheet is None else sheet


def _sheet(store: Store, file: File) -> int | None:
    query = "SELECT id FROM sheet WHERE name = ? AND hash = ?"
    for (number,) in store.rows(query, [file.path.name, file.hash]):
        return int(number)
    return None


def _read_in_pieces(store: Store, file: File) -> int | None:
    """Read those pieces that are new, and return the sheet of all; None where one cannot be."""
    from itembank.bank.proof.signoff_pieces import is_only_notes, pieces

    head, *parts = pieces(file.held().removeprefix(b"\xef\xbb\xbf"))
    if not is_only_notes(head):
        return None
    texts = {_hash(part): part for part in parts}
    known: set[bytes] = set()
    for hashes in in_parts(list(texts)):
        query = f"SELECT hash FROM piece WHERE hash IN ({', '.join('?' * len(hashes))})"
        known.update(hash for (hash,) in store.rows(query, hashes))
    order = list(map(_hash, parts))
    new = {hash: part for hash, part in texts.items() if hash not in known}
    if not _read_new(store, new, file.path):
        return None
    return store.write(lambda db: _keep_file(db, file, order))


def _hash(piece: bytes) -> bytes:
    return hashlib.blake2b(piece, digest_size=16).digest()


def _read_new(store: Store, new: dict[bytes, bytes], path: Path) -> bool:
    """Read pieces and keep them; whether all of them could be read."""
    from itembank.processes.pool import stream

    total = sum(part.count(b"[[signoffs]]") for part in new.values())
    calls = ((part, path) for part in new.values())
    done, some, count = 0, [], 0
    with shown(None, total) as bar:
        read: Callable[..., Iterable[list[Row] | None]] = stream if total > FEW_ITEMS else map
        for hash, rows in zip(new, read(_rows, calls), strict=True):
            if rows is None:
                return False
            some.append((hash, rows))
            count += len(rows)
            if count >= AT_A_TIME:
                store.write(lambda db, x=some: _keep_pieces(db, x))  # type: ignore[misc]
                done, some, count = done + count, [], 0
                if bar:
                    bar(min(done, total), total)
    store.write(lambda db: _keep_pieces(db, some))
    return True


def _rows(call: tuple[bytes, Path]) -> list[Row] | None:
    from itembank.bank.proof.signoff_pieces import read_piece

    found = read_piece(*call)
    return None if found is None else list(map(_row, found))


def _row(signed: SignOff) -> Row:
    was = json.dumps(signed.was, ensure_ascii=False)
    row = (signed.item, signed.by, signed.on.isoformat(), signed.content, was)
    return (*row, seal(*row))


def _read_whole(bank: KeptBank, file: File) -> int:
    """Read the file in one go, which tells all of its faults, and return its sheet."""
    from itembank.bank.proof.signoff import read_signoffs

    found = read_signoffs(bank.folder)
    (again,) = look_at([file.path], bank.store)
    if again.hash != file.hash:
        raise Changed("the sign-offs changed while they were read")
    rows = list(map(_row, found))

    def keep(db: sqlite3.Connection) -> int:
        _keep_pieces(db, [(file.hash, rows)])
        return _keep_file(db, file, [file.hash])

    return bank.store.write(keep)


def _keep_pieces(db: sqlite3.Connection, found: Iterable[tuple[bytes, Sequence[Row]]]) -> None:
    for hash, rows in found:
        added = db.execute("INSERT OR IGNORE INTO piece (hash) VALUES (?)", (hash,))
        if added.rowcount:  # else another program has just read it
            db.executemany(
                "INSERT INTO signoff VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
                [(added.lastrowid, at, *row) for at, row in enumerate(rows)],
            )


def _keep_file(db: sqlite3.Connection, file: File, order: Sequence[bytes]) -> int:
    """Keep which pieces a file has, and return its sheet.

    Raises:
        Changed: one that was there is gone.
    """
    about = (file.path.name, "", "", "", "")
    added = db.execute(
        "INSERT OR IGNORE INTO sheet (name, topic, title, stated, lines, hash, items, last_used, "
        "seal) VALUES (?, ?, ?, ?, ?, ?, 0, ?, ?)",
        (*about, file.hash, time.time(), seal(file.hash, *about)),
    )
    if not added.rowcount:  # another program has just read it
        query = "SELECT id FROM sheet WHERE name = ? AND hash = ?"
        return int(db.execute(query, (file.path.name, file.hash)).fetchone()[0])
    number = int(added.lastrowid or 0)
    db.executemany(
        "INSERT INTO holds SELECT ?, ?, id FROM piece WHERE hash = ?",
        [(number, at, hash) for at, hash in enumerate(order)],
    )
    (count,) = db.execute("SELECT COUNT(*) FROM holds WHERE sheet = ?", (number,)).fetchone()
    if count != len(order):
        raise Changed("what was known of a sign-off is gone")
    return number
