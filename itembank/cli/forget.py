"""``itembank forget``: removes a pupil, a class or old results for good."""

from __future__ import annotations

import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.lesson_text import read_day, store_of, the_department
from itembank.cli.text import say
from itembank.errors import ItembankError
from itembank.folding import same_name

if TYPE_CHECKING:
    from itembank.records.forget import Forgotten, Whom


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
    yes: Annotated[bool, typer.Option("--yes", help="Do not ask first.")] = False,
    department: Annotated[
        Path | None, typer.Option(metavar="DIR", help="Folder with department.toml.")
    ] = None,
) -> None:
    """Remove what was recorded for a pupil, a class, or before a day: it cannot be had back.

    It goes from the store and from the CSV files that ‘itembank export’ wrote. Copies that
    people made, such as backups and printed pages, are theirs to remove.

    \b
    Examples:
      itembank forget --seat 8K/A3
      itembank forget --class 8K --before 2026-09-01
      itembank forget --before 2025-09-01 --yes
    """  # noqa: D301 - typer keeps the lines after \b as they are
    whom = _whom(seat, class_, read_day(before, "--before"))
    found = the_department(department)
    from itembank.records.forget import count_rows
    from itembank.records.forget import forget as forget_now
    from itembank.records.store import open_store

    with open_store(store_of(found.folder), make=False) as store:
        things = "record" if whom.seat else "lesson"
        count = count_rows(store, whom)
        counted = f"{count} {things}{'' if count == 1 else 's'}"
        if not yes:
            _confirm(whom, counted)
        done = forget_now(store, whom)
    say(f"Forgotten: {whom}. {counted} removed from {store.name}.")
    _say_files(done)
    if any(same_name(one.name, whom.class_name) for one in found.classes):
        what = f"{whom.seat} still stands" if whom.seat else f"{whom.class_name} still stands"
        say(f"{what} in department.toml; take it out there if it is no longer needed.")
    if done.left:
        raise typer.Exit(1)


def _whom(seat: str | None, class_: str | None, before: datetime.date | None) -> Whom:
    from itembank.records.forget import Whom
    from itembank.seats import seat_fault

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
    from itembank.cli.ask import can_ask
    from itembank.cli.ask import yes as answered_yes

    if not can_ask():
        raise ItembankError("This cannot be undone, so say --yes to do it without being asked.")
    if not answered_yes(f"Forget {whom} ({counted}) for good?", default=False):
        raise ItembankError("Nothing was forgotten.")


def _say_files(done: Forgotten) -> None:
    for path in done.rewritten:
        say(f"Written anew without it: {path}")
    if done.gone:
        say("These exports are no longer where they were written; if they were moved, delete them:")
        for path in done.gone:
            say(f"  {path}")
    for path, why in done.left:
        say(f"Not changed: {path}: {why}. Delete it yourself.", err=True)
