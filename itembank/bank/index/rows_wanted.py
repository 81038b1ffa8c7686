"""Which rows of an index are asked for: of some items, of those that a table does not have yet."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, TypeVar

if TYPE_CHECKING:
    from itembank.bank.index.opened import KeptBank
    from itembank.bank.index.rows.kept_entry import KeptEntry
    from itembank.processes.work_place import Place

AT_A_TIME = 4_000
"""So many items are read in full at a time, so that a large bank does not fill the memory."""
AT_A_TIME_AFAR = 40_000
"""The same on a cluster: of 4,000 that take 6 ms each, a hundred workers have done their share
in a quarter of a second, and would wait for one another most of the time."""
TOGETHER = 500
"""Values in one query: SQLite takes 999 at least."""
T = TypeVar("T")


def window(place: Place | None) -> int:
    """Return how many items are read in full at a time, by where they are worked on."""
    from itembank.processes.work_place import ThisMachine

    return AT_A_TIME if place is None or isinstance(place, ThisMachine) else AT_A_TIME_AFAR


def in_parts(values: Sequence[T]) -> Iterator[Sequence[T]]:
    """Yield values in lots that fit into one query."""
    for at in range(0, len(values), TOGETHER):
        yield values[at : at + TOGETHER]


def facts_missing(
    bank: KeptBank, table: str, where: str = "", values: Sequence[object] = ()
) -> list[int]:
    """Return the facts for which a condition holds and that a table does not have yet."""
    query = (
        "SELECT DISTINCT place.fact FROM temp.now JOIN place USING (sheet) "
        f"JOIN fact ON fact.id = place.fact LEFT JOIN {table} ON {table}.fact = fact.id "
        f"LEFT JOIN temp.passing ON passing.fact = fact.id "
        f"WHERE {table}.fact IS NULL AND ({where or '1'})"
    )
    if table == "proof":
        query += " AND passing.fact IS NULL"
    return [fact for (fact,) in bank.store.rows(query, values)]


def entries_of(bank: KeptBank, facts: Sequence[int]) -> list[KeptEntry]:
    """Return the items that are some facts, in the order of the files."""
    found = []
    for part in in_parts(facts):
        marks = ", ".join("?" * len(part))
        found += list(bank.chosen(f"fact.id IN ({marks})", part))
    return found
