"""Pupils who change seat or class, or leave; and a seat or a class that is forgotten for good."""

from __future__ import annotations

from collections import defaultdict
from typing import TYPE_CHECKING

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from itembank.desk.replying.forms import action, day, day_in, fields_typed, text
from itembank.desk.replying.replies import onward, page, url
from itembank.errors import ItembankError
from itembank.text.in_words import counted, day_month_year, short_day
from itembank.today import today

if TYPE_CHECKING:
    from itembank.desk.replying.desk import Desk
    from itembank.planning.department.department import SchoolClass
    from itembank.work.lesson.forget import ForgottenNow


def show(request: Request) -> Response:
    """Show the forms for pupils who move and for what is forgotten."""
    seat = request.query_params.get("seat", "")
    return _show(request, _group(request), {"seat": seat, "forget_seat": seat})


def _group(request: Request) -> SchoolClass:
    desk: Desk = request.app.state.desk
    return desk.group(request.path_params["name"])


def _show(request: Request, group: SchoolClass, typed: dict[str, str], fault: str = "") -> Response:
    from itembank.work.lesson.undo import last_move

    desk: Desk = request.app.state.desk
    last = last_move(desk.department, group.name)
    return page(
        request,
        "moving",
        status=400 if fault else 200,
        group=group,
        typed=defaultdict(str, typed),
        fault=fault,
        seats=group.plan.seats,
        last=None if last is None else last.words,
        now=today(),
    )


def move(request: Request, form: FormData) -> Response:
    """Move a pupil to another seat or class, or away."""
    from itembank.work.lesson.move import move as move_pupils

    desk: Desk = request.app.state.desk
    group = _group(request)
    try:
        source = f"{group.name}/{_needed(form, 'seat', 'the seat now')}"
        away = text(form, "to_class") == "away"
        target = (
            "away"
            if away
            else f"{text(form, 'to_class')}/{_needed(form, 'to_seat', 'the seat to come')}"
        )
        date = day_in(form, "date")
        moved = move_pupils(desk.department, [(source, target)], date=date)
    except ItembankError as error:
        typed = fields_typed(form)
        return _show(request, group, typed, str(error))
    said = f"Moved: {moved.moves[0]}, from {day_month_year(moved.date)} on."
    if not moved.recorded:
        said += " Nothing is recorded by seat yet of this pupil."
    elif moved.classes:
        said += f" What was recorded counts for {moved.classes[0]} now."
    return onward(url("class", group.name, "moving"), said)


def undo(request: Request, form: FormData) -> Response:
    """Take back the last move of a class's pupils, if it is still the one that was shown."""
    from itembank.work.lesson.undo import last_move
    from itembank.work.lesson.undo import undo as take_back

    desk: Desk = request.app.state.desk
    group = _group(request)
    last = last_move(desk.department, group.name)
    if last is None or last.words != text(form, "words"):
        raise ItembankError("Something else was recorded meanwhile. Nothing was taken back.")
    taken = take_back(desk.department, group.name, expected=last)
    return onward(url("class", group.name, "moving"), f"Taken back: {taken.last.words}.")


def preview(request: Request) -> Response:
    """Show what would be forgotten, and ask for its name."""
    asked = request.query_params
    return _preview(request, asked.get("seat", "").strip(), asked.get("before", "").strip())


def _preview(
    request: Request, seat: str, before: str, fault: str = "", typed: str = ""
) -> Response:
    from itembank.work.lesson.forget import large_print_for, to_forget, whom_of

    desk: Desk = request.app.state.desk
    group = _group(request)
    try:
        until = day(before) if before else None
        what = to_forget(desk.department, whom_of(seat or None, group.name, until))
    except ItembankError as error:
        return _show(request, group, {"forget_seat": seat, "before": before}, str(error))
    return page(
        request,
        "forget",
        status=400 if fault else 200,
        group=group,
        what=what,
        seat=what.whom.seat,
        before=before,
        name=_name(group, what.whom.seat),
        copies=large_print_for(what.whom, desk.packs),
        fault=fault,
        typed=typed,
    )


def _name(group: SchoolClass, seat: str) -> str:
    """Return what has to be typed to forget a seat, or the class."""
    return f"{group.name}/{seat}" if seat else group.name


def forget(request: Request, form: FormData) -> Response:
    """Forget a seat or a class for good, once its name was typed."""
    from itembank.text.folding import same_name
    from itembank.work.lesson.forget import forget as forget_now
    from itembank.work.lesson.forget import to_forget, whom_of

    desk: Desk = request.app.state.desk
    group = _group(request)
    seat, before, typed = text(form, "seat"), text(form, "before"), text(form, "typed")
    whom = whom_of(seat or None, group.name, day(before) if before else None)
    wanted = _name(group, whom.seat)
    if not same_name(typed, wanted):
        fault = f"Type {wanted} to forget it. Nothing was forgotten."
        return _preview(request, seat, before, fault, typed)
    what = to_forget(desk.department, whom)
    now = forget_now(desk.department, whom)
    said = [f"{what.counted} removed: {whom}.", *_told(now)]
    if now.listed:
        said.append(f"{now.listed} is still on the list of the set-up; take it out there.")
    if now.unheard:
        said.append(f"{now.unheard} Is it mistyped?")
    said += [
        f"The pack {path.name} holds large-print copies with that seat; delete it if no longer "
        "needed."
        for path in now.copies
    ]
    said += [
        f"{forgetting.whom}, begun on {short_day(forgetting.begun_at)}, is not done yet."
        for forgetting in now.unfinished
    ]
    kind = "done" if now.forgotten.done else "note"
    return onward(url("class", group.name, "moving"), " ".join(said), kind)


def go_on(request: Request, form: FormData) -> Response:
    """Go on with all that was begun to be forgotten and is not done."""
    from itembank.work.lesson.forget import finish_forgetting

    desk: Desk = request.app.state.desk
    where = url("class", _group(request).name, "moving")
    finished = finish_forgetting(desk.department)
    if not finished:
        return onward(where, "Nothing was begun to be forgotten that is not done.")
    done = all(forgotten.forgotten.done for forgotten in finished)
    said = " ".join(line for forgotten in finished for line in _told(forgotten))
    return onward(where, said, "done" if done else "note")


def _told(now: ForgottenNow) -> list[str]:
    """Return what became of notes and files, and what is left for a person to see to."""
    done = now.forgotten
    said = []
    if done.cut:
        said.append(
            f"The seat is cut from {counted(done.cut, 'note or title', 'notes and titles')}."
        )
    said += [f"Written anew without it: {path}." for path in done.rewritten]
    said += [f"A part of an export that was broken off, deleted: {path}." for path in done.parts]
    said += [
        f"An export that is no longer where it was written; if it was moved, delete it: {path}."
        for path in done.gone
    ]
    said += [
        f"The pupil had another seat, and is forgotten there too: {seat}." for seat in done.moved
    ]
    said += [
        f"A note or title with that number, which may mean the seat: {note}." for note in done.notes
    ]
    said += [
        f"Not clean yet: {path}: {why}. Put that right, or delete the file."
        for path, why in done.left
    ]
    said += [
        f"Not clean yet: {path} is a copy of the results, and may hold what is nowhere else. Have "
        "that brought in before you delete it."
        for path in done.copies
    ]
    if done.unswept:
        said.append(f"Unused parts of the results may still hold it. {done.unswept}")
    if now.shared:
        said.append(
            "The results are on a server: its unused rows, its log and its backups may keep "
            "copies. Ask whoever looks after it."
        )
    if done.done:
        said.append(f"Forgotten: {now.whom}." if now.whom is not None else "Swept.")
    else:
        said.append("Not finished: when you have seen to that, go on with it below.")
    return said


def _needed(form: FormData, name: str, called: str) -> str:
    typed = text(form, name)
    if not typed:
        raise ItembankError(f"Say {called}.", field=name)
    return typed


MOVING = "/class/{name}/moving"
ROUTES = [
    Route(MOVING, show),
    Route(MOVING + "/move", action(move), methods=["POST"]),
    Route(MOVING + "/take-back", action(undo), methods=["POST"]),
    Route(MOVING + "/forget", preview),
    Route(MOVING + "/forget", action(forget), methods=["POST"]),
    Route(MOVING + "/forget/go-on", action(go_on), methods=["POST"]),
]
