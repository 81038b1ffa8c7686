"""What the plans of a class's other weeks ask, and what the class knows of each topic by then."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path

from itembank.data_class import dataclass
from itembank.files.faults import Fault, FileFaults
from itembank.files.toml_table import Table, TomlFile
from itembank.planning.calendar.calendar import read_date
from itembank.planning.calendar.days import period_order
from itembank.planning.calendar.scheme import Scheme
from itembank.planning.calendar.timetable import USUAL_PERIOD
from itembank.planning.choosing.choose_topics import TopicState
from itembank.planning.choosing.class_memory import Scored, remember_class
from itembank.planning.choosing.memory import Seen
from itembank.planning.week.sheet_rows import sheet_addresses
from itembank.planning.week.week_plan import FILE_NAME, FOLDER, no_topic
from itembank.text.folding import same_name


@dataclass(frozen=True, slots=True)
class AskedBefore:
    """What a plan of the class asks in one lesson, on its starter and on its sheets."""

    date: datetime.date
    period: str
    topics: tuple[str, ...]
    addresses: tuple[str, ...]


def planned_lessons(folder: Path, class_name: str) -> list[AskedBefore]:
    """Return what all plan files of a class in a department's folder ask, by date.

    A file that bears another class's name is not opened: there are forty classes in a school,
    and forty weeks.

    Raises:
        FileFaults: one of them cannot be read as a plan; every fault of all of them.
    """
    found: list[AskedBefore] = []
    faults: list[Fault] = []
    for path in sorted((folder / FOLDER).glob("week-*.toml")):
        match = FILE_NAME.fullmatch(path.name)
        if match and not same_name(match[1], class_name):
            continue
        try:
            found += _read(path, class_name)
        except FileFaults as error:
            faults += error.faults
    if faults:
        raise FileFaults(faults)
    return sorted(found, key=lambda lesson: (lesson.date, period_order(lesson.period)))


def _read(path: Path, class_name: str) -> list[AskedBefore]:
    file = TomlFile(path)
    top = file.top()
    if not same_name(str(top.any("class") or ""), class_name):
        return []
    sheets = {
        (str(row.any("date")), _period(row)): sheet_addresses(row) for row in top.tables("sheets")
    }
    found = []
    for row in top.tables("lessons"):
        date = read_date(row, "date")
        if date is None:
            continue
        period = _period(row)
        addresses = [*_words(row, "asked"), *_words(row, "items")]
        # What stood on a sheet was seen by the class as well.
        addresses += sheets.get((date.isoformat(), period), ())
        found.append(AskedBefore(date, period, _topics(row), tuple(dict.fromkeys(addresses))))
    file.finish()
    return found


def _period(row: Table) -> str:
    return str(row.any("period") or USUAL_PERIOD)


def _topics(row: Table) -> tuple[str, ...]:
    """Return the names of a lesson's topics; a name alone is one too, as in a plan that is read."""
    found = []
    for value in row.items("topics"):
        if isinstance(value, str):
            found.append(value)
        elif not isinstance(value, dict):
            row.fault("topics", no_topic(value))
        elif "topic" in value:
            found.append(str(value["topic"]))
    return tuple(found)


def _words(row: Table, key: str) -> list[str]:
    return [value for value in row.items(key) if isinstance(value, str)]


def topic_states(
    scheme: Scheme,
    titles: Mapping[str, str],
    recorded: Mapping[str, Sequence[Seen]],
    planned: Iterable[AskedBefore],
    before: datetime.date,
    scored: Iterable[Scored] = (),
) -> tuple[TopicState, ...]:
    """Return what the class knows of each topic of the scheme, as far as is known `before` a day.

    A lesson that was planned counts as asked, without a result; `planned` are those of which
    nothing better is known. What was recorded of a topic that day goes before it. `scored` are
    the starters of which only scores are known.
    """
    seen = {
        name: [occasion for occasion in rows if occasion.date < before]
        for name, rows in recorded.items()
    }
    for lesson in planned:
        for name in lesson.topics:
            known = seen.setdefault(name, [])
            # What was recorded that day knows more than what was planned.
            if lesson.date < before and lesson.date not in [occasion.date for occasion in known]:
                known.append(Seen(lesson.date, 0, 0))
    rows: dict[str, tuple[Seen, ...]] = {}
    for topic in scheme.topics:
        # What was asked before the teaching, by a pin, says nothing of what is remembered of it.
        rows[topic.topic] = tuple(
            row for row in seen.get(topic.topic, ()) if row.date >= topic.date
        )
    taught = {topic.topic: topic.date for topic in scheme.topics}
    memories = remember_class(
        taught, rows, [starter for starter in scored if starter.date < before]
    )
    earlier = {topic.topic for topic in scheme.earlier}
    return tuple(
        TopicState(
            topic.topic,
            titles.get(topic.topic, topic.topic),
            topic.date,
            memories[topic.topic],
            rows[topic.topic],
            earlier=topic.topic in earlier,
        )
        for topic in scheme.topics
    )
