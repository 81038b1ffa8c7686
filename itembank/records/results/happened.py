"""What became of a class's lessons: those that fell out, and what was asked in the others."""

from __future__ import annotations

import datetime
from collections import defaultdict
from typing import Any

from sqlalchemy import Connection, exists, select

from itembank.data_class import dataclass
from itembank.records.store.store_tables import active, entry, lesson, of_class, question, remark
from itembank.text.folding import folded

LessonKey = tuple[datetime.date, str]
"""Day and period; the period is empty for the only lesson of a day."""


def took_place() -> Any:
    """Return the condition that an entry counts and tells of a lesson that took place."""
    return active() & (entry.c.kind != "cancelled")


def cancelled_lessons(connection: Connection, class_name: str) -> dict[LessonKey, str]:
    """Return the lessons of a class that did not take place, or will not, and why."""
    rows = connection.execute(
        select(lesson.c.date, lesson.c.period, remark.c.words)
        .join(entry, entry.c.lesson_id == lesson.c.id)
        .outerjoin(remark, remark.c.entry_id == entry.c.id)
        .where(of_class(class_name), active(), entry.c.kind == "cancelled")
    )
    return {(row.date, row.period): row.words or "cancelled" for row in rows}


def lessons_told_of(connection: Connection, class_name: str) -> frozenset[LessonKey]:
    """Return the lessons of a class that took place and of which anything counts."""
    rows = connection.execute(
        select(lesson.c.date, lesson.c.period).where(
            of_class(class_name), exists().where(entry.c.lesson_id == lesson.c.id, took_place())
        )
    )
    return frozenset((row.date, row.period) for row in rows)


def kinds_told(connection: Connection, class_name: str) -> dict[LessonKey, frozenset[str]]:
    """Return of which kinds the entries that count of each lesson that took place are."""
    rows = connection.execute(
        select(lesson.c.date, lesson.c.period, entry.c.kind)
        .join(entry, entry.c.lesson_id == lesson.c.id)
        .where(of_class(class_name), took_place())
    )
    found: dict[LessonKey, set[str]] = defaultdict(set)
    for row in rows:
        found[row.date, row.period].add(row.kind)
    return {key: frozenset(kinds) for key, kinds in found.items()}


def asked_in_lessons(connection: Connection, class_name: str) -> dict[LessonKey, frozenset[str]]:
    """Return the addresses of what was asked in each lesson of which anything counts.

    An address is empty for a question of somebody's own, of which only the topic is known.
    """
    found: dict[LessonKey, set[str]] = defaultdict(set)
    rows = connection.execute(
        select(lesson.c.date, lesson.c.period, question.c.address)
        .join(question)
        .where(of_class(class_name))
        .where(exists().where(entry.c.lesson_id == lesson.c.id, took_place()))
    )
    for row in rows:
        found[row.date, row.period].add(row.address)
    return {key: frozenset(addresses) for key, addresses in found.items()}


@dataclass(frozen=True, slots=True)
class Surprises:
    """What did not go as planned in a class: day and words of each; pupils who went and came."""

    cancelled: tuple[tuple[datetime.date, str], ...] = ()
    covered: tuple[tuple[datetime.date, str], ...] = ()
    went: int = 0
    came: int = 0


def surprises(
    connection: Connection, class_name: str, first: datetime.date, last: datetime.date
) -> Surprises:
    """Return what did not go as planned in a class from one day to another."""
    from itembank.records.pupils.homes import Homes
    from itembank.records.pupils.moves import moves_there

    rows = connection.execute(
        select(lesson.c.date, entry.c.kind, remark.c.words)
        .select_from(entry)
        .join(lesson, lesson.c.id == entry.c.lesson_id)
        .outerjoin(remark, remark.c.entry_id == entry.c.id)
        .where(of_class(class_name), lesson.c.date >= first, lesson.c.date <= last, active())
        .where(entry.c.kind.in_(("cancelled", "cover")))
        .order_by(lesson.c.date, lesson.c.period)
    ).all()
    moves = moves_there(connection, last)
    # Moves from the beginning, not from `first` on: only a whole path tells where one came from.
    homes, key = Homes(moves), folded(class_name)
    went = sum(
        move.source.class_key == key and move.target.class_key != key
        for move in moves
        if first <= move.date
    )
    return Surprises(
        tuple((row.date, row.words or "") for row in rows if row.kind == "cancelled"),
        tuple((row.date, row.words or "") for row in rows if row.kind == "cover"),
        went,
        sum(first <= day for day in homes.arrivals(key)),
    )


def cover_of(connection: Connection, class_name: str, key: LessonKey) -> str | None:
    """Return what is noted of a lesson whose class was asked something else; None without it."""
    row = connection.execute(
        select(remark.c.words)
        .select_from(entry)
        .join(lesson, lesson.c.id == entry.c.lesson_id)
        .outerjoin(remark, remark.c.entry_id == entry.c.id)
        .where(of_class(class_name), lesson.c.date == key[0], lesson.c.period == key[1])
        .where(active(), entry.c.kind == "cover")
    ).first()
    return None if row is None else row.words or ""
