"""Answers as the text of a department's folder, and a folder's text as answers.

The two are inverse: what :func:`files_of` writes, :func:`answers_in` reads as the same answers,
once they are :func:`~itembank.work.department.answered.settled`. Of a department that is there
only what the answers say differently changes, and all else of its files stays
(:mod:`itembank.files.toml_edit`).
"""

from __future__ import annotations

import copy
from collections.abc import Iterable, Mapping, Sequence

from itembank.files.toml_document import toml_document
from itembank.files.toml_edit import with_data
from itembank.planning.bands.band_signs import DEFAULT_SIGNS
from itembank.planning.calendar import calendar as calendars
from itembank.planning.calendar.calendar import Closed
from itembank.planning.calendar.scheme import FOLDER as SCHEMES
from itembank.planning.department import department as departments
from itembank.planning.department.class_plan import spread_seats
from itembank.text.folding import same_name
from itembank.work.department.answered import (
    Answers,
    BandsAnswer,
    ClassAnswer,
    SchemeAnswer,
    settled,
)
from itembank.work.department.answers_read import Data, Files, _scheme_answer, answers_in, data_of

FIRST_TOPICS = 4
"""Topics of the scheme that a new class's single packs begin with."""

_HEADS = {
    departments.FILE_NAME: "# The school and its classes.\n\n",
    calendars.FILE_NAME: "# The school year. Days between terms are free without being listed.\n\n",
}
_SCHEME_HEAD = (
    "# What year {year} is taught, and when: by teaching week of the calendar, or by day.\n\n"
)


def files_of(answers: Answers, before: Files | None = None) -> dict[str, str]:
    """Return the text of every file that says what is answered.

    `before` are the files of a department that is there; a scheme that the answers no longer
    hold is not among what is returned, all other files are.
    """
    now = settled(answers)
    there = dict(before or {})
    was = settled(answers_in(there)) if departments.FILE_NAME in there else None
    found: dict[str, str] = {}
    for scheme in now.schemes:
        name = scheme_file(scheme.name)
        head = _SCHEME_HEAD.format(year=scheme.year)
        found[name] = _text(there.get(name), _scheme_data(scheme, data_of(there.get(name))), head)
    name = calendars.FILE_NAME
    found[name] = _text(there.get(name), _calendar_data(now, was, data_of(there.get(name))), name)
    name = departments.FILE_NAME
    data = _department_data(now, was, data_of(there.get(name)))
    found[name] = _text(there.get(name), data, name)
    return found


def scheme_file(name: str) -> str:
    """Return the name of the file of a scheme.

    >>> scheme_file("year-8")
    'schemes/year-8.toml'
    """
    return f"{SCHEMES}/{name}.toml"


def _text(was: str | None, data: Data, head: str) -> str:
    return with_data(was, data) if was is not None else _HEADS.get(head, head) + toml_document(data)


def _department_data(now: Answers, was: Answers | None, before: Data) -> Data:
    # Answers are a part of what the files may say: all the rest of it stays.
    data = copy.deepcopy(before)
    if was is None or now.school != was.school:
        data["school"] = now.school
    if was is None or now.bands != was.bands:
        if now.bands is None:
            data.pop("bands", None)
        else:
            data["bands"] = _bands_data(now.bands, data.get("bands", {}))
    rows = {row["name"]: row for row in data.get("classes", [])}
    old = {group.name: group for group in was.classes} if was else {}
    names = {}
    classes = []
    for group in now.classes:
        key = next((name for name in rows if same_name(name, group.was or group.name)), None)
        row = rows.pop(key) if key is not None else {}
        classes.append(_class_data(now, group, old.get(key or ""), row))
        names[key] = group.name
    data["classes"] = classes
    # The default goes along with a class that is renamed, and goes where its class does.
    if "default_class" in data:
        default = names.get(data["default_class"])
        if default is None:
            del data["default_class"]
        else:
            data["default_class"] = default
    return data


def _class_data(now: Answers, group: ClassAnswer, was: ClassAnswer | None, row: Data) -> Data:
    """Return the table of a class: what is answered differently is changed in it."""
    said: Data = {
        "name": group.name,
        "year": group.year,
        "scheme": group.scheme,
        "teacher": group.teacher,
        "seats": seat_rows(group.seats),
        "lessons": [str(lesson) for lesson in group.lessons],
    }
    for name, value in said.items():
        if was is not None and getattr(group, name) == getattr(was, name):
            continue
        if value:
            row[name] = value
        else:
            row.pop(name, None)
    # Topics that somebody wrote into the file stay: no question asks for them.
    if "topics" not in row:
        scheme = now.scheme_for(group)
        row["topics"] = [topic.topic for topic in scheme.topics[:FIRST_TOPICS]] if scheme else []
    return row


def seat_rows(codes: Iterable[str]) -> list[str]:
    """Return seat codes as they are written: those of a row that follow one another together.

    >>> seat_rows(["A1", "A2", "A3", "B1", "F5", "F6"])
    ['A1-A3', 'B1', 'F5-F6']
    """
    rows: list[list[str]] = []
    for code in codes:
        joined = f"{rows[-1][0]}-{code}" if rows else ""
        if rows and spread_seats(joined) == [*rows[-1], code]:
            rows[-1].append(code)
        else:
            rows.append([code])
    return [row[0] if len(row) == 1 else f"{row[0]}-{row[-1]}" for row in rows]


def _calendar_data(now: Answers, was: Answers | None, before: Data) -> Data:
    data = copy.deepcopy(before)
    if was is None or not before or now.two_week != was.two_week or now.week_a != was.week_a:
        data["two_week"] = now.two_week
        if now.week_a is not None:
            data["week_a"] = now.week_a
        else:
            data.pop("week_a", None)
    if was is None or now.terms != was.terms:
        data["terms"] = [
            {"name": term.name, "first": term.first, "last": term.last} for term in now.terms
        ]
    if was is None or now.closed != was.closed:
        data["closed"] = [_closed_data(closed) for closed in now.closed]
        if not now.closed:
            del data["closed"]
    return data


def _closed_data(closed: Closed) -> Data:
    last = {} if closed.last == closed.first else {"last": closed.last}
    return {"first": closed.first, **last, "why": closed.why}


def _scheme_data(scheme: SchemeAnswer, before: Data) -> Data:
    data = copy.deepcopy(before)
    if before and _scheme_answer(scheme.name, before) == scheme:
        return data
    data["year"] = scheme.year
    data["topics"] = [
        {"topic": topic.topic, "taught": topic.taught}
        if topic.taught is not None
        else {"topic": topic.topic, "week": topic.week}
        for topic in scheme.topics
    ]
    return data


def _bands_data(bands: BandsAnswer, before: Data) -> Data:
    if not bands.names:
        return {"out_of": bands.out_of, "cuts": list(bands.cuts)}
    data: Data = {"out_of": bands.out_of} if bands.cuts else {}
    rows = before.get("band", [])
    if len(rows) != len(bands.names):
        rows = [
            {"shape": sign.shape, "colour": sign.colour, "colour_name": sign.colour_name}
            for sign in DEFAULT_SIGNS.get(len(bands.names), ())
        ]
    found = []
    own = {
        name: str(row.get("letter", ""))
        for name, row in zip(bands.names, rows, strict=False)
        if row.get("name") == name
    }
    for place, (name, letter) in enumerate(
        zip(bands.names, letters(bands.names, own), strict=True)
    ):
        row = copy.deepcopy(rows[place]) if rows else {}
        if row.get("name") != name:
            row = {"name": name, "letter": letter} | {
                key: value for key, value in row.items() if key not in ("name", "letter")
            }
        # Where one band begins the one below it ends, so the lowest scores say it all.
        row.pop("lowest", None)
        row.pop("highest", None)
        if bands.cuts:
            lowest = (0, *bands.cuts)
            row["lowest"] = lowest[place] if place < len(lowest) else 0
        # In TOML a table within a table comes after the plain values.
        nested = {key: row.pop(key) for key in list(row) if isinstance(row[key], dict)}
        found.append(row | nested)
    return {**data, "band": found}


def letters(names: Sequence[str], own: Mapping[str, str] | None = None) -> list[str]:
    """Return a letter for each band's name, no two alike: its first that is free, else a digit.

    `own` are letters that names have already.

    >>> letters(["Red", "Amber", "Green"]), letters(["Start", "Steady", "S"])
    (['R', 'A', 'G'], ['S', 'T', '3'])
    """
    kept = own or {}
    taken = {letter.upper() for letter in kept.values()}
    found: list[str] = []
    for place, name in enumerate(names, 1):
        free = [char.upper() for char in name if char.isalpha() and char.upper() not in taken]
        found.append(kept.get(name) or (free[0] if free else str(place)))
        taken.add(found[-1].upper())
    return found
