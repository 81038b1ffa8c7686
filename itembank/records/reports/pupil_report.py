"""What one seat answered over time, and which seats of a class a teacher may want to look at.

A seat is asked for as it is now: what its pupil had under other seats comes along, and what
somebody else had in this one stays out (:mod:`itembank.records.pupils.homes`). Everything is
counted, nothing estimated: one pupil has too few answers to a topic for more.
"""

from __future__ import annotations

import datetime
from collections import Counter, defaultdict
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from sqlalchemy import Connection, and_, or_, select

from itembank.people.seats import seat_order
from itembank.planning.calendar.days import period_order
from itembank.records.entries.details import unpack_answers
from itembank.records.entries.entries import RESULTS
from itembank.records.pupils.homes import ClassSeat, Homes, Move, place
from itembank.records.pupils.moves import moves_there
from itembank.records.reports.advice import Next, Thresholds
from itembank.records.reports.decision import seat_band
from itembank.records.store.store_tables import (
    active,
    entry,
    lesson,
    misconception,
    of_class,
    own_view,
    question,
    score,
)

if TYPE_CHECKING:
    from itembank.planning.bands.bands import Band, BandScheme

FEWEST = 3
"""Answers to a topic, or starters, below which nothing is made of them (common practice, no
source)."""
LATEST = 6
"""Starters that the list of seats to look at goes by (common practice, no source)."""

Schemes = Callable[[str], "BandScheme"]
"""Gives the bands of a class by its name."""


@dataclass(frozen=True, slots=True)
class PupilAnswer:
    """A question of a starter; `right` is None where it was not asked, `mistake` an id or empty."""

    number: int
    topic: str
    prompt: str
    right: bool | None
    mistake: str = ""


@dataclass(frozen=True, slots=True)
class PupilStarter:
    """One starter of one pupil, in the class and seat they had; no answers where only a score."""

    class_name: str
    seat: str
    date: datetime.date
    period: str
    title: str
    marks: int
    out_of: int
    band: Band
    lowest: bool
    view: str = ""
    answers: tuple[PupilAnswer, ...] = ()


@dataclass(frozen=True, slots=True)
class PupilTopic:
    """Answers of one pupil to one topic; `zone` is None where they are too few to say anything."""

    topic: str
    right: int
    out_of: int
    last: datetime.date
    zone: Next | None


@dataclass(frozen=True, slots=True)
class PupilReport:
    """What is recorded of one pupil, under the seat of now.

    `elsewhere` are the seats in which they had some of it. `without` are starters of the class
    with results by seat, but none of this one; `by_hand` those in which nobody's are known.
    `gone` is the move with which the last one to sit here went, where nobody sits here since.
    """

    class_name: str
    seat: str
    first: datetime.date
    last: datetime.date
    starters: tuple[PupilStarter, ...] = ()
    topics: tuple[PupilTopic, ...] = ()
    mistakes: tuple[tuple[str, str, int], ...] = ()
    elsewhere: tuple[str, ...] = ()
    without: int = 0
    by_hand: int = 0
    gone: Move | None = None

    @property
    def to_mend(self) -> tuple[PupilTopic, ...]:
        """Return the topics of which least was right, weakest first."""
        return tuple(line for line in self.topics if line.zone is Next.AGAIN)

    @property
    def firm(self) -> tuple[PupilTopic, ...]:
        """Return the topics of which nearly all was right."""
        return tuple(line for line in self.topics if line.zone is Next.ON)


@dataclass(frozen=True, slots=True)
class LookAt:
    """A seat: in how many of its last starters it was in the lowest band, and the marks there."""

    seat: str
    lowest: int
    starters: int
    marks: int
    out_of: int

    @property
    def wanted(self) -> bool:
        """Tell whether it was in most of them, of enough to say so.

        >>> [LookAt("A1", low, of, 0, 8).wanted for low, of in ((4, 6), (3, 6), (2, 2))]
        [True, False, False]
        """
        return self.starters >= FEWEST and 2 * self.lowest > self.starters


def pupil_report(
    connection: Connection,
    class_name: str,
    seat: str,
    schemes: Schemes,
    first: datetime.date,
    last: datetime.date,
    now: datetime.date,
    thresholds: Thresholds | None = None,
) -> PupilReport:
    """Return what is recorded of the pupil who sits in a seat `now`, from one day to another."""
    here = place(class_name, seat)
    homes = Homes(moves_there(connection, now))
    rows = [
        row
        for row in _scores(connection, _places(homes, here), first, last)
        if homes.of(place(row.class_name, row.seat), row.date) == here
    ]
    asked = _questions(connection, [row.lesson_id for row in rows])
    shown = _mistakes(connection, rows)
    views = _views(connection, rows)
    starters = tuple(
        _starter(row, asked[row.lesson_id], shown, views, schemes(row.class_name)) for row in rows
    )
    left = homes.out.get(here, [])
    came = homes.into.get(here, [])
    gone = left[-1] if left and not rows else None
    if gone is not None and came and came[-1].date >= gone.date:
        gone = None
    since = max([first, *(move.date for move in came)])
    without, by_hand = _others(connection, class_name, since, last, rows)
    topics = _topics(starters, thresholds or Thresholds())
    seen = Counter(
        (answer.topic, answer.mistake)
        for starter in starters
        for answer in starter.answers
        if answer.mistake
    )
    return PupilReport(
        class_name,
        here.seat,
        first,
        last,
        starters,
        topics,
        tuple((topic, name, times) for (topic, name), times in seen.most_common()),
        tuple(
            dict.fromkeys(
                f"{row.class_name}/{row.seat}"
                for row in rows
                if place(row.class_name, row.seat) != here
            )
        ),
        without,
        by_hand,
        gone,
    )


def seats_to_look_at(
    connection: Connection,
    class_name: str,
    schemes: Schemes,
    first: datetime.date,
    last: datetime.date,
    now: datetime.date,
) -> tuple[LookAt, ...]:
    """Return every seat of a class with results, those oftenest in the lowest band first.

    Each goes by its latest starters, :data:`LATEST` at most.
    """
    homes = Homes(moves_there(connection, now))
    key = place(class_name, "").class_key
    sources = {key, *(where.class_key for where in homes.out)}
    there: dict[str, list[Any]] = defaultdict(list)
    for row in _rows(connection, lesson.c.class_key.in_(sources), first, last):
        home = homes.of(place(row.class_name, row.seat), row.date)
        if home is not None and home.class_key == key:
            there[home.seat].append(row)
    latest = {seat: rows[-LATEST:] for seat, rows in there.items()}
    asked = _questions(connection, [row.lesson_id for rows in latest.values() for row in rows])
    found = []
    for seat, rows in latest.items():
        made = [
            _starter(row, asked[row.lesson_id], {}, {}, schemes(row.class_name)) for row in rows
        ]
        found.append(
            LookAt(
                seat,
                sum(each.lowest for each in made),
                len(made),
                sum(each.marks for each in made),
                sum(each.out_of for each in made),
            )
        )
    return tuple(
        sorted(
            found,
            key=lambda line: (
                not line.wanted,
                -line.lowest / line.starters,
                line.marks / line.out_of,
                seat_order(line.seat),
            ),
        )
    )


def _places(homes: Homes, here: ClassSeat) -> set[ClassSeat]:
    """Return every place from which somebody may have come to be here."""
    found, new = {here}, [here]
    while new:
        for move in homes.into.get(new.pop(), ()):
            if move.source not in found:
                found.add(move.source)
                new.append(move.source)
    return found


def _scores(
    connection: Connection, places: set[ClassSeat], first: datetime.date, last: datetime.date
) -> list[Any]:
    wanted = or_(
        *(
            and_(lesson.c.class_key == where.class_key, score.c.seat == where.seat)
            for where in sorted(places)
        )
    )
    return _rows(connection, wanted, first, last)


def _rows(
    connection: Connection, wanted: Any, first: datetime.date, last: datetime.date
) -> list[Any]:
    """Return scores by seat with their lessons, in order of days."""
    rows = connection.execute(
        select(
            lesson.c.class_name,
            lesson.c.date,
            lesson.c.period,
            lesson.c.title,
            lesson.c.out_of.label("starter_marks"),
            entry.c.lesson_id,
            entry.c.out_of,
            score.c.entry_id,
            score.c.seat,
            score.c.marks,
            score.c.answers,
        )
        .select_from(score)
        .join(entry, entry.c.id == score.c.entry_id)
        .join(lesson, lesson.c.id == entry.c.lesson_id)
        .where(active(), wanted, lesson.c.date >= first, lesson.c.date <= last)
    )
    return sorted(rows, key=lambda row: (row.date, period_order(row.period)))


def _questions(connection: Connection, lesson_ids: list[int]) -> dict[int, list[Any]]:
    found: dict[int, list[Any]] = defaultdict(list)
    ids = sorted(set(lesson_ids))
    for start in range(0, len(ids), 500):  # SQLite takes so many values and not many more
        for row in connection.execute(
            select(question)
            .where(question.c.lesson_id.in_(ids[start : start + 500]))
            .order_by(question.c.lesson_id, question.c.number)
        ):
            found[row.lesson_id].append(row)
    return found


def _mistakes(connection: Connection, rows: list[Any]) -> dict[tuple[int, int], str]:
    """Return the mistakes that these answers showed, by entry and question."""
    seats = {row.entry_id: row.seat for row in rows}
    return {
        (row.entry_id, row.number): row.name
        for row in connection.execute(
            select(misconception).where(misconception.c.seat.in_(set(seats.values())))
        )
        if seats.get(row.entry_id) == row.seat
    }


def _views(connection: Connection, rows: list[Any]) -> dict[int, str]:
    """Return what the pupil said before marking, by lesson."""
    seats = {row.lesson_id: row.seat for row in rows}
    return {
        row.lesson_id: row.level
        for row in connection.execute(
            select(entry.c.lesson_id, own_view.c.seat, own_view.c.level)
            .select_from(own_view)
            .join(entry, entry.c.id == own_view.c.entry_id)
            .where(active(), own_view.c.seat.in_(set(seats.values())))
        )
        if seats.get(row.lesson_id) == row.seat
    }


def _starter(
    row: Any,
    asked: list[Any],
    shown: Mapping[tuple[int, int], str],
    views: Mapping[int, str],
    scheme: BandScheme,
) -> PupilStarter:
    right = unpack_answers(row.answers)
    out_of = row.out_of or row.starter_marks
    worth = {each.number: each.marks for each in asked}
    # A pupil who came later may have been asked more, or less, than the others.
    total = sum(worth.get(number, 1) for number in right) or out_of
    band = seat_band(row.marks, total, scheme, out_of)
    return PupilStarter(
        row.class_name,
        row.seat,
        row.date,
        row.period,
        row.title,
        row.marks,
        total,
        band,
        band.letter == scheme.bands(out_of)[0].letter,
        views.get(row.lesson_id, ""),
        tuple(
            PupilAnswer(
                each.number,
                each.topic,
                each.prompt,
                right.get(each.number),
                shown.get((row.entry_id, each.number), ""),
            )
            for each in asked
        )
        if right
        else (),
    )


def _topics(starters: tuple[PupilStarter, ...], thresholds: Thresholds) -> tuple[PupilTopic, ...]:
    given: dict[str, list[tuple[bool, datetime.date]]] = defaultdict(list)
    for starter in starters:
        for answer in starter.answers:
            if answer.right is not None:
                given[answer.topic].append((answer.right, starter.date))
    found = []
    for topic, answers in given.items():
        right, out_of = sum(good for good, _ in answers), len(answers)
        zone = thresholds.zone(right / out_of) if out_of >= FEWEST else None
        found.append(PupilTopic(topic, right, out_of, answers[-1][1], zone))
    # Of two shares that are the same, the one with more answers says more.
    return tuple(
        sorted(found, key=lambda line: (line.zone is None, line.right / line.out_of, -line.out_of))
    )


def _others(
    connection: Connection,
    class_name: str,
    first: datetime.date,
    last: datetime.date,
    rows: list[Any],
) -> tuple[int, int]:
    """Return how many starters have results by seat but none of these, and how many by hand."""
    had = {row.lesson_id for row in rows}
    days = {(row.date, row.period) for row in rows}
    found = connection.execute(
        select(lesson.c.id, lesson.c.date, lesson.c.period, entry.c.kind)
        .join(entry, entry.c.lesson_id == lesson.c.id)
        .where(of_class(class_name), active(), entry.c.kind.in_(RESULTS))
        .where(lesson.c.date >= first, lesson.c.date <= last)
    ).all()
    away = [row for row in found if row.id not in had and (row.date, row.period) not in days]
    by_hand = sum(row.kind not in ("scores", "answers") for row in away)
    return len(away) - by_hand, by_hand
