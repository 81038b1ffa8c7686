"""Brings together two results files that went their own ways, with nothing lost or doubled.

Entries are a union, known by their names, which copies of a store share. What was taken back in
either is taken back; what was replaced in either is replaced; what was forgotten in either is
not brought back. Where two people recorded the same lesson differently, both stay: the later
one counts until a person decides, and ‘undo’ brings the other back.
"""

from __future__ import annotations

import datetime
import shutil
import tempfile
from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass, field
from itertools import pairwise
from pathlib import Path
from typing import Any

from sqlalchemy import Connection, delete, insert, select, update

from itembank.errors import ItembankError
from itembank.records.entries.details import answers_of, tallies_of
from itembank.records.entries.entries import RESULTS
from itembank.records.store.store import Store, open_store
from itembank.records.store.store_tables import (
    DETAILS,
    entry,
    exported,
    forgotten,
    lesson,
    move,
    own_view,
    question,
    score,
    tally,
)
from itembank.text.folding import folded

Key = tuple[str, datetime.date, str]
"""A lesson, as two files know it: class, day and period."""
_MOVE = ("from_key", "from_seat", "to_key", "to_seat", "date", "made_at")


@dataclass(frozen=True, slots=True)
class Differing:
    """A lesson of which both files have results that count, and that differ; the later counts."""

    class_name: str
    date: datetime.date
    kinds: tuple[str, ...]
    made_at: tuple[datetime.datetime, ...]


@dataclass(slots=True)
class United:
    """What came in: entries, lessons and moves; what differs; seats one of the files forgot."""

    entries: int = 0
    lessons: int = 0
    moves: int = 0
    differing: list[Differing] = field(default_factory=list)
    kept_out: set[tuple[str, str]] = field(default_factory=set)
    forgotten_there: set[tuple[str, str]] = field(default_factory=set)
    entries_forgotten_there: int = 0


@dataclass(slots=True)
class _Entry:
    """An entry of the union, with the entries that replaced it in either file."""

    uid: str
    key: Key
    kind: str
    made_at: datetime.datetime
    undone_at: datetime.datetime | None
    winners: set[str] = field(default_factory=set)

    @property
    def order(self) -> tuple[datetime.datetime, str]:
        return self.made_at, self.uid


def unite(store: Store, other: Path) -> United:
    """Bring all that another results file holds into the store; the file stays as it is.

    Doing it again changes nothing.

    Raises:
        ItembankError: the file is no results file, or the store cannot be written; then
            nothing was brought in.
    """
    if not other.is_file():
        raise ItembankError(f"There is no file {other}. Name the other results file.")
    if store.place.is_file and other.resolve() == store.place.path.resolve():
        raise ItembankError(f"{other} is the department's own results file. Name the other one.")
    with tempfile.TemporaryDirectory(prefix="itembank-") as folder:
        # A copy of the copy: it may have to be brought up to date, and its journal played.
        copy = Path(folder) / "results.sqlite3"
        try:
            shutil.copyfile(other, copy)
            journal = other.with_name(f"{other.name}-journal")
            if journal.is_file():
                shutil.copyfile(journal, copy.with_name(f"{copy.name}-journal"))
        except OSError as error:
            raise ItembankError(f"{other} cannot be read: {error.strerror}.") from None
        try:
            theirs_open = open_store(str(copy))
        except ItembankError as error:
            raise ItembankError(str(error).replace(str(copy), str(other))) from None
        with (
            theirs_open as there,
            there.reading() as theirs,
            store.writing(nothing="Nothing was brought in.") as ours,
        ):
            return _unite(ours, theirs)


def _unite(ours: Connection, theirs: Connection) -> United:
    done = United()
    gone = {*ours.scalars(select(forgotten.c.uid)), *theirs.scalars(select(forgotten.c.uid))}
    mine, here = _entries(ours)
    yours, there = _entries(theirs)
    _drop(ours, [here[uid] for uid in here if uid in gone], done)
    shared = [uid for uid in here if uid in there]
    _compare_seats(ours, theirs, shared, here, there, done)
    new = [your for your in yours.values() if your.uid not in mine and your.uid not in gone]
    numbers = _lessons(ours, theirs, {one.key for one in new}, done)
    for one in sorted(new, key=lambda each: each.order):
        here[one.uid] = _bring(ours, theirs, one, numbers[one.key], there[one.uid], done)
    union: dict[str, _Entry] = {}
    for each in (mine, yours):
        for uid, one in each.items():
            if uid in gone:
                continue
            known = union.setdefault(uid, one)
            known.winners = {w for w in known.winners | one.winners if w not in gone}
            moments = [m for m in (known.undone_at, one.undone_at) if m is not None]
            known.undone_at = min(moments, default=None)
    _settle(ours, theirs, union, here, there, mine, numbers, done)
    _bring_rest(ours, theirs, gone, done)
    return done


def _entries(connection: Connection) -> tuple[dict[str, _Entry], dict[str, int]]:
    """Return all entries by their names, and their numbers in this file."""
    rows = connection.execute(
        select(entry, lesson.c.class_key, lesson.c.date, lesson.c.period)
        .join(lesson)
        .order_by(entry.c.id)
    ).all()
    names = {row.id: row.uid for row in rows}
    found = {
        row.uid: _Entry(
            row.uid,
            (row.class_key, row.date, row.period),
            row.kind,
            row.made_at,
            row.undone_at,
            {names[row.replaced_by]} if row.replaced_by in names else set(),
        )
        for row in rows
    }
    return found, {uid: number for number, uid in names.items()}


def _drop(ours: Connection, numbers: list[int], done: United) -> None:
    """Remove entries that were forgotten in the other file, and lessons left without any."""
    for number in numbers:
        of_it = ours.scalar(select(entry.c.lesson_id).where(entry.c.id == number))
        ours.execute(delete(entry).where(entry.c.id == number))
        if ours.scalar(select(entry.c.id).where(entry.c.lesson_id == of_it).limit(1)) is None:
            ours.execute(delete(lesson).where(lesson.c.id == of_it))
        done.entries_forgotten_there += 1


def _compare_seats(
    ours: Connection,
    theirs: Connection,
    shared: Iterable[str],
    here: dict[str, int],
    there: dict[str, int],
    done: United,
) -> None:
    """Find seats that one file forgot: only forgetting takes a seat out of an entry."""
    both = set(shared)
    mine, yours = (_seats(ours, here, both), _seats(theirs, there, both))
    done.kept_out = {(row[0], row[2]) for row in yours - mine}
    done.forgotten_there = {(row[0], row[2]) for row in mine - yours}


def _seats(
    connection: Connection, numbers: dict[str, int], wanted: set[str]
) -> set[tuple[str, str, str]]:
    found: set[tuple[str, str, str]] = set()
    for table in (score, own_view):
        rows = connection.execute(
            select(lesson.c.class_key, entry.c.uid, table.c.seat)
            .join_from(lesson, entry, entry.c.lesson_id == lesson.c.id)
            .join(table, table.c.entry_id == entry.c.id)
            .where(table.c.seat != "")
        )
        found.update((key, uid, folded(seat)) for key, uid, seat in rows if uid in wanted)
    return found


def _lessons(
    ours: Connection, theirs: Connection, wanted: set[Key], done: United
) -> dict[Key, int]:
    """Make the wanted lessons that only the other file has; return the numbers of all."""
    numbers: dict[Key, int] = {}
    for row in ours.execute(select(lesson).order_by(lesson.c.id.desc())):
        numbers[row.class_key, row.date, row.period] = row.id
    for row in theirs.execute(select(lesson).order_by(lesson.c.id)).all():
        key = (row.class_key, row.date, row.period)
        if key in numbers or key not in wanted:
            continue
        values = {name: value for name, value in row._mapping.items() if name != "id"}
        made = ours.execute(insert(lesson).values(**values))
        assert made.inserted_primary_key is not None
        numbers[key] = int(made.inserted_primary_key[0])
        _copy_questions(ours, theirs, row.id, numbers[key])
        done.lessons += 1
    return numbers


def _copy_questions(ours: Connection, theirs: Connection, source: int, target: int) -> None:
    rows = theirs.execute(select(question).where(question.c.lesson_id == source)).all()
    if rows:
        ours.execute(delete(question).where(question.c.lesson_id == target))
        ours.execute(insert(question), [{**row._mapping, "lesson_id": target} for row in rows])


def _bring(
    ours: Connection, theirs: Connection, one: _Entry, lesson_id: int, number: int, done: United
) -> int:
    """Copy an entry with all it says, but for seats that were forgotten here."""
    row = theirs.execute(select(entry).where(entry.c.id == number)).one()
    values = {**row._mapping, "lesson_id": lesson_id, "replaced_by": None}
    del values["id"]
    made = ours.execute(insert(entry).values(**values))
    assert made.inserted_primary_key is not None
    new = int(made.inserted_primary_key[0])
    out = False
    for table in DETAILS:
        rows = []
        for each in theirs.execute(select(table).where(table.c.entry_id == number)).all():
            cells = {**each._mapping, "entry_id": new}
            if (one.key[0], folded(str(cells.get("seat", "")))) in done.kept_out:
                out = True
            else:
                rows.append(cells)
        if rows:
            ours.execute(insert(table), rows)
    if out and one.kind == "answers":
        ours.execute(delete(tally).where(tally.c.entry_id == new))
        counts = tallies_of(answers_of(ours, new))
        rows = [
            {"entry_id": new, "number": place, "right": right, "out_of": out_of}
            for place, (right, out_of) in counts.items()
        ]
        if rows:
            ours.execute(insert(tally), rows)
    done.entries += 1
    return new


def _settle(
    ours: Connection,
    theirs: Connection,
    union: dict[str, _Entry],
    here: dict[str, int],
    there: dict[str, int],
    mine: dict[str, _Entry],
    numbers: dict[Key, int],
    done: United,
) -> None:
    """Write which entries are taken back and which are replaced, so that one of each counts."""
    groups: dict[tuple[Key, str], list[_Entry]] = defaultdict(list)
    for one in union.values():
        groups[one.key, "" if one.kind in RESULTS else one.kind].append(one)
    for (key, kind), group in groups.items():
        if all(one.uid in mine for one in group) and not any(one.uid in there for one in group):
            continue
        counting = _chained(group, union)
        if len(counting) > 1:
            _tell(ours, counting, here, numbers[key], done)
        last = counting[-1] if counting else None
        if not kind and last is not None and last.uid not in mine:
            _take_questions(ours, theirs, there[last.uid], numbers[key])
        for one in group:
            live = [union[uid] for uid in _reached(one, union) if union[uid].undone_at is None]
            winner = min(live, key=lambda each: each.order, default=None)
            by = here[winner.uid] if winner is not None and one.undone_at is None else None
            ours.execute(
                update(entry)
                .where(entry.c.id == here[one.uid])
                .values(undone_at=one.undone_at, replaced_by=by)
            )


def _reached(one: _Entry, union: dict[str, _Entry]) -> set[str]:
    """Return the entries that replaced one, and those that replaced them, and so on."""
    found: set[str] = set()
    ahead = [*one.winners]
    while ahead:
        uid = ahead.pop()
        if uid in found or uid not in union or uid == one.uid:
            continue
        found.add(uid)
        ahead += union[uid].winners
    return found


def _chained(group: list[_Entry], union: dict[str, _Entry]) -> list[_Entry]:
    """Return the entries that would count at once, in order, each now replaced by the next."""
    live = [one for one in group if one.undone_at is None]
    counting = [
        one for one in live if not any(union[uid].undone_at is None for uid in _reached(one, union))
    ]
    counting.sort(key=lambda one: one.order)
    for one, following in pairwise(counting):
        one.winners = {*one.winners, following.uid}
    return counting


def _tell(
    ours: Connection, counting: list[_Entry], here: dict[str, int], lesson_id: int, done: United
) -> None:
    said = {_content(ours, one.kind, here[one.uid]) for one in counting}
    if len(said) < 2:
        return
    row = ours.execute(select(lesson).where(lesson.c.id == lesson_id)).one()
    kinds = tuple(one.kind for one in counting)
    moments = tuple(one.made_at for one in counting)
    done.differing.append(Differing(row.class_name, row.date, kinds, moments))


def _content(connection: Connection, kind: str, number: int) -> tuple[Any, ...]:
    found: list[Any] = [kind]
    for table in DETAILS:
        rows = connection.execute(select(table).where(table.c.entry_id == number))
        found.append(tuple(sorted((tuple(row)[1:] for row in rows), key=repr)))
    return tuple(found)


def _take_questions(ours: Connection, theirs: Connection, number: int, lesson_id: int) -> None:
    """Let a lesson ask what it asked in the file whose results count now."""
    row = theirs.execute(select(lesson).join(entry).where(entry.c.id == number)).one()
    ours.execute(
        update(lesson).where(lesson.c.id == lesson_id).values(title=row.title, out_of=row.out_of)
    )
    _copy_questions(ours, theirs, row.id, lesson_id)


def _bring_rest(ours: Connection, theirs: Connection, gone: set[str], done: United) -> None:
    """Bring moves, notes of exports, and the names of what was forgotten."""
    known = {tuple(getattr(row, name) for name in _MOVE): row for row in ours.execute(select(move))}
    for row in theirs.execute(select(move).order_by(move.c.id)).all():
        there = known.get(tuple(getattr(row, name) for name in _MOVE))
        if there is None:
            values = {name: value for name, value in row._mapping.items() if name != "id"}
            if not {(row.from_key, folded(row.from_seat)), (row.to_key, folded(row.to_seat))} & (
                done.kept_out
            ):
                ours.execute(insert(move).values(**values))
                done.moves += 1
        elif row.undone_at is not None and there.undone_at is None:
            ours.execute(update(move).where(move.c.id == there.id).values(undone_at=row.undone_at))
    paths = set(ours.scalars(select(exported.c.path)))
    for row in theirs.execute(select(exported)).all():
        if row.path not in paths:
            values = {name: value for name, value in row._mapping.items() if name != "id"}
            ours.execute(insert(exported).values(**values))
    mine = set(ours.scalars(select(forgotten.c.uid)))
    if gone - mine:
        ours.execute(insert(forgotten), [{"uid": uid} for uid in sorted(gone - mine)])
