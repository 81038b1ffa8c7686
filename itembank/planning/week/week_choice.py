"""Chooses the topics of a week's lessons, or only those that a teacher's change leaves open."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import field, replace

from itembank.data_class import dataclass
from itembank.planning.calendar.scheme import Scheme
from itembank.planning.choosing.choose_topics import LessonWish, TopicState, choose_topics
from itembank.planning.choosing.memory import after_teaching
from itembank.planning.choosing.reason_words import reason_words
from itembank.planning.choosing.topic_reason import Cause, Reason, reason
from itembank.planning.choosing.week_settings import ChoiceSettings
from itembank.planning.week.week_plan import PlannedLesson, WeekPlan, WeekTopic


@dataclass(frozen=True, slots=True)
class Known:
    """What a choice rests on: topics with their past, the scheme, settings."""

    topics: tuple[TopicState, ...]
    scheme: Scheme
    prerequisites: Mapping[str, Sequence[str]]
    settings: ChoiceSettings = field(default_factory=ChoiceSettings)
    seed: int = 0


@dataclass(frozen=True, slots=True)
class Hold:
    """What of a lesson stays: questions on topics at the least, and the only topics allowed."""

    least: Mapping[str, int]
    only: Collection[str] | None = None


def choose_week(
    lessons: Sequence[PlannedLesson], holds: Sequence[Hold], known: Known
) -> tuple[PlannedLesson, ...]:
    """Return the lessons with their topics chosen for the whole week at once.

    A topic that was there keeps its reason; a pin stays a pin.

    Raises:
        ItembankError: nothing can be chosen, or what is held asks for too much.
    """
    names = {state.topic for state in known.topics}
    extra = dict.fromkeys(t for hold in holds for t in hold.least if t not in names)
    first = lessons[0].date
    # A topic from outside the scheme comes only where the teacher wants it.
    states = [
        *known.topics,
        *(TopicState(name, name, first, after_teaching(first)) for name in extra),
    ]
    wishes = []
    for lesson, hold in zip(lessons, holds, strict=True):
        banned = {*lesson.never_topics, *extra}
        if hold.only is not None:
            banned |= {state.topic for state in states if state.topic not in hold.only}
        wishes.append(
            LessonWish(
                lesson.date,
                lesson.questions,
                _coming(lesson, known),
                dict(hold.least),
                # What is held is wanted, whatever was banned before: the latest word counts.
                frozenset(banned - set(hold.least)),
            )
        )
    chosen = choose_topics(wishes, states, known.prerequisites, known.settings, known.seed)
    return tuple(
        replace(
            lesson,
            topics=in_order(
                lesson,
                [_with_reason(topic.topic, topic.count, lesson, known) for topic in choice.topics],
            ),
        )
        for lesson, choice in zip(lessons, chosen, strict=True)
    )


def in_order(lesson: PlannedLesson, topics: Sequence[WeekTopic]) -> tuple[WeekTopic, ...]:
    """Return topics with those that were there before in their order, the new ones after them."""
    places = {topic.topic: place for place, topic in enumerate(lesson.topics)}
    return tuple(sorted(topics, key=lambda topic: places.get(topic.topic, len(places))))


def _with_reason(topic: str, count: int, lesson: PlannedLesson, known: Known) -> WeekTopic:
    old = next((wanted for wanted in lesson.topics if wanted.topic == topic), None)
    # Kept, with the words that a teacher may have written in its place.
    if old is not None and old.reason is not None:
        return replace(old, count=count)
    return WeekTopic(topic, count, reason_for(topic, lesson, known), old is not None and old.pinned)


def reason_for(topic: str, lesson: PlannedLesson, known: Known) -> Reason:
    """Return why a topic comes in a lesson, by what is known of the class."""
    state = next((state for state in known.topics if state.topic == topic), None)
    if state is None:
        return Reason(lesson.date, Cause.OUTSIDE)
    if state.taught >= lesson.date:
        return Reason(lesson.date, Cause.TEACHER, state.taught)
    wish = LessonWish(lesson.date, lesson.questions, _coming(lesson, known))
    return reason(state, wish, known.prerequisites, known.topics)


def _coming(lesson: PlannedLesson, known: Known) -> tuple[str, ...]:
    """Return the topics that a lesson itself teaches."""
    current = known.scheme.current(lesson.date)
    return (current,) if current else ()


def with_facts(plan: WeekPlan, known: Known) -> WeekPlan:
    """Return a plan with the facts of reasons of which only a sentence is there.

    Older versions wrote nothing else. Where what is known gives the very same words, it is what
    they were made of; where it does not, the sentence stays. It is compared, never read.
    """

    def found(topic: WeekTopic, lesson: PlannedLesson) -> WeekTopic:
        if not topic.is_sentence:
            return topic
        facts = reason_for(topic.topic, lesson, known)
        return (
            replace(topic, reason=facts)
            if reason_words(facts, topic.pinned) == topic.why
            else topic
        )

    return replace(
        plan,
        lessons=tuple(
            replace(lesson, topics=tuple(found(topic, lesson) for topic in lesson.topics))
            for lesson in plan.lessons
        ),
    )
