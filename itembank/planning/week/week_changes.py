"""A teacher's changes to a week, as data: pin, ban, swap, replace, reorder, more or fewer."""

from __future__ import annotations

import datetime
from typing import TYPE_CHECKING

from itembank.data_class import dataclass

if TYPE_CHECKING:
    from itembank.planning.week.week_plan import WeekPlan


@dataclass(frozen=True, slots=True)
class LessonName:
    """A lesson as a person names it: by a day of the week or a date, and a period where needed.

    `text` is what the person wrote, without the period; it is quoted where it does not do.
    """

    text: str
    date: datetime.date | None = None
    weekday: int | None = None
    period: str = ""

    def day(self, week: datetime.date) -> datetime.date:
        """Return the day that is meant in the week that begins on a Monday.

        >>> LessonName("tue", weekday=1).day(datetime.date(2026, 11, 30))
        datetime.date(2026, 12, 1)
        """
        if self.date is not None:
            return self.date
        return week + datetime.timedelta(days=self.weekday or 0)


@dataclass(frozen=True, slots=True)
class Length:
    """A starter has so many questions; without a lesson, each of the week."""

    questions: int
    lesson: LessonName | None = None
    said: str = ""


@dataclass(frozen=True, slots=True)
class Ban:
    """A topic or an address is not to be asked; without a lesson, in none of the week."""

    name: str
    lesson: LessonName | None = None
    said: str = ""


@dataclass(frozen=True, slots=True)
class Swap:
    """A topic of one lesson changes places with a topic of another."""

    lesson: LessonName
    topic: str
    other_lesson: LessonName
    other_topic: str
    said: str = ""


@dataclass(frozen=True, slots=True)
class Instead:
    """A topic of a lesson gives way to another."""

    lesson: LessonName
    topic: str
    new: str
    said: str = ""


@dataclass(frozen=True, slots=True)
class Pin:
    """A topic, with so many questions, or the question at an address is in a lesson."""

    lesson: LessonName
    name: str
    questions: int | None = None
    said: str = ""


@dataclass(frozen=True, slots=True)
class Order:
    """The order of a starter: its topics by name, or its questions by the numbers they have."""

    lesson: LessonName
    topics: tuple[str, ...] = ()
    numbers: tuple[int, ...] = ()
    said: str = ""


@dataclass(frozen=True, slots=True)
class Another:
    """The question at an address gives way, in its own place, to the one at another.

    With an empty `new` that is the nearest in difficulty of those like it, or of those of a
    `kind` that is named, which the planner finds before the change is made. What a person chose
    is `held`: it stays when the week is planned anew.
    """

    lesson: LessonName
    address: str
    new: str = ""
    held: bool = True
    said: str = ""
    kind: str = ""


@dataclass(frozen=True, slots=True)
class AsBefore:
    """The plan is what it was before; lessons that are over stay as they are all the same."""

    plan: WeekPlan
    said: str = ""
    lesson: None = None


Change = AsBefore | Length | Ban | Swap | Instead | Pin | Another | Order
"""A change to a week. `said` is how the person stated it, to be told with what is wrong in it."""

IN_TURN: tuple[type[Change], ...] = (AsBefore, Length, Ban, Swap, Instead, Pin, Another, Order)
"""The order in which changes are made, whatever the order in which they were stated."""


def lessons_named(change: Change) -> list[LessonName]:
    """Return the lessons that a change names; none where it is for the whole week."""
    if isinstance(change, Swap):
        return [change.lesson, change.other_lesson]
    return [change.lesson] if change.lesson is not None else []
