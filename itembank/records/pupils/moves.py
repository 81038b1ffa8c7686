"""Keeps moves of pupils to another class or seat, and refuses those that cannot be.

Moves of one day are made at the same moment, so that two pupils can change places and a whole
year group its sets.
"""

from __future__ import annotations

import datetime
from collections import defaultdict
from collections.abc import Collection, Sequence

from sqlalchemy import Connection, insert, select

from itembank.errors import ItembankError, SeveralErrors
from itembank.records.pupils.homes import AWAY, ClassSeat, Homes, Move, Stay
from itembank.records.store.store import Store
from itembank.records.store.store_tables import active, entry, lesson, move, own_view, score
from itembank.text.in_words import day_month_year


def moves_there(connection: Connection, last: datetime.date | None = None) -> list[Move]:
    """Return the moves that count, up to a day; taken back ones do not."""
    rows = select(move).where(move.c.undone_at.is_(None)).order_by(move.c.date, move.c.id)
    if last is not None:
        rows = rows.where(move.c.date <= last)
    return [
        Move(row.from_class, row.from_seat, row.to_class, row.to_seat, row.date)
        for row in connection.execute(rows)
    ]


Days = dict[ClassSeat, list[datetime.date]]
"""The days on which something was recorded for each place, in order."""


def move_seats(store: Store, moves: Sequence[Move], unlisted: Collection[ClassSeat] = ()) -> int:
    """Keep moves, all of them or none; return how many of the pupils have anything recorded.

    `unlisted` are seats that their class does not list (any more): only what is recorded shows
    that somebody sat there.

    Raises:
        ItembankError: they cannot all be: every such fault, and nothing is kept.
    """
    with store.writing() as connection:
        before = moves_there(connection)
        homes = Homes([*before, *moves])
        keys = {where.class_key for some in (homes.out, homes.into) for where in some}
        days = _days(connection, keys)
        faults = [
            ItembankError(
                f"{new}: nothing is recorded for a seat {new.from_seat} of {new.from_class}, and "
                "the class lists none. Check the seat."
            )
            for new in moves
            if new.source in unlisted and not days[new.source]
        ]
        faults += _faults(before, moves, days)
        if faults:
            # Two moves of one swap can have the very same fault.
            once = {str(fault): fault for fault in faults}
            raise SeveralErrors([*once.values(), ItembankError("Nobody was moved.")])
        now = datetime.datetime.now()
        connection.execute(
            insert(move),
            [
                {
                    "from_class": new.from_class,
                    "from_key": new.source.class_key,
                    "from_seat": new.source.seat,
                    "to_class": new.to_class,
                    "to_key": new.target.class_key,
                    "to_seat": new.target.seat,
                    "date": new.date,
                    "made_at": now,
                }
                for new in moves
            ],
        )
    known = 0
    for new in moves:
        stays = homes.stays(new.target) if new.to_class else (Stay(new.source),)
        known += any(stay.holds(stay.place, day) for stay in stays for day in days[stay.place])
    return known


def _faults(before: Sequence[Move], moves: Sequence[Move], days: Days) -> list[ItembankError]:
    found: list[ItembankError] = []
    homes = Homes([*before, *moves])
    newest: dict[ClassSeat, datetime.date] = {}
    for old in before:
        for where in (old.source, old.target):
            newest[where] = max(old.date, newest.get(where, old.date))
    coming = {new.target for new in moves}
    # Each pair is compared once, so that a seat named twice is told once.
    sources: set[ClassSeat] = set()
    targets: set[ClassSeat] = set()
    for new in moves:
        source, target = new.source, new.target
        left, reached = source in sources, target in targets
        sources.add(source)
        targets.add(target)
        if source == target:
            found.append(ItembankError(f"{new}: that is the same seat."))
            continue
        if left:
            found.append(ItembankError(f"{new.from_class}/{new.from_seat} is moved twice."))
        if new.to_class and reached:
            found.append(ItembankError(f"Two pupils are moved to {new.to_class}/{new.to_seat}."))
        last = newest.get(source)
        if last is not None and last >= new.date:
            found.append(
                ItembankError(
                    f"{new}: a move of {day_month_year(last)} is noted for "
                    f"{new.from_class}/{new.from_seat} already.",
                    matter="moved already",
                    class_name=new.from_class,
                )
            )
            continue
        after = [day for day in days[source] if day >= new.date]
        # Results after the day are the newcomer's, if somebody comes.
        if after and source not in coming:
            found.append(
                ItembankError(
                    f"{new}: {new.from_class}/{new.from_seat} has results of "
                    f"{day_month_year(after[0])}, which is not before "
                    f"{day_month_year(new.date)}.",
                    matter="day to be checked",
                )
            )
        sits = [day for day in days[target] if day < new.date and homes.of(target, day) == target]
        if new.to_class and sits:
            # Without this move: who sat there before may be the very pupil who comes back.
            others = Homes([*before, *(kept for kept in moves if kept is not new)])
            sits = [day for day in sits if others.of(target, day) != source]
        if new.to_class and sits:
            found.append(
                ItembankError(
                    f"{new}: somebody else sits in {new.to_class}/{new.to_seat}, with results of "
                    f"{day_month_year(sits[-1])}. Move that pupil on the same day, or say that "
                    "they left: "
                    f"{new.to_class}/{new.to_seat} {AWAY}."
                )
            )
    return found


def _days(connection: Connection, class_keys: Collection[str]) -> Days:
    """Return the days on which anything that counts was recorded for each place of classes."""
    found: dict[ClassSeat, set[datetime.date]] = defaultdict(set)
    # A pupil may have given only their own view, without a score.
    for table in (score, own_view):
        rows = connection.execute(
            select(lesson.c.class_key, table.c.seat, lesson.c.date)
            .select_from(table)
            .join(entry, entry.c.id == table.c.entry_id)
            .join(lesson, lesson.c.id == entry.c.lesson_id)
            .where(active(), lesson.c.class_key.in_(class_keys), table.c.seat != "")
        )
        for key, seat, date in rows:
            found[ClassSeat(key, seat)].add(date)
    return defaultdict(list, {where: sorted(dates) for where, dates in found.items()})
