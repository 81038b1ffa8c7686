"""Pupils in each band over the weeks of a report, counted at each lesson."""

from __future__ import annotations

import datetime
from collections import defaultdict
from collections.abc import Sequence
from typing import TYPE_CHECKING

from itembank.data_class import dataclass
from itembank.records.reports.class_report import monday

if TYPE_CHECKING:
    from itembank.records.reports.class_report import LessonLine


@dataclass(frozen=True, slots=True)
class BandCount:
    """A band, and how many pupils were in it, once for each lesson."""

    letter: str
    name: str
    pupils: int


@dataclass(frozen=True, slots=True)
class BandWeek:
    """The bands of one week, lowest first; `share` of marks is None where it is not known."""

    monday: datetime.date
    lessons: int
    bands: tuple[BandCount, ...]
    share: float | None

    @property
    def pupils(self) -> int:
        """Return how many are counted in all bands together."""
        return sum(band.pupils for band in self.bands)


def band_weeks(lessons: Sequence[LessonLine]) -> tuple[BandWeek, ...]:
    """Return the weeks with a lesson of which bands are known, in order."""
    weeks: dict[datetime.date, list[LessonLine]] = defaultdict(list)
    for lesson in lessons:
        if lesson.decision.groups:
            weeks[monday(lesson.date)].append(lesson)
    return tuple(_week(day, some) for day, some in sorted(weeks.items()))


def _week(day: datetime.date, lessons: Sequence[LessonLine]) -> BandWeek:
    counts: dict[str, int] = defaultdict(int)
    names: dict[str, str] = {}
    marks = pupils = 0.0
    for lesson in lessons:
        for group in lesson.decision.groups:
            counts[group.letter] += group.pupils
            names.setdefault(group.letter, group.name)
        if lesson.decision.overall is not None:
            marks += lesson.decision.overall.interval.share * lesson.decision.pupils
            pupils += lesson.decision.pupils
    bands = tuple(BandCount(letter, names[letter], count) for letter, count in counts.items())
    return BandWeek(day, len(lessons), bands, marks / pupils if pupils else None)
