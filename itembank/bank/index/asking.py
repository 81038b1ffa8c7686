"""Reads the words of many items, on several processes where there are many."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from itembank.bank.index.keeping import CHUNK, Processes
from itembank.bank.index.questions import question_of_record, twin_mark
from itembank.bank.index.store import seal
from itembank.bank.question.canonical import canonical
from itembank.items.topics.registry import find_item

if TYPE_CHECKING:
    pass

Work = tuple[int, bytes, str, str]
"""The number of a fact, the hash that names it, its topic and the item as JSON."""
Row = tuple[int, bytes, str, bytes]


def ask_all(work: Sequence[Work], report: Callable[[int, int], None] | None = None) -> list[Row]:
    """Return what the words of each item ask, as rows of an index."""
    found: list[Row] = []
    with Processes(len(work)) as processes:
        parts = (work[at : at + CHUNK] for at in range(0, len(work), CHUNK))
        for _, rows in processes.in_order((None, (_ask_part, part)) for part in parts):
            found += rows
            if report:
                report(len(found), len(work))
    return found


def _ask_part(work: Sequence[Work]) -> list[Row]:
    rows = []
    for fact, own, topic, record in work:
        row = question_of_record(topic, record)
        rows.append((fact, *row, seal(own, *row)))
    return rows


def made_mark(address: str) -> bytes:
    """Return the mark of the twins of a generated item."""
    item = find_item(address)
    return twin_mark(canonical(item.ask, item.form))
