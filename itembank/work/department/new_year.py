"""A department goes into another school year: what stood on days of the old one leaves them."""

from __future__ import annotations

import tomllib
from dataclasses import replace

from itembank.files.toml_edit import with_data
from itembank.planning.department import department as departments
from itembank.work.department.answered import Answers, TopicAnswer
from itembank.work.department.answers_read import Files


def in_new_year(was: Answers, now: Answers) -> Answers:
    """Return answers for the new year: each topic in the teaching week that it had in the old.

    A topic that was taught on a day goes into the week of that day; where the new year has fewer
    weeks, the last ones are joined.

    >>> import datetime
    >>> from itembank.planning.calendar.calendar import Term
    >>> from itembank.work.department.answered import SchemeAnswer
    >>> day = datetime.date
    >>> old = Answers(terms=(Term("Autumn", day(2026, 9, 7), day(2026, 12, 18)),))
    >>> new = Answers(
    ...     terms=(Term("Autumn", day(2027, 9, 6), day(2027, 9, 17)),),
    ...     schemes=(SchemeAnswer("year-8", 8, (TopicAnswer("ratio.share", taught=day(2026, 9, 8)),
    ...                                         TopicAnswer("ratio.scale", week=9))),),
    ... )
    >>> [topic.week for topic in in_new_year(old, new).schemes[0].topics]
    [1, 2]
    """
    old, new = was.calendar, now.calendar
    weeks = new.weeks if new else 0

    def moved(topic: TopicAnswer) -> TopicAnswer:
        week = topic.week
        if topic.taught is not None and old is not None:
            week = old.week_number(topic.taught)
        if week is None:
            return topic
        return TopicAnswer(topic.topic, min(week, weeks) if weeks else week)

    schemes = tuple(
        replace(scheme, topics=tuple(map(moved, scheme.topics))) for scheme in now.schemes
    )
    return replace(now, schemes=schemes)


def without_days_taught(files: Files) -> dict[str, str]:
    """Return files in which no class has days of its own on which it was taught a topic."""
    name = departments.FILE_NAME
    data = tomllib.loads(files[name])
    for row in data.get("classes", []):
        row.pop("taught", None)
    return {**files, name: with_data(files[name], data)}
