"""The lessons of a class, each with the entry that tells how its starter went."""

from __future__ import annotations

import datetime

from sqlalchemy import Connection, select

from itembank.data_class import dataclass
from itembank.planning.calendar.days import period_order
from itembank.records.entries.entries import RESULTS
from itembank.records.store.store_tables import active, entry, lesson, of_class


@dataclass(frozen=True, slots=True)
class LessonResult:
    """One lesson with the entry that tells how its starter went; `kind` is empty without one.

    `out_of` are the marks of what was asked, `starter_marks` those of the whole starter, which
    may have stopped early; `asked` says which questions, as
    :mod:`itembank.records.entries.questions_asked` does.
    """

    lesson_id: int
    class_name: str
    date: datetime.date
    period: str
    title: str
    out_of: int
    entry_id: int | None
    kind: str
    starter_marks: int
    asked: str = ""


def lessons(
    connection: Connection,
    class_name: str | None = None,
    first: datetime.date | None = None,
    last: datetime.date | None = None,
) -> list[LessonResult]:
    """Return the lessons of a class (or of all), in order of their dates."""
    results = (
        select(entry.c.id, entry.c.lesson_id, entry.c.kind, entry.c.asked, entry.c.out_of)
        .where(active(), entry.c.kind.in_(RESULTS))
        .subquery()
    )
    query = select(
        lesson,
        results.c.id.label("entry_id"),
        results.c.kind,
        results.c.asked,
        results.c.out_of.label("asked_out_of"),
    ).outerjoin(results, results.c.lesson_id == lesson.c.id)
    if class_name is not None:
        query = query.where(of_class(class_name))
    if first is not None:
        query = query.where(lesson.c.date >= first)
    if last is not None:
        query = query.where(lesson.c.date <= last)
    found = [
        LessonResult(
            row.id,
            row.class_name,
            row.date,
            row.period,
            row.title,
            row.asked_out_of or row.out_of,
            row.entry_id,
            row.kind or "",
            row.out_of,
            row.asked or "",
        )
        for row in connection.execute(query)
    ]
    # A database would put period 10 before period 2.
    return sorted(
        found, key=lambda result: (result.date, period_order(result.period), result.class_name)
    )
