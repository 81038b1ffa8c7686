"""Reports on a time of a class, of the department, of its questions, or on one lesson.

Each is asked for by a :class:`ReportRequest` and comes as plain data, with what makes its tables
for CSV files; :func:`write_pages` and :func:`write_tables` write it.
"""

from __future__ import annotations

import datetime
from collections.abc import Callable
from dataclasses import field
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, TypeAlias

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.text.in_words import day_month_year
from itembank.today import today
from itembank.work.lesson.results_store import open_results, place_of_results
from itembank.work.report.titles import Titles, titles_of

if TYPE_CHECKING:
    from sqlalchemy import Connection

    from itembank.planning.department.department import Department
    from itembank.records.entries.entries import QuestionFacts
    from itembank.records.reports.class_report import ClassReport, DepartmentReport
    from itembank.records.reports.item_report import ItemReport
    from itembank.records.results.scope import Scope
    from itembank.work.report.figures import Rows

Tables: TypeAlias = "Callable[[], dict[str, Rows]]"
"""Makes the tables of a report, by file name, where they are wanted."""


@dataclass(frozen=True, slots=True)
class ReportRequest:
    """What is to be reported: all of it in this school year where nothing is said.

    Attributes
    ----------
    class_name
        One class; all of them where it is left out.
    since, until
        First and last day; the school year up to today.
    lesson
        The day of one lesson of a class, which is then reported question by question.
    topic
        One topic, by its id, its title or a part of it.
    items
        Whether single questions are reported, rather than classes.
    """

    class_name: str | None = None
    since: datetime.date | None = None
    until: datetime.date | None = None
    lesson: datetime.date | None = None
    topic: str | None = None
    items: bool = False


@dataclass(frozen=True, slots=True)
class ItemsFound:
    """Statistics of questions; `asked` are those of one lesson, with the titles of its starters."""

    report: ItemReport
    scope: Scope
    asked: tuple[QuestionFacts, ...] = ()
    starters: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Report:
    """A report: on a class, on the department or on questions; `topic` where it is on one."""

    found: ClassReport | DepartmentReport | ItemsFound
    titles: Titles
    topic: str | None
    class_name: str
    tables: Tables = field(repr=False)


def report(department: Department, request: ReportRequest) -> Report:
    """Return the report that is asked for.

    Raises:
        ItembankError: there are no such results, or the request contradicts itself.
    """
    first, last = days_of(request)
    group = department.find_class(request.class_name) if request.class_name is not None else None
    name = group.name if group is not None else None
    if request.lesson is not None and name is None:
        raise ItembankError("A report on one lesson needs a class.", matter="whose lesson")
    from itembank.records.results.scope import Scope

    scope = Scope(name, request.lesson or first, request.lesson or last)
    titles = titles_of(department)
    topic = request.topic
    if topic is not None:
        topic = titles.find(topic, titles.known()) or topic
    with open_results(department, make=False) as store, store.reading() as connection:
        if request.items or request.lesson is not None:
            return _of_items(connection, scope, titles, topic, request.lesson is not None)
        if group is None:
            return _of_department(connection, scope, titles, topic)
        return _of_class(connection, scope, titles, topic, department)


def _of_items(
    connection: Connection, scope: Scope, titles: Titles, topic: str | None, one_day: bool
) -> Report:
    from itembank.records.reports.item_report import item_report
    from itembank.work.report.items_tables import items_tables

    statistics = item_report(connection, scope, topic)
    _refuse_nothing(bool(statistics.items), scope)
    found = ItemsFound(statistics, scope)
    if one_day:
        from itembank.records.results.correct import lesson_facts
        from itembank.records.results.lessons import lessons

        held = lessons(connection, scope.class_name, scope.first, scope.last)
        asked = [
            question for lesson in held for question in lesson_facts(connection, lesson).questions
        ]
        found = ItemsFound(statistics, scope, tuple(asked), tuple(lesson.title for lesson in held))
    tables = partial(items_tables, statistics, titles)
    return Report(found, titles, topic, scope.class_name or "", tables)


def _of_department(
    connection: Connection, scope: Scope, titles: Titles, topic: str | None
) -> Report:
    from itembank.records.reports.class_report import department_report
    from itembank.work.report.department_tables import department_tables

    whole = department_report(connection, scope)
    _refuse_nothing(bool(whole.classes) and (topic is None or topic in whole.topics), scope)
    return Report(whole, titles, topic, "", partial(department_tables, whole, titles))


def _of_class(
    connection: Connection,
    scope: Scope,
    titles: Titles,
    topic: str | None,
    department: Department,
) -> Report:
    from itembank.planning.department.taught import taught_dates
    from itembank.records.reports.class_report import class_report
    from itembank.records.results.happened import cancelled_lessons
    from itembank.work.report.class_tables import class_tables

    name = scope.class_name or ""
    group = department.find_class(name)
    assert scope.first is not None
    assert scope.last is not None
    dates = taught_dates(department, group, cancelled_lessons(connection, name))
    taught = {topic: date for topic, date in dates.items() if date}
    found = class_report(connection, name, group.bands, scope.first, scope.last, taught=taught)
    _refuse_nothing(bool(found.lessons), scope)
    if topic is not None and topic not in {line.topic for line in found.topics}:
        raise ItembankError(
            f"{name} was not asked {titles.of(topic)} from {found.first} to {found.last}."
        )
    return Report(found, titles, topic, name, partial(class_tables, found, titles))


def write_pages(department: Department, made: Report, path: Path) -> None:
    """Write the report of a class as a PDF.

    Raises:
        ItembankError: it is a report on something else, or the file cannot be written.
    """
    from itembank.records.exporting import remember_files
    from itembank.records.reports.class_report import ClassReport
    from itembank.work.report.class_pages import write_report

    if not isinstance(made.found, ClassReport) or made.topic is not None:
        raise ItembankError("Only the report of a whole class is made for paper.")
    remember_files(place_of_results(department), [path], made.class_name)
    write_report(path, made.found, department.school, made.titles)


def pages_of(department: Department, made: Report) -> bytes:
    """Return the report of a class as a PDF that is sent and not kept.

    No file of it is left behind, so forgetting a pupil has none to find and none is noted.

    Raises:
        ItembankError: it is a report on something else, or there is no room to make it.
    """
    import tempfile

    from itembank.records.reports.class_report import ClassReport
    from itembank.work.report.class_pages import write_report

    if not isinstance(made.found, ClassReport) or made.topic is not None:
        raise ItembankError("Only the report of a whole class is made for paper.")
    with tempfile.TemporaryDirectory() as folder:  # only its owner can open it
        path = Path(folder) / "report.pdf"
        write_report(path, made.found, department.school, made.titles)
        return path.read_bytes()


def write_tables(department: Department, made: Report, folder: Path) -> tuple[str, ...]:
    """Write the tables of a report to a folder, and return the names of the files.

    Raises:
        ItembankError: the folder cannot be made, or a file not be written.
    """
    from itembank.files.private import make_folder
    from itembank.records.exporting import remember_files, write_csv

    tables = made.tables()
    try:
        make_folder(folder)
    except OSError as error:
        raise ItembankError(f"{folder} cannot be made: {error.strerror}.") from None
    remember_files(
        place_of_results(department), [folder / name for name in tables], made.class_name
    )
    for name, (heads, rows) in tables.items():
        write_csv(folder / name, heads, iter(rows))
    return tuple(tables)


def days_of(request: ReportRequest) -> tuple[datetime.date, datetime.date]:
    """Return the first and last day of what is asked for.

    Raises:
        ItembankError: the first comes after the last.
    """
    last = request.until or today()
    first = request.since
    if first is None:
        from itembank.records.reports.class_report import school_year

        first = school_year(last)
    if first > last:
        raise ItembankError(
            f"{day_month_year(first)} comes after {day_month_year(last)}. Change one of them.",
            field="since",
        )
    return first, last


def _refuse_nothing(there: bool, scope: Scope) -> None:
    """Raise a plain error where nothing was recorded."""
    if not there:
        who = scope.class_name or "any class"
        # Reports are always of some days: those asked for, or the school year.
        assert scope.first is not None
        assert scope.last is not None
        raise ItembankError(
            f"There are no such results of {who} from {day_month_year(scope.first)} to "
            f"{day_month_year(scope.last)}.",
            matter="no results in that time",
        )
