"""What the week on one page says, from its plan."""

from __future__ import annotations

import datetime
from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from itembank.files.faults import join_words
from itembank.planning.choosing.reason_words import reason_of_week
from itembank.text.in_words import day_month_year, long_day, plural, weekday

if TYPE_CHECKING:
    from itembank.pages.documents.week_overview import WeekData
    from itembank.pages.parts.teacher.week_table import LessonColumn, TopicRow
    from itembank.planning.week.week_plan import PlannedLesson, WeekPlan
    from itembank.work.week.planner import Planner

LessonKey = tuple[datetime.date, str]
"""The day and the period of a lesson."""


def week_data(
    planner: Planner,
    plan: WeekPlan,
    skipped: Sequence[str],
    kinds: Mapping[LessonKey, str] | None = None,
) -> WeekData:
    """Return what the overview of a plan prints; `kinds` are those of each lesson's questions."""
    from itembank.pages.documents.week_overview import WeekData

    count = len(plan.lessons)
    starters = "the starter" if count == 1 else f"the {count} starters"
    return WeekData(
        title=f"{plan.class_name}: the week of {day_month_year(plan.week)}",
        class_name=plan.class_name,
        intro=f"{planner.folder.department.school}. What {starters} of the week bring back, and "
        "why.",
        titles=_titles(plan.lessons),
        by_title=_by_title(plan.lessons),
        lessons=[_column(plan, lesson) for lesson in plan.lessons],
        topics=_rows(planner, plan.lessons),
        skipped=[f"No lesson on {line}." for line in skipped],
        kinds=_kinds(plan, kinds or {}),
        bands=_bands(planner, sorted({lesson.questions for lesson in plan.lessons})),
    )


def _kinds(plan: WeekPlan, kinds: Mapping[LessonKey, str]) -> str:
    """Return which lessons ask other kinds of question for a change, in one line."""
    told = []
    for lesson in plan.lessons:
        if kinds.get(lesson.key):
            column = _column(plan, lesson)
            told.append(
                f"{' '.join(filter(None, (column.day[0], column.period)))}: {kinds[lesson.key]}"
            )
    return f"Other kinds of question: {'; '.join(told)}." if told else ""


def _bands(planner: Planner, lengths: Sequence[int]) -> list[str]:
    """Return the bands of starters of each length of the week, a line each."""
    found = []
    for number in lengths:
        named = "; ".join(
            f"{band.name} ({band.letter}) {_scores(band.lowest, band.highest)}"
            for band in planner.school_class.bands.bands(number)
        )
        found.append(f"Bands out of {number}: {named}.")
    return found


def _scores(lowest: int, highest: int) -> str:
    return str(lowest) if lowest == highest else f"{lowest} to {highest}"


def _titles(lessons: Sequence[PlannedLesson]) -> list[str]:
    """Return each lesson's day and title, those of one day and one title in one line."""
    found: dict[tuple[str, str], list[str]] = {}
    for lesson in lessons:
        found.setdefault((long_day(lesson.date), lesson.title), []).append(lesson.period)
    return [
        f"{day}, {plural(len(periods), 'period')} {join_words(periods)}: {title}"
        for (day, title), periods in found.items()
    ]


def _by_title(lessons: Sequence[PlannedLesson]) -> list[str]:
    """Return each title with the days and periods of its lessons."""
    found: dict[str, list[str]] = {}
    for lesson in lessons:
        found.setdefault(lesson.title, []).append(f"{weekday(lesson.date)[:3]} {lesson.period}")
    return [f"{title}: {join_words(times)}." for title, times in found.items()]


def _column(plan: WeekPlan, lesson: PlannedLesson) -> LessonColumn:
    from itembank.pages.parts.teacher.week_table import LessonColumn

    several = sum(planned.date == lesson.date for planned in plan.lessons) > 1
    day = weekday(lesson.date)[:3], str(lesson.date.day)
    return LessonColumn(day, f"p{lesson.period}" if several else "", lesson.questions)


def _rows(planner: Planner, lessons: Sequence[PlannedLesson]) -> list[TopicRow]:
    """Return a row for each topic, in the order in which the week comes to it."""
    from itembank.pages.parts.teacher.week_table import TopicRow

    found = []
    for name in dict.fromkeys(topic for lesson in lessons for topic in lesson.counts):
        here = {
            lesson.key: topic
            for lesson in lessons
            for topic in lesson.topics
            if topic.topic == name
        }
        cells = []
        for lesson in lessons:
            topic = here.get(lesson.key)
            star = "*" if topic and topic.reason and topic.reason.needed_for else ""
            cells.append(f"{topic.count}{star}" if topic else "")
        why, short = _whys(lessons, name)
        found.append(TopicRow(planner.title(name), why, tuple(cells), short))
    return found


def _whys(lessons: Sequence[PlannedLesson], name: str) -> tuple[str, str]:
    """Return why a topic comes, as the first lesson with it says, and where the teacher chose it.

    What it is needed for stands in the lessons' titles, and a star says so. The second is the
    same in few words.
    """
    with_it = [
        (lesson, topic) for lesson in lessons for topic in lesson.topics if topic.topic == name
    ]
    reason = with_it[0][1].reason
    pinned = [lesson for lesson, topic in with_it if topic.pinned]
    chosen = list(dict.fromkeys(weekday(lesson.date)[:3] for lesson in pinned))
    return reason_of_week(reason, chosen), reason_of_week(reason, chosen, short=True)
