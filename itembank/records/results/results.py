"""What the store knows, as planning and reports want it."""

from __future__ import annotations

import datetime
from collections import defaultdict
from collections.abc import Iterable

from sqlalchemy import Connection, exists, func, select

from itembank.data_class import dataclass
from itembank.planning.choosing.class_memory import History, Scored
from itembank.planning.choosing.memory import Seen
from itembank.records.entries.questions_asked import unpack_asked
from itembank.records.results.happened import took_place
from itembank.records.results.lessons import lessons
from itembank.records.results.rearranged import Rearranged
from itembank.records.results.whole_scores import Wholes, wholes_of_bands, wholes_of_scores
from itembank.records.store.store_tables import active, entry, lesson, of_class, question, tally


@dataclass(frozen=True, slots=True)
class TopicResult:
    """Answers of one class to one topic on one day; `out_of` is 0 where none were counted.

    `part` is the share of the class, as it is now, that was there: others came to it later, or
    were asked it in another class. `scored` says that the topic was part of a starter of which
    only scores or bands are known.
    """

    topic: str
    date: datetime.date
    right: float
    out_of: float
    part: float = 1.0
    scored: bool = False


@dataclass(frozen=True, slots=True)
class ClassResults:
    """What a class was asked and how it went: topic by topic, and whole starters by score."""

    topics: tuple[TopicResult, ...]
    scored: tuple[Scored, ...]


def class_results(
    connection: Connection, class_name: str, before: datetime.date | None = None
) -> ClassResults:
    """Return what a class was asked on each topic and how it went, in order of dates.

    Only answers and counts by question tell of a topic. Scores and bands tell how a starter
    went as a whole (a band counts by its middle score). Questions that were not asked count for
    nothing, and a lesson of which everything was taken back was recorded by mistake.

    It is about the pupils who sit in the class by then: what is known of one who came from
    another class is here, what is known of one who went is not. Hands that were counted name
    nobody, and stay.
    """
    last = before and before - datetime.timedelta(days=1)
    moved = Rearranged(connection, class_name, last)
    known = lessons(connection, class_name, last=last)
    counting = exists().where(entry.c.lesson_id == question.c.lesson_id, took_place())
    marks: dict[int, dict[int, tuple[str, int]]] = defaultdict(dict)
    for part in parts_of([result.lesson_id for result in known]):
        for row in connection.execute(
            select(
                question.c.lesson_id, question.c.number, question.c.topic, question.c.marks
            ).where(question.c.lesson_id.in_(part), counting)
        ):
            marks[row.lesson_id][row.number] = (row.topic, row.marks)
    by_kind: dict[str, dict[int, int]] = defaultdict(dict)
    for result in known:
        if result.entry_id is not None:
            by_kind[result.kind][result.entry_id] = result.out_of
    tallies = _tallies(connection, [*by_kind["questions"], *by_kind["answers"]])
    wholes: Wholes = {}
    for kind, read in (("scores", wholes_of_scores), ("bands", wholes_of_bands)):
        for part in parts_of(list(by_kind[kind])):
            wholes |= read(connection, {number: by_kind[kind][number] for number in part})
    moved.take_out(tallies, wholes)
    here: dict[int | None, int] = {
        result.entry_id: max((row[1] for row in tallies[result.entry_id].values()), default=0)
        if result.entry_id in tallies
        else wholes[result.entry_id].pupils
        if result.entry_id in wholes
        else 0
        for result in known
        if result.entry_id is not None
    }
    size = moved.size(here, {result.entry_id: result.date for result in known})
    found, scored = moved.brought_along(connection, size)
    for result in known:
        if result.entry_id in moved.left and not here[result.entry_id]:
            continue  # nobody who was there is here any more
        there = marks[result.lesson_id]
        topics: dict[str, list[int]] = defaultdict(list)
        for number in unpack_asked(result.asked, there):
            topics[there[number][0]].append(number)
        whole = wholes.get(result.entry_id)
        counts = tallies.get(result.entry_id, {})
        for topic, numbers in topics.items():
            rows = [counts.get(number, (0, 0)) for number in numbers]
            right, out_of = sum(row[0] for row in rows), sum(row[1] for row in rows)
            share = moved.part(result.date, size)
            found.append(TopicResult(topic, result.date, right, out_of, share, whole is not None))
        if whole is not None and topics:
            worth = {t: sum(there[n][1] for n in numbers) for t, numbers in topics.items()}
            scored.append(Scored(result.date, whole.share, whole.variance, worth))
    found.sort(key=lambda of_topic: of_topic.date)
    return ClassResults(tuple(found), tuple(sorted(scored, key=lambda of_score: of_score.date)))


def class_history(
    connection: Connection, class_name: str, before: datetime.date | None = None
) -> History:
    """Return the occasions of each topic of a class, and its starters with scores."""
    results = class_results(connection, class_name, before)
    found: dict[str, list[Seen]] = defaultdict(list)
    for occasion in occasions(results.topics):
        found[occasion.topic].append(
            Seen(occasion.date, occasion.right, occasion.out_of, occasion.scored)
        )
    return History({topic: tuple(rows) for topic, rows in found.items()}, results.scored)


MOST = 0.5
"""Share of a class, as it is now, that must have been asked for it to count as the class's
occasion (a judgement, no source): what three who came from elsewhere were asked brings nothing
back to the others."""


def occasions(results: Iterable[TopicResult]) -> list[TopicResult]:
    """Return those of the results that were occasions of the class, and not of a few of it.

    >>> day = datetime.date(2026, 11, 2)
    >>> few = TopicResult("ratio.share", day, 2, 3, part=0.1)
    >>> occasions([few]), len(occasions([few, TopicResult("ratio.share", day, 20, 26, part=0.9)]))
    ([], 2)
    """
    rows = list(results)
    parts: dict[tuple[str, datetime.date], float] = defaultdict(float)
    for row in rows:
        parts[row.topic, row.date] += row.part
    return [row for row in rows if parts[row.topic, row.date] >= MOST]


def used_addresses(
    connection: Connection, class_name: str, since: datetime.date
) -> dict[str, datetime.date]:
    """Return the addresses of questions a class was asked since a day, with the last day.

    A lesson that fell out asked nothing.
    """
    fell_out = exists().where(
        entry.c.lesson_id == lesson.c.id, active(), entry.c.kind == "cancelled"
    )
    rows = connection.execute(
        select(question.c.address, func.max(lesson.c.date))
        .join(lesson)
        .where(of_class(class_name), lesson.c.date >= since)
        .where(question.c.address != "", ~fell_out)
        .group_by(question.c.address)
    )
    return {row[0]: row[1] for row in rows}


def parts_of(values: list[int], size: int = 500) -> Iterable[list[int]]:
    """Yield the values in parts that fit a statement's limit of parameters."""
    for start in range(0, len(values), size):
        yield values[start : start + size]


def _tallies(
    connection: Connection, entries: list[int | None]
) -> dict[int | None, dict[int, tuple[int, int]]]:
    found: dict[int | None, dict[int, tuple[int, int]]] = defaultdict(dict)
    for part in parts_of([number for number in entries if number is not None]):
        for row in connection.execute(select(tally).where(tally.c.entry_id.in_(part))):
            found[row.entry_id][row.number] = (row.right, row.out_of)
    return found
