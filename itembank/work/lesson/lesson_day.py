"""Which day is meant, and which lesson of it; what speaks against a day."""

from __future__ import annotations

import datetime
from collections.abc import Callable
from typing import TYPE_CHECKING

from itembank.errors import ItembankError
from itembank.files.faults import FileFaults, join_words
from itembank.text.in_words import long_date, long_day
from itembank.today import today

if TYPE_CHECKING:
    from itembank.planning.calendar.calendar import Calendar
    from itembank.planning.department.department import Department, SchoolClass
    from itembank.records.entries.entries import LessonFacts
    from itembank.records.store.store import Store


def refuse_to_come(date: datetime.date) -> None:
    """Refuse a day on which nothing can have happened yet.

    Raises:
        ItembankError: it is after today.
    """
    if date > today():
        raise ItembankError(f"{long_date(date)} has not come yet.", matter="day to be checked")


def no_lesson(
    department: Department, group: SchoolClass, date: datetime.date, period: str = ""
) -> str:
    """Return why the class has no lesson on a day, and which of its lessons are nearest.

    Empty where it has one, or where calendar or timetable are not known.
    """
    from itembank.planning.department.class_lessons import class_lessons

    calendar = _calendar(department)
    if calendar is None:
        return ""
    why = calendar.closed_reason(date)
    weekly = group.plan.lessons
    held, skipped = class_lessons(group.plan, calendar, date, date)
    periods = [lesson.period for lesson in held]
    if not why and (not weekly or (periods and (not period or period in periods))):
        return ""
    if why or not periods:
        said = f"{group.name} has no lesson on {long_date(date)}"
        why = why or join_words([gone.why for gone in skipped])
        said += f" ({why})." if why else "."
    else:
        said = f"{group.name} has no lesson in period {period} on {long_date(date)}: "
        said += f"that day it has period {join_words(periods)}."
    near = _nearest(group, calendar, date) if not periods else []
    if near:
        verb = "lessons are" if len(near) > 1 else "lesson is"
        said += f" The nearest {verb} on {join_words([long_day(day) for day in near])}."
    return said


def refuse_day_without_lesson(
    store: Store, department: Department, group: SchoolClass, facts: LessonFacts
) -> None:
    """Refuse a day without a lesson, unless something is noted of that lesson already.

    Whether it took place all the same is a question: a caller who knows leaves this out.

    Raises:
        ItembankError: the class has no lesson then; `why` in what it is about says why not.
    """
    why = no_lesson(department, group, facts.date, facts.period)
    if not why:
        return
    from itembank.records.results.happened import lessons_told_of

    with store.reading() as connection:
        if (facts.date, facts.period) in lessons_told_of(connection, group.name):
            return
    raise ItembankError(f"{why} Nothing was recorded.", matter="no lesson that day", why=why)


def parallel(department: Department, group: SchoolClass, name: str) -> str:
    """Return the name of the class whose starter another class had as well.

    Raises:
        ItembankError: there is no such class, or it is the class itself.
    """
    taught = department.find_class(name)
    if taught.name == group.name:
        raise ItembankError(f"That is {taught.name} itself. Name the other class.", field="same_as")
    return taught.name


def the_period(
    department: Department, group: SchoolClass, date: datetime.date, period: str | None
) -> str:
    """Return which lesson of a day is meant; empty for the only one.

    Raises:
        ItembankError: the class has several lessons that day, and none is named.
    """
    there = periods_of(department, group, date)
    if period is None and len(there) > 1:
        from itembank.records.results.correct import several_lessons

        raise several_lessons(group.name, date, there)
    return period if period is not None and len(there) != 1 else ""


def periods_of(department: Department, group: SchoolClass, date: datetime.date) -> tuple[str, ...]:
    """Return the periods of a class's lessons on a day; none where they are not known."""
    return periods_by_day(department, group)(date)


def periods_by_day(
    department: Department, group: SchoolClass
) -> Callable[[datetime.date], tuple[str, ...]]:
    """Return what tells the periods of a class's lessons on a day; the calendar is read once."""
    from itembank.planning.department.class_lessons import class_lessons

    calendar = _calendar(department)

    def periods(date: datetime.date) -> tuple[str, ...]:
        if calendar is None:
            return ()
        held, _ = class_lessons(group.plan, calendar, date, date)
        return tuple(lesson.period for lesson in held)

    return periods


def _calendar(department: Department) -> Calendar | None:
    """Return the calendar; None where there is none or it has faults, which planning tells."""
    from itembank.planning.calendar.calendar import read_calendar

    try:
        return read_calendar(department.folder)
    except FileFaults:
        return None


def _nearest(group: SchoolClass, calendar: Calendar, date: datetime.date) -> list[datetime.date]:
    """Return the class's last lesson before a day and its first after it, as far as there are."""
    from itembank.planning.department.class_lessons import class_lessons

    first, last = calendar.terms[0].first, calendar.terms[-1].last
    held, _ = class_lessons(group.plan, calendar, first, last)
    before = [lesson.date for lesson in held if lesson.date < date]
    after = [lesson.date for lesson in held if lesson.date > date]
    return [*before[-1:], *after[:1]]
