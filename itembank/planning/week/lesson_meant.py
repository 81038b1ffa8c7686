"""Which lesson and question a change to a plan means, in which turn, and what is past change."""

from __future__ import annotations

import contextlib
from collections.abc import Callable, Mapping, Sequence

from itembank.errors import ItembankError, SeveralErrors
from itembank.files.faults import join_words
from itembank.planning.department.class_scheme import LessonKey
from itembank.planning.week.week_changes import (
    IN_TURN,
    Change,
    LessonName,
    lessons_named,
)
from itembank.planning.week.week_plan import PlannedLesson, WeekPlan, is_address
from itembank.text.in_words import long_day, weekday
from itembank.text.whole_number import whole_number

TopicOf = Callable[[str], str]
"""Returns the topic of the item at an address; raises ItembankError where it names nothing."""


def find_lesson(plan: WeekPlan, name: LessonName) -> int:
    """Return the place in a plan of the lesson that a person names.

    Raises:
        ItembankError: there is no lesson on that day, or there are two.
    """
    date = name.day(plan.week)
    places = [
        place
        for place, lesson in enumerate(plan.lessons)
        if lesson.date == date and name.period in ("", lesson.period)
    ]
    if not places:
        named = [f"{weekday(lesson.date)[:3]} {lesson.date.day}" for lesson in plan.lessons]
        days = ", ".join(named)
        raise ItembankError(
            f"{plan.class_name} has no such lesson on {long_day(date)}. The lessons are {days}."
        )
    if len(places) > 1:
        raise ItembankError(
            f"There are {len(places)} lessons on {long_day(date)}. Add the period, as in "
            f"{name.text}/{plan.lessons[places[0]].period}."
        )
    return places[0]


def find_question(lesson: PlannedLesson, name: str, topic_of: TopicOf) -> str:
    """Return the address of the question of a starter that a person names.

    That is its address, its number on the slide, or its topic where the starter asks one question
    on it.

    Raises:
        ItembankError: the starter asks nothing of that name, or several questions on that topic.
    """
    if name in lesson.asked:
        return name
    number = whole_number(name)
    if number is not None and 1 <= number <= len(lesson.asked):
        return lesson.asked[number - 1]
    numbers = [
        place
        for place, asked in enumerate(() if is_address(name) else lesson.asked, 1)
        if topic_of(asked) == name.lower()
    ]
    if len(numbers) > 1:
        raise ItembankError(
            f"{lesson} asks {len(numbers)} questions on {name}: name one by its number, "
            f"{join_words([str(number) for number in numbers], 'or')}."
        )
    if not numbers:
        asks = f"question {name}" if number is not None else name
        raise ItembankError(f"{lesson} does not ask {asks}.", matter="not asked there")
    return lesson.asked[numbers[0] - 1]


def refuse_closed(
    plan: WeekPlan, changes: Sequence[Change], closed: Mapping[LessonKey, str]
) -> None:
    """Refuse changes that name a lesson of which nothing may change any more; `closed` says why.

    A change for the whole week is for the lessons that are still open.

    Raises:
        SeveralErrors: every such change.
    """
    refused = []
    for change in in_turn(changes):
        for name in lessons_named(change):
            with contextlib.suppress(ItembankError):  # the editor says what is wrong with it
                lesson = plan.lessons[find_lesson(plan, name)]
                if lesson.key in closed:
                    refused.append(
                        of_change(
                            change,
                            ItembankError(
                                f"{lesson} {closed[lesson.key]}, so its starter stays as the "
                                "class had it. Change a lesson to come."
                            ),
                        )
                    )
    if refused:
        raise SeveralErrors(refused)


def in_turn(changes: Sequence[Change]) -> list[Change]:
    """Return changes in the order in which they are made."""
    return [change for kind in IN_TURN for change in changes if isinstance(change, kind)]


def of_change(change: Change, error: ItembankError) -> ItembankError:
    """Return an error with the change, as it was said, in front of it."""
    return error.within(f"{change.said}: ") if change.said else error
