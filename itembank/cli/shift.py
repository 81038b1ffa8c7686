"""``itembank shift``: one lesson on another day or in another period."""

from __future__ import annotations

from typing import Annotated

import typer

from itembank.cli.options.usual_options import ClassArgument, DepartmentOption


def shift(
    class_: ClassArgument = None,
    date: Annotated[
        str | None, typer.Option(metavar="DAY", help="The day on which the lesson is now.")
    ] = None,
    to: Annotated[
        str | None, typer.Option(metavar="DAY", help="The day on which it will be; the same.")
    ] = None,
    period: Annotated[
        str | None, typer.Option(metavar="N", help="Which lesson, where the day has two.")
    ] = None,
    to_period: Annotated[
        str | None, typer.Option(metavar="N", help="The period in which it will be; the same.")
    ] = None,
    department: DepartmentOption = None,
) -> None:
    """Move one lesson of a class to another day or period.

    It is noted in department.toml, and planning, packs and records know it. The same command
    with the days the other way round moves it back.

    \b
    Examples:
      itembank shift 8K --date 2026-12-03 --to 2026-12-02 --to-period 4
      itembank shift 8K --date thu --to-period 5
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.cli.options.department import department_with_results
    from itembank.cli.words.wrapped import say
    from itembank.errors import ItembankError
    from itembank.planning.calendar.calendar import monday
    from itembank.planning.calendar.days import parse_day
    from itembank.planning.department.class_lessons import place_words
    from itembank.today import today
    from itembank.work.lesson.shift import shift as move_lesson

    if date is None or (to is None and to_period is None):
        raise ItembankError(
            "Say which lesson, and where it goes, as in: itembank shift 8K --date 2026-12-03 "
            "--to 2026-12-02 --to-period 4."
        )
    day = parse_day(date, today())
    target = day if to is None else parse_day(to, today())
    there = department_with_results(department)
    done = move_lesson(there, day, target, class_, period, to_period)
    say(
        f"Noted: the lesson of {done.class_name} on {place_words(done.source)} is "
        f"{'back ' if done.back else ''}on {place_words(done.target)}."
    )
    weeks = sorted({monday(done.source[0]), monday(done.target[0])})
    for week in weeks:
        first = max(week, today())
        say(
            "If the week is planned already: "
            f"‘itembank week {done.class_name} --from {first} --replace’ takes it "
            "along. A pack that was made for the old day stays in its folder."
        )
