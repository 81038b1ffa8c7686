"""The twins of a bank's items: questions that ask the same in disguise, found by their marks."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, NamedTuple

from itembank.bank.index.could_be_twins import could_be_twins, note_sought
from itembank.bank.index.kept_words import ask_missing
from itembank.bank.index.rows.refresh import Progress

if TYPE_CHECKING:
    from itembank.bank.index.opened import KeptBank
    from itembank.bank.index.rows.kept_entry import KeptEntry
    from itembank.processes.work_place import Place


class Twins(NamedTuple):
    """The addresses of the items that ask the same as one in disguise, sorted."""

    known: list[str]
    unread: int
    """How many more could be, and were not read."""


def twins_of(
    bank: KeptBank,
    entries: Sequence[KeptEntry],
    report: Progress | None = None,
    most: int | None = None,
) -> list[Twins]:
    """Return the twins of each item.

    Generated items that the bank names are among them. Only the words of items that could be
    twins are read (:mod:`.could_be_twins`): of more than `most` of them those that are most
    likely to be, and when the same is asked again none.
    """
    read: list[int] = []
    unread = []
    for could, again in [could_be_twins(bank, entry) for entry in entries]:
        few = most is None or len(could) <= most
        now = could if few else [] if again else could[:most]
        read += now
        unread.append(len(could) - len(now))
    facts = dict.fromkeys([*(entry.kept.fact for entry in entries), *read])
    ask_missing(bank, list(facts), report)
    pairs = list(zip(entries, unread, strict=True))
    note_sought(bank, [entry for entry, left in pairs if not left])
    note_sought(bank, [entry for entry, left in pairs if left], all_read=False)
    made = made_twins(bank)
    found = []
    query = (
        "SELECT place.id FROM question JOIN place ON place.fact = question.fact "
        "JOIN temp.now USING (sheet) "
        "WHERE question.twin = (SELECT twin FROM question WHERE fact = ?)"
    )
    for entry, left in pairs:
        others = [f"{bank.name}:{id}" for (id,) in bank.store.rows(query, [entry.kept.fact])]
        ((twin,),) = bank.store.rows("SELECT twin FROM question WHERE fact = ?", [entry.kept.fact])
        others += made.get(twin, ())
        found.append(Twins(sorted({*others} - {entry.address}), left))
    return found


def made_twins(bank: KeptBank) -> dict[bytes, list[str]]:
    """Return the addresses of the generated items that a bank names, by the mark of their twins."""
    named = list(dict.fromkeys(made for topic in bank.kept_topics for made in topic.made()))
    found: dict[bytes, list[str]] = {}
    if named:
        from itembank.bank.index.words_read import made_mark

        for address in named:
            found.setdefault(made_mark(address), []).append(address)
    return found


def twin_groups(
    *banks: KeptBank, report: Progress | None = None, place: Place | None = None
) -> list[tuple[str, ...]]:
    """Return the twins in and across banks, each group sorted, the groups by their first items.

    Each bank is asked once: no item is compared with any other.
    """
    names: dict[bytes, list[str]] = {}
    written = set()
    for bank in banks:
        ask_missing(bank, None, report, place)
        query = (
            "SELECT question.twin, place.id FROM temp.now JOIN place USING (sheet) "
            "JOIN question ON question.fact = place.fact ORDER BY now.at, place.at"
        )
        for twin, id in bank.store.each(query):
            names.setdefault(twin, []).append(f"{bank.name}:{id}")
            written.add(twin)
    for bank in banks:
        for twin, addresses in made_twins(bank).items():
            names.setdefault(twin, []).extend(addresses)
    groups = (sorted(set(group)) for twin, group in names.items() if twin in written)
    return [tuple(group) for group in groups if len(group) > 1]
