"""What the words of a bank's items ask and print, read where a command first needs it, and kept."""

from __future__ import annotations

import json
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, NamedTuple

from itembank.bank.index.rows.refresh import Progress
from itembank.bank.index.rows_wanted import entries_of, facts_missing, in_parts, window
from itembank.bank.index.store.index_remark import shown
from itembank.bank.index.store.index_tables import IndexFailed, seal

if TYPE_CHECKING:
    from itembank.bank.index.opened import KeptBank
    from itembank.bank.index.rows.kept_entry import KeptEntry
    from itembank.processes.work_place import Place


class Shown(NamedTuple):
    """What prints of an item, as text; in the prompt mathematics is a list of one line."""

    prompt: list[str | list[str]]
    key: str
    form: str
    marks: int
    steps: list[tuple[str, str]]
    slips: list[tuple[str, str, str]]
    many: bool = False
    """Whether many answers are right, so that the key is an example."""
    picture: dict[str, Any] | None = None
    """The figure's data, and its words, where it has one."""


def shown_of(
    bank: KeptBank, entries: Sequence[KeptEntry], report: Progress | None = None
) -> list[Shown]:
    """Return what prints of each item."""
    found = _asked(bank, entries, report)
    return [Shown(**json.loads(found[entry.kept.fact][0])) for entry in entries]


def years_of(bank: KeptBank, entries: Sequence[KeptEntry]) -> list[int]:
    """Return the first year group that each item suits."""
    found = _asked(bank, entries)
    return [found[entry.kept.fact][1] for entry in entries]


def twins_kept(bank: KeptBank, entries: Sequence[KeptEntry]) -> list[bytes]:
    """Return the mark of each item's twins."""
    found = _asked(bank, entries)
    return [found[entry.kept.fact][2] for entry in entries]


def _asked(
    bank: KeptBank, entries: Sequence[KeptEntry], report: Progress | None = None
) -> dict[int, tuple[str, int, bytes]]:
    owns = {entry.kept.fact: entry.kept.own for entry in entries}
    ask_missing(bank, list(owns), report)
    found = {}
    for part in in_parts(list(owns)):
        marks = ", ".join("?" * len(part))
        query = f"SELECT fact, twin, shown, year, seal FROM question WHERE fact IN ({marks})"
        for fact, twin, text, year, sealed in bank.store.rows(query, part):
            if seal(owns[fact], twin, text, year) != sealed:
                raise IndexFailed("a row is damaged")
            found[fact] = (text, year, twin)
    return found


def ask_missing(
    bank: KeptBank,
    facts: Sequence[int] | None = None,
    report: Progress | None = None,
    place: Place | None = None,
) -> None:
    """Read the words of items that were not read yet: of some facts, or of all of the bank."""
    missing = facts_missing(bank, "question") if facts is None else _not_asked(bank, facts)
    with shown(report, len(missing)) as bar:
        _ask(bank, missing, bar, place)


def _not_asked(bank: KeptBank, facts: Sequence[int]) -> list[int]:
    known: set[int] = set()
    for part in in_parts(facts):
        marks = ", ".join("?" * len(part))
        query = f"SELECT fact FROM question WHERE fact IN ({marks})"
        known.update(fact for (fact,) in bank.store.rows(query, part))
    return [fact for fact in facts if fact not in known]


def _ask(
    bank: KeptBank, missing: Sequence[int], report: Progress | None, place: Place | None
) -> None:
    if not missing:
        return
    from itembank.bank.index.words_read import ask_all

    done, most = 0, window(place)
    while part := missing[done : done + most]:
        entries = entries_of(bank, part)

        def tell(count: int, _: int, before: int = done) -> None:
            if report:
                report(before + count, len(missing))

        work = [
            (entry.kept.fact, entry.kept.own, entry.topic, entry.kept.record) for entry in entries
        ]
        rows = ask_all(work, tell, place)
        bank.store.write(
            lambda db, rows=rows: db.executemany(  # type: ignore[misc]
                "INSERT OR REPLACE INTO question VALUES (?, ?, ?, ?, ?)", rows
            )
        )
        done += len(part)
