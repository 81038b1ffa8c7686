"""The parallel classes of a class, whose starters it may have too."""

from __future__ import annotations

import datetime
from typing import TYPE_CHECKING

from itembank.errors import ItembankError
from itembank.planning.week.week_plan import FOLDER, WeekPlan
from itembank.text.in_words import long_day
from itembank.work.week.begin import read_plan_of
from itembank.work.week.standing import plan_path

if TYPE_CHECKING:
    from itembank.work.week.planner import Planner


def parallels_planned(planner: Planner, first: datetime.date) -> tuple[str, ...]:
    """Return the other classes of a class's year whose week from a Monday on is planned."""
    own = planner.school_class
    return tuple(
        group.name
        for group in planner.folder.department.classes
        if group.year == own.year and group.name != own.name
        if (planner.home / FOLDER / WeekPlan(group.name, first, ()).file_name).is_file()
    )


def starters_planned(planner: Planner, first: datetime.date) -> WeekPlan:
    """Return the plan of a class's week, for its starters to be another's too.

    Raises:
        ItembankError: the week is not planned, or its plan has faults.
    """
    path = plan_path(planner, first)
    if not path.is_file():
        name = planner.school_class.name
        raise ItembankError(f"The week of {name} from {long_day(first)} is not planned yet.")
    return read_plan_of(planner, path)[0]
