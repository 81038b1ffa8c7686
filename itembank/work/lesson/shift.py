"""Moves one lesson of a class to another day or period, or back to where the timetable has it."""

from __future__ import annotations

import datetime
import tomllib
from typing import TYPE_CHECKING

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.files.snapshot import take
from itembank.files.together import Together
from itembank.files.toml_edit import with_data
from itembank.planning.calendar.calendar import read_calendar
from itembank.planning.department.class_lessons import (
    Place,
    class_lessons,
    place_text,
    place_words,
)
from itembank.planning.department.department import FILE_NAME, read_department
from itembank.text.in_words import long_date
from itembank.work.lesson.lesson_day import no_lesson, periods_of
from itembank.work.week.week_results import Recorded

if TYPE_CHECKING:
    from itembank.planning.department.department import Department, SchoolClass


@dataclass(frozen=True, slots=True)
class Shifted:
    """The lesson that was moved: whose, from where, and where it is now.

    `back` says that it is where the timetable has it.
    """

    class_name: str
    source: Place
    target: Place
    back: bool = False


def shift(
    department: Department,
    date: datetime.date,
    to: datetime.date,
    class_name: str | None = None,
    period: str | None = None,
    to_period: str | None = None,
) -> Shifted:
    """Move one lesson of a class; without `to_period` it keeps its period.

    It is noted in ``department.toml``, all else of which stays. What is planned for the lesson
    goes along when its week is planned anew.

    Raises:
        ItembankError: there is no such lesson, or several and no period says which; the other
            place is taken, closed or its teacher is elsewhere; it is recorded already; or
            somebody changed the file meanwhile.
    """
    calendar = read_calendar(department.folder)
    group = department.find_class(class_name)
    source = _source(department, group, date, period)
    target = (to, to_period or source[1])
    if target == source:
        raise ItembankError(f"{group.name} has its lesson on {place_words(source)} already.")
    if why := calendar.closed_reason(to):
        raise ItembankError(f"There are no lessons on {long_date(to)} ({why}).", field="to")
    # The teacher's other classes too: nobody holds two lessons at once.
    for taught in department.classes:
        own = taught.name == group.name
        if not own and (not group.plan.teacher or group.plan.teacher != taught.plan.teacher):
            continue
        held, _ = class_lessons(taught.plan, calendar, to, to)
        if target[1] in [lesson.period for lesson in held]:
            has = f"{group.name} has a lesson" if own else f"{group.plan.teacher} has {taught.name}"
            raise ItembankError(
                f"{has} on {place_words(target)}. Name another period or day.", field="to"
            )
    recorded = Recorded(department.folder, group.name)
    for place in (source, target):
        if recorded.has(*place) or recorded.fell_out(*place):
            raise ItembankError(
                f"Something is noted of {group.name} on {place_words(place)} already, so the "
                "lesson stays.",
                matter="take back first",
                class_name=group.name,
                date=place[0],
            )
    first = next((old for old, new in group.plan.moved.items() if new == source), source)
    _write(department, group, first, target)
    return Shifted(group.name, source, target, back=first == target)


def _source(
    department: Department, group: SchoolClass, date: datetime.date, period: str | None
) -> Place:
    """Return which lesson is meant.

    Raises:
        ItembankError: there is none, or there are several.
    """
    if said := no_lesson(department, group, date, period or ""):
        raise ItembankError(f"{said} There is nothing to move.")
    there = periods_of(department, group, date)
    if period is None and len(there) > 1:
        from itembank.records.results.correct import several_lessons

        raise several_lessons(group.name, date, there)
    return date, period or there[0]


def _write(department: Department, group: SchoolClass, first: Place, target: Place) -> None:
    """Write where a lesson is now into the department's file.

    Raises:
        ItembankError: the file was changed meanwhile, or cannot be written.
    """
    path = department.folder / FILE_NAME
    was = take(path)
    # It was read a moment ago, and may be another by now.
    try:
        data = tomllib.loads(was.text)
        row = next(row for row in data["classes"] if row["name"] == group.name)
    except (tomllib.TOMLDecodeError, KeyError, TypeError, StopIteration):
        raise ItembankError(
            f"{path} was changed meanwhile, and {group.name} is not to be found in it. Nothing was "
            "changed. Look at the file and do it again."
        ) from None
    moved = row.setdefault("moved", {})
    moved.pop(place_text(first), None)
    if first != target:
        moved[place_text(first)] = place_text(target)
    if not moved:
        del row["moved"]
    text = with_data(was.text, data)
    read_department(department.folder, None, text)
    try:
        with Together() as change:
            change.file(path, was.encode(text), was=was)
    except OSError as error:
        reason = error.strerror or str(error)
        raise ItembankError(f"{path} cannot be written: {reason}. Nothing was changed.") from None
