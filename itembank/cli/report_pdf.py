"""Puts a class report into the plain data that its pages are drawn from."""

from __future__ import annotations

from pathlib import Path

from itembank.cli.report_text import advice, is_unclear, short_day
from itembank.errors import ItembankError
from itembank.pages.class_report import LessonRow, ReportData, TopicRow
from itembank.pages.class_report import class_report as draw_report
from itembank.records.class_report import ClassReport, LessonLine, TopicLine, by_week


def write_report(path: Path, one: ClassReport, school: str) -> None:
    """Write the PDF.

    Raises:
        ItembankError: it cannot be written.
    """
    data = draw_report(report_data(one, school))
    try:
        path.write_bytes(data)
    except OSError as error:
        raise ItembankError(f"{path} cannot be written: {error.strerror}.") from None


def report_data(one: ClassReport, school: str) -> ReportData:
    """Return what the pages print."""
    first, last = (f"{day.day} {day:%B %Y}" for day in (one.first, one.last))
    names = {
        group.letter: group.name
        for each in one.lessons
        for group in sorted(each.decision.groups, key=lambda group: group.lowest)
    }
    where = f"{school}, " if school else ""
    return ReportData(
        title=f"Class report: {one.class_name}",
        intro=f"{where}{first} to {last}: {len(one.lessons)} lessons, {len(one.topics)} topics.",
        class_name=one.class_name,
        weeks=[(str(day.day), f"{day:%b}") for day in one.weeks],
        topics=[_topic(line, one) for line in one.topics],
        lessons=[_lesson(each) for each in one.lessons],
        band_names=list(names.items()),
    )


def _topic(line: TopicLine, one: ClassReport) -> TopicRow:
    weeks = by_week(line)
    found = line.mastery
    measured = found.low is not None and found.high is not None
    return TopicRow(
        title=line.topic,
        weeks=[weeks[week][0] / weeks[week][1] if week in weeks else None for week in one.weeks],
        share=line.interval.share,
        interval=(line.interval.low, line.interval.high),
        now=found.now,
        now_interval=(found.low or 0.0, found.high or 0.0) if measured else None,
        advice=advice(line),
    )


def _lesson(one: LessonLine) -> LessonRow:
    done = one.decision
    view = done.views
    seated = view is not None and (view.agreement is not None or bool(view.over or view.under))
    asked = ""
    if done.clarity is not None:
        there = done.clarity[1] or done.pupils
        asked = f"{done.clarity[0]} of {there}" if there else str(done.clarity[0])
    return LessonRow(
        day=short_day(one.date) + (f", {one.period}" if one.period else ""),
        pupils=done.pupils,
        bands=[(group.letter, group.pupils) for group in done.groups],
        share=done.overall.interval.share if done.overall else None,
        agreement=view.agreement if view else None,
        over=len(view.over) if view and seated else None,
        under=len(view.under) if view and seated else None,
        asked=asked,
        unclear=is_unclear(one),
    )
