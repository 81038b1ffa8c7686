"""The report of all classes of a department on screen."""

from __future__ import annotations

from typing import TYPE_CHECKING

from itembank.cli.words.name_column import named_table
from itembank.cli.words.wrapped import paragraph, table
from itembank.text.in_words import short_day
from itembank.work.report.figures import share_words

if TYPE_CHECKING:
    from itembank.records.reports.class_report import DepartmentReport
    from itembank.work.report.titles import Titles


def department_text(whole: DepartmentReport, titles: Titles, topic: str | None = None) -> list[str]:
    """Return the report of all classes as lines; of one topic where `topic` names it."""
    from itembank.records.statistics.interval import wilson

    if topic is not None:
        rows = [
            (name, f"{out_of:,}", share_words(wilson(right, out_of, 0.9)))
            for name, (right, out_of) in sorted(whole.topics.get(topic, {}).items())
            if out_of
        ]
        head = f"{titles.of(topic)} ({topic}), by class:"
        return [head, table(("class", "answers", "right"), rows, right={1})]
    classes = [
        (
            group.class_name,
            str(group.lessons),
            short_day(group.last),
            str(group.scored),
            f"{group.out_of:,}",
            share_words(wilson(group.right, group.out_of, 0.9)) if group.out_of else "–",
        )
        for group in whole.classes
    ]
    heads = ("class", "lessons", "last", "by score", "answers", "right")
    lines = [table(heads, classes, right={1, 3, 4})]
    topics = []
    for name, by_class in whole.topics.items():
        right, out_of = (sum(pair[k] for pair in by_class.values()) for k in (0, 1))
        if out_of:
            topics.append((right / out_of, titles.of(name), len(by_class), right, out_of))
    if not topics:
        return [
            *lines,
            "",
            "No answers to single questions are recorded, so nothing is known of any one topic.",
        ]
    shares = [
        (name, str(count), f"{out_of:,}", share_words(wilson(right, out_of, 0.9)))
        for _, name, count, right, out_of in sorted(topics)
    ]
    columns = ("topic", "classes", "answers", "right")
    return [
        *lines,
        "",
        "Topics, hardest first:",
        named_table(columns, shares, right={1, 2}),
        *paragraph(
            "",
            "Answers are those by seat or counted by question; Wilson intervals at 90 %. By score: "
            "lessons recorded by score or band only, which tell nothing of any one topic.",
        ).splitlines(),
    ]
