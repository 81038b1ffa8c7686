"""Everything of one pupil, under every seat they had: what forgetting a seat is about."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any

from sqlalchemy import Connection, and_, delete, or_, update

from itembank.records.pupils.homes import ClassSeat, Homes, place
from itembank.records.pupils.moves import moves_there
from itembank.records.store.store_tables import move
from itembank.text.folding import folded

if TYPE_CHECKING:
    from itembank.records.pupils.whom import Whom


def parts_of_pupil(connection: Connection, whom: Whom) -> tuple[Whom, ...]:
    """Return a seat that is to be forgotten as the stays of the pupil who sits there.

    Where nobody sits there any more it is the one who sat there last. Anything else than a
    seat, and a seat that nobody moved to or from, is returned as it is.
    """
    moves = moves_there(connection)
    here = place(whom.class_name, whom.seat)
    names = {whom.class_name: here.class_key}
    for told in moves:
        names |= {told.from_class: told.source.class_key, told.to_class: told.target.class_key}
    if not whom.seat or not any(here in (told.source, told.target) for told in moves):
        return (whom,)
    called = {key: name for name, key in names.items()}
    found = []
    for stay in Homes(moves).stays(here):
        ends = [day for day in (whom.before, stay.end) if day is not None]
        part = replace(
            whom,
            class_name=called[stay.place.class_key],
            seat=stay.place.seat,
            since=stay.first,
            before=min(ends, default=None),
        )
        if part.since is None or part.before is None or part.since < part.before:
            found.append(part)
    return tuple(found)


def forget_moves(connection: Connection, whom: Whom, parts: tuple[Whom, ...]) -> int:
    """Remove the moves that lead to what was forgotten, and return how many.

    Whoever moved to a class that is forgotten counts as having left: what was recorded of them
    before must not count for the class they came from.
    """
    from_it, to_it = _at(move.c.from_key, move.c.from_seat), _at(move.c.to_key, move.c.to_seat)
    early = move.c.date < whom.before if whom.before is not None else None
    if whom.seat:
        places = [place(part.class_name, part.seat) for part in parts]
        led = [
            or_(
                from_it(where) & (move.c.date == part.before),
                to_it(where) & (move.c.date == part.since),
                and_(move.c.undone_at.is_not(None), or_(from_it(where), to_it(where))),
            )
            for where, part in zip(places, parts, strict=True)
        ]
        wanted = or_(*led) if early is None else and_(or_(*led), early)
    elif whom.class_name:
        key = folded(whom.class_name)
        if early is None:
            connection.execute(
                update(move).where(move.c.to_key == key).values(to_class="", to_key="", to_seat="")
            )
        wanted = move.c.from_key == key if early is None else and_(move.c.from_key == key, early)
    elif early is not None:
        wanted = early
    else:
        return 0
    return connection.execute(delete(move).where(wanted)).rowcount


def _at(key: Any, seat: Any) -> Any:
    def condition(where: ClassSeat) -> Any:
        return and_(key == where.class_key, seat == where.seat)

    return condition
