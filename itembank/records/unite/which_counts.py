"""Settles which entry of a lesson counts, where two files know several."""

from __future__ import annotations

from collections import defaultdict
from itertools import pairwise
from typing import Any

from sqlalchemy import Connection, select, update

from itembank.records.entries.entries import RESULTS
from itembank.records.store.store_tables import (
    DETAILS,
    entry,
    lesson,
)
from itembank.records.unite.both_files import Entry, Key
from itembank.records.unite.bring_in import take_questions
from itembank.records.unite.united import Differing, United


def settle(
    ours: Connection,
    theirs: Connection,
    union: dict[str, Entry],
    here: dict[str, int],
    there: dict[str, int],
    mine: dict[str, Entry],
    numbers: dict[Key, int],
    done: United,
) -> None:
    """Write which entries are taken back and which are replaced, so that one of each counts."""
    groups: dict[tuple[Key, str], list[Entry]] = defaultdict(list)
    for known in union.values():
        groups[known.key, "" if known.kind in RESULTS else known.kind].append(known)
    for (key, kind), group in groups.items():
        if all(known.uid in mine for known in group) and not any(
            known.uid in there for known in group
        ):
            continue
        # Lessons that only this file knows stay as they are, but for all others one must count.
        counting = _chained(group, union)
        if len(counting) > 1:
            _tell(ours, counting, here, numbers[key], done)
        last = counting[-1] if counting else None
        if not kind and last is not None and last.uid not in mine:
            take_questions(ours, theirs, there[last.uid], numbers[key])
        for member in group:
            live = [union[uid] for uid in _reached(member, union) if union[uid].undone_at is None]
            # The next in time: so ‘undo’ goes back one step and not to the start.
            winner = min(live, key=lambda known: known.order, default=None)
            by = here[winner.uid] if winner is not None and member.undone_at is None else None
            ours.execute(
                update(entry)
                .where(entry.c.id == here[member.uid])
                .values(undone_at=member.undone_at, replaced_by=by)
            )


def _reached(first: Entry, union: dict[str, Entry]) -> set[str]:
    """Return the entries that replaced one, and those that replaced them, and so on."""
    found: set[str] = set()
    ahead = [*first.winners]
    while ahead:
        uid = ahead.pop()
        # Two files can have replaced each other's entries in a circle.
        if uid in found or uid not in union or uid == first.uid:
            continue
        found.add(uid)
        ahead += union[uid].winners
    return found


def _chained(group: list[Entry], union: dict[str, Entry]) -> list[Entry]:
    """Return the entries that would count at once, in order, each now replaced by the next."""
    live = [known for known in group if known.undone_at is None]
    counting = [
        known
        for known in live
        if not any(union[uid].undone_at is None for uid in _reached(known, union))
    ]
    if live and not counting:
        # Replaced in a circle, none would count: the latest does, as it does of any others.
        latest = max(live, key=lambda known: known.order)
        latest.winners = set()
        return [latest]
    # The name settles which is later where two were made in the same moment.
    counting.sort(key=lambda known: known.order)
    for earlier, following in pairwise(counting):
        earlier.winners = {*earlier.winners, following.uid}
    return counting


def _tell(
    ours: Connection, counting: list[Entry], here: dict[str, int], lesson_id: int, done: United
) -> None:
    said = {_content(ours, known.kind, here[known.uid]) for known in counting}
    # The same results, recorded in two places, are no difference to decide about.
    if len(said) < 2:
        return
    row = ours.execute(select(lesson).where(lesson.c.id == lesson_id)).one()
    kinds = tuple(known.kind for known in counting)
    moments = tuple(known.made_at for known in counting)
    done.differing.append(Differing(row.class_name, row.date, kinds, moments))


def _content(connection: Connection, kind: str, number: int) -> tuple[Any, ...]:
    found: list[Any] = [kind]
    for table in DETAILS:
        rows = connection.execute(select(table).where(table.c.entry_id == number))
        found.append(tuple(sorted((tuple(row)[1:] for row in rows), key=repr)))
    return tuple(found)
