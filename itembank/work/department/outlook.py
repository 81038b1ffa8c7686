"""What answers mean: the year in words, lessons for each class and term, topics, bands."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Mapping

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.files.faults import join_words
from itembank.planning.bands.bands import (
    DEFAULT_MARKS,
    BandScheme,
    default_scheme,
    own_scheme,
)
from itembank.planning.bands.caution import NOT_A_GRADE
from itembank.planning.calendar.calendar import Calendar
from itembank.planning.calendar.days import period_order
from itembank.planning.calendar.timetable import WeeklyLesson, lessons_between
from itembank.text.in_words import counted, long_date, long_day, short_day
from itembank.work.department.answered import Answers, BandsAnswer, SchemeAnswer, settled
from itembank.work.department.as_files import seat_rows
from itembank.work.department.looked_at import known_topics


@dataclass(frozen=True, slots=True)
class ClassOutlook:
    """A class: its week in words, and its lessons in each term and in the whole year."""

    name: str
    week: str
    seats: str
    by_term: tuple[tuple[str, int], ...]

    @property
    def lessons(self) -> int:
        """Return the lessons of the year."""
        return sum(count for _, count in self.by_term)


@dataclass(frozen=True, slots=True)
class TopicOutlook:
    """A topic of a scheme: its id, its title and when it is taught, in words."""

    topic: str
    title: str
    when: str


@dataclass(frozen=True, slots=True)
class SchemeOutlook:
    """A scheme of work: the year group and its topics, the earliest first."""

    name: str
    year: int
    topics: tuple[TopicOutlook, ...]


@dataclass(frozen=True, slots=True)
class Outlook:
    """What answers mean, as far as they are given; lines in words where a line says it."""

    school: str
    calendar: tuple[str, ...]
    classes: tuple[ClassOutlook, ...]
    schemes: tuple[SchemeOutlook, ...]
    bands: tuple[str, ...]


def outlook_on(answers: Answers, titles: Mapping[str, str] | None = None) -> Outlook:
    """Return what answers mean, as far as they are given.

    `titles` are those of topics, by id; without them, of those that are generated.

    >>> from itembank.planning.calendar.calendar import Term
    >>> term = Term("Autumn", datetime.date(2026, 9, 3), datetime.date(2026, 12, 18))
    >>> outlook_on(Answers(terms=(term,))).calendar[0]
    'Autumn: Thursday 3 September 2026 to Friday 18 December 2026'
    """
    whole = settled(answers)
    calendar = whole.calendar
    return Outlook(
        school=whole.school,
        calendar=tuple(_calendar_lines(whole, calendar)) if calendar else (),
        classes=tuple(
            ClassOutlook(
                group.name,
                _week_words(group.lessons),
                _seat_words(group.seats),
                tuple(_by_term(group.lessons, calendar)) if calendar else (),
            )
            for group in whole.classes
        ),
        schemes=tuple(
            _scheme(scheme, calendar, titles or known_topics()[0]) for scheme in whole.schemes
        ),
        bands=tuple(_band_lines(whole.bands)),
    )


def _calendar_lines(answers: Answers, calendar: Calendar) -> Iterator[str]:
    for term in calendar.terms:
        yield f"{term.name}: {long_date(term.first)} to {long_date(term.last)}"
        for closed in calendar.closed:
            if term.first <= closed.first <= term.last:
                days = long_day(closed.first)
                if closed.last != closed.first:
                    days += f" to {long_day(closed.last)}"
                yield f"  no lessons {days}: {closed.why}"
    yield f"In all: {counted(calendar.weeks, 'teaching week')}"
    first = next(calendar.teaching_days(calendar.terms[0].first, calendar.terms[-1].last), None)
    if answers.two_week and answers.week_a and first and calendar.week_number(answers.week_a):
        letter = calendar.week_letter(first)
        yield f"Weeks A and B differ; the year begins with a week {letter} on {long_date(first)}"
    elif not answers.two_week:
        yield "The timetable is the same every week"


def _week_words(lessons: tuple[WeeklyLesson, ...]) -> str:
    """Return lessons as a line, a day after the other: ``Mon 1, Tue 3; week A: Fri 2``."""
    order = sorted(lessons, key=lambda lesson: (lesson.weekday, period_order(lesson.period)))
    parts = []
    for letter in ("", "A", "B"):
        days = ", ".join(
            str(WeeklyLesson(lesson.weekday, lesson.period))
            for lesson in order
            if lesson.letter == letter
        )
        if days:
            parts.append(f"week {letter}: {days}" if letter else days)
    return "; ".join(parts) or "no lessons yet"


def _seat_words(codes: tuple[str, ...]) -> str:
    if not codes:
        return "seats not listed"
    return f"{counted(len(codes), 'seat')}: {', '.join(seat_rows(codes))}"


def _by_term(lessons: tuple[WeeklyLesson, ...], calendar: Calendar) -> Iterator[tuple[str, int]]:
    for term in calendar.terms:
        held, _ = lessons_between(lessons, calendar, term.first, term.last)
        yield term.name, len(held)


def _scheme(
    scheme: SchemeAnswer, calendar: Calendar | None, titles: Mapping[str, str]
) -> SchemeOutlook:
    rows: list[tuple[datetime.date, TopicOutlook]] = []
    for topic in scheme.topics:
        start = topic.taught
        if topic.taught is not None:
            when = long_date(topic.taught)
        else:
            start = calendar.week_start(topic.week) if calendar and topic.week else None
            begins = f", from {short_day(start)}" if start else ""
            when = f"week {topic.week}{begins}"
        title = titles.get(topic.topic, topic.topic)
        rows.append((start or datetime.date.max, TopicOutlook(topic.topic, title, when)))
    ordered = sorted(rows, key=lambda row: row[0])
    return SchemeOutlook(scheme.name, scheme.year, tuple(row for _, row in ordered))


def _band_lines(bands: BandsAnswer | None) -> Iterator[str]:
    try:
        scheme = _band_scheme(bands)
    except ItembankError:
        return
    marks = bands.out_of if bands and bands.cuts else DEFAULT_MARKS
    names = bands.names if bands and bands.names else [sign.name for sign in scheme.signs]
    lows = {band.letter: (band.lowest, band.highest) for band in scheme.bands(marks)}
    parts = []
    for name, sign in zip(names, scheme.signs, strict=True):
        if sign.letter in lows:
            low, high = lows[sign.letter]
            parts.append(f"{name} {low}" if low == high else f"{name} {low}–{high}")
    yield f"{join_words(parts)}, of {marks} marks"


def _band_scheme(bands: BandsAnswer | None) -> BandScheme:
    """Return bands that have the cuts of an answer; their signs do not matter here."""
    if bands is None:
        return default_scheme()
    if bands.cuts:
        if bands.names and len(bands.names) != len(bands.cuts) + 1:
            raise ItembankError("The names and the cuts do not go together.")
        return own_scheme(bands.cuts, bands.out_of)
    return default_scheme(len(bands.names))


def outlook_lines(outlook: Outlook, short: bool = False) -> list[str]:
    """Return all of an outlook as lines for a screen without tables.

    A `short` one has the first and the last topic of each scheme alone.
    """
    lines = [outlook.school, *outlook.calendar] if outlook.school else list(outlook.calendar)
    lines += map(class_line, outlook.classes)
    for scheme in outlook.schemes:
        head = f"Year {scheme.year}, {counted(len(scheme.topics), 'topic')}"
        if short and len(scheme.topics) > 1:
            first, last = scheme.topics[0], scheme.topics[-1]
            lines.append(f"{head}: {first.title} ({first.when}) to {last.title} ({last.when})")
            continue
        lines.append(f"{head}:")
        lines += [f"  {topic.when}: {topic.title}" for topic in scheme.topics]
    bands = [f"Bands: {line}. {NOT_A_GRADE}" for line in outlook.bands]
    return [*lines, *bands]


def class_line(group: ClassOutlook) -> str:
    """Return what a class's answers mean, in one line."""
    terms = ", ".join(f"{name} {count}" for name, count in group.by_term)
    year = f"; {counted(group.lessons, 'lesson')} in the year ({terms})" if terms else ""
    return f"{group.name}: {group.week}; {group.seats}{year}"
