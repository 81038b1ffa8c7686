"""Cleans the files that the store exported of whom is forgotten; what it cannot clean it tells."""

from __future__ import annotations

from functools import partial
from pathlib import Path

from sqlalchemy import delete, select

from itembank.files.disk import remove
from itembank.records.forget.cleaned_table import Counts, clean_table
from itembank.records.forget.forgotten import Forgotten
from itembank.records.forget.rows_of import entries_of
from itembank.records.forget.unfinished import Unfinished, is_table
from itembank.records.pupils.whom import Whom
from itembank.records.store.copies import copies_beside
from itembank.records.store.store import Store
from itembank.records.store.store_place import meant
from itembank.records.store.store_tables import (
    exported,
    forgetting_file,
    lesson,
    move,
    tally,
)


def clean_files(store: Store, task: Unfinished, done: Forgotten) -> None:
    """Clean the files on a list; those that are seen to leave it, one by one."""
    whom = task.whom
    if store.place.is_file:
        # A copy is another person's way back, or another computer's results: a person decides.
        done.copies += copies_beside(store.place.path)
    for note in task.files if whom is not None else ():
        assert whom is not None
        path = meant(note, store.folder)
        with store.reading() as connection:
            made_again = connection.scalar(
                select(exported.c.id).where(
                    exported.c.path == note, exported.c.made_at > task.begun_at
                )
            )
        # It stays listed, so that the next run tries again.
        if not _clean_file(store, path, whom, bool(made_again), done):
            continue
        with store.writing() as connection:
            connection.execute(
                delete(forgetting_file).where(
                    forgetting_file.c.forgetting_id == task.number, forgetting_file.c.path == note
                )
            )


def _clean_file(store: Store, path: Path, whom: Whom, made_again: bool, done: Forgotten) -> bool:
    """Clean one file and the hidden parts of it that a killed program left; tell whether it is."""
    # First the hidden parts: while one stays, the file counts as not cleaned.
    for part in _parts(path):
        remove(part)
        if part.exists():
            done.left.append((part, "it is a part of an export that was broken off"))
            return False
        done.parts.append(part)
    try:
        there = path.exists()
    except OSError as error:  # its folder may not be looked into: it may well be there
        done.left.append((path, error.strerror or str(error)))
        return False
    if not there:
        done.gone.append(path)
    elif not is_table(path):
        # A page cannot be cleaned; one made after the rows went never had them.
        if not made_again:
            done.left.append((path, "it was made when they still counted"))
            return False
    else:
        try:
            cleaned = clean_table(path, whom, partial(_counts, store, whom), _classes(store))
        except OSError as error:
            done.left.append((path, error.strerror or str(error)))
            return False
        except ValueError as error:
            done.left.append((path, f"it cannot be read as it was written ({error})"))
            return False
        if cleaned.changed:
            done.rewritten.append(path)
        # Left on the list: what may be theirs has to be seen by a person.
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
    return [file for file in there if file.name.startswith(start) and file.is_file()]


def _counts(store: Store, whom: Whom) -> Counts:
    """Return what the store counts per question, now that the seat is gone."""
    with store.reading() as connection:
        rows = connection.execute(select(tally).where(tally.c.entry_id.in_(entries_of(whom))))
        return {(row.entry_id, row.number): (row.right, row.out_of) for row in rows}


def _classes(store: Store) -> set[str]:
    """Return the classes that the store knows, as names are compared."""
    with store.reading() as connection:
        found = [
            connection.scalars(select(column).distinct())
            for column in (lesson.c.class_key, move.c.from_key, move.c.to_key)
        ]
        return {key for keys in found for key in keys}
