"""``itembank pack``: everything for one lesson, in one folder."""

from __future__ import annotations

from contextlib import nullcontext
from dataclasses import fields
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.options.complete import complete_topic
from itembank.cli.options.usual_options import DepartmentOption
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError
from itembank.files.faults import join_words
from itembank.planning.department.papers import PAPERS
from itembank.text.in_words import counted, long_date

if TYPE_CHECKING:
    from itembank.planning.department.pack_request import PackRequest
    from itembank.work.pack.make import PackMade


def pack(
    class_: Annotated[
        str | None,
        typer.Option("--class", metavar="NAME", help="Class; the department's usual one."),
    ] = None,
    date: Annotated[
        str | None,
        typer.Option(
            metavar="DAY",
            help="Day of the lesson, as 2026-11-30; the class’s next lesson.",
        ),
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
        str | None,
        typer.Option(
            metavar="COPIES",
            help="Large-print copies: how many, as 2, for whom, as A3,C5, or none. The class’s.",
        ),
    ] = None,
    paper: Annotated[
        str | None,
        typer.Option(metavar="TINT", help=f"Paper in the tray: {join_words(PAPERS, 'or')}."),
    ] = None,
    print_tint: Annotated[
        bool | None,
        typer.Option(
            "--print-tint/--tint-in-tray",
            help="Print the tint on white paper; or have paper of that tint in the tray.",
        ),
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
    department: DepartmentOption = None,
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
      itembank pack -t ratio.share -t equations.two-step --large-print 2
      itembank pack --class 8K --large-print A3,C5 --paper cream
      itembank pack --plan plan-8K.toml --variants 2
      itembank pack -t ratio.share --bank questions --questions-from both --prefer bank
      itembank pack --from output/8K-2026-11-30/pack.json --replace
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.packs.proof_ahead import begin_proof

    # Begun before all else is loaded: nothing takes as long as what the second process loads.
    with begin_proof() if from_ is None else nullcontext() as begun:
        from itembank.planning.department.large_copies import typed_large_print
        from itembank.planning.department.pack_request import PackRequest, PlannedTopic
        from itembank.planning.department.question_sources import StatedSources
        from itembank.work.pack.make import draw_again, make_pack
        from itembank.work.places import packs_place

        typed = PackRequest(
            class_name=class_,
            title=title,
            topics=tuple(map(PlannedTopic, topic or ())),
            questions=questions,
            seed=seed,
            follow_up=follow_up,
            variants=variants,
            large_print=typed_large_print(large_print) if large_print is not None else None,
            paper=paper,
            print_tint=print_tint,
            slips=two_up,
            stated_sources=StatedSources(
                tuple(bank) if bank else None, questions_from, prefer, signed_only, beyond_year
            ),
        )
        home = output if output is not None else packs_place(department)
        if from_ is not None:
            refuse_with_from(typed, date, plan, department)
            _tell(draw_again(from_, home, replacing=replace))
            return
        _tell(
            make_pack(
                typed,
                home,
                day=date,
                plan=plan,
                department=department,
                replacing=replace,
                begun=begun,
            )
        )


def refuse_with_from(
    typed: PackRequest, date: str | None, plan: Path | None, department: Path | None
) -> None:
    """Refuse what would change a pack that is only to be drawn again."""
    names = {"class_name": "--class", "topics": "--topic", "slips": "--two-up", "banks": "--bank"}
    given: dict[str, object] = {"date": date, "plan": plan, "department": department}
    for part in (typed, typed.stated_sources):
        given |= {field.name: getattr(part, field.name) for field in fields(part)}
    options = [
        names.get(name, f"--{name.replace('_', '-')}")
        for name, value in given.items()
        if name != "stated_sources" and value not in (None, (), frozenset())
    ]
    if options:
        them = "that" if len(options) == 1 else "them"
        raise ItembankError(
            f"--from makes a pack again just as it was, so {join_words(options)} cannot change "
            f"it. Leave {them} out, or leave out --from to make a new pack."
        )


def _tell(made: PackMade) -> None:
    pack, lesson = made.pack, made.pack.lesson
    day = long_date(lesson.date)
    say(f"{lesson.class_name}, {day}: {lesson.title}")
    topics = ", ".join(topic.id for topic in pack.topics)
    say(f"{counted(pack.marks, 'mark')} on {topics}. Seed {pack.seed}.")
    if pack.drawing is not None and pack.drawing.banks:
        from itembank.packs.sources.sources_in_words import provenance_words

        say(provenance_words(pack))
    typer.echo(f"Written to {made.folder}:")
    for name in made.files:
        typer.echo(f"  {name}")
    for early in made.early:
        if early.asked:
            say(
                f"Note: {lesson.class_name}: {early.topic} {early.when}, and you ask for it before."
            )
        else:
            say(
                f"Note: {early.topic} {early.when}, so it is left out. To ask for it all the "
                f"same: -t {early.topic}"
            )
