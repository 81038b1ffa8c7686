"""Removes a pupil, a class or old results for good: from the store and from what it exported.

What was counted from a pupil's answers is counted again without them. Hands counted by a
teacher name nobody and stay.
"""

from __future__ import annotations

import datetime
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from sqlalchemy import Connection, and_, delete, func, insert, select

from itembank.errors import ItembankError
from itembank.folding import same_name
from itembank.records.details import answers_of, tallies_of
from itembank.records.export import read_csv, write_csv
from itembank.records.place import meant
from itembank.records.store import Store
from itembank.records.tables import (
    entry,
    exported,
    lesson,
    misconception,
    of_class,
    own_view,
    score,
    tally,
)
from itembank.whole_number import whole_number

REPORT = "report-"
"""How the names of tables begin that sum results up: nothing can be taken out of a sum."""


@dataclass(frozen=True, slots=True)
class Whom:
    """What is to be forgotten; a seat is of a class, and all that is stated must hold.

    Raises:
        ItembankError: nothing is stated, or a seat without its class.
    """

    class_name: str = ""
    seat: str = ""
    before: datetime.date | None = None

    def __post_init__(self) -> None:
        if not self.class_name and self.before is None:
            raise ItembankError(
                "Say what to forget: --seat 8K/A3, --class 8K, or --before 2026-09-01."
            )
        if self.seat and not self.class_name:
            raise ItembankError("A seat is one of a class. Write it as in --seat 8K/A3.")

    def __str__(self) -> str:
        """Return what is forgotten in words."""
        what = f"seat {self.seat} of {self.class_name}" if self.seat else self.class_name
        what = what or "every class"
        return f"{what}, before {self.before}" if self.before else what

    def holds(self, row: dict[str, str]) -> bool:
        """Tell whether a row of an export is to go."""
        if self.class_name and not same_name(row["class"], self.class_name):
            return False
        if self.before and not row["date"] < self.before.isoformat():
            return False
        return not self.seat or same_name(row.get("seat", ""), self.seat)


@dataclass(slots=True)
class Forgotten:
    """How many rows went from the store, and what became of the files it had exported."""

    rows: int = 0
    rewritten: list[Path] = field(default_factory=list)
    gone: list[Path] = field(default_factory=list)
    left: list[tuple[Path, str]] = field(default_factory=list)


def count_rows(store: Store, whom: Whom) -> int:
    """Return how many rows of the store would go."""
    with store.reading() as connection:
        return _count(connection, whom)


def forget(store: Store, whom: Whom) -> Forgotten:
    """Forget, in the store first and then in the files it exported.

    Doing it again is harmless, and finishes what was broken off.

    Raises:
        ItembankError: the store cannot be written; then nothing was forgotten.
    """
    done = Forgotten()
    with store.writing() as connection:
        done.rows = _count(connection, whom)
        if whom.seat:
            _forget_seat(connection, whom)
        else:
            connection.execute(delete(lesson).where(_lessons(whom)))
        files = connection.execute(select(exported.c.path, exported.c.class_name)).all()
    store.sweep()
    paths = [
        meant(one.path, store.folder)
        for one in files
        if not (whom.class_name and one.class_name) or same_name(one.class_name, whom.class_name)
    ]
    with store.reading() as connection:
        for path in filter(_is_table, paths):
            _clean(connection, path, whom, done)
    if done.rows or done.rewritten:
        for path in paths:
            if not _is_table(path) and path.exists():
                done.left.append((path, "it was made when they still counted"))
    return done


def _is_table(path: Path) -> bool:
    """Tell whether a file holds rows that can be taken out of it, and no sums or pages."""
    return path.suffix.casefold() == ".csv" and not path.name.startswith(REPORT)


def _lessons(whom: Whom) -> Any:
    wanted = []
    if whom.class_name:
        wanted.append(of_class(whom.class_name))
    if whom.before is not None:
        wanted.append(lesson.c.date < whom.before)
    return and_(*wanted)


def _entries(whom: Whom) -> Any:
    return select(entry.c.id).join(lesson).where(_lessons(whom))


def _count(connection: Connection, whom: Whom) -> int:
    if not whom.seat:
        return connection.scalar(select(func.count()).where(_lessons(whom))) or 0
    return sum(
        connection.scalar(select(func.count()).where(_of_seat(table, whom))) or 0
        for table in (score, misconception, own_view)
    )


def _of_seat(table: Any, whom: Whom) -> Any:
    return and_(table.c.entry_id.in_(_entries(whom)), func.upper(table.c.seat) == whom.seat.upper())


def _forget_seat(connection: Connection, whom: Whom) -> None:
    """Remove a seat's rows, also those replaced and taken back, and count again without them.

    An entry that held nobody else stays, empty: were it removed, one that it had replaced
    would count again.
    """
    touched = list(
        connection.scalars(
            select(score.c.entry_id).where(_of_seat(score, whom), score.c.answers != "")
        )
    )
    for table in (score, misconception, own_view):
        connection.execute(delete(table).where(_of_seat(table, whom)))
    for number in touched:
        connection.execute(delete(tally).where(tally.c.entry_id == number))
        counts = tallies_of(answers_of(connection, number))
        if counts:
            connection.execute(
                insert(tally),
                [
                    {"entry_id": number, "number": place, "right": right, "out_of": out_of}
                    for place, (right, out_of) in counts.items()
                ],
            )


def _clean(connection: Connection, path: Path, whom: Whom, done: Forgotten) -> None:
    """Take what is forgotten out of one exported file, or note why that is left to a person."""
    if not path.exists():
        done.gone.append(path)
        return
    try:
        heads, rows = read_csv(path)
    except (OSError, ValueError) as error:
        done.left.append((path, f"it cannot be read as it was written ({error})"))
        return
    seats = "seat" in heads
    kept = rows
    if seats or not whom.seat:
        kept = [row for row in rows if not whom.holds(row)]
    changed = len(kept) < len(rows)
    if whom.seat and {"entry", "question", "right"} <= set(heads) and not seats:
        kept, changed = _count_again(connection, kept, whom)
    if not changed:
        return
    try:
        write_csv(path, heads, iter([[row[head] for head in heads] for row in kept]))
    except ItembankError as error:
        done.left.append((path, str(error)))
        return
    done.rewritten.append(path)


def _count_again(
    connection: Connection, rows: list[dict[str, str]], whom: Whom
) -> tuple[list[dict[str, str]], bool]:
    """Return an export's counts per question as the store has them now, and whether any differs."""
    whose = Whom(whom.class_name, before=whom.before)
    there = {row["entry"] for row in rows if whose.holds(row)}
    now = {
        (str(row.entry_id), str(row.number)): row
        for entry in there
        if (number := whole_number(entry)) is not None
        for row in connection.execute(select(tally).where(tally.c.entry_id == number))
    }
    found = []
    for row in rows:
        if row["entry"] in there:
            fresh = now.get((row["entry"], row["question"]))
            if fresh is None:
                continue
            row = {**row, "right": str(fresh.right), "out_of": str(fresh.out_of)}
        found.append(row)
    return found, found != rows
