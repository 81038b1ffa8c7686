"""``itembank undo``: takes back what was recorded last."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer


def undo(
    class_: Annotated[
        str | None, typer.Argument(metavar="CLASS", help="The class; the department's usual one.")
    ] = None,
    date: Annotated[
        str | None, typer.Option(metavar="DAY", help="Only what was recorded for this day.")
    ] = None,
    department: Annotated[
        Path | None, typer.Option(metavar="DIR", help="Folder with department.toml.")
    ] = None,
) -> None:
    """Take back what was recorded last of a class; what that had replaced counts again.

    What one ‘itembank record’ recorded goes together: results, own views and clarity.

    Nothing is deleted: for that there is ‘itembank forget’.

    \b
    Examples:
      itembank undo 8K
      itembank undo 8K --date 2026-11-30
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.cli.lesson_text import read_day, store_of, the_department
    from itembank.cli.text import say
    from itembank.faults import join_words
    from itembank.records.entries import NAMES
    from itembank.records.recording import undo as take_back
    from itembank.records.store import open_store

    day = read_day(date)
    found = the_department(department)
    name = found.find_class(class_).name
    with open_store(store_of(found.folder), make=False) as store:
        kinds, when, again = take_back(store, name, day)
    what = join_words([NAMES[kind] for kind in kinds])
    say(f"Taken back: {what} of {name} on {when.day} {when:%B %Y}.")
    if again:
        say("What that had replaced counts again.")
