"""Which lessons a report is about."""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from typing import Any

from sqlalchemy import Select, select

from itembank.records.tables import active, entry, lesson, of_class


@dataclass(frozen=True, slots=True)
class Scope:
    """Which lessons a report is about; None stands for no limit."""

    class_name: str | None = None
    first: datetime.date | None = None
    last: datetime.date | None = None

    def limit(self, query: Select[Any]) -> Select[Any]:
        """Return the query, which reads the table of lessons, limited to these lessons."""
        if self.class_name is not None:
            query = query.where(of_class(self.class_name))
        if self.first is not None:
            query = query.where(lesson.c.date >= self.first)
        if self.last is not None:
            query = query.where(lesson.c.date <= self.last)
        return query

    def entries(self) -> Select[Any]:
        """Return the entries with answers by seat of these lessons.

        As the set to look in, they let a database read only the marks that are wanted.
        """
        query = select(entry.c.id).join(lesson, lesson.c.id == entry.c.lesson_id)
        return self.limit(query.where(active(), entry.c.kind == "answers"))
