"""The first page: each class's next lesson, how it stands, and what is to do for it."""

from __future__ import annotations

import datetime
from collections import Counter
from collections.abc import Sequence
from typing import TYPE_CHECKING

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from itembank.data_class import dataclass
from itembank.desk.replying.forms import action
from itembank.desk.replying.replies import onward, page
from itembank.errors import ItembankError
from itembank.files.faults import join_words
from itembank.today import today
from itembank.work.usual_home import is_department

if TYPE_CHECKING:
    from itembank.desk.replying.desk import Desk
    from itembank.planning.department.department import SchoolClass
    from itembank.work.week.standing import LessonStanding, WeekStanding


@dataclass(frozen=True, slots=True)
class ClassDay:
    """A class, its next lesson with the week it is in, and the last lesson that wants results."""

    group: SchoolClass
    week: WeekStanding | None = None
    lesson: LessonStanding | None = None
    unrecorded: LessonStanding | None = None
    fault: str = ""


def show(request: Request) -> Response:
    """Show how each class stands today."""
    desk: Desk = request.app.state.desk
    if not is_department(desk.home):
        return RedirectResponse("/welcome", 303)
    groups = desk.department.classes
    days = [_day(desk, group) for group in groups]
    return page(request, "today", now=today(), days=days, parallel=_parallel(days))


def plan_all(request: Request, form: FormData) -> Response:
    """Plan the week of the next lesson of every class that has no plan of it yet.

    Where that is wanted, classes of a year whose weeks are the same have the starters of the
    first of them.
    """
    from itembank.work.week.parallels import starters_planned
    from itembank.work.week.request import WeekRequest
    from itembank.work.week.week_run import make_week

    desk: Desk = request.app.state.desk
    done, remarks, faults = [], [], []
    first_of: dict[tuple[int, datetime.date], str] = {}
    same = form.get("same") == "yes"
    for group in desk.department.classes:
        day = _day(desk, group)
        if day.week is None or day.lesson is None:
            continue
        of_year = (group.year, day.week.monday)
        if day.week.plan is not None:
            first_of.setdefault(of_year, group.name)
            continue
        first = first_of.get(of_year) if same else None
        try:
            made = make_week(
                WeekRequest(
                    class_name=group.name,
                    first=max(day.week.monday, today()),
                    output=desk.packs,
                    department=desk.home,
                    starters_of=(
                        starters_planned(desk.planner(first), day.week.monday) if first else None
                    ),
                )
            )
            done.append(group.name)
            first_of.setdefault(of_year, group.name)
            remarks += [str(remark) for remark in made.remarks] if first else []
        except ItembankError as error:  # the others' weeks are made all the same
            faults.append(f"{group.name}: {error}")
    said = f"Planned, made and proved: {join_words(done)}." if done else "Nothing was to plan."
    return onward("/", " ".join([said, *remarks, *faults]), "fault" if faults else "done")


def _parallel(days: Sequence[ClassDay]) -> bool:
    """Whether two classes of a year have the same week to plan, or one to plan as another is."""
    weeks = [(day.group.year, day.week.monday, day.week.plan) for day in days if day.week]
    of_year = Counter((year, first) for year, first, _ in weeks)
    return any(of_year[year, first] > 1 for year, first, plan in weeks if plan is None)


def _day(desk: Desk, group: SchoolClass) -> ClassDay:
    from itembank.work.week.standing import next_lesson, week_standing

    now = today()
    try:
        planner = desk.planner(group.name)
        coming = next_lesson(planner, now)
        this_week = week_standing(planner, desk.packs, now)
        past = [
            lesson
            for lesson in this_week.lessons
            if lesson.date <= now and lesson.folder and not lesson.gone
            if not lesson.scored and not lesson.covered
        ]
        unrecorded = past[-1] if past else None
        if coming is None:
            return ClassDay(group, unrecorded=unrecorded)
        week = week_standing(planner, desk.packs, coming.date)
        lesson = week.lesson(coming.date, coming.period)
        return ClassDay(group, week, lesson, unrecorded)
    except ItembankError as error:  # one class's fault hides no other class
        return ClassDay(group, fault=str(error))


ROUTES = [Route("/", show), Route("/plan-all", action(plan_all), methods=["POST"])]
