"""Settles which questions the starters and the sheets of a week hold."""

from __future__ import annotations

import datetime
from collections import Counter
from collections.abc import Collection, Iterable, Mapping
from dataclasses import replace
from typing import TYPE_CHECKING

from itembank.errors import ItembankError
from itembank.planning.calendar.calendar import DAY
from itembank.planning.choosing.topic_reason import Again, Reason
from itembank.planning.department.pack_request import stated
from itembank.planning.department.sheet_items import LessonSheets, SheetItems

if TYPE_CHECKING:
    from itembank.packs.chosen import Chosen
    from itembank.planning.department.pack_request import PackRequest
    from itembank.planning.week.week_plan import PlannedLesson, WeekPlan
    from itembank.work.week.planner import Planner


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
    used = last_uses(
        planner, plan.week, {address for lesson in plan.lessons for address in lesson.asked}
    )
    late = set(used)
    lessons = [
        lesson if lesson.key in closed else _fitting(planner, lesson) for lesson in plan.lessons
    ]
    for place, lesson in enumerate(lessons):
        if lesson.key not in closed and (
            len(lesson.asked) < lesson.questions or not set(lesson.items) <= set(lesson.asked)
        ):
            own = {*lesson.asked, *lesson.items}
            taken_out = set((built or {}).get(lesson.key, ())) if lesson.asked else set()
            avoid = frozenset((late | given_in(lessons) | taken_out) - own)
            lessons[place] = _with_starter(planner, lesson, avoid, used)
        used |= dict.fromkeys(lessons[place].asked, lesson.date)
    # Sheets only now, when all starters stand: none may hold what a later one of the week asks.
    for place, lesson in enumerate(lessons):
        if lesson.key in closed:
            continue
        others = [rival for rival in lessons if rival is not lesson]
        lessons[place] = _with_sheets(planner, lesson, frozenset(late | given_in(others)))
    return replace(plan, lessons=tuple(lessons))


def given_in(lessons: Iterable[PlannedLesson]) -> set[str]:
    """Return everything that stands in some lessons."""
    return {
        address
        for lesson in lessons
        for address in (*lesson.asked, *lesson.items, *lesson.sheets.addresses)
    }


def last_uses(
    planner: Planner, week: datetime.date, here: Collection[str] = ()
) -> dict[str, datetime.date]:
    """Return what the class was given, or is to be given, within the weeks stated, and when last.

    Weeks that follow count as well: a week may be planned after the next one. `here` are the
    questions of the week's own starters, which keep them.
    """
    span = 7 * planner.school_class.plan.planning.weeks_apart * DAY
    end = week + 6 * DAY
    found = {
        address: date
        for address, date in planner.recorded.last_used(week - span).items()
        if address not in here
    }
    for lesson in planner.planned:
        if week - span <= lesson.date <= end + span and not week <= lesson.date <= end:
            for address in lesson.addresses:
                found[address] = max(lesson.date, found.get(address, lesson.date))
    return found


def _with_starter(
    planner: Planner,
    lesson: PlannedLesson,
    avoid: frozenset[str],
    used: Mapping[str, datetime.date],
) -> PlannedLesson:
    """Return a lesson with its starter's questions; those used of late only where all were.

    Then the ones used last rest at least, and the topic's reason says so.
    """
    from itembank.packs.build import rested_questions, starter_addresses
    from itembank.pages.draw import fits_slides

    asked = starter_addresses(planner.request(lesson, avoid), fits_slides)
    again = {planner.topic_of(address) for address in asked if address in avoid and address in used}
    if again:
        newest: dict[str, datetime.date] = {}
        topics = {address: planner.topic_of(address) for address in avoid & set(used)}
        for address, topic in topics.items():
            newest[topic] = max(used[address], newest.get(topic, used[address]))
        rest = {a for a, topic in topics.items() if topic in again and used[a] < newest[topic]}
        asked = starter_addresses(planner.request(lesson, avoid - rest), fits_slides)
    days: dict[str, datetime.date] = {}
    for address in asked:
        if address in used and address not in lesson.items:
            topic = planner.topic_of(address)
            days[topic] = max(used[address], days.get(topic, used[address]))
    there = rested_questions(planner.request(lesson), exact=True) if days else {}
    reasons = []
    for wanted in lesson.topics:
        why = wanted.reason or Reason(lesson.date)
        too_soon = None
        if wanted.topic in days:
            too_soon = Again(days[wanted.topic], there.get(wanted.topic, (0, 0))[1])
        reasons.append(replace(wanted, reason=replace(why, again=too_soon)))
    return replace(lesson, asked=asked, topics=tuple(reasons))


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
    if not request.sources.uses_banks:
        return replace(lesson, asked=tuple(asked))
    from itembank.packs.build import askable

    # What the teacher wants and cannot have is told; what the tool chose gives way.
    there = {*askable(request, asked), *lesson.items}
    return replace(lesson, asked=tuple(address for address in asked if address in there))


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
    made = LessonSheets(tuple(lesson.counts), _sheets(chosen), stated(request.follow_up))
    return replace(lesson, sheets=made)


def _fit(lesson: PlannedLesson, request: PackRequest) -> bool:
    from itembank.items.item import Tier
    from itembank.packs.build import opens

    if (lesson.sheets.topics, lesson.sheets.wanted) != (tuple(lesson.counts), request.follow_up):
        return False
    if {*lesson.asked, *lesson.items, *lesson.never} & set(lesson.sheets.addresses):
        return False
    found = {sheet.tier: sheet for sheet in lesson.sheets.sheets}
    return set(found) == {tier.value for tier in Tier} and all(
        len(found[tier.value].questions) <= stated(request.follow_up)
        and bool(found[tier.value].opens) == opens(tier, request.score_bands)
        for tier in Tier
    )


def _sheets(chosen: Chosen) -> tuple[SheetItems, ...]:
    made = []
    for sheet in chosen.sheets:
        opening = [
            candidate.item.address for candidate in (sheet.worked, sheet.part_finished) if candidate
        ]
        questions = tuple(candidate.item.address for candidate in sheet.items)
        made.append(SheetItems(sheet.tier.value, tuple(opening), questions))
    return tuple(made)
