"""The lessons of a class: those of its timetable, with the ones that were moved where they are now.

In a ``[[classes]]`` table of ``department.toml``::

    [classes.moved]
    "2026-12-03 2" = "2026-12-04 3"        # day and period of a lesson, and where it is now
"""

from __future__ import annotations

import datetime
import re
from collections.abc import Mapping
from typing import TYPE_CHECKING

from itembank.files.toml_table import Table
from itembank.planning.calendar.calendar import Calendar
from itembank.planning.calendar.days import period_order
from itembank.planning.calendar.timetable import PERIOD, Lesson, Skipped, lessons_between
from itembank.text.in_words import long_day

if TYPE_CHECKING:
    from itembank.planning.department.class_plan import ClassPlan

Place = tuple[datetime.date, str]
"""The day and the period of a lesson."""
_PLACE = re.compile(rf"(\d{{4}}-\d{{2}}-\d{{2}})\s+({PERIOD})")


def read_moved(row: Table) -> dict[Place, Place]:
    """Read the lessons that were moved, noting faults."""
    table = row.table("moved")
    found: dict[Place, Place] = {}
    for key, value in (table.data if table is not None else {}).items():
        source, target = _place(key), _place(value)
        if source is None or target is None:
            row.file.fault(
                (*row.path, "moved", key),
                "A lesson that was moved is written as a day and a period, twice: "
                f'"2026-12-03 2" = "2026-12-04 3", not ‘{key} = {value}’.',
            )
        elif target in found.values():
            row.file.fault(
                (*row.path, "moved", key), f"Two lessons are moved to {place_words(target)}."
            )
        else:
            found[source] = target
    return found


def _place(text: object) -> Place | None:
    match = _PLACE.fullmatch(text.strip()) if isinstance(text, str) else None
    try:
        return (datetime.date.fromisoformat(match[1]), match[2]) if match else None
    except ValueError:
        return None


def place_text(place: Place) -> str:
    """Return the place of a lesson as it is written in a file.

    >>> place_text((datetime.date(2026, 12, 4), "3"))
    '2026-12-04 3'
    """
    return f"{place[0]} {place[1]}"


def place_words(place: Place) -> str:
    """Return the place of a lesson in words.

    >>> place_words((datetime.date(2026, 12, 4), "3"))
    'Friday 4 December, period 3'
    """
    return f"{long_day(place[0])}, period {place[1]}"


def class_lessons(
    plan: ClassPlan, calendar: Calendar, first: datetime.date, last: datetime.date
) -> tuple[tuple[Lesson, ...], tuple[Skipped, ...]]:
    """Return a class's lessons from `first` to `last` in order, and those that fall out.

    A lesson that was moved counts where it is now, and falls out where it was.

    >>> from itembank.planning.calendar.calendar import Term
    >>> from itembank.planning.calendar.timetable import WeeklyLesson
    >>> from itembank.planning.department.class_plan import ClassPlan
    >>> day = datetime.date
    >>> year = Calendar((Term("Autumn", day(2026, 9, 3), day(2026, 12, 18)),))
    >>> moved = {(day(2026, 12, 3), "2"): (day(2026, 12, 4), "3")}
    >>> plan = ClassPlan(lessons=(WeeklyLesson(3, "2"),), moved=moved)
    >>> held, skipped = class_lessons(plan, year, day(2026, 11, 30), day(2026, 12, 4))
    >>> [f"{lesson.date:%a} {lesson.period}" for lesson in held], skipped[0].why
    (['Fri 3'], 'moved to Friday 4 December, period 3')
    """
    held, skipped = lessons_between(plan.lessons, calendar, first, last)
    if not plan.moved:
        return held, skipped
    moved: Mapping[Place, Place] = plan.moved
    stay = [lesson for lesson in held if (lesson.date, lesson.period) not in moved]
    gone = [
        Skipped(lesson.date, lesson.period, f"moved to {place_words(target)}")
        for lesson in held
        if (target := moved.get((lesson.date, lesson.period))) is not None
    ]
    for date, period in moved.values():
        if first <= date <= last:
            why = calendar.closed_reason(date)
            if why:
                gone.append(Skipped(date, period, why))
            elif Lesson(date, period) not in stay:
                stay.append(Lesson(date, period))

    def order(lesson: Lesson | Skipped) -> tuple[datetime.date, tuple[int, str]]:
        return lesson.date, period_order(lesson.period)

    return tuple(sorted(stay, key=order)), tuple(sorted([*skipped, *gone], key=order))
