"""Who has signed a bank's items, as an index keeps it: the file of sign-offs is read once."""

from __future__ import annotations

import datetime
import json
import sqlite3
import time
from collections.abc import Iterable, Sequence
from functools import partial
from typing import TYPE_CHECKING

from itembank.bank.index.index_tables import Changed, IndexFailed, seal
from itembank.bank.index.refresh import File, look_at
from itembank.bank.index.rows_wanted import in_parts
from itembank.bank.model.bank import SIGNOFF_FILE
from itembank.bank.model.content import printed_on
from itembank.bank.model.signed import SignOff
from itembank.bank.proof.signoff import SignState, state_by

if TYPE_CHECKING:
    from itembank.bank.index.opened import KeptBank, KeptEntry


def sign_states(bank: KeptBank, entries: Sequence[KeptEntry]) -> list[SignState]:
    """Return who has signed each item, and what has changed since.

    Raises:
        FileFaults: the sign-offs cannot be read.
    """
    sheet = signoff_sheet(bank)
    own: dict[str, list[SignOff]] = {}
    for part in in_parts([entry.id for entry in entries] if sheet is not None else []):
        marks = ", ".join("?" * len(part))
        query = f"SELECT * FROM signoff WHERE sheet = ? AND item IN ({marks}) ORDER BY at"
        for _, _, *row, sealed in bank.store.rows(query, [sheet, *part]):
            if seal(*row) != sealed:
                raise IndexFailed("a row is damaged")
            item, by, day, content, was = row
            signed = SignOff(item, by, datetime.date.fromisoformat(day), content, json.loads(was))
            own.setdefault(item, []).append(signed)
    return [
        state_by(entry.kept.content, own.get(entry.id, ()), partial(_says, entry))
        for entry in entries
    ]


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
    if not file.faults:
        query = "SELECT id FROM sheet WHERE name = ? AND hash = ?"
        for (number,) in bank.store.rows(query, [path.name, file.hash]):
            return int(number)
    from itembank.bank.proof.signoff import read_signoffs

    found = read_signoffs(bank.folder)
    (again,) = look_at([path], bank.store)
    if again.hash != file.hash:
        raise Changed("the sign-offs changed while they were read")
    return bank.store.write(lambda db: _keep_signoffs(db, file, found))


def _keep_signoffs(db: sqlite3.Connection, file: File, found: Iterable[SignOff]) -> int:
    about = (file.path.name, "", "", "", "")
    added = db.execute(
        "INSERT OR REPLACE INTO sheet (name, topic, title, stated, lines, hash, items, last_used, "
        "seal) VALUES (?, ?, ?, ?, ?, ?, 0, ?, ?)",
        (*about, file.hash, time.time(), seal(file.hash, *about)),
    )
    rows = []
    for at, signed in enumerate(found):
        was = json.dumps(signed.was, ensure_ascii=False)
        row = (signed.item, signed.by, signed.on.isoformat(), signed.content, was)
        rows.append((added.lastrowid, at, *row, seal(*row)))
    db.executemany("INSERT INTO signoff VALUES (?, ?, ?, ?, ?, ?, ?, ?)", rows)
    return int(added.lastrowid or 0)
