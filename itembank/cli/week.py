"""``itembank week``: plans a class's week and makes all its packs."""

from __future__ import annotations

import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.options.usual_options import DepartmentOption
from itembank.errors import ItembankError
from itembank.today import today

if TYPE_CHECKING:
    from itembank.planning.week.week_changes import LessonName
    from itembank.work.week.request import WeekMade

Changes = list[str] | None


def week(
    classes: Annotated[
        list[str] | None, typer.Argument(metavar="CLASS", help="The class, or several.")
    ] = None,
    year: Annotated[
        int | None, typer.Option(metavar="N", help="All classes of a year group.")
    ] = None,
    same_starters: Annotated[
        bool,
        typer.Option("--same-starters", help="Parallel classes have the first one's starters."),
    ] = False,
    from_: Annotated[
        str | None,
        typer.Option(
            "--from", metavar="DAY", help="First day, to the week's end; the next lesson’s."
        ),
    ] = None,
    plan: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Build from a plan file instead.")
    ] = None,
    only: Annotated[
        str | None, typer.Option(metavar="DAY", help="Build the pack of this lesson alone.")
    ] = None,
    pin: Annotated[
        Changes, typer.Option(metavar="TEXT", help="‘tue TOPIC’, ‘tue TOPIC 3’, ‘tue ADDRESS’.")
    ] = None,
    ban: Annotated[
        Changes, typer.Option(metavar="TEXT", help="‘tue TOPIC’, ‘TOPIC’, ‘tue ADDRESS’ …")
    ] = None,
    swap: Annotated[Changes, typer.Option(metavar="TEXT", help="‘tue TOPIC thu TOPIC’.")] = None,
    instead: Annotated[Changes, typer.Option(metavar="TEXT", help="‘tue TOPIC NEW-TOPIC’.")] = None,
    another: Annotated[
        Changes, typer.Option(metavar="TEXT", help="‘tue 5’, ‘tue ADDRESS’, ‘tue ADDRESS NEW’.")
    ] = None,
    order: Annotated[
        Changes, typer.Option(metavar="TEXT", help="‘tue 2 1 3 4 …’, or ‘tue’ and its topics.")
    ] = None,
    questions: Annotated[
        Changes, typer.Option(metavar="TEXT", help="‘10’ for the week, ‘tue 10’ for a lesson.")
    ] = None,
    undo: Annotated[
        bool, typer.Option("--undo", help="Take back the last change of the week's plan.")
    ] = False,
    output: Annotated[
        Path | None, typer.Option(metavar="DIR", help="Where packs go; ‘output’ if there is.")
    ] = None,
    department: DepartmentOption = None,
    replace: Annotated[
        bool, typer.Option("--replace", help="Put plan and packs in place of older ones.")
    ] = False,
) -> None:
    """Plan every lesson of a class in a week, and make all packs.

    Topics are chosen from the scheme of work and from what was recorded, each with its reason.
    The plan is a file in the department's folder, under plans: change it in any editor, or by
    the options below, and build again from it. What you pinned or banned stays.

    \b
    Examples:
      itembank week 8K --from 2026-11-30
      itembank week --plan plans/week-8K-2026-11-30.toml --replace
      itembank week 8K --from 2026-11-30 --pin "tue ratio.share" --replace
      itembank week --plan plans/week-8K-2026-11-30.toml --only tue --replace
      itembank week --year 8 --from 2026-11-30 --same-starters
    """  # noqa: D301 - typer keeps the lines after \b as they are
    names = classes or []
    if plan is not None and (len(names) > 1 or year is not None):
        raise ItembankError("--plan is of one class. Leave out the other classes and --year.")
    if plan is None and not names and year is None:
        raise ItembankError(
            "Name a class, as in: itembank week 8K --from 2026-11-30. Or a plan: --plan FILE."
        )
    if plan is not None and from_ is not None:
        raise ItembankError("--plan says which week it is. Leave out --from.")
    from itembank.cli.week_changes import read_changes
    from itembank.cli.week_told import Steps, Waiting, tell_week
    from itembank.cli.words.tell import tell_copies
    from itembank.planning.calendar.days import parse_day
    from itembank.work.week.request import WeekRequest
    from itembank.work.week.week_run import make_week

    now = today()
    typed = {
        "questions": questions,
        "ban": ban,
        "swap": swap,
        "instead": instead,
        "pin": pin,
        "another": another,
        "order": order,
    }
    request = WeekRequest(
        class_name=names[0] if names else None,
        first=parse_day(from_, now) if from_ is not None else None,
        plan=plan,
        only=_only(only, now) if only is not None else None,
        changes=read_changes({option: texts or () for option, texts in typed.items()}, now),
        undo=undo,
        output=output,
        department=department,
        replace=replace,
        how_to_build="itembank week --plan {path} --replace",
    )
    steps = Steps()
    if len(names) < 2 and year is None:
        try:
            made = make_week(request, waiting=Waiting(), progress=steps)
        finally:
            steps.clear()
        tell_copies(made.department)
        tell_week(made)
        return
    from itembank.cli.words.wrapped import say
    from itembank.work.week.several_weeks import classes_meant, make_weeks

    def tell(made: WeekMade) -> None:
        steps.clear()
        say(f"{made.plan.class_name}:")
        tell_week(made)
        say("")

    meant = classes_meant(department, names, year)
    try:
        weeks = make_weeks(
            request,
            meant,
            same_starters=same_starters,
            waiting=Waiting(),
            progress=steps,
            told=tell,
        )
    finally:
        steps.clear()
    tell_copies(weeks.made[0].department)


def _only(typed: str, now: datetime.date) -> LessonName:
    """Return the one lesson that is meant.

    Raises:
        ItembankError: it is no day.
    """
    from itembank.cli.week_changes import read_lesson_name

    lesson = read_lesson_name(typed, now)
    if lesson is None:
        raise ItembankError(f"--only {typed}: write a day such as tue or 2026-12-01.")
    return lesson
