"""Days and spans of days as people write them in a table of dates."""

from __future__ import annotations

import datetime
import re

from itembank.errors import ItembankError
from itembank.planning.calendar.days import parse_day
from itembank.text.in_words import DAYS, MONTHS, long_date

_MONTH = "|".join(f"{name[:3]}[a-z]*" for name in map(str.casefold, MONTHS))
_WEEKDAY = "|".join(f"{name[:3]}[a-z]*" for name in map(str.casefold, DAYS))
_ORDINAL = r"(?:st|nd|rd|th)?"
_DAY = re.compile(
    rf"(?:\b(?P<weekday>{_WEEKDAY})\b[,.]?\s*)?(?:the\s+)?"
    rf"(?:(?P<iso>\d{{4}}-\d{{1,2}}-\d{{1,2}})(?:[t ]\d\d:\d\d(?::\d\d)?)?"
    rf"|(?P<figures>\d{{1,2}}[/.]\d{{1,2}}[/.](?:\d{{4}}|\d\d)|\d{{1,2}}/\d{{1,2}})(?![\d/])"
    r"|(?P<dashed>\d{1,2}-\d{1,2}-(?:\d{4}|\d\d))(?![\d-])"
    rf"|(?P<many>\d{{1,2}}){_ORDINAL}\s*(?:[-–—]|to|and|&)\s*(?={{later}})"
    rf"|(?P<day>\d{{1,2}}){_ORDINAL}[\s-]*(?:of\s+)?(?P<month>{_MONTH})\b\.?"
    r"(?:[\s,-]*(?P<year>(?:19|20)\d\d|\d\d(?![\d/:.]|\s*[a-z–-])))?"
    rf"|\b(?P<month2>{_MONTH})\.?\s+(?P<day2>\d{{1,2}}){_ORDINAL}\b(?:,?\s*(?P<year2>20\d\d))?)"
    .replace("{later}", rf"(?:\b(?:{_WEEKDAY})\b\s*)?\d{{1,2}}{_ORDINAL}[\s-]*(?:{_MONTH})\b"),
    re.I,
)  # fmt: skip
_SERIAL = re.compile(r"\d{5}")
_EPOCH = datetime.date(1899, 12, 30)
"""What spreadsheets count days from: day 1 is the last of 1899, and 1900 had no leap day."""


def school_year_of(date: datetime.date) -> int:
    """Return the year in which the school year of a day begins, in August at the earliest.

    >>> school_year_of(datetime.date(2027, 1, 4)), school_year_of(datetime.date(2026, 9, 1))
    (2026, 2026)
    """
    return date.year if date.month >= 8 else date.year - 1


def coming_school_year(today: datetime.date) -> int:
    """Return the school year that somebody sets up: from June on, the one to come.

    >>> coming_school_year(datetime.date(2026, 7, 3)), coming_school_year(datetime.date(2026, 2, 3))
    (2026, 2025)
    """
    return today.year if today.month >= 6 else today.year - 1


def read_pasted_day(text: str, school_year: int) -> datetime.date:
    """Read one day; without a year it is the one in the school year that begins in a year.

    Raises:
        ItembankError: it is no day, no day of the calendar, or not that day of the week.

    >>> typed = ("Mon 7 Sep", "07/09/2026", "7-Sep-26", "7th September 2026", "46272")
    >>> {read_pasted_day(text, 2026).isoformat() for text in typed}
    {'2026-09-07'}
    >>> read_pasted_day("4 Jan", 2026).isoformat()
    '2027-01-04'
    """
    found, rest = days_in(text, school_year)
    if len(found) != 1 or re.search(r"\w", rest):
        raise ItembankError(f"‘{text}’ is not a day. Write it as in 7 Sep 2026 or 07/09/2026.")
    return found[0]


def days_in(text: str, school_year: int) -> tuple[list[datetime.date], str]:
    """Return the days that a text names, in its order, and the text without them.

    Raises:
        ItembankError: one is no day of the calendar, or not that day of the week.

    >>> days, rest = days_in("Half term: 26 to 30 Oct 2026", 2026)
    >>> [f"{day:%d %b}" for day in days], rest
    (['26 Oct', '30 Oct'], 'Half term:')
    """
    plain = " ".join(text.split())
    if _SERIAL.fullmatch(plain) and 36_000 < int(plain) < 73_000:
        return [_EPOCH + datetime.timedelta(int(plain))], ""
    found: list[datetime.date] = []
    open_days: list[tuple[str, str]] = []
    rest: list[str] = []
    end = 0
    for match in _DAY.finditer(plain):
        rest.append(plain[end : match.start()])
        end = match.end()
        if match["many"]:  # its month and year stand with the day after it
            open_days.append((match["many"], match["weekday"] or ""))
            continue
        date = _date(match, school_year)
        for number, weekday in open_days:
            found.append(_checked(f"{number} {date:%m %Y}", date, int(number), weekday))
        open_days = []
        _check_weekday(plain[match.start() : end].strip(), date, match["weekday"] or "")
        found.append(date)
    rest.append(plain[end:])
    joined = " ".join(" ".join(rest).split())
    return found, joined


def _date(match: re.Match[str], school_year: int) -> datetime.date:
    middle = datetime.date(school_year, 9, 1)
    if match["iso"]:
        parts = [int(part) for part in match["iso"].split("-")]
        return _of(match[0], *parts)
    figures = match["figures"] or match["dashed"]
    if figures and len(re.findall(r"\d+", figures)) == 3:
        return parse_day(re.sub(r"[.-]", "/", figures), middle)
    if figures:
        number, month = (int(part) for part in figures.split("/"))
        year = 0
    else:
        number = int(match["day"] or match["day2"])
        named = (match["month"] or match["month2"])[:3].casefold()
        month = [name[:3].casefold() for name in MONTHS].index(named) + 1
        year = int(match["year"] or match["year2"] or 0)
    if not 1 <= month <= 12:
        raise ItembankError(f"‘{match[0].strip()}’ is not a day of the calendar.")
    if year:
        year += 2000 if year < 100 else 0
    else:
        year = school_year if month >= 8 else school_year + 1
    return _of(match[0], year, month, number)


def _of(said: str, year: int, month: int, number: int) -> datetime.date:
    try:
        return datetime.date(year, month, number)
    except ValueError:
        raise ItembankError(f"‘{said.strip()}’ is not a day of the calendar.") from None


def _checked(said: str, date: datetime.date, number: int, weekday: str) -> datetime.date:
    found = _of(said, date.year, date.month, number)
    _check_weekday(said, found, weekday)
    return found


def _check_weekday(said: str, date: datetime.date, weekday: str) -> None:
    if weekday and not DAYS[date.weekday()].casefold().startswith(weekday[:3].casefold()):
        raise ItembankError(f"‘{said}’: that day is {long_date(date)}. Mend the day or the date.")
