"""What is wanted of a class's week, and what came of it: plain values both."""

from __future__ import annotations

import datetime
from collections.abc import Callable, Mapping
from enum import StrEnum
from pathlib import Path

from itembank.data_class import dataclass
from itembank.planning.week.week_changes import Change, LessonName
from itembank.planning.week.week_plan import PlannedLesson, WeekPlan
from itembank.remark import Remark


@dataclass(frozen=True, slots=True)
class WeekRequest:
    """What is wanted of a week; what is left out has a usual value.

    Parameters
    ----------
    class_name
        The class; without one, the class of the plan.
    first
        The first day to be planned, from which to the week's end; today, or the next lesson's
        day where this week has none left.
    plan
        A plan file to build from, instead of planning.
    only
        The lesson whose pack alone is to be built.
    changes
        What the teacher changes in the plan.
    undo
        Whether the plan is to be as it was before its last change; goes without `changes`.
    output
        The folder in which packs go; the nearest called ``output``.
    department
        The department's folder; the one around the plan, or around here.
    replace
        Whether a plan of the week is planned anew, and packs take the place of older ones.
    starters_of
        The plan of a parallel class, whose starters a new plan has wherever it can.
    how_to_build
        What to run or to press to build from a plan again, for the head of its file; ``{path}``
        in it stands for the file.
    """

    class_name: str | None = None
    first: datetime.date | None = None
    plan: Path | None = None
    only: LessonName | None = None
    changes: tuple[Change, ...] = ()
    undo: bool = False
    output: Path | None = None
    department: Path | None = None
    replace: bool = False
    starters_of: WeekPlan | None = None
    how_to_build: str = ""


class Step(StrEnum):
    """What the making of a week has come to, in this order."""

    PLAN = "plan"
    """The plan is read or made, and changed."""
    QUESTIONS = "questions"
    """Questions are settled for starters and sheets."""
    PACKS = "packs"
    """Packs are built and proved, and all is written."""


Progress = Callable[[Step], object]
"""Told each step as it begins."""


def untold(step: Step) -> None:
    """Tell nobody of a step."""


@dataclass(frozen=True, slots=True)
class Built:
    """A lesson of which a pack was made, and the pack's folder."""

    lesson: PlannedLesson
    folder: Path


@dataclass(frozen=True, slots=True)
class WeekMade:
    """A week as it is on disk: its plan, its packs, the days without a lesson, and remarks.

    `titles` are those of the topics that the week asks about.
    """

    department: Path
    plan: WeekPlan
    path: Path
    overview: Path
    built: tuple[Built, ...]
    titles: Mapping[str, str]
    skipped: tuple[str, ...] = ()
    remarks: tuple[Remark, ...] = ()
