"""``itembank begin``: a department from nothing, by answering questions or from files."""

from __future__ import annotations

import re
from dataclasses import replace as replace_fields
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.errors import ItembankError, SeveralErrors

if TYPE_CHECKING:
    from itembank.work.department.answered import Answers
    from itembank.work.department.made import Kept
    from itembank.work.department.wrong import Wrong

READY = "ready"


def begin(
    folder: Annotated[
        Path, typer.Argument(metavar="FOLDER", help="The department's folder, new or there.")
    ],
    school: Annotated[
        str | None, typer.Option(metavar="NAME", help="The school, as it is printed.")
    ] = None,
    terms: Annotated[
        list[str] | None,
        typer.Option(
            metavar="FILE", help="Terms and holidays: a file of rows, or a row; give again."
        ),
    ] = None,
    classes: Annotated[
        list[str] | None,
        typer.Option(
            metavar="FILE",
            help="Classes: a file of rows (name, year, initials, lessons, seats), or a row.",
        ),
    ] = None,
    topics: Annotated[
        list[str] | None,
        typer.Option(
            metavar="FILE",
            help="Topics in order, with weeks or dates; ‘8=FILE’ for one year; or ‘ready’.",
        ),
    ] = None,
    seats: Annotated[
        list[str] | None,
        typer.Option(metavar="FILE", help="Seat codes of classes, as a file or a row; no names."),
    ] = None,
    week_a: Annotated[
        str | None,
        typer.Option(metavar="DAY", help="A day in a week A, where weeks A and B differ."),
    ] = None,
    bands: Annotated[
        str | None,
        typer.Option(metavar="TEXT", help="‘5 7’, ‘Red 0, Amber 5, Green 7’ or ‘usual’."),
    ] = None,
    leave_out: Annotated[
        bool,
        typer.Option("--leave-out", help="Leave out what names no one topic."),
    ] = False,
) -> None:
    """Make a department by answering questions, or change what was answered.

    At a terminal it asks for the school, its terms, classes, topics and bands, one after the
    other; rows copied out of a spreadsheet can be pasted. ‘back’ goes back, ‘stop’ stops, and
    the same command goes on later. With a department in FOLDER it shows each answer to be
    changed; comments in its files stay. ‘settings’ leads to what else it may say, of all classes
    or of one: the order of topics a class follows, what it was taught early or late, print,
    banks, planning. What options give is not asked for.

    \b
    Examples:
      itembank begin maths
      itembank begin maths --school "Larkhythe School" --terms terms.csv \\
          --classes classes.csv --topics ready
      itembank begin maths --classes "8M; 8; MB; Mon 1, Thu 4, A Fri 2; 29"
      itembank begin maths --classes classes.csv
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.cli.department.conversation_on import Talk, save
    from itembank.cli.words.ask import can_ask
    from itembank.cli.words.wrapped import say
    from itembank.planning.department.department import FILE_NAME
    from itembank.work.department.answered import Answers
    from itembank.work.department.made import read_kept, refuse_department
    from itembank.work.department.so_far import read_so_far

    kept: Kept | None = None
    if (folder / FILE_NAME).exists():
        kept = read_kept(folder)
    else:
        refuse_department(folder)
    so_far = read_so_far(folder)
    answers = so_far or (kept.answers if kept else Answers())
    before = answers
    answers = _given(
        answers,
        kept,
        school,
        terms or [],
        classes or [],
        topics or [],
        seats or [],
        week_a,
        bands,
        leave_out,
    )
    if so_far is not None:
        say(f"Going on from what you answered before, which {folder} keeps.")
    if can_ask() and (answers == before or not _ready(answers, folder, kept)):
        if Talk(folder, answers, kept).carry_out():
            _next(folder)
        return
    try:
        save(folder, answers, kept)
    except SeveralErrors as error:
        missing = "At a terminal, the same command asks for what is missing."
        raise ItembankError(f"{error}\n{missing}") from None
    _tell(answers)
    _next(folder)


def _ready(answers: Answers, folder: Path, kept: Kept | None) -> bool:
    from itembank.work.department.looked_at import look_at

    return look_at(answers, folder, kept.files if kept else None).ready


def _tell(answers: Answers) -> None:
    from itembank.cli.words.wrapped import say
    from itembank.work.department.outlook import outlook_lines, outlook_on

    for line in outlook_lines(outlook_on(answers)):
        say(line)


def _next(folder: Path) -> None:
    """Say which command makes the first week."""
    from itembank.cli.words.wrapped import say
    from itembank.text.paths_shown import quoted_path
    from itembank.today import today
    from itembank.work.department.first_week import first_day_with_starters
    from itembank.work.department.made import read_kept

    answers = read_kept(folder).answers
    calendar = answers.calendar
    if calendar is None or not answers.classes:
        return
    first = first_day_with_starters(calendar, today())
    if first is not None:
        name = answers.classes[0].name
        say(f"Next: itembank week {name} --from {first} --department {quoted_path(folder)}")


def _given(
    answers: Answers,
    kept: Kept | None,
    school: str | None,
    terms: list[str],
    classes: list[str],
    topics: list[str],
    seats: list[str],
    week_a: str | None,
    bands: str | None,
    leave_out: bool,
) -> Answers:
    """Return answers with what the options give.

    Raises:
        ItembankError: what is wrong in the files, each with its row.
    """
    from itembank.today import today
    from itembank.work.department.joined_answers import with_classes, with_year
    from itembank.work.department.pasted.pasted_classes import read_pasted_classes
    from itembank.work.department.pasted.pasted_days import coming_school_year, read_pasted_day
    from itembank.work.department.pasted.pasted_seats import read_pasted_seats
    from itembank.work.department.pasted.pasted_year import read_pasted_year
    from itembank.work.department.pasted.typed_bands import read_typed_bands

    if school is not None:
        answers = replace_fields(answers, school=school.strip())
    if terms:
        year = read_pasted_year(_rows(terms), today())
        _refuse("--terms", year.wrong)
        _remark(year.remarks)
        answers = with_year(answers, year.found.terms, year.found.closed)
    if week_a is not None:
        date = read_pasted_day(week_a, coming_school_year(today()))
        answers = replace_fields(answers, two_week=True, week_a=date)
    if classes:
        groups = read_pasted_classes(_rows(classes))
        _refuse("--classes", groups.wrong)
        _remark(groups.remarks)
        answers = with_classes(answers, groups.found)
    if seats:
        told = read_pasted_seats(_rows(seats), tuple(group.name for group in answers.classes))
        _refuse("--seats", told.wrong)
        rows = [
            replace_fields(group, seats=told.found.get(group.name, group.seats))
            for group in answers.classes
        ]
        answers = replace_fields(answers, classes=tuple(rows))
    for typed in topics:
        answers = _with_topics(answers, typed, leave_out, kept)
    if bands is not None:
        answers = replace_fields(answers, bands=read_typed_bands(bands))
    return answers


def _with_topics(answers: Answers, typed: str, leave_out: bool, kept: Kept | None) -> Answers:
    """Return answers with the topics of a file, for the year it is of, or ready ones for all."""
    from itembank.files.faults import join_words
    from itembank.text.whole_number import whole_number
    from itembank.work.department.joined_answers import with_scheme
    from itembank.work.department.pasted.pasted_topics import read_pasted_topics
    from itembank.work.department.ready import ready_scheme

    of_year = {group.year: group for group in reversed(answers.classes) if group.year is not None}
    if typed == READY:
        for _, group in sorted(of_year.items()):
            ready = ready_scheme(group.year or 0, answers.calendar)
            answers = with_scheme(answers, group, ready.topics)
        return answers
    said, _, name = typed.rpartition("=")
    stated_year = whole_number(said)
    # What stands before the sign is part of the file's name where it is no year.
    path = Path(typed if stated_year is None else name)
    read = read_pasted_topics(
        _text(path), answers.calendar, kept.titles if kept else None, leave_out
    )
    if read.wrong and read.found.unknown and not leave_out:
        _refuse(f"{path}", read.wrong, "Mend them, or leave out what nobody asks with --leave-out.")
    _refuse(f"{path}", read.wrong)
    _remark(read.remarks)
    years = list(of_year)
    usual = years[0] if stated_year is None and len(years) == 1 else stated_year
    for stated, rows in read.found.by_year.items():
        year = usual if stated is None else stated
        if year is None or year not in of_year:
            there = join_words([f"{known}={path}" for known in sorted(of_year)], "or")
            raise ItembankError(
                f"Which year are the topics of {path} for? "
                + (f"Write --topics {there}." if there else "Name the classes first.")
            )
        answers = with_scheme(answers, of_year[year], rows)
    return answers


def _text(path: Path) -> str:
    from itembank.files.faults import decode_text

    return decode_text(path)


def _rows(typed: list[str]) -> str:
    """Return the rows of all files that are named, and the rows that were typed."""
    from itembank.cli.department.answering import file_named

    found = []
    for text in typed:
        path = file_named(text)
        if path is None and re.fullmatch(r"\S*\.(?:csv|txt|tsv|xlsx?|ods)|\S*[/\\]\S*", text):
            raise ItembankError(f"There is no file {text}.")
        found.append(_text(path).rstrip("\n") if path is not None else text)
    return "\n".join(found)


def _refuse(where: str, wrong: tuple[Wrong, ...], advice: str = "") -> None:
    """Refuse rows in which something is wrong.

    Raises:
        ItembankError: has a line for each fault.
    """
    if wrong:
        lines = [f"{where}: {fault}" for fault in dict.fromkeys(map(str, wrong))]
        raise ItembankError("\n".join([*lines, *filter(None, [advice])]))


def _remark(remarks: tuple[str, ...]) -> None:
    from itembank.cli.words.wrapped import say

    for line in remarks:
        say(f"Note: {line}")
