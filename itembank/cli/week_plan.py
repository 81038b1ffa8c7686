"""Makes or changes the plan of a week, from what a class knows and what its teacher wants."""

from __future__ import annotations

import datetime
from dataclasses import dataclass, replace
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.errors import ItembankError
from itembank.planning.calendar import DAY, monday
from itembank.planning.days import usual_seed
from itembank.planning.known_topics import KnownTopics
from itembank.planning.week_choice import Hold, Known, choose_week
from itembank.planning.week_plan import (
    AskedBefore,
    PlannedLesson,
    WeekPlan,
    planned_lessons,
    topic_states,
)

if TYPE_CHECKING:
    from itembank.packs.build import PackRequest
    from itembank.planning.department import SchoolClass
    from itembank.planning.folder import Folder


@dataclass
class Planner:
    """Plans the weeks of one class of a department."""

    folder: Folder
    school_class: SchoolClass
    titles: dict[str, str]

    @property
    def home(self) -> Path:
        """Return the department's folder."""
        return self.folder.department.folder

    @cached_property
    def known_topics(self) -> KnownTopics:
        """Return every topic that may be named."""
        return KnownTopics(tuple(self.titles), self.school_class.draw_from.banks or ())

    def title(self, topic: str) -> str:
        """Return what a teacher calls a topic."""
        if topic in self.titles:
            return self.titles[topic]
        return self.known_topics.in_banks.get(topic, topic)

    def topic_of(self, address: str) -> str:
        """Return the topic of the question at an address.

        Raises:
            ItembankError: it names nothing.
        """
        if ":" in address:
            from itembank.bank.addresses import find_any

            return find_any(address, self.school_class.draw_from.banks or ()).topic
        from itembank.items.registry import find_item

        return find_item(address).topic

    @cached_property
    def _planned(self) -> list[AskedBefore]:
        return planned_lessons(self.home, self.school_class.name)

    def known(self, week: datetime.date, seed: int) -> Known:
        """Return what the class knows of each topic when a week begins, from plans and results."""
        scheme = self.folder.scheme_of(self.school_class)
        titles = {one.topic: self.title(one.topic) for one in scheme.topics}
        recorded, _ = self._results(week)
        states = topic_states(scheme, titles, recorded, self._planned, week)
        settings = self.school_class.plan.planning.choice
        return Known(states, scheme, self.folder.prerequisites, settings, seed)

    def _results(self, before: datetime.date) -> tuple[dict[str, tuple], dict[str, datetime.date]]:  # type: ignore[type-arg]
        """Return recorded occasions by topic, and questions asked of late."""
        from itembank.cli.lesson_text import store_of

        place = store_of(self.home)
        if "://" not in place and not Path(place).exists():
            return {}, {}
        from itembank.records.results import topic_history, used_addresses
        from itembank.records.store import open_store

        since = before - 7 * self.school_class.plan.planning.weeks_apart * DAY
        with open_store(place) as store, store.reading() as connection:
            name = self.school_class.name
            return topic_history(connection, name, before), used_addresses(connection, name, since)

    def new_plan(self, first: datetime.date, old: WeekPlan | None) -> tuple[WeekPlan, list[str]]:
        """Return a plan of the week that holds `first`, and the lessons that fall on closed days.

        What the teacher pinned, wanted or barred in an `old` plan of the week stays.

        Raises:
            ItembankError: the class has no lessons that week, or nothing can be chosen.
        """
        from itembank.planning.timetable import lessons_between

        week, name = monday(first), self.school_class.name
        known = self.known(week, usual_seed(name, week, "week"))
        held, skipped = lessons_between(
            self.school_class.plan.lessons, self.folder.calendar, first, week + 6 * DAY
        )
        lines = [f"{one.date:%A} {one.date.day} {one.date:%B}: {one.why}" for one in skipped]
        if not held:
            why = f" ({'; '.join(lines)})" if lines else ""
            raise ItembankError(
                f"{name} has no lessons from {first:%A} {first.day} {first:%B} to the end of that "
                f"week{why}. Name another week with --from."
            )
        before = {one.key: one for one in old.lessons} if old else {}
        lessons, holds = [], []
        for one in held:
            current = known.scheme.current(one.date)
            title = self.title(current) if current else "Starter"
            lesson = PlannedLesson(
                one.date,
                one.period,
                title[:60],
                self.school_class.questions,
                usual_seed(name, one.date, f"{title} {one.period}"),
            )
            if kept := before.get((one.date, one.period)):
                pinned = tuple(topic for topic in kept.topics if topic.pinned)
                lesson = replace(
                    lesson,
                    questions=kept.questions,
                    topics=pinned,
                    items=kept.items,
                    never=kept.never,
                )
            lessons.append(lesson)
            holds.append(Hold(lesson.counts))
        return WeekPlan(name, week, choose_week(lessons, holds, known)), lines

    def request(self, lesson: PlannedLesson, avoid: frozenset[str] = frozenset()) -> PackRequest:
        """Return the pack a lesson needs."""
        from itembank.cli.pack_settings import Given, as_request, resolve
        from itembank.planning.plan_file import Plan, PlannedTopic

        plan = Plan(
            tuple(PlannedTopic(one.topic, one.count) for one in lesson.topics),
            class_name=self.school_class.name,
            date=lesson.date,
            title=lesson.title,
            questions=lesson.questions,
            seed=lesson.seed,
        )
        settings = resolve(Given(), plan, self.folder.department, tuple(self.titles), lesson.date)
        wanted = tuple(dict.fromkeys((*lesson.asked, *lesson.items)))
        never = frozenset(one for one in lesson.never if one not in self.titles)
        return replace(as_request(settings), items=wanted, never=never, avoid=avoid)

    def _fitting(self, lesson: PlannedLesson) -> PlannedLesson:
        """Return a lesson without the questions that a change of its topics leaves no room for."""
        room = dict(lesson.counts)
        for address in lesson.items:
            topic = self.topic_of(address)
            room[topic] = room.get(topic, 0) - 1
        asked = []
        for address in lesson.asked:
            topic = self.topic_of(address)
            if address in lesson.items:
                asked.append(address)
            elif address not in lesson.never and room.get(topic, 0) > 0:
                room[topic] -= 1
                asked.append(address)
        return replace(lesson, asked=tuple(asked))

    def with_questions(self, plan: WeekPlan) -> WeekPlan:
        """Return the plan with the questions of each starter settled, none of them used of late."""
        from itembank.packs.build import starter_addresses

        _, used = self._results(plan.week)
        since = plan.week - 7 * self.school_class.plan.planning.weeks_apart * DAY
        late = set(used)
        for one in self._planned:
            if since <= one.date < plan.week:
                late |= set(one.addresses)
        plan = replace(plan, lessons=tuple(self._fitting(one) for one in plan.lessons))
        here = {address for one in plan.lessons for address in (*one.asked, *one.items)}
        lessons = []
        for lesson in plan.lessons:
            if len(lesson.asked) < lesson.questions or not set(lesson.items) <= set(lesson.asked):
                own = {*lesson.asked, *lesson.items}
                request = self.request(lesson, frozenset((late | here) - own))
                lesson = replace(lesson, asked=starter_addresses(request))
                here |= set(lesson.asked)
            lessons.append(lesson)
        return replace(plan, lessons=tuple(lessons))
