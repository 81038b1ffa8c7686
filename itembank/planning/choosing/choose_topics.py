"""Which topics each starter of a week brings back: an integer programme.

For every lesson and every topic taught by then, asking the topic has a worth
(:mod:`itembank.planning.choosing.topic_worth`): more the longer it was not seen and the more of the
class is expected to be wrong, less the more often it came back, with a bonus where the coming
lesson needs it. HiGHS picks for the whole week at once the questions worth most in all
(:mod:`itembank.planning.choosing.topic_programme`), so that

* every starter has its number of questions, none on a topic not yet taught;
* no topic comes twice in a starter unless there are too few topics, or the teacher asks;
* a topic asked less than `rest` days ago is worth next to nothing;
* each starter mixes recent and older topics, as far as there are both;
* what the teacher pinned is there, and what was banned is not.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from itembank.errors import ItembankError
from itembank.planning.choosing.topic_state import ChosenTopic, LessonChoice, LessonWish, TopicState
from itembank.planning.choosing.week_settings import ChoiceSettings
from itembank.text.in_words import long_day

__all__ = [
    "ChosenTopic",
    "LessonChoice",
    "LessonWish",
    "TopicState",
    "choose_topics",
]


def choose_topics(
    lessons: Sequence[LessonWish],
    topics: Sequence[TopicState],
    prerequisites: Mapping[str, Sequence[str]],
    settings: ChoiceSettings | None = None,
    seed: int = 0,
) -> tuple[LessonChoice, ...]:
    """Return the topics of each lesson's starter, the same ones for the same input and seed.

    Lessons are in order of date.

    Raises:
        ItembankError: no topic has been taught before a lesson, or pins ask for more
            questions than a starter has, for a banned topic, or for one not in the scheme.
    """
    # Here and not above: HiGHS is loaded only where a week is planned.
    from itembank.planning.choosing.topic_programme import solve

    settings = settings or ChoiceSettings()
    for lesson in lessons:
        _check(lesson, topics)
    counts = solve(lessons, topics, prerequisites, settings, seed)
    return tuple(
        LessonChoice(
            lesson.date,
            tuple(
                ChosenTopic(topic.topic, count)
                for topic, count in zip(topics, row, strict=True)
                if count
            ),
        )
        for lesson, row in zip(lessons, counts, strict=True)
    )


def _check(lesson: LessonWish, topics: Sequence[TopicState]) -> None:
    day = long_day(lesson.date)
    known = {state.topic for state in topics}
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
    free = any(lesson.allows(state) for state in topics)
    if not free and sum(lesson.pinned.values()) < lesson.questions:
        if any(state.taught < lesson.date for state in topics):
            raise ItembankError(
                f"{day}: all that was taught before this lesson is banned or makes way, so there "
                "is nothing to bring back. Take a ban away, pin a topic or ask fewer questions."
            )
        raise ItembankError(
            f"{day}: nothing in the scheme was taught before this lesson, so there is nothing "
            "to bring back. Pin a topic, or check the dates of the scheme."
        )
