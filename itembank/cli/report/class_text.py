"""The report of a class on screen: its lessons and topics."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from typing import TYPE_CHECKING

from itembank.cli.report.views_text import clarity_text, views_text
from itembank.cli.words.name_column import cut, named_table
from itembank.cli.words.wrapped import paragraph, table, width
from itembank.text.in_words import counted, day_month_year, short_day
from itembank.work.report.class_words import (
    LATEST,
    TOPICS_UNKNOWN,
    advice,
    just_asked,
    only_means,
    stopped_early,
)
from itembank.work.report.figures import figure, share_words
from itembank.work.report.titles import Titles

if TYPE_CHECKING:
    from itembank.records.reports.class_report import ClassReport, LessonLine, TopicLine

AHEAD = (0, 7, 14, 28)
"""Days ahead for which a topic's fading is shown."""


def class_text(report: ClassReport, titles: Titles, topic: str | None = None) -> list[str]:
    """Return the report of a class as lines; of one of its topics where `topic` names it."""
    head = (
        f"{report.class_name}, {day_month_year(report.first)} to {day_month_year(report.last)}: "
        f"{counted(len(report.lessons), 'lesson')}."
    )
    if topic is not None:
        line = next(found for found in report.topics if found.topic == topic)
        return [head, *_one_topic(line, titles)]
    return [
        head,
        *_lessons(report.lessons),
        *(paragraph("Not asked: ", early).splitlines() if (early := stopped_early(report)) else []),
        *_surprises(report),
        *_topics(report, titles),
        *views_text(report, titles),
        *clarity_text(report),
    ]


def _surprises(report: ClassReport) -> list[str]:
    """Return what did not go as planned: lessons that fell out, cover, pupils who moved."""
    odd = report.surprises
    lines = []
    for head, rows in (("No lesson", odd.cancelled), ("Asked instead of the starter", odd.covered)):
        if rows:
            said = "; ".join(
                f"{short_day(date)} ({words})" if words else short_day(date) for date, words in rows
            )
            lines += paragraph(f"{head}: ", f"{said}.").splitlines()
    if odd.went or odd.came:
        said = (
            f"{odd.went} went to other classes or left, {odd.came} came. What is known of topics "
            "by seat is of the pupils who are here now; lessons stand as they were."
        )
        lines += paragraph("Pupils who moved: ", said).splitlines()
    return ["", *lines] if lines else []


def _topics(report: ClassReport, titles: Titles) -> list[str]:
    if not report.topics:
        return ["", *paragraph("", TOPICS_UNKNOWN).splitlines()]
    rows: list[tuple[str, ...]] = [
        (
            titles.of(t.topic),
            f"{t.out_of:,}",
            share_words(t.interval) if t.out_of else "–",
            str(len(t.scored)),
            _now(t),
            advice(t),
        )
        for t in report.topics
    ]
    heads = ["topic", "answers", "right", "in scores", f"expected {short_day(report.last)}"]
    heads.append("bring back")
    words = (
        "Right: answers seen by question, with the Wilson interval at 90 %. Expected: what the "
        "forgetting model makes of all that is known by that day, weakest first, with its interval "
        "at 90 %."
    )
    if any(t.scored for t in report.topics):
        words += " In scores: starters in which the topic was only part of a score."
    else:
        del heads[3]
        rows = [(*row[:3], *row[4:]) for row in rows]
    if any(t.mastery.only_scored for t in report.topics):
        words += " s: never seen by question, only as part of scores."
    words = " ".join(filter(None, (words, just_asked(report), only_means(report))))
    right = {1, 3} if len(heads) > 5 else {1}
    return ["", named_table(heads, rows, right=right), *paragraph("", words).splitlines()]


def _now(line: TopicLine) -> str:
    found = line.mastery
    if found.just_asked:
        return "–"
    if found.low is None or found.high is None:
        return f"{round(100 * found.now)} %, not measured"
    sign = " s" if found.only_scored else ""
    return f"{round(100 * found.now)} % ({round(100 * found.low)}–{round(100 * found.high)}){sign}"


def _lessons(lessons: Sequence[LessonLine]) -> list[str]:
    if not lessons:
        return []
    shown = lessons[-LATEST:]
    rows = [_lesson(lesson) for lesson in shown]
    heads = ("lesson", "title", "bands", "marks", "own view γ", "over/under", "asked")
    # A column in which nothing was recorded would only take the room of the titles.
    kept = [i for i in range(len(heads)) if i < 2 or any(row[i] != "–" for row in rows)]
    others = [max(len(row[i]) for row in (heads, *rows)) for i in kept if i != 1]
    room = max(12, width() - sum(others) - 2 * len(others))
    rows = [(row[0], cut(row[1], room), *row[2:]) for row in rows]
    words = "" if shown == lessons else f" (the last {len(shown)} of {len(lessons)}; --csv: all)"
    explained = []
    if "own view γ" in (heads[i] for i in kept):
        explained.append("Own view γ: 1, the surer scored higher; 0, no relation.")
    if "over/under" in (heads[i] for i in kept):
        explained.append("Over/under: pupils sure but low, not sure but high.")
    if "asked" in (heads[i] for i in kept):
        explained.append("Asked: pupils who asked what to do before they could start.")
    return [
        "",
        f"Lessons{words}:",
        table(
            [heads[i] for i in kept],
            [[row[i] for i in kept] for row in rows],
            right={place for place, i in enumerate(kept) if i > 2},
        ),
        *paragraph("", " ".join(explained)).splitlines(),
    ]


def _lesson(lesson: LessonLine) -> tuple[str, ...]:
    done = lesson.decision
    view = done.views
    return (
        short_day(lesson.date) + (f" ({lesson.period})" if lesson.period else ""),
        lesson.title,
        " ".join(f"{group.letter} {group.pupils}" for group in done.groups) or "–",
        f"{round(100 * done.overall.interval.share)} %" if done.overall else "–",
        figure(view.agreement if view else None),
        f"{len(view.over)} / {len(view.under)}" if view and view.pupils else "–",
        "–" if done.clarity is None else str(done.clarity[0]),
    )


def _one_topic(line: TopicLine, titles: Titles) -> list[str]:
    days = [
        *((p.date, str(p.out_of), share_words(p.interval)) for p in line.points),
        *((date, "–", "only part of a score") for date in line.scored),
    ]
    rows = [(day_month_year(date), *row) for date, *row in sorted(days)]
    found = line.mastery
    ahead = ", ".join(
        f"{round(100 * found.on(found.date + datetime.timedelta(days=days)))} % "
        + (f"on {short_day(found.date)}" if not days else f"in {days} days")
        for days in AHEAD
        if days or not found.just_asked
    )
    expected = (
        "not said on the day it was asked: the class has just seen the answers"
        if found.just_asked
        else found.words()
    )
    right = (
        f"{share_words(line.interval)} of all answers right" if line.out_of else "never seen alone"
    )
    return [
        "",
        *paragraph("", f"{titles.of(line.topic)} ({line.topic}): {right}.").splitlines(),
        *([table(("day", "answers", "right"), rows, right={1})] if rows else []),
        "",
        *paragraph("Expected: ", f"{expected}.").splitlines(),
        *paragraph("Fading:   ", f"{ahead}, unless it is asked.").splitlines(),
        f"Bring back {advice(line)}.",
    ]
