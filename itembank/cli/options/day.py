"""A day as it is typed after an option."""

from __future__ import annotations

import datetime

from itembank.errors import ItembankError
from itembank.today import today


def read_day(text: str | None, option: str = "--date") -> datetime.date | None:
    """Return the day an option names, or None where it was left out.

    Raises:
        ItembankError: it is no day.

    >>> read_day("2026-11-30")
    datetime.date(2026, 11, 30)
    """
    if text is None:
        return None
    from itembank.planning.calendar.days import parse_day

    try:
        return parse_day(text, today(), past=True)
    except ItembankError as error:
        raise error.within(f"{option}: ") from None
