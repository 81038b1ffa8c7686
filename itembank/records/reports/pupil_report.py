"""What one seat answered over time, and which seats of a class a teacher may want to look at.

A seat is asked for as it is now: what its pupil had under other seats comes along, and what
somebody else had in this one stays out (:mod:`itembank.records.pupils.homes`). Everything is
counted, nothing estimated: one pupil has too few answers to a topic for more.
"""

from __future__ import annotations

import datetime
from collections import Counter, defaultdict

from sqlalchemy import Connection

from itembank.data_class import dataclass
from itembank.records.pupils.homes import ClassSeat, Homes, Move, place
from itembank.records.pupils.moves import moves_there
from itembank.records.reports.advice import Next, Thresholds
from itembank.records.reports.pupil_rows import (
    mistakes_shown,
    other_starters,
    own_views,
    questions_asked,
    scores_in,
)
from itembank.records.reports.pupil_starters import FEWEST, PupilStarter, Schemes, pupil_starter


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
        for row in scores_in(connection, _places(homes, here), first, last)
        if homes.of(place(row.class_name, row.seat), row.date) == here
    ]
    asked = questions_asked(connection, [row.lesson_id for row in rows])
    shown = mistakes_shown(connection, rows)
    views = own_views(connection, rows)
    starters = tuple(
        pupil_starter(row, asked[row.lesson_id], shown, views, schemes(row.class_name))
        for row in rows
    )
    left = homes.out.get(here, [])
    came = homes.into.get(here, [])
    # Whose rows there are sits here now, whoever left the seat before.
    gone = left[-1] if left and not rows else None
    if gone is not None and came and came[-1].date >= gone.date:
        gone = None
    since = max(first, _in_class_since(homes, here) or first)
    without, by_hand = other_starters(connection, class_name, since, last, rows)
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


def _in_class_since(homes: Homes, here: ClassSeat) -> datetime.date | None:
    """Return the first day of a pupil's time in the class, whatever seats; None: from the start.

    What the class was asked before they came is nothing that they missed.
    """
    stays = homes.stays(here)
    # The last in this place: they may have sat here before, and have come back.
    at = max(n for n, stay in enumerate(stays) if stay.place == here)
    while at and stays[at - 1].place.class_key == here.class_key:
        at -= 1
    return stays[at].first


def _places(homes: Homes, here: ClassSeat) -> set[ClassSeat]:
    """Return every place from which somebody may have come to be here."""
    found, new = {here}, [here]
    while new:
        for move in homes.into.get(new.pop(), ()):
            if move.source not in found:
                found.add(move.source)
                new.append(move.source)
    return found


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
