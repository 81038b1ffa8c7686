"""A part of what was answered about the department, to be changed."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from itembank.desk.answering.answer_steps import (
    Step,
    faults_of,
    fields_of,
    read_step,
    rows_shown,
    step_at,
    steps_of,
)
from itembank.desk.answering.reading import Reading
from itembank.desk.answering.set_up_at import (
    CHANGED,
    digest_of,
    kept_of,
    read_then,
)
from itembank.desk.answering.topics_form import ready_topics
from itembank.desk.replying.forms import action, fields_typed
from itembank.desk.replying.replies import onward, page, url
from itembank.errors import NotFound

if TYPE_CHECKING:
    from itembank.work.department.answered import Answers
    from itembank.work.department.made import Kept


def _step(request: Request, answers: Answers) -> Step:
    step = step_at(answers, request.path_params["step"])
    if step.part == "bands":
        raise NotFound("Nothing of that name is set up here.")
    return step


def show(request: Request) -> Response:
    """Show a part of what was answered."""
    kept = kept_of(request)
    step = _step(request, kept.answers)
    return _part(request, kept, step, fields_of(step, kept.answers), Reading(kept.answers))


def _part(
    request: Request,
    kept: Kept,
    step: Step,
    fields: Mapping[str, str],
    reading: Reading,
    status: int = 400,
) -> Response:
    from itembank.work.department.looked_at import known_topics
    from itembank.work.department.outlook import outlook_on

    return page(
        request,
        "set_up_part",
        status=200 if reading.sound else status,
        step=step,
        fields=fields,
        rows=rows_shown(step, fields),
        reading=reading,
        outlook=outlook_on(kept.answers),
        titles=sorted(known_topics()[0].values()) if step.scheme else (),
        digest=read_then(kept, fields, status),
    )


def change(request: Request, form: FormData) -> Response:
    """Change a part of what was answered, or show its form again with what is wrong."""
    from itembank.work.department.class_renamed import renaming_said
    from itembank.work.department.looked_at import look_at
    from itembank.work.department.made import change_department
    from itembank.work.department.new_year import in_new_year, without_days_taught

    kept = kept_of(request)
    step, fields = _step(request, kept.answers), fields_typed(form)
    reading = read_step(step, fields, kept.answers)
    if reading.sound and fields.get("digest") != digest_of(kept):
        reading.general.append(CHANGED)
        return _part(request, kept, step, fields, reading, 409)
    before = kept.files
    if reading.sound:
        if step.part == "year" and fields.get("new_year"):
            reading.answers = in_new_year(kept.answers, reading.answers)
            before = without_days_taught(before)
        if step.part == "classes":
            _give_topics(reading)
        look = look_at(reading.answers, kept.folder, before)
        every = (*look.missing, *look.wrong)
        mine = faults_of(step, reading.answers, every)
        reading.note(mine or [fault for fault in every if fault.part != "topics"])
        others = [fault for fault in every if fault.part == "topics" and fault not in mine]
        reading.general += [str(fault) for fault in others]
    if not reading.sound:
        return _part(request, kept, step, fields, reading)
    along = renaming_said(kept.folder, reading.answers)
    changed = change_department(kept, reading.answers, before)
    said = "Changed." if changed else "Nothing was changed: it says that already."
    return onward(url("set-up", step.address), " ".join((said, along, *reading.remarks)).strip())


def _give_topics(reading: Reading) -> None:
    """Give each year that has no topics yet an order to begin from, and say so."""
    for step in steps_of(reading.answers):
        known = {scheme.name for scheme in reading.answers.schemes}
        if step.scheme is not None and step.scheme.name not in known:
            reading.answers = ready_topics(reading.answers, step.scheme).answers
            said = f"Year {step.scheme.year} begins from a ready order of topics: look at it here."
            reading.remarks = (*reading.remarks, said)


ROUTES = [
    Route("/set-up/{step}", show),
    Route("/set-up/{step}", action(change), methods=["POST"]),
]
