"""What would come of merging a colleague's bank, with each question that differs side by side."""

from __future__ import annotations

import contextlib
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.data_class import dataclass
from itembank.work.bank.looking import InFull, show_questions
from itembank.work.bank.merging import Merged, compare_banks, merge_banks, settle_question

if TYPE_CHECKING:
    from itembank.bank.model.item_changes import Change

MINE, THEIRS, BOTH, LATER = "mine", "theirs", "both", "later"


@dataclass(frozen=True, slots=True)
class Apart:
    """A question that both banks have under one id and do not tell alike."""

    base: str
    mine: InFull
    theirs: InFull
    ids: tuple[str, str]
    """The ids that mine and theirs have once the banks are merged, until it is settled."""
    changes: tuple[Change, ...]
    """In what they differ: `was` is mine."""


@dataclass(frozen=True, slots=True)
class Preview:
    """What would come of a merge; nothing is written."""

    merged: Merged
    name: str
    title: str
    new: tuple[InFull, ...]
    """The questions that would come in, the first few of them in full."""
    more: int
    """How many more would come in."""
    apart: tuple[Apart, ...]
    """What has to be settled, where it is a choice between two."""
    other: tuple[str, ...]
    """What else the banks do not agree on, a sentence each."""
    twins: tuple[tuple[str, ...], ...]
    """Questions that ask the same in disguise, where one of them would come in."""


MOST_SHOWN = 30
"""New questions shown in full; the others are counted."""


def preview_merge(mine: Path, theirs: Path) -> Preview:
    """Return what would come of merging another bank into one.

    Raises:
        ItembankError: they are one bank, or one has faults.
    """
    from itembank.work.bank.bank_facts import bank_facts

    facts = bank_facts(theirs)
    merged = merge_banks(mine, theirs, only_say=True)
    report = merged.report
    differs = {
        difference.id: difference.changes for difference in compare_banks(mine, theirs).different
    }
    now = dict(report.renamed)
    apart, other = [], list(report.clashes)
    for conflict in report.conflicts:
        base, ids = conflict.base, conflict.ids
        own = now.get(base)
        if len(ids) == 2 and own in ids and base in differs:
            pair = show_questions(mine, [base])[0], show_questions(theirs, [base])[0]
            if all(question.state.retired is None for question in pair):
                their = next(id for id in ids if id != own)
                apart.append(Apart(base, *pair, (own, their), differs[base]))
                continue
        other.append(conflict.says)
    held = {id for conflict in report.conflicts for id in conflict.ids}
    new = [id for id in report.only_second if id not in held]
    shown = show_questions(theirs, new[:MOST_SHOWN]) if new else []
    return Preview(
        merged,
        facts.name,
        facts.title,
        tuple(shown),
        len(new) - len(shown),
        tuple(apart),
        tuple(other),
        tuple(group for group in report.twins if set(group) & set(new)),
    )


def merge_and_settle(
    mine: Path, theirs: Path, choices: Mapping[str, str]
) -> tuple[Merged, tuple[str, ...]]:
    """Merge a bank into another and settle what was chosen, by the ids of the questions.

    It is one change of the bank, taken back in one go. Returns what came of it, with the ids
    that are left to be settled later.

    Raises:
        ItembankError: as :func:`preview_merge`; or somebody is saving the bank.
    """
    from itembank.bank.saving.bank_lock import locked
    from itembank.bank.saving.one_change import as_one_change

    with contextlib.ExitStack() as stack:
        stack.enter_context(locked(mine))
        # Looked at again under the lock: the bank may have changed since it was shown.
        before = preview_merge(mine, theirs)
        words = f"{before.title} merged"
        if any(choices.get(difference.base, LATER) != LATER for difference in before.apart):
            words += ", with what was chosen"
        stack.enter_context(as_one_change(mine, words))
        merged = merge_banks(mine, theirs)
        left = []
        for difference in before.apart:
            choice = choices.get(difference.base, LATER)
            if choice == MINE:
                settle_question(mine, difference.ids[0])
            elif choice == THEIRS:
                settle_question(mine, difference.ids[1])
            elif choice == BOTH:
                settle_question(mine, difference.ids[0], keep_all=True)
            else:
                left.append(difference.base)
    return merged, tuple(left)
