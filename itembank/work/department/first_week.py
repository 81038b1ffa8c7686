"""When a new department's first starters are: a starter asks what was taught before it."""

from __future__ import annotations

import datetime

from itembank.planning.calendar.calendar import Calendar


def first_day_with_starters(calendar: Calendar, today: datetime.date) -> datetime.date | None:
    """Return the first teaching day from today on, in the second week of the year or later.

    None where the school year holds no such day.

    >>> from itembank.planning.calendar.calendar import Term
    >>> term = Term("Autumn", datetime.date(2026, 9, 3), datetime.date(2026, 12, 18))
    >>> first_day_with_starters(Calendar((term,), ()), datetime.date(2026, 8, 1)).isoformat()
    '2026-09-07'
    """
    second = calendar.week_start(2) or calendar.terms[0].first
    days = calendar.teaching_days(max(today, second), calendar.terms[-1].last)
    return next(iter(days), None)
