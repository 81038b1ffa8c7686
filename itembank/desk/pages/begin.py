"""The first day: a department made by answering, one part a page; nothing answered is lost."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from itembank.desk.answering.answer_steps import (
    faults_of,
    fields_of,
    read_step,
    rows_shown,
    step_at,
    steps_of,
)
from itembank.desk.answering.reading import Reading
from itembank.desk.replying.forms import action, fields_typed
from itembank.desk.replying.replies import onward, page, url
from itembank.errors import SeveralErrors
from itembank.today import today
from itembank.work.usual_home import is_department, own_home

if TYPE_CHECKING:
    from itembank.desk.replying.desk import Desk
    from itembank.work.department.answered import Answers

WHOLE = "whole"


def place_for_own(desk: Desk) -> Path:
    """Return the folder in which a person's own department is, or will be."""
    return own_home() if is_department(desk.home) else desk.home


def _so_far(desk: Desk) -> Answers:
    from itembank.work.department.answered import Answers
    from itembank.work.department.made import refuse_department
    from itembank.work.department.so_far import read_so_far

    folder = place_for_own(desk)
    refuse_department(folder)
    return read_so_far(folder) or Answers()


def begin(request: Request) -> Response:
    """Go on where answers are missing, or show the way to the department that is there."""
    from itembank.work.department.looked_at import look_at

    desk: Desk = request.app.state.desk
    folder = place_for_own(desk)
    if is_department(folder):
        return page(request, "begin_there", home=folder)
    answers = _so_far(desk)
    look = look_at(answers, folder)
    open_steps = [
        step.address
        for step in steps_of(answers)
        if faults_of(step, answers, (*look.missing, *look.wrong))
    ]
    return onward(url("begin", open_steps[0] if open_steps else WHOLE))


def open_own(request: Request, form: FormData) -> Response:
    """Open the person's own department."""
    desk: Desk = request.app.state.desk
    folder = place_for_own(desk)
    if is_department(folder):
        desk.move_to(folder)
    return onward("/")


def show(request: Request) -> Response:
    """Show a part as it is answered so far."""
    desk: Desk = request.app.state.desk
    answers = _so_far(desk)
    step = step_at(answers, request.path_params["step"])
    fields = fields_of(step, answers)
    return _page(request, answers, step.address, fields, Reading(answers))


def _page(
    request: Request, answers: Answers, address: str, fields: dict[str, str], reading: Reading
) -> Response:
    from itembank.work.department.looked_at import known_topics
    from itembank.work.department.outlook import outlook_on

    steps = steps_of(answers)
    step = step_at(answers, address)
    place = [step.address for step in steps].index(address)
    return page(
        request,
        "begin",
        status=200 if reading.sound else 400,
        steps=steps,
        step=step,
        place=place,
        fields=fields,
        rows=rows_shown(step, fields),
        reading=reading,
        outlook=outlook_on(answers),
        titles=sorted(known_topics()[0].values()) if step.scheme else (),
        changing=False,
        action=url("begin", address),
    )


def answer(request: Request, form: FormData) -> Response:
    """Keep what a part's form says, and go on; or show it again with what is wrong."""
    from itembank.work.department.looked_at import look_at
    from itembank.work.department.so_far import keep_so_far

    desk: Desk = request.app.state.desk
    before, folder = _so_far(desk), place_for_own(desk)
    step = step_at(before, request.path_params["step"])
    fields = fields_typed(form)
    do = fields.get("do", "")
    reading = read_step(step, fields, before)
    answers = reading.answers
    # Kept with its faults too, so that nobody types anything twice.
    if answers != before:
        keep_so_far(folder, answers)
    if reading.sound:
        look = look_at(answers, folder)
        there = step_at(answers, step.address) if _still(answers, step.address) else step
        wrong = faults_of(there, answers, look.wrong)
        missing = faults_of(there, answers, look.missing) if do == "on" else []
        if do not in ("back", "paste", "ready") and not do.startswith("to:"):
            reading.note([*wrong, *missing])
    if not reading.sound:
        return _page(request, answers, step.address, fields, reading)
    said = " ".join(reading.remarks)
    return onward(url("begin", _next(answers, step.address, do)), said, "note")


def _still(answers: Answers, address: str) -> bool:
    return any(step.address == address for step in steps_of(answers))


def _next(answers: Answers, address: str, do: str) -> str:
    """Return the address of the step to show after one."""
    order = [*(step.address for step in steps_of(answers)), WHOLE]
    if do.startswith("to:"):
        return do[3:] if do[3:] in order else address
    place = order.index(address) if address in order else 0
    if do == "on":
        return order[place + 1]
    return order[max(place - 1, 0)] if do == "back" else address


def whole(request: Request) -> Response:
    """Show all that was answered, and what is missing in it."""
    desk: Desk = request.app.state.desk
    return _whole(request, _so_far(desk), place_for_own(desk))


def _whole(request: Request, answers: Answers, folder: Path, status: int = 200) -> Response:
    from itembank.work.department.looked_at import look_at
    from itembank.work.department.outlook import outlook_on

    look = look_at(answers, folder)
    every = (*look.missing, *look.wrong)
    steps = steps_of(answers)
    open_steps = [(step, faults_of(step, answers, every)) for step in steps]
    return page(
        request,
        "begin_whole",
        status=status,
        steps=steps,
        open_steps=[(step, faults) for step, faults in open_steps if faults],
        ready=look.ready,
        remarks=look.remarks,
        outlook=outlook_on(answers),
        home=folder,
    )


def make(request: Request, form: FormData) -> Response:
    """Make the department, whole, and be its desk."""
    from itembank.work.department.made import make_department

    desk: Desk = request.app.state.desk
    answers, folder = _so_far(desk), place_for_own(desk)
    try:
        make_department(folder, answers)
    except SeveralErrors:
        return _whole(request, answers, folder, 400)
    desk.move_to(folder)
    return onward("/begin/made", "Your department is made.")


def made(request: Request) -> Response:
    """Show that it is made, with the first week of each class one press away."""
    from itembank.planning.calendar.calendar import monday
    from itembank.work.department.first_week import first_day_with_starters

    desk: Desk = request.app.state.desk
    folder = desk.folder()
    first = first_day_with_starters(folder.calendar, today())
    return page(
        request,
        "begin_made",
        home=desk.home,
        first=monday(first) if first else None,
        groups=folder.department.classes,
    )


ROUTES = [
    Route("/begin", begin),
    Route("/begin/open", action(open_own), methods=["POST"]),
    Route("/begin/made", made),
    Route(f"/begin/{WHOLE}", whole),
    Route("/begin/make", action(make), methods=["POST"]),
    Route("/begin/{step}", show),
    Route("/begin/{step}", action(answer), methods=["POST"]),
]
