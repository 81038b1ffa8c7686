"""Which lessons a report is about."""

from __future__ import annotations

import datetime
from typing import Any

from sqlalchemy import Select, and_, select, true

from itembank.data_class import dataclass
from itembank.records.store.store_tables import active, entry, lesson, of_class


@dataclass(frozen=True, slots=True)
class Scope:
    """Which lessons a report is about; None stands for no limit."""

    class_name: str | None = None
    first: datetime.date | None = None
    last: datetime.date | None = None

    def condition(self) -> Any:
        """Return the condition that a lesson is one of these."""
        wanted = []
        if self.class_name is not None:
            wanted.append(of_class(self.class_name))
        if self.first is not None:
            wanted.append(lesson.c.date >= self.first)
        if self.last is not None:
            wanted.append(lesson.c.date <= self.last)
        return and_(true(), *wanted)

    def limit(self, query: Select[Any]) -> Select[Any]:
        """Return the query, which reads the table of lessons, limited to these lessons."""
        return query if self == Scope() else query.where(self.condition())

    def entries(self) -> Select[Any]:
        """Return the entries with answers by seat of these lessons.

        As the set to look in, they let a database read only the marks that are wanted.
        """
        query = select(entry.c.id).join(lesson, lesson.c.id == entry.c.lesson_id)
        return self.limit(query.where(active(), entry.c.kind == "answers"))
