"""What planning a week of a class rests on: its lessons, what it knows, what was asked of it."""

from __future__ import annotations

import datetime
import re
from dataclasses import dataclass, field, replace
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.errors import ItembankError
from itembank.files.faults import join_words
from itembank.planning.calendar.calendar import DAY, monday
from itembank.planning.calendar.days import period_order
from itembank.planning.department.known_topics import KnownTopics
from itembank.planning.week.earlier_weeks import AskedBefore, planned_lessons, topic_states
from itembank.planning.week.week_choice import Known
from itembank.planning.week.week_plan import PlannedLesson
from itembank.text.in_words import long_date, long_day
from itembank.today import today
from itembank.work.week.week_results import Recorded

if TYPE_CHECKING:
    from collections.abc import Mapping

    from itembank.planning.calendar.scheme import Scheme
    from itembank.planning.calendar.timetable import Lesson, Skipped
    from itembank.planning.department.department import SchoolClass
    from itembank.planning.department.folder import Folder
    from itembank.planning.department.pack_request import PackRequest

_OF_A_BANK = re.compile(r"""["']([a-z0-9-]+:[a-z0-9.-]+)["']""")
"""An address of a bank's question as a plan holds it."""


@dataclass
class Planner:
    """Plans the weeks of one class of a department."""

    folder: Folder
    school_class: SchoolClass
    titles: dict[str, str]
    _looked_up: dict[str, str] = field(default_factory=dict, repr=False)

    @property
    def home(self) -> Path:
        """Return the department's folder."""
        return self.folder.department.folder

    @cached_property
    def known_topics(self) -> KnownTopics:
        """Return every topic that may be named."""
        return KnownTopics(tuple(self.titles), self.school_class.stated_sources.banks or ())

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
        if address in self._looked_up:
            return self._looked_up[address]
        if ":" in address:
            from itembank.bank.index.any_address import find_any

            return find_any(address, self.school_class.stated_sources.banks or ()).topic
        from itembank.items.topics.registry import topic_at

        return topic_at(address)

    def look_up(self, text: str) -> None:
        """Have the topics of the banks' questions that a plan's text names at hand, all at once.

        A bank is opened once for them, instead of once for each.
        """
        addresses = dict.fromkeys(_OF_A_BANK.findall(text))
        if not addresses:
            return
        from itembank.bank.index.any_address import known_topics_of

        banks = self.school_class.stated_sources.banks or ()
        self._looked_up |= known_topics_of(addresses, banks)

    @cached_property
    def planned(self) -> list[AskedBefore]:
        """Return what the plans of this and of other weeks ask, as far as it was not otherwise.

        A lesson that fell out asked nothing, and one that was asked something else, by a cover
        teacher, say, did not ask what was planned.
        """
        found = []
        for lesson in planned_lessons(self.home, self.school_class.name):
            asked = self.recorded.asked(lesson.date, lesson.period)
            replaced = asked is not None and not asked & set(lesson.addresses)
            if not replaced and not self.gone(lesson.date, lesson.period):
                found.append(lesson)
        return found

    @cached_property
    def scheme(self) -> Scheme:
        """Return the scheme of the class, with the days on which it is taught."""
        return self.folder.scheme_of(self.school_class, frozenset(self.recorded.cancelled))

    def known(self, before: datetime.date, seed: int) -> Known:
        """Return what the class knows of each topic `before` a day, from plans and results."""
        # What is beyond the class's year is not asked, whatever its scheme has.
        left = tuple(
            taught for taught in self.scheme.topics if taught.topic not in self.beyond_year
        )
        scheme = replace(self.scheme, topics=left)
        titles = {taught.topic: self.title(taught.topic) for taught in scheme.topics}
        # Of the others it is known what they asked, a day's second lesson among them.
        unknown = [o for o in self.planned if self.recorded.asked(o.date, o.period) is None]
        known = self.recorded.history(before)
        states = topic_states(scheme, titles, known.seen, unknown, before, known.scored)
        rested = self._rested(before, [state.topic for state in states])
        states = tuple(replace(state, rested=rested.get(state.topic)) for state in states)
        settings = self.school_class.plan.planning.choice
        return Known(states, scheme, self.folder.prerequisites, settings, seed)

    def _rested(self, before: datetime.date, topics: list[str]) -> dict[str, int]:
        """Return how many questions are left, of topics with few, that were not used of late.

        Those that only people wrote have few; a generator's are as good as always enough.
        """
        from itembank.planning.department.pack_request import PackRequest
        from itembank.work.pack.settled_request import with_usual

        department = self.folder.department
        wanted = with_usual(PackRequest(), self.school_class, department).sources
        all_few = wanted.questions_from == "bank"
        few = [name for name in topics if all_few or name not in self.titles]
        if not few or not wanted.uses_banks:
            return {}
        from itembank.packs.build import rested_questions
        from itembank.planning.department.department import MOST_QUESTIONS
        from itembank.planning.week.week_plan import WeekTopic
        from itembank.work.week.week_questions import last_uses

        avoid = frozenset(last_uses(self, monday(before)))
        found: dict[str, int] = {}
        for start in range(0, len(few), MOST_QUESTIONS):  # no more fit a starter
            part = tuple(WeekTopic(name, 1) for name in few[start : start + MOST_QUESTIONS])
            asking = PlannedLesson(before, "1", "Starter", len(part), 0, part)
            there = rested_questions(self.request(asking, avoid))
            found |= {name: rested for name, (rested, _) in there.items()}
        return found

    def closed(self, lesson: PlannedLesson) -> str:
        """Return why nothing of a lesson may change any more; empty where it may.

        What the class was asked is what results are about, recorded by now or later.
        """
        if why := self.gone(lesson.date, lesson.period):
            return f"has no lesson ({why})"
        if self.recorded.has(lesson.date, lesson.period):
            return "was recorded already"
        return "is past" if lesson.date < today() else ""

    def gone(self, date: datetime.date, period: str) -> str:
        """Return why there is no lesson where one was: it fell out, will, or was moved."""
        from itembank.planning.department.class_lessons import place_words

        target = self.school_class.plan.moved.get((date, period))
        moved = f"moved to {place_words(target)}" if target else ""
        return self.recorded.fell_out(date, period) or moved

    @cached_property
    def beyond_year(self) -> Mapping[str, str]:
        """Return why each topic of the scheme that is beyond the class's year is left out."""
        from itembank.items.topics.registry import find_topic
        from itembank.packs.sources.within_year import all_beyond, why_beyond
        from itembank.planning.department.pack_request import PackRequest
        from itembank.work.pack.settled_request import with_usual

        department = self.folder.department
        wanted = with_usual(PackRequest(), self.school_class, department).sources
        found = {}
        for taught in self.scheme.topics:
            year = wanted.year_for(taught.topic)
            if year is None or taught.topic not in self.titles:
                continue
            topic = find_topic(taught.topic)
            if all_beyond(topic, year):
                found[topic.id] = why_beyond(topic, year)
        return found

    @cached_property
    def recorded(self) -> Recorded:
        """Return what was recorded of the class."""
        return Recorded(self.home, self.school_class.name)

    def lessons_from(self, first: datetime.date) -> tuple[Lesson, ...]:
        """Return the lessons from a day to its week's end.

        Raises:
            ItembankError: the class has no scheme or timetable, or no lessons then.
        """
        self.folder.scheme_of(self.school_class)
        calendar = self.folder.calendar
        end = monday(first) + 6 * DAY
        held, skipped = self._lessons_between(first, end)
        if not held:
            why = join_words(list(dict.fromkeys(gone.why for gone in skipped)))
            name, said = self.school_class.name, f" ({why})" if why else ""
            none = f"{name} has no lessons from {long_day(first)} to the end of that week{said}."
            last = calendar.terms[-1].last
            coming, _ = self._lessons_between(end + DAY, last) if end < last else ((), ())
            if not coming:
                ends = long_date(last)
                raise ItembankError(f"{none} The school year in calendar.toml ends on {ends}.")
            raise ItembankError(
                f"{none} The next is on {long_day(coming[0].date)}.",
                matter="no lessons from then",
                next=coming[0].date,
            )
        return held

    def lessons_between(self, first: datetime.date, last: datetime.date) -> tuple[Lesson, ...]:
        """Return the lessons of the class from a day to another, those that fell out left out."""
        return self._lessons_between(first, last)[0]

    def _lessons_between(
        self, first: datetime.date, last: datetime.date
    ) -> tuple[tuple[Lesson, ...], tuple[Skipped, ...]]:
        """Return the lessons of the class, and those that the calendar or a note takes away."""
        from itembank.planning.calendar.timetable import Skipped
        from itembank.planning.department.class_lessons import class_lessons

        held, skipped = class_lessons(self.school_class.plan, self.folder.calendar, first, last)
        why = {lesson: self.recorded.fell_out(lesson.date, lesson.period) for lesson in held}
        gone = [Skipped(lesson.date, lesson.period, why[lesson]) for lesson in held if why[lesson]]
        both = sorted(
            [*skipped, *gone], key=lambda lesson: (lesson.date, period_order(lesson.period))
        )
        return tuple(lesson for lesson in held if not why[lesson]), tuple(both)

    def closed_days(self, week: datetime.date) -> list[str]:
        """Return the days of a week on which lessons fall out, and why."""
        _, skipped = self._lessons_between(week, week + 6 * DAY)
        return list(dict.fromkeys(f"{long_day(gone.date)}: {gone.why}" for gone in skipped))

    def in_timetable(self, lesson: PlannedLesson) -> bool:
        """Tell whether the class has a lesson on that day and in that period."""
        from itembank.planning.department.class_lessons import class_lessons

        plan, calendar = self.school_class.plan, self.folder.calendar
        held, _ = class_lessons(plan, calendar, lesson.date, lesson.date)
        return lesson.period in [held_lesson.period for held_lesson in held]

    def request(self, lesson: PlannedLesson, avoid: frozenset[str] = frozenset()) -> PackRequest:
        """Return the pack a lesson needs."""
        from itembank.planning.department.pack_request import PackRequest, PlannedTopic
        from itembank.work.pack.settled_request import settle

        planned = PackRequest(
            topics=tuple(PlannedTopic(wanted.topic, wanted.count) for wanted in lesson.topics),
            class_name=self.school_class.name,
            date=lesson.date,
            title=lesson.title,
            questions=lesson.questions,
            seed=lesson.seed,
            items=tuple(dict.fromkeys((*lesson.asked, *lesson.items))),
            never=frozenset(name for name in lesson.never if name not in self.titles),
            avoid=avoid,
            sheets=lesson.sheets.sheets,
        )
        department, known = self.folder.department, tuple(self.titles)
        return settle(PackRequest(), planned, department, known, lesson.date)
