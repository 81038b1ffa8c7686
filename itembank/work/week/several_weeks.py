"""The same week of several classes, one after the other: those named, or a whole year group."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path

from itembank.data_class import dataclass
from itembank.errors import ItembankError, SeveralErrors
from itembank.files.faults import join_words
from itembank.people.lock import Waiting
from itembank.planning.department.department import find_department, read_department
from itembank.planning.week.week_plan import WeekPlan
from itembank.work.week.begin import planner_of, read_plan_of
from itembank.work.week.request import Progress, WeekMade, WeekRequest, untold
from itembank.work.week.week_run import make_week


@dataclass(frozen=True, slots=True)
class SeveralWeeks:
    """The weeks that were made, in the order of their classes."""

    made: tuple[WeekMade, ...]


def classes_meant(
    department: Path | None, names: Sequence[str] = (), year: int | None = None
) -> tuple[str, ...]:
    """Return the classes that are named, and those of a year group, each once.

    Raises:
        ItembankError: there is no department, no such class, or no class in that year.
    """
    there = read_department(find_department(department))
    found = [there.find_class(name).name for name in names]
    if year is not None:
        of_year = [group.name for group in there.classes if group.year == year]
        if not of_year:
            years = sorted({group.year for group in there.classes})
            raise ItembankError(
                f"No class is in year {year}. The years are {join_words(list(map(str, years)))}.",
                field="year",
            )
        found += of_year
    return tuple(dict.fromkeys(found))


def make_weeks(
    request: WeekRequest,
    classes: Sequence[str],
    *,
    same_starters: bool = False,
    waiting: Waiting | None = None,
    progress: Progress = untold,
    told: Callable[[WeekMade], object] = lambda made: None,
) -> SeveralWeeks:
    """Make the same week of several classes; `told` hears of each as it is there.

    With `same_starters` the later classes have the starters of the first one that has the week,
    lesson by lesson, wherever they were taught their topics. What stops one class does not stop
    the others.

    Raises:
        SeveralErrors: for each class whose week could not be made; the others' are made.
    """
    made: list[WeekMade] = []
    errors: list[ItembankError] = []
    first: WeekPlan | None = None
    for name in classes:
        try:
            week = make_week(
                replace(request, class_name=name, starters_of=first if same_starters else None),
                waiting=waiting,
                progress=progress,
            )
        except ItembankError as error:
            errors.append(error.within(f"{name}: "))
            # A plan that is there stays, and is the one whose starters the others have.
            if error.matter == "plan there" and first is None:
                first = _plan_there(request, name, error.about["path"])
            continue
        made.append(week)
        first = first or week.plan
        told(week)
    if errors:
        raise errors[0] if len(classes) == 1 else SeveralErrors(errors)
    return SeveralWeeks(tuple(made))


def _plan_there(request: WeekRequest, name: str, path: Path) -> WeekPlan:
    """Return a class's plan that is there already, for the starters of others."""
    home = find_department(request.department)
    planner = planner_of(home, replace(request, class_name=name))
    return read_plan_of(planner, path)[0]
