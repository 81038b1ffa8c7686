"""Makes a teacher's changes to a week, and keeps all the rest as it is.

Where a change leaves a gap it is filled by :func:`itembank.planning.week.week_choice.choose_week`
with all else held.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import replace
from functools import singledispatchmethod

from itembank.errors import ItembankError, SeveralErrors
from itembank.files.faults import join_words
from itembank.planning.department.department import MOST_QUESTIONS
from itembank.planning.topic_names import unknown_topic
from itembank.planning.week.lesson_meant import find_lesson, find_question, in_turn, of_change
from itembank.planning.week.week_changes import (
    Another,
    AsBefore,
    Ban,
    Change,
    Instead,
    Length,
    LessonName,
    Order,
    Pin,
    Swap,
)
from itembank.planning.week.week_choice import Hold, Known, choose_week
from itembank.planning.week.week_plan import PlannedLesson, WeekPlan, WeekTopic, is_address

TopicOf = Callable[[str], str]
"""Returns the topic of the item at an address; raises ItembankError where it names nothing."""


class Editor:
    """Applies changes to a plan one after another.

    `known_topics` are all there are; `topic_of` looks an address up.
    """

    def __init__(
        self, plan: WeekPlan, known: Known, known_topics: Collection[str], topic_of: TopicOf
    ) -> None:
        self.plan, self.known = plan, known
        self._topics, self._topic_of = known_topics, topic_of

    def apply(self, changes: Sequence[Change]) -> WeekPlan:
        """Return the plan with all changes made.

        Raises:
            SeveralErrors: every change that makes no sense, all at once.
        """
        faults = []
        # In a fixed order, so that the same changes make the same week however they were typed.
        for change in in_turn(changes):
            try:
                self._make(change)
            except ItembankError as error:
                faults.append(of_change(change, error))
        if faults:
            raise SeveralErrors(faults)
        return self.plan

    @singledispatchmethod
    def _make(self, change: Change) -> None:
        """Make one change."""
        raise NotImplementedError(change)

    def _topic(self, name: str) -> str:
        if name not in self._topics:
            raise ItembankError(unknown_topic(name, self._topics), matter="no such topic")
        return name

    def _places(self, name: LessonName | None) -> list[int]:
        """Return the place of the lesson that is named, or those of all."""
        if name is None:
            return list(range(len(self.plan.lessons)))
        return [find_lesson(self.plan, name)]

    def _put(self, changed: Mapping[int, PlannedLesson]) -> None:
        lessons = [changed.get(place, lesson) for place, lesson in enumerate(self.plan.lessons)]
        self.plan = replace(self.plan, lessons=tuple(lessons))

    def _fill(self, changed: Mapping[int, tuple[PlannedLesson, Hold]]) -> None:
        """Choose what is open in some lessons, the others held."""
        lessons, holds = [], []
        for place, lesson in enumerate(self.plan.lessons):
            # The others are held as they are, but take part: the choice is for the whole week.
            lesson, hold = changed.get(place, (lesson, Hold(lesson.counts)))
            lessons.append(lesson)
            holds.append(hold)
        made = choose_week(lessons, holds, self.known)
        self._put({place: made[place] for place in changed})

    @_make.register
    def _as_before(self, change: AsBefore) -> None:
        self.plan = change.plan

    @_make.register
    def _pin(self, change: Pin) -> None:
        place = find_lesson(self.plan, change.lesson)
        lesson = self.plan.lessons[place]
        name = change.name
        if is_address(name):
            topic = self._topic_of(name)
            # Pinned again, a question moves to the end and does not come twice.
            items = (*(address for address in lesson.items if address != name), name)
            held = sum(self._topic_of(address) == topic for address in items)
            count = max(held, lesson.counts.get(topic, 0))
        else:
            topic, items = self._topic(name), lesson.items
            count = max(1, lesson.counts.get(topic, 0))
            if change.questions is not None:
                count = change.questions
        never = tuple(barred for barred in lesson.never if barred not in (name, topic))
        rest = tuple(wanted for wanted in lesson.topics if wanted.topic != topic)
        least = {wanted.topic: wanted.count for wanted in rest if wanted.pinned}
        if count < 1:
            raise ItembankError(
                f"{lesson}: 1 question on {topic} is the least. To ask none, leave it out."
            )
        if count > lesson.questions - sum(least.values()):
            pinned = sum(least.values())
            others = f", {pinned} of them pinned to other topics" if pinned else ""
            raise ItembankError(
                f"{lesson} has {lesson.questions} questions{others}, so there is no room for "
                f"{count} on {topic}.",
                matter="no room in a starter",
            )
        lesson = replace(
            lesson, topics=(*rest, WeekTopic(topic, count, pinned=True)), items=items, never=never
        )
        # The topic was there with as many questions: nothing has to give way.
        if lesson.counts == self.plan.lessons[place].counts:
            self._fill({place: (lesson, Hold(lesson.counts))})
            return
        self._fill({place: (lesson, Hold({**least, topic: count}, set(lesson.counts)))})

    @_make.register
    def _ban(self, change: Ban) -> None:
        name = change.name
        if is_address(name):
            self._topic_of(name)
        else:
            self._topic(name)
        changed = {}
        for place in self._places(change.lesson):
            lesson = self.plan.lessons[place]
            without = replace(
                lesson,
                never=(*(barred for barred in lesson.never if barred != name), name),
                items=tuple(a for a in lesson.items if name not in (a, self._topic_of(a))),
                asked=tuple(address for address in lesson.asked if address != name),
                topics=tuple(topic for topic in lesson.topics if topic.topic != name),
            )
            changed[place] = (without, Hold(without.counts))
        self._fill(changed)

    @_make.register
    def _swap(self, change: Swap) -> None:
        place = find_lesson(self.plan, change.lesson)
        swapped = find_lesson(self.plan, change.other_lesson)
        if place == swapped:
            raise ItembankError("Both are in the same lesson. Name two lessons.")
        self._put(
            {
                place: self._replaced(place, change.topic, change.other_topic),
                swapped: self._replaced(swapped, change.other_topic, change.topic),
            }
        )

    @_make.register
    def _instead(self, change: Instead) -> None:
        place = find_lesson(self.plan, change.lesson)
        self._put({place: self._replaced(place, change.topic, change.new)})

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
            WeekTopic(new, topic.count, pinned=True) if topic.topic == old else topic
            for topic in lesson.topics
        )
        items = tuple(address for address in lesson.items if self._topic_of(address) != old)
        never = tuple(barred for barred in lesson.never if barred != new)
        lesson = replace(lesson, topics=topics, items=items, never=never)
        return choose_week([lesson], [Hold(lesson.counts)], self.known)[0]

    @_make.register
    def _another(self, change: Another) -> None:
        place = find_lesson(self.plan, change.lesson)
        lesson = self.plan.lessons[place]
        old, new = find_question(lesson, change.address, self._topic_of), change.new
        if new in lesson.asked:
            raise ItembankError(f"{lesson} asks {new} already.")
        gone, come = self._topic_of(old), self._topic(self._topic_of(new))
        counts = lesson.counts
        counts[gone] -= 1
        counts[come] = counts.get(come, 0) + 1
        held = change.held or old in lesson.items
        known = {topic.topic: topic for topic in lesson.topics}
        topics = tuple(
            replace(
                topic := known.get(name, WeekTopic(name, 0)),
                count=count,
                pinned=topic.pinned or (held and name == come),
            )
            for name, count in counts.items()
            if count
        )
        items = tuple(address for address in lesson.items if address not in (old, new))
        changed = replace(
            lesson,
            asked=tuple(new if address == old else address for address in lesson.asked),
            items=(*items, new) if held else items,
            never=tuple(barred for barred in lesson.never if barred not in (new, come)),
            topics=topics,
        )
        if gone == come:
            self._put({place: changed})
        else:  # the new topic gets its reason; all counts stay as they are
            self._fill({place: (changed, Hold(changed.counts))})

    @_make.register
    def _order(self, change: Order) -> None:
        place = find_lesson(self.plan, change.lesson)
        lesson = self.plan.lessons[place]
        # Sorted, so that each has to be there once: an order leaves nothing out.
        if sorted(change.topics) == sorted(lesson.counts):
            by_name = {topic.topic: topic for topic in lesson.topics}
            ordered = tuple(by_name[name] for name in change.topics)
            self._put({place: replace(lesson, topics=ordered)})
            return
        if change.topics or sorted(change.numbers) != list(range(1, len(lesson.asked) + 1)):
            raise ItembankError(
                f"Write each number from 1 to {len(lesson.asked)} once, or each of the topics "
                f"{join_words(list(lesson.counts))}."
            )
        asked = tuple(lesson.asked[number - 1] for number in change.numbers)
        self._put({place: replace(lesson, asked=asked)})

    @_make.register
    def _length(self, change: Length) -> None:
        number = change.questions
        if not 1 <= number <= MOST_QUESTIONS:
            raise ItembankError(f"A starter has 1 to {MOST_QUESTIONS} questions.")
        changed = {}
        for place in self._places(change.lesson):
            lesson = replace(self.plan.lessons[place], questions=number)
            total = sum(lesson.counts.values())
            hold = Hold(lesson.counts)
            # Fewer than there were: pins stay, and of the rest the worthiest, but no new topics.
            if total > number:
                pinned = {topic.topic: topic.count for topic in lesson.topics if topic.pinned}
                hold = Hold(pinned, set(lesson.counts))
            changed[place] = (lesson, hold)
        self._fill(changed)
