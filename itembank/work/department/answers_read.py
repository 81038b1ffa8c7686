"""A department's answers, read back from its files."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from typing import Any

from itembank.planning.bands.bands import DEFAULT_MARKS
from itembank.planning.calendar import calendar as calendars
from itembank.planning.calendar.calendar import Closed, Term
from itembank.planning.calendar.scheme import FOLDER as SCHEMES
from itembank.planning.calendar.timetable import parse_lesson
from itembank.planning.department import department as departments
from itembank.planning.department.class_plan import spread_seats
from itembank.work.department.answered import (
    Answers,
    BandsAnswer,
    ClassAnswer,
    SchemeAnswer,
    TopicAnswer,
)

Files = Mapping[str, str]
"""The text of each file of a folder, by its name with /."""


Data = dict[str, Any]


def answers_in(files: Files) -> Answers:
    """Return what the files of a department answer; they are as the commands read them.

    Whether the values make sense is for those readers to say: what they refuse may raise
    KeyError, TypeError or ValueError here.
    """
    department = data_of(files.get(departments.FILE_NAME))
    calendar = data_of(files.get(calendars.FILE_NAME))
    schemes = [
        _scheme_answer(name.removeprefix(f"{SCHEMES}/").removesuffix(".toml"), data_of(text))
        for name, text in files.items()
        if name.startswith(f"{SCHEMES}/")
    ]
    return Answers(
        school=department.get("school", ""),
        terms=tuple(
            Term(row["name"], _day(row["first"]), _day(row["last"]))
            for row in calendar.get("terms", [])
        ),
        closed=tuple(
            Closed(_day(row["first"]), _day(row.get("last", row["first"])), row["why"])
            for row in calendar.get("closed", [])
        ),
        two_week=calendar.get("two_week", False) if calendar else None,
        week_a=_day(calendar["week_a"]) if calendar.get("two_week") else None,
        classes=tuple(_class_answer(row) for row in department.get("classes", [])),
        schemes=tuple(sorted(schemes, key=lambda scheme: (scheme.year, scheme.name))),
        bands=_bands_answer(department["bands"]) if "bands" in department else None,
    )


def data_of(text: str | None) -> Data:
    """Return what a file says; a file that is not there says nothing."""
    return tomllib.loads(text) if text is not None else {}


def _class_answer(row: Data) -> ClassAnswer:
    lessons = [parse_lesson(text) for text in row.get("lessons", [])]
    return ClassAnswer(
        name=row["name"],
        year=row["year"],
        teacher=row.get("teacher", ""),
        seats=tuple(code for text in row.get("seats", []) for code in spread_seats(text)),
        lessons=tuple(lesson for lesson in lessons if lesson is not None),
        scheme=row.get("scheme", ""),
        was=row["name"],
    )


def _scheme_answer(name: str, data: Data) -> SchemeAnswer:
    rows = data.get("topics", [])
    topics = (
        TopicAnswer(row["topic"], row.get("week"), _day(row["taught"]) if "taught" in row else None)
        for row in rows
    )
    return SchemeAnswer(name, data["year"], tuple(topics))


def _bands_answer(table: Data) -> BandsAnswer:
    out_of = table.get("out_of", DEFAULT_MARKS)
    rows = table.get("band", [])
    if not rows:
        return BandsAnswer((), tuple(table.get("cuts", ())), out_of)
    stated = any("lowest" in row for row in rows)
    cuts = tuple(row["lowest"] for row in rows[1:]) if stated else ()
    return BandsAnswer(
        tuple(row["name"] for row in rows), cuts, out_of if stated else DEFAULT_MARKS
    )


def _day(value: Any) -> Any:
    """Return a day, which a person may have put in quotation marks."""
    import datetime

    return datetime.date.fromisoformat(value) if isinstance(value, str) else value
