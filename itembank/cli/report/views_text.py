"""Own views and the clarity check in the report of a class, on screen."""

from __future__ import annotations

from typing import TYPE_CHECKING

from itembank.cli.words.name_column import named_table
from itembank.cli.words.wrapped import paragraph
from itembank.text.in_words import counted, short_day
from itembank.work.report.class_words import MOST, fooled_summary, views_summary
from itembank.work.report.figures import share_words

if TYPE_CHECKING:
    from itembank.records.reports.class_report import ClassReport
    from itembank.records.reports.own_view_report import FooledBy
    from itembank.work.report.titles import Titles


def views_text(report: ClassReport, titles: Titles) -> list[str]:
    """Return own views over the report's time as lines."""
    found = report.views
    lines = [line for said in views_summary(found) for line in paragraph("", said).splitlines()]
    if not lines:
        return []
    lines = ["", "Own view against score:", *lines]
    if not found.lessons:
        return lines
    for name, fooled in (("topics", found.topics), ("questions", found.questions)):
        if fooled:
            rows = [
                (_name(row, titles), f"{row.wrong} of {row.sure}", share_words(row.interval))
                for row in fooled[:MOST]
            ]
            heads = (f"Fooled the confident, {name}", "wrong", "share")
            lines += ["", named_table(heads, rows, right={1})]
    return [*lines, *paragraph("", fooled_summary(found)).splitlines()]


def _name(item: FooledBy, titles: Titles) -> str:
    if not item.address:
        return titles.of(item.topic)
    return f"{item.prompt} [{item.address}]" if item.prompt else item.address


def clarity_text(report: ClassReport) -> list[str]:
    """Return the lessons whose instructions needed clarifying as lines."""
    lines: list[str] = []
    for lesson in report.unclear:
        assert lesson.decision.clarity is not None
        asked, there, note = lesson.decision.clarity
        text = f"{lesson.title}: {asked} of {there or lesson.decision.pupils} asked"
        lines += paragraph(
            f"  {short_day(lesson.date):<7} ", text + (f" ({note})" if note else "")
        ).splitlines()
    noted = sum(lesson.decision.clarity is not None for lesson in report.lessons)
    if lines:
        head = "Lessons whose instructions needed clarifying (a fifth or more asked what to do):"
        return ["", *paragraph("", head).splitlines(), *lines]
    if noted:
        said = f"Clarity was noted in {counted(noted, 'lesson')}; in none did a fifth or more ask."
        return ["", *paragraph("", said).splitlines()]
    return []
