"""Asks about a day on which the class has no lesson, before anything is noted of it."""

from __future__ import annotations

import datetime
from typing import TYPE_CHECKING

from itembank.errors import ItembankError
from itembank.text.in_words import long_day

if TYPE_CHECKING:
    from itembank.planning.calendar.calendar import Calendar
    from itembank.planning.department.department import Department, SchoolClass
    from itembank.records.entries.entries import LessonFacts
    from itembank.records.store.store import Store


def no_lesson(
    department: Department, group: SchoolClass, date: datetime.date, period: str = ""
) -> str:
    """Return why the class has no lesson on a day, and which of its lessons are nearest.

    Empty where it has one, or where calendar or timetable are not known.
    """
    from itembank.files.faults import FileFaults, join_words
    from itembank.planning.calendar.calendar import read_calendar
    from itembank.planning.calendar.timetable import lessons_between

    try:
        calendar = read_calendar(department.folder)
    except FileFaults:  # planning a week tells them
        return ""
    why = calendar.closed_reason(date)
    weekly = group.plan.lessons
    held, _ = lessons_between(weekly, calendar, date, date)
    periods = [one.period for one in held]
    if not why and (not weekly or (periods and (not period or period in periods))):
        return ""
    if why or not periods:
        said = f"{group.name} has no lesson on {long_day(date)} {date.year}"
        said += f" ({why})." if why else "."
    else:
        said = f"{group.name} has no lesson in period {period} on {long_day(date)} {date.year}: "
        said += f"that day it has period {join_words(periods)}."
    near = _nearest(group, calendar, date) if not periods else []
    if near:
        verb = "lessons are" if len(near) > 1 else "lesson is"
        said += f" The nearest {verb} on {join_words([long_day(one) for one in near])}."
    return said


def parallel(department: Department, group: SchoolClass, name: str) -> str:
    """Return the name of the class whose starter another class had as well.

    Raises:
        ItembankError: there is no such class, or it is the class itself.
    """
    other = department.find_class(name)
    if other.name == group.name:
        raise ItembankError(f"--same-as names {other.name} itself. Name the other class.")
    return other.name


def the_period(
    department: Department, group: SchoolClass, date: datetime.date, period: str | None
) -> str:
    """Return which lesson of a day is meant; empty for the only one.

    Raises:
        ItembankError: the class has several lessons that day, and none is named.
    """
    there = periods_of(department, group, date)
    if period is None and len(there) > 1:
        from itembank.files.faults import join_words

        raise ItembankError(
            f"{group.name} has {len(there)} lessons on {date}. Add "
            f"{join_words([f'--period {one}' for one in there], 'or')}."
        )
    return period if period is not None and len(there) != 1 else ""


def periods_of(department: Department, group: SchoolClass, date: datetime.date) -> tuple[str, ...]:
    """Return the periods of a class's lessons on a day; none where they are not known."""
    from itembank.files.faults import FileFaults
    from itembank.planning.calendar.calendar import read_calendar
    from itembank.planning.calendar.timetable import lessons_between

    try:
        calendar = read_calendar(department.folder)
    except FileFaults:
        return ()
    held, _ = lessons_between(group.plan.lessons, calendar, date, date)
    return tuple(one.period for one in held)


def _nearest(group: SchoolClass, calendar: Calendar, date: datetime.date) -> list[datetime.date]:
    """Return the class's last lesson before a day and its first after it, as far as there are."""
    from itembank.planning.calendar.timetable import lessons_between

    first, last = calendar.terms[0].first, calendar.terms[-1].last
    held, _ = lessons_between(group.plan.lessons, calendar, first, last)
    before = [one.date for one in held if one.date < date]
    after = [one.date for one in held if one.date > date]
    return [*before[-1:], *after[:1]]


def ask_about_day(
    store: Store, department: Department, group: SchoolClass, facts: LessonFacts
) -> None:
    """Ask whether a lesson took place on a day without one; once, for each lesson.

    Raises:
        ItembankError: nobody can be asked, or the answer is no.
    """
    said = no_lesson(department, group, facts.date, facts.period)
    if not said:
        return
    from itembank.records.results.happened import lessons_told_of

    with store.reading() as connection:
        if (facts.date, facts.period) in lessons_told_of(connection, group.name):
            return
    from itembank.cli.words.ask import can_ask, yes

    if not can_ask():
        raise ItembankError(
            f"{said} Nothing was recorded. Name the day of the lesson with --date, or add --yes if "
            "it took place then."
        )
    if not yes(f"{said} Record it all the same?", default=False):
        raise ItembankError("Nothing was recorded. Name the day of the lesson with --date.")
