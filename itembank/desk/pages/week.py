"""A class's week: its lessons, what each brings back and why, and how far each is."""

from __future__ import annotations

import datetime
from typing import TYPE_CHECKING

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from itembank.desk.replying.forms import action, day, text
from itembank.desk.replying.replies import onward, page, url
from itembank.planning.calendar.calendar import DAY, monday
from itembank.text.in_words import counted
from itembank.today import today
from itembank.work.week.standing import plan_path

if TYPE_CHECKING:
    from itembank.desk.replying.desk import Desk
    from itembank.work.week.request import WeekMade


def this_week(request: Request) -> Response:
    """Send to the week of a class's next lesson."""
    from itembank.work.week.standing import next_lesson

    desk: Desk = request.app.state.desk
    planner = desk.planner(request.path_params["name"])
    coming = next_lesson(planner, today())
    first = monday(coming.date if coming else today())
    return RedirectResponse(url("class", planner.school_class.name, "week", first), 303)


def show(request: Request) -> Response:
    """Show a week."""
    from itembank.work.week.kinds_asked import kinds_asked, questions_asked
    from itembank.work.week.parallels import parallels_planned
    from itembank.work.week.standing import week_standing

    desk: Desk = request.app.state.desk
    planner = desk.planner(request.path_params["name"])
    first = monday(day(request.path_params["monday"]))
    week = week_standing(planner, desk.packs, first)
    return page(
        request,
        "week",
        group=planner.school_class,
        week=week,
        parallels=parallels_planned(planner, first),
        title_of=planner.title,
        kinds_asked=kinds_asked,
        questions_asked=questions_asked,
        cancelled=[
            (*lesson, why)
            for lesson, why in sorted(planner.recorded.cancelled.items())
            if first <= lesson[0] <= first + 6 * DAY
        ],
        before=first - 7 * DAY,
        after=first + 7 * DAY,
        now=today(),
    )


def plan(request: Request, form: FormData) -> Response:
    """Plan the week, or plan what is left of it anew, and make its packs."""
    from itembank.work.week.parallels import starters_planned
    from itembank.work.week.request import WeekRequest
    from itembank.work.week.week_run import make_week

    desk: Desk = request.app.state.desk
    name = desk.group(request.path_params["name"]).name
    first = monday(day(request.path_params["monday"]))
    whose = text(form, "starters_of")
    made = make_week(
        WeekRequest(
            class_name=name,
            first=max(first, today()) if first + 6 * DAY >= today() else first,
            output=desk.packs,
            department=desk.home,
            replace=form.get("again") == "yes",
            starters_of=starters_planned(desk.planner(whose), first) if whose else None,
        )
    )
    return onward(url("class", name, "week", first), _said(made))


def build(request: Request, form: FormData) -> Response:
    """Make the packs that the plan asks for, as its file has it now."""
    from itembank.work.week.request import WeekRequest
    from itembank.work.week.week_run import make_week

    desk: Desk = request.app.state.desk
    planner = desk.planner(request.path_params["name"])
    first = monday(day(request.path_params["monday"]))
    name = planner.school_class.name
    made = make_week(
        WeekRequest(
            class_name=name,
            plan=plan_path(planner, first),
            output=desk.packs,
            department=desk.home,
            replace=True,
        )
    )
    return onward(url("class", name, "week", first), _said(made))


def _said(made: WeekMade) -> str:
    """Return what there is to say of a week that was made."""
    said = f"{counted(len(made.built), 'pack')} made; every key was proved twice."
    remarks = " ".join(str(remark) for remark in made.remarks)
    return f"{said} {remarks}".strip()


def _path(after: str = "") -> str:
    return "/class/{name}/week/{monday}" + after


ROUTES = [
    Route("/class/{name}", this_week),
    Route(_path(), show),
    Route(_path("/plan"), action(plan), methods=["POST"]),
    Route(_path("/build"), action(build), methods=["POST"]),
]


def lesson_url(name: str, date: datetime.date, period: str, *more: str) -> str:
    """Return the address of a lesson's page."""
    return url("class", name, "lesson", date, period, *more)
