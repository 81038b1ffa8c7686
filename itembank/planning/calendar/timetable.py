"""When a class has mathematics: lessons of the week, laid over the calendar.

A lesson is written ``"Mon 1"``: a day and a period. With a two-week timetable a letter may
stand before it: ``"A Mon 1"`` is a lesson of week A only.
"""

from __future__ import annotations

import datetime
import re
from collections import defaultdict
from collections.abc import Iterable

from itembank.data_class import dataclass
from itembank.files.toml_table import Table
from itembank.planning.calendar.calendar import DAY, Calendar
from itembank.planning.calendar.days import period_order

DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri")
PERIOD = r"[\w.]{1,8}"
"""What a period may be called: it becomes part of the name of a pack's folder."""
USUAL_PERIOD = "1"
"""The period of a planned lesson that states none."""
_LESSON = re.compile(rf"(?:([AB])\s+)?(\w{{3,9}})\s+({PERIOD})", re.I)


@dataclass(frozen=True, slots=True)
class WeeklyLesson:
    """A lesson that comes every week, or every week A or B."""

    weekday: int
    period: str
    letter: str = ""

    def clashes(self, other: WeeklyLesson) -> bool:
        """Tell whether two lessons can fall in the same period of the same day."""
        same = (self.weekday, self.period) == (other.weekday, other.period)
        # A lesson of every week meets those of both letters; A and B never meet.
        return same and (not self.letter or not other.letter or self.letter == other.letter)

    def __str__(self) -> str:
        """Return the lesson as it is written in the department's file."""
        return f"{self.letter} {DAYS[self.weekday]} {self.period}".strip()


@dataclass(frozen=True, slots=True)
class Lesson:
    """One lesson on one day."""

    date: datetime.date
    period: str


@dataclass(frozen=True, slots=True)
class Skipped:
    """A lesson that the timetable has and the calendar takes away, and why."""

    date: datetime.date
    period: str
    why: str


def parse_lesson(text: str) -> WeeklyLesson | None:
    """Read a lesson such as ``"Mon 1"`` or ``"B Thursday 3"``; None where it is none.

    >>> parse_lesson("B thu 3")
    WeeklyLesson(weekday=3, period='3', letter='B')
    """
    match = _LESSON.fullmatch(text.strip())
    if not match:
        return None
    letter, day, period = match.groups()
    names = ("monday", "tuesday", "wednesday", "thursday", "friday")
    found = [place for place, name in enumerate(names) if name.startswith(day.casefold())]
    return WeeklyLesson(found[0], period, (letter or "").upper()) if len(found) == 1 else None


def read_lessons(row: Table) -> tuple[WeeklyLesson, ...]:
    """Read the ``lessons`` of a class, noting each that cannot be read or clashes."""
    found: list[WeeklyLesson] = []
    for value in row.items("lessons"):
        lesson = parse_lesson(value) if isinstance(value, str) else None
        if lesson is None:
            row.fault(
                "lessons",
                f'‘{value}’ is not a lesson. Write a day and a period, such as "Mon 1" or '
                '"B Thu 3".',
                str(value),
            )
        elif any(lesson.clashes(earlier) for earlier in found):
            row.fault("lessons", f"The class has two lessons on {value}.", str(value))
        else:
            found.append(lesson)
    return tuple(found)


def lessons_between(
    weekly: Iterable[WeeklyLesson], calendar: Calendar, first: datetime.date, last: datetime.date
) -> tuple[tuple[Lesson, ...], tuple[Skipped, ...]]:
    """Return the lessons from `first` to `last` in order, and those that fall on closed days.

    A lesson of week A or B only counts as skipped in a week that holds no teaching at all,
    since such a week has no letter.

    >>> from itembank.planning.calendar.calendar import Term
    >>> day = datetime.date
    >>> autumn = Calendar((Term("Autumn", day(2026, 9, 3), day(2026, 12, 18)),))
    >>> held, skipped = lessons_between(
    ...     [WeeklyLesson(0, "1"), WeeklyLesson(2, "4")], autumn, day(2026, 8, 31), day(2026, 9, 9)
    ... )
    >>> [f"{lesson.date:%a %d}" for lesson in held], [lesson.why for lesson in skipped]
    (['Mon 07', 'Wed 09'], ['before Autumn', 'before Autumn'])
    """
    held: list[Lesson] = []
    skipped: list[Skipped] = []
    order: dict[int, list[WeeklyLesson]] = defaultdict(list)
    for lesson in sorted(weekly, key=lambda lesson: period_order(lesson.period)):
        order[lesson.weekday].append(lesson)
    date = first
    while date <= last:
        for lesson in order.get(date.weekday(), ()):
            # In a week without a letter nobody knows whose turn it would have been.
            if lesson.letter and calendar.week_letter(date) not in ("", lesson.letter):
                continue
            why = calendar.closed_reason(date)
            if why:
                skipped.append(Skipped(date, lesson.period, why))
            else:
                held.append(Lesson(date, lesson.period))
        date += DAY
    return tuple(held), tuple(skipped)
