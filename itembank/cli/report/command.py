"""``itembank report``: what was learnt of a class, of items, of the department."""

from __future__ import annotations

import datetime
from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, TypeAlias

import typer

from itembank.cli.lesson_text import check_pdf, read_day, store_of, the_department
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError
from itembank.files.faults import join_words
from itembank.planning.bands.caution import CAUTION
from itembank.text.in_words import day_month_year
from itembank.today import today

if TYPE_CHECKING:
    from sqlalchemy import Connection

    from itembank.cli.report.in_figures import Rows
    from itembank.cli.report.titles import Titles
    from itembank.planning.department.department import Department
    from itembank.records.reports.class_report import ClassReport
    from itembank.records.results.scope import Scope
    from itembank.records.store.place import Place


def report(
    class_: Annotated[
        str | None, typer.Argument(metavar="CLASS", help="The class; none: all classes.")
    ] = None,
    items: Annotated[
        bool, typer.Option("--items", help="Questions: how hard, and what they tell.")
    ] = False,
    lesson: Annotated[
        str | None, typer.Option(metavar="DAY", help="The starter of one day, by question.")
    ] = None,
    topic: Annotated[
        str | None, typer.Option(metavar="TOPIC", help="One topic: its id or title.")
    ] = None,
    since: Annotated[
        str | None, typer.Option(metavar="DAY", help="First day; 1 August where left out.")
    ] = None,
    until: Annotated[
        str | None, typer.Option(metavar="DAY", help="Last day; today where left out.")
    ] = None,
    csv: Annotated[
        Path | None, typer.Option(metavar="FOLDER", help="Write the tables as CSV files.")
    ] = None,
    pdf: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Write the class report as a PDF.")
    ] = None,
    department: Annotated[
        Path | None, typer.Option(metavar="DIR", help="Folder with department.toml.")
    ] = None,
) -> None:
    """Report on this school year: lessons, topics, what to bring back; with --items, questions.

    Bands are a teaching aid, not a grade. Seat codes appear in no report.

    \b
    Examples:
      itembank report 8K                       lessons, topics, what to bring back
      itembank report 8K --pdf report.pdf      the same on paper
      itembank report --items                  all questions of the department
      itembank report 8K --lesson 2026-11-30   one starter, question by question
    """  # noqa: D301 - typer keeps the lines after \b as they are
    first, last = _days(since, until)
    day = read_day(lesson, "--lesson")
    found = the_department(department)
    name = found.find_class(class_).name if class_ is not None else None
    if pdf is not None and (name is None or items or day is not None or topic is not None):
        raise ItembankError("--pdf makes the report of one class: itembank report 8K --pdf FILE.")
    if day is not None and name is None:
        raise ItembankError("--lesson needs a class: itembank report 8K --lesson 2026-11-30.")
    if pdf is not None:
        check_pdf(pdf)
    from itembank.cli.report.titles import titles_of
    from itembank.records.results.scope import Scope
    from itembank.records.store.store import open_store

    scope = Scope(name, day or first, day or last)
    titles = titles_of(found)
    if topic is not None:
        topic = titles.find(topic, titles.known()) or topic
    with (
        open_store(store_of(found.folder), make=False) as store,
        store.reading() as connection,
    ):
        if items or day is not None:
            lines, tables = _items(connection, scope, titles, topic, day is not None)
        elif name is None:
            lines, tables = _all_classes(connection, scope, titles, topic)
        else:
            one = _one_class(connection, scope, found, name)
            lines, tables = _of_class(one, titles, topic)
    if pdf is not None:
        from itembank.cli.report.class_pdf import write_report
        from itembank.records.exporting import remember_files

        remember_files(store_of(found.folder), [pdf], name or "")
        write_report(pdf, one, found.school, titles)
    typer.echo("\n".join([*lines, "", CAUTION]))
    if csv is not None:
        _write_tables(csv, tables(), store_of(found.folder), name or "")
    if pdf is not None:
        say(f"Written: {pdf}.")


Found: TypeAlias = "tuple[list[str], Callable[[], dict[str, Rows]]]"
"""What a report says on screen, and what makes its tables, by file name, if they are wanted."""


def _items(
    connection: Connection, scope: Scope, titles: Titles, topic: str | None, one_day: bool
) -> Found:
    from itembank.cli.report.items_text import items_tables, items_text
    from itembank.records.reports.item_report import item_report

    result = item_report(connection, scope, topic)
    _known(bool(result.items), scope)
    who = scope.class_name or "All classes"
    assert scope.first is not None
    assert scope.last is not None
    if not one_day:
        head, asked = f"{who}, {day_month_year(scope.first)} to {day_month_year(scope.last)}.", []
    else:
        from itembank.records.results.correct import lesson_facts
        from itembank.records.results.results import lessons

        found = lessons(connection, scope.class_name, scope.first, scope.last)
        asked = [question for one in found for question in lesson_facts(connection, one).questions]
        head = f"{who} on {day_month_year(scope.last)}: {join_words([one.title for one in found])}."
    return items_text(result, titles, head, asked), partial(items_tables, result, titles)


def _all_classes(connection: Connection, scope: Scope, titles: Titles, topic: str | None) -> Found:
    from itembank.cli.report.department_text import department_tables, department_text
    from itembank.records.reports.class_report import department_report

    whole = department_report(connection, scope)
    _known(bool(whole.classes) and (topic is None or topic in whole.topics), scope)
    return department_text(whole, titles, topic), partial(department_tables, whole, titles)


def _one_class(
    connection: Connection, scope: Scope, department: Department, name: str
) -> ClassReport:
    from itembank.planning.department.taught import taught_dates
    from itembank.records.reports.class_report import class_report
    from itembank.records.results.happened import cancelled_lessons

    group = department.find_class(name)
    assert scope.first is not None
    assert scope.last is not None
    gone = cancelled_lessons(connection, name)
    dates = taught_dates(department, group, gone)
    taught = {topic: date for topic, date in dates.items() if date}
    one = class_report(connection, name, group.bands, scope.first, scope.last, taught=taught)
    _known(bool(one.lessons), scope)
    return one


def _of_class(one: ClassReport, titles: Titles, topic: str | None) -> Found:
    from itembank.cli.report.class_text import class_tables, class_text

    if topic is not None and topic not in {line.topic for line in one.topics}:
        raise ItembankError(
            f"{one.class_name} was not asked {titles.of(topic)} from {one.first} to {one.last}."
        )
    return class_text(one, titles, topic), partial(class_tables, one, titles)


def _write_tables(folder: Path, tables: dict[str, Rows], store: Place, name: str) -> None:
    from itembank.files.private import make_folder
    from itembank.records.exporting import remember_files, write_csv

    try:
        make_folder(folder)
    except OSError as error:
        raise ItembankError(f"{folder} cannot be made: {error.strerror}.") from None
    remember_files(store, [folder / file for file in tables], name)
    for file, (heads, rows) in tables.items():
        write_csv(folder / file, heads, iter(rows))
    say(f"Written to {folder}: {', '.join(tables)}.")


def _days(since: str | None, until: str | None) -> tuple[datetime.date, datetime.date]:
    last = read_day(until, "--until") or today()
    first = read_day(since, "--since")
    if first is None:
        from itembank.records.reports.class_report import school_year

        first = school_year(last)
    if first > last:
        raise ItembankError(f"--since {first} comes after {last}. Change one of them.")
    return first, last


def _known(there: bool, scope: Scope) -> None:
    """Raise a plain error where nothing was recorded."""
    if not there:
        who = scope.class_name or "any class"
        raise ItembankError(
            f"There are no such results of {who} from {scope.first} to {scope.last}. Look further "
            "back with --since, or record some with ‘itembank record’."
        )
