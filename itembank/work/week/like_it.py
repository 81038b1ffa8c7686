"""What a teacher may have in the place of a question: others like it, or the nearest of them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from itembank.errors import ItembankError
from itembank.planning.week.lesson_meant import find_lesson, find_question
from itembank.planning.week.week_changes import Another, Change
from itembank.work.week.week_questions import given_in, last_uses

if TYPE_CHECKING:
    from itembank.packs.data.pack_item import PackItem
    from itembank.planning.week.week_plan import PlannedLesson, WeekPlan
    from itembank.work.week.planner import Planner


def others_like(
    planner: Planner,
    plan: WeekPlan,
    lesson: PlannedLesson,
    address: str,
    most: int = 6,
    kind: str = "",
) -> list[PackItem]:
    """Return questions that could come in the place of one of a lesson's starter, nearest first.

    None of them was given to the class of late, or is to be in another lesson of the week. What a
    topic has run out of comes back: then there are those that rested longest. With a `kind`, as
    somebody writes it, they are of that kind alone.

    Raises:
        ItembankError: the starter does not ask what is at `address`.
        NoSuchKind: its topic has no questions of that kind; says which it has.
    """
    from itembank.packs.like_question import like_it

    if address not in lesson.asked:
        raise ItembankError(f"{lesson} does not ask {address}.", matter="not asked there")
    if kind:
        kind = _kind_meant(planner, address, kind)
    given = given_in(plan.lessons)
    used = last_uses(planner, plan.week, {a for lesson in plan.lessons for a in lesson.asked})
    request = planner.request(lesson, frozenset((given | set(used)) - set(lesson.asked)))
    return like_it(replace(request, sheets=()), address, most, kind)


def kinds_there(planner: Planner, address: str) -> tuple[str, ...]:
    """Return the kinds of question that the topic of a question has; none of a bank's own topic."""
    from itembank.items.topics.of_kind import kinds_of
    from itembank.items.topics.registry import find_topic, topic_ids

    topic = planner.topic_of(address)
    return kinds_of(find_topic(topic)) if topic in topic_ids() else ()


def _kind_meant(planner: Planner, address: str, kind: str) -> str:
    from itembank.items.topics.of_kind import NoSuchKind, the_kind
    from itembank.items.topics.registry import find_topic, topic_ids

    topic = planner.topic_of(address)
    if topic not in topic_ids():
        raise NoSuchKind(f"{planner.title(topic)} has only the questions of its bank.")
    return the_kind(kind, find_topic(topic), title=planner.title(topic))


def with_new_questions(
    planner: Planner, plan: WeekPlan, changes: Sequence[Change]
) -> tuple[Change, ...]:
    """Return changes in which every question that is to give way has one to come.

    A question that is named by its number or its topic is named by its address in them.

    Raises:
        ItembankError: there is no such question, or no other on its topic left.
    """
    return tuple(
        _with_new_question(planner, plan, change) if isinstance(change, Another) else change
        for change in changes
    )


def _with_new_question(planner: Planner, plan: WeekPlan, change: Another) -> Another:
    lesson = plan.lessons[find_lesson(plan, change.lesson)]
    address = find_question(lesson, change.address, planner.topic_of)
    if change.new:
        return replace(change, address=address)
    near = others_like(planner, plan, lesson, address, most=1, kind=change.kind)
    if not near:
        like = f"of the kind ‘{change.kind}’" if change.kind else f"like {address}"
        raise ItembankError(
            f"{lesson} can have no other question {like}: the class had "
            "all there are, or they are on this week's pages."
        )
    return replace(change, address=address, new=near[0].address, held=bool(change.kind))
