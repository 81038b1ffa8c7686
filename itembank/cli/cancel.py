"""``itembank cancel``: a lesson that fell out, or will."""

from __future__ import annotations

from typing import Annotated

import typer

from itembank.cli.options.usual_options import ClassArgument, DepartmentOption


def cancel(
    class_: ClassArgument = None,
    date: Annotated[
        str | None, typer.Option(metavar="DAY", help="Day of the lesson, gone by or to come.")
    ] = None,
    why: Annotated[
        str | None, typer.Option(metavar="TEXT", help="Why, as ‘school trip’; no names.")
    ] = None,
    period: Annotated[
        str | None, typer.Option(metavar="N", help="Which lesson; all of that day's.")
    ] = None,
    department: DepartmentOption = None,
) -> None:
    """Note that one class had no lesson, or will have none; ‘itembank undo’ takes it back.

    Its topics were not asked: they come back, and what it was to teach is taught in the next
    lesson. Days off for the whole school stand in calendar.toml.

    \b
    Examples:
      itembank cancel 8K --date 2026-12-03 --why "school trip"
      itembank cancel 8K --date yesterday --why "fire drill"
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.cli.options.department import department_with_results
    from itembank.cli.words.wrapped import say
    from itembank.errors import ItembankError
    from itembank.planning.calendar.days import parse_day
    from itembank.text.in_words import long_date
    from itembank.today import today
    from itembank.work.lesson.cancel import cancel as note_cancelled

    if date is None:
        raise ItembankError("Say which day, as in: itembank cancel 8K --date 2026-12-03.")
    day = parse_day(date, today())
    noted = note_cancelled(department_with_results(department), day, class_, why, period)
    name = noted.class_name
    which = f", period {noted.period}" if noted.period else ""
    say(f"Noted: {name} has no lesson on {long_date(day)}{which}.")
    say(
        f"Its topics were not asked and come back: ‘itembank week {name} --from DAY --replace’ "
        "plans the lessons to come anew."
    )
