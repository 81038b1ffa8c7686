"""How a class's week stands: which lessons there are, what is planned, built and recorded."""

from __future__ import annotations

import datetime
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.data_class import dataclass
from itembank.errors import ItembankError, NotFound
from itembank.planning.calendar.calendar import DAY, monday
from itembank.planning.calendar.days import period_order
from itembank.planning.week.week_plan import FOLDER, WeekPlan
from itembank.text.in_words import long_day
from itembank.work.week.begin import read_plan_of
from itembank.work.week.week_files import Week

if TYPE_CHECKING:
    from itembank.planning.calendar.timetable import Lesson
    from itembank.planning.week.week_plan import PlannedLesson
    from itembank.remark import Remark
    from itembank.work.week.planner import Planner


@dataclass(frozen=True, slots=True)
class LessonStanding:
    """How one lesson stands.

    Parameters
    ----------
    date, period
        When it is.
    planned
        What the plan says of it; None where it is not in a plan.
    folder
        The folder of its pack; None where there is none.
    as_planned
        Whether that pack asks what the plan says.
    told
        Of which kinds the entries are that count of it, as `records.entries.entries` calls them.
    closed
        Why nothing of it may change any more, as in *was recorded already*; else empty.
    gone
        Why it fell out, or will; else empty.
    early
        Whether its week is planned and it has no starter, since nothing was taught before it.
    """

    date: datetime.date
    period: str
    planned: PlannedLesson | None = None
    folder: Path | None = None
    as_planned: bool = True
    told: frozenset[str] = frozenset()
    closed: str = ""
    gone: str = ""
    early: bool = False

    @property
    def recorded(self) -> bool:
        """Tell whether anything is recorded of it."""
        return bool(self.told)

    @property
    def scored(self) -> bool:
        """Tell whether it is recorded how its starter went."""
        from itembank.records.entries.entries import RESULTS

        return not self.told.isdisjoint(RESULTS)

    @property
    def covered(self) -> bool:
        """Tell whether it is noted that the class was asked something else."""
        return "cover" in self.told

    def __str__(self) -> str:
        """Return the day and the period."""
        return f"{long_day(self.date)}, period {self.period}"


@dataclass(frozen=True, slots=True)
class WeekStanding:
    """The lessons of a class in the week that begins on `monday`, in order.

    `plan` is the file of its plan, None where there is none; `skipped` the days without a lesson.
    """

    class_name: str
    monday: datetime.date
    lessons: tuple[LessonStanding, ...]
    plan: Path | None = None
    overview: Path | None = None
    skipped: tuple[str, ...] = ()
    remarks: tuple[Remark, ...] = ()

    def lesson(self, date: datetime.date, period: str) -> LessonStanding:
        """Return the lesson on a day, in a period.

        Raises:
            ItembankError: there is none then.
        """
        for lesson in self.lessons:
            if (lesson.date, lesson.period) == (date, period):
                return lesson
        raise NotFound(f"{self.class_name} has no lesson on {long_day(date)}, period {period}.")


def plan_path(planner: Planner, first: datetime.date) -> Path:
    """Return where the plan of the week that begins on a Monday is, or will be."""
    return planner.home / FOLDER / WeekPlan(planner.school_class.name, first, ()).file_name


def week_standing(planner: Planner, packs: Path, day: datetime.date) -> WeekStanding:
    """Return how the week around a day stands; `packs` is the folder in which packs go.

    Raises:
        ItembankError: the class has no scheme or timetable, or its plan has faults.
    """
    first = monday(day)
    name = planner.school_class.name
    path = plan_path(planner, first)
    plan = WeekPlan(name, first, ())
    remarks: tuple[Remark, ...] = ()
    there = path.is_file()
    if there:
        plan, remarks = read_plan_of(planner, path)
    week = Week(planner, plan, path, packs)
    lessons = sorted(_lessons(planner, week), key=_in_order)
    return WeekStanding(
        name,
        first,
        tuple(lessons),
        path if there else None,
        week.overview if week.overview.is_file() else None,
        tuple(week.skipped),
        remarks,
    )


def _in_order(lesson: LessonStanding) -> tuple[datetime.date, tuple[int, str]]:
    return lesson.date, period_order(lesson.period)


def _lessons(planner: Planner, week: Week) -> Iterator[LessonStanding]:
    """Yield the lessons of the plan, and those of the timetable that are not in it."""
    recorded = planner.recorded
    for lesson in week.plan.lessons:
        built = week.built(lesson)
        yield LessonStanding(
            lesson.date,
            lesson.period,
            lesson,
            None if built is None else week.folder(lesson),
            built in (None, lesson.asked),
            recorded.kinds(lesson.date, lesson.period),
            planner.closed(lesson),
            planner.gone(lesson.date, lesson.period),
        )
    planned = {lesson.key for lesson in week.plan.lessons}
    first = week.plan.week
    left = [
        held
        for held in planner.lessons_between(first, first + 6 * DAY)
        if (held.date, held.period) not in planned
    ]
    taught = _first_taught(planner, first) if planned and left else datetime.date.min
    for held in left:
        told = recorded.kinds(held.date, held.period)
        yield LessonStanding(held.date, held.period, told=told, early=held.date <= taught)


def _first_taught(planner: Planner, first: datetime.date) -> datetime.date:
    """Return the day on which the class was taught the first of all topics it may be asked."""
    known = planner.known(first, 0)
    return min((topic.taught for topic in known.topics), default=datetime.date.max)


def next_lesson(planner: Planner, now: datetime.date) -> Lesson | None:
    """Return the class's next lesson, today's among them; None where the year has none left.

    Raises:
        ItembankError: the class has no scheme or timetable.
    """
    try:
        return planner.lessons_from(now)[0]
    except ItembankError as error:
        if error.matter != "no lessons from then":
            if planner.school_class.plan.lessons:
                return None
            raise
        return planner.lessons_from(error.about["next"])[0]
