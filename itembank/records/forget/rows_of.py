"""The rows of the store that are about a pupil, a class or a span of days, counted and removed."""

from __future__ import annotations

from typing import Any

from sqlalchemy import Connection, and_, delete, func, insert, select, update

from itembank.records.entries.details import answers_of, tallies_of
from itembank.records.forget.forgotten import Forgotten
from itembank.records.pupils.whom import Whom
from itembank.records.store.store_tables import (
    LONGEST_NOTE,
    LONGEST_TITLE,
    clarity,
    entry,
    lesson,
    misconception,
    of_class,
    own_view,
    remark,
    score,
    tally,
)
from itembank.text.in_words import day_month_year

_BY_SEAT = (score, misconception, own_view)


def lessons_of(whom: Whom) -> Any:
    """Return the condition that a lesson is of the class and within the days."""
    wanted = []
    if whom.class_name:
        wanted.append(of_class(whom.class_name))
    if whom.before is not None:
        wanted.append(lesson.c.date < whom.before)
    if whom.since is not None:
        wanted.append(lesson.c.date >= whom.since)
    return and_(*wanted)


def entries_of(whom: Whom) -> Any:
    """Return the query of the numbers of all entries, also of those that no longer count."""
    return select(entry.c.id).join(lesson).where(lessons_of(whom))


def count_of(connection: Connection, whom: Whom) -> int:
    """Return how many rows are about it: of a seat its results, else whole lessons."""
    if not whom.seat:
        return connection.scalar(select(func.count()).where(lessons_of(whom))) or 0
    return sum(
        connection.scalar(select(func.count()).where(_of_seat(connection, table, whom))) or 0
        for table in _BY_SEAT
    )


def _of_seat(connection: Connection, table: Any, whom: Whom) -> Any:
    """Return the condition that a row is of the seat, however its code is written."""
    mine = table.c.entry_id.in_(entries_of(whom))
    # A code may be written a3 or A3: which is the same seat is decided here, not in SQL.
    codes = connection.scalars(select(table.c.seat).where(mine).distinct())
    return and_(mine, table.c.seat.in_([code for code in codes if code and whom.of_seat(code)]))


def remove_seat(connection: Connection, whom: Whom, done: Forgotten) -> None:
    """Remove a seat's rows, also those replaced and taken back, and count again without them.

    An entry that held nobody else stays, empty: were it removed, one that it had replaced
    would count again.
    """
    # Found before the rows go: afterwards nothing says which lessons had held the seat.
    touched = list(
        connection.scalars(
            select(score.c.entry_id).where(_of_seat(connection, score, whom), score.c.answers != "")
        )
    )
    for table in _BY_SEAT:
        connection.execute(delete(table).where(_of_seat(connection, table, whom)))
    for number in touched:
        connection.execute(delete(tally).where(tally.c.entry_id == number))
        counts = tallies_of(answers_of(connection, number))
        # A lesson whose only answers were this seat's has no counts left, not counts of 0.
        if counts:
            connection.execute(
                insert(tally),
                [
                    {"entry_id": number, "number": place, "right": right, "out_of": out_of}
                    for place, (right, out_of) in counts.items()
                ],
            )
    _cut_from_notes(connection, whom, done)


def _cut_from_notes(connection: Connection, whom: Whom, done: Forgotten) -> None:
    """Take the seat out of notes and titles; of a bare number only say where it stands."""
    notes = connection.execute(
        select(clarity.c.entry_id.label("key"), clarity.c.note.label("text"), lesson.c.date)
        .join(entry, entry.c.id == clarity.c.entry_id)
        .join(lesson, lesson.c.id == entry.c.lesson_id)
        .where(lessons_of(whom), clarity.c.note != "")
    ).all()
    titles = connection.execute(
        select(lesson.c.id.label("key"), lesson.c.title.label("text"), lesson.c.date).where(
            lessons_of(whom)
        )
    ).all()
    remarks = connection.execute(
        select(remark.c.entry_id.label("key"), remark.c.words.label("text"), lesson.c.date)
        .join(entry, entry.c.id == remark.c.entry_id)
        .join(lesson, lesson.c.id == entry.c.lesson_id)
        .where(lessons_of(whom))
    ).all()
    for rows, column, key, longest in (
        (notes, clarity.c.note, clarity.c.entry_id, LONGEST_NOTE),
        (remarks, remark.c.words, remark.c.entry_id, LONGEST_NOTE),
        (titles, lesson.c.title, lesson.c.id, LONGEST_TITLE),
    ):
        for row in rows:
            if not whom.said_in(row.text):
                continue
            # A bare number may as well be a mark or a page: only a person can tell.
            if not whom.is_word:
                done.notes.append(f"{day_month_year(row.date)}: {row.text}")
                continue
            # What stands for the seat may be longer than its code, and the column holds no more.
            text = whom.cut_from(row.text)[:longest]
            connection.execute(
                update(column.table).where(key == row.key).values({column.name: text})
            )
            done.cut += 1
