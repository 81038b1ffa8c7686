"""``itembank week``: plans a class's week and makes all its packs."""

from __future__ import annotations

import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.errors import ItembankError

if TYPE_CHECKING:
    from itembank.cli.week_plan import Planner
    from itembank.planning.week_edit import Edits
    from itembank.planning.week_plan import PlannedLesson, WeekPlan

Changes = list[str] | None


def week(
    class_: Annotated[str | None, typer.Argument(metavar="CLASS", help="The class.")] = None,
    from_: Annotated[
        str | None,
        typer.Option("--from", metavar="DAY", help="First day; from it to the week's end."),
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
    order: Annotated[
        Changes, typer.Option(metavar="TEXT", help="‘tue 2 1 3 4 …’, or ‘tue’ and its topics.")
    ] = None,
    questions: Annotated[
        Changes, typer.Option(metavar="TEXT", help="‘10’ for the week, ‘tue 10’ for a lesson.")
    ] = None,
    output: Annotated[
        Path | None, typer.Option(metavar="DIR", help="Where packs go; ‘output’ if there is.")
    ] = None,
    department: Annotated[
        Path | None, typer.Option(metavar="DIR", help="Folder with department.toml.")
    ] = None,
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
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.planning.week_edit import Edits

    edits = Edits(*(tuple(one or ()) for one in (pin, ban, swap, instead, order, questions)))
    if plan is None and class_ is None:
        raise ItembankError(
            "Name a class, as in: itembank week 8K --from 2026-11-30. Or a plan: --plan FILE."
        )
    if plan is not None and from_ is not None:
        raise ItembankError("--plan says which week it is. Leave out --from.")
    _run(class_, from_, plan, only, edits, output, department, replace)


def _run(
    class_name: str | None,
    from_: str | None,
    plan_path: Path | None,
    only: str | None,
    edits: Edits,
    output: Path | None,
    department: Path | None,
    replace: bool,
) -> None:
    from itembank.cli.pack import output_home
    from itembank.cli.text import say
    from itembank.planning.calendar import monday
    from itembank.planning.days import parse_day
    from itembank.planning.week_plan import FOLDER, WeekPlan

    place = department
    if place is None and plan_path is not None and plan_path.parent.name == FOLDER:
        place = plan_path.absolute().parent.parent
    planner = _planner(place, class_name, plan_path)
    home = output if output is not None else output_home(Path.cwd())
    skipped: list[str] = []
    before: WeekPlan | None = None
    if plan_path is None:
        first = parse_day(from_ or "today", datetime.date.today())
        path = (
            planner.home / FOLDER / WeekPlan(planner.school_class.name, monday(first), ()).file_name
        )
        if path.exists() and not replace:
            raise ItembankError(
                f"There is a plan of this week in {path} already. Build from it with --plan, or "
                "plan anew with --replace: what you pinned or banned stays."
            )
        old = _read(planner, path) if path.exists() else None
        made, skipped = planner.new_plan(first, old)
    else:
        path = plan_path
        made = _read(planner, path)
        before = made
    if edits:
        from itembank.planning.week_edit import Editor

        known = planner.known(made.week, made.lessons[0].seed)
        made = Editor(made, known, planner.known_topics, planner.topic_of).apply(edits)
    made = planner.with_questions(made)
    _build(planner, made, before if edits else None, only, home, path, skipped, replace)
    for lesson in made.lessons:
        say(f"{lesson}: {lesson.title}")
        for one in lesson.topics:
            say(f"  {one.count} on {planner.title(one.topic)}: {one.why}")
    for line in skipped:
        say(f"No lesson on {line}")
    for remark in planner.folder.remarks:
        say(f"Note: {remark}")
    say(f"The plan is in {path}; change it there and build again with --plan.")


def _planner(place: Path | None, class_name: str | None, plan_path: Path | None) -> Planner:
    from itembank.cli.week_plan import Planner
    from itembank.items.registry import topics
    from itembank.planning.department import find_department
    from itembank.planning.folder import read_folder

    made = list(topics())
    titles = {one.id: one.title for one in made}
    folder = read_folder(
        find_department(place), tuple(titles), {one.id: one.prerequisites for one in made}
    )
    if class_name is None and plan_path is not None:
        from itembank.toml_file import TomlFile

        class_name = str(TomlFile(plan_path).data.get("class", "")) or None
    return Planner(folder, folder.department.find_class(class_name), titles)


def _read(planner: Planner, path: Path) -> WeekPlan:
    from itembank.planning.week_file import read_week_plan

    return read_week_plan(
        path,
        planner.folder.department,
        planner.folder.calendar,
        planner.known_topics,
        planner.topic_of,
        planner.school_class.name,
    )


def _build(
    planner: Planner,
    plan: WeekPlan,
    before: WeekPlan | None,
    only: str | None,
    home: Path,
    path: Path,
    skipped: list[str],
    replace: bool,
) -> None:
    """Make the packs that are wanted, then write packs, overview and plan."""
    from itembank.cli.text import say
    from itembank.cli.week_build import build_all, write_all, write_whole
    from itembank.planning.week_edit import find_day
    from itembank.planning.week_plan import FOLDER, plan_text

    lessons = list(plan.lessons)
    if only is not None:
        number = find_day(plan, only)
        if number is None:
            raise ItembankError(f"--only {only}: write a day such as tue or {lessons[0].date}.")
        lessons = [lessons[number]]
    elif before is not None:
        unchanged = set(before.lessons)
        lessons = [
            one for one in lessons if one not in unchanged or not _folder(home, plan, one).exists()
        ]
    folders = [_folder(home, plan, one) for one in lessons]
    if not replace and (there := [one for one in folders if one.exists()]):
        names = ", ".join(str(one) for one in there)
        raise ItembankError(
            f"There are packs already: {names}. Add --replace to put new ones there."
        )
    packs = build_all([planner.request(one) for one in lessons])
    write_all(dict(zip(folders, packs, strict=True)), replace)
    overview = home / path.with_suffix(".pdf").name
    write_whole(overview, _overview(planner, plan, skipped))
    write_whole(path, plan_text(plan, Path(FOLDER) / path.name, skipped).encode())
    for folder in folders:
        say(f"Written to {folder}.")
    say(f"The week on one page: {overview}.")


def _folder(home: Path, plan: WeekPlan, lesson: PlannedLesson) -> Path:
    """Return a pack's folder; a second lesson on one day has its period in the name."""
    same_day = [one for one in plan.lessons if one.date == lesson.date]
    period = f"-{lesson.period}" if len(same_day) > 1 else ""
    return home / f"{plan.class_name}-{lesson.date.isoformat()}{period}"


def _overview(planner: Planner, plan: WeekPlan, skipped: list[str]) -> bytes:
    from itembank.pages.week_overview import LessonPart, WeekData, week_overview

    one = planner.school_class
    bands = one.bands.bands(one.questions)
    named = "; ".join(
        f"{band.name} ({band.letter}) {band.lowest} to {band.highest}" for band in bands
    )
    monday = f"{plan.week.day} {plan.week:%B %Y}"
    return week_overview(
        WeekData(
            title=f"{plan.class_name}: the week of {monday}",
            class_name=plan.class_name,
            intro=f"{planner.folder.department.school}. {len(plan.lessons)} starters, topic by "
            "topic, and why each topic comes back now.",
            lessons=[
                LessonPart(
                    str(lesson),
                    lesson.title,
                    [(planner.title(t.topic), t.count, t.why) for t in lesson.topics],
                )
                for lesson in plan.lessons
            ],
            skipped=[f"No lesson on {line}." for line in skipped],
            bands=f"Bands out of {one.questions}: {named}.",
        )
    )
