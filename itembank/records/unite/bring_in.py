"""Copies into the store what only the other file has: lessons, entries, moves."""

from __future__ import annotations

from sqlalchemy import Connection, delete, insert, select, update

from itembank.records.entries.details import answers_of, tallies_of
from itembank.records.store.store_tables import (
    DETAILS,
    entry,
    exported,
    forgotten,
    lesson,
    move,
    question,
    tally,
)
from itembank.records.unite.both_files import Entry, Key
from itembank.records.unite.united import United
from itembank.text.folding import folded

_MOVE = ("from_key", "from_seat", "to_key", "to_seat", "date", "made_at")


def drop(ours: Connection, numbers: list[int], done: United) -> None:
    """Remove entries that were forgotten in the other file, and lessons left without any."""
    for number in numbers:
        of_it = ours.scalar(select(entry.c.lesson_id).where(entry.c.id == number))
        ours.execute(delete(entry).where(entry.c.id == number))
        if ours.scalar(select(entry.c.id).where(entry.c.lesson_id == of_it).limit(1)) is None:
            ours.execute(delete(lesson).where(lesson.c.id == of_it))
        done.entries_forgotten_there += 1


def bring_lessons(
    ours: Connection, theirs: Connection, wanted: set[Key], done: United
) -> dict[Key, int]:
    """Make the wanted lessons that only the other file has; return the numbers of all."""
    numbers: dict[Key, int] = {}
    for row in ours.execute(select(lesson).order_by(lesson.c.id.desc())):
        # From the last to the first: of two rows of one lesson the older one stays.
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


def bring_entry(
    ours: Connection, theirs: Connection, coming: Entry, lesson_id: int, number: int, done: United
) -> int:
    """Copy an entry with all it says, but for seats that were forgotten here."""
    row = theirs.execute(select(entry).where(entry.c.id == number)).one()
    # What replaced it is settled when all entries are there.
    values = {**row._mapping, "lesson_id": lesson_id, "replaced_by": None}
    del values["id"]
    made = ours.execute(insert(entry).values(**values))
    assert made.inserted_primary_key is not None
    new = int(made.inserted_primary_key[0])
    out = False
    for table in DETAILS:
        rows = []
        for detail in theirs.execute(select(table).where(table.c.entry_id == number)).all():
            cells = {**detail._mapping, "entry_id": new}
            if (coming.key[0], folded(str(cells.get("seat", "")))) in done.kept_out:
                out = True
            else:
                rows.append(cells)
        if rows:
            ours.execute(insert(table), rows)
    # Counts came along with the seats that stayed behind: they are counted again without them.
    if out and coming.kind == "answers":
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


def take_questions(ours: Connection, theirs: Connection, number: int, lesson_id: int) -> None:
    """Let a lesson ask what it asked in the file whose results count now."""
    row = theirs.execute(select(lesson).join(entry).where(entry.c.id == number)).one()
    ours.execute(
        update(lesson).where(lesson.c.id == lesson_id).values(title=row.title, out_of=row.out_of)
    )
    _copy_questions(ours, theirs, row.id, lesson_id)


def bring_rest(ours: Connection, theirs: Connection, gone: set[str], done: United) -> None:
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
        # A move taken back in either file is taken back.
        elif row.undone_at is not None and there.undone_at is None:
            ours.execute(update(move).where(move.c.id == there.id).values(undone_at=row.undone_at))
    paths = set(ours.scalars(select(exported.c.path)))
    for row in theirs.execute(select(exported)).all():
        if row.path not in paths:
            values = {name: value for name, value in row._mapping.items() if name != "id"}
            ours.execute(insert(exported).values(**values))
    mine = set(ours.scalars(select(forgotten.c.uid)))
    # Kept, so that a third copy cannot bring back what was forgotten.
    if gone - mine:
        ours.execute(insert(forgotten), [{"uid": uid} for uid in sorted(gone - mine)])
