"""Reads the words of many items, on several processes where there are many."""

from __future__ import annotations

from collections.abc import Sequence

from itembank.bank.index.rows.question_rows import QuestionRow, question_of_record
from itembank.bank.index.store.index_remark import FEW_ITEMS
from itembank.bank.index.store.index_tables import seal
from itembank.bank.question.canonical import canonical
from itembank.bank.question.twins import twin_mark
from itembank.items.topics.registry import find_item, topic_ids
from itembank.processes.work_place import Place, Progress, ThisMachine, all_of

Work = tuple[int, bytes, str, str]
"""The number of a fact, the hash that names it, its topic and the item as JSON."""
Row = tuple[int, bytes, str, int, bytes]


def ask_all(
    work: Sequence[Work], report: Progress | None = None, place: Place | None = None
) -> list[Row]:
    """Return what the words of each item ask, as rows of an index; by default on this machine."""
    if len(work) > FEW_ITEMS:
        topic_ids()  # loaded once, here, so that a copy of this process has it already
    pieces = [(topic, record) for _, _, topic, record in work]
    found = all_of(place or ThisMachine(), ask_one, pieces, report, few=FEW_ITEMS)
    return [
        (fact, *row, seal(own, *row)) for (fact, own, _, _), row in zip(work, found, strict=True)
    ]


def ask_one(piece: tuple[str, str]) -> QuestionRow:
    """Return what the words of an item ask, given its topic and the item as JSON."""
    return question_of_record(*piece)


def made_mark(address: str) -> bytes:
    """Return the mark of the twins of a generated item."""
    item = find_item(address)
    return twin_mark(canonical(item.ask, item.form))
