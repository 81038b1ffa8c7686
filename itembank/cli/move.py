"""``itembank move``: a pupil who changes class or seat, or a whole change of sets."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from itembank.cli.options.usual_options import DepartmentOption
from itembank.errors import ItembankError
from itembank.text.in_words import day_month_year


def move(
    from_: Annotated[
        str | None, typer.Argument(metavar="FROM", help="The seat now, as 8K/A3.")
    ] = None,
    to: Annotated[
        str | None, typer.Argument(metavar="TO", help="The seat to come, as 8L/C2; or ‘away’.")
    ] = None,
    sets: Annotated[
        Path | None,
        typer.Option("--list", metavar="FILE", help="A CSV with a line for each pupil: from, to."),
    ] = None,
    date: Annotated[
        str | None, typer.Option(metavar="DAY", help="First day in the new seat; today.")
    ] = None,
    department: DepartmentOption = None,
) -> None:
    """Move a pupil to another class or seat, or many pupils at once, with their history.

    What was recorded by seat counts for the new class from then on, in its plans and reports,
    and ‘forget’ of the new seat finds all of it. What was counted by hands stays. All moves of
    one list are made at the same moment, so that pupils can change places.
    ‘itembank undo CLASS’ takes the last list back.

    \b
    Examples:
      itembank move 8K/A3 8L/C2
      itembank move 8K/A3 away --date 2026-12-01
      itembank move --list sets.csv --date 2026-11-30
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.cli.options.department import department_with_results
    from itembank.cli.words.wrapped import say
    from itembank.planning.calendar.days import parse_day
    from itembank.today import today
    from itembank.work.lesson.move import move as move_pupils

    if (sets is None) == (from_ is None) or (from_ is not None and to is None):
        raise ItembankError(
            "Say who moves where, as in: itembank move 8K/A3 8L/C2. Or name a list: --list FILE."
        )
    day = parse_day(date, today()) if date is not None else today()
    pairs = [(from_, to)] if from_ is not None and to is not None else []
    moved = move_pupils(department_with_results(department), pairs, sets, day)
    when = f"from {day_month_year(day)} on"
    count = len(moved.moves)
    if count == 1:
        say(f"Moved: {moved.moves[0]}, {when}.")
    else:
        say(f"Moved: {count} pupils, {when}.")
    if moved.recorded < count:
        say(f"Nothing is recorded by seat yet of {count - moved.recorded} of them.")
    for name in moved.classes:
        say(f"What was recorded of them counts for {name} now: ‘itembank report {name}’.")
