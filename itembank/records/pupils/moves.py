"""Pupils who move to another class or seat, with the history of the seat that moved.

What was recorded stays under the seat it was recorded for. A *move* says that the pupil of one
seat sits in another from a day on, and whoever asks about a class's pupils asks here where each
of them sits now (:class:`Homes`). Moves of one day are made at the same moment, so that two
pupils can change places and a whole year group its sets.
"""

from __future__ import annotations

import datetime
from collections import defaultdict
from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from sqlalchemy import Connection, case, insert, or_, select

from itembank.errors import ItembankError, SeveralErrors
from itembank.records.store.store import Store
from itembank.records.store.store_tables import active, entry, lesson, move, own_view, score
from itembank.text.folding import folded

AWAY = "away"
"""What stands in place of a class and seat for a pupil who left."""


class Place(NamedTuple):
    """A seat of a class, as places are compared; both are empty for a pupil who left."""

    class_key: str
    seat: str


def place(class_name: str, seat: str) -> Place:
    """Return the place of a seat of a class, whatever its capitals.

    >>> place("8K", "a3") == place("8k", "A3")
    True
    """
    return Place(folded(class_name), seat.upper())


@dataclass(frozen=True, slots=True)
class Move:
    """The pupil of one seat sits in another from `date` on; `to` is empty where they left."""

    from_class: str
    from_seat: str
    to_class: str
    to_seat: str
    date: datetime.date

    @property
    def source(self) -> Place:
        """Return where the pupil sat."""
        return place(self.from_class, self.from_seat)

    @property
    def target(self) -> Place:
        """Return where the pupil sits now."""
        return place(self.to_class, self.to_seat)

    def __str__(self) -> str:
        """Return both seats."""
        to = f"to {self.to_class}/{self.to_seat}" if self.to_class else AWAY
        return f"{self.from_class}/{self.from_seat} {to}"


@dataclass(frozen=True, slots=True)
class Stay:
    """A pupil's time in one seat: from `first` on, before `end`; None for no limit."""

    place: Place
    first: datetime.date | None = None
    end: datetime.date | None = None

    def holds(self, where: Place, date: datetime.date) -> bool:
        """Tell whether it is what was recorded for a place on a day."""
        return (
            self.place == where
            and (self.first is None or self.first <= date)
            and (self.end is None or date < self.end)
        )


class Homes:
    """Says where the pupil sits by now who sat in a place on a day.

    >>> day = datetime.date
    >>> swap = [
    ...     Move("8K", "A1", "8L", "B2", day(2026, 11, 9)),
    ...     Move("8L", "B2", "8K", "A1", day(2026, 11, 9)),
    ... ]
    >>> homes = Homes(swap)
    >>> homes.of(place("8K", "A1"), day(2026, 11, 2)) == place("8L", "B2")
    True
    >>> homes.of(place("8K", "A1"), day(2026, 11, 9)) == place("8K", "A1")
    True
    """

    def __init__(self, moves: Iterable[Move]) -> None:
        self.out: dict[Place, list[Move]] = defaultdict(list)
        self.into: dict[Place, list[Move]] = defaultdict(list)
        for one in sorted(moves, key=lambda one: one.date):
            self.out[one.source].append(one)
            self.into[one.target].append(one)

    def __bool__(self) -> bool:
        """Tell whether anybody moved."""
        return bool(self.out)

    def of(self, where: Place, date: datetime.date) -> Place | None:
        """Return where the pupil sits now who sat in a place on a day; None if they left."""
        while True:
            left = next((one for one in self.out.get(where, ()) if one.date > date), None)
            if left is None:
                return where
            if not left.to_class:
                return None
            where, date = left.target, left.date

    def arrivals(self, class_key: str) -> list[datetime.date]:
        """Return the days on which pupils of a class came to it from others, and stayed."""
        return [
            one.date
            for where, moves in self.into.items()
            if where.class_key == class_key
            for one in moves
            if one.source.class_key != class_key
            and (home := self.of(where, one.date)) is not None
            and home.class_key == class_key
        ]

    def stays(self, where: Place) -> tuple[Stay, ...]:
        """Return all stays of the pupil who sits in a place now, or sat there last.

        The stay in a place that somebody has left since ends with the move.
        """
        came = self.into.get(where, [])
        left = self.out.get(where, [])
        start = came[-1].date if came else None
        if left and (start is None or left[-1].date > start):
            # Nobody came after the one who left: it is that one.
            end = left[-1].date
            earlier = [one for one in came if one.date < end]
            start = earlier[-1].date if earlier else None
            found = [Stay(where, start, end)]
            found += self._onwards(left[-1])
        else:
            found = [Stay(where, start)]
        while start is not None:
            source = next(one for one in self.into[found[0].place] if one.date == start)
            earlier = [one for one in self.into.get(source.source, ()) if one.date < start]
            first = earlier[-1].date if earlier else None
            found.insert(0, Stay(source.source, first, start))
            start = first
        return tuple(found)

    def _onwards(self, last: Move) -> list[Stay]:
        found = []
        while last.to_class:
            nexts = [one for one in self.out.get(last.target, ()) if one.date > last.date]
            found.append(Stay(last.target, last.date, nexts[0].date if nexts else None))
            if not nexts:
                break
            last = nexts[0]
        return found


def moves_there(connection: Connection, last: datetime.date | None = None) -> list[Move]:
    """Return the moves that count, up to a day; taken back ones do not."""
    rows = select(move).where(move.c.undone_at.is_(None)).order_by(move.c.date, move.c.id)
    if last is not None:
        rows = rows.where(move.c.date <= last)
    return [
        Move(row.from_class, row.from_seat, row.to_class, row.to_seat, row.date)
        for row in connection.execute(rows)
    ]


@dataclass(frozen=True, slots=True)
class Moved:
    """What a seat did in one lesson, and where its pupil sits by now (None: left)."""

    lesson_id: int
    entry_id: int
    kind: str
    date: datetime.date
    class_key: str
    class_name: str
    seat: str
    marks: int
    answers: str
    out_of: int
    asked: str
    home: Place | None


def moved_rows(connection: Connection, last: datetime.date | None = None) -> list[Moved]:
    """Return what was recorded by seat of pupils who sit elsewhere by `last`, a row a lesson.

    Hands that were counted name nobody and cannot move.
    """
    homes = Homes(moves_there(connection, last))
    if not homes:
        return []
    there = or_(
        *((lesson.c.class_key == one.class_key) & (score.c.seat == one.seat) for one in homes.out)
    )
    rows = connection.execute(
        select(
            lesson.c.id,
            entry.c.id.label("entry_id"),
            entry.c.kind,
            lesson.c.date,
            lesson.c.class_key,
            lesson.c.class_name,
            score.c.seat,
            score.c.marks,
            score.c.answers,
            case((entry.c.out_of > 0, entry.c.out_of), else_=lesson.c.out_of),
            entry.c.asked,
        )
        .select_from(score)
        .join(entry, entry.c.id == score.c.entry_id)
        .join(lesson, lesson.c.id == entry.c.lesson_id)
        .where(active(), there)
        .order_by(lesson.c.date, lesson.c.id, score.c.seat)
    )
    found = []
    for row in rows:
        where = Place(row.class_key, row.seat)
        home = homes.of(where, row.date)
        if home != where:
            found.append(Moved(*row, home))
    return found


Days = dict[Place, list[datetime.date]]
"""The days on which something was recorded for each place, in order."""


def seats_now(
    connection: Connection, class_name: str, date: datetime.date
) -> dict[str, Place | None]:
    """Return where the pupils sit now who sat elsewhere in a class on a day; None: left.

    Those who kept their seat are not among them.
    """
    homes = Homes(moves_there(connection))
    key = folded(class_name)
    found = {}
    for where in homes.out:
        if where.class_key == key and (home := homes.of(where, date)) != where:
            found[where.seat] = home
    return found


def move_seats(store: Store, moves: Sequence[Move], unlisted: Collection[Place] = ()) -> int:
    """Keep moves, all of them or none; return how many of the pupils have anything recorded.

    `unlisted` are seats that their class does not list (any more): only what is recorded shows
    that somebody sat there.

    Raises:
        ItembankError: they cannot all be: every such fault, and nothing is kept.
    """
    with store.writing() as connection:
        before = moves_there(connection)
        homes = Homes([*before, *moves])
        keys = {one.class_key for some in (homes.out, homes.into) for one in some}
        days = _days(connection, keys)
        faults = [
            ItembankError(
                f"{one}: nothing is recorded for a seat {one.from_seat} of {one.from_class}, and "
                "the class lists none. Check the seat."
            )
            for one in moves
            if one.source in unlisted and not days[one.source]
        ]
        faults += _faults(before, moves, days)
        if faults:
            once = {str(fault): fault for fault in faults}
            raise SeveralErrors([*once.values(), ItembankError("Nobody was moved.")])
        now = datetime.datetime.now()
        connection.execute(
            insert(move),
            [
                {
                    "from_class": one.from_class,
                    "from_key": one.source.class_key,
                    "from_seat": one.source.seat,
                    "to_class": one.to_class,
                    "to_key": one.target.class_key,
                    "to_seat": one.target.seat,
                    "date": one.date,
                    "made_at": now,
                }
                for one in moves
            ],
        )
    known = 0
    for one in moves:
        stays = homes.stays(one.target) if one.to_class else (Stay(one.source),)
        known += any(stay.holds(stay.place, day) for stay in stays for day in days[stay.place])
    return known


def _faults(before: Sequence[Move], moves: Sequence[Move], days: Days) -> list[ItembankError]:
    found: list[ItembankError] = []
    homes = Homes([*before, *moves])
    for number, one in enumerate(moves):
        rest = moves[:number]
        if one.source == one.target:
            found.append(ItembankError(f"{one}: that is the same seat."))
            continue
        if any(one.source == other.source for other in rest):
            found.append(ItembankError(f"{one.from_class}/{one.from_seat} is moved twice."))
        if one.to_class and any(one.target == other.target for other in rest):
            found.append(ItembankError(f"Two pupils are moved to {one.to_class}/{one.to_seat}."))
        last = max((m.date for m in before if one.source in (m.source, m.target)), default=None)
        if last is not None and last >= one.date:
            found.append(
                ItembankError(
                    f"{one}: a move of {last} is noted for {one.from_class}/{one.from_seat} "
                    "already.",
                    matter="moved already",
                    class_name=one.from_class,
                )
            )
            continue
        after = [day for day in days[one.source] if day >= one.date]
        if after and not any(other.target == one.source for other in moves):
            found.append(
                ItembankError(
                    f"{one}: {one.from_class}/{one.from_seat} has results of {after[0]}, which is "
                    f"not before {one.date}.",
                    matter="day to be checked",
                )
            )
        others = Homes([*before, *(other for other in moves if other is not one)])
        sits = [
            day
            for day in days[one.target]
            if day < one.date
            and homes.of(one.target, day) == one.target
            and others.of(one.target, day) != one.source
        ]
        if one.to_class and sits:
            found.append(
                ItembankError(
                    f"{one}: somebody else sits in {one.to_class}/{one.to_seat}, with results of "
                    f"{sits[-1]}. Move that pupil on the same day, or say that they left: "
                    f"{one.to_class}/{one.to_seat} {AWAY}."
                )
            )
    return found


def _days(connection: Connection, class_keys: Collection[str]) -> Days:
    """Return the days on which anything that counts was recorded for each place of classes."""
    found: dict[Place, set[datetime.date]] = defaultdict(set)
    for table in (score, own_view):
        rows = connection.execute(
            select(lesson.c.class_key, table.c.seat, lesson.c.date)
            .select_from(table)
            .join(entry, entry.c.id == table.c.entry_id)
            .join(lesson, lesson.c.id == entry.c.lesson_id)
            .where(active(), lesson.c.class_key.in_(class_keys), table.c.seat != "")
        )
        for key, seat, date in rows:
            found[Place(key, seat)].add(date)
    return defaultdict(list, {where: sorted(dates) for where, dates in found.items()})
