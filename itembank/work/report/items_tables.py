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
        (
            contradiction.line.address,
            contradiction.line.topic,
            contradiction.line.tier,
        ): contradiction.words()
        for contradiction in result.contradictions
    }

    def rows(lines: Sequence[Line]) -> list[Sequence[object]]:
        return [
            (
                line.address,
                line.topic,
                titles.of(line.topic),
                line.tier,
                line.right,
                line.out_of,
                *rounded(line.interval),
                *map(places, (line.correlation, line.upper_lower, line.difficulty, line.error)),
                "; ".join(
                    f"{titles.mistake(line.topic, name)} {share:.3f}"
                    for name, share in line.misconceptions.items()
                ),
                doubted.get((line.address, line.topic, line.tier), ""),
            )
            for line in lines
        ]

    starters: list[Sequence[object]] = [
        (starter.class_name, starter.date, places(starter.kr20)) for starter in result.starters
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
