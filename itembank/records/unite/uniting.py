"""Brings together two results files that went their own ways, with nothing lost or doubled.

Entries are a union, known by their names, which copies of a store share. What was taken back in
either is taken back; what was replaced in either is replaced; what was forgotten in either is
not brought back. Where two people recorded the same lesson differently, both stay: the later
one counts until a person decides, and ‘undo’ brings the other back.
"""

from __future__ import annotations

import shutil
import tempfile
from pathlib import Path

from sqlalchemy import Connection, select

from itembank.errors import ItembankError
from itembank.records.store.store import Store, open_store
from itembank.records.store.store_tables import (
    forgotten,
)
from itembank.records.unite.both_files import Entry, compare_seats, entries_of_file
from itembank.records.unite.bring_in import bring_entry, bring_lessons, bring_rest, drop
from itembank.records.unite.united import United
from itembank.records.unite.which_counts import settle


def unite(store: Store, other: Path) -> United:
    """Bring all that another results file holds into the store; the file stays as it is.

    Doing it again changes nothing.

    Raises:
        ItembankError: the file is no results file, or the store cannot be written; then
            nothing was brought in.
    """
    if not other.is_file():
        raise ItembankError(f"There is no file {other}. Name the other results file.")
    if store.place.is_file and other.resolve() == store.place.path.resolve():
        raise ItembankError(f"{other} is the department's own results file. Name the other one.")
    with tempfile.TemporaryDirectory(prefix="itembank-") as folder:
        # A copy of the copy: it may have to be brought up to date, and its journal played.
        copy = Path(folder) / "results.sqlite3"
        try:
            shutil.copyfile(other, copy)
            journal = other.with_name(f"{other.name}-journal")
            if journal.is_file():
                shutil.copyfile(journal, copy.with_name(f"{copy.name}-journal"))
        except OSError as error:
            raise ItembankError(f"{other} cannot be read: {error.strerror}.") from None
        try:
            theirs_open = open_store(str(copy))
        except ItembankError as error:
            raise ItembankError(str(error).replace(str(copy), str(other))) from None
        with (
            theirs_open as there,
            there.reading() as theirs,
            store.writing(nothing="Nothing was brought in.") as ours,
        ):
            return _unite(ours, theirs)


def _unite(ours: Connection, theirs: Connection) -> United:
    done = United()
    gone = {*ours.scalars(select(forgotten.c.uid)), *theirs.scalars(select(forgotten.c.uid))}
    mine, here = entries_of_file(ours)
    yours, there = entries_of_file(theirs)
    # What was forgotten goes first: what follows may rely on it not being there.
    drop(ours, [here[uid] for uid in here if uid in gone], done)
    shared = [uid for uid in here if uid in there]
    compare_seats(ours, theirs, shared, here, there, done)
    # Entries are brought in the order in which they were made, so that numbers follow it too.
    new = [your for your in yours.values() if your.uid not in mine and your.uid not in gone]
    numbers = bring_lessons(ours, theirs, {coming.key for coming in new}, done)
    for coming in sorted(new, key=lambda entry: entry.order):
        here[coming.uid] = bring_entry(
            ours, theirs, coming, numbers[coming.key], there[coming.uid], done
        )
    union: dict[str, Entry] = {}
    for entries in (mine, yours):
        for uid, copy in entries.items():
            if uid in gone:
                continue
            known = union.setdefault(uid, copy)
            known.winners = {w for w in known.winners | copy.winners if w not in gone}
            moments = [m for m in (known.undone_at, copy.undone_at) if m is not None]
            # Taken back in either file is taken back, and the earlier moment is when it was.
            known.undone_at = min(moments, default=None)
    settle(ours, theirs, union, here, there, mine, numbers, done)
    bring_rest(ours, theirs, gone, done)
    return done
