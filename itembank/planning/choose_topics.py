"""Which topics each starter of a week brings back: an integer programme with reasons.

For every lesson and every topic taught by then, asking the topic is worth the recall it is
expected to save over the weeks that follow (:func:`itembank.planning.memory.saved`), and
something for the share of the class expected to be wrong, so that a weak topic comes back
before a strong one; with a bonus where the coming lesson needs it. HiGHS, through scipy's
``milp``, picks for the whole week at once the questions worth most in all, so that

* every starter has its number of questions, none on a topic not yet taught;
* no topic comes twice in a starter unless there are too few topics, or the teacher asks;
* coming back again in the same week, or on two days running, is worth less and less;
* each starter mixes recent and older topics, as far as there are both;
* what the teacher pinned is there, and what was banned is not.
"""

from __future__ import annotations

import datetime
import random
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from itembank.errors import ItembankError
from itembank.planning.memory import Memory, Seen, recall, saved
from itembank.planning.week_settings import ChoiceSettings

__all__ = [
    "ChoiceSettings",
    "ChosenTopic",
    "LessonChoice",
    "LessonWish",
    "TopicState",
    "choose_topics",
    "reason",
    "worth",
]


@dataclass(frozen=True, slots=True)
class TopicState:
    """A topic of the scheme: when it is taught and how the class has done on it so far."""

    topic: str
    title: str
    taught: datetime.date
    memory: Memory
    seen: tuple[Seen, ...] = ()


@dataclass(frozen=True, slots=True)
class LessonWish:
    """A lesson to choose for: when, how long, and what the teacher has settled already.

    `coming` are the topics the lesson itself teaches; `pinned` gives topics with their number
    of questions.
    """

    date: datetime.date
    questions: int
    coming: tuple[str, ...] = ()
    pinned: Mapping[str, int] = field(default_factory=dict)
    banned: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class ChosenTopic:
    """A topic of a starter, its number of questions, and why it is there, in one line."""

    topic: str
    count: int
    reason: str


@dataclass(frozen=True, slots=True)
class LessonChoice:
    """The topics of one starter."""

    date: datetime.date
    topics: tuple[ChosenTopic, ...]


def choose_topics(
    lessons: Sequence[LessonWish],
    topics: Sequence[TopicState],
    prerequisites: Mapping[str, Sequence[str]],
    settings: ChoiceSettings | None = None,
    seed: int = 0,
) -> tuple[LessonChoice, ...]:
    """Return the topics of each lesson's starter, the same ones for the same input and seed.

    Raises:
        ItembankError: no topic has been taught before a lesson, or pins ask for more
            questions than a starter has, for a banned topic, or for one not in the scheme.
    """
    settings = settings or ChoiceSettings()
    for lesson in lessons:
        _check(lesson, topics)
    counts = _solve(lessons, topics, prerequisites, settings, seed)
    return tuple(
        LessonChoice(
            lesson.date,
            tuple(
                ChosenTopic(topic.topic, count, reason(topic, lesson, prerequisites, topics))
                for topic, count in zip(topics, row, strict=True)
                if count
            ),
        )
        for lesson, row in zip(lessons, counts, strict=True)
    )


def _check(lesson: LessonWish, topics: Sequence[TopicState]) -> None:
    day = f"{lesson.date:%A} {lesson.date.day} {lesson.date:%B}"
    known = {one.topic for one in topics}
    for name in lesson.pinned:
        if name not in known:
            raise ItembankError(f"{day}: {name} is pinned, but it is not in the scheme.")
        if name in lesson.banned:
            raise ItembankError(f"{day}: {name} is both pinned and banned. Take one away.")
    if sum(lesson.pinned.values()) > lesson.questions:
        raise ItembankError(
            f"{day}: the pins ask for {sum(lesson.pinned.values())} questions, the starter has "
            f"{lesson.questions}. Pin fewer or ask more questions."
        )
    free = [one for one in topics if one.taught < lesson.date and one.topic not in lesson.banned]
    if not free and sum(lesson.pinned.values()) < lesson.questions:
        raise ItembankError(
            f"{day}: nothing in the scheme was taught before this lesson, so there is nothing "
            "to bring back. Pin a topic, or check the dates of the scheme."
        )


UNKNOWN = 0.5
"""The share right that stands in for a topic without results."""


def worth(topic: TopicState, date: datetime.date, settings: ChoiceSettings) -> float:
    """Return what asking a topic on a day is worth, before any bonus or cost.

    >>> day = datetime.date(2026, 10, 19)
    >>> from itembank.planning.memory import after_teaching
    >>> one = TopicState("ratio.share", "Share in a ratio", day, after_teaching(day))
    >>> days = [day + datetime.timedelta(days=count) for count in (1, 8)]
    >>> worth(one, days[0], ChoiceSettings()) < worth(one, days[1], ChoiceSettings())
    True
    """
    wrong = 1 - recall(topic.memory, date)
    # What the class last showed counts beside what is expected of it: once both are nearly
    # forgotten, a topic that went badly still comes before one that went well.
    told = [one for one in topic.seen if one.share is not None]
    last = max(told, key=lambda one: one.date).share if told else None
    wrong += 1 - (UNKNOWN if last is None else last)
    return saved(topic.memory, date, settings.horizon) + settings.weak * wrong


def _limits(lesson: LessonWish, topics: Sequence[TopicState]) -> tuple[list[int], list[int]]:
    """Return the fewest and the most questions a starter may have on each topic."""
    least = [lesson.pinned.get(one.topic, 0) for one in topics]
    free = [one.taught < lesson.date and one.topic not in lesson.banned for one in topics]
    # One question a topic, and where there are too few topics as even a share as can be.
    rest = lesson.questions - sum(least)
    open_to = [place for place, is_free in enumerate(free) if is_free and not least[place]]
    if rest <= len(open_to):
        return least, [max(low, int(f and not low)) for low, f in zip(least, free, strict=True)]
    wanted = -(-rest // max(sum(free), 1))
    return least, [low + wanted * f for low, f in zip(least, free, strict=True)]


def _mix(
    lesson: LessonWish,
    topics: Sequence[TopicState],
    least: Sequence[int],
    most: Sequence[int],
    settings: ChoiceSettings,
) -> list[tuple[list[int], int]]:
    """Return sets of topics, by place, with the fewest questions a starter has on each set.

    They never ask for more than there is, nor for more than the pins leave room for.
    """
    room = lesson.questions - sum(least)
    found = []
    for recent, wanted in ((True, settings.fewest_recent), (False, settings.fewest_older)):
        places = [
            place
            for place, one in enumerate(topics)
            if most[place] and ((lesson.date - one.taught).days <= settings.recent) == recent
        ]
        pinned = sum(least[place] for place in places)
        there = sum(most[place] for place in places)
        extra = min(max(round(wanted * lesson.questions / 8) - pinned, 0), there - pinned, room)
        room -= extra
        if extra:
            found.append((places, pinned + extra))
    return found


def _solve(
    lessons: Sequence[LessonWish],
    topics: Sequence[TopicState],
    prerequisites: Mapping[str, Sequence[str]],
    settings: ChoiceSettings,
    seed: int,
) -> list[list[int]]:
    """Return the number of questions for each lesson and topic."""
    from itembank.planning.programme import Programme

    programme = Programme()
    # Ties are settled by a lot too small to outweigh any difference that matters.
    lot = random.Random(f"{seed}/topics")
    asked: list[list[int]] = []
    worths: list[list[float]] = []
    for lesson in lessons:
        least, most = _limits(lesson, topics)
        needed = {name for one in lesson.coming for name in prerequisites.get(one, ())}
        values = [
            worth(one, lesson.date, settings)
            + settings.prerequisite_bonus * (one.topic in needed)
            + 1e-6 * lot.random()
            for one in topics
        ]
        row = [
            programme.count(low, high, value)
            for low, high, value in zip(least, most, values, strict=True)
        ]
        programme.require(row, lesson.questions, lesson.questions)
        for places, fewest in _mix(lesson, topics, least, most, settings):
            programme.require([row[place] for place in places], fewest, lesson.questions)
        asked.append(row)
        worths.append(values)
    # Costs are on one scale for all topics, so that of two topics asked equally often the one
    # worth more is always the better to ask once more.
    scale = sum(map(sum, worths)) / max(sum(map(len, worths)), 1)
    span = (max(one.date for one in lessons) - min(one.date for one in lessons)).days
    # Where every lesson is near every other, what nearness costs depends on the number of
    # starters alone; pair by pair it would make the programme a hundred times slower.
    all_near = span < settings.rest
    for place in range(len(topics)):
        column = [row[place] for row in asked]
        # The k-th question of the week on a topic costs more and more; the cheapest places are
        # filled first because the costs rise.
        steps = [
            programme.share(
                -scale * (1 - settings.again**k + (k * (1 - settings.running) if all_near else 0))
            )
            for k in range(programme.most(column))
        ]
        programme.equal(column, steps)
        for i, later in enumerate(lessons):
            for k in range(0 if all_near else i):
                if abs((later.date - lessons[k].date).days) < settings.rest:
                    both = programme.share(-scale * (1 - settings.running))
                    programme.at_most_one_more(column[i], column[k], both)
    solution = programme.solve()
    return [[solution[variable] for variable in row] for row in asked]


def reason(
    topic: TopicState,
    lesson: LessonWish,
    prerequisites: Mapping[str, Sequence[str]],
    topics: Sequence[TopicState],
) -> str:
    """Return why a topic is in a starter, in one line a teacher can check.

    >>> day = datetime.date(2026, 10, 19)
    >>> from itembank.planning.memory import remember
    >>> seen = (Seen(datetime.date(2026, 11, 18), 14, 26),)
    >>> one = TopicState("ratio.share", "Share in a ratio", day, remember(day, seen), seen)
    >>> reason(one, LessonWish(datetime.date(2026, 11, 30), 8), {}, [one])
    'taught 19 Oct, last seen 12 days ago, 54 % right then'
    """
    parts = [f"taught {topic.taught.day} {topic.taught:%b}"]
    if topic.seen:
        last = max(topic.seen, key=lambda one: one.date)
        days = (lesson.date - last.date).days
        ago = "yesterday" if days == 1 else f"{days} days ago"
        if last.share is not None:
            parts.append(f"last seen {ago}, {round(100 * last.share)} % right then")
        else:
            parts.append(f"last seen {ago}, not recorded")
            told = [one for one in topic.seen if one.share is not None]
            if told:
                best = max(told, key=lambda one: one.date)
                day = f"{best.date.day} {best.date:%b}"
                parts.append(f"{round(100 * (best.share or 0))} % right on {day}")
    else:
        parts.append("not brought back yet")
    titles = {one.topic: one.title for one in topics}
    for name in lesson.coming:
        if topic.topic in prerequisites.get(name, ()):
            parts.append(f"needed today for {titles.get(name, name)}")
    if lesson.pinned.get(topic.topic):
        parts.append("pinned by you")
    return ", ".join(parts)
