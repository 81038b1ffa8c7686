"""What can be told of a lesson: hands, scores or answers, own views, how clear the task was.

Four kinds of entry tell how a starter went, from a show of hands to every answer; only one of
them counts at a time for a lesson. Own views and the clarity check stand beside them, and so
does a note that something else was asked than the starter, or that there was no lesson at all.
"""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import TypeAlias

from itembank.data_class import dataclass
from itembank.text.in_words import day_month_year

RESULTS = ("bands", "questions", "scores", "answers")
"""Kinds of entry that tell how the starter went; the later ones say more."""
WHOLE = ("bands", "scores")
"""Those that tell how it went as a whole, and nothing of any one question."""
LEVELS = ("not sure", "partly", "sure")
"""How sure pupils may say they are, from least to most."""
NAMES = {
    "bands": "hands counted by band",
    "questions": "right answers by question",
    "scores": "scores by seat",
    "answers": "answers by seat",
    "own-view": "own views",
    "clarity": "the clarity check",
    "cover": "the note of what was asked instead",
    "cancelled": "the note that there was no lesson",
}


@dataclass(frozen=True, slots=True)
class QuestionFacts:
    """A question of a starter: where it comes from and what it asks."""

    number: int
    address: str
    topic: str
    tier: str
    prompt: str = ""
    marks: int = 1


@dataclass(frozen=True, slots=True)
class LessonFacts:
    """The lesson that results belong to."""

    class_name: str
    date: datetime.date
    out_of: int
    title: str = ""
    period: str = ""
    questions: tuple[QuestionFacts, ...] = ()

    def __str__(self) -> str:
        """Return the class and the day."""
        return f"{self.class_name} on {day_month_year(self.date)}"


@dataclass(frozen=True, slots=True)
class BandCount:
    """Hands counted for one band."""

    letter: str
    name: str
    lowest: int
    highest: int
    pupils: int


@dataclass(frozen=True, slots=True)
class Bands:
    """Hands counted per band; `asked` are the numbers of the questions asked, empty for all."""

    counts: tuple[BandCount, ...]
    asked: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Questions:
    """Right answers counted per question asked: number to (right, out of)."""

    counts: Mapping[int, tuple[int, int]]


@dataclass(frozen=True, slots=True)
class Scores:
    """Marks by seat; `asked` are the numbers of the questions asked, empty for all of them."""

    marks: Mapping[str, int]
    asked: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Answers:
    """Whether each answer is right, by seat and question; misconceptions where one showed.

    A question that was not asked is in no row.
    """

    right: Mapping[str, Mapping[int, bool]]
    misconceptions: Mapping[tuple[str, int], str]


@dataclass(frozen=True, slots=True)
class OwnViews:
    """How sure pupils were before marking: a level by seat, or hands counted for each level."""

    by_seat: Mapping[str, str]
    counts: Mapping[str, int]


@dataclass(frozen=True, slots=True)
class Clarity:
    """How many pupils asked about the task before they could start."""

    unsure: int
    pupils: int | None = None
    note: str = ""


@dataclass(frozen=True, slots=True)
class Cover:
    """That the class was asked something else than its starter; `source` says where it is from.

    What it was are the questions of the lesson it is recorded with.
    """

    source: str


@dataclass(frozen=True, slots=True)
class Cancelled:
    """That a lesson did not take place, or will not."""

    why: str = ""


What: TypeAlias = Bands | Questions | Scores | Answers | OwnViews | Clarity | Cover | Cancelled
KINDS: dict[type, str] = {
    Bands: "bands",
    Questions: "questions",
    Scores: "scores",
    Answers: "answers",
    OwnViews: "own-view",
    Clarity: "clarity",
    Cover: "cover",
    Cancelled: "cancelled",
}
