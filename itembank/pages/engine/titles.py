"""What documents are called: the title of each, and the day in words."""

from __future__ import annotations

import datetime

from itembank.packs.data.pack import Pack, TierName


def long_date(day: datetime.date) -> str:
    """Return a date as written in an exercise book.

    >>> long_date(datetime.date(2026, 11, 30))
    'Monday 30 November 2026'
    """
    days = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
    months = (
        *("January", "February", "March", "April", "May", "June"),
        *("July", "August", "September", "October", "November", "December"),
    )
    return f"{days[day.weekday()]} {day.day} {months[day.month - 1]} {day.year}"


def title_of(pack: Pack, what: str) -> str:
    """Return a document's title: what it is, the lesson, the class and the date."""
    lesson = pack.lesson
    return f"{what}: {lesson.title}, {lesson.class_name}, {long_date(lesson.date)}"


def sheet_name(tier: TierName) -> str:
    """Return a sheet's title.

    >>> sheet_name("core")
    'Core sheet'
    """
    return f"{tier.capitalize()} sheet"
