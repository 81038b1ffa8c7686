"""Days as a teacher types them, and the seed that a lesson gets when none is given."""

from __future__ import annotations

import datetime
import hashlib
import re

from itembank.errors import ItembankError

_BRITISH = re.compile(r"(\d{1,2})/(\d{1,2})/(\d{4})")


def parse_day(text: str, today: datetime.date) -> datetime.date:
    """Read a day: 2026-11-30, 30/11/2026, today or tomorrow.

    Raises:
        ItembankError: the text is no day of the calendar.

    >>> parse_day("30/11/2026", datetime.date(2026, 11, 2))
    datetime.date(2026, 11, 30)
    """
    word = text.strip().casefold()
    if word == "today":
        return today
    if word == "tomorrow":
        return today + datetime.timedelta(days=1)
    try:
        if match := _BRITISH.fullmatch(word):
            day, month, year = map(int, match.groups())
            return datetime.date(year, month, day)
        if re.fullmatch(r"\d{4}-\d{2}-\d{2}", word, re.ASCII):
            return datetime.date.fromisoformat(word)
    except ValueError:
        raise ItembankError(
            f"‘{text}’ is not a day of the calendar. Write a day such as 2026-11-30."
        ) from None
    raise ItembankError(
        f"‘{text}’ is not a date. Write it as 2026-11-30 or 30/11/2026, or today or tomorrow."
    )


def long_day(date: datetime.date) -> str:
    """Return a day as it is said.

    >>> long_day(datetime.date(2026, 12, 4))
    'Friday 4 December'
    """
    return f"{date:%A} {date.day} {date:%B}"


def usual_seed(class_name: str, date: datetime.date, title: str) -> int:
    """Return the seed of a lesson that states none: six digits at most, easy to type again.

    It depends on the class, the date and the title only, so the same lesson made again on
    another machine has the same questions. It is the first 64 bits of a SHA-256 digest of
    the three, modulo a million.

    >>> usual_seed("8K", datetime.date(2026, 11, 30), "Sharing in a ratio")
    153241
    """
    words = "\n".join((class_name, date.isoformat(), title))
    digest = hashlib.sha256(words.encode()).digest()
    return int.from_bytes(digest[:8], "big") % 1_000_000
