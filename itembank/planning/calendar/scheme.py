"""A scheme of work: the topics of a year group and when each is taught.

``schemes/year-8.toml`` in the department's folder::

    year = 8

    [[topics]]
    topic = "ratio.simplest-form"
    taught = 2026-10-05

    [[topics]]
    topic = "ratio.share"
    week = 6

A week is the number of a teaching week of the calendar, from 1. Topics may stand in any order.
``after = "year-7"`` says that who follows this scheme followed that one the year before: what it
teaches, and what went before it, can come back from the first week on.
On which day a class has been taught a topic is said by
:mod:`itembank.planning.department.class_scheme`.
"""

from __future__ import annotations

import datetime
from collections.abc import Collection
from dataclasses import replace
from pathlib import Path

from itembank.data_class import dataclass
from itembank.files.toml_table import Table, TomlFile
from itembank.planning.calendar.calendar import Calendar, read_date
from itembank.planning.topic_names import unknown_topic

FOLDER = "schemes"


@dataclass(frozen=True, slots=True)
class Taught:
    """A topic and the day on which it is taught; `week` where only a week is stated.

    The day is then the first of that week with lessons.
    """

    topic: str
    date: datetime.date
    week: int | None = None


@dataclass(frozen=True, slots=True)
class Scheme:
    """The topics of a year group, the earliest first.

    `after` names the scheme of the year before, and `earlier` are the topics of it and of those
    before it, as long ago as they were taught: a whole number of weeks. As a class has it
    (:mod:`itembank.planning.department.class_scheme`), its topics hold the earlier ones too.
    """

    name: str
    year: int
    topics: tuple[Taught, ...]
    after: str = ""
    earlier: tuple[Taught, ...] = ()

    @property
    def known(self) -> tuple[Taught, ...]:
        """Return the topics of earlier years and of this one, the earliest first."""
        return (*self.earlier, *self.topics)

    def coming(self, first: datetime.date, last: datetime.date) -> tuple[str, ...]:
        """Return the topics taught from `first` to `last`."""
        return tuple(taught.topic for taught in self.topics if first <= taught.date <= last)

    def current(self, date: datetime.date) -> str | None:
        """Return the topic being taught on `date`: the last one begun by then.

        >>> day = datetime.date
        >>> year = Scheme("y", 8, (Taught("a.b", day(2026, 9, 7)), Taught("c.d", day(2026, 9, 21))))
        >>> year.current(day(2026, 9, 20)), year.current(day(2026, 9, 1))
        ('a.b', None)
        """
        # Topics stand in order of their days, so the last one begun is the one at hand.
        before = {taught.topic for taught in self.earlier}
        begun = [
            taught.topic
            for taught in self.topics
            if taught.date <= date and taught.topic not in before
        ]
        return begun[-1] if begun else None


def read_scheme(
    path: Path, calendar: Calendar, known_topics: Collection[str], text: str | None = None
) -> Scheme:
    """Read a scheme of work, its weeks counted by the calendar; a `text` stands for the file.

    Raises:
        FileFaults: every fault of the file, each with its line.
    """
    file = TomlFile(path, text)
    top = file.top()
    year = top.whole("year", None, 1, 13)
    after = top.text("after", "")
    found: dict[str, Taught] = {}
    rows = top.tables("topics")
    for row in rows:
        name = row.text("topic", None)
        date = _date(row, calendar)
        if name and name not in known_topics:
            row.fault("topic", unknown_topic(name, known_topics), matter="no such topic")
        elif name in found:
            row.fault(
                "topic",
                f"The topic {name} is taught twice: on {found[name].date} already. Keep the first; "
                "starters bring it back without being told.",
            )
        elif name and date:
            found[name] = Taught(name, date, row.any("week"))
        row.close()
    if not rows:
        top.fault("", "There are no topics. Add a [[topics]] table with topic and taught or week.")
    top.close()
    file.finish()
    # By date alone, which keeps topics of one week in the order of the file.
    topics = sorted(found.values(), key=lambda taught: taught.date)
    return Scheme(path.stem, year, tuple(topics), after)


YEAR = datetime.timedelta(weeks=52)
"""From a week of a school year to the same week of the next."""


def with_earlier(scheme: Scheme, before: Scheme) -> Scheme:
    """Return a scheme with the topics of the year before it, and of the years before that.

    A topic that this year teaches again counts from then.

    >>> day = datetime.date
    >>> seven = Scheme("y7", 7, (Taught("a.b", day(2026, 9, 7)), Taught("c.d", day(2026, 9, 14))))
    >>> eight = Scheme("y8", 8, (Taught("c.d", day(2026, 9, 21)),), "y7")
    >>> [f"{week.topic} {week.date}" for week in with_earlier(eight, seven).known]
    ['a.b 2025-09-08', 'c.d 2026-09-21']
    """
    # Else the year before would have the class forget from a day before it was taught anew.
    again = {taught.topic for taught in scheme.topics}
    earlier = tuple(
        Taught(taught.topic, taught.date - YEAR)
        for taught in before.known
        if taught.topic not in again
    )
    return replace(scheme, earlier=earlier)


def _date(row: Table, calendar: Calendar) -> datetime.date | None:
    """Return the day a topic is taught, as stated or as the week says."""
    row.known("taught")
    row.known("week")
    # Both at once are a fault even where they agree: whoever moves the one would leave the other.
    if ("taught" in row) == ("week" in row):
        said = "both ‘taught’ and ‘week’" if "week" in row else "neither ‘taught’ nor ‘week’"
        row.fault("topic", f"This topic has {said}. Give one, so that it is taught once.")
        return None
    if "week" in row:
        number = row.whole("week", None, 1, max(calendar.weeks, 1))
        return calendar.week_start(number)
    date = read_date(row, "taught")
    first, last = calendar.terms[0].first, calendar.terms[-1].last
    if date and not first <= date <= last:
        row.fault("taught", f"{date} is outside the school year, {first} to {last}.")
        return None
    return date
