"""A school's calendar: terms, days on which it is closed, and a two-week timetable.

``calendar.toml`` beside the department's file::

    two_week = true
    week_a = 2026-09-07                # a day of a week A; the letters alternate week by week

    [[terms]]
    name = "Autumn"
    first = 2026-09-03
    last = 2026-12-18

    [[closed]]
    first = 2026-10-26
    last = 2026-10-30
    why = "half term"

A closed time of one day may leave ``last`` out. Weeks run from Monday and only those with a day
of teaching count, so a half term does not turn A into B twice.
"""

from __future__ import annotations

import contextlib
import datetime
from collections.abc import Iterator
from functools import cached_property
from pathlib import Path

from itembank.data_class import dataclass
from itembank.files.faults import Fault, FileFaults
from itembank.files.toml_table import Table, TomlFile

FILE_NAME = "calendar.toml"
DAY = datetime.timedelta(days=1)
LONGEST_YEAR = 450
"""Days a school year may take; longer ones are a slip of the pen."""


@dataclass(frozen=True, slots=True)
class Term:
    """A term, from its first day to its last."""

    name: str
    first: datetime.date
    last: datetime.date


@dataclass(frozen=True, slots=True)
class Closed:
    """Days inside a term without lessons, and why."""

    first: datetime.date
    last: datetime.date
    why: str


@dataclass(frozen=True)
class Calendar:
    """When there are lessons. Terms stand in order and do not overlap.

    >>> day = datetime.date
    >>> autumn = Term("Autumn", day(2026, 9, 3), day(2026, 12, 18))
    >>> half_term = Closed(day(2026, 10, 26), day(2026, 10, 30), "half term")
    >>> year = Calendar((autumn,), (half_term,), day(2026, 9, 7))
    >>> year.closed_reason(day(2026, 10, 28)), year.closed_reason(day(2026, 11, 30))
    ('half term', '')
    >>> year.week_letter(day(2026, 10, 19)), year.week_letter(day(2026, 11, 2))
    ('A', 'B')
    """

    terms: tuple[Term, ...]
    closed: tuple[Closed, ...] = ()
    week_a: datetime.date | None = None

    def closed_reason(self, date: datetime.date) -> str:
        """Return why there are no lessons on `date`, or an empty string where there are."""
        if date.weekday() >= 5:
            return "weekend"
        # Closed days before terms, since they lie inside one.
        for closed in self.closed:
            if closed.first <= date <= closed.last:
                return closed.why
        for term in self.terms:
            if term.first <= date <= term.last:
                return ""
        before = [term for term in self.terms if term.last < date]
        after = [term for term in self.terms if term.first > date]
        if before and after:
            return f"holiday between {before[-1].name} and {after[0].name}"
        return f"after the end of {before[-1].name}" if before else f"before {after[0].name}"

    def teaching_days(self, first: datetime.date, last: datetime.date) -> Iterator[datetime.date]:
        """Yield the days with lessons from `first` to `last`."""
        day = first
        while day <= last:
            if not self.closed_reason(day):
                yield day
            day += DAY

    @cached_property
    def _weeks(self) -> dict[datetime.date, int]:
        days = self.teaching_days(self.terms[0].first, self.terms[-1].last)
        # Only weeks with teaching are counted, so the letters go on over a half term.
        mondays = dict.fromkeys(monday(day) for day in days)
        return {day: number for number, day in enumerate(mondays, 1)}

    def week_number(self, date: datetime.date) -> int | None:
        """Return the number of the teaching week that holds `date`, the first being 1."""
        return self._weeks.get(monday(date))

    def week_start(self, number: int) -> datetime.date | None:
        """Return the first teaching day of a week by its number."""
        for start, found in self._weeks.items():
            if found == number:
                # A week has a number only where it has a day of teaching, so there is one to be
                # found.
                return next(self.teaching_days(start, start + 4 * DAY))
        return None

    @property
    def weeks(self) -> int:
        """Return the number of weeks with teaching."""
        return len(self._weeks)

    def week_letter(self, date: datetime.date) -> str:
        """Return A or B, or an empty string without a two-week timetable or outside terms."""
        number = self.week_number(date)
        if self.week_a is None or number is None:
            return ""
        # Counted both ways from the week that is known; % is never negative here.
        return "AB"[(number - self._weeks[monday(self.week_a)]) % 2]


def monday(date: datetime.date) -> datetime.date:
    """Return the Monday of the week that holds `date`."""
    return date - date.weekday() * DAY


def read_calendar(folder: Path, text: str | None = None) -> Calendar:
    """Read ``calendar.toml`` of a department's folder; a `text` stands for the file.

    Raises:
        FileFaults: every fault of the file, each with its line.
    """
    path = folder / FILE_NAME
    if text is None and not path.exists():
        what = "There is no such file, and a week is planned by it. It has a [[terms]] table with "
        what += 'name = "Autumn", first = 2026-09-03 and last = 2026-12-18 for each term, and a '
        what += '[[closed]] table with first, last and why = "half term" for days off.'
        raise FileFaults([Fault(str(path), 0, what)])
    file = TomlFile(path, text)
    top = file.top()
    terms = _terms(top)
    closed = _closed(top, terms)
    two_week = top.flag("two_week", False)
    week_a = read_date(top, "week_a") if "week_a" in top else None
    if two_week and "week_a" not in top:
        top.fault("two_week", "A two-week timetable needs ‘week_a’, a day of a week A.")
    top.known("week_a")
    top.close()
    calendar = Calendar(terms, closed, week_a if two_week else None)
    if not file.faults:
        days = (terms[-1].last - terms[0].first).days
        if days > LONGEST_YEAR:
            top.fault("terms", f"The terms span {days} days; a file holds one school year.")
        elif two_week and week_a and calendar.week_number(week_a) is None:
            top.fault("week_a", f"There are no lessons in the week of {week_a}.")
    file.finish()
    return calendar


def _terms(top: Table) -> tuple[Term, ...]:
    found: list[Term] = []
    rows = top.tables("terms")
    for row in rows:
        name = row.text("name", None, most=40)
        if span := _span(row, one_day=False):
            term = Term(name, *span)
            if found and term.first <= found[-1].last:
                row.fault(
                    "first",
                    f"{name} begins on {term.first}, but {found[-1].name} ends on "
                    f"{found[-1].last}. Write the terms in order, without overlaps.",
                )
            found.append(term)
        row.close()
    if not rows:
        top.fault("", "There is no term. Add a [[terms]] table with name, first and last.")
    return tuple(found)


def _closed(top: Table, terms: tuple[Term, ...]) -> tuple[Closed, ...]:
    found: list[Closed] = []
    for row in top.tables("closed"):
        why = row.text("why", None, most=60)
        if span := _span(row, one_day=True):
            closed = Closed(*span, why)
            if terms and not any(t.first <= closed.first and closed.last <= t.last for t in terms):
                row.fault(
                    "first",
                    f"‘{why}’, {closed.first} to {closed.last}, does not lie inside a term. Days "
                    "between terms are free already: take it out, or mend a date.",
                )
            found.append(closed)
        row.close()
    return tuple(found)


def _span(row: Table, one_day: bool) -> tuple[datetime.date, datetime.date] | None:
    """Read first and last; where one day is allowed, last may be left out."""
    first = read_date(row, "first")
    last = first if one_day and "last" not in row else read_date(row, "last")
    if first is None or last is None:
        return None
    if last < first:
        row.fault("last", f"It ends on {last}, before it begins on {first}. Mend one of them.")
        return None
    return first, last


def read_date(row: Table, key: str) -> datetime.date | None:
    """Read a day, as TOML's own 2026-11-30 or in quotation marks; None after a fault."""
    value = row.any(key)
    if isinstance(value, str):
        with contextlib.suppress(ValueError):
            value = datetime.date.fromisoformat(value)
    if isinstance(value, datetime.date) and not isinstance(value, datetime.datetime):
        return value
    if key not in row:
        row.fault("", f"‘{key}’ is missing here. Add a line {key} = 2026-11-30, with your day.")
    else:
        row.fault(key, f"‘{key}’ must be a day such as 2026-11-30, not ‘{row.any(key)}’.")
    return None
