"""What the store knows, as planning and reports want it."""

from __future__ import annotations

import datetime
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from sqlalchemy import Connection, exists, func, select

from itembank.planning.class_memory import History, Scored
from itembank.planning.days import period_order
from itembank.planning.memory import Seen
from itembank.records.asked import unpack_asked
from itembank.records.entries import RESULTS
from itembank.records.happened import took_place
from itembank.records.tables import (
    active,
    band_count,
    entry,
    lesson,
    of_class,
    question,
    score,
    tally,
)


@dataclass(frozen=True, slots=True)
class LessonResult:
    """One lesson with the entry that tells how its starter went; `kind` is empty without one.

    `out_of` are the marks of what was asked, `starter_marks` those of the whole starter, which
    may have stopped early; `asked` says which questions, as :mod:`itembank.records.asked` does.
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
    return sorted(found, key=lambda one: (one.date, period_order(one.period), one.class_name))


@dataclass(frozen=True, slots=True)
class TopicResult:
    """Answers of one class to one topic on one day; `out_of` is 0 where none were counted.

    `scored` says that the topic was part of a starter of which only scores or bands are known.
    """

    topic: str
    date: datetime.date
    right: float
    out_of: float
    scored: bool = False


@dataclass(frozen=True, slots=True)
class ClassResults:
    """What a class was asked and how it went: topic by topic, and whole starters by score."""

    topics: tuple[TopicResult, ...]
    scored: tuple[Scored, ...]


def class_results(
    connection: Connection, class_name: str, before: datetime.date | None = None
) -> ClassResults:
    """Return what a class was asked on each topic and how it went, in order of dates.

    Only answers and counts by question tell of a topic. Scores and bands tell how a starter
    went as a whole (a band counts by its middle score). Questions that were not asked count for
    nothing, and a lesson of which everything was taken back was recorded by mistake.
    """
    known = lessons(connection, class_name, last=before and before - datetime.timedelta(days=1))
    counting = exists().where(entry.c.lesson_id == question.c.lesson_id, took_place())
    marks: dict[int, dict[int, tuple[str, int]]] = defaultdict(dict)
    for part in _parts([one.lesson_id for one in known]):
        for row in connection.execute(
            select(
                question.c.lesson_id, question.c.number, question.c.topic, question.c.marks
            ).where(question.c.lesson_id.in_(part), counting)
        ):
            marks[row.lesson_id][row.number] = (row.topic, row.marks)
    by_kind = defaultdict(list)
    for one in known:
        by_kind[one.kind].append(one)
    tallies = _tallies(
        connection, [one.entry_id for kind in ("questions", "answers") for one in by_kind[kind]]
    )
    means = _score_means(connection, by_kind["scores"]) | _band_means(connection, by_kind["bands"])
    found: list[TopicResult] = []
    scored: list[Scored] = []
    for one in known:
        there = marks[one.lesson_id]
        asked = unpack_asked(one.asked, there)
        topics: dict[str, list[int]] = defaultdict(list)
        for number in asked:
            topics[there[number][0]].append(number)
        mean = means.get(one.entry_id)
        counts = tallies.get(one.entry_id, {})
        for topic, numbers in topics.items():
            rows = [counts.get(number, (0, 0)) for number in numbers]
            right, out_of = sum(row[0] for row in rows), sum(row[1] for row in rows)
            found.append(TopicResult(topic, one.date, right, out_of, mean is not None))
        if mean is not None and topics:
            worth = {t: sum(there[n][1] for n in numbers) for t, numbers in topics.items()}
            scored.append(Scored(one.date, *mean, worth))
    return ClassResults(tuple(found), tuple(scored))


def class_history(
    connection: Connection, class_name: str, before: datetime.date | None = None
) -> History:
    """Return the occasions of each topic of a class, and its starters with scores."""
    results = class_results(connection, class_name, before)
    found: dict[str, list[Seen]] = defaultdict(list)
    for one in results.topics:
        found[one.topic].append(Seen(one.date, one.right, one.out_of, one.scored))
    return History({topic: tuple(rows) for topic, rows in found.items()}, results.scored)


def topic_history(
    connection: Connection, class_name: str, before: datetime.date | None = None
) -> Mapping[str, tuple[Seen, ...]]:
    """Return, for each topic, the occasions on which a class was asked it."""
    return class_history(connection, class_name, before).seen


def used_addresses(
    connection: Connection, class_name: str, since: datetime.date
) -> dict[str, datetime.date]:
    """Return the addresses of questions a class was asked since a day, with the last day.

    A lesson that fell out asked nothing.
    """
    fell_out = exists().where(
        entry.c.lesson_id == lesson.c.id, active(), entry.c.kind == "cancelled"
    )
    rows = connection.execute(
        select(question.c.address, func.max(lesson.c.date))
        .join(lesson)
        .where(of_class(class_name), lesson.c.date >= since)
        .where(question.c.address != "", ~fell_out)
        .group_by(question.c.address)
    )
    return {row[0]: row[1] for row in rows}


def _parts(values: list[int], size: int = 500) -> Iterable[list[int]]:
    """Yield the values in parts that fit a statement's limit of parameters."""
    for start in range(0, len(values), size):
        yield values[start : start + size]


def _tallies(
    connection: Connection, entries: list[int | None]
) -> dict[int | None, dict[int, tuple[int, int]]]:
    found: dict[int | None, dict[int, tuple[int, int]]] = defaultdict(dict)
    for part in _parts([one for one in entries if one is not None]):
        for row in connection.execute(select(tally).where(tally.c.entry_id.in_(part))):
            found[row.entry_id][row.number] = (row.right, row.out_of)
    return found


LEAST_VARIANCE = 0.25
"""Variance of scores, in marks², below which so few pupils are not believed to be alike."""


def _score_means(
    connection: Connection, known: Sequence[LessonResult]
) -> dict[int | None, tuple[float, float]]:
    """Return the mean share of marks of each entry with scores, and the variance of that mean."""
    out_of = {one.entry_id: one.out_of for one in known if one.entry_id is not None}
    found: dict[int | None, tuple[float, float]] = {}
    for part in _parts(list(out_of)):
        for row in connection.execute(
            select(
                score.c.entry_id,
                func.sum(score.c.marks),
                func.sum(score.c.marks * score.c.marks),
                func.count(),
            )
            .where(score.c.entry_id.in_(part))
            .group_by(score.c.entry_id)
        ):
            found[row[0]] = mean_of_scores(float(row[1]), float(row[2]), row[3], out_of[row[0]])
    return found


def _band_means(
    connection: Connection, known: Sequence[LessonResult]
) -> dict[int | None, tuple[float, float]]:
    """Return the same of each entry with hands counted by band."""
    out_of = {one.entry_id: one.out_of for one in known if one.entry_id is not None}
    counts: dict[int, list[tuple[int, int, int]]] = defaultdict(list)
    for part in _parts(list(out_of)):
        for row in connection.execute(select(band_count).where(band_count.c.entry_id.in_(part))):
            counts[row.entry_id].append((row.lowest, row.highest, row.pupils))
    return {
        entry_id: mean_of_bands(rows, out_of[entry_id])
        for entry_id, rows in counts.items()
        if any(pupils for *_, pupils in rows)
    }


def mean_of_scores(total: float, squares: float, pupils: int, out_of: int) -> tuple[float, float]:
    """Return a mean share of marks and its variance from sums of scores and of their squares.

    >>> mean_of_scores(12, 80, 2, 8)
    (0.75, 0.0625)
    """
    mean = total / pupils
    # Of one pupil nothing shows how much pupils differ: by a quarter of the marks, say.
    spread = (squares - total * mean) / (pupils - 1) if pupils > 1 else (out_of / 4) ** 2
    return mean / out_of, max(spread, LEAST_VARIANCE) / pupils / out_of**2


def mean_of_bands(counts: Sequence[tuple[int, int, int]], out_of: int) -> tuple[float, float]:
    """Return the same from the lowest and the highest score and the pupils of each band.

    Each pupil counts by the middle of the band. Where in their band the pupils of a class are is
    not known, and may be alike for all of them, so that the variance of scores spread evenly
    over a band does not fall with the number of pupils.

    >>> [round(x, 3) for x in mean_of_bands([(0, 4, 8), (5, 6, 12), (7, 8, 9)], 8)]
    [0.611, 0.014]
    """
    total = squares = inside = 0.0
    pupils = 0
    for lowest, highest, number in counts:
        middle = (lowest + highest) / 2
        pupils += number
        total += number * middle
        squares += number * middle * middle
        inside += number * ((highest - lowest + 1) ** 2 - 1) / 12
    mean, variance = mean_of_scores(total, squares, pupils, out_of)
    return mean, variance + inside / pupils / out_of**2
