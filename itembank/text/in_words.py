"""Days and numbers of things, as a sentence says them: the one table of both.

The names of days and months are English wherever the tool runs.
"""

from __future__ import annotations

import datetime

DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
MONTHS = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)


def weekday(date: datetime.date) -> str:
    """Return the day of the week; its first three letters are the short of it.

    >>> weekday(datetime.date(2026, 12, 4)), weekday(datetime.date(2026, 12, 4))[:3]
    ('Friday', 'Fri')
    """
    return DAYS[date.weekday()]


def month(date: datetime.date) -> str:
    """Return the month; its first three letters are the short of it.

    >>> month(datetime.date(2026, 9, 14))
    'September'
    """
    return MONTHS[date.month - 1]


_SHORT = {name[:3].casefold(): name for name in (*DAYS, *MONTHS)}


def in_full(name: str) -> str:
    """Return the name of a day or a month whole, as a sentence has it; any other name as it is.

    >>> in_full("Tue"), in_full("Apr"), in_full("May"), in_full("tulips")
    ('Tuesday', 'April', 'May', 'tulips')
    """
    return _SHORT.get(name.casefold(), name)


def short_day(date: datetime.date) -> str:
    """Return a day in few letters.

    >>> short_day(datetime.date(2026, 12, 4))
    '4 Dec'
    """
    return f"{date.day} {month(date)[:3]}"


def day_month(date: datetime.date) -> str:
    """Return a day of a year that goes without saying.

    >>> day_month(datetime.date(2026, 12, 4))
    '4 December'
    """
    return f"{date.day} {month(date)}"


def day_month_year(date: datetime.date) -> str:
    """Return a day with its month and year.

    >>> day_month_year(datetime.date(2026, 12, 4))
    '4 December 2026'
    """
    return f"{day_month(date)} {date.year}"


def long_day(date: datetime.date) -> str:
    """Return a day as it is said.

    >>> long_day(datetime.date(2026, 12, 4))
    'Friday 4 December'
    """
    return f"{weekday(date)} {day_month(date)}"


def long_date(date: datetime.date) -> str:
    """Return a date as it is written in an exercise book.

    >>> long_date(datetime.date(2026, 11, 30))
    'Monday 30 November 2026'
    """
    return f"{long_day(date)} {date.year}"


def moment(when: datetime.datetime) -> str:
    """Return a moment of this school year to the minute.

    >>> moment(datetime.datetime(2026, 12, 4, 9, 5))
    '4 Dec at 09:05'
    """
    return f"{short_day(when)} at {when:%H:%M}"


def plural(count: int, singular: str, many: str = "") -> str:
    """Return the form of a word that goes with a number: `singular`, or `many`, which has an s.

    >>> plural(1, "question"), plural(0, "question"), plural(2, "is", "are")
    ('question', 'questions', 'are')
    """
    return singular if count == 1 else many or f"{singular}s"


def with_article(noun: str) -> str:
    """Return a noun as one of its kind.

    >>> with_article("area"), with_article("hour"), with_article("week")
    ('an area', 'an hour', 'a week')
    """
    return f"{'an' if noun[0] in 'aeiou' or noun == 'hour' else 'a'} {noun}"


def counted(count: int, singular: str, many: str = "") -> str:
    """Return a number of things.

    >>> counted(1, "lesson"), counted(1200, "question"), counted(2, "needs", "need")
    ('1 lesson', '1,200 questions', '2 need')
    """
    return f"{count:,} {plural(count, singular, many)}"
