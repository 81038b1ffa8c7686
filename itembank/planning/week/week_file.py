"""Reads a plan file that a teacher may have edited; all its faults are told at once."""

from __future__ import annotations

import datetime
import re
from collections import Counter
from collections.abc import Callable, Collection, Mapping
from dataclasses import replace
from pathlib import Path

from itembank.errors import ItembankError
from itembank.files.toml_table import Table, TomlFile
from itembank.planning.calendar.calendar import DAY, Calendar, monday, read_date
from itembank.planning.calendar.days import period_order, usual_seed
from itembank.planning.calendar.timetable import PERIOD, USUAL_PERIOD
from itembank.planning.choosing.reason_words import reason_words
from itembank.planning.choosing.topic_reason import Reason
from itembank.planning.department.department import MOST_QUESTIONS, Department
from itembank.planning.department.plan_file import MOST_SEED
from itembank.planning.department.sheet_items import LessonSheets
from itembank.planning.topic_names import unknown_topic
from itembank.planning.week.reason_rows import read_reason_row
from itembank.planning.week.sheet_rows import read_sheet_row
from itembank.planning.week.week_plan import (
    FILE_NAME,
    MOST_TITLE,
    PlannedLesson,
    WeekPlan,
    WeekTopic,
    is_address,
    no_topic,
)
from itembank.text.characters import shown_value
from itembank.text.folding import folded, same_name

TopicOf = Callable[[str], str]
LessonKey = tuple[datetime.date, str]


def read_week_plan(
    path: Path,
    department: Department,
    calendar: Calendar,
    known: Collection[str],
    topic_of: TopicOf,
    class_name: str | None = None,
) -> WeekPlan:
    """Read a plan file; `topic_of` returns the topic of an address or raises ItembankError.

    Raises:
        FileFaults: every fault of the file, each with its line.
    """
    file = TomlFile(path)
    top = file.top()
    name = top.text("class", None)
    names = {folded(school_class.name): school_class.name for school_class in department.classes}
    if name and folded(name) not in names:
        top.fault(
            "class", f"There is no class {name}. The classes are {', '.join(names.values())}."
        )
    elif name and class_name is not None and not same_name(name, class_name):
        top.fault("class", f"This is a plan for {name}, not for {class_name}.")
    named = FILE_NAME.fullmatch(path.name)
    if named and folded(name) in names and not same_name(named[1], name):
        top.fault(
            "class",
            f"The file's name says {named[1]}, but the plan is for {name}. Change one of them.",
        )
    week = read_date(top, "week")
    if week is not None and week != monday(week):
        top.fault("week", f"{week} is no Monday. Write {monday(week)}.")
    rows = top.tables("lessons")
    if not rows and not file.faults:
        top.fault("lessons", "There are no lessons. Add a [[lessons]] table.")
    reasons = _reasons(top)
    lessons: list[PlannedLesson] = []
    for row in rows:
        lesson = _lesson(row, names.get(folded(name), name), known, topic_of, reasons)
        if lesson is None:
            continue
        closed = calendar.closed_reason(lesson.date)
        if week is not None and not week <= lesson.date < week + 7 * DAY:
            row.fault("date", f"{lesson.date} is not in the week of {week}.")
        elif closed:
            row.fault("date", f"There are no lessons on {lesson.date}: {closed}.")
        elif lesson.key in [earlier.key for earlier in lessons]:
            row.fault("date", f"There are two lessons on {lesson}. Take one out.")
        lessons.append(lesson)
    sheets = _sheets(top, topic_of)
    top.close()
    file.finish()
    assert week is not None
    # By day and period, so that lessons may stand in any order in the file.
    lessons = [replace(lesson, sheets=sheets.get(lesson.key, LessonSheets())) for lesson in lessons]
    ordered = sorted(lessons, key=lambda lesson: (lesson.date, period_order(lesson.period)))
    return WeekPlan(names[folded(name)], week, tuple(ordered))


def _sheets(top: Table, topic_of: TopicOf) -> dict[tuple[datetime.date, str], LessonSheets]:
    """Read the sheets of each lesson; those of a lesson that was taken out do no harm."""
    found: dict[tuple[datetime.date, str], LessonSheets] = {}
    for row in top.tables("sheets"):
        key, sheets = read_sheet_row(row, topic_of)
        if key in found:
            row.fault("", f"There are two [[sheets]] tables for {key[0]}. Take one out.")
        elif key is not None:
            found[key] = sheets
    return found


def _reasons(top: Table) -> dict[LessonKey, dict[str, Reason]]:
    """Read what is kept of the reasons; those of a lesson that was taken out do no harm."""
    found: dict[LessonKey, dict[str, Reason]] = {}
    for row in top.tables("reasons"):
        key, reasons = read_reason_row(row)
        if key is not None:
            found.setdefault(key, {}).update(reasons)
    return found


def _lesson(
    row: Table,
    class_name: str,
    known: Collection[str],
    topic_of: TopicOf,
    reasons: Mapping[LessonKey, Mapping[str, Reason]],
) -> PlannedLesson | None:
    date = read_date(row, "date")
    title = row.text("title", "Starter", most=MOST_TITLE)
    period = row.text("period", USUAL_PERIOD, most=8)
    # Else its pack would stand in a folder that nobody takes for the pack of a lesson.
    if not re.fullmatch(PERIOD, period):
        row.fault("period", f"‘{period}’ is no period. Write letters and digits alone, such as 3.")
    questions = row.whole("questions", None, 1, MOST_QUESTIONS)
    seed = row.whole("seed", None, 0, MOST_SEED) if "seed" in row else None
    row.known("seed")
    sound = len(row.file.faults)
    topics = _topics(row, known, date, reasons.get((date, period), {}) if date else {})
    counts = {topic.topic: topic.count for topic in topics}
    # A number that cannot be read would only be told of twice.
    counted = len(row.file.faults) == sound and isinstance(row.any("questions"), int)
    if topics and counted and sum(counts.values()) != questions:
        row.fault(
            "questions",
            f"The topics ask for {sum(counts.values())} questions, but ‘questions’ is {questions}. "
            "Change one of them.",
        )
    never = _texts(row, "never")
    for name in never:
        if is_address(name):
            _look_up(row, "never", name, topic_of)
        elif name not in known:
            row.fault("never", unknown_topic(name, known), name, matter="no such topic")
        elif name in counts:
            row.fault("never", f"{name} is among the topics as well. Take one out.", name)
    items = _items(row, counts, never, topic_of)
    asked = []
    # Questions that were pinned take their places first.
    room = Counter(counts)
    room.subtract(Counter(topic for _, topic in items))
    for address in _texts(row, "asked"):
        topic = _look_up(row, "asked", address, topic_of)
        pinned = address in [address for address, _ in items]
        # What no longer fits was the tool's choice, and makes room for what does.
        if address not in never and address not in asked and (pinned or room[topic] > 0):
            room[topic] -= not pinned
            asked.append(address)
    row.close()
    if date is None:
        return None
    return PlannedLesson(
        date,
        period,
        title,
        questions,
        seed if seed is not None else usual_seed(class_name, date, title),
        topics,
        tuple(address for address, _ in items),
        tuple(never),
        tuple(asked),
    )


def _topics(
    row: Table,
    known: Collection[str],
    date: datetime.date | None,
    reasons: Mapping[str, Reason],
) -> tuple[WeekTopic, ...]:
    found: list[WeekTopic] = []
    sound = len(row.file.faults)
    for place, value in enumerate(row.items("topics")):
        if isinstance(value, str):  # a name alone: one question
            value = {"topic": value}
        if not isinstance(value, dict):
            row.fault("topics", no_topic(value))
            continue
        before = len(row.file.faults)
        table = Table(row.file, value, (*row.path, "topics", place))
        name = table.text("topic", None)
        count = table.whole("count", 1, 1, MOST_QUESTIONS)
        why = str(table.any("why") or "")
        pinned = table.flag("pinned", False)
        if name and name not in known:
            table.fault("topic", unknown_topic(name, known), matter="no such topic")
        elif name in [topic.topic for topic in found]:
            table.fault("topic", f"The topic {name} is listed twice. Give it a larger count.")
        elif name:
            reason = _reason(name, why, date or datetime.date.min, reasons)
            # A topic without a reason was written by the teacher.
            chosen = reason or Reason(date or datetime.date.min)
            found.append(WeekTopic(name, count, chosen, pinned or reason is None))
        table.close()
        _place(row, before, [part for key, part in value.items() if key != "why"])
    if not found and len(row.file.faults) == sound:
        row.fault("topics", "The lesson has no topics. List at least one.")
    return tuple(found)


def _reason(
    topic: str, why: str, date: datetime.date, reasons: Mapping[str, Reason]
) -> Reason | None:
    """Return why a topic comes; None where nothing says so.

    Words that are ours are only compared, never read: what they say is kept as facts.
    """
    facts = reasons.get(topic)
    if facts is not None:
        ours = {reason_words(facts, pinned) for pinned in (True, False)}
        return facts if not why or why in ours else replace(facts, own=why)
    chosen = Reason(date)
    if why == reason_words(chosen):  # whatever the other topics say: these words rest on no facts
        return chosen
    # A line that was written over keeps the words of the topic that stood there.
    others = (
        reason_words(reason, pinned) for reason in reasons.values() for pinned in (True, False)
    )
    return None if not why or why in others else replace(chosen, own=why)


def _place(row: Table, before: int, values: list[object]) -> None:
    """Tell the faults of one topic's table where the topic stands, not where the list begins."""
    word = next((value for value in values if isinstance(value, str)), "")
    faults = row.file.faults
    line = row.file.line((*row.path, "topics"), word)
    faults[before:] = [replace(fault, line=line) for fault in faults[before:]]


def _items(
    row: Table, counts: dict[str, int], never: list[str], topic_of: TopicOf
) -> list[tuple[str, str]]:
    found: list[tuple[str, str]] = []
    held: Counter[str] = Counter()
    for address in _texts(row, "items"):
        topic = _look_up(row, "items", address, topic_of)
        if not topic:
            continue
        held[topic] += 1
        if address in [address for address, _ in found]:
            row.fault("items", f"{address} is listed twice.", address)
        elif address in never:
            row.fault(
                "items", f"{address} is both in ‘items’ and in ‘never’. Take one out.", address
            )
        elif topic not in counts:
            row.fault("items", f"{address} is on {topic}, which is not among the topics.", address)
        elif held[topic] > counts[topic]:
            row.fault("items", f"There are more items than questions on {topic}.", address)
        found.append((address, topic))
    return found


def _texts(row: Table, key: str) -> list[str]:
    found = []
    for value in row.items(key):
        if isinstance(value, str) and value.strip():
            found.append(value.strip())
        else:
            row.fault(key, f"‘{key}’ holds names in quotation marks, not {shown_value(value)}.")
    return found


def _look_up(row: Table, key: str, address: str, topic_of: TopicOf) -> str:
    try:
        return topic_of(address)
    except ItembankError as error:
        row.fault(key, str(error), address)
        return ""
