"""Why a topic is in a starter, as data: only what is on record, nothing that is estimated.

The words for it are found last, in :mod:`itembank.planning.choosing.reason_words`, and nothing
reads them back: a teacher may have written others in their place.
"""

from __future__ import annotations

import datetime
from collections.abc import Mapping, Sequence
from enum import StrEnum

from itembank.data_class import dataclass
from itembank.planning.choosing.memory import Seen, by_day
from itembank.planning.choosing.topic_state import LessonWish, TopicState


class Cause(StrEnum):
    """Who or what chose a topic; the value stands in plan files."""

    PAST = "past"
    """The tool did, by what the class was taught and asked."""
    TEACHER = "teacher"
    """The teacher did, and nothing else speaks for it."""
    OUTSIDE = "outside the scheme"
    """The teacher did, and the class's scheme does not have it."""
    PACK = "pack"
    """It stands in the pack that the class had; nothing more is known."""


@dataclass(frozen=True, slots=True)
class Occasion:
    """A lesson that asked a topic, and how sure it is what came of that.

    `right` is the per cent of right answers among `answers`; None where nothing was recorded of
    the topic alone, and then `scored` says that it was part of a score.
    """

    date: datetime.date
    right: int | None = None
    answers: int = 0
    scored: bool = False


@dataclass(frozen=True, slots=True)
class Again:
    """Questions that come again though they were used of late: when, and how many there are."""

    date: datetime.date
    questions: int


@dataclass(frozen=True, slots=True)
class Reason:
    """Why a topic is in the starter of a lesson.

    Parameters
    ----------
    lesson
        The day of that lesson, from which days are counted back.
    cause
        Who chose the topic.
    taught
        The day the class is taught it; None where that is not known.
    last
        The last occasion that asked it.
    told
        The last occasion of which something is known of the topic alone, where that is another.
    needed_for
        The titles of what the lesson teaches and what rests on this topic.
    again
        Where its questions come again too soon, since there are no others.
    own
        What the teacher wrote in the place of our words, or an older version of this tool did,
        which kept no facts.
    """

    lesson: datetime.date
    cause: Cause = Cause.TEACHER
    taught: datetime.date | None = None
    last: Occasion | None = None
    told: Occasion | None = None
    needed_for: tuple[str, ...] = ()
    again: Again | None = None
    own: str = ""


def reason(
    topic: TopicState,
    lesson: LessonWish,
    prerequisites: Mapping[str, Sequence[str]],
    topics: Sequence[TopicState],
) -> Reason:
    """Return why a topic is in a starter that brings it back.

    >>> from itembank.planning.choosing.memory import remember
    >>> day = datetime.date(2026, 10, 19)
    >>> seen = (Seen(datetime.date(2026, 11, 18), 14, 26),)
    >>> state = TopicState("ratio.share", "Share in a ratio", day, remember(day, seen), seen)
    >>> found = reason(state, LessonWish(datetime.date(2026, 11, 30), 8), {}, [state])
    >>> found.last
    Occasion(date=datetime.date(2026, 11, 18), right=54, answers=26, scored=False)
    """
    seen = [_occasion(occasion) for occasion in by_day(topic.seen)]
    known = [occasion for occasion in seen if occasion.right is not None]
    titles = {state.topic: state.title for state in topics}
    return Reason(
        lesson.date,
        Cause.PAST,
        topic.taught,
        last=seen[-1] if seen else None,
        # Only where the last occasion says nothing itself: else one thing would be told twice.
        told=known[-1] if known and seen[-1].right is None else None,
        needed_for=tuple(
            titles.get(name, name)
            for name in lesson.coming
            if topic.topic in prerequisites.get(name, ())
        ),
    )


def _occasion(seen: Seen) -> Occasion:
    share = seen.share
    if share is None:
        return Occasion(seen.date, scored=seen.scored)
    return Occasion(seen.date, round(100 * share), round(seen.out_of), seen.scored)
