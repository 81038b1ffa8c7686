"""What a report on a class says: lessons, topics over the weeks, own views, clarity."""

from __future__ import annotations

import datetime
from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import field
from typing import TYPE_CHECKING

from sqlalchemy import Connection, func, select

from itembank.data_class import dataclass
from itembank.planning.choosing.class_memory import remember_class
from itembank.planning.choosing.memory import Memory, Seen
from itembank.records.entries.entries import WHOLE
from itembank.records.reports.decision import Decision, decide
from itembank.records.reports.mastery import Mastery, Point, facility_over_time, mastery_of
from itembank.records.reports.own_view_report import ViewsOverTime, views_over_time
from itembank.records.results.happened import Surprises, surprises, took_place
from itembank.records.results.lessons import lessons
from itembank.records.results.rearranged import moved_answers
from itembank.records.results.results import class_results, occasions
from itembank.records.results.scope import Scope
from itembank.records.statistics.interval import Interval, wilson
from itembank.records.store.store_tables import (
    active,
    counted_answers,
    entry,
    lesson,
    question,
    tally,
)

if TYPE_CHECKING:
    from itembank.planning.bands.bands import BandScheme

YEAR_STARTS = 8
"""The month whose first day begins a school year."""
UNCLEAR_FROM = 0.2
"""Share of pupils who asked what to do, from which a lesson is listed (a judgement)."""


@dataclass(frozen=True, slots=True)
class LessonLine:
    """One lesson: the day, its title, and what was recorded."""

    date: datetime.date
    period: str
    title: str
    decision: Decision

    @property
    def unclear(self) -> float | None:
        """Return the share of pupils who asked what to do, or None where it is not known."""
        noted = self.decision.clarity
        if noted is None:
            return None
        there = noted[1] or self.decision.pupils
        return noted[0] / there if there else None

    @property
    def needed_clarifying(self) -> bool:
        """Tell whether the lesson's instructions needed clarifying."""
        return self.unclear is not None and self.unclear >= UNCLEAR_FROM


@dataclass(frozen=True, slots=True)
class TopicLine:
    """One topic: all answers in scope, each occasion, and what is expected now.

    `scored` are the days on which it was only part of a score: it was asked, and nothing is
    known of it alone.
    """

    topic: str
    points: tuple[Point, ...]
    interval: Interval
    out_of: int
    mastery: Mastery
    scored: tuple[datetime.date, ...] = ()


@dataclass(frozen=True, slots=True)
class ClassReport:
    """Everything about one class; topics come weakest first, lessons in order of days."""

    class_name: str
    first: datetime.date
    last: datetime.date
    lessons: tuple[LessonLine, ...]
    topics: tuple[TopicLine, ...]
    views: ViewsOverTime
    surprises: Surprises = field(default_factory=Surprises)

    @property
    def unclear(self) -> tuple[LessonLine, ...]:
        """Return the lessons whose instructions needed clarifying."""
        return tuple(line for line in self.lessons if line.needed_clarifying)

    @property
    def weeks(self) -> tuple[datetime.date, ...]:
        """Return the Monday of each week in which a topic was asked."""
        days = {monday(point.date) for topic in self.topics for point in topic.points}
        scored = {monday(date) for topic in self.topics for date in topic.scored}
        return tuple(sorted(days | scored))


def monday(date: datetime.date) -> datetime.date:
    """Return the Monday of a day's week.

    >>> monday(datetime.date(2026, 11, 29)).isoformat()
    '2026-11-23'
    """
    return date - datetime.timedelta(days=date.weekday())


def by_week(line: TopicLine) -> dict[datetime.date, tuple[float, int]]:
    """Return the right answers and the answers of each week, by its Monday.

    A week in which the topic was only part of a score is not there.
    """
    found: dict[datetime.date, tuple[float, int]] = {}
    for point in line.points:
        right, out_of = found.get(monday(point.date), (0.0, 0))
        good = point.interval.share * point.out_of
        found[monday(point.date)] = (right + good, out_of + point.out_of)
    return found


def class_report(
    connection: Connection,
    class_name: str,
    bands: BandScheme,
    first: datetime.date,
    last: datetime.date,
    taught: Mapping[str, datetime.date] | None = None,
) -> ClassReport:
    """Return the report of a class from one day to another, as of the last.

    `taught` says when topics were taught; where it does not, the first time a topic was asked
    stands for it. Lessons of which nothing counts any more are left out. What is expected of a
    topic rests on all that is known of the school year, so that it does not change with `first`.
    """
    rows = [
        LessonLine(result.date, result.period, result.title, done)
        for result in lessons(connection, class_name, first, last)
        if (done := decide(connection, result, bands)).recorded
    ]
    since = min(first, school_year(last))
    days = {line.date for line in rows}
    # What is known before a day leaves that day out, and the last day counts.
    results = class_results(connection, class_name, last + datetime.timedelta(days=1))
    told = [
        result
        for result in results.topics
        if since <= result.date and (result.out_of or result.scored or result.date in days)
    ]
    known: dict[str, list[Seen]] = defaultdict(list)
    of_class: dict[str, list[Seen]] = defaultdict(list)
    for some, rows_of in ((told, known), (occasions(told), of_class)):
        for result in some:
            rows_of[result.topic].append(
                Seen(result.date, result.right, result.out_of, result.scored)
            )
    starts = {topic: min(occasion.date for occasion in seen) for topic, seen in known.items()}
    for topic in starts.keys() & (taught or {}).keys():
        starts[topic] = min(starts[topic], (taught or {})[topic])
    scored = [result for result in results.scored if since <= result.date]
    memories = remember_class(starts, of_class, scored)
    topics = [
        topic_line(topic, seen, first, last, memories[topic], of_class[topic])
        for topic, seen in known.items()
        if any(occasion.date >= first for occasion in seen)
    ]
    topics.sort(key=lambda line: (line.mastery.now, line.topic))
    views = views_over_time([row.decision for row in rows])
    odd = surprises(connection, class_name, first, last)
    return ClassReport(class_name, first, last, tuple(rows), tuple(topics), views, odd)


def school_year(date: datetime.date) -> datetime.date:
    """Return the day on which the school year of a day began; classes are others before it.

    >>> school_year(datetime.date(2027, 2, 1)).isoformat()
    '2026-08-01'
    """
    return datetime.date(date.year - (date.month < YEAR_STARTS), YEAR_STARTS, 1)


def topic_line(
    topic: str,
    seen: Sequence[Seen],
    first: datetime.date,
    last: datetime.date,
    memory: Memory,
    occasions: Sequence[Seen] | None = None,
) -> TopicLine:
    """Return one topic's line: answers since `first`, what `memory` lets expect on `last`.

    Where some of what was `seen` was of a few pupils only, `occasions` are those of the class.
    """
    whole = seen if occasions is None else occasions
    points = facility_over_time([occasion for occasion in seen if occasion.date >= first])
    out_of = sum(point.out_of for point in points)
    right = sum(point.interval.share * point.out_of for point in points)
    # Shares added up again may come to a hair more than the whole.
    share = wilson(min(right, out_of), out_of, 0.9)
    measured = {point.date for point in points}
    scored = {
        occasion.date for occasion in whole if occasion.scored and occasion.date >= first
    } - measured
    found = mastery_of(memory, whole, last)
    return TopicLine(topic, points, share, out_of, found, tuple(sorted(scored)))


@dataclass(frozen=True, slots=True)
class ClassLine:
    """One class in the report of the whole department.

    Of its lessons, `scored` were recorded by score or band only; `right` of `out_of` answers are
    those of the others.
    """

    class_name: str
    lessons: int
    last: datetime.date
    right: int
    out_of: int
    scored: int = 0


@dataclass(frozen=True, slots=True)
class DepartmentReport:
    """All classes, and each topic's answers over them: right, out of, and by class."""

    classes: tuple[ClassLine, ...]
    topics: Mapping[str, Mapping[str, tuple[int, int]]]


def department_report(connection: Connection, scope: Scope) -> DepartmentReport:
    """Return how classes and topics stand, where answers or counts by question are known."""
    names: dict[str, str] = {}
    for key, name in connection.execute(select(lesson.c.class_key, lesson.c.class_name).distinct()):
        # One class written in two ways is one class; Python chooses, as databases sort unlike.
        names[key] = min(name, names.get(key, name))
    counts = connection.execute(
        scope.limit(
            select(
                lesson.c.class_key,
                question.c.topic,
                func.sum(tally.c.right),
                func.sum(tally.c.out_of),
            )
            .select_from(counted_answers())
            .where(active())
            .group_by(lesson.c.class_key, question.c.topic)
        )
    )
    topics: dict[str, dict[str, tuple[int, int]]] = defaultdict(dict)
    totals: dict[str, list[int]] = defaultdict(lambda: [0, 0])
    added = [(key, topic, int(right), int(out_of)) for key, topic, right, out_of in counts]
    for key, topic, right, out_of in [*added, *moved_answers(connection, scope)]:
        if key not in names:
            continue  # of a pupil who left, or whose new class has recorded nothing
        so_far = topics[topic].get(names[key], (0, 0))
        topics[topic][names[key]] = (so_far[0] + right, so_far[1] + out_of)
        totals[key][0] += right
        totals[key][1] += out_of
    rows = connection.execute(
        scope.limit(
            select(lesson.c.class_key, func.count(), func.max(lesson.c.date))
            .where(lesson.c.id.in_(select(entry.c.lesson_id).where(took_place())))
            .group_by(lesson.c.class_key)
        )
    )
    by_score = connection.execute(
        scope.limit(
            select(lesson.c.class_key, func.count())
            .select_from(lesson)
            .join(entry, entry.c.lesson_id == lesson.c.id)
            .where(active(), entry.c.kind.in_(WHOLE))
            .group_by(lesson.c.class_key)
        )
    )
    scored = {key: int(count) for key, count in by_score}
    classes = [
        ClassLine(names[key], count, last, totals[key][0], totals[key][1], scored.get(key, 0))
        for key, count, last in rows
    ]
    # 9S before 10A, which letters alone would put first.
    classes.sort(key=lambda group: (len(group.class_name), group.class_name))
    return DepartmentReport(tuple(classes), topics)
