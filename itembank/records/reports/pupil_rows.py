"""The rows of the store that reports on pupils are made of: scores, questions, mistakes, views."""

from __future__ import annotations

import datetime
from collections import defaultdict
from typing import Any

from sqlalchemy import Connection, select, tuple_

from itembank.planning.calendar.days import period_order
from itembank.records.entries.entries import RESULTS
from itembank.records.pupils.homes import ClassSeat
from itembank.records.store.store_tables import (
    active,
    entry,
    lesson,
    misconception,
    of_class,
    own_view,
    question,
    score,
)


def scores_in(
    connection: Connection, places: set[ClassSeat], first: datetime.date, last: datetime.date
) -> list[Any]:
    """Return the scores of some seats, in order of days."""
    wanted = tuple_(lesson.c.class_key, score.c.seat).in_(sorted(places))
    return score_rows(connection, wanted, first, last)


def score_rows(
    connection: Connection, wanted: Any, first: datetime.date, last: datetime.date
) -> list[Any]:
    """Return scores by seat with their lessons, in order of days."""
    rows = connection.execute(
        select(
            lesson.c.class_name,
            lesson.c.date,
            lesson.c.period,
            lesson.c.title,
            lesson.c.out_of.label("starter_marks"),
            entry.c.lesson_id,
            entry.c.out_of,
            score.c.entry_id,
            score.c.seat,
            score.c.marks,
            score.c.answers,
        )
        .select_from(score)
        .join(entry, entry.c.id == score.c.entry_id)
        .join(lesson, lesson.c.id == entry.c.lesson_id)
        .where(active(), wanted, lesson.c.date >= first, lesson.c.date <= last)
    )
    return sorted(rows, key=lambda row: (row.date, period_order(row.period)))


def questions_asked(connection: Connection, lesson_ids: list[int]) -> dict[int, list[Any]]:
    """Return the questions of lessons in their order, by lesson."""
    found: dict[int, list[Any]] = defaultdict(list)
    ids = sorted(set(lesson_ids))
    for start in range(0, len(ids), 500):  # SQLite takes so many values and not many more
        for row in connection.execute(
            select(question)
            .where(question.c.lesson_id.in_(ids[start : start + 500]))
            .order_by(question.c.lesson_id, question.c.number)
        ):
            found[row.lesson_id].append(row)
    return found


def mistakes_shown(connection: Connection, rows: list[Any]) -> dict[tuple[int, int], str]:
    """Return the mistakes that these answers showed, by entry and question."""
    seats = {row.entry_id: row.seat for row in rows}
    return {
        (row.entry_id, row.number): row.name
        for row in connection.execute(
            select(misconception).where(misconception.c.seat.in_(set(seats.values())))
        )
        # The query takes any of the seats in any of the entries: a pupil had one seat in each.
        if seats.get(row.entry_id) == row.seat
    }


def own_views(connection: Connection, rows: list[Any]) -> dict[int, str]:
    """Return what the pupil said before marking, by lesson."""
    seats = {row.lesson_id: row.seat for row in rows}
    return {
        row.lesson_id: row.level
        for row in connection.execute(
            select(entry.c.lesson_id, own_view.c.seat, own_view.c.level)
            .select_from(own_view)
            .join(entry, entry.c.id == own_view.c.entry_id)
            .where(active(), own_view.c.seat.in_(set(seats.values())))
        )
        if seats.get(row.lesson_id) == row.seat
    }


def other_starters(
    connection: Connection,
    class_name: str,
    first: datetime.date,
    last: datetime.date,
    rows: list[Any],
) -> tuple[int, int]:
    """Return how many starters have results by seat but none of these, and how many by hand."""
    had = {row.lesson_id for row in rows}
    days = {(row.date, row.period) for row in rows}
    found = connection.execute(
        select(lesson.c.id, lesson.c.date, lesson.c.period, entry.c.kind)
        .join(entry, entry.c.lesson_id == lesson.c.id)
        .where(of_class(class_name), active(), entry.c.kind.in_(RESULTS))
        .where(lesson.c.date >= first, lesson.c.date <= last)
    ).all()
    away = [row for row in found if row.id not in had and (row.date, row.period) not in days]
    # Where hands were counted nobody's results are known, so that this pupil was not away for it.
    by_hand = sum(row.kind not in ("scores", "answers") for row in away)
    return len(away) - by_hand, by_hand
