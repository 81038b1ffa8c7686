"""Which seats of a class a teacher may want to look at: those oftenest in the lowest band."""

from __future__ import annotations

import datetime
from collections import defaultdict
from typing import Any

from sqlalchemy import Connection

from itembank.data_class import dataclass
from itembank.people.seats import seat_order
from itembank.records.pupils.homes import Homes, place
from itembank.records.pupils.moves import moves_there
from itembank.records.reports.pupil_rows import (
    questions_asked,
    score_rows,
)
from itembank.records.reports.pupil_starters import FEWEST, Schemes, pupil_starter
from itembank.records.store.store_tables import lesson

LATEST = 6
"""Starters that the list of seats to look at goes by (common practice, no source)."""


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
    for row in score_rows(connection, lesson.c.class_key.in_(sources), first, last):
        home = homes.of(place(row.class_name, row.seat), row.date)
        if home is not None and home.class_key == key:
            there[home.seat].append(row)
    latest = {seat: rows[-LATEST:] for seat, rows in there.items()}
    asked = questions_asked(connection, [row.lesson_id for rows in latest.values() for row in rows])
    found = []
    for seat, rows in latest.items():
        made = [
            pupil_starter(row, asked[row.lesson_id], {}, {}, schemes(row.class_name))
            for row in rows
        ]
        found.append(
            LookAt(
                seat,
                sum(starter.lowest for starter in made),
                len(made),
                sum(starter.marks for starter in made),
                sum(starter.out_of for starter in made),
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
