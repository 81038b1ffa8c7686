"""What came of uniting two results files."""

from __future__ import annotations

import datetime
from dataclasses import field

from itembank.data_class import dataclass


@dataclass(frozen=True, slots=True)
class Differing:
    """A lesson of which both files have results that count, and that differ; the later counts."""

    class_name: str
    date: datetime.date
    kinds: tuple[str, ...]
    made_at: tuple[datetime.datetime, ...]


@dataclass(slots=True)
class United:
    """What came in: entries, lessons and moves; what differs; seats one of the files forgot."""

    entries: int = 0
    lessons: int = 0
    moves: int = 0
    differing: list[Differing] = field(default_factory=list)
    kept_out: set[tuple[str, str]] = field(default_factory=set)
    forgotten_there: set[tuple[str, str]] = field(default_factory=set)
    entries_forgotten_there: int = 0
