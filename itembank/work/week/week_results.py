"""What planning a week wants from the results store, which may not be there yet."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.planning.choosing.class_memory import History
from itembank.planning.department.class_scheme import LessonKey

if TYPE_CHECKING:
    from sqlalchemy import Connection


Kinds = dict[LessonKey, frozenset[str]]


@dataclass
class Recorded:
    """The results of one class of the department in a folder."""

    home: Path
    class_name: str

    @contextmanager
    def _reading(self) -> Iterator[Connection | None]:
        from itembank.records.store.store_place import store_place

        place = store_place(self.home)
        if not place.may_be_there():
            yield None
            return
        from itembank.records.store.store import open_store

        with open_store(place) as store, store.reading() as connection:
            yield connection

    def history(self, before: datetime.date) -> History:
        """Return what is on record of the class from before a day."""
        with self._reading() as connection:
            if connection is None:
                return History()
            from itembank.records.results.results import class_history

            return class_history(connection, self.class_name, before)

    def last_used(self, first: datetime.date) -> dict[str, datetime.date]:
        """Return the questions that starters asked from a day on, with the last day of each."""
        with self._reading() as connection:
            if connection is None:
                return {}
            from itembank.records.results.results import used_addresses

            return used_addresses(connection, self.class_name, first)

    def addresses(self, first: datetime.date) -> frozenset[str]:
        """Return the questions that starters asked from a day on, as far as they are recorded."""
        return frozenset(self.last_used(first))

    @cached_property
    def _happened(self) -> tuple[dict[LessonKey, str], dict[LessonKey, frozenset[str]], Kinds]:
        with self._reading() as connection:
            if connection is None:
                return {}, {}, {}
            from itembank.records.results import happened

            return (
                happened.cancelled_lessons(connection, self.class_name),
                happened.asked_in_lessons(connection, self.class_name),
                happened.kinds_told(connection, self.class_name),
            )

    @property
    def cancelled(self) -> Mapping[LessonKey, str]:
        """Return the lessons that fell out, or will, and why."""
        return self._happened[0]

    def fell_out(self, date: datetime.date, period: str) -> str:
        """Return why a lesson fell out, or will; empty where it took place, as far as is known."""
        return self.cancelled.get((date, period)) or self.cancelled.get((date, "")) or ""

    def asked(self, date: datetime.date, period: str) -> frozenset[str] | None:
        """Return what a lesson asked, by address, or None where that is not known."""
        there = self._happened[1]
        return there.get((date, period), there.get((date, "")))

    def has(self, date: datetime.date, period: str) -> bool:
        """Tell whether anything counts that was recorded of a lesson.

        The only lesson of a day has no period there.
        """
        return bool(self.kinds(date, period))

    def kinds(self, date: datetime.date, period: str) -> frozenset[str]:
        """Return of which kinds the entries are that count of a lesson; none where there is none.

        The names are those of `records.entries.entries.KINDS`.
        """
        told = self._happened[2]
        return told.get((date, period), told.get((date, ""), frozenset()))
