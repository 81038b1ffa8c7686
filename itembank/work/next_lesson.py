"""The day of a class's next lesson."""

from __future__ import annotations

import datetime
from typing import TYPE_CHECKING

from itembank.files.faults import FileFaults
from itembank.today import today

if TYPE_CHECKING:
    from itembank.planning.department.department import Department, SchoolClass


def next_lesson_day(department: Department, group: SchoolClass) -> datetime.date:
    """Return the day of a class's next lesson: today where it has one today.

    Today too where its lessons are not known, or none is left in the calendar.
    """
    from itembank.planning.calendar.calendar import read_calendar
    from itembank.planning.department.class_lessons import class_lessons

    now = today()
    try:
        calendar = read_calendar(department.folder)
    except FileFaults:  # planning tells of them
        return now
    if calendar is None or not group.plan.lessons:
        return now
    held, _ = class_lessons(group.plan, calendar, now, calendar.terms[-1].last)
    return min((lesson.date for lesson in held), default=now)
