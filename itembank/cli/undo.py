"""``itembank undo``: takes back what was recorded last."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.text.in_words import day_month_year, moment

if TYPE_CHECKING:
    from itembank.records.entries.recording import Last


def undo(
    class_: Annotated[
        str | None, typer.Argument(metavar="CLASS", help="The class; the department's usual one.")
    ] = None,
    date: Annotated[
        str | None, typer.Option(metavar="DAY", help="Only what was recorded for this day.")
    ] = None,
    yes: Annotated[
        bool, typer.Option("--yes", help="Take back what is older, too, without being asked.")
    ] = False,
    department: Annotated[
        Path | None, typer.Option(metavar="DIR", help="Folder with department.toml.")
    ] = None,
) -> None:
    """Take back what was noted last of a class; what that had replaced counts again.

    What one ‘itembank record’ recorded goes together: results, own views and clarity. A second
    undo names what it would take back, and asks. It takes back what ‘cover’, ‘cancel’ and
    ‘move’ noted, too.

    Nothing is deleted: for that there is ‘itembank forget’.

    \b
    Examples:
      itembank undo 8K
      itembank undo 8K --date 2026-11-30
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.cli.lesson_text import read_day, store_of, the_department
    from itembank.cli.words.wrapped import say
    from itembank.records.entries.recording import last_recorded
    from itembank.records.entries.recording import undo as take_back
    from itembank.records.store.store import open_store

    day = read_day(date)
    found = the_department(department)
    name = found.find_class(class_).name
    with open_store(store_of(found.folder), make=False) as store:
        last = last_recorded(store, name, day)
        if last.asked_about and not yes:
            _confirm(name, last)
        _, when, again = take_back(store, name, day, last)
    if last.moves:
        say(f"Taken back: {last.words}, from {day_month_year(when)} on.")
        return
    say(f"Taken back: {last.words} of {name} on {day_month_year(when)}.")
    if again:
        say("What that had replaced counts again.")


def _confirm(name: str, last: Last) -> None:
    """Say what would be taken back, and ask."""
    from itembank.cli.words.ask import can_ask
    from itembank.cli.words.ask import yes as answered_yes
    from itembank.errors import ItembankError

    period = f", period {last.period}" if last.period else ""
    day = day_month_year(last.date)
    where = f", from {day}" if last.moves else f" of {name} on {day}{period}"
    said = (
        f"The last was taken back already. The next would be {last.words}{where}, recorded on "
        f"{moment(last.made_at)}."
    )
    if not can_ask():
        raise ItembankError(f"{said} Nothing was taken back. Add --yes to take that back too.")
    if not answered_yes(f"{said} Take that back too?", default=False):
        raise ItembankError("Nothing was taken back.")
