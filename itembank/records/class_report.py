"""What a report on a class says: lessons, topics over the weeks, own views, clarity."""

from __future__ import annotations

import datetime
from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from sqlalchemy import Connection, func, select

from itembank.planning.memory import Seen
from itembank.records.decision import Decision, decide
from itembank.records.happened import Surprises, surprises, took_place
from itembank.records.interval import Interval, wilson
from itembank.records.mastery import Mastery, Point, facility_over_time, mastery
from itembank.records.own_view_report import ViewsOverTime, views_over_time
from itembank.records.rearranged import moved_answers
from itembank.records.results import lessons, occasions, topic_results
from itembank.records.scope import Scope
from itembank.records.tables import active, entry, lesson, question, tally

if TYPE_CHECKING:
    from itembank.planning.bands import BandScheme

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
    """One topic: all answers in scope, each occasion, and what is expected now."""

    topic: str
    points: tuple[Point, ...]
    interval: Interval
    out_of: int
    mastery: Mastery


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
        return tuple(one for one in self.lessons if one.needed_clarifying)

    @property
    def weeks(self) -> tuple[datetime.date, ...]:
        """Return the Monday of each week in which a topic was asked."""
        days = {monday(point.date) for one in self.topics for point in one.points}
        return tuple(sorted(days))


def monday(date: datetime.date) -> datetime.date:
    """Return the Monday of a day's week.

    >>> monday(datetime.date(2026, 11, 29)).isoformat()
    '2026-11-23'
    """
    return date - datetime.timedelta(days=date.weekday())


def by_week(line: TopicLine) -> dict[datetime.date, tuple[float, int]]:
    """Return the right answers and the answers of each week, by its Monday."""
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
    topic rests on all answers of the school year, so that it does not change with `first`.
    """
    rows = [
        LessonLine(one.date, one.period, one.title, done)
        for one in lessons(connection, class_name, first, last)
        if (done := decide(connection, one, bands)).recorded
    ]
    since = min(first, school_year(last))
    days = {one.date for one in rows}
    results = [
        result
        for result in topic_results(connection, class_name, last + datetime.timedelta(days=1))
        if since <= result.date and (result.out_of or result.date in days)
    ]
    known: dict[str, list[Seen]] = defaultdict(list)
    of_class: dict[str, list[Seen]] = defaultdict(list)
    for some, rows_of in ((results, known), (occasions(results), of_class)):
        for result in some:
            rows_of[result.topic].append(Seen(result.date, result.right, result.out_of))
    topics = [
        topic_line(topic, seen, first, last, (taught or {}).get(topic), of_class[topic])
        for topic, seen in known.items()
        if any(one.date >= first for one in seen)
    ]
    topics.sort(key=lambda one: (one.mastery.now, one.topic))
    views = views_over_time([one.decision for one in rows])
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
    seen: list[Seen],
    first: datetime.date,
    last: datetime.date,
    taught: datetime.date | None = None,
    occasions: Sequence[Seen] | None = None,
) -> TopicLine:
    """Return one topic's line: answers since `first`, what all occasions let expect on `last`.

    Where some of what was `seen` was of a few pupils only, `occasions` are those of the class.
    """
    points = facility_over_time([one for one in seen if one.date >= first])
    out_of = sum(point.out_of for point in points)
    right = sum(point.interval.share * point.out_of for point in points)
    start = min([one.date for one in seen] + ([taught] if taught else []))
    share = wilson(min(right, out_of), out_of, 0.9)
    return TopicLine(
        topic, points, share, out_of, mastery(start, seen if occasions is None else occasions, last)
    )


@dataclass(frozen=True, slots=True)
class ClassLine:
    """One class in the report of the whole department."""

    class_name: str
    lessons: int
    last: datetime.date
    right: int
    out_of: int


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
            .select_from(entry)
            .join(lesson, lesson.c.id == entry.c.lesson_id)
            .join(tally, tally.c.entry_id == entry.c.id)
            .join(
                question,
                (question.c.lesson_id == lesson.c.id) & (question.c.number == tally.c.number),
            )
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
    classes = [ClassLine(names[row[0]], row[1], row[2], *totals[row[0]]) for row in rows]
    classes.sort(key=lambda one: (len(one.class_name), one.class_name))
    return DepartmentReport(tuple(classes), topics)
