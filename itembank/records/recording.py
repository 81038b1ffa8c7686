"""Records what happened in a lesson, corrects it, takes it back.

Four kinds of entry tell how a starter went, from a show of hands to every answer; only one of
them counts at a time for a lesson. Own views and the clarity check stand beside them.
"""

from __future__ import annotations

import datetime
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, TypeAlias

from sqlalchemy import Connection, and_, delete, func, insert, select, update

from itembank.errors import ItembankError
from itembank.records.store import Store
from itembank.records.tables import (
    band_count,
    clarity,
    entry,
    lesson,
    mark,
    own_view,
    question,
    score,
    tally,
)

RESULTS = ("bands", "questions", "scores", "answers")
"""Kinds of entry that tell how the starter went; the later ones say more."""
NAMES = {
    "bands": "hands counted by band",
    "questions": "right answers by question",
    "scores": "scores by seat",
    "answers": "answers by seat",
    "own-view": "own views",
    "clarity": "the clarity check",
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
        return f"{self.class_name} on {self.date.day} {self.date:%B %Y}"


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
    """Hands counted per band."""

    counts: tuple[BandCount, ...]


@dataclass(frozen=True, slots=True)
class Questions:
    """Right answers counted per question: number to (right, out of)."""

    counts: Mapping[int, tuple[int, int]]


@dataclass(frozen=True, slots=True)
class Scores:
    """Marks by seat."""

    marks: Mapping[str, int]


@dataclass(frozen=True, slots=True)
class Answers:
    """Whether each answer is right, by seat and question; misconceptions where one showed."""

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


What: TypeAlias = Bands | Questions | Scores | Answers | OwnViews | Clarity
KINDS: dict[type, str] = {
    Bands: "bands",
    Questions: "questions",
    Scores: "scores",
    Answers: "answers",
    OwnViews: "own-view",
    Clarity: "clarity",
}


class RecordedAlready(ItembankError):
    """There are results for this lesson; they are kept unless the teacher asks."""


def active() -> Any:
    """Return the condition that an entry counts: neither replaced nor taken back."""
    return and_(entry.c.replaced_by.is_(None), entry.c.undone_at.is_(None))


def record(
    store: Store,
    facts: LessonFacts,
    what: What,
    *,
    replace: bool = False,
    now: datetime.datetime | None = None,
) -> int:
    """Keep what was counted in a lesson and return the number of the entry.

    It is on the disk when this returns.

    Raises:
        RecordedAlready: the lesson has such results, and `replace` is false.
        ItembankError: the store cannot be written; nothing was recorded.
    """
    with store.writing() as connection:
        return record_in(connection, facts, what, replace=replace, now=now)


def record_all(
    store: Store, facts: LessonFacts, whats: Sequence[What], *, replace: bool = False
) -> list[int]:
    """Keep several things of one lesson, all of them or none, as :func:`record` keeps one."""
    with store.writing() as connection:
        return [record_in(connection, facts, what, replace=replace) for what in whats]


def record_in(
    connection: Connection,
    facts: LessonFacts,
    what: What,
    *,
    replace: bool = False,
    now: datetime.datetime | None = None,
) -> int:
    """Do as :func:`record` does within a transaction that is open for writing."""
    kind = KINDS[type(what)]
    lesson_id = _lesson(connection, facts, asked_anew=kind in RESULTS)
    rivals = RESULTS if kind in RESULTS else (kind,)
    there = connection.execute(
        select(entry.c.id, entry.c.kind, entry.c.made_at).where(
            entry.c.lesson_id == lesson_id, entry.c.kind.in_(rivals), active()
        )
    ).all()
    if there and not replace:
        one = there[0]
        raise RecordedAlready(
            f"{facts} has {NAMES[one.kind]} already, recorded on {one.made_at:%d %b at %H:%M}. "
            "Nothing was recorded. Add --replace to put these in their place; the earlier "
            "ones can be had back with ‘itembank undo’."
        )
    made = connection.execute(
        insert(entry).values(lesson_id=lesson_id, kind=kind, made_at=now or datetime.datetime.now())
    )
    assert made.inserted_primary_key is not None
    number = int(made.inserted_primary_key[0])
    for one in there:
        connection.execute(update(entry).where(entry.c.id == one.id).values(replaced_by=number))
    _write(connection, number, what, {one.number: one.marks for one in facts.questions})
    return number


def undo(
    store: Store, class_name: str, date: datetime.date | None = None
) -> tuple[str, datetime.date, bool]:
    """Take back the newest entry of a class, or of a class on one day.

    Returns its kind, its day, and whether an older entry that it had replaced counts again.

    Raises:
        ItembankError: there is nothing to take back, or the store cannot be written.
    """
    with store.writing() as connection:
        rows = (
            select(entry.c.id, entry.c.kind, lesson.c.date)
            .join(lesson)
            .where(func.lower(lesson.c.class_name) == class_name.lower(), active())
            .order_by(entry.c.id.desc())
        )
        if date is not None:
            rows = rows.where(lesson.c.date == date)
        found = connection.execute(rows.limit(1)).first()
        if found is None:
            day = f" on {date}" if date else ""
            raise ItembankError(f"Nothing is recorded for {class_name}{day}, so nothing to undo.")
        connection.execute(
            update(entry).where(entry.c.id == found.id).values(undone_at=datetime.datetime.now())
        )
        again = connection.execute(
            update(entry).where(entry.c.replaced_by == found.id).values(replaced_by=None)
        )
    return found.kind, found.date, again.rowcount > 0


def _lesson(connection: Connection, facts: LessonFacts, asked_anew: bool) -> int:
    """Return the number of the lesson's row, made if it is not there.

    Its questions are written, or brought up to date, when results come in: a pack made again
    since then must not change what earlier results were about.
    """
    where = (
        lesson.c.class_name == facts.class_name,
        lesson.c.date == facts.date,
        lesson.c.period == facts.period,
    )
    found = connection.scalar(select(lesson.c.id).where(*where))
    values = {"title": facts.title, "out_of": facts.out_of}
    known: int | None = None
    if found is None:
        made = connection.execute(
            insert(lesson).values(
                class_name=facts.class_name, date=facts.date, period=facts.period, **values
            )
        )
        assert made.inserted_primary_key is not None
        found = int(made.inserted_primary_key[0])
    else:
        if asked_anew:
            connection.execute(update(lesson).where(lesson.c.id == found).values(**values))
        known = connection.scalar(select(func.count()).where(question.c.lesson_id == found))
    if facts.questions and (asked_anew or not known):
        connection.execute(delete(question).where(question.c.lesson_id == found))
        connection.execute(
            insert(question),
            [
                {
                    "lesson_id": found,
                    "number": one.number,
                    "address": one.address,
                    "topic": one.topic,
                    "tier": one.tier,
                    "prompt": one.prompt,
                    "marks": one.marks,
                }
                for one in facts.questions
            ],
        )
    return found


def _write(connection: Connection, number: int, what: What, worth: Mapping[int, int]) -> None:
    rows: dict[Any, list[dict[str, object]]] = {}
    match what:
        case Bands(counts):
            rows[band_count] = [
                {
                    "letter": one.letter,
                    "name": one.name,
                    "lowest": one.lowest,
                    "highest": one.highest,
                    "pupils": one.pupils,
                }
                for one in counts
            ]
        case Questions(tallies):
            rows[tally] = _tally_rows(tallies)
        case Scores(marks):
            rows[score] = [{"seat": seat, "marks": n} for seat, n in marks.items()]
        case Answers(right, misconceptions):
            rows[mark] = [
                {
                    "seat": seat,
                    "number": place,
                    "right": int(good),
                    "misconception": misconceptions.get((seat, place), ""),
                }
                for seat, answers in right.items()
                for place, good in answers.items()
            ]
            # Scores and tallies too, so that reports read them alike at every depth.
            rows[score] = [
                {
                    "seat": seat,
                    "marks": sum(worth.get(place, 1) for place, good in answers.items() if good),
                }
                for seat, answers in right.items()
            ]
            rows[tally] = _tally_rows(tallies_of(right))
        case OwnViews(by_seat, hands):
            rows[own_view] = [
                {"seat": seat, "level": level, "pupils": 1} for seat, level in by_seat.items()
            ] or [{"seat": "", "level": level, "pupils": n} for level, n in hands.items()]
        case Clarity(unsure, pupils, note):
            rows[clarity] = [{"unsure": unsure, "pupils": pupils, "note": note}]
    for table, values in rows.items():
        if values:
            connection.execute(insert(table), [{"entry_id": number, **row} for row in values])


def tallies_of(right: Mapping[str, Mapping[int, bool]]) -> dict[int, tuple[int, int]]:
    """Return right answers and answers given for each question.

    >>> tallies_of({"A1": {1: True, 2: False}, "A2": {1: True}})
    {1: (2, 2), 2: (0, 1)}
    """
    found: dict[int, tuple[int, int]] = {}
    for answers in right.values():
        for place, good in answers.items():
            so_far, out_of = found.get(place, (0, 0))
            found[place] = (so_far + good, out_of + 1)
    return dict(sorted(found.items()))


def _tally_rows(counts: Mapping[int, tuple[int, int]]) -> list[dict[str, object]]:
    return [
        {"number": place, "right": right, "out_of": out_of}
        for place, (right, out_of) in counts.items()
    ]
