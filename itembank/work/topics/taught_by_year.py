"""The topics of a department's schemes of work, year by year, and those that none of them has."""

from __future__ import annotations

from pathlib import Path
from typing import NamedTuple

from itembank.planning.calendar.scheme import Scheme
from itembank.work.week.begin import folder_of


class YearOfTopics(NamedTuple):
    """A scheme of work: its name, its year group, and its topics with when each is taught."""

    scheme: str
    year: int
    rows: tuple[tuple[str, str], ...]


class TaughtByYear(NamedTuple):
    """What each scheme teaches, the youngest year first, and what no scheme teaches."""

    years: tuple[YearOfTopics, ...]
    untaught: tuple[str, ...]


def taught_by_year(home: Path, topics: tuple[str, ...]) -> TaughtByYear:
    """Return what the schemes of a department teach, and which of the topics they do not.

    Raises
    ------
    FileFaults
        If the department's files have faults.
    """
    schemes = sorted(
        folder_of(home).schemes.values(), key=lambda scheme: (scheme.year, scheme.name)
    )
    taught = {taught.topic for scheme in schemes for taught in scheme.topics}
    return TaughtByYear(
        tuple(YearOfTopics(scheme.name, scheme.year, _rows(scheme)) for scheme in schemes),
        tuple(name for name in topics if name not in taught),
    )


def _rows(scheme: Scheme) -> tuple[tuple[str, str], ...]:
    return tuple(
        (
            f"week {taught.week}" if taught.week is not None else taught.date.isoformat(),
            taught.topic,
        )
        for taught in scheme.topics
    )
