"""``itembank undo``: takes back what was recorded last."""

from __future__ import annotations

import datetime
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.options.usual_options import ClassArgument, DepartmentOption
from itembank.text.in_words import day_month_year

if TYPE_CHECKING:
    from itembank.planning.department.department import Department
    from itembank.work.lesson.undo import TakenBack


def undo(
    class_: ClassArgument = None,
    date: Annotated[
        str | None, typer.Option(metavar="DAY", help="Only what was recorded for this day.")
    ] = None,
    yes: Annotated[
        bool, typer.Option("--yes", help="Take back what is older, too, without being asked.")
    ] = False,
    department: DepartmentOption = None,
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
    from itembank.cli.options.day import read_day
    from itembank.cli.options.department import department_with_results
    from itembank.cli.words.wrapped import say

    day = read_day(date)
    taken = _take_back(department_with_results(department), class_, day, yes)
    last, when = taken.last, taken.last.date
    if last.moves:
        say(f"Taken back: {last.words}, from {day_month_year(when)} on.")
        return
    say(f"Taken back: {last.words} of {taken.class_name} on {day_month_year(when)}.")
    if taken.counts_again:
        say("What that had replaced counts again.")


def _take_back(
    department: Department, name: str | None, day: datetime.date | None, sure: bool
) -> TakenBack:
    """Take back, and ask first where something newer was taken back before."""
    from itembank.cli.words.ask import can_ask, yes
    from itembank.errors import ItembankError
    from itembank.work.lesson.undo import undo as take_back

    try:
        return take_back(department, name, day, sure=sure)
    except ItembankError as error:
        if error.matter != "older than what was taken back" or not can_ask():
            raise
        if not yes(f"{error.about['why']} Take that back too?", default=False):
            raise ItembankError("Nothing was taken back.") from None
        last = error.about["last"]
    return take_back(department, name, day, expected=last)
