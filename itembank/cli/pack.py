"""``itembank pack``: everything for one lesson, in one folder."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.find import banks_of, complete_topic, nearby_department
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError
from itembank.files.faults import join_words
from itembank.planning.department.department import PAPERS
from itembank.today import today

if TYPE_CHECKING:
    from itembank.packs.build import Started


def pack(
    class_: Annotated[
        str | None,
        typer.Option("--class", metavar="NAME", help="Class; the department's usual one."),
    ] = None,
    date: Annotated[
        str | None, typer.Option(metavar="DAY", help="Day of the lesson, as 2026-11-30; today.")
    ] = None,
    title: Annotated[
        str | None,
        typer.Option(metavar="TEXT", help="Title of the lesson; the class's or topic's."),
    ] = None,
    topic: Annotated[
        list[str] | None,
        typer.Option(
            "--topic",
            "-t",
            metavar="TOPIC",
            help="A topic to ask about; give it again for more. The class's.",
            autocompletion=complete_topic,
        ),
    ] = None,
    plan: Annotated[
        Path | None, typer.Option(metavar="FILE", help="A plan file that says all of this.")
    ] = None,
    questions: Annotated[
        int | None, typer.Option(help="Starter questions, 1 to 20; 8.", metavar="N")
    ] = None,
    seed: Annotated[
        int | None,
        typer.Option(
            help="Another number gives other questions; found from class, date and title.",
            metavar="N",
        ),
    ] = None,
    follow_up: Annotated[
        int | None, typer.Option(help="Questions on each follow-up sheet; 10.", metavar="N")
    ] = None,
    variants: Annotated[
        int | None,
        typer.Option(help="Parallel versions of the starter, equally hard; 1.", metavar="N"),
    ] = None,
    large_print: Annotated[
        bool | None, typer.Option("--large-print", help="Print sheets at 18 pt and up.")
    ] = None,
    paper: Annotated[
        str | None, typer.Option(metavar="TINT", help=f"Tint: {join_words(PAPERS, 'or')}.")
    ] = None,
    two_up: Annotated[
        bool | None, typer.Option("--two-up", help="Add slips of the starter, two a page.")
    ] = None,
    bank: Annotated[
        list[Path] | None,
        typer.Option(metavar="DIR", help="A bank’s folder; give it again for more. The class’s."),
    ] = None,
    questions_from: Annotated[
        str | None, typer.Option(metavar="SOURCE", help="generated, bank or both.")
    ] = None,
    prefer: Annotated[
        str | None,
        typer.Option(metavar="SOURCE", help="Which comes first of both: bank or generated."),
    ] = None,
    signed_only: Annotated[
        bool | None,
        typer.Option(
            "--signed-only/--unsigned-too",
            help="Use signed questions alone, and generate none; or others as well.",
        ),
    ] = None,
    beyond_year: Annotated[
        bool | None,
        typer.Option(
            "--beyond-year/--within-year",
            help="Ask for content of later years too; or only what suits the class’s year.",
        ),
    ] = None,
    output: Annotated[
        Path | None,
        typer.Option(metavar="DIR", help="Where to put the pack's folder; ‘output’ if there is."),
    ] = None,
    department: Annotated[
        Path | None, typer.Option(metavar="DIR", help="Folder with department.toml.")
    ] = None,
    from_: Annotated[
        Path | None,
        typer.Option("--from", metavar="PACK.JSON", help="Make the pages of a pack again."),
    ] = None,
    replace: Annotated[
        bool, typer.Option("--replace", help="Put the pack in place of an older one.")
    ] = False,
) -> None:
    """Make a lesson's slides, sheets, answers and notes, with every key proved.

    Every option may be left out: the department's file and the date fill in the rest.
    The pack appears whole in a folder such as 8K-2026-11-30, or not at all.

    \b
    Examples:
      itembank pack
      itembank pack --class 7M --date 2026-11-30 --questions 10
      itembank pack -t ratio.share -t equations.two-step --large-print
      itembank pack --plan plan-8K.toml --variants 2
      itembank pack -t ratio.share --bank questions --questions-from both --prefer bank
      itembank pack --from output/8K-2026-11-30/pack.json --replace
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.cli.pack_settings import Given, refuse_with_from, resolve

    given = Given(
        class_name=class_,
        date=date,
        title=title,
        topics=tuple(topic or ()),
        questions=questions,
        seed=seed,
        follow_up=follow_up,
        variants=variants,
        large_print=large_print,
        paper=paper,
        two_up=two_up,
        banks=tuple(bank or ()),
        questions_from=questions_from,
        prefer=prefer,
        signed_only=signed_only,
        beyond_year=beyond_year,
    )
    home = output if output is not None else output_home(Path.cwd())
    if from_ is not None:
        refuse_with_from(given, plan, department)
        from itembank.packs.check import start_reading

        _write(start_reading(from_), home, replace)
        return
    from itembank.cli.taught import not_yet, taught_dates
    from itembank.items.topics.registry import topic_ids
    from itembank.planning.department.plan_file import read_plan

    known = tuple(topic_ids())
    found = nearby_department(department, known)
    near = (*given.banks, *banks_of(found))
    planned = read_plan(plan, known, near) if plan is not None else None
    group = found.find_class(class_ or (planned.class_name if planned else None)) if found else None
    taught = taught_dates(found, group) if found and group else {}
    settings = resolve(given, planned, found, known, today(), taught)
    _refuse_existing(home / settings.folder_name, replace)

    from itembank.cli.pack_settings import as_request
    from itembank.packs.build import start_pack

    _write(start_pack(as_request(settings)), home, replace)
    wanted = [one.id for one in settings.topics]
    own = group.topics if group and not (given.topics or (planned and planned.topics)) else ()
    for name, when in not_yet([*own, *wanted], taught, settings.date).items():
        if name in wanted:
            say(f"Note: {settings.class_name}: {name} {when}, and you ask for it before.")
        else:
            say(f"Note: {name} {when}, so it is left out. To ask for it all the same: -t {name}")


def output_home(here: Path) -> Path:
    """Return where packs go unless told otherwise: the nearest folder called ``output``.

    It is looked for in `here` and then above it, no further than the top of the project (the
    folder that holds ``.git``). Outside a project, or without one, it is `here` itself.
    """
    project = next((one for one in (here, *here.parents) if (one / ".git").exists()), here)
    for folder in (here, *here.parents):
        if (folder / "output").is_dir():
            return folder / "output"
        if folder == project:
            break
    return here


def _refuse_existing(folder: Path, replace: bool) -> None:
    """Say so before any work when the pack could not be written."""
    if folder.exists() and not replace:
        raise ItembankError(
            f"There is a pack in {folder} already.", matter="pack there", folder=folder
        )


def _write(started: Started, home: Path, replace: bool) -> None:
    from itembank.pages.write_pack import write_pack

    made = started.pack
    folder = home / f"{made.lesson.class_name}-{made.lesson.date.isoformat()}"
    write_pack(started, folder, replace=replace)
    lesson = made.lesson
    day = f"{lesson.date:%A} {lesson.date.day} {lesson.date:%B %Y}"
    say(f"{lesson.class_name}, {day}: {lesson.title}")
    topics = ", ".join(topic.id for topic in made.topics)
    say(f"{made.marks} marks on {topics}. Seed {made.seed}.")
    if made.drawing is not None and made.drawing.banks:
        from itembank.packs.sources.sources_in_words import drawn_words

        say(drawn_words(made))
    typer.echo(f"Written to {folder}:")
    for file in sorted(one.name for one in folder.iterdir()):
        typer.echo(f"  {file}")
