"""Statistics of questions as tables for CSV files."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from itembank.work.report.figures import Rows, places, rounded

if TYPE_CHECKING:
    from itembank.records.reports.item_report import ItemReport, Line
    from itembank.work.report.titles import Titles


def items_tables(result: ItemReport, titles: Titles) -> dict[str, Rows]:
    """Return the statistics of items by file name."""
    doubted = {
        (one.line.address, one.line.topic, one.line.tier): one.words()
        for one in result.contradictions
    }

    def rows(lines: Sequence[Line]) -> list[Sequence[object]]:
        return [
            (
                one.address,
                one.topic,
                titles.of(one.topic),
                one.tier,
                one.right,
                one.out_of,
                *rounded(one.interval),
                *map(places, (one.correlation, one.upper_lower, one.difficulty, one.error)),
                "; ".join(
                    f"{titles.mistake(one.topic, name)} {share:.3f}"
                    for name, share in one.misconceptions.items()
                ),
                doubted.get((one.address, one.topic, one.tier), ""),
            )
            for one in lines
        ]

    starters: list[Sequence[object]] = [
        (one.class_name, one.date, places(one.kr20)) for one in result.starters
    ]
    return {
        "report-items.csv": (_COLUMNS, rows(result.items)),
        "report-generators.csv": (_COLUMNS, rows(result.generators)),
        "report-starters.csv": (["class", "date", "kr20"], starters),
    }


_COLUMNS = (
    "item",
    "topic",
    "title",
    "tier",
    "right",
    "answers",
    "share",
    "low",
    "high",
    "correlation",
    "upper_lower",
    "rasch",
    "rasch_error",
    "misconceptions",
    "against_its_tier",
)
