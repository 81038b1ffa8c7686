"""Removes a pupil, a class or old results for good: from the store and from what it exported.

It is done in steps, each of which is safe to break off:

1. In one transaction the rows go, and a list is kept of whom and of every file that may hold
   them. From here on nothing brings the rows back.
2. Each file is cleaned, and leaves the list.
3. When the list is empty it goes too, and the store's file is written anew, so that no unused
   part of it keeps what was removed.

What is broken off, by a full disk or by anything else, is taken up again from the list.

What was counted from a pupil's answers is counted again without them. Hands counted by a
teacher name nobody and stay.
"""

from __future__ import annotations

import datetime
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path
from typing import Any

from sqlalchemy import Connection, and_, delete, func, insert, select, update

from itembank.errors import ItembankError
from itembank.files.disk import remove
from itembank.records.entries.details import answers_of, tallies_of
from itembank.records.forget.clean import Counts, clean_table
from itembank.records.pupils.moves import place
from itembank.records.pupils.pupil import forget_moves, parts_of_pupil
from itembank.records.pupils.whom import Whom
from itembank.records.store.copies import copies_beside
from itembank.records.store.place import meant
from itembank.records.store.store import Store
from itembank.records.store.store_tables import (
    LONGEST_NOTE,
    LONGEST_TITLE,
    clarity,
    entry,
    exported,
    forgetting,
    forgetting_file,
    forgotten,
    lesson,
    misconception,
    of_class,
    own_view,
    remark,
    score,
    tally,
)
from itembank.text.folding import same_name

__all__ = ["Forgotten", "Unfinished", "Whom", "count_rows", "finish", "forget", "unfinished"]

REPORT = "report-"
"""How the names of tables begin that sum results up: nothing can be taken out of a sum."""
_BY_SEAT = (score, misconception, own_view)


@dataclass(frozen=True, slots=True)
class Unfinished:
    """A forgetting that was broken off, or whose files are left to a person.

    `whom` is None where only unused room of the store is left to be overwritten.
    """

    number: int
    whom: Whom | None
    begun_at: datetime.datetime
    files: tuple[str, ...]


@dataclass(slots=True)
class Forgotten:
    """How many rows went from the store, and what became of the files it had exported.

    `left` are files that a person has to see to, each with the reason, and `copies` those that
    are copies of the results, which may hold more than the store does; `notes` are lessons with
    a note or title that may speak of a seat whose code is a bare number; `moved` are the other
    seats under which a pupil was forgotten; `unswept` says why the store's file could not be
    written anew.
    """

    rows: int = 0
    rewritten: list[Path] = field(default_factory=list)
    parts: list[Path] = field(default_factory=list)
    gone: list[Path] = field(default_factory=list)
    left: list[tuple[Path, str]] = field(default_factory=list)
    copies: list[Path] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)
    moved: list[str] = field(default_factory=list)
    cut: int = 0
    unswept: str = ""

    @property
    def done(self) -> bool:
        """Tell whether nothing is left to do."""
        return not (self.left or self.copies or self.unswept)


def count_rows(store: Store, whom: Whom) -> int:
    """Return how many rows of the store would go."""
    with store.reading() as connection:
        return sum(_count(connection, part) for part in parts_of_pupil(connection, whom))


def begun(store: Store, whom: Whom) -> bool:
    """Tell whether forgetting it was begun, and is not done yet."""
    there = [one.whom for one in unfinished(store)]
    return any(
        one is not None and (one == whom or (whom.seat and whom.seat == one.seat)) for one in there
    )


def unfinished(store: Store) -> list[Unfinished]:
    """Return what was begun to be forgotten and is not done yet, the oldest first."""
    with store.reading() as connection:
        return _unfinished(connection)


def forget(store: Store, whom: Whom) -> Forgotten:
    """Forget, in the store first and then in the files it exported.

    A pupil who moved is forgotten under every seat they had. Doing it again is harmless, and
    finishes what was broken off.

    Raises:
        ItembankError: the store cannot be written; then nothing was forgotten.
    """
    done = Forgotten()
    with store.writing(nothing="Nothing was forgotten.") as connection:
        parts = parts_of_pupil(connection, whom)
        numbers = [_forget_part(connection, part, done) for part in parts]
        forget_moves(connection, whom, parts)
    here = place(whom.class_name, whom.seat)
    done.moved = [str(one) for one in parts if place(one.class_name, one.seat) != here]
    for number in numbers:
        finish(store, number, done)
    done.rewritten, done.gone = list(dict.fromkeys(done.rewritten)), list(dict.fromkeys(done.gone))
    return done


def _forget_part(connection: Connection, whom: Whom, done: Forgotten) -> int:
    """Remove the rows, and return the number of the list of what is left to do."""
    count = _count(connection, whom)
    done.rows += count
    number = _list(connection, whom, bool(count))
    if whom.seat:
        _forget_seat(connection, whom, done)
    else:
        connection.execute(
            insert(forgotten).from_select(
                ["uid"],
                select(entry.c.uid)
                .where(entry.c.id.in_(_entries(whom)))
                .where(entry.c.uid.not_in(select(forgotten.c.uid)))
                .distinct(),
            )
        )
        connection.execute(delete(lesson).where(_lessons(whom)))
    return number


def finish(store: Store, number: int, done: Forgotten | None = None) -> Forgotten:
    """Do what a forgetting has left to do, and return what became of it.

    It raises nothing for what cannot be done: that is said in what it returns, and stays listed.
    """
    done = done or Forgotten()
    try:
        one = next((each for each in unfinished(store) if each.number == number), None)
        if one is not None:
            _clean_files(store, one, done)
        with store.writing() as connection:
            if not (done.left or done.copies):
                # Blank, it tells nobody anything, and still says that the file is to be swept.
                connection.execute(
                    update(forgetting)
                    .where(forgetting.c.id == number)
                    .values(class_name="", seat="", before=None, since=None)
                )
        store.sweep()
        with store.writing() as connection:
            blank = (forgetting.c.class_name == "", forgetting.c.before.is_(None))
            connection.execute(delete(forgetting).where(*blank))
    except ItembankError as error:
        done.unswept = str(error)
    return done


def _unfinished(connection: Connection) -> list[Unfinished]:
    found = []
    for row in connection.execute(select(forgetting).order_by(forgetting.c.id)).all():
        files = connection.scalars(
            select(forgetting_file.c.path)
            .where(forgetting_file.c.forgetting_id == row.id)
            .order_by(forgetting_file.c.path)
        )
        blank = not row.class_name and row.before is None
        whom = None if blank else Whom(row.class_name, row.seat, row.before, row.since)
        found.append(Unfinished(row.id, whom, row.begun_at, tuple(files)))
    return found


def _list(connection: Connection, whom: Whom, has_rows: bool) -> int:
    """Put whom, and the files that may hold it, on the list of what is to be done.

    What sums results up is listed only where it was made of rows that are there.
    """
    again = [one for one in _unfinished(connection) if one.whom == whom]
    if again:
        number = again[0].number
    else:
        made = connection.execute(
            insert(forgetting).values(
                class_name=whom.class_name,
                seat=whom.seat,
                before=whom.before,
                since=whom.since,
                begun_at=datetime.datetime.now(),
            )
        )
        assert made.inserted_primary_key is not None
        number = int(made.inserted_primary_key[0])
    known = set(again[0].files) if again else set()
    files = {
        one.path
        for one in connection.execute(select(exported.c.path, exported.c.class_name))
        if not (whom.class_name and one.class_name) or same_name(one.class_name, whom.class_name)
        if has_rows or _is_table(Path(one.path))
    }
    if files - known:
        connection.execute(
            insert(forgetting_file),
            [{"forgetting_id": number, "path": path} for path in sorted(files - known)],
        )
    return number


def _clean_files(store: Store, one: Unfinished, done: Forgotten) -> None:
    """Clean the files on a list; those that are seen to leave it, one by one."""
    whom = one.whom
    if store.place.is_file:
        done.copies += copies_beside(store.place.path)
    for note in one.files if whom is not None else ():
        assert whom is not None
        path = meant(note, store.folder)
        with store.reading() as connection:
            made_again = connection.scalar(
                select(exported.c.id).where(
                    exported.c.path == note, exported.c.made_at > one.begun_at
                )
            )
        if not _clean_file(store, path, whom, bool(made_again), done):
            continue
        with store.writing() as connection:
            connection.execute(
                delete(forgetting_file).where(
                    forgetting_file.c.forgetting_id == one.number, forgetting_file.c.path == note
                )
            )


def _clean_file(store: Store, path: Path, whom: Whom, made_again: bool, done: Forgotten) -> bool:
    """Clean one file and the hidden parts of it that a killed program left; tell whether it is."""
    for part in _parts(path):
        remove(part)
        if part.exists():
            done.left.append((part, "it is a part of an export that was broken off"))
            return False
        done.parts.append(part)
    if not path.exists():
        done.gone.append(path)
    elif not _is_table(path):
        if not made_again:
            done.left.append((path, "it was made when they still counted"))
            return False
    else:
        try:
            cleaned = clean_table(path, whom, partial(_counts, store, whom))
        except OSError as error:
            done.left.append((path, error.strerror or str(error)))
            return False
        except ValueError as error:
            done.left.append((path, f"it cannot be read as it was written ({error})"))
            return False
        if cleaned.changed:
            done.rewritten.append(path)
        if cleaned.doubts:
            done.left.append((path, "; ".join(cleaned.doubts)))
            return False
    return True


def _parts(path: Path) -> list[Path]:
    """Return what a killed program left of a file under hidden names beside it."""
    try:
        there = list(path.parent.iterdir())
    except OSError:
        return []
    start = f".{path.name}."
    return [one for one in there if one.name.startswith(start) and one.is_file()]


def _is_table(path: Path) -> bool:
    """Tell whether a file holds rows that can be taken out of it, and no sums or pages."""
    return path.suffix.casefold() == ".csv" and not path.name.startswith(REPORT)


def _counts(store: Store, whom: Whom) -> Counts:
    """Return what the store counts per question, now that the seat is gone."""
    with store.reading() as connection:
        rows = connection.execute(select(tally).where(tally.c.entry_id.in_(_entries(whom))))
        return {(row.entry_id, row.number): (row.right, row.out_of) for row in rows}


def _lessons(whom: Whom) -> Any:
    wanted = []
    if whom.class_name:
        wanted.append(of_class(whom.class_name))
    if whom.before is not None:
        wanted.append(lesson.c.date < whom.before)
    if whom.since is not None:
        wanted.append(lesson.c.date >= whom.since)
    return and_(*wanted)


def _entries(whom: Whom) -> Any:
    return select(entry.c.id).join(lesson).where(_lessons(whom))


def _count(connection: Connection, whom: Whom) -> int:
    if not whom.seat:
        return connection.scalar(select(func.count()).where(_lessons(whom))) or 0
    return sum(
        connection.scalar(select(func.count()).where(_of_seat(connection, table, whom))) or 0
        for table in _BY_SEAT
    )


def _of_seat(connection: Connection, table: Any, whom: Whom) -> Any:
    """Return the condition that a row is of the seat, however its code is written."""
    mine = table.c.entry_id.in_(_entries(whom))
    codes = connection.scalars(select(table.c.seat).where(mine).distinct())
    return and_(mine, table.c.seat.in_([code for code in codes if code and whom.of_seat(code)]))


def _forget_seat(connection: Connection, whom: Whom, done: Forgotten) -> None:
    """Remove a seat's rows, also those replaced and taken back, and count again without them.

    An entry that held nobody else stays, empty: were it removed, one that it had replaced
    would count again.
    """
    touched = list(
        connection.scalars(
            select(score.c.entry_id).where(_of_seat(connection, score, whom), score.c.answers != "")
        )
    )
    for table in _BY_SEAT:
        connection.execute(delete(table).where(_of_seat(connection, table, whom)))
    for number in touched:
        connection.execute(delete(tally).where(tally.c.entry_id == number))
        counts = tallies_of(answers_of(connection, number))
        if counts:
            connection.execute(
                insert(tally),
                [
                    {"entry_id": number, "number": place, "right": right, "out_of": out_of}
                    for place, (right, out_of) in counts.items()
                ],
            )
    _cut_from_notes(connection, whom, done)


def _cut_from_notes(connection: Connection, whom: Whom, done: Forgotten) -> None:
    """Take the seat out of notes and titles; of a bare number only say where it stands."""
    notes = connection.execute(
        select(clarity.c.entry_id.label("key"), clarity.c.note.label("text"), lesson.c.date)
        .join(entry, entry.c.id == clarity.c.entry_id)
        .join(lesson, lesson.c.id == entry.c.lesson_id)
        .where(_lessons(whom), clarity.c.note != "")
    ).all()
    titles = connection.execute(
        select(lesson.c.id.label("key"), lesson.c.title.label("text"), lesson.c.date).where(
            _lessons(whom)
        )
    ).all()
    remarks = connection.execute(
        select(remark.c.entry_id.label("key"), remark.c.words.label("text"), lesson.c.date)
        .join(entry, entry.c.id == remark.c.entry_id)
        .join(lesson, lesson.c.id == entry.c.lesson_id)
        .where(_lessons(whom))
    ).all()
    for rows, column, key, longest in (
        (notes, clarity.c.note, clarity.c.entry_id, LONGEST_NOTE),
        (remarks, remark.c.words, remark.c.entry_id, LONGEST_NOTE),
        (titles, lesson.c.title, lesson.c.id, LONGEST_TITLE),
    ):
        for row in rows:
            if not whom.said_in(row.text):
                continue
            if not whom.is_word:
                done.notes.append(f"{row.date}: {row.text}")
                continue
            text = whom.cut_from(row.text)[:longest]
            connection.execute(
                update(column.table).where(key == row.key).values({column.name: text})
            )
            done.cut += 1
