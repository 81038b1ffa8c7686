"""What planning a week needs to know of a class: its seats, its lessons, its scheme of work.

In a ``[[classes]]`` table of ``department.toml``::

    scheme = "year-8"                      # schemes/year-8.toml
    seats = ["A1-A6", "B1-B6", "F5"]       # codes, never names
    lessons = ["Mon 1", "Tue 3", "B Thu 2"]
    teacher = "HT"                         # a code; two classes of one teacher must not clash

    [classes.taught]                       # where the class runs ahead of its scheme, or behind
    ratio.share = 2026-12-08
    ratio.combine = "not yet"

All may be left out, as long as nobody plans a week for the class.
"""

from __future__ import annotations

import contextlib
import datetime
import re
from collections.abc import Mapping
from dataclasses import field

from itembank.data_class import dataclass
from itembank.files.toml_table import Table
from itembank.people.seats import seat_fault
from itembank.planning.calendar.timetable import WeeklyLesson, read_lessons
from itembank.planning.choosing.week_settings import WeekSettings, read_week_settings
from itembank.planning.department.class_lessons import Place, read_moved

MOST_SEATS = 60
NOT_YET = "not yet"
_RANGE = re.compile(r"([A-Za-z]{0,3})(\d{1,3})\s*[-–]\s*([A-Za-z]{0,3})(\d{1,3})")


@dataclass(frozen=True, slots=True)
class ClassPlan:
    """The seats, weekly lessons, scheme and teacher of a class; empty where not stated.

    `taught` says when this class was taught a topic, whatever its scheme says; None: not yet.
    `moved` says where single lessons are now (:mod:`itembank.planning.department.class_lessons`).
    """

    scheme: str = ""
    seats: tuple[str, ...] = ()
    lessons: tuple[WeeklyLesson, ...] = ()
    teacher: str = ""
    planning: WeekSettings = field(default_factory=WeekSettings)
    taught: Mapping[str, datetime.date | None] = field(default_factory=dict)
    moved: Mapping[Place, Place] = field(default_factory=dict)


def read_class_plan(row: Table, common: WeekSettings | None = None) -> ClassPlan:
    """Read the planning keys of a class's table, noting faults."""
    return ClassPlan(
        scheme=row.text("scheme", "", most=40),
        seats=_seats(row),
        lessons=read_lessons(row),
        teacher=row.text("teacher", "", most=8),
        planning=read_week_settings(row, common or WeekSettings()),
        taught=_taught(row),
        moved=read_moved(row),
    )


def _taught(row: Table) -> dict[str, datetime.date | None]:
    """Read when the class was taught topics, by their ids, in quotation marks or not."""
    table = row.table("taught")
    found: dict[str, datetime.date | None] = {}
    if table is None:
        return found

    def read(values: Mapping[str, object], before: tuple[str, ...]) -> None:
        for key, value in values.items():
            path = (*before, key)
            if isinstance(value, Mapping):  # ratio.share without quotation marks is a table
                read(value, path)
                continue
            name, date = ".".join(path), value
            if isinstance(date, str):
                with contextlib.suppress(ValueError):
                    date = datetime.date.fromisoformat(date)
            if isinstance(date, datetime.date) and not isinstance(date, datetime.datetime):
                found[name] = date
            elif value == NOT_YET:
                found[name] = None
            else:
                row.file.fault(
                    (*row.path, "taught", *path),
                    f"‘{name}’ must be the day the class was taught it, such as 2026-11-30, or "
                    f'"{NOT_YET}", not ‘{value}’.',
                )

    read(table.data, ())
    return found


def taught_path(taught: Mapping[str, object], name: str) -> tuple[str, ...]:
    """Return the keys under which a topic stands in ``taught``, in quotation marks or not.

    >>> taught_path({"ratio.share": "not yet"}, "ratio.share")
    ('ratio.share',)
    """
    return (name,) if name in taught else tuple(name.split("."))


def spread_seats(text: str) -> list[str]:
    """Return the seat codes that a range or a single code stands for.

    >>> spread_seats("A1-A4"), spread_seats("F5"), spread_seats("A3-A1")
    (['A1', 'A2', 'A3', 'A4'], ['F5'], [])
    """
    match = _RANGE.fullmatch(text.strip())
    if not match:
        return [text.strip()]
    row, first, last_row, last = match.groups()
    # A1-B6 may be two rows or a block of seats: neither is guessed.
    if last_row and last_row.upper() != row.upper():
        return []
    # Whose labels say A01 means A02 by the next, and no seat called A2.
    width = len(first) if first.startswith("0") else 0
    return [f"{row}{number:0{width}}" for number in range(int(first), int(last) + 1)]


def _seats(row: Table) -> tuple[str, ...]:
    found: dict[str, str] = {}
    for value in row.items("seats"):
        codes = spread_seats(value) if isinstance(value, str) else []
        if not codes:
            row.fault(
                "seats",
                f'‘{value}’ is not a seat or a row of seats. Write "A1" or "A1-A6".',
                str(value),
            )
        for code in codes:
            if fault := seat_fault(code):
                row.fault("seats", fault, str(value))
            elif code.upper() in found:
                row.fault("seats", f"The seat {code} is listed twice.", str(value))
            else:
                found[code.upper()] = code
    if len(found) > MOST_SEATS:
        row.fault("seats", f"A class has at most {MOST_SEATS} seats, not {len(found)}.")
    return tuple(found.values())
