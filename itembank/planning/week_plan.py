"""A class's week as a plan file: written by the tool, edited by the teacher, built from again.

What a teacher may change stands in the head of the file itself (:data:`HOW`).
"""

from __future__ import annotations

import datetime
import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from itembank.planning.choose_topics import TopicState
from itembank.planning.memory import Seen, remember
from itembank.planning.scheme import Scheme
from itembank.toml_file import TomlFile

FOLDER = "plans"
HOW = """\
# Change what you like, then run: itembank week --plan {path}
#   topics     what the starter asks about; the counts come to ‘questions’.
#              pinned = true: stays, even if the week is planned anew.
#   items      addresses of questions you want asked.
#   never      topics and addresses that are not to be asked.
#   asked      the questions as chosen, in order. Take one out for another in its place.
#   seed       another number gives other questions wherever ‘asked’ leaves a place.
"""


@dataclass(frozen=True, slots=True)
class WeekTopic:
    """A topic of a starter, its number of questions and why; pinned where the teacher chose it."""

    topic: str
    count: int
    why: str = ""
    pinned: bool = False


@dataclass(frozen=True, slots=True)
class PlannedLesson:
    """One lesson of the week.

    `items` are addresses the teacher wants, `never` topics and addresses that are not to come,
    `asked` the questions chosen, in the order of the starter.
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

    @property
    def key(self) -> tuple[datetime.date, str]:
        """Return what tells the lesson from the others of its class."""
        return self.date, self.period

    @property
    def counts(self) -> dict[str, int]:
        """Return the number of questions on each topic."""
        return {one.topic: one.count for one in self.topics}

    @property
    def never_topics(self) -> frozenset[str]:
        """Return the topics among what is not to come."""
        return frozenset(one for one in self.never if not is_address(one))

    def __str__(self) -> str:
        """Return the day and the period."""
        return f"{self.date:%A} {self.date.day} {self.date:%B}, period {self.period}"


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


def plan_text(plan: WeekPlan, path: Path, skipped: Iterable[str] = ()) -> str:
    """Return a plan as TOML with words on how to change it."""
    head = [f"# The week of {plan.week.day} {plan.week:%B %Y} for {plan.class_name}."]
    head += [f"# No lesson on {line}" for line in skipped]
    lines = [*head, HOW.format(path=path), f"class = {_quoted(plan.class_name)}"]
    lines.append(f"week = {plan.week.isoformat()}")
    for lesson in plan.lessons:
        lines += ["", "[[lessons]]", f"date = {lesson.date.isoformat()}  # {lesson.date:%A}"]
        lines.append(f"period = {_quoted(lesson.period)}")
        lines.append(f"title = {_quoted(lesson.title)}")
        lines += [f"questions = {lesson.questions}", f"seed = {lesson.seed}", "topics = ["]
        for one in lesson.topics:
            pinned = "pinned = true, " if one.pinned else ""
            lines.append(
                f"    {{ topic = {_quoted(one.topic)}, count = {one.count}, {pinned}"
                f"why = {_quoted(one.why)} }},"
            )
        lines.append("]")
        for name in ("items", "never", "asked"):
            values = getattr(lesson, name)
            rows = [f"    {_quoted(value)}," for value in values]
            lines += [f"{name} = [", *rows, "]"] if values else [f"{name} = []"]
    return "\n".join(lines) + "\n"


def _quoted(text: str) -> str:
    # A JSON string is a TOML basic string, once DEL is escaped as TOML wants it.
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")


@dataclass(frozen=True, slots=True)
class AskedBefore:
    """What an earlier plan of the class asks in one lesson."""

    date: datetime.date
    period: str
    topics: tuple[str, ...]
    addresses: tuple[str, ...]


def planned_lessons(folder: Path, class_name: str) -> list[AskedBefore]:
    """Return what all plan files of a class in a department's folder ask, by date.

    Raises:
        FileFaults: one of them is not TOML.
    """
    found = []
    for path in sorted((folder / FOLDER).glob("week-*.toml")):
        data = TomlFile(path).data
        if str(data.get("class", "")).casefold() != class_name.casefold():
            continue
        for row in data.get("lessons", []):
            if isinstance(row, dict) and isinstance(row.get("date"), datetime.date):
                topics = [t.get("topic") for t in row.get("topics", []) if isinstance(t, dict)]
                asked = [*row.get("asked", []), *row.get("items", [])]
                found.append(
                    AskedBefore(
                        row["date"],
                        str(row.get("period", "")),
                        tuple(str(one) for one in topics if one),
                        tuple(dict.fromkeys(str(one) for one in asked)),
                    )
                )
    return sorted(found, key=lambda one: (one.date, one.period))


def topic_states(
    scheme: Scheme,
    titles: Mapping[str, str],
    recorded: Mapping[str, Sequence[Seen]],
    planned: Iterable[AskedBefore],
    before: datetime.date,
) -> tuple[TopicState, ...]:
    """Return what the class knows of each topic of the scheme, as far as is known `before` a day.

    A lesson that was planned and not recorded counts as asked, without a result.
    """
    seen = {name: [one for one in rows if one.date < before] for name, rows in recorded.items()}
    dates = {one.date for rows in recorded.values() for one in rows}
    for lesson in planned:
        if lesson.date < before and lesson.date not in dates:
            for name in lesson.topics:
                seen.setdefault(name, []).append(Seen(lesson.date, 0, 0))
    found = []
    for one in scheme.topics:
        # What was asked before the teaching, by a pin, says nothing of what is remembered of it.
        rows = tuple(row for row in seen.get(one.topic, ()) if row.date >= one.date)
        title = titles.get(one.topic, one.topic)
        found.append(TopicState(one.topic, title, one.date, remember(one.date, rows), rows))
    return tuple(found)
