"""``itembank unite``: brings two results files that went their own ways together."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from itembank.cli.options.usual_options import DepartmentOption
from itembank.text.in_words import counted, day_month_year, moment


def unite(
    file: Annotated[Path, typer.Argument(metavar="FILE", help="The other results file.")],
    department: DepartmentOption = None,
) -> None:
    """Bring all that another results file holds into the department's.

    In a shared folder two people may record at once, and one of the files gets another name.
    Nothing is lost and nothing counts twice, however often this is done; what either file took
    back, replaced or forgot stays so. FILE itself is not changed.

    \b
    Example:
      itembank unite "results (copy).sqlite3"
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.cli.options.department import the_department
    from itembank.cli.words.wrapped import say
    from itembank.records.entries.entries import NAMES
    from itembank.work.lesson.unite import unite as bring_in

    brought = bring_in(the_department(department), file)
    done, store_name = brought.united, brought.store_name
    if done.entries or done.moves:
        parts = [
            counted(number, what)
            for number, what in (
                (done.entries, "record"),
                (done.lessons, "new lesson"),
                (done.moves, "move"),
            )
            if number
        ]
        say(f"Brought into {store_name}: {', '.join(parts)}.")
    else:
        say(f"{store_name} holds all that {file} holds already.")
    if done.entries_forgotten_there:
        say(
            f"Forgotten in {file}, and now here: {counted(done.entries_forgotten_there, 'record')}."
        )
    for name, seat in sorted(done.kept_out):
        say(f"Seat {seat.upper()} of {name.upper()} was forgotten here and stays so.")
    for name, seat in sorted(done.forgotten_there):
        say(
            f"Seat {seat.upper()} of {name.upper()} was forgotten in {file}, but not here: "
            f"‘itembank forget --seat {name.upper()}/{seat.upper()}’ forgets it here too."
        )
    for both in done.differing:
        told = [
            f"{NAMES[kind]} of {moment(made)}"
            for kind, made in zip(both.kinds, both.made_at, strict=True)
        ]
        say(
            f"{both.class_name} on {day_month_year(both.date)} was recorded differently in "
            f"the two: {' and '.join(told)}. Both are kept and the last of them counts. If it "
            f"should not: ‘itembank undo {both.class_name} --date {both.date}’, and the one before "
            "counts."
        )
    say(f"{file} is as it was. When you have seen that all is well, delete it.")
