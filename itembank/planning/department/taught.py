"""When a class is taught its topics, for commands that can do without a calendar or a scheme."""

from __future__ import annotations

import datetime
from collections.abc import Collection, Mapping
from typing import TYPE_CHECKING

from itembank.text.in_words import day_month

if TYPE_CHECKING:
    from pathlib import Path

    from itembank.planning.calendar.calendar import Calendar
    from itembank.planning.calendar.scheme import Scheme
    from itembank.planning.department.class_scheme import LessonKey
    from itembank.planning.department.department import Department, SchoolClass


def taught_dates(
    department: Department, group: SchoolClass, cancelled: Collection[LessonKey] = ()
) -> dict[str, datetime.date | None]:
    """Return the day on which the class is taught each topic that its scheme or it states.

    None stands for a topic that it has not been taught yet. Without a scheme or a calendar, or
    where one of them has faults (which planning a week tells), only what the class itself
    states is known.
    """
    from itembank.files.faults import FileFaults
    from itembank.planning.calendar.calendar import read_calendar
    from itembank.planning.calendar.scheme import FOLDER
    from itembank.planning.department.class_scheme import class_scheme

    found: dict[str, datetime.date | None] = dict(group.plan.taught)
    if not group.plan.scheme:
        return found
    try:
        calendar = read_calendar(department.folder)
        scheme = _read_with_earlier(department.folder / FOLDER, group.plan.scheme, calendar)
    except FileFaults:
        return found
    taught = class_scheme(scheme, group.plan, calendar, frozenset(cancelled))
    # What is not taught yet is left out of a class's scheme, so its None stays.
    return found | {topic.topic: topic.date for topic in taught.topics}


def _read_with_earlier(folder: Path, name: str, calendar: Calendar, below: int = 99) -> Scheme:
    """Return a scheme with the topics of the years before it, each from its own file.

    What does not follow a scheme of an earlier year is left: planning a week tells of it.
    """
    from itembank.planning.calendar.scheme import read_scheme, with_earlier
    from itembank.planning.department.known_topics import AnyTopic

    # It is not for these commands to check a scheme's spelling.
    scheme = read_scheme(folder / f"{name}.toml", calendar, AnyTopic())
    there = (folder / f"{scheme.after}.toml").is_file()
    if not scheme.after or not there or scheme.year >= below:
        return scheme
    before = _read_with_earlier(folder, scheme.after, calendar, scheme.year)
    return with_earlier(scheme, before) if before.year < scheme.year else scheme


def not_yet(
    topics: Collection[str], taught: Mapping[str, datetime.date | None], date: datetime.date
) -> dict[str, str]:
    """Return, for each topic that a starter on `date` would ask before it is taught, when it is.

    A starter opens its lesson, so a topic taught on the same day is one of them.

    >>> day = datetime.date(2026, 11, 30)
    >>> not_yet(["a.b", "c.d"], {"a.b": day, "c.d": datetime.date(2026, 11, 27)}, day)
    {'a.b': 'is taught on 30 November'}
    """
    found = {}
    for name in topics:
        if name not in taught:
            continue
        when = taught[name]
        if when is None:
            found[name] = "has not been taught yet, as department.toml says"
        # The starter comes before the teaching of the same lesson.
        elif when >= date:
            found[name] = f"is taught on {day_month(when)}"
    return found
