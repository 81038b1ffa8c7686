"""What was recorded of pupils who sit elsewhere by now."""

from __future__ import annotations

import datetime

from sqlalchemy import Connection, case, select, tuple_

from itembank.data_class import dataclass
from itembank.records.pupils.homes import ClassSeat, Homes
from itembank.records.pupils.moves import moves_there
from itembank.records.store.store_tables import active, entry, lesson, score
from itembank.text.folding import folded


@dataclass(frozen=True, slots=True)
class Moved:
    """What a seat did in one lesson, and where its pupil sits by now (None: left)."""

    lesson_id: int
    entry_id: int
    kind: str
    date: datetime.date
    class_key: str
    class_name: str
    seat: str
    marks: int
    answers: str
    out_of: int
    asked: str
    home: ClassSeat | None


def moved_rows(connection: Connection, last: datetime.date | None = None) -> list[Moved]:
    """Return what was recorded by seat of pupils who sit elsewhere by `last`, a row a lesson.

    Hands that were counted name nobody and cannot move.
    """
    homes = Homes(moves_there(connection, last))
    if not homes:
        return []
    # Only a place that somebody left can hold what has moved. A list of pairs, since a database
    # takes a thousand conditions joined by OR and no more, and a large school has more moves.
    there = tuple_(lesson.c.class_key, score.c.seat).in_(list(homes.out))
    rows = connection.execute(
        select(
            lesson.c.id,
            entry.c.id.label("entry_id"),
            entry.c.kind,
            lesson.c.date,
            lesson.c.class_key,
            lesson.c.class_name,
            score.c.seat,
            score.c.marks,
            score.c.answers,
            case((entry.c.out_of > 0, entry.c.out_of), else_=lesson.c.out_of),
            entry.c.asked,
        )
        .select_from(score)
        .join(entry, entry.c.id == score.c.entry_id)
        .join(lesson, lesson.c.id == entry.c.lesson_id)
        .where(active(), there)
        .order_by(lesson.c.date, lesson.c.id, score.c.seat)
    )
    found = []
    for row in rows:
        where = ClassSeat(row.class_key, row.seat)
        home = homes.of(where, row.date)
        # One who moved away and came back sits where it was recorded.
        if home != where:
            found.append(Moved(*row, home))
    return found


def seats_now(
    connection: Connection, class_name: str, date: datetime.date
) -> dict[str, ClassSeat | None]:
    """Return where the pupils sit now who sat elsewhere in a class on a day; None: left.

    Those who kept their seat are not among them.
    """
    homes = Homes(moves_there(connection))
    key = folded(class_name)
    found = {}
    for where in homes.out:
        if where.class_key == key and (home := homes.of(where, date)) != where:
            found[where.seat] = home
    return found
