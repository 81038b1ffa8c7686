"""On which day a class is taught each topic of its scheme, so that none is asked before.

A scheme is for a year group; a class is taught a topic in a lesson of its own:

* a topic with a date is taught in the class's first lesson on that day or after it;
* a topic with a week is taught in the class's first lesson of that week; several topics of one
  week share out its lessons, in the order of the scheme;
* a lesson that is cancelled teaches nothing: what it was to teach comes in the next one;
* topics of earlier years are as long ago as their schemes say;
* what the class's ``taught`` says goes before all of this.

A starter opens its lesson, so it asks only what was taught on an earlier day.
"""

from __future__ import annotations

import datetime
from bisect import bisect_left
from collections import defaultdict
from collections.abc import Collection
from dataclasses import replace

from itembank.planning.calendar.calendar import Calendar
from itembank.planning.calendar.scheme import Scheme, Taught
from itembank.planning.department.class_lessons import class_lessons
from itembank.planning.department.class_plan import ClassPlan

LessonKey = tuple[datetime.date, str]
"""The day and period of a lesson; an empty period stands for every lesson of the day."""


def class_scheme(
    scheme: Scheme,
    plan: ClassPlan,
    calendar: Calendar,
    cancelled: Collection[LessonKey] = frozenset(),
) -> Scheme:
    """Return a scheme with the days on which a class is taught its topics, the earliest first.

    What the class has not been taught yet, or finds no lesson for, is left out. A class without
    a timetable keeps the days of its scheme.

    >>> from itembank.planning.calendar.calendar import Term
    >>> from itembank.planning.calendar.timetable import WeeklyLesson
    >>> day = datetime.date
    >>> year = Calendar((Term("Autumn", day(2026, 9, 7), day(2026, 12, 18)),))
    >>> monday = day(2026, 9, 14)
    >>> two = Scheme("year-8", 8, (Taught("a.b", monday, 2), Taught("c.d", monday, 2)))
    >>> plan = ClassPlan(lessons=(WeeklyLesson(2, "1"), WeeklyLesson(3, "1")))
    >>> [f"{taught.topic} {taught.date:%a %d}" for taught in class_scheme(two, plan, year).topics]
    ['a.b Wed 16', 'c.d Thu 17']
    """
    days = _lesson_days(plan, calendar, cancelled)
    by_week: dict[int, list[Taught]] = defaultdict(list)
    for taught in scheme.topics:
        if taught.week is not None:
            by_week[taught.week].append(taught)
    days_of: dict[int | None, list[datetime.date]] = defaultdict(list)
    for day in days:
        days_of[calendar.week_number(day)].append(day)
    found = []
    for taught in scheme.topics:
        if taught.topic in plan.taught:
            date = plan.taught[taught.topic]
        elif not plan.lessons:
            date = taught.date
        else:
            date = _first(days, taught.date)
            if taught.week is not None:
                same = by_week[taught.week]
                # Without a lesson that week it comes in the first one after it.
                if held := days_of.get(taught.week):
                    date = held[same.index(taught) * len(held) // len(same)]
        if date is not None:
            found.append(replace(taught, date=date))
    # What the class itself was taught this year is no topic of an earlier one any more.
    earlier = tuple(taught for taught in scheme.earlier if taught.topic not in plan.taught)
    found += earlier
    there = {taught.topic for taught in scheme.topics}
    found += [
        Taught(name, date)
        for name, date in plan.taught.items()
        if name not in there and date is not None
    ]
    topics = tuple(sorted(found, key=lambda taught: taught.date))
    return replace(scheme, topics=topics, earlier=earlier)


def _lesson_days(
    plan: ClassPlan, calendar: Calendar, cancelled: Collection[LessonKey]
) -> list[datetime.date]:
    """Return the days of the school year on which the class has a lesson, in order."""
    held, _ = class_lessons(plan, calendar, calendar.terms[0].first, calendar.terms[-1].last)
    days = [
        lesson.date
        for lesson in held
        if (lesson.date, lesson.period) not in cancelled and (lesson.date, "") not in cancelled
    ]
    # A double lesson is one day: a topic is taught on a day, and asked from the next one on.
    return list(dict.fromkeys(days))


def _first(days: list[datetime.date], date: datetime.date) -> datetime.date | None:
    """Return the first of the days that is not before a date, or None."""
    place = bisect_left(days, date)
    return days[place] if place < len(days) else None
