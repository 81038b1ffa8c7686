"""What a teacher answers about a department; any of it may be open while it is being answered.

Answers are plain values. :mod:`as_files` turns them into the text of a department's folder and
back, :mod:`looked_at` says what is missing or wrong in them, :mod:`outlook` what they mean.
"""

from __future__ import annotations

import datetime
from dataclasses import field, replace

from itembank.data_class import dataclass
from itembank.planning.calendar.calendar import Calendar, Closed, Term
from itembank.planning.calendar.timetable import WeeklyLesson


@dataclass(frozen=True, slots=True)
class ClassAnswer:
    """A class: its name, year, teacher's initials, seat codes, weekly lessons and scheme.

    Without a `scheme` it follows the one of its year. `was` is the name that it has in the
    files, where it is there already: a class that is renamed keeps all else that they say of it.
    """

    name: str = ""
    year: int | None = None
    teacher: str = ""
    seats: tuple[str, ...] = ()
    lessons: tuple[WeeklyLesson, ...] = ()
    scheme: str = ""
    was: str = field(default="", compare=False)


@dataclass(frozen=True, slots=True)
class TopicAnswer:
    """A topic of a scheme, and the teaching week or the day on which it is taught.

    With neither, topics share out the weeks of the year in their order.
    """

    topic: str
    week: int | None = None
    taught: datetime.date | None = None


@dataclass(frozen=True, slots=True)
class SchemeAnswer:
    """A scheme of work: its file's name, its year group and its topics in order."""

    name: str
    year: int
    topics: tuple[TopicAnswer, ...] = ()


@dataclass(frozen=True, slots=True)
class BandsAnswer:
    """Bands of a department's own: their names from the lowest, and their cut scores.

    Without `names` they are the usual ones; without `cuts`, the lowest score of each band above
    the first, the usual rule holds. `out_of` are the marks that the cuts are out of.
    """

    names: tuple[str, ...] = ()
    cuts: tuple[int, ...] = ()
    out_of: int = 8


@dataclass(frozen=True, slots=True)
class Answers:
    """All that is asked. `two_week` is None until somebody says whether weeks A and B differ.

    `bands` is None where the usual ones are wanted. Days off between terms need not be said.

    >>> Answers(school="Larkhythe School").classes
    ()
    """

    school: str = ""
    terms: tuple[Term, ...] = ()
    closed: tuple[Closed, ...] = ()
    two_week: bool | None = None
    week_a: datetime.date | None = None
    classes: tuple[ClassAnswer, ...] = ()
    schemes: tuple[SchemeAnswer, ...] = ()
    bands: BandsAnswer | None = None

    @property
    def calendar(self) -> Calendar | None:
        """Return the school year, or None where its terms are not told yet."""
        if not self.terms:
            return None
        terms = tuple(sorted(self.terms, key=lambda term: term.first))
        return Calendar(terms, self.closed, self.week_a if self.two_week else None)

    @property
    def years(self) -> tuple[int, ...]:
        """Return the year groups of the classes, each once."""
        return tuple(sorted({group.year for group in self.classes if group.year is not None}))

    def scheme_for(self, group: ClassAnswer) -> SchemeAnswer | None:
        """Return the scheme that a class follows: the one it names, else that of its year."""
        for scheme in self.schemes:
            if scheme.name == group.scheme if group.scheme else scheme.year == group.year:
                return scheme
        return None


def settled(answers: Answers) -> Answers:
    """Return answers as they are written: what may be left open has its usual value.

    Terms, days off and schemes stand in order, each class names its scheme, and topics without a
    week share out the weeks of the year.

    >>> day = datetime.date
    >>> term = Term("Autumn", day(2026, 9, 7), day(2026, 10, 2))
    >>> two = (TopicAnswer("ratio.share"), TopicAnswer("ratio.scale"))
    >>> whole = settled(Answers(terms=(term,), schemes=(SchemeAnswer("year-8", 8, two),)))
    >>> [topic.week for topic in whole.schemes[0].topics]
    [1, 3]
    """
    classes = []
    for group in answers.classes:
        scheme = answers.scheme_for(group)
        classes.append(replace(group, scheme=group.scheme or (scheme.name if scheme else "")))
    calendar = answers.calendar
    return replace(
        answers,
        terms=calendar.terms if calendar else (),
        closed=tuple(sorted(answers.closed, key=lambda closed: (closed.first, closed.last))),
        two_week=bool(answers.two_week),
        week_a=answers.week_a if answers.two_week else None,
        classes=tuple(classes),
        schemes=tuple(
            replace(scheme, topics=shared_out(scheme.topics, calendar.weeks if calendar else 0))
            for scheme in sorted(answers.schemes, key=lambda scheme: (scheme.year, scheme.name))
        ),
    )


def shared_out(topics: tuple[TopicAnswer, ...], weeks: int) -> tuple[TopicAnswer, ...]:
    """Return topics in which those without a week or a day have one.

    Where none has, they share out the weeks evenly in their order; where some have, one without
    is taught in the week of the one before it, and the first in week 1.
    """
    if not any(topic.week or topic.taught for topic in topics):
        return tuple(
            replace(topic, week=1 + place * weeks // len(topics))
            for place, topic in enumerate(topics)
        )
    found: list[TopicAnswer] = []
    for topic in topics:
        if topic.week is None and topic.taught is None:
            before = found[-1] if found else TopicAnswer("", week=1)
            topic = replace(topic, week=before.week, taught=before.taught)
        found.append(topic)
    return tuple(found)
