"""``itembank cover``: what a class was asked instead of its own starter."""

from __future__ import annotations

import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.errors import ItembankError

if TYPE_CHECKING:
    from itembank.planning.department.department import Department, SchoolClass
    from itembank.records.entries.entries import QuestionFacts


def cover(
    class_: Annotated[
        str | None, typer.Argument(metavar="CLASS", help="The class; the department's usual one.")
    ] = None,
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
    period: Annotated[
        str | None, typer.Option(metavar="N", help="Which lesson, where a day has two.")
    ] = None,
    output: Annotated[
        Path | None, typer.Option(metavar="DIR", help="Where packs are; ‘output’ if there is.")
    ] = None,
    department: Annotated[
        Path | None, typer.Option(metavar="DIR", help="Folder with department.toml.")
    ] = None,
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
    from itembank.cli.lesson_day import ask_about_day, the_period
    from itembank.cli.lesson_text import read_day, store_of, the_department
    from itembank.cli.words.wrapped import say
    from itembank.files.faults import join_words
    from itembank.records.entries.entries import Cover, LessonFacts
    from itembank.records.entries.recording import record
    from itembank.records.store.store import open_store
    from itembank.today import today

    given = {"--topic": bool(topic), "--pack": pack is not None, "--same-as": same_as is not None}
    named = [name for name, there in given.items() if there]
    if len(named) != 1:
        said = f"Give one of {join_words(named)}" if named else "Say what was asked"
        raise ItembankError(
            f'{said}: topics, as in -t "ratio.share 4", a --pack, or --same-as and a class.'
        )
    day = read_day(date)
    if day is None:
        raise ItembankError("Say which day, as in: itembank cover 8K --date 2026-11-24 …")
    if day > today():
        raise ItembankError(f"{day} has not come yet. Check --date.")
    found = the_department(department)
    one = found.find_class(class_)
    if topic:
        questions, source = _own(topic, one), "questions of their own"
    else:
        questions, source = _of_pack(found, one, pack, same_as, day, output)
    lesson = LessonFacts(
        one.name,
        day,
        sum(question.marks for question in questions),
        one.title,
        the_period(found, one, day, period),
        questions,
    )
    with open_store(store_of(found.folder)) as store:
        if not yes:
            ask_about_day(store, found, one, lesson)
        record(store, lesson, Cover(source), replace=replace)
    counts = dict.fromkeys(question.topic for question in questions)
    asked = join_words([f"{sum(q.topic == name for q in questions)} on {name}" for name in counts])
    say(f"Noted: {lesson} was asked {source}: {asked}.")
    command = f"itembank record {one.name} --date {day}"
    say(f"What was planned was not asked. Results, if there are any: ‘{command}’.")


def _own(texts: list[str], one: SchoolClass) -> tuple[QuestionFacts, ...]:
    """Return questions of which only the topics are known.

    Raises:
        ItembankError: every topic there is not, and every number that cannot be.
    """
    from itembank.items.topics.registry import topic_ids
    from itembank.planning.department.department import MOST_QUESTIONS
    from itembank.planning.department.known_topics import KnownTopics
    from itembank.planning.topic_names import unknown_topic
    from itembank.records.entries.entries import QuestionFacts
    from itembank.text.whole_number import whole_number

    known = KnownTopics(tuple(topic_ids()), one.draw_from.banks or ())
    faults: list[str] = []
    names: list[str] = []
    for text in texts:
        words = text.replace(",", " ").split()
        count = whole_number(words[1]) if len(words) == 2 else 1
        if len(words) not in (1, 2) or not count:
            faults.append(f'‘{text}’: write a topic and a number of questions: "ratio.share 4".')
        elif words[0].lower() not in known:
            faults.append(unknown_topic(words[0], known))
        else:
            names += [words[0].lower()] * min(count, MOST_QUESTIONS + 1)
    if len(names) > MOST_QUESTIONS:
        faults.append(f"A starter has 1 to {MOST_QUESTIONS} questions.")
    if faults:
        raise ItembankError("\n".join(faults))
    said = "a question of the teacher’s own"
    return tuple(QuestionFacts(number, "", name, "", said) for number, name in enumerate(names, 1))


def _of_pack(
    found: Department,
    one: SchoolClass,
    pack: Path | None,
    same_as: str | None,
    day: datetime.date,
    output: Path | None,
) -> tuple[tuple[QuestionFacts, ...], str]:
    """Return the questions of a pack, and words for whose it is."""
    from itembank.cli.lesson_day import parallel
    from itembank.packs.data.pack_place import packs_of
    from itembank.records.entries.lesson_pack import choose_pack, read_pack_facts
    from itembank.work.places import output_home

    if pack is not None:
        lesson = read_pack_facts(pack).lesson
        return lesson.questions, f"the starter of {lesson.class_name} for {lesson.date}"
    other = parallel(found, one, same_as or "")
    home = output if output is not None else output_home(Path.cwd())
    place = choose_pack(packs_of(home, other), day, day)
    if place is None:
        raise ItembankError(
            f"There is no pack of {other} for {day} in {home}. Name the one it was with --pack."
        )
    return read_pack_facts(place.path).lesson.questions, f"the starter of {other}"
