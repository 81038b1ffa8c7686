"""What a choice of topics starts from and ends in: topics, lessons, and the topics chosen."""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from dataclasses import field

from itembank.data_class import dataclass
from itembank.planning.choosing.memory import Memory, Seen


@dataclass(frozen=True, slots=True)
class TopicState:
    """A topic of the scheme: when it is taught and how the class has done on it so far.

    `rested` is the number of its questions that were not used of late; None where there are as
    good as always enough. `earlier` is true of what an earlier year taught.
    """

    topic: str
    title: str
    taught: datetime.date
    memory: Memory
    seen: tuple[Seen, ...] = ()
    rested: int | None = None
    earlier: bool = False


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

    def allows(self, topic: TopicState) -> bool:
        """Tell whether the starter may ask a topic that is not pinned."""
        return topic.taught < self.date and topic.topic not in self.banned


@dataclass(frozen=True, slots=True)
class ChosenTopic:
    """A topic of a starter, and its number of questions."""

    topic: str
    count: int


@dataclass(frozen=True, slots=True)
class LessonChoice:
    """The topics of one starter."""

    date: datetime.date
    topics: tuple[ChosenTopic, ...]
