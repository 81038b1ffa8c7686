"""What the tests of the store share: a lesson, and what a store holds."""

import datetime

from sqlalchemy import literal, select

from itembank.records.entries.entries import LessonFacts, QuestionFacts
from itembank.records.store import store_tables as tables

CHANCE = ("made_at", "undone_at", "begun_at", "uid")
DAY = datetime.date(2026, 11, 30)


def facts(date=DAY, class_name="8K", questions=4, period=""):
    asked = tuple(
        QuestionFacts(n, f"ratio.share/core/{n}", "ratio.share", "core", f"Question {n}")
        for n in range(1, questions + 1)
    )
    return LessonFacts(class_name, date, questions, "Sharing in a ratio", period, asked)


def dump(store, times=False):
    """Return all rows of all tables, without what no two stores share: moments and names."""
    found = {}
    with store.reading() as connection:
        for table in tables.metadata.sorted_tables:
            columns = [c for c in table.c if times or c.name not in CHANCE] or [literal(1)]
            rows = [tuple(row) for row in connection.execute(select(*columns).select_from(table))]
            found[table.name] = sorted(rows, key=repr)
    return found


def counting(store):
    """Return what counts: the rows of entries neither replaced nor taken back, without ids."""
    found = []
    with store.reading() as connection:
        live = select(tables.entry).where(
            tables.entry.c.replaced_by.is_(None), tables.entry.c.undone_at.is_(None)
        )
        for entry in connection.execute(live):
            rows = [entry.lesson_id, entry.kind]
            for table in tables.DETAILS:
                kept = connection.execute(select(table).where(table.c.entry_id == entry.id))
                rows.append(sorted(tuple(row)[1:] for row in kept))
            found.append(rows)
    return sorted(found, key=repr)
