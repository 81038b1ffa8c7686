"""What each of two results files holds: its entries, and the seats in them."""

from __future__ import annotations

import datetime
from collections.abc import Iterable
from dataclasses import dataclass, field

from sqlalchemy import Connection, select

from itembank.records.store.store_tables import (
    entry,
    lesson,
    own_view,
    score,
)
from itembank.records.unite.united import United
from itembank.text.folding import folded

Key = tuple[str, datetime.date, str]
"""A lesson, as two files know it: class, day and period."""


@dataclass(slots=True)
class Entry:
    """An entry of the union, with the entries that replaced it in either file."""

    uid: str
    key: Key
    kind: str
    made_at: datetime.datetime
    undone_at: datetime.datetime | None
    winners: set[str] = field(default_factory=set)

    @property
    def order(self) -> tuple[datetime.datetime, str]:
        """Return what entries are sorted by: the moment, and the name where it is the same."""
        return self.made_at, self.uid


def entries_of_file(connection: Connection) -> tuple[dict[str, Entry], dict[str, int]]:
    """Return all entries by their names, and their numbers in this file."""
    rows = connection.execute(
        select(entry, lesson.c.class_key, lesson.c.date, lesson.c.period)
        .join(lesson)
        .order_by(entry.c.id)
    ).all()
    names = {row.id: row.uid for row in rows}
    found = {
        row.uid: Entry(
            row.uid,
            (row.class_key, row.date, row.period),
            row.kind,
            row.made_at,
            row.undone_at,
            # Numbers are of one file only; across files an entry is known by its name.
            {names[row.replaced_by]} if row.replaced_by in names else set(),
        )
        for row in rows
    }
    return found, {uid: number for number, uid in names.items()}


def compare_seats(
    ours: Connection,
    theirs: Connection,
    shared: Iterable[str],
    here: dict[str, int],
    there: dict[str, int],
    done: United,
) -> None:
    """Find seats that one file forgot: only forgetting takes a seat out of an entry."""
    both = set(shared)
    # Only entries both files have can tell: a seat in one and not the other was taken out.
    mine, yours = (_seats(ours, here, both), _seats(theirs, there, both))
    done.kept_out = {(row[0], row[2]) for row in yours - mine}
    done.forgotten_there = {(row[0], row[2]) for row in mine - yours}


def _seats(
    connection: Connection, numbers: dict[str, int], wanted: set[str]
) -> set[tuple[str, str, str]]:
    found: set[tuple[str, str, str]] = set()
    for table in (score, own_view):
        rows = connection.execute(
            select(lesson.c.class_key, entry.c.uid, table.c.seat)
            .join_from(lesson, entry, entry.c.lesson_id == lesson.c.id)
            .join(table, table.c.entry_id == entry.c.id)
            .where(table.c.seat != "")
        )
        found.update((key, uid, folded(seat)) for key, uid, seat in rows if uid in wanted)
    return found
