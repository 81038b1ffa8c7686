"""``itembank cover``: what a class was asked instead of its own starter."""

from __future__ import annotations

from dataclasses import replace as replace_fields
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.options.usual_options import (
    ClassArgument,
    DepartmentOption,
    PacksOption,
    PeriodOption,
)
from itembank.errors import ItembankError
from itembank.today import today

if TYPE_CHECKING:
    from itembank.planning.department.department import Department
    from itembank.work.lesson.cover import Covered, CoverRequest


def cover(
    class_: ClassArgument = None,
    date: Annotated[str | None, typer.Option(metavar="DAY", help="Day of the lesson.")] = None,
    topic: Annotated[
        list[str] | None,
        typer.Option(
            "--topic",
            "-t",
            metavar="TOPIC",
            help='A topic of the questions, with their number: "ratio.share 4"; give again.',
        ),
    ] = None,
    pack: Annotated[
        Path | None, typer.Option(metavar="DIR", help="The pack that the class had instead.")
    ] = None,
    same_as: Annotated[
        str | None,
        typer.Option(metavar="CLASS", help="The class whose starter of that day it had."),
    ] = None,
    period: PeriodOption = None,
    output: PacksOption = None,
    department: DepartmentOption = None,
    replace: Annotated[
        bool, typer.Option("--replace", help="Put this in place of what was noted already.")
    ] = False,
    yes: Annotated[
        bool, typer.Option("--yes", help="Note a day without a lesson, without being asked.")
    ] = False,
) -> None:
    """Note what was asked in a lesson instead of the starter that was planned.

    It counts as asked, and what was planned does not. Results, if there are any, are recorded
    after it by ‘itembank record’.

    \b
    Examples:
      itembank cover 8K --date 2026-11-24 -t "ratio.share 4" -t "fractions.order 4"
      itembank cover 8K --date 2026-11-24 --same-as 8L
      itembank cover 8K --date 2026-11-24 --pack output/8K-2026-11-10
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.cli.options.day import read_day
    from itembank.cli.options.department import department_with_results, packs_home
    from itembank.cli.words.wrapped import say
    from itembank.files.faults import join_words
    from itembank.work.lesson.cover import CoverRequest

    day = read_day(date)
    if day is None and (topic or pack or same_as):
        raise ItembankError("Say which day, as in: itembank cover 8K --date 2026-11-24 …")
    request = CoverRequest(
        day or today(),
        class_,
        tuple(topic or ()),
        pack,
        same_as,
        period,
        packs_home(output, department),
        replace,
        any_day=yes,
    )
    covered = _covered(department_with_results(department), request)
    lesson = covered.lesson
    asked = join_words([f"{count} on {name}" for name, count in covered.counts.items()])
    say(f"Noted: {lesson} was asked {covered.source}: {asked}.")
    command = f"itembank record {lesson.class_name} --date {day}"
    say(f"What was planned was not asked. Results, if there are any: ‘{command}’.")


def _covered(department: Department, request: CoverRequest) -> Covered:
    from itembank.cli.words.ask import can_ask, yes
    from itembank.work.lesson.cover import cover as note_cover

    try:
        return note_cover(department, request)
    except ItembankError as error:
        if error.matter != "no lesson that day" or not can_ask():
            raise
        if not yes(f"{error.about['why']} Record it all the same?", default=False):
            said = "Nothing was recorded. Name the day of the lesson with --date."
            raise ItembankError(said) from None
    return note_cover(department, replace_fields(request, any_day=True))
