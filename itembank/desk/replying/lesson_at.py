"""The lesson that an address of the desk names: how it stands, and a change of its plan."""

from __future__ import annotations

import datetime
from typing import TYPE_CHECKING, Any

from starlette.requests import Request

from itembank.data_class import dataclass
from itembank.desk.replying.forms import day
from itembank.desk.replying.replies import url
from itembank.errors import ItembankError
from itembank.planning.week.week_changes import Change, LessonName
from itembank.text.in_words import counted

if TYPE_CHECKING:
    from itembank.desk.replying.desk import Desk
    from itembank.work.lesson.cover import AskedInstead
    from itembank.work.lesson.lesson_starter import Starter
    from itembank.work.week.planner import Planner
    from itembank.work.week.standing import LessonStanding, WeekStanding

LESSON = "/class/{name}/lesson/{date}/{period}"
"""Where a lesson's page is; the pages of its parts are below it."""


@dataclass(frozen=True, slots=True)
class Found:
    """The lesson that an address names, and how it stands."""

    desk: Desk
    planner: Planner
    week: WeekStanding
    lesson: LessonStanding

    @property
    def where(self) -> str:
        """Return the address of its page."""
        name, lesson = self.week.class_name, self.lesson
        return url("class", name, "lesson", lesson.date, lesson.period)

    @property
    def name(self) -> LessonName:
        """Return the lesson as changes name it."""
        date = self.lesson.date
        return LessonName(date.isoformat(), date=date, period=self.lesson.period)

    @property
    def period(self) -> str | None:
        """Return the period where the class has several lessons that day, else None."""
        same_day = [standing for standing in self.week.lessons if standing.date == self.lesson.date]
        return self.lesson.period if len(same_day) > 1 else None

    def instead(self) -> AskedInstead | None:
        """Return what is noted that the class was asked instead of its starter."""
        from itembank.work.lesson.cover import asked_instead

        if not self.lesson.recorded:
            return None
        department, name = self.desk.department, self.week.class_name
        return asked_instead(department, name, self.lesson.date, self.period)

    def known(self) -> Starter | None:
        """Return the starter that results of the lesson are about, where some are recorded."""
        from itembank.work.lesson.lesson_starter import starter_recorded

        if not self.lesson.recorded:
            return None
        department, name = self.desk.department, self.week.class_name
        return starter_recorded(department, name, self.lesson.date, self.period)

    def pack(self) -> dict[str, Any] | None:
        """Return what the lesson's pack holds, in the shape of today, or None where there is none.

        Raises:
            ItembankError: it cannot be read, or is no pack.
        """
        from itembank.packs.data.pack_files import load_pack

        folder = self.lesson.folder
        return None if folder is None else load_pack(folder).model_dump(mode="json")


def find(request: Request) -> Found:
    """Return the lesson that an address of the desk names.

    Raises:
        ItembankError: there is no such lesson.
    """
    from itembank.work.week.standing import week_standing

    desk: Desk = request.app.state.desk
    planner = desk.planner(request.path_params["name"])
    date: datetime.date = day(request.path_params["date"])
    week = week_standing(planner, desk.packs, date)
    return Found(desk, planner, week, week.lesson(date, request.path_params["period"]))


def changed(
    desk: Desk, week: WeekStanding, changes: tuple[Change, ...], *, undo: bool = False
) -> str:
    """Change a week's plan, make the packs anew that are touched, and return what to say of it.

    Raises:
        ItembankError: the change makes no sense, or the week is not planned.
        CheckFailed: a key is wrong.
    """
    from itembank.work.week.request import WeekRequest
    from itembank.work.week.week_run import make_week

    if week.plan is None:
        raise ItembankError("This week is not planned yet: plan it first.")
    made = make_week(
        WeekRequest(
            class_name=week.class_name,
            plan=week.plan,
            changes=changes,
            undo=undo,
            output=desk.packs,
            department=desk.home,
            replace=True,
        )
    )
    done = "Taken back" if undo else "Changed"
    if not made.built:
        return f"{done}; no pack had to be made anew."
    return f"{done}, and {counted(len(made.built), 'pack')} made anew; every key was proved twice."
