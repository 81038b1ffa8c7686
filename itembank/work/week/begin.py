"""What a week begins from: a plan that is there, or one that is newly made."""

from __future__ import annotations

import contextlib
import datetime
from collections.abc import Sequence
from dataclasses import field
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.files.faults import FileFaults, join_words
from itembank.files.snapshot import Snapshot, take
from itembank.files.toml_table import TomlFile
from itembank.planning.calendar.calendar import monday
from itembank.planning.week.week_choice import with_facts
from itembank.planning.week.week_file import read_week_plan
from itembank.planning.week.week_plan import FOLDER, PlannedLesson, WeekPlan
from itembank.remark import Remark
from itembank.text.folding import same_name
from itembank.text.in_words import long_day
from itembank.today import today
from itembank.work.week.new_plan import NewPlan, new_plan
from itembank.work.week.planner import Planner
from itembank.work.week.request import WeekRequest

if TYPE_CHECKING:
    from itembank.planning.department.department import SchoolClass
    from itembank.planning.department.folder import Folder


@dataclass(frozen=True, slots=True)
class Begun:
    """A plan to go on from.

    Parameters
    ----------
    path
        Where its file is, or will be.
    plan
        The plan, read or newly made.
    was
        That file before anything was made of it.
    read
        The plan as it stands in its file, where it is to be built from; None where it is new.
    first
        The day from which it was to be planned, if it was.
    stays
        The lessons of an older plan of the week that stay as they are.
    remarks
        What a person ought to know of it.
    """

    path: Path
    plan: WeekPlan
    was: Snapshot
    read: WeekPlan | None = None
    first: datetime.date = datetime.date.min
    stays: tuple[PlannedLesson, ...] = ()
    remarks: tuple[Remark, ...] = field(default=())


def folder_of(home: Path) -> Folder:
    """Return a department with its calendar and schemes, checked together.

    Raises:
        FileFaults: every fault of every file, each with file and line.
    """
    from itembank.items.topics.registry import listed_topics
    from itembank.planning.department.folder import read_folder

    generated = {topic.id: topic.prerequisites for topic in listed_topics().values()}
    return read_folder(home, tuple(generated), generated)


def planner_in(folder: Folder, school_class: SchoolClass) -> Planner:
    """Return the planner of a class of a department that was read."""
    from itembank.items.topics.registry import listed_topics

    titles = {topic.id: topic.title for topic in listed_topics().values()}
    return Planner(folder, school_class, titles)


def planner_of(home: Path, request: WeekRequest) -> Planner:
    """Return the planner of the class that is wanted, of the department in a folder.

    Raises:
        ItembankError: a file of the department has faults, or there is no such class.
    """
    folder = folder_of(home)
    name = request.class_name
    if name is None and request.plan is not None:
        classes = [school_class.name for school_class in folder.department.classes]
        name = _class_of(TomlFile(request.plan), classes)
    return planner_in(folder, folder.department.find_class(name))


def _class_of(file: TomlFile, classes: Sequence[str]) -> str:
    """Return the class a plan file is for.

    Raises:
        FileFaults: it names none, or one that is not there.
    """
    top = file.top()
    name = top.text("class", None)
    if name and not any(same_name(name, known) for known in classes):
        top.fault("class", f"There is no class {name}. The classes are {join_words(classes)}.")
    file.finish()
    return name


def begin(planner: Planner, request: WeekRequest) -> Begun:
    """Return the plan that is wanted: the one that is named, the one of the week, or a new one.

    Raises:
        ItembankError: the class has no lessons then; there is a plan of the week already, and it
            is not to be replaced (its matter is ``plan there``); or a plan file has faults.
    """
    if request.plan is not None:
        was = take(request.plan)
        plan, remarks = read_plan_of(planner, request.plan)
        return Begun(request.plan, plan, was, read=plan, remarks=remarks)
    first = request.first or _usual_first(planner)
    planner.lessons_from(first)  # without any there is nothing to do
    path = planner.home / FOLDER / WeekPlan(planner.school_class.name, monday(first), ()).file_name
    was = take(path)  # now, so that what a colleague saves while the week is planned is noticed
    if was.raw is None:
        new = new_plan(planner, first, None)
        plan, remarks = _shared(planner, request, new)
        remarks = (*_without_starter(new), *remarks)
        return Begun(path, plan, was, first=first, remarks=remarks)
    if request.changes or request.undo:
        plan, remarks = read_plan_of(planner, path)
        return Begun(path, plan, was, read=plan, first=first, remarks=remarks)
    if not request.replace:
        raise ItembankError(
            f"There is a plan of this week in {path} already.", matter="plan there", path=path
        )
    try:
        old, remarks = read_plan_of(planner, path)
    except FileFaults as error:
        raise ItembankError(
            f"{error}\nThe week is planned anew around what you pinned there: mend the file, "
            "or take it away to begin without it."
        ) from None
    new = new_plan(planner, first, old, request.only)
    stays = (*new.past, *new.closed)
    plan, more = _shared(planner, request, new)
    remarks = (*remarks, *_without_starter(new), *more)
    return Begun(path, plan, was, None, first, stays, remarks)


def _usual_first(planner: Planner) -> datetime.date:
    """Return the day from which a week is planned where none is said.

    That is today, or where no lesson is left in its week, as on a Sunday evening, the next one's.
    """
    now = today()
    try:
        planner.lessons_from(now)
    except ItembankError as error:
        if error.matter != "no lessons from then":
            raise
        coming: datetime.date = error.about["next"]
        return coming
    return now


def _shared(
    planner: Planner, request: WeekRequest, new: NewPlan
) -> tuple[WeekPlan, tuple[Remark, ...]]:
    """Return a new plan with the starters of another class where that is wanted."""
    if request.starters_of is None:
        return new.plan, ()
    from itembank.work.week.shared_starters import with_starters_of

    return with_starters_of(planner, new.plan, request.starters_of, (*new.past, *new.closed))


def _without_starter(new: NewPlan) -> tuple[Remark, ...]:
    return tuple(
        Remark(
            f"There is no starter on {long_day(lesson.date)}, period {lesson.period}: nothing was "
            "taught before."
        )
        for lesson in new.early
    )


def read_plan_of(planner: Planner, path: Path) -> tuple[WeekPlan, tuple[Remark, ...]]:
    """Return the plan in a file, and what is odd about it without being wrong.

    Raises:
        FileFaults: every fault of the file.
    """
    with contextlib.suppress(OSError, ValueError):  # what cannot be read is told below
        planner.look_up(path.read_text("utf-8"))
    plan = read_week_plan(
        path,
        planner.folder.department,
        planner.folder.calendar,
        planner.known_topics,
        planner.topic_of,
        planner.school_class.name,
    )
    if any(topic.is_sentence for lesson in plan.lessons for topic in lesson.topics):
        plan = with_facts(plan, planner.known(plan.week, plan.lessons[0].seed))
    remarks = tuple(
        Remark(
            f"{path}: {plan.class_name}'s timetable has no lesson on {lesson}; it is kept all the "
            "same."
        )
        for lesson in plan.lessons
        if not planner.in_timetable(lesson) and not planner.gone(lesson.date, lesson.period)
    )
    return plan, remarks
