"""The report of all classes of a department as tables for CSV files."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from itembank.work.report.figures import Rows

if TYPE_CHECKING:
    from itembank.records.reports.class_report import DepartmentReport
    from itembank.work.report.titles import Titles


def department_tables(whole: DepartmentReport, titles: Titles) -> dict[str, Rows]:
    """Return the tables of the department's report by file name."""
    rows: list[Sequence[object]] = [
        (name, topic, titles.of(topic), right, out_of)
        for topic, by_class in sorted(whole.topics.items())
        for name, (right, out_of) in sorted(by_class.items())
    ]
    heads = ["class", "topic", "title", "right", "answers"]
    return {"report-class-topics.csv": (heads, rows)}
