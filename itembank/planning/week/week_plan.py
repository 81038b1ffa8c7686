"""A class's week as a plan file: written by the tool, edited by the teacher, built from again.

What a teacher may change stands in the head of the file itself (:data:`HOW`).
"""

from __future__ import annotations

import datetime
import re
from collections.abc import Iterable
from dataclasses import field, replace
from typing import Any

from itembank.data_class import dataclass
from itembank.files.toml_comments import with_comments
from itembank.files.toml_write import toml_lines, toml_pairs
from itembank.planning.choosing.reason_words import reason_words
from itembank.planning.choosing.topic_reason import Reason
from itembank.planning.department.sheet_items import LessonSheets
from itembank.planning.week.reason_rows import reason_lines
from itembank.planning.week.sheet_rows import sheet_lines
from itembank.text.characters import shown_value
from itembank.text.in_words import DAYS, day_month_year, long_day, weekday

FOLDER = "plans"
MOST_TITLE = 60
"""Characters of a lesson's title."""
FILE_NAME = re.compile(r"week-(.+)-\d{4}-\d{2}-\d{2}\.toml")
"""What :attr:`WeekPlan.file_name` returns; the class stands in the middle."""
HOW = """\
# Change what you like, then {build}
#   topics     what the starter asks about; the counts come to ‘questions’.
#              pinned = true: stays, even if the week is planned anew.
#   items      addresses of questions you want asked.
#   never      topics and addresses that are not to be asked.
#   asked      the questions as chosen, in order. Take one out for another in its place.
#   seed       another number gives other questions wherever ‘asked’ leaves a place.
# Building from it writes it anew where something changed; comments of your own stay.
"""
_OURS = re.compile(
    r"# (The week of |No lesson on |Change what you like, then |Building from it |  )"
    r"|# (Below is |the same, and its |sheets; a lesson |Write words of your own )"
    rf"|# ({'|'.join(DAYS)})\Z"
)
"""How the comments begin that a plan is written with, now and in plans of earlier versions."""


@dataclass(frozen=True, slots=True)
class WeekTopic:
    """A topic of a starter, its number of questions and why; pinned where the teacher chose it."""

    topic: str
    count: int
    reason: Reason | None = None
    pinned: bool = False

    @property
    def why(self) -> str:
        """Return the reason in words."""
        return reason_words(self.reason, self.pinned)

    @property
    def written_why(self) -> str:
        """Return what stands at ``why`` in a plan file: the teacher's own words, or ours."""
        return self.why if self.reason is None else self.reason.own or self.why

    @property
    def is_sentence(self) -> bool:
        """Tell whether nothing is known of the reason but somebody's words for it."""
        return self.reason is not None and bool(self.reason.own) and self.facts is None

    @property
    def facts(self) -> Reason | None:
        """Return what a plan file keeps of the reason beside its words; None where nothing is."""
        if self.reason is None:
            return None
        facts = replace(self.reason, own="")
        return None if facts == Reason(facts.lesson) else facts


@dataclass(frozen=True, slots=True)
class PlannedLesson:
    """One lesson of the week.

    `items` are addresses the teacher wants, `never` topics and addresses that are not to come,
    `asked` the questions chosen, in the order of the starter, `sheets` those of the sheets.
    """

    date: datetime.date
    period: str
    title: str
    questions: int
    seed: int
    topics: tuple[WeekTopic, ...] = ()
    items: tuple[str, ...] = ()
    never: tuple[str, ...] = ()
    asked: tuple[str, ...] = ()
    sheets: LessonSheets = field(default_factory=LessonSheets)

    @property
    def key(self) -> tuple[datetime.date, str]:
        """Return what tells the lesson from the others of its class."""
        return self.date, self.period

    @property
    def counts(self) -> dict[str, int]:
        """Return the number of questions on each topic."""
        return {topic.topic: topic.count for topic in self.topics}

    @property
    def never_topics(self) -> frozenset[str]:
        """Return the topics among what is not to come."""
        return frozenset(name for name in self.never if not is_address(name))

    def __str__(self) -> str:
        """Return the day and the period."""
        return f"{long_day(self.date)}, period {self.period}"


@dataclass(frozen=True, slots=True)
class WeekPlan:
    """The lessons of a class in the week that begins on the Monday `week`."""

    class_name: str
    week: datetime.date
    lessons: tuple[PlannedLesson, ...]

    @property
    def file_name(self) -> str:
        """Return the name of the plan's file."""
        return f"week-{self.class_name}-{self.week.isoformat()}.toml"


def is_address(text: str) -> bool:
    """Tell an item's address from the name of a topic.

    >>> is_address("ratio.share/core/12"), is_address("ours:pool-1"), is_address("ratio.share")
    (True, True, False)
    """
    return "/" in text or ":" in text


def no_topic(value: object) -> str:
    """Return what is said of a value among a lesson's topics that is neither a name nor a table.

    >>> no_topic(3)
    'A topic is written { topic = "ratio.share", count = 1 }, not 3.'
    """
    written = '{ topic = "ratio.share", count = 1 }'
    return f"A topic is written {written}, not {shown_value(value)}."


def written_anew(text: str, was: str) -> str:
    """Return the text of a plan with what a person noted beside the one it comes in place of."""
    return with_comments(text, was, lambda comment: bool(_OURS.match(comment)))


def plan_text(plan: WeekPlan, skipped: Iterable[str] = (), how_to_build: str = "") -> str:
    """Return a plan as TOML with words on how to change it.

    `skipped` are the days without a lesson; `how_to_build` is what to run to build from the file
    again.
    """
    run = f"run: {how_to_build}" if how_to_build else "build the week from this file again."
    head = [f"# The week of {day_month_year(plan.week)} for {plan.class_name}."]
    head += [f"# No lesson on {line}" for line in skipped]
    lines = [*head, HOW.format(build=run)]
    lines += toml_pairs({"class": plan.class_name, "week": plan.week})
    for lesson in plan.lessons:
        lines += ["", "[[lessons]]", f"date = {lesson.date.isoformat()}  # {weekday(lesson.date)}"]
        for name in ("period", "title", "questions", "seed"):
            lines += toml_pairs({name: getattr(lesson, name)})
        lines.append(f"topics = {toml_lines(map(_topic_row, lesson.topics))}")
        for name in ("items", "never", "asked"):
            values = getattr(lesson, name)
            lines.append(f"{name} = {toml_lines(values) if values else '[]'}")
    lines += reason_lines(
        (
            lesson.key,
            {topic.topic: topic.facts for topic in lesson.topics if topic.facts is not None},
        )
        for lesson in plan.lessons
    )
    lines += sheet_lines((lesson.date, lesson.period, lesson.sheets) for lesson in plan.lessons)
    return "\n".join(lines) + "\n"


def _topic_row(planned: WeekTopic) -> dict[str, Any]:
    pinned = {"pinned": True} if planned.pinned else {}
    return {
        "topic": planned.topic,
        "count": planned.count,
        **pinned,
        "why": planned.written_why,
    }
