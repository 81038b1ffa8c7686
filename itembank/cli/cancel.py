"""``itembank cancel``: a lesson that fell out, or will."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from itembank.text.in_words import long_day

LONGEST_WHY = 60


def cancel(
    class_: Annotated[
        str | None, typer.Argument(metavar="CLASS", help="The class; the department's usual one.")
    ] = None,
    date: Annotated[
        str | None, typer.Option(metavar="DAY", help="Day of the lesson, gone by or to come.")
    ] = None,
    why: Annotated[
        str | None, typer.Option(metavar="TEXT", help="Why, as ‘school trip’; no names.")
    ] = None,
    period: Annotated[
        str | None, typer.Option(metavar="N", help="Which lesson; all of that day's.")
    ] = None,
    department: Annotated[
        Path | None, typer.Option(metavar="DIR", help="Folder with department.toml.")
    ] = None,
) -> None:
    """Note that one class had no lesson, or will have none; ‘itembank undo’ takes it back.

    Its topics were not asked: they come back, and what it was to teach is taught in the next
    lesson. Days off for the whole school stand in calendar.toml.

    \b
    Examples:
      itembank cancel 8K --date 2026-12-03 --why "school trip"
      itembank cancel 8K --date yesterday --why "fire drill"
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.cli.lesson_day import no_lesson, periods_of
    from itembank.cli.lesson_text import store_of, the_department
    from itembank.cli.words.wrapped import say
    from itembank.errors import ItembankError
    from itembank.people.names_out import refuse_names
    from itembank.planning.calendar.days import parse_day
    from itembank.records.entries.entries import Cancelled, LessonFacts
    from itembank.records.entries.recording import record_each
    from itembank.records.store.store import open_store
    from itembank.today import today

    if date is None:
        raise ItembankError("Say which day, as in: itembank cancel 8K --date 2026-12-03.")
    day = parse_day(date, today())
    words = " ".join((why or "").split())
    if len(words) > LONGEST_WHY:
        raise ItembankError(f"--why: write {LONGEST_WHY} characters at most.")
    found = the_department(department)
    one = found.find_class(class_)
    if said := no_lesson(found, one, day, period or ""):
        raise ItembankError(f"{said} There is nothing to cancel.")
    there = periods_of(found, one, day)
    periods = [period] if period is not None and len(there) > 1 else list(there)
    if len(periods) == 1 and len(there) == 1:
        periods = [""]  # the only lesson of a day goes without its period
    refuse_names(words, "--why")
    with open_store(store_of(found.folder)) as store:
        record_each(
            store,
            [
                (LessonFacts(one.name, day, 1, one.title, which), Cancelled(words))
                for which in periods or [period or ""]
            ],
        )
    which = f", period {periods[0]}" if periods and periods[0] and len(periods) == 1 else ""
    say(f"Noted: {one.name} has no lesson on {long_day(day)} {day.year}{which}.")
    say(
        f"Its topics were not asked and come back: ‘itembank week {one.name} --from DAY --replace’ "
        "plans the lessons to come anew."
    )
