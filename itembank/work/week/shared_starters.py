"""One starter for parallel classes: lessons of a class's week that are those of another class."""

from __future__ import annotations

import datetime
from dataclasses import replace
from typing import TYPE_CHECKING

from itembank.files.faults import join_words
from itembank.planning.choosing.topic_reason import Reason
from itembank.planning.week.week_plan import PlannedLesson, WeekPlan
from itembank.remark import Remark
from itembank.work.week.week_questions import last_uses

if TYPE_CHECKING:
    from itembank.work.week.planner import Planner


def with_starters_of(
    planner: Planner, plan: WeekPlan, other: WeekPlan, stays: tuple[PlannedLesson, ...] = ()
) -> tuple[WeekPlan, tuple[Remark, ...]]:
    """Return a plan whose lessons, in turn, have the starters and sheets of another class's.

    A lesson keeps its own where it `stays`, where the teacher pinned something in it, where the
    class has not been taught a topic of the other's starter by then, and where one of the
    questions would come back too soon; a remark says so.
    """
    name = planner.school_class.name
    taught = {topic.topic: topic.date for topic in planner.scheme.topics}
    used = last_uses(planner, plan.week)
    lessons, remarks = [], []
    for place, lesson in enumerate(plan.lessons):
        if lesson in stays or place >= len(other.lessons) or _is_own(lesson):
            lessons.append(lesson)
            continue
        theirs = other.lessons[place]
        late = [
            planner.title(topic)
            for topic in theirs.counts
            if taught.get(topic, datetime.date.max) >= lesson.date or topic in planner.beyond_year
        ]
        again = [address for address in theirs.asked if address in used]
        if late or again:
            why = (
                f"{name} has not been taught {join_words(late)} by then"
                if late
                else f"{name} was asked some of its questions a short while ago"
            )
            remarks.append(Remark(f"{lesson}: not the starter of {other.class_name}, since {why}."))
            lessons.append(lesson)
        else:
            lessons.append(_shared(lesson, theirs, other.class_name))
    return replace(plan, lessons=tuple(lessons)), tuple(remarks)


def _is_own(lesson: PlannedLesson) -> bool:
    """Whether a teacher has chosen something in a lesson."""
    pinned = any(topic.pinned for topic in lesson.topics)
    return pinned or bool(lesson.items) or bool(lesson.never)


def _shared(lesson: PlannedLesson, theirs: PlannedLesson, name: str) -> PlannedLesson:
    """Return a lesson with the starter of another class's; what it rests on there is not said."""
    said = f"the same starter as {name}"
    return replace(
        theirs,
        date=lesson.date,
        period=lesson.period,
        topics=tuple(
            replace(topic, reason=Reason(lesson.date, own=said), pinned=False)
            for topic in theirs.topics
        ),
        items=(),
        never=(),
    )
