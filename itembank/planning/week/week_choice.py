"""Chooses the topics of a week's lessons, or only those that a teacher's change leaves open."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field, replace

from itembank.planning.calendar.scheme import Scheme
from itembank.planning.choosing.choose_topics import LessonWish, TopicState, choose_topics
from itembank.planning.choosing.memory import after_teaching
from itembank.planning.choosing.topic_reason import Cause, Reason, reason
from itembank.planning.choosing.week_settings import ChoiceSettings
from itembank.planning.week.week_plan import PlannedLesson, WeekTopic


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
    names = {one.topic for one in known.topics}
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
            banned |= {one.topic for one in states if one.topic not in hold.only}
        current = known.scheme.current(lesson.date)
        wishes.append(
            LessonWish(
                lesson.date,
                lesson.questions,
                (current,) if current else (),
                dict(hold.least),
                frozenset(banned - set(hold.least)),
            )
        )
    chosen = choose_topics(wishes, states, known.prerequisites, known.settings, known.seed)
    return tuple(
        replace(
            lesson,
            topics=in_order(
                lesson,
                [
                    _with_reason(one.topic, one.count, lesson, wish, states, known, extra)
                    for one in choice.topics
                ],
            ),
        )
        for lesson, wish, choice in zip(lessons, wishes, chosen, strict=True)
    )


def in_order(lesson: PlannedLesson, topics: Sequence[WeekTopic]) -> tuple[WeekTopic, ...]:
    """Return topics with those that were there before in their order, the new ones after them."""
    places = {one.topic: place for place, one in enumerate(lesson.topics)}
    return tuple(sorted(topics, key=lambda one: places.get(one.topic, len(places))))


def _with_reason(
    topic: str,
    count: int,
    lesson: PlannedLesson,
    wish: LessonWish,
    states: Sequence[TopicState],
    known: Known,
    extra: Collection[str],
) -> WeekTopic:
    old = next((one for one in lesson.topics if one.topic == topic), None)
    if old is not None and old.reason is not None:
        return replace(old, count=count)
    pinned = old is not None and old.pinned
    state = next(one for one in states if one.topic == topic)
    if topic in extra:
        why = Reason(lesson.date, Cause.OUTSIDE)
    elif state.taught >= lesson.date:
        why = Reason(lesson.date, Cause.TEACHER, state.taught)
    else:
        why = reason(state, wish, known.prerequisites, states)
    return WeekTopic(topic, count, why, pinned)
