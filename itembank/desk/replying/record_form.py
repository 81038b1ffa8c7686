"""The form that says how a starter went: what it asks about, and what it says when it is sent."""

from __future__ import annotations

import re
from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING, Any

from starlette.datastructures import FormData

from itembank.data_class import dataclass
from itembank.desk.replying.forms import number, text
from itembank.desk.replying.lesson_at import Found
from itembank.errors import ItembankError
from itembank.files.private import write_private
from itembank.planning.bands.bands import MOST_MARKS
from itembank.records.entries.entries import LEVELS, OwnViews
from itembank.text.whole_number import whole_number
from itembank.work.lesson.record_request import RecordRequest

if TYPE_CHECKING:
    from collections.abc import Sequence

    from itembank.planning.department.department import SchoolClass
    from itembank.records.entries.entries import LessonFacts


@dataclass(frozen=True, slots=True)
class Asked:
    """What a lesson's form is about: its bands and questions, from its pack, and its seats.

    `out_of` are the marks that the teacher says the starter had; None where they are known.
    """

    bands: Sequence[Any]
    questions: Sequence[Any]
    seats: Sequence[str]
    out_of: int | None = None


def asked_of(found: Found, out_of: int | None = None) -> Asked:
    """Return what the class was asked: what is noted that it was asked instead, or its pack.

    Where there is neither, nothing is known of it but the marks: those it was recorded with, or
    else `out_of`, or as many as the class's starters have.
    """
    group = found.planner.school_class
    if (instead := found.instead()) is not None:
        return _by_facts(found, instead.starter.facts)
    pack = found.pack()
    if pack is not None:
        return Asked(pack["bands"], pack["versions"][0]["items"], group.plan.seats)
    if (known := found.known()) is not None:
        return _by_facts(found, known.facts)
    marks = group.questions if out_of is None else out_of
    return Asked(_bands(group, marks), (), group.plan.seats, marks)


def _by_facts(found: Found, facts: LessonFacts) -> Asked:
    """Return what the form is about where no pack says it."""
    group, title = found.planner.school_class, found.planner.title
    questions = [
        {"prompt": [{"kind": "text", "text": f"{title(question.topic)}: {question.prompt}"}]}
        for question in facts.questions
    ]
    return Asked(_bands(group, facts.out_of), questions, group.plan.seats)


def _bands(group: SchoolClass, marks: int) -> list[dict[str, Any]]:
    return [asdict(band) for band in group.bands.bands(marks)]


def marks_typed(typed: str) -> int | None:
    """Return how many marks the starter had as the teacher says; None where that is not said.

    Raises:
        ItembankError: no starter has so many.
    """
    if not typed:
        return None
    marks = whole_number(typed)
    if marks is None or not 1 <= marks <= MOST_MARKS:
        raise ItembankError(
            f"A starter has 1 to {MOST_MARKS} marks, not ‘{typed[:40]}’.", field="out_of"
        )
    return marks


def without_file(said: str, sheet: Path, form: FormData, how: str, found: Found) -> str:
    """Return what is wrong without the file that holds it; of scores by seat with the seat."""
    if how == "seats":
        scores = ((seat, text(form, f"score-{seat}")) for seat in asked_of(found).seats)
        lines = ["", "", *(seat for seat, score in scores if score)]
        said = re.sub(
            rf"{re.escape(str(sheet))}, line (\d+)",
            lambda at: f"Seat {lines[int(at[1])]}" if int(at[1]) < len(lines) else at[0],
            said,
        )
    said = said.replace(f"{sheet}, line ", "Line ").replace(f"{sheet}: there", "There")
    return said.replace(str(sheet), "what you typed")


def request_of(found: Found, form: FormData, how: str, sheet: Path) -> RecordRequest:
    """Return what a form says of a lesson; a table in it goes to the file `sheet`.

    Raises:
        ItembankError: a field makes no sense, or the form says nothing.
    """
    asked = asked_of(found, marks_typed(text(form, "out_of")))
    given: dict[str, Any] = {}
    if how == "bands":
        counts = [
            number(form, f"band-{place}", band["name"]) or 0
            for place, band in enumerate(asked.bands)
        ]
        given["bands"] = counts
    elif how == "right":
        told = [
            number(form, f"right-{place}", f"Question {place}")
            for place in range(1, len(asked.questions) + 1)
        ]
        while told and told[-1] is None:
            told.pop()
        if not told:
            raise ItembankError("No question has a number of right answers yet.")
        if None in told:
            raise ItembankError("A question in between has no number: 0 means nobody had it right.")
        given["right"] = told
        given["pupils"] = number(form, "pupils", "Pupils there")
    elif how == "slips":
        codes = text(form, "slips")
        if not codes:
            raise ItembankError("Paste the codes of the slips first, one a line.")
        # As a file: a text could name one, and nobody at the desk is to have it read.
        write_private(sheet, f"{codes}\n".encode())
        given["slips"] = sheet
    elif how in ("seats", "table"):
        write_private(sheet, _table(form, how, asked.seats).encode())
        given["sheet"] = sheet
    elif how != "beside":
        raise ItembankError("The form does not say how the starter went.")
    stopped = text(form, "stopped")
    if stopped and how in ("bands", "right", "seats"):
        given["asked"] = stopped
    given |= _beside(form)
    return RecordRequest(
        class_name=found.week.class_name,
        date=found.lesson.date,
        period=found.period,
        # Where something else was asked, the lesson's own pack is not what results are about.
        pack=None if found.instead() else found.lesson.folder,
        packs=found.desk.packs,
        out_of=asked.out_of,
        replace=text(form, "there") == "replace",
        add=text(form, "there") == "add",
        **given,
    )


def _table(form: FormData, how: str, seats: Sequence[str]) -> str:
    """Return what was typed by seat, or pasted from a spreadsheet, as the text of a CSV."""
    if how == "table":
        pasted = text(form, "table")
        if not pasted:
            raise ItembankError("Paste a table first: a column of seats, then scores or answers.")
        return pasted
    rows = [(seat, text(form, f"score-{seat}")) for seat in seats]
    lines = [f"{seat},{score}" for seat, score in rows if score]
    if not lines:
        raise ItembankError("No seat has a score yet.")
    if any("," in score or "\n" in score for _, score in rows):
        raise ItembankError("A score is one number.")
    return "\n".join(["seat,score", *lines]) + "\n"


def _beside(form: FormData) -> dict[str, Any]:
    """Return pupils' own views and what was unclear, where the form says anything of them."""
    given: dict[str, Any] = {}
    views = {level: number(form, f"view-{level}", level.capitalize()) for level in LEVELS}
    if any(value is not None for value in views.values()):
        given["own_view"] = OwnViews({}, {level: value or 0 for level, value in views.items()})
    unclear = number(form, "unclear", "How many asked what to do")
    note = text(form, "note")
    if unclear is not None:
        given["unclear"] = unclear
    if note:
        given["note"] = note
    return given
