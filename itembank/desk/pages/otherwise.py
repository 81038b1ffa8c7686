"""A lesson that goes otherwise than the timetable has it: it falls out, moves, or is covered."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable
from typing import TYPE_CHECKING

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from itembank.desk.replying.forms import action, day, day_in, fields_typed, number, text
from itembank.desk.replying.lesson_at import LESSON, Found, find
from itembank.desk.replying.replies import onward, page, url
from itembank.errors import ItembankError
from itembank.planning.calendar.calendar import monday
from itembank.planning.department.class_lessons import place_words
from itembank.text.in_words import counted, long_day
from itembank.today import today

if TYPE_CHECKING:
    import datetime

MOST_TOPICS = 4
"""Lines for topics that a class was asked instead; a line that is empty is passed over."""


def show(request: Request) -> Response:
    """Show the forms for a lesson that falls out, moves or is covered."""
    return _show(request, find(request), {})


def _show(
    request: Request, found: Found, typed: dict[str, str], fault: ItembankError | None = None
) -> Response:
    from itembank.work.lesson.undo import noted_last

    lesson, group = found.lesson, found.planner.school_class
    department = found.desk.department
    covered = noted_last(department, group.name, lesson.date, lesson.period, "cover")
    here = lesson.date, lesson.period
    first = next((old for old, new in group.plan.moved.items() if new == here), None)
    others = [parallel.name for parallel in department.classes if parallel.name != group.name]
    return page(
        request,
        "otherwise",
        status=200 if fault is None else 400,
        group=group,
        week=found.week,
        lesson=lesson,
        where=found.where,
        typed=defaultdict(str, typed),
        fault="" if fault is None else str(fault),
        may_replace=fault is not None and fault.matter == "noted already",
        first=None if first is None else (*first, place_words(first)),
        covered=covered is not None,
        others=others,
        lines=range(1, MOST_TOPICS + 1),
        topics=sorted(found.planner.titles.items(), key=lambda row: row[1]),
        now=today(),
    )


def change(request: Request, form: FormData) -> Response:
    """Note what a form says of a lesson, or show the form again with what is wrong."""
    found = find(request)
    done = {"cancel": _cancel, "move": _move, "cover": _cover, "uncover": _uncover}
    note: Callable[[Found, FormData], Response] | None = done.get(text(form, "do"))
    if note is None:
        raise ItembankError("The form does not say what became of the lesson.")
    try:
        return note(found, form)
    except ItembankError as error:
        typed = fields_typed(form)
        return _show(request, found, typed, error)


def _cancel(found: Found, form: FormData) -> Response:
    from itembank.work.lesson.cancel import cancel

    name, lesson = found.week.class_name, found.lesson
    why = text(form, "why") or None
    cancel(found.desk.department, lesson.date, name, why, lesson.period)
    said = (
        f"Noted: {name} has no lesson on {long_day(lesson.date)}, period {lesson.period}. Its "
        "topics come back: plan the rest of the week anew to have them in the lessons to come."
    )
    return onward(_week(name, lesson.date), said)


def _move(found: Found, form: FormData) -> Response:
    from itembank.work.lesson.shift import shift

    name, lesson = found.week.class_name, found.lesson
    if not text(form, "to") and not text(form, "to_period"):
        raise ItembankError("Say to which day, or to which period, the lesson moves.")
    to = day_in(form, "to") or lesson.date
    period = text(form, "to_period") or None
    moved = shift(found.desk.department, lesson.date, to, name, lesson.period, period)
    back = "back " if moved.back else ""
    said = f"Noted: the lesson of {place_words(moved.source)} is {back}on " + (
        f"{place_words(moved.target)}. Plan the rest of the week anew to take its plan along."
    )
    return onward(_week(name, moved.target[0]), said)


def _cover(found: Found, form: FormData) -> Response:
    from itembank.work.lesson.cover import CoverRequest, cover

    lines = range(1, MOST_TOPICS + 1)
    topics = []
    for line in lines:
        if topic := text(form, f"topic-{line}"):
            count = number(form, f"questions-{line}", "Questions")
            topics.append((topic, 1 if count is None else count))
    name, lesson = found.week.class_name, found.lesson
    covered = cover(
        found.desk.department,
        CoverRequest(
            lesson.date,
            name,
            tuple(topics),
            same_as=text(form, "same_as") or None,
            period=lesson.period,
            packs=found.desk.packs,
            replace=text(form, "replace") == "yes",
        ),
    )
    asked = ", ".join(
        f"{counted(count, 'question')} on {found.planner.title(topic)}"
        for topic, count in covered.counts.items()
    )
    said = f"Noted: {name} was asked {covered.source} ({asked}). What was planned was not asked."
    return onward(found.where, said)


def _uncover(found: Found, form: FormData) -> Response:
    from itembank.work.lesson.undo import take_back_noted

    name, lesson = found.week.class_name, found.lesson
    taken = take_back_noted(found.desk.department, name, lesson.date, lesson.period, "cover")
    said = f"Taken back: {taken.last.words}. "
    said += "What was noted before counts again." if taken.counts_again else "Its plan stands."
    return onward(found.where, said)


def take_back(request: Request, form: FormData) -> Response:
    """Take back that a class had no lesson on a day."""
    from itembank.work.lesson.undo import take_back_noted

    desk = request.app.state.desk
    name = desk.group(request.path_params["name"]).name
    date = day(text(form, "date"))
    taken = take_back_noted(desk.department, name, date, text(form, "period"), "cancelled")
    return onward(
        _week(name, date),
        f"Taken back: {taken.last.words}. The lesson of {long_day(date)} takes place.",
    )


def _week(name: str, date: datetime.date) -> str:
    return url("class", name, "week", monday(date))


ROUTES = [
    Route(LESSON + "/otherwise", show),
    Route(LESSON + "/otherwise", action(change), methods=["POST"]),
    Route("/class/{name}/not-cancelled", action(take_back), methods=["POST"]),
]
