"""The teacher's changes to a week: pin, ban, swap, replace, reorder, more or fewer questions.

Where a change leaves a gap it is filled by :func:`itembank.planning.week.week_choice.choose_week`
with all else held as it is.
"""

from __future__ import annotations

import contextlib
import datetime
import re
from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import dataclass, replace

from itembank.errors import ItembankError
from itembank.planning.calendar.days import parse_day
from itembank.planning.department.department import MOST_QUESTIONS
from itembank.planning.topic_names import unknown_topic
from itembank.planning.week.week_choice import Hold, Known, choose_week
from itembank.planning.week.week_plan import PlannedLesson, WeekPlan, WeekTopic, is_address
from itembank.text.in_words import long_day, weekday
from itembank.text.whole_number import whole_number

DAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_BRITISH = re.compile(r"(\d{1,2}/\d{1,2}/\d{4})(?:/(.+))?")
TopicOf = Callable[[str], str]
"""Returns the topic of the item at an address; raises ItembankError where it names nothing."""


@dataclass(frozen=True, slots=True)
class Edits:
    """Changes as typed: each begins with a day, where it is not for the whole week."""

    pin: tuple[str, ...] = ()
    ban: tuple[str, ...] = ()
    swap: tuple[str, ...] = ()
    instead: tuple[str, ...] = ()
    order: tuple[str, ...] = ()
    questions: tuple[str, ...] = ()

    def __bool__(self) -> bool:
        """Tell whether anything is to be changed."""
        return any((self.pin, self.ban, self.swap, self.instead, self.order, self.questions))


def find_day(plan: WeekPlan, word: str) -> int | None:
    """Return which lesson a day means: ``tue``, ``2026-12-01``, ``tue/3`` for its period.

    None where the word is no day at all.

    Raises:
        ItembankError: there is no lesson on that day, or two.
    """
    british = _BRITISH.fullmatch(word)  # whose own strokes part no period
    text, period = british.groups("") if british else word.partition("/")[::2]
    low = text.casefold()
    date = None
    if len(low) >= 3 and (found := [i for i, day in enumerate(DAYS) if day.startswith(low)]):
        date = plan.week + datetime.timedelta(days=found[0])
    elif text[:1].isdigit() and (british or "-" in text or len(text) > 4):
        date = parse_day(text, plan.week)
    if date is None:
        return None
    there = [
        place
        for place, one in enumerate(plan.lessons)
        if one.date == date and period in ("", one.period)
    ]
    day = long_day(date)
    if not there:
        days = ", ".join(f"{weekday(one.date)[:3]} {one.date.day}" for one in plan.lessons)
        raise ItembankError(
            f"{plan.class_name} has no such lesson on {day}. The lessons are {days}."
        )
    if len(there) > 1:
        raise ItembankError(
            f"There are {len(there)} lessons on {day}. Add the period, as in {text}/"
            f"{plan.lessons[there[0]].period}."
        )
    return there[0]


def refuse_closed(
    plan: WeekPlan, edits: Edits, closed: Mapping[tuple[datetime.date, str], str]
) -> None:
    """Refuse changes that name a lesson of which nothing may change any more; `closed` says why.

    A change for the whole week is for the lessons that are still open.

    Raises:
        ItembankError: every such change.
    """
    faults = []
    for name in ("questions", "ban", "swap", "instead", "pin", "order"):
        for text in getattr(edits, name):
            words = _words(text)
            days = words[:3:2] if name == "swap" else words[:1]
            for word in days if len(words) > 1 else ():
                place = None
                with contextlib.suppress(ItembankError):  # the editor says what is wrong with it
                    place = find_day(plan, word)
                one = plan.lessons[place] if place is not None else None
                if one is not None and one.key in closed:
                    faults.append(
                        f"--{name} ‘{text}’: {one} {closed[one.key]}, so its starter stays as the "
                        "class had it. Change a lesson to come."
                    )
    if faults:
        raise ItembankError("\n".join(faults))


def _words(text: str) -> list[str]:
    """Return the words of a change; a comma parts them too, and topics are in small letters.

    >>> _words("Tue/3A Ratio.Share, 3")
    ['Tue/3A', 'ratio.share', '3']
    """
    words = text.replace(",", " ").split()
    return [one.lower() if "." in one and ":" not in one else one for one in words]


class Editor:
    """Applies changes to a plan one after another.

    `known_topics` are all there are; `topic_of` looks an address up.
    """

    def __init__(
        self, plan: WeekPlan, known: Known, known_topics: Collection[str], topic_of: TopicOf
    ) -> None:
        self.plan, self.known = plan, known
        self._topics, self._topic_of = known_topics, topic_of

    def apply(self, edits: Edits) -> WeekPlan:
        """Return the plan with all changes made.

        Raises:
            ItembankError: every change that makes no sense, all at once.
        """
        faults = []
        for name, change in (
            ("questions", self._questions),
            ("ban", self._ban),
            ("swap", self._swap),
            ("instead", self._instead),
            ("pin", self._pin),
            ("order", self._order),
        ):
            for text in getattr(edits, name):
                try:
                    change(_words(text))
                except ItembankError as error:
                    faults.append(f"--{name} ‘{text}’: {error}")
        if faults:
            raise ItembankError("\n".join(faults))
        return self.plan

    def _one(self, word: str, example: str) -> int:
        place = find_day(self.plan, word)
        if place is None:
            raise ItembankError(f"‘{word}’ is not a day. Write it as in: {example}")
        return place

    def _topic(self, name: str) -> str:
        if name not in self._topics:
            raise ItembankError(unknown_topic(name, self._topics))
        return name

    def _put(self, changed: Mapping[int, PlannedLesson]) -> None:
        lessons = [changed.get(place, one) for place, one in enumerate(self.plan.lessons)]
        self.plan = replace(self.plan, lessons=tuple(lessons))

    def _fill(self, changed: Mapping[int, tuple[PlannedLesson, Hold]]) -> None:
        """Choose what is open in some lessons, the others held."""
        lessons, holds = [], []
        for place, one in enumerate(self.plan.lessons):
            lesson, hold = changed.get(place, (one, Hold(one.counts)))
            lessons.append(lesson)
            holds.append(hold)
        made = choose_week(lessons, holds, self.known)
        self._put({place: made[place] for place in changed})

    def _pin(self, words: Sequence[str]) -> None:
        example = "tue ratio.share, tue ratio.share 3 or tue ratio.share/core/12"
        wanted = whole_number(words[2]) if len(words) == 3 else 0
        if len(words) not in (2, 3) or wanted is None:
            raise ItembankError(f"Write a day and a topic or an address: {example}")
        place = self._one(words[0], example)
        lesson = self.plan.lessons[place]
        name = words[1]
        if is_address(name):
            topic = self._topic_of(name)
            items = (*(one for one in lesson.items if one != name), name)
            held = sum(self._topic_of(one) == topic for one in items)
            count = max(held, lesson.counts.get(topic, 0))
        else:
            topic, items = self._topic(name), lesson.items
            count = wanted if len(words) == 3 else max(1, lesson.counts.get(topic, 0))
        never = tuple(one for one in lesson.never if one not in (name, topic))
        rest = tuple(one for one in lesson.topics if one.topic != topic)
        least = {one.topic: one.count for one in rest if one.pinned}
        if not 0 < count <= lesson.questions - sum(least.values()):
            pinned = sum(least.values())
            others = f", {pinned} of them pinned to other topics" if pinned else ""
            raise ItembankError(
                f"{lesson} has {lesson.questions} questions{others}, so there is no room for "
                f"{count} on {topic}. Write --questions to have more, or pin fewer."
            )
        lesson = replace(
            lesson, topics=(*rest, WeekTopic(topic, count, pinned=True)), items=items, never=never
        )
        if lesson.counts == self.plan.lessons[place].counts:
            self._fill({place: (lesson, Hold(lesson.counts))})
            return
        self._fill({place: (lesson, Hold({**least, topic: count}, set(lesson.counts)))})

    def _ban(self, words: Sequence[str]) -> None:
        if len(words) not in (1, 2):
            raise ItembankError(
                "Write a topic or an address, after a day where it is for one lesson: "
                "tue ratio.share"
            )
        name = words[-1]
        if is_address(name):
            self._topic_of(name)
        else:
            self._topic(name)
        places = (
            [self._one(words[0], "tue ratio.share")]
            if len(words) == 2
            else list(range(len(self.plan.lessons)))
        )
        changed = {}
        for place in places:
            one = self.plan.lessons[place]
            lesson = replace(
                one,
                never=(*(n for n in one.never if n != name), name),
                items=tuple(i for i in one.items if i != name and self._topic_of(i) != name),
                asked=tuple(a for a in one.asked if a != name),
                topics=tuple(topic for topic in one.topics if topic.topic != name),
            )
            changed[place] = (lesson, Hold(lesson.counts))
        self._fill(changed)

    def _swap(self, words: Sequence[str]) -> None:
        example = "tue ratio.share thu fractions.order"
        if len(words) != 4:
            raise ItembankError(f"Write two days, each with its topic: {example}")
        places = self._one(words[0], example), self._one(words[2], example)
        if places[0] == places[1]:
            raise ItembankError("Both are in the same lesson. Name two lessons.")
        self._put(
            {
                places[0]: self._replaced(places[0], words[1], words[3]),
                places[1]: self._replaced(places[1], words[3], words[1]),
            }
        )

    def _instead(self, words: Sequence[str]) -> None:
        example = "tue ratio.share fractions.order"
        if len(words) != 3:
            raise ItembankError(f"Write a day, a topic, and the one to come instead: {example}")
        place = self._one(words[0], example)
        self._put({place: self._replaced(place, words[1], words[2])})

    def _replaced(self, place: int, old: str, new: str) -> PlannedLesson:
        """Return a lesson with one topic in the place of another, pinned."""
        lesson = self.plan.lessons[place]
        self._topic(new)
        if old not in lesson.counts:
            raise ItembankError(
                f"{lesson} has no {old}. Its topics are {', '.join(lesson.counts)}."
            )
        if new in lesson.counts:
            raise ItembankError(f"{lesson} has {new} already.")
        topics = tuple(
            WeekTopic(new, one.count, pinned=True) if one.topic == old else one
            for one in lesson.topics
        )
        items = tuple(one for one in lesson.items if self._topic_of(one) != old)
        never = tuple(one for one in lesson.never if one != new)
        lesson = replace(lesson, topics=topics, items=items, never=never)
        return choose_week([lesson], [Hold(lesson.counts)], self.known)[0]

    def _order(self, words: Sequence[str]) -> None:
        example = "tue 2 1 3 4 5 6 7 8, or tue and all its topics"
        place = self._one(words[0] if words else "", example)
        lesson = self.plan.lessons[place]
        rest = list(words[1:])
        if sorted(rest) == sorted(lesson.counts):
            by_name = {one.topic: one for one in lesson.topics}
            self._put({place: replace(lesson, topics=tuple(by_name[name] for name in rest))})
            return
        numbers = [number for word in rest if (number := whole_number(word)) is not None]
        if sorted(numbers) != list(range(1, len(lesson.asked) + 1)) or len(numbers) != len(rest):
            raise ItembankError(
                f"Write each number from 1 to {len(lesson.asked)} once, or each of the topics "
                f"{', '.join(lesson.counts)}: {example}"
            )
        self._put({place: replace(lesson, asked=tuple(lesson.asked[n - 1] for n in numbers))})

    def _questions(self, words: Sequence[str]) -> None:
        number = whole_number(words[-1]) if len(words) in (1, 2) else None
        if number is None:
            raise ItembankError("Write a number, after a day where it is for one lesson: tue 10")
        if not 1 <= number <= MOST_QUESTIONS:
            raise ItembankError(f"A starter has 1 to {MOST_QUESTIONS} questions.")
        places = (
            [self._one(words[0], "tue 10")]
            if len(words) == 2
            else list(range(len(self.plan.lessons)))
        )
        changed = {}
        for place in places:
            lesson = replace(self.plan.lessons[place], questions=number)
            total = sum(lesson.counts.values())
            hold = Hold(lesson.counts)
            if total > number:
                pinned = {one.topic: one.count for one in lesson.topics if one.pinned}
                hold = Hold(pinned, set(lesson.counts))
            changed[place] = (lesson, hold)
        self._fill(changed)
