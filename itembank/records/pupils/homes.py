"""Where a pupil sits by now who sat in a place on a day.

What was recorded stays under the seat it was recorded for. A *move* says that the pupil of one
seat sits in another from a day on, and whoever asks about a class's pupils asks here where each
of them sits now (:class:`Homes`).
"""

from __future__ import annotations

import datetime
from collections import defaultdict
from collections.abc import Iterable
from typing import NamedTuple

from itembank.data_class import dataclass
from itembank.text.folding import folded

AWAY = "away"
"""What stands in place of a class and seat for a pupil who left."""


class ClassSeat(NamedTuple):
    """A seat of a class, as places are compared; both are empty for a pupil who left."""

    class_key: str
    seat: str


def place(class_name: str, seat: str) -> ClassSeat:
    """Return the place of a seat of a class, whatever its capitals.

    >>> place("8K", "a3") == place("8k", "A3")
    True
    """
    return ClassSeat(folded(class_name), seat.upper())


@dataclass(frozen=True, slots=True)
class Move:
    """The pupil of one seat sits in another from `date` on; `to` is empty where they left."""

    from_class: str
    from_seat: str
    to_class: str
    to_seat: str
    date: datetime.date

    @property
    def source(self) -> ClassSeat:
        """Return where the pupil sat."""
        return place(self.from_class, self.from_seat)

    @property
    def target(self) -> ClassSeat:
        """Return where the pupil sits now."""
        return place(self.to_class, self.to_seat)

    def __str__(self) -> str:
        """Return both seats."""
        to = f"to {self.to_class}/{self.to_seat}" if self.to_class else AWAY
        return f"{self.from_class}/{self.from_seat} {to}"


@dataclass(frozen=True, slots=True)
class Stay:
    """A pupil's time in one seat: from `first` on, before `end`; None for no limit."""

    place: ClassSeat
    first: datetime.date | None = None
    end: datetime.date | None = None

    def holds(self, where: ClassSeat, date: datetime.date) -> bool:
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
        self.out: dict[ClassSeat, list[Move]] = defaultdict(list)
        self.into: dict[ClassSeat, list[Move]] = defaultdict(list)
        for move in sorted(moves, key=lambda move: move.date):
            self.out[move.source].append(move)
            self.into[move.target].append(move)

    def __bool__(self) -> bool:
        """Tell whether anybody moved."""
        return bool(self.out)

    def of(self, where: ClassSeat, date: datetime.date) -> ClassSeat | None:
        """Return where the pupil sits now who sat in a place on a day; None if they left."""
        while True:
            # Only moves after the day: on the day of a move the newcomer sits there already.
            left = next((move for move in self.out.get(where, ()) if move.date > date), None)
            if left is None:
                return where
            if not left.to_class:
                return None
            where, date = left.target, left.date

    def arrivals(self, class_key: str) -> list[datetime.date]:
        """Return the days on which pupils of a class came to it from others, and stayed."""
        return [
            move.date
            for where, moves in self.into.items()
            if where.class_key == class_key
            for move in moves
            if move.source.class_key != class_key
            and (home := self.of(where, move.date)) is not None
            and home.class_key == class_key
        ]

    def stays(self, where: ClassSeat) -> tuple[Stay, ...]:
        """Return all stays of the pupil who sits in a place now, or sat there last.

        The stay in a place that somebody has left since ends with the move.
        """
        came = self.into.get(where, [])
        left = self.out.get(where, [])
        start = came[-1].date if came else None
        if left and (start is None or left[-1].date > start):
            # Nobody came after the one who left: it is that one.
            end = left[-1].date
            earlier = [move for move in came if move.date < end]
            start = earlier[-1].date if earlier else None
            found = [Stay(where, start, end)]
            found += self._onwards(left[-1])
        else:
            found = [Stay(where, start)]
        while start is not None:
            # Back through the seats they came from, one move at a time, to the first they had.
            source = next(move for move in self.into[found[0].place] if move.date == start)
            earlier = [move for move in self.into.get(source.source, ()) if move.date < start]
            first = earlier[-1].date if earlier else None
            found.insert(0, Stay(source.source, first, start))
            start = first
        return tuple(found)

    def _onwards(self, last: Move) -> list[Stay]:
        found = []
        while last.to_class:
            nexts = [move for move in self.out.get(last.target, ()) if move.date > last.date]
            found.append(Stay(last.target, last.date, nexts[0].date if nexts else None))
            # They sit there still.
            if not nexts:
                break
            last = nexts[0]
        return found
