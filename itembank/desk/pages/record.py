"""How a starter went: hands counted with one tap each, right answers by question, or a sheet."""

from __future__ import annotations

import re
import tempfile
from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING, Any

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from itembank.data_class import dataclass
from itembank.desk.pages.lesson import LESSON, Found, find
from itembank.desk.replying.forms import action, number, text
from itembank.desk.replying.replies import onward, page
from itembank.errors import ItembankError, NotFound
from itembank.files.private import write_private
from itembank.records.entries.entries import LEVELS, OwnViews
from itembank.text.whole_number import whole_number
from itembank.work.lesson.lesson_starter import MOST_MARKS
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


def _asked(found: Found, out_of: int | None = None) -> Asked:
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


def _marks_typed(typed: str) -> int | None:
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


def count(request: Request) -> Response:
    """Show the counting of hands, one tap each."""
    return _form(request, "count")


def show(request: Request) -> Response:
    """Show every way to say how a starter went."""
    return _form(request, "record", typed={"how": ""}, of_seats=False)


def _form(
    request: Request, name: str, out_of: str = "", faults: Sequence[str] = (), **more: Any
) -> Response:
    """Return a form of a lesson; `out_of` are the marks of its starter where nothing knows them."""
    found = find(request)
    wanted = out_of or request.query_params.get("out_of", "").strip()
    try:
        asked, faults = _asked(found, _marks_typed(wanted)), list(faults)
    except ItembankError as error:
        if error.field != "out_of":
            raise
        asked, faults = _asked(found), [str(error)]
    return page(
        request,
        name,
        group=found.planner.school_class,
        week=found.week,
        lesson=found.lesson,
        where=found.where,
        asked=asked,
        faults=faults,
        views=LEVELS,
        **more,
    )


def record(request: Request, form: FormData) -> Response:
    """Record what a form says; what is recorded already is replaced or joined only when asked."""
    from itembank.work.lesson.record import record as record_lesson

    found = find(request)
    how = text(form, "how")
    with tempfile.TemporaryDirectory(prefix="itembank-") as folder:
        sheet = Path(folder) / "sheet.csv"
        try:
            wanted = _request(found, form, how, sheet)
            recorded = record_lesson(found.desk.department, wanted)
        except ItembankError as error:
            if error.matter == "recorded already":
                sent = [(name, value) for name, value in form.multi_items() if name != "there"]
                return page(
                    request,
                    "recorded_already",
                    status=409,
                    group=found.planner.school_class,
                    lesson=found.lesson,
                    where=found.where,
                    words=str(error),
                    sent=sent,
                )
            if isinstance(error, NotFound):
                raise
            # What was typed or pasted has no file for its teacher, and is not to be typed again.
            said = _without_file(str(error), sheet, form, how, found)
            typed = {name: value for name, value in form.items() if isinstance(value, str)}
            typed["how"] = how
            lines, marks = said.splitlines(), text(form, "out_of")
            of_seats = "seats of the class" in error.matters
            return _form(
                request, "record", marks, lines, status=400, typed=typed, of_seats=of_seats
            )
    remarks = " ".join(str(remark) for remark in recorded.remarks)
    said = f"{recorded.done.value.capitalize()}. {remarks}".strip()
    return onward(found.where + "#after", said)


def _without_file(said: str, sheet: Path, form: FormData, how: str, found: Found) -> str:
    """Return what is wrong without the file that holds it; of scores by seat with the seat."""
    if how == "seats":
        scores = ((seat, text(form, f"score-{seat}")) for seat in _asked(found).seats)
        lines = ["", "", *(seat for seat, score in scores if score)]
        said = re.sub(
            rf"{re.escape(str(sheet))}, line (\d+)",
            lambda at: f"Seat {lines[int(at[1])]}" if int(at[1]) < len(lines) else at[0],
            said,
        )
    said = said.replace(f"{sheet}, line ", "Line ").replace(f"{sheet}: there", "There")
    return said.replace(str(sheet), "what you typed")


def _request(found: Found, form: FormData, how: str, sheet: Path) -> RecordRequest:
    """Return what a form says of a lesson; a table in it goes to the file `sheet`.

    Raises:
        ItembankError: a field makes no sense, or the form says nothing.
    """
    asked = _asked(found, _marks_typed(text(form, "out_of")))
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


def put_right(request: Request, form: FormData) -> Response:
    """Record one seat again: whether an answer of its is right, or its score."""
    from itembank.work.lesson.record import record as record_lesson

    found = find(request)
    seat, question = text(form, "seat").upper(), number(form, "question", "Question")
    value: int | bool | None
    if question is None:
        value = number(form, "score", "Right answers")
    else:
        value = {"right": True, "wrong": False}.get(text(form, "is"))
    if not seat or value is None:
        raise ItembankError("Say which seat is to be put right, and what is right.")
    record_lesson(
        found.desk.department,
        RecordRequest(
            class_name=found.week.class_name,
            date=found.lesson.date,
            period=found.period,
            correct=((seat, question, value),),
        ),
    )
    said = f"Put right: {seat}" + (f", question {question}." if question is not None else ".")
    return onward(found.where + "#after", said)


def take_back(request: Request, form: FormData) -> Response:
    """Take back what was recorded last of this lesson, as the page named it."""
    from itembank.work.lesson.undo import take_back_of_lesson

    found = find(request)
    name, lesson = found.week.class_name, found.lesson
    taken = take_back_of_lesson(
        found.desk.department, name, lesson.date, lesson.period, text(form, "last")
    )
    more = " What it had replaced counts again." if taken.counts_again else ""
    return onward(found.where + "#after", f"Taken back: {taken.last.words}.{more}")


ROUTES = [
    Route(LESSON + "/count", count),
    Route(LESSON + "/record", show),
    Route(LESSON + "/record", action(record), methods=["POST"]),
    Route(LESSON + "/put-right", action(put_right), methods=["POST"]),
    Route(LESSON + "/take-back", action(take_back), methods=["POST"]),
]
