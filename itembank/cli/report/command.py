"""``itembank report``: a class over time, all classes, or what each question showed."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.options.usual_options import DepartmentOption
from itembank.errors import ItembankError
from itembank.planning.bands.caution import CAUTION

if TYPE_CHECKING:
    from itembank.work.report.reports import ItemsFound, Report, ReportRequest


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
    seat: Annotated[
        str | None, typer.Option(metavar="SEAT", help="One pupil of the class, by seat: B3.")
    ] = None,
    seats: Annotated[
        bool, typer.Option("--seats", help="The seats of the class, those to look at first.")
    ] = False,
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
        Path | None,
        typer.Option(metavar="FILE", help="Write the report of the class, or seat, as a PDF."),
    ] = None,
    department: DepartmentOption = None,
) -> None:
    """Report on this school year: lessons, topics, what to bring back; with --items, questions.

    Bands are a teaching aid, not a grade. Seat codes appear with --seat and --seats alone.

    \b
    Examples:
      itembank report 8K                       lessons, topics, what to bring back
      itembank report 8K --pdf report.pdf      the same on paper
      itembank report 8K --seats               which seats to look at first
      itembank report 8K --seat B3             what one pupil answered, for a talk
      itembank report --items                  all questions of the department
      itembank report 8K --lesson 2026-11-30   one starter, question by question
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.cli.options.day import read_day
    from itembank.cli.options.department import department_with_results
    from itembank.cli.words.wrapped import say
    from itembank.work.lesson.decide import check_pdf
    from itembank.work.report.reports import ReportRequest, write_pages, write_tables
    from itembank.work.report.reports import report as make_report

    day = read_day(lesson, "--lesson")
    request = ReportRequest(
        class_,
        read_day(since, "--since"),
        read_day(until, "--until"),
        day,
        topic,
        items,
    )
    if seat is not None or seats:
        if class_ is None:
            raise ItembankError("Name the class too: itembank report 8K --seat B3.")
        if items or day is not None or topic is not None or csv is not None or (seat and seats):
            raise ItembankError("--seat and --seats go with days and --pdf, and with no more.")
        if seats and pdf is not None:
            raise ItembankError("--pdf makes the page of one seat: itembank report 8K --seat B3.")
        _of_seats(department, request, class_, seat, pdf)
        return
    if pdf is not None and (class_ is None or items or day is not None or topic is not None):
        raise ItembankError("--pdf makes the report of one class: itembank report 8K --pdf FILE.")
    if pdf is not None:
        check_pdf(pdf)
    found = department_with_results(department)
    made = make_report(found, request)
    if pdf is not None:
        write_pages(found, made, pdf)
    typer.echo("\n".join([*_lines(made), "", CAUTION]))
    if csv is not None:
        say(f"Written to {csv}: {', '.join(write_tables(found, made, csv))}.")
    if pdf is not None:
        say(f"Written: {pdf}.")


def _of_seats(
    department: Path | None,
    request: ReportRequest,
    class_name: str,
    seat: str | None,
    pdf: Path | None,
) -> None:
    """Tell the page of a seat and write it, or tell the seats of a class."""
    from itembank.cli.options.department import department_with_results
    from itembank.cli.report.pupil_text import pupil_text, seats_text
    from itembank.cli.words.wrapped import say
    from itembank.work.lesson.decide import check_pdf
    from itembank.work.report.pupil_page import pupil_page, write_pupil_page
    from itembank.work.report.seat_list import seat_list

    if pdf is not None:
        check_pdf(pdf)
    found = department_with_results(department)
    if seat is None:
        lines = seats_text(seat_list(found, class_name, request.since, request.until))
        lines += ["", CAUTION]
    else:
        page = pupil_page(found, class_name, seat, request.since, request.until)
        if pdf is not None:
            write_pupil_page(found, page, pdf)
        lines = pupil_text(page)
    typer.echo("\n".join(lines))
    if pdf is not None:
        say(f"Written: {pdf}. It names a seat, so keep it as you keep other pupil data.")


def _lines(made: Report) -> list[str]:
    """Return what a report says on screen."""
    from itembank.records.reports.class_report import ClassReport, DepartmentReport

    found, titles = made.found, made.titles
    if isinstance(found, ClassReport):
        from itembank.cli.report.class_text import class_text

        return class_text(found, titles, made.topic)
    if isinstance(found, DepartmentReport):
        from itembank.cli.report.department_text import department_text

        return department_text(found, titles, made.topic)
    from itembank.cli.report.items_text import items_text

    return items_text(found.report, titles, _head(found), found.asked)


def _head(found: ItemsFound) -> str:
    """Return the line above statistics of questions: whose they are and of which time."""
    from itembank.files.faults import join_words
    from itembank.text.in_words import day_month_year

    scope = found.scope
    assert scope.first is not None
    assert scope.last is not None
    who = scope.class_name or "All classes"
    if not found.starters:
        return f"{who}, {day_month_year(scope.first)} to {day_month_year(scope.last)}."
    return f"{who} on {day_month_year(scope.last)}: {join_words(list(found.starters))}."
