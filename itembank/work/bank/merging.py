"""Brings two banks together, compares them, and settles which version of a question is kept."""

from __future__ import annotations

import datetime
import os
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.bank.index.opened import KeptBank, with_bank
from itembank.bank.index.rows.refresh import Progress
from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.work.bank.bank_facts import ids_like

if TYPE_CHECKING:
    from itembank.bank.merge.compare import Comparison
    from itembank.bank.merge.union import Conflict, MergeReport


@dataclass(frozen=True, slots=True)
class Versions:
    """Different questions that a merge found under one id, and where they differ."""

    conflict: Conflict
    says: dict[str, dict[str, str]]
    """Of each field that differs, what each version says, by its id; empty text for nothing.

    Nothing stands here before the merge is written, and where one of them is retired."""


@dataclass(frozen=True, slots=True)
class Merged:
    """What came of a merge, or would come of it."""

    report: MergeReport
    home: Path
    """The folder of the merged bank."""
    written: bool
    apart: tuple[Versions, ...] = ()
    """What is to be settled."""


@dataclass(frozen=True, slots=True)
class Settled:
    """Which version of a question is kept under the plain id, and what became of the others."""

    base: str
    retired: tuple[str, ...] = ()
    renamed: tuple[tuple[str, str], ...] = ()
    """The others that are kept too: the ids they had, and those they have."""


def merge_banks(
    first: Path,
    second: Path,
    into: Path | None = None,
    only_say: bool = False,
    report: Progress | None = None,
) -> Merged:
    """Merge the second bank into the first: everything that is in either, sign-offs among it.

    Parameters
    ----------
    first
        The folder of the bank that is merged into.
    second
        The folder of the other, which stays as it is.
    into
        A new folder for the merged bank; the first then stays as it is too.
    only_say
        Work out what would come of it, and write nothing.
    report
        See :mod:`itembank.work.bank`.

    Raises
    ------
    ItembankError
        The two are one bank, there is something in the new folder, a bank has faults, or the
        merged one cannot be saved.
    """
    from itembank.bank.merge.merge_files import prepare_merge

    if first.resolve() == second.resolve():
        raise ItembankError(f"{first} and {second} are the same bank.")
    if into is not None and os.path.lexists(into):
        raise ItembankError(f"There is something in {into} already. Name a new folder.")
    prepared = prepare_merge(first, second)
    home = into or first
    found = prepared.report
    if only_say:
        return Merged(
            found, home, False, tuple(Versions(conflict, {}) for conflict in found.conflicts)
        )
    if into is not None:
        prepared.save_copy(into)
    else:
        prepared.save()
    apart = with_bank(
        home, lambda bank: tuple(_versions(bank, conflict) for conflict in found.conflicts), report
    )
    return Merged(found, home, True, apart)


def _versions(bank: KeptBank, conflict: Conflict) -> Versions:
    """Return what the versions of a question say where they differ."""
    from itembank.bank.model.content import printed_on
    from itembank.bank.model.item_changes import changes

    marks = ", ".join("?" * len(conflict.ids))
    there = list(bank.chosen(f"place.id IN ({marks})", conflict.ids))
    if len(there) < 2 or any(entry.kept.retired for entry in there):
        return Versions(conflict, {})
    first, *others = there
    was = printed_on(first.item, first.topic)
    says: dict[str, dict[str, str]] = {}
    for entry in others:
        for change in changes(was, printed_on(entry.item, entry.topic)):
            says.setdefault(change.field, {first.id: change.was})[entry.id] = change.now
    return Versions(conflict, says)


def compare_banks(first: Path, second: Path, report: Progress | None = None) -> Comparison:
    """Return how the second bank differs from the first, question by question.

    Raises:
        ItembankError: a bank has faults.
    """
    from itembank.bank.merge.compare import compare

    return with_bank(
        first,
        lambda first: with_bank(second, lambda other: compare(first, other), report),
        report,
    )


def settle_question(
    folder: Path,
    id: str,
    keep_all: bool = False,
    new_ids: Sequence[str] = (),
    on: datetime.date | None = None,
) -> Settled:
    """Keep one of the versions of a question under the plain id; the others are retired.

    Parameters
    ----------
    folder
        The bank's folder.
    id
        The id of the version to keep, as in garden-12.3f2a.
    keep_all
        Whether the others stay in use, each under a new id.
    new_ids
        Their new ids; free ones where they are left out.
    on
        The day from which others are retired; today if it is left out.

    Raises
    ------
    ItembankError
        There is no such question or nothing to settle about it, a new id is taken or is none,
        or the bank has faults or cannot be saved.
    """
    from itembank.bank.merge.merge_files import prepare_keep_all, prepare_settle
    from itembank.bank.saving.bank_lock import locked
    from itembank.today import today

    day = on or today()
    base = id.rpartition(":")[2].partition(".")[0]
    with locked(folder):  # so that nobody takes a new id in between
        if keep_all or new_ids:
            prepared = prepare_keep_all(folder, id, new_ids, day)
            prepared.save()
            return Settled(base, renamed=prepared.report.renamed)
        prepare_settle(folder, id, day).save()
    others = with_bank(folder, lambda bank: tuple(ids_like(bank, f"{base}.")))
    return Settled(base, retired=others)
