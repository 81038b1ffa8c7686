"""The plan of a week, made or changed: what is past or pinned stays, the rest is chosen."""

from __future__ import annotations

import datetime
from dataclasses import replace
from typing import TYPE_CHECKING

from itembank.data_class import dataclass
from itembank.planning.calendar.calendar import monday
from itembank.planning.calendar.days import period_order, usual_seed
from itembank.planning.week.week_choice import Hold, Known, choose_week
from itembank.planning.week.week_plan import MOST_TITLE, PlannedLesson, WeekPlan
from itembank.text.cut_short import cut_short

if TYPE_CHECKING:
    from collections.abc import Mapping

    from itembank.planning.calendar.timetable import Lesson
    from itembank.planning.week.week_changes import LessonName
    from itembank.work.week.planner import Planner


@dataclass(frozen=True, slots=True)
class NewPlan:
    """A plan, and which lessons of an older one it keeps.

    `past` lie before the day it begins on, `closed` are past or recorded all the same. `early`
    are lessons without a starter, since nothing was taught before them.
    """

    plan: WeekPlan
    early: tuple[Lesson, ...]
    past: tuple[PlannedLesson, ...] = ()
    closed: tuple[PlannedLesson, ...] = ()


def new_plan(
    planner: Planner,
    first: datetime.date,
    old: WeekPlan | None,
    only: LessonName | None = None,
) -> NewPlan:
    """Return a plan of the week that holds `first`, from that day on.

    Lessons of an `old` plan that lie before that day, are past or were recorded stay as they
    are, and so do all but the `only` one that is wanted; of the others stays what the teacher
    pinned, wanted or barred.

    Raises:
        ItembankError: the class has no lessons that week, or nothing can be chosen.
    """
    week, name = monday(first), planner.school_class.name
    held = planner.lessons_from(first)
    known = planner.known(first, usual_seed(name, week, "week"))
    there = old.lessons if old else ()
    before = {
        lesson.key: lesson
        for lesson in there
        if not planner.recorded.fell_out(lesson.date, lesson.period)
    }
    away = planner.school_class.plan.moved
    past = [lesson for lesson in before.values() if lesson.date < first and lesson.key not in away]
    done = [
        lesson
        for lesson in before.values()
        if lesson.date >= first and planner.closed(lesson) and lesson.key not in away
    ]
    first_taught = min((topic.taught for topic in known.topics), default=datetime.date.max)
    early = [
        held_lesson
        for held_lesson in held
        if held_lesson.date <= first_taught and (held_lesson.date, held_lesson.period) not in before
    ]
    if len(early) == len(held):
        early = []  # there is no week to plan, which choosing says
    lessons, holds, carried = [], [], []
    for held_lesson in held:
        if held_lesson in early:
            continue
        kept = before.get((held_lesson.date, held_lesson.period))
        stays = None if kept else _moved_here(planner, held_lesson, known, before)
        if only is not None and kept is not None and kept not in done:
            wanted = only.day(week) == kept.date and only.period in ("", kept.period)
            stays = None if wanted else kept
        if stays is not None:
            carried.append(stays)
        lesson = kept if kept in done else stays or _open_lesson(planner, held_lesson, known, kept)
        lessons.append(lesson)
        holds.append(Hold(lesson.counts))
    chosen = choose_week(lessons, holds, known)
    stay = [*done, *carried]
    # They took part in the choice, since the others go by their topics; it changes none of them.
    made = [was if was in stay else new for was, new in zip(lessons, chosen, strict=True)]
    whole = sorted([*past, *made], key=lambda lesson: (lesson.date, period_order(lesson.period)))
    return NewPlan(WeekPlan(name, week, tuple(whole)), tuple(early), tuple(past), tuple(done))


def _open_lesson(
    planner: Planner, held: Lesson, known: Known, kept: PlannedLesson | None
) -> PlannedLesson:
    """Return a lesson with only what the teacher wanted in it."""
    current = known.scheme.current(held.date)
    title = planner.title(current) if current else "Starter"
    lesson = PlannedLesson(
        held.date,
        held.period,
        cut_short(title, MOST_TITLE),
        planner.school_class.questions,
        usual_seed(planner.school_class.name, held.date, f"{title} {held.period}"),
    )
    if kept is None:
        return lesson
    return replace(
        lesson,
        questions=kept.questions,
        topics=tuple(topic for topic in kept.topics if topic.pinned),
        items=kept.items,
        never=kept.never,
    )


def _moved_here(
    planner: Planner,
    held: Lesson,
    known: Known,
    before: Mapping[tuple[datetime.date, str], PlannedLesson],
) -> PlannedLesson | None:
    """Return the lesson that was planned elsewhere in the week and is now held here.

    It keeps its starter, unless a topic of it would come before it is taught.
    """
    place = (held.date, held.period)
    moves = planner.school_class.plan.moved.items()
    source = next((old for old, new in moves if new == place), None)
    kept = before.get(source) if source is not None else None
    if kept is None:
        return None
    taught = {topic.topic: topic.taught for topic in known.topics}
    if any(taught.get(name, held.date) >= held.date for name in kept.counts):
        return None
    topics = tuple(
        replace(topic, reason=topic.reason and replace(topic.reason, lesson=held.date))
        for topic in kept.topics
    )
    return replace(kept, date=held.date, period=held.period, topics=topics)
