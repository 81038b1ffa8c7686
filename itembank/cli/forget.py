"""``itembank forget``: removes a pupil, a class or old results for good."""

from __future__ import annotations

import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.lesson_text import read_day, store_of, the_department
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError
from itembank.text.folding import same_name
from itembank.text.in_words import counted, short_day

if TYPE_CHECKING:
    from itembank.planning.department.department import Department
    from itembank.records.forget.forgetting import Forgotten
    from itembank.records.pupils.whom import Whom
    from itembank.records.store.store import Store

GO_ON = "‘itembank forget --finish’"


def forget(
    seat: Annotated[
        str | None, typer.Option(metavar="CLASS/SEAT", help="One pupil, as in 8K/A3.")
    ] = None,
    class_: Annotated[
        str | None, typer.Option("--class", metavar="NAME", help="A whole class.")
    ] = None,
    before: Annotated[
        str | None, typer.Option(metavar="DAY", help="Only lessons before this day.")
    ] = None,
    finish: Annotated[
        bool, typer.Option("--finish", help="Go on with what was begun and is not done yet.")
    ] = False,
    yes: Annotated[bool, typer.Option("--yes", help="Do not ask first.")] = False,
    department: Annotated[
        Path | None, typer.Option(metavar="DIR", help="Folder with department.toml.")
    ] = None,
) -> None:
    """Remove what was recorded for a pupil, a class, or before a day: it cannot be had back.

    It goes from the store, from notes on lessons, and from the CSV files that ‘itembank export’
    wrote. What was printed or sums results up is named, for you to delete; ‘--finish’ then looks
    again. Copies that people made, such as backups and printed pages, are theirs to remove.

    \b
    Examples:
      itembank forget --seat 8K/A3
      itembank forget --class 8K --before 2026-09-01
      itembank forget --before 2025-09-01 --yes
      itembank forget --finish
    """  # noqa: D301 - typer keeps the lines after \b as they are
    given = any(one is not None for one in (seat, class_, before))
    if finish and given:
        raise ItembankError("--finish goes on with all that was begun; give it alone.")
    whom = None if finish else _whom(seat, class_, read_day(before, "--before"))
    found = the_department(department)
    from itembank.records.store.store import open_store

    with open_store(store_of(found.folder), make=False) as store:
        done = _finish_all(store) if whom is None else _forget(store, found, whom, yes)
    if not done:
        raise typer.Exit(1)


def _forget(store: Store, found: Department, whom: Whom, yes: bool) -> bool:
    """Forget, and say at each step what is true then; tell whether nothing is left to do."""
    from itembank.records.forget.forgetting import begun, count_rows, unfinished
    from itembank.records.forget.forgetting import forget as forget_now

    what = counted(count_rows(store, whom), "record" if whom.seat else "lesson")
    if not yes and not begun(store, whom):
        _confirm(whom, what)
    try:
        done = forget_now(store, whom)
    except KeyboardInterrupt:
        said = (
            f"{what} removed from {store.name}: {whom}. Files may still hold them: "
            f"{GO_ON} does the rest."
            if begun(store, whom)
            else "Nothing was forgotten."
        )
        say(f"Stopped. {said}", err=True)
        raise
    say(f"{what} removed from {store.name}: {whom}.")
    _say_done(store, whom, done)
    if any(same_name(one.name, whom.class_name) for one in found.classes):
        what = f"{whom.seat} still stands" if whom.seat else f"{whom.class_name} still stands"
        say(f"{what} in department.toml; take it out there if it is no longer needed.")
    for other in unfinished(store):
        if other.whom not in (None, whom):
            say(
                f"{other.whom}, begun on {short_day(other.begun_at)}, is not done yet: see {GO_ON}."
            )
    return done.done


def _finish_all(store: Store) -> bool:
    """Go on with all that was begun, and tell whether nothing is left to do."""
    from itembank.records.forget.forgetting import finish, unfinished

    begun = unfinished(store)
    if not begun:
        say("Nothing was begun to be forgotten that is not done.")
    done = True
    for one in begun:
        result = finish(store, one.number)
        _say_done(store, one.whom, result)
        done = done and result.done
    return done


def _whom(seat: str | None, class_: str | None, before: datetime.date | None) -> Whom:
    from itembank.people.seats import seat_fault
    from itembank.records.pupils.whom import Whom

    if seat is None:
        return Whom(class_ or "", before=before)
    name, slash, code = seat.rpartition("/")
    if not slash:
        name = class_ or ""
    elif class_ and not same_name(class_, name):
        raise ItembankError(f"--seat is of {name}, and --class says {class_}. Leave one out.")
    if fault := seat_fault(code):
        raise ItembankError(f"--seat: {fault}")
    return Whom(name, code.upper(), before)


def _confirm(whom: Whom, counted: str) -> None:
    from itembank.cli.words.ask import can_ask
    from itembank.cli.words.ask import yes as answered_yes

    if not can_ask():
        raise ItembankError("This cannot be undone, so say --yes to do it without being asked.")
    if not answered_yes(f"Forget {whom} ({counted}) for good?", default=False):
        raise ItembankError("Nothing was forgotten.")


def _say_done(store: Store, whom: Whom | None, done: Forgotten) -> None:
    """Say what became of notes and files, what is left, and what to do about it."""
    if done.cut:
        one = done.cut == 1
        say(
            f"The seat is cut from {done.cut} note{' or title' if one else 's and titles'}; what "
            "else they say stays."
        )
    for path in done.rewritten:
        say(f"Written anew without it: {path}")
    for path in done.parts:
        say(f"A part of an export that was broken off, deleted: {path}")
    if done.gone:
        say("These exports are no longer where they were written; if they were moved, delete them:")
        for path in done.gone:
            say(f"  {path}")
    for other in done.moved:
        say(f"The pupil had another seat as well, and is forgotten there too: {other}.")
    for note in done.notes:
        say(f"A note or title with that number, which may mean the seat: {note}")
    for path, why in done.left:
        say(f"Not clean yet: {path}: {why}. Put that right, or delete the file.", err=True)
    if done.unswept:
        say(
            f"Unused parts of {store.name} may still hold what was removed: they could not be "
            f"overwritten. {done.unswept}",
            err=True,
        )
    if store.shared:
        say(
            "Copies that this command cannot reach may be left on the server: in unused rows until "
            "its owner runs VACUUM FULL, in its write-ahead log, and in its backups. Ask whoever "
            "looks after it."
        )
    if done.done:
        say(f"Forgotten: {whom}." if whom is not None else f"{store.name} is swept.")
    else:
        say(f"Not finished. When you have seen to that, {GO_ON} looks again.", err=True)
