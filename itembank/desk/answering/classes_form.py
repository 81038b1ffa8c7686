"""Classes as a form: a row for each, with its lessons and its seats as they are typed."""

from __future__ import annotations

import re
from dataclasses import replace

from itembank.desk.answering.reading import Fields, Reading, row, rows_typed
from itembank.errors import ItembankError
from itembank.text.folding import same_name
from itembank.work.department.answered import Answers, ClassAnswer
from itembank.work.department.as_files import seat_rows
from itembank.work.department.joined_answers import with_classes
from itembank.work.department.pasted.pasted_classes import read_pasted_classes, seats_told
from itembank.work.department.pasted.pasted_lessons import read_pasted_lessons

NAMES = ("name", "year", "teacher", "lessons", "seats", "was", "out")


def classes_fields(answers: Answers) -> dict[str, str]:
    """Return the fields that show the classes as they are answered."""
    found = {}
    for place, group in enumerate(answers.classes):
        here = f"class-{place}"
        found[f"{here}-name"] = group.name
        found[f"{here}-was"] = group.name
        found[f"{here}-year"] = "" if group.year is None else str(group.year)
        found[f"{here}-teacher"] = group.teacher
        found[f"{here}-lessons"] = ", ".join(map(str, group.lessons))
        found[f"{here}-seats"] = ", ".join(seat_rows(group.seats))
    return found


def read_classes(fields: Fields, answers: Answers) -> Reading:
    """Return answers with the classes that a form says."""
    reading = Reading(answers)
    found: list[ClassAnswer] = []
    for number in range(rows_typed(fields, "class")):
        here = row(fields, "class", number, NAMES)
        told = {name: value for name, value in here.items() if name not in ("was", "out")}
        if here["out"] or not any(here.values()):
            continue
        if here["was"] and not any(told.values()):
            reading.faults[f"class-{number}-name"] = (
                f"Tick ‘take out’ to take {here['was']} out, or give it its name again."
            )
            continue
        for name in ("name", "year", "teacher", "lessons", "seats"):
            reading.at[("classes", len(found), name)] = f"class-{number}-{name}"
        reading.at[("classes", len(found))] = f"class-{number}-name"
        reading.at[("classes", len(found), "scheme")] = f"class-{number}-year"
        was = next(
            (group for group in answers.classes if same_name(group.name, here["was"])),
            ClassAnswer(),
        )
        found.append(_read_class(here, was, f"class-{number}", reading))
    reading.answers = replace(answers, classes=tuple(found))
    return reading


def _read_class(
    here: dict[str, str], was: ClassAnswer, row_name: str, reading: Reading
) -> ClassAnswer:
    year = was.year
    begins = re.match(r"\d+", here["name"])
    typed = here["year"] or (begins[0] if begins else "")
    match = re.fullmatch(r"(?:y(?:ea)?r?\.?\s*)?(\d{1,2})", typed, re.I)
    if match and 1 <= int(match[1]) <= 13:
        year = int(match[1])
    elif here["year"]:
        reading.faults[f"{row_name}-year"] = "A year group is a number from 1 to 13."
    elif begins is None:
        year = None
    try:
        lessons = read_pasted_lessons(here["lessons"]) if here["lessons"] else ()
    except ItembankError as error:
        lessons = was.lessons
        reading.faults[f"{row_name}-lessons"] = str(error)
    seats, fault = seats_told(here["seats"]) if here["seats"] else ((), "")
    if fault:
        seats = was.seats
        reading.faults[f"{row_name}-seats"] = fault
    # The scheme of another year is none of this class's any more.
    scheme = was.scheme if year == was.year else ""
    return replace(
        was,
        name=here["name"],
        year=year,
        teacher=re.sub(r"[.\s]", "", here["teacher"]).upper(),
        lessons=tuple(dict.fromkeys(lessons)),
        seats=tuple(dict.fromkeys(seats)),
        scheme=scheme,
    )


def paste_classes(text: str, answers: Answers) -> Reading:
    """Return answers with classes as pasted: added, or changed where there is one of the name."""
    read = read_pasted_classes(text)
    if read.wrong:
        return Reading(answers, general=[str(fault) for fault in read.wrong])
    return Reading(with_classes(answers, read.found), remarks=read.remarks)
