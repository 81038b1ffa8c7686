"""How a starter went: hands counted with one tap each, right answers by question, or a sheet."""

from __future__ import annotations

import tempfile
from pathlib import Path
from typing import TYPE_CHECKING, Any

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from itembank.desk.replying.forms import action, fields_typed, number, text
from itembank.desk.replying.lesson_at import LESSON, find
from itembank.desk.replying.record_form import asked_of, marks_typed, request_of, without_file
from itembank.desk.replying.replies import onward, page
from itembank.errors import ItembankError, NotFound
from itembank.records.entries.entries import LEVELS
from itembank.work.lesson.record_request import RecordRequest

if TYPE_CHECKING:
    from collections.abc import Sequence


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
        asked, faults = asked_of(found, marks_typed(wanted)), list(faults)
    except ItembankError as error:
        if error.field != "out_of":
            raise
        asked, faults = asked_of(found), [str(error)]
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
            wanted = request_of(found, form, how, sheet)
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
            said = without_file(str(error), sheet, form, how, found)
            typed = fields_typed(form)
            typed["how"] = how
            lines, marks = said.splitlines(), text(form, "out_of")
            of_seats = "seats of the class" in error.matters
            return _form(
                request, "record", marks, lines, status=400, typed=typed, of_seats=of_seats
            )
    remarks = " ".join(str(remark) for remark in recorded.remarks)
    said = f"{recorded.done.value.capitalize()}. {remarks}".strip()
    return onward(found.where + "#after", said)


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
