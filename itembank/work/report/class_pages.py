"""Puts a class report into the plain data that its pages are drawn from."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from itembank.files.private import write_private
from itembank.pages.documents.class_report_pages import BandRow, ReportData, TopicRow
from itembank.pages.documents.class_report_pages import class_report as draw_report
from itembank.pages.parts.teacher.views_part import (
    ClarityPart,
    FooledRow,
    UnclearRow,
    ViewRow,
    ViewsPart,
)
from itembank.records.reports.class_report import (
    ClassReport,
    LessonLine,
    TopicLine,
    by_week,
    monday,
)
from itembank.records.reports.own_view_report import FooledBy
from itembank.text.in_words import counted, day_month_year, month, short_day
from itembank.text.true_minus import printed
from itembank.work.report.band_weeks import band_weeks
from itembank.work.report.class_words import (
    MOST,
    advice,
    fooled_summary,
    just_asked,
    only_means,
    stopped_early,
    views_summary,
)
from itembank.work.report.figures import figure, share_words
from itembank.work.report.titles import Titles

MOST_LESSONS = 32
"""Lessons shown one by one, about a page of them; of more, bands are shown by week."""


def write_report(path: Path, report: ClassReport, school: str, titles: Titles) -> None:
    """Write the PDF.

    Raises:
        ItembankError: it cannot be written.
    """
    write_private(path, draw_report(report_data(report, school, titles)))


def report_data(report: ClassReport, school: str, titles: Titles) -> ReportData:
    """Return what the pages print."""
    names = {
        group.letter: group.name
        for lesson in report.lessons
        for group in sorted(lesson.decision.groups, key=lambda group: group.lowest)
    }
    where = f"{school}, " if school else ""
    how_many = f"{counted(len(report.lessons), 'lesson')}, {counted(len(report.topics), 'topic')}"
    banded = [lesson for lesson in report.lessons if lesson.decision.groups]
    by_weeks = len(banded) > MOST_LESSONS
    days = f"{day_month_year(report.first)} to {day_month_year(report.last)}"
    return ReportData(
        title=f"Class report: {report.class_name}",
        intro=f"{where}{days}: {how_many}.",
        class_name=report.class_name,
        asked_on=short_day(report.last),
        weeks=[(str(day.day), month(day)[:3]) for day in report.weeks],
        topics=[_topic(line, report, titles) for line in report.topics],
        topics_note=f"{just_asked(report)} {only_means(report)}".strip(),
        bands=_bands_by_week(banded) if by_weeks else [_bands(lesson) for lesson in banded],
        by_week=by_weeks,
        band_names=list(names.items()),
        views=_views(report, titles),
        clarity=_clarity(report),
        missing=_missing(report),
    )


def _topic(line: TopicLine, report: ClassReport, titles: Titles) -> TopicRow:
    weeks = by_week(line)
    scored = {monday(date) for date in line.scored}
    found = line.mastery
    measured = not found.just_asked and found.low is not None and found.high is not None
    return TopicRow(
        title=titles.of(line.topic),
        weeks=[weeks[week][0] / weeks[week][1] if week in weeks else None for week in report.weeks],
        scored=[week in scored and week not in weeks for week in report.weeks],
        in_scores=len(line.scored),
        share=line.interval.share if line.out_of else None,
        interval=(line.interval.low, line.interval.high),
        now=None if found.just_asked else found.now,
        now_interval=(found.low or 0.0, found.high or 0.0) if measured else None,
        advice=advice(line),
    )


def _day(lesson: LessonLine) -> str:
    return short_day(lesson.date) + (f", {lesson.period}" if lesson.period else "")


def _bands(lesson: LessonLine) -> BandRow:
    done = lesson.decision
    share = done.overall.interval.share if done.overall else None
    return BandRow(_day(lesson), [(group.letter, group.pupils) for group in done.groups], share)


def _bands_by_week(lessons: Sequence[LessonLine]) -> list[BandRow]:
    """Return the pupils in each band, counted at each lesson of a week."""
    return [
        BandRow(
            short_day(week.monday),
            [(count.letter, count.pupils) for count in week.bands],
            week.share,
        )
        for week in band_weeks(lessons)
    ]


def _views(report: ClassReport, titles: Titles) -> ViewsPart:
    found = report.views
    lessons = [
        ViewRow(
            _day(lesson),
            figure(view.agreement),
            f"{len(view.over)} of {view.sure}",
            f"{len(view.under)} of {view.unsure}",
        )
        for lesson in report.lessons
        if (view := lesson.decision.views) is not None and view.pupils
    ]
    summary = views_summary(found)
    if len(lessons) > MOST_LESSONS:
        lessons = lessons[-MOST_LESSONS:]
        summary.append(f"The last {MOST_LESSONS} lessons of these, one by one:")
    return ViewsPart(
        summary,
        lessons,
        [_fooled(fooled, titles) for fooled in found.topics[:MOST]],
        [_fooled(fooled, titles) for fooled in found.questions[:MOST]],
        fooled_summary(found) if found.lessons else "",
    )


def _fooled(item: FooledBy, titles: Titles) -> FooledRow:
    name = titles.of(item.topic)
    if item.address:
        name = f"{printed(item.prompt) or name} ({item.address})"
    return FooledRow(name, f"{item.wrong} of {item.sure}", share_words(item.interval))


def _clarity(report: ClassReport) -> ClarityPart:
    noted = sum(lesson.decision.clarity is not None for lesson in report.lessons)
    if not noted:
        return ClarityPart()
    rows = []
    for lesson in report.unclear:
        assert lesson.decision.clarity is not None
        asked, there, note = lesson.decision.clarity
        rows.append(
            UnclearRow(
                _day(lesson), lesson.title, f"{asked} of {there or lesson.decision.pupils}", note
            )
        )
    return ClarityPart(
        f"Of {counted(noted, 'lesson')} with a count, {len(rows) or 'none'} had a fifth or more of "
        "the class asking what to do before they could start.",
        rows,
    )


def _missing(report: ClassReport) -> list[str]:
    """Return plain sentences on what was not recorded."""
    done = [lesson.decision for lesson in report.lessons]
    found = []
    if not report.topics:
        found.append("What is known of each topic: the lessons were recorded without their packs.")
    if early := stopped_early(report):
        found.append(f"Questions that were not asked: {early}")
    if not any(decision.groups for decision in done):
        found.append("Bands: no lesson was recorded by band, by score or by seat.")
    if not report.views.noted:
        found.append("Own views: none were recorded.")
    if all(decision.clarity is None for decision in done):
        found.append("Clarity: no lesson has a count of pupils who asked what to do.")
    return found
