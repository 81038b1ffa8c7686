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

from sqlalchemy import Connection, delete, insert, select, update

from itembank.errors import ItembankError
from itembank.records.forget.exported_files import clean_files
from itembank.records.forget.forgotten import Forgotten
from itembank.records.forget.rows_of import count_of, entries_of, lessons_of, remove_seat
from itembank.records.forget.unfinished import list_left, unfinished
from itembank.records.pupils.homes import place
from itembank.records.pupils.pupil import forget_moves, parts_of_pupil
from itembank.records.pupils.whom import Whom
from itembank.records.store.store import Store
from itembank.records.store.store_tables import (
    entry,
    forgetting,
    forgotten,
    lesson,
)


def count_rows(store: Store, whom: Whom) -> int:
    """Return how many rows of the store would go."""
    with store.reading() as connection:
        return sum(count_of(connection, part) for part in parts_of_pupil(connection, whom))


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
    done.moved = [str(part) for part in parts if place(part.class_name, part.seat) != here]
    # Only now, with the rows gone for good, are files written: else one could be made anew with
    # them.
    for number in numbers:
        finish(store, number, done)
    # One file may hold several seats of the pupil, and was looked at for each.
    done.rewritten, done.gone = list(dict.fromkeys(done.rewritten)), list(dict.fromkeys(done.gone))
    done.left, done.copies = list(dict.fromkeys(done.left)), list(dict.fromkeys(done.copies))
    return done


def _forget_part(connection: Connection, whom: Whom, done: Forgotten) -> int:
    """Remove the rows, and return the number of the list of what is left to do."""
    count = count_of(connection, whom)
    done.rows += count
    number = list_left(connection, whom, bool(count))
    if whom.seat:
        remove_seat(connection, whom, done)
    else:
        connection.execute(
            insert(forgotten).from_select(
                ["uid"],
                select(entry.c.uid)
                .where(entry.c.id.in_(entries_of(whom)))
                .where(entry.c.uid.not_in(select(forgotten.c.uid)))
                # Copies of the store know entries by this name: uniting must not bring them back.
                .distinct(),
            )
        )
        connection.execute(delete(lesson).where(lessons_of(whom)))
    return number


def finish(store: Store, number: int, done: Forgotten | None = None) -> Forgotten:
    """Do what a forgetting has left to do, and return what became of it.

    It raises nothing for what cannot be done: that is said in what it returns, and stays listed.
    """
    done = done or Forgotten()
    try:
        task = next((listed for listed in unfinished(store) if listed.number == number), None)
        if task is not None:
            clean_files(store, task, done)
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
            # Only lists that are blank: another forgetting may have begun meanwhile.
            blank = (forgetting.c.class_name == "", forgetting.c.before.is_(None))
            connection.execute(delete(forgetting).where(*blank))
    except ItembankError as error:
        done.unswept = str(error)
    return done
