"""Days as a teacher types them, and the seed that a lesson gets when none is given."""

from __future__ import annotations

import contextlib
import datetime
import re

from itembank.errors import ItembankError
from itembank.text.in_words import MONTHS

_BRITISH = re.compile(r"(\d{1,2})/(\d{1,2})(?:/(\d{2}|\d{4}))?", re.ASCII)
_SAID = re.compile(r"(\d{1,2})(?:st|nd|rd|th)? ([a-z]{3,9})\.?(?: (\d{4}))?", re.ASCII)
_WEEKDAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_MONTHS = tuple(name.casefold() for name in MONTHS)
_NEAR = {"yesterday": -1, "today": 0, "tomorrow": 1}
FIRST_YEAR, LAST_YEAR = 2000, 2099


def parse_day(text: str, today: datetime.date, past: bool = False) -> datetime.date:
    """Read a day as it is typed: 2026-11-30, 30/11/2026, 30 Nov, Monday, today, tomorrow.

    A day without a year is the one nearest to `today`. A day of the week is the next one, today
    included; with `past`, as where results are recorded, the last one.

    Raises:
        ItembankError: the text is no day of the calendar.

    >>> wednesday = datetime.date(2026, 11, 25)
    >>> [parse_day(text, wednesday).day for text in ("30/11/2026", "30 Nov", "mon", "tomorrow")]
    [30, 30, 30, 26]
    >>> parse_day("mon", wednesday, past=True).day
    23
    """
    word = " ".join(text.casefold().split())
    if word in _NEAR:
        return today + datetime.timedelta(days=_NEAR[word])
    if len(word) >= 3 and (weekday := _named(word, _WEEKDAYS)) is not None:
        away = (weekday - today.weekday()) % 7
        return today + datetime.timedelta(days=away - 7 if past and away else away)
    try:
        date = _of_calendar(word, today)
    except ValueError:
        raise ItembankError(
            f"‘{text}’ is not a day of the calendar. Write a day such as 2026-11-30."
        ) from None
    if date is None:
        raise ItembankError(
            f"‘{text}’ is not a date. Write it as 2026-11-30, 30/11/2026 or 30 Nov, or Monday, "
            "today or tomorrow."
        )
    if not FIRST_YEAR <= date.year <= LAST_YEAR:
        raise ItembankError(f"‘{text}’ is in the year {date.year}. Check the year.")
    return date


def _of_calendar(word: str, today: datetime.date) -> datetime.date | None:
    """Return the date that is written out, or None; raises ValueError for the 31st of June."""
    if re.fullmatch(r"\d{4}-\d{2}-\d{2}", word, re.ASCII):
        return datetime.date.fromisoformat(word)
    if match := _BRITISH.fullmatch(word):
        day, month = int(match[1]), int(match[2])
    elif (match := _SAID.fullmatch(word)) and (named := _named(match[2], _MONTHS)) is not None:
        day, month = int(match[1]), named + 1
    else:
        return None
    if match[3]:
        return datetime.date(int(match[3]) + (2000 if len(match[3]) == 2 else 0), month, day)
    # Without a year the nearest is meant: in January 30 Nov was, in October it will be.
    near = []
    for year in (today.year - 1, today.year, today.year + 1):
        # The 29th of February is not in every year.
        with contextlib.suppress(ValueError):
            near.append(datetime.date(year, month, day))
    if not near:
        raise ValueError(word)
    return min(near, key=lambda date: abs(date - today))


def _named(word: str, names: tuple[str, ...]) -> int | None:
    """Return the place of the name that a word is, or begins; None where there is none."""
    places = [place for place, name in enumerate(names) if name.startswith(word)]
    return places[0] if places else None


def period_order(period: str) -> tuple[int, str]:
    """Return what periods of a day are sorted by: by number where they have one.

    >>> sorted(["10", "2", "P1", ""], key=period_order)
    ['', 'P1', '2', '10']
    """
    digits = re.search(r"\d{1,9}", period, re.ASCII)
    return (int(digits[0]) if digits else 0, period)


def usual_seed(class_name: str, date: datetime.date, title: str) -> int:
    """Return the seed of a lesson that states none: six digits at most, easy to type again.

    It depends on the class, the date and the title only, so the same lesson made again on
    another machine has the same questions. It is the first 64 bits of a SHA-256 digest of
    the three, modulo a million.

    >>> usual_seed("8K", datetime.date(2026, 11, 30), "Sharing in a ratio")
    153241
    """
    import hashlib  # a day alone is read in every command that records

    words = "\n".join((class_name, date.isoformat(), title))
    digest = hashlib.sha256(words.encode()).digest()
    return int.from_bytes(digest[:8], "big") % 1_000_000
