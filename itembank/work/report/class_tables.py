"""The report of a class as tables for CSV files; no seat codes are in them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from itembank.work.report.figures import Rows, places, rounded

if TYPE_CHECKING:
    from itembank.records.reports.class_report import ClassReport, LessonLine, TopicLine
    from itembank.work.report.titles import Titles


def class_tables(report: ClassReport, titles: Titles) -> dict[str, Rows]:
    """Return the tables of a class report by file name; no seat codes are in them."""
    from itembank.records.reports.class_report import by_week
    from itembank.records.statistics.interval import wilson

    topics: list[Sequence[object]] = [
        (
            report.class_name,
            t.topic,
            titles.of(t.topic),
            t.out_of,
            *(rounded(t.interval) if t.out_of else (None, None, None)),
            len(t.scored),
            *map(places, _expected(t)),
            round(t.mastery.half_life, 1),
            t.mastery.due,
        )
        for t in report.topics
    ]
    weeks: list[Sequence[object]] = [
        (
            report.class_name,
            t.topic,
            titles.of(t.topic),
            week,
            round(right, 2),
            out_of,
            *rounded(wilson(min(right, out_of), out_of, 0.9)),
        )
        for t in report.topics
        for week, (right, out_of) in by_week(t).items()
    ]
    return {
        "report-topics.csv": (_TOPICS, topics),
        "report-weeks.csv": (_WEEKS, weeks),
        "report-lessons.csv": (
            _LESSONS,
            [_lesson_row(report, lesson) for lesson in report.lessons],
        ),
        **views_tables(report, titles),
    }


def _expected(line: TopicLine) -> tuple[float | None, ...]:
    """Return what is expected now, with its interval; nothing on the day the class was asked."""
    found = line.mastery
    if found.just_asked:
        return (None, None, None)
    return (found.now, found.low, found.high)


_WEEKS = ("class", "topic", "title", "week", "right", "answers", "share", "low", "high")
_TOPICS = (
    "class",
    "topic",
    "title",
    "answers",
    "right",
    "low",
    "high",
    "in_scores",
    "now",
    "now_low",
    "now_high",
    "half_life",
    "due",
)
_LESSONS = (
    "class",
    "date",
    "period",
    "title",
    "pupils",
    "bands (not a grade)",
    "out_of",
    "not_asked",
    "share",
    "agreement",
    "sure_but_low",
    "not_sure_but_high",
    "asked",
    "asked_of",
    "needed_clarifying",
    "note",
)


def _lesson_row(report: ClassReport, lesson: LessonLine) -> Sequence[object]:
    done = lesson.decision
    view = done.views if done.views is not None and done.views.pupils else None
    asked, there, note = done.clarity or (None, None, "")
    return (
        report.class_name,
        lesson.date,
        lesson.period,
        lesson.title,
        done.pupils,
        " ".join(f"{group.letter}:{group.pupils}" for group in done.groups),
        done.out_of,
        " ".join(map(str, done.not_asked)),
        round(done.overall.interval.share, 4) if done.overall else None,
        places(view.agreement) if view else None,
        len(view.over) if view else None,
        len(view.under) if view else None,
        asked,
        None if asked is None else there or done.pupils or None,
        None if lesson.unclear is None else "yes" if lesson.needed_clarifying else "no",
        note,
    )


def views_tables(report: ClassReport, titles: Titles) -> dict[str, Rows]:
    """Return own views over the report's time as tables by file name; no seat codes are in them."""
    found = report.views
    summary: list[Sequence[object]] = []
    if found.noted:
        summary.append(
            (
                report.class_name,
                report.first,
                report.last,
                found.lessons,
                places(found.agreement),
                found.sure,
                found.over,
                found.unsure,
                found.under,
            )
        )
    fooled: list[Sequence[object]] = [
        (
            report.class_name,
            fooled.topic,
            titles.of(fooled.topic),
            fooled.address,
            fooled.prompt,
            fooled.wrong,
            fooled.sure,
            *rounded(fooled.interval),
        )
        for fooled in (*found.topics, *found.questions)
    ]
    return {
        "report-own-views.csv": (
            [
                "class",
                "first",
                "last",
                "lessons",
                "agreement",
                "sure",
                "sure_but_low",
                "not_sure",
                "not_sure_but_high",
            ],
            summary,
        ),
        "report-fooled.csv": (
            [
                "class",
                "topic",
                "title",
                "question",
                "prompt",
                "wrong",
                "sure",
                "share",
                "low",
                "high",
            ],
            fooled,
        ),
    }
