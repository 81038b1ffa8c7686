"""Settles which questions the starters and the sheets of a week hold."""

from __future__ import annotations

import datetime
from collections import Counter
from collections.abc import Collection, Mapping
from dataclasses import replace
from typing import TYPE_CHECKING

from itembank.errors import ItembankError
from itembank.planning.calendar import DAY
from itembank.planning.sheet_items import LessonSheets, SheetItems

if TYPE_CHECKING:
    from itembank.cli.week_plan import Planner
    from itembank.packs.build import Chosen, PackRequest
    from itembank.planning.week_plan import PlannedLesson, WeekPlan


Given = Mapping[tuple[datetime.date, str], Collection[str]]


def with_questions(
    planner: Planner,
    plan: WeekPlan,
    built: Given | None = None,
    closed: Collection[tuple[datetime.date, str]] = (),
) -> WeekPlan:
    """Return a plan with the questions of each lesson settled, none of them used of late.

    What is settled already stays where it still fits. All starters come first, so that no sheet
    takes what a later lesson of the week is to ask. `built` are the questions in the starters of
    packs there are: one that was taken out of a plan does not come back in its own place. `closed`
    are lessons that stay as they are.

    Raises:
        ItembankError: a topic has too few questions, or one that is wanted cannot be asked.
    """
    late = _used_of_late(planner, plan)
    lessons = [one if one.key in closed else _fitting(planner, one) for one in plan.lessons]
    for place, lesson in enumerate(lessons):
        if lesson.key in closed:
            continue
        if len(lesson.asked) < lesson.questions or not set(lesson.items) <= set(lesson.asked):
            from itembank.packs.build import starter_addresses

            own = {*lesson.asked, *lesson.items}
            taken_out = set((built or {}).get(lesson.key, ())) if lesson.asked else set()
            avoid = frozenset((late | _given(lessons) | taken_out) - own)
            request = planner.request(lesson, avoid)
            lessons[place] = replace(lesson, asked=starter_addresses(request))
    for place, lesson in enumerate(lessons):
        if lesson.key in closed:
            continue
        others = [one for one in lessons if one is not lesson]
        lessons[place] = _with_sheets(planner, lesson, frozenset(late | _given(others)))
    return replace(plan, lessons=tuple(lessons))


def _given(lessons: list[PlannedLesson]) -> set[str]:
    """Return everything that stands in some lessons."""
    return {
        address for one in lessons for address in (*one.asked, *one.items, *one.sheets.addresses)
    }


def _used_of_late(planner: Planner, plan: WeekPlan) -> set[str]:
    """Return what the class was given, or is to be given, within the weeks stated.

    Weeks that follow count as well: a week may be planned after the next one.
    """
    weeks = planner.school_class.plan.planning.weeks_apart
    span = 7 * weeks * DAY
    end = plan.week + 6 * DAY
    found = set(planner.recorded.addresses(plan.week - span))
    # A lesson of this week that was recorded keeps its questions, and that it has them is known.
    here = {address for one in plan.lessons for address in one.asked}
    found -= here
    for one in planner.planned:
        if plan.week - span <= one.date <= end + span and not plan.week <= one.date <= end:
            found |= set(one.addresses)
    return found


def _fitting(planner: Planner, lesson: PlannedLesson) -> PlannedLesson:
    """Return a lesson without questions there is no room for, or that may not be asked any more."""
    room = Counter(lesson.counts)
    room.subtract(Counter(planner.topic_of(address) for address in lesson.items))
    asked = []
    for address in lesson.asked:
        topic = planner.topic_of(address)
        if address in lesson.items:
            asked.append(address)
        elif address not in lesson.never and room[topic] > 0:
            room[topic] -= 1
            asked.append(address)
    request = planner.request(lesson)
    if not request.drawing.uses_banks:
        return replace(lesson, asked=tuple(asked))
    from itembank.packs.build import askable

    # What the teacher wants and cannot have is told; what the tool chose gives way.
    there = {*askable(request, asked), *lesson.items}
    return replace(lesson, asked=tuple(one for one in asked if one in there))


def _with_sheets(planner: Planner, lesson: PlannedLesson, avoid: frozenset[str]) -> PlannedLesson:
    """Return a lesson with its sheets: those it has where they fit, else newly chosen ones."""
    from itembank.packs.build import choose

    request = planner.request(lesson, avoid)
    if _fit(lesson, request):
        try:
            choose(request)
        except ItembankError:  # say, a bank's question that may not be used any more
            pass
        else:
            return lesson
    chosen = choose(replace(request, sheets=()))
    made = LessonSheets(tuple(lesson.counts), _sheets(chosen), request.follow_up)
    return replace(lesson, sheets=made)


def _fit(lesson: PlannedLesson, request: PackRequest) -> bool:
    from itembank.items.item import Tier
    from itembank.packs.build import opens

    if (lesson.sheets.topics, lesson.sheets.wanted) != (tuple(lesson.counts), request.follow_up):
        return False
    if {*lesson.asked, *lesson.items, *lesson.never} & set(lesson.sheets.addresses):
        return False
    found = {one.tier: one for one in lesson.sheets.sheets}
    return set(found) == {tier.value for tier in Tier} and all(
        len(found[tier.value].questions) <= request.follow_up
        and bool(found[tier.value].opens) == opens(tier, request.bands)
        for tier in Tier
    )


def _sheets(chosen: Chosen) -> tuple[SheetItems, ...]:
    made = []
    for sheet in chosen.sheets:
        opening = [one.item.address for one in (sheet.worked, sheet.part_finished) if one]
        questions = tuple(drawn.item.address for drawn in sheet.items)
        made.append(SheetItems(sheet.tier.value, tuple(opening), questions))
    return tuple(made)
