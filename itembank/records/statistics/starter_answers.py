"""All answers by seat, of many starters at once, as arrays: what item statistics are made from.

The database strings together the answers of all seats of a starter, a character each, so that
two million marks come across as a few thousand texts.
"""

from __future__ import annotations

import datetime
from collections import defaultdict
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray
from sqlalchemy import ColumnElement, Connection, func, or_, select

from itembank.data_class import dataclass
from itembank.records.entries.details import RIGHT, WRONG
from itembank.records.results.rearranged import Rearranged
from itembank.records.results.scope import Scope
from itembank.records.statistics.item_statistics import Answers
from itembank.records.store.store_tables import active, entry, lesson, question, score


@dataclass(frozen=True, slots=True)
class Question:
    """A question of a starter, and the item it was."""

    address: str
    topic: str
    tier: str


@dataclass(frozen=True, slots=True)
class Starter:
    """A starter whose answers are known by seat."""

    lesson_id: int
    entry_id: int
    class_name: str
    date: datetime.date


@dataclass(frozen=True, slots=True)
class StarterAnswers:
    """Answers to many starters: a row for each pupil at each starter.

    `table` holds 1, 0 or NaN for each question, `starter` which starter a row is of; `asked`
    holds for each starter and question which of `items` it was (−1: none, or nobody was asked).
    """

    starters: tuple[Starter, ...]
    items: tuple[Question, ...]
    asked: NDArray[np.intp]
    starter: NDArray[np.intp]
    table: Answers


def starter_answers(connection: Connection, scope: Scope) -> StarterAnswers:
    """Return the answers by seat of all starters in scope, in order of their dates.

    Of one class they are those of the pupils who sit in it by the last day: what one who came
    answered in another class is here, what one who went answered is not.
    """
    moved = Rearranged(connection, scope.class_name, scope.last) if scope.class_name else None
    ids = sorted({row.lesson_id for row in moved.came_within(scope)}) if moved else []
    there = or_(scope.condition(), lesson.c.id.in_(ids)) if ids else scope.condition()
    found = (
        select(lesson.c.id, entry.c.id, lesson.c.class_name, lesson.c.date)
        .join(entry, entry.c.lesson_id == lesson.c.id)
        .where(active(), entry.c.kind == "answers", there)
        .order_by(lesson.c.date, lesson.c.period, lesson.c.id)
    )
    starters = tuple(Starter(*row) for row in connection.execute(found).all())
    items, asked = _asked(connection, there, starters)
    starter, table = _answers(connection, scope, moved, starters, asked.shape[1])
    met = np.zeros(asked.shape, dtype=bool)
    np.logical_or.at(met, starter, ~np.isnan(table))
    asked[~met] = -1
    return StarterAnswers(starters, items, asked, starter, table)


def _asked(
    connection: Connection, there: ColumnElement[bool], starters: Sequence[Starter]
) -> tuple[tuple[Question, ...], NDArray[np.intp]]:
    place = {starter.lesson_id: n for n, starter in enumerate(starters)}
    number = question.c.number
    rows = connection.execute(
        select(question.c.lesson_id, number, question.c.address, question.c.topic, question.c.tier)
        .join(lesson, lesson.c.id == question.c.lesson_id)
        .where(question.c.address != "", there)  # somebody's own question is no item
    ).all()
    known: dict[tuple[str, str, str], int] = {}
    wide = max((row[1] for row in rows), default=1)
    asked = np.full((len(starters), wide), -1, dtype=np.intp)
    for lesson_id, column, address, topic, tier in rows:
        if lesson_id in place:
            item = known.setdefault((address, topic, tier), len(known))
            asked[place[lesson_id], column - 1] = item
    return tuple(Question(*names) for names in known), asked


def _answers(
    connection: Connection,
    scope: Scope,
    moved: Rearranged | None,
    starters: Sequence[Starter],
    wide: int,
) -> tuple[NDArray[np.intp], Answers]:
    """Return for each row the starter it is of, and its answers."""
    packed = (
        select(score.c.entry_id, func.aggregate_strings(score.c.answers, ""), func.count())
        .where(score.c.answers != "")
        .group_by(score.c.entry_id)
    )
    if moved is not None:
        packed = packed.where(moved.seated(score, scope))
    elif scope != Scope():
        packed = packed.where(score.c.entry_id.in_(scope.entries()))
    place = {starter.entry_id: n for n, starter in enumerate(starters)}
    # Every seat of an entry has as many signs; starters of the same length are read together.
    texts: dict[int, list[str]] = defaultdict(list)
    which: dict[int, list[tuple[int, int]]] = defaultdict(list)
    # In the order of entries, as databases give groups in any order.
    for entry_id, text, count in sorted(connection.execute(packed).all()):
        if entry_id in place:
            texts[len(text) // count].append(text)
            which[len(text) // count].append((place[entry_id], count))
    starter = [np.zeros(0, dtype=np.intp)]
    table = [np.zeros((0, wide))]
    for length, parts in texts.items():
        signs = np.frombuffer("".join(parts).encode("ascii"), dtype=np.uint8).reshape(-1, length)
        rows = np.full((len(signs), wide), np.nan)
        rows[:, :length] = _MARKS[signs][:, :wide]
        table.append(rows)
        numbers = np.array(which[length], dtype=np.intp)
        starter.append(np.repeat(numbers[:, 0], numbers[:, 1]))
    return np.concatenate(starter), np.concatenate(table)


_MARKS = np.full(256, np.nan)
_MARKS[[ord(WRONG), ord(RIGHT)]] = 0, 1
