"""The list of what a forgetting has left to do, kept in the store until nothing is.

It is written in the same transaction in which the rows go. A forgetting that is broken off is
taken up again from it.
"""

from __future__ import annotations

import datetime
from pathlib import Path

from sqlalchemy import Connection, insert, select

from itembank.data_class import dataclass
from itembank.records.pupils.homes import place
from itembank.records.pupils.whom import Whom
from itembank.records.store.store import Store
from itembank.records.store.store_tables import (
    exported,
    forgetting,
    forgetting_file,
)
from itembank.text.folding import same_name

REPORT = "report-"
"""How the names of tables begin that sum results up: nothing can be taken out of a sum."""


@dataclass(frozen=True, slots=True)
class Unfinished:
    """A forgetting that was broken off, or whose files are left to a person.

    `whom` is None where only unused room of the store is left to be overwritten.
    """

    number: int
    whom: Whom | None
    begun_at: datetime.datetime
    files: tuple[str, ...]


def begun(store: Store, whom: Whom) -> bool:
    """Tell whether forgetting it was begun, and is not done yet."""
    here = place(whom.class_name, whom.seat)
    there = [task.whom for task in unfinished(store) if task.whom is not None]
    # A pupil who moved is listed once for each seat they had, with the days of each.
    return any(
        listed == whom or (whom.seat and place(listed.class_name, listed.seat) == here)
        for listed in there
    )


def unfinished(store: Store) -> list[Unfinished]:
    """Return what was begun to be forgotten and is not done yet, the oldest first."""
    with store.reading() as connection:
        return unfinished_in(connection)


def unfinished_in(connection: Connection) -> list[Unfinished]:
    """Return the list as :func:`unfinished` does, within a transaction."""
    found = []
    for row in connection.execute(select(forgetting).order_by(forgetting.c.id)).all():
        files = connection.scalars(
            select(forgetting_file.c.path)
            .where(forgetting_file.c.forgetting_id == row.id)
            .order_by(forgetting_file.c.path)
        )
        # Whom it was about is gone from the list already; only the store's file waits to be swept.
        blank = not row.class_name and row.before is None
        whom = None if blank else Whom(row.class_name, row.seat, row.before, row.since)
        found.append(Unfinished(row.id, whom, row.begun_at, tuple(files)))
    return found


def list_left(connection: Connection, whom: Whom, has_rows: bool) -> int:
    """Put whom, and the files that may hold it, on the list of what is to be done.

    What sums results up is listed only where it was made of rows that are there.
    """
    # Begun twice, the same list goes on: a second would clean every file twice.
    again = [task for task in unfinished_in(connection) if task.whom == whom]
    if again:
        number = again[0].number
    else:
        made = connection.execute(
            insert(forgetting).values(
                class_name=whom.class_name,
                seat=whom.seat,
                before=whom.before,
                since=whom.since,
                begun_at=datetime.datetime.now(),
            )
        )
        assert made.inserted_primary_key is not None
        number = int(made.inserted_primary_key[0])
    known = set(again[0].files) if again else set()
    files = {
        export.path
        for export in connection.execute(select(exported.c.path, exported.c.class_name))
        # An export of no class holds all of them; and one class's table may hold any seat of it.
        if not (whom.class_name and export.class_name)
        or same_name(export.class_name, whom.class_name)
        # A sum made of no rows of theirs cannot tell anything of them.
        if has_rows or is_table(Path(export.path))
    }
    if files - known:
        connection.execute(
            insert(forgetting_file),
            [{"forgetting_id": number, "path": path} for path in sorted(files - known)],
        )
    return number


def is_table(path: Path) -> bool:
    """Tell whether a file holds rows that can be taken out of it, and no sums or pages."""
    return path.suffix.casefold() == ".csv" and not path.name.startswith(REPORT)
