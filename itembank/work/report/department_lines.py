"""The lines of the department's report: classes, and topics hardest first, each with its share."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from itembank.data_class import dataclass
from itembank.records.statistics.interval import wilson

if TYPE_CHECKING:
    from itembank.records.reports.class_report import ClassLine, DepartmentReport
    from itembank.records.statistics.interval import Interval

CONFIDENCE = 0.9
"""Of the intervals in reports on classes and topics."""


@dataclass(frozen=True, slots=True)
class ClassShare:
    """A class and its share right; None where no answers to single questions are known."""

    line: ClassLine
    interval: Interval | None


@dataclass(frozen=True, slots=True)
class TopicShare:
    """A topic and its share right, over all classes and in each."""

    topic: str
    out_of: int
    interval: Interval
    by_class: Mapping[str, Interval]


def class_shares(whole: DepartmentReport) -> tuple[ClassShare, ...]:
    """Return the classes of a department's report."""
    return tuple(ClassShare(line, _share(line.right, line.out_of)) for line in whole.classes)


def topic_shares(whole: DepartmentReport) -> tuple[TopicShare, ...]:
    """Return the topics to which single answers are known, hardest first."""
    found = []
    for topic, by_class in whole.topics.items():
        right, out_of = (sum(pair[place] for pair in by_class.values()) for place in (0, 1))
        whole_share = _share(right, out_of)
        if whole_share is None:
            continue
        shares = {name: _share(*pair) for name, pair in sorted(by_class.items())}
        known = {name: share for name, share in shares.items() if share is not None}
        found.append(TopicShare(topic, out_of, whole_share, known))
    return tuple(sorted(found, key=lambda line: (line.interval.share, line.topic)))


def _share(right: int, out_of: int) -> Interval | None:
    return wilson(right, out_of, CONFIDENCE) if out_of else None
