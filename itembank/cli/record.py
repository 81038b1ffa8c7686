"""``itembank record``: how a starter went, at the depth there is time for."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from itembank.cli.options.usual_options import (
    ClassArgument,
    DepartmentOption,
    PacksOption,
    PeriodOption,
)


def record(
    class_: ClassArgument = None,
    bands: Annotated[
        str | None,
        typer.Option(metavar='"8 12 9"', help="Hands counted in each band, from the lowest."),
    ] = None,
    right: Annotated[
        str | None,
        typer.Option(
            metavar='"25 22 …"',
            help="How many had each question right, in order; fewer where it stopped early.",
        ),
    ] = None,
    pupils: Annotated[
        int | None, typer.Option(metavar="N", help="Pupils there, with --right; the class's seats.")
    ] = None,
    sheet: Annotated[
        Path | None,
        typer.Option(
            metavar="FILE",
            help="A CSV: seat and score, or seat and a column a question with 1 and 0 or answers "
            "as typed; with a column ‘version’ where neighbours had other questions.",
        ),
    ] = None,
    slips: Annotated[
        str | None,
        typer.Option(
            metavar="CODES",
            help="Codes of result slips from the self-marking page, with commas between, or a file "
            "with one a line.",
        ),
    ] = None,
    own_view: Annotated[
        str | None,
        typer.Option(
            metavar="VIEWS",
            help='How sure pupils were before marking: "A1 sure, A2 not sure", a CSV of seat and '
            'view, or counts as in "12 sure 9 partly 6 not".',
        ),
    ] = None,
    unclear: Annotated[
        int | None,
        typer.Option(metavar="N", help="Pupils who asked what to do before they could start."),
    ] = None,
    note: Annotated[
        str | None, typer.Option(metavar="TEXT", help="What was unclear; goes with --unclear.")
    ] = None,
    correct: Annotated[
        list[str] | None,
        typer.Option(
            metavar="CHANGE", help='Put one seat right: "A3 6", or "B2 q4 right"; give again.'
        ),
    ] = None,
    date: Annotated[
        str | None,
        typer.Option(metavar="DAY", help="Day of the lesson; that of the newest pack up to today."),
    ] = None,
    period: PeriodOption = None,
    pack: Annotated[
        Path | None, typer.Option(metavar="DIR", help="The pack the class had.")
    ] = None,
    asked: Annotated[
        str | None,
        typer.Option(
            metavar="N",
            help='Questions asked, where the starter stopped early: "5", or which: "1-4 6".',
        ),
    ] = None,
    same_as: Annotated[
        str | None,
        typer.Option(metavar="CLASS", help="The parallel class whose starter it had as well."),
    ] = None,
    out_of: Annotated[
        int | None, typer.Option(metavar="N", help="Marks of a starter that has no pack.")
    ] = None,
    output: PacksOption = None,
    department: DepartmentOption = None,
    replace: Annotated[
        bool, typer.Option("--replace", help="Put this in place of what was recorded already.")
    ] = False,
    add: Annotated[
        bool,
        typer.Option(
            "--add",
            help="Join this to what was recorded already: the other half of a class, or somebody "
            "who was away.",
        ),
    ] = False,
    yes: Annotated[
        bool,
        typer.Option("--yes", help="Record a day without a lesson, without being asked."),
    ] = False,
) -> None:
    """Record how a starter went: bands, questions or a sheet, whichever there is time for.

    With none of them it asks three short questions. Pupils appear under seat codes only;
    a sheet with names or dates of birth is refused.

    \b
    Examples:
      itembank record 8K --bands "8 12 9"
      itembank record 8K --right "25 22 19 27 14 21 9 12" --pupils 28
      itembank record 8K --bands "6 10 13" --asked 5
      itembank record 8K --sheet scores.csv --own-view "12 sure 9 partly 6 not"
      itembank record 8K --date 2026-11-30 --unclear 4 --note "what ‘share’ means"
      itembank record 8K --sheet second-half.csv --add
      itembank record 8L --same-as 8K --bands "7 11 9"
      itembank record 8K --slips "A3 6/8 rrnrrrrn 4KQ72MXN" --add
      itembank record 8K --correct "A3 6" --correct "B2 5"
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.cli.options.day import read_day
    from itembank.cli.options.department import department_with_results, packs_home
    from itembank.cli.record_told import record_and_tell
    from itembank.work.lesson.record_request import RecordRequest

    request = RecordRequest(
        class_name=class_,
        bands=bands,
        right=right,
        pupils=pupils,
        sheet=sheet,
        slips=slips,
        own_view=own_view,
        unclear=unclear,
        note=note,
        correct=tuple(correct or ()),
        date=read_day(date),
        period=period,
        pack=pack,
        asked=asked,
        same_as=same_as,
        out_of=out_of,
        packs=packs_home(output, department),
        replace=replace,
        add=add,
        any_day=yes,
    )
    record_and_tell(department_with_results(department), request)
