"""The states of a bank's items, worked out with a progress bar, and chosen by what was asked."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from itembank.files.faults import join_words
from itembank.text.in_words import counted

if TYPE_CHECKING:
    from collections.abc import Sequence

    from itembank.bank.model.bank import Bank, Entry
    from itembank.bank.proof.state import EntryState


def states_of(bank: Bank, entries: Sequence[Entry]) -> list[EntryState]:
    """Return the state of each entry, its key proved anew; a bar shows how far that is."""
    from itembank.bank.proof.prove import entry_state, prove_entries
    from itembank.bank.proof.signoff import by_item, read_signoffs
    from itembank.cli.words.bar import Bar

    signed = by_item(read_signoffs(bank.folder))
    bar = Bar()
    try:
        outcomes = prove_entries(entries, bar)
    finally:
        bar.clear()
    return [
        entry_state(entry, outcome, signed.get(entry.item.id, ()))
        for entry, outcome in zip(entries, outcomes, strict=True)
    ]


def totals_of(states: Sequence[EntryState]) -> str:
    """Return how many items are in which state, as :func:`totals` says it."""
    used = [state for state in states if state.retired is None]
    proofs = Counter(one.outcome.state.value for one in used)
    signs = Counter(one.sign.state.value for one in used)
    return totals(len(states), proofs, signs, len(states) - len(used))


def totals(questions: int, proofs: Counter[str], signs: Counter[str], retired: int) -> str:
    """Return how many items are in which state, in a sentence; retired ones are that alone."""
    parts = [f"{proofs[name]:,} {name}" for name in ("proved", "disproved") if proofs[name]]
    if needs := proofs["needs a person"]:
        parts.append(f"{counted(needs, 'needs', 'need')} a person")
    if retired:
        parts.append(f"{retired:,} retired")
    signed = [f"{signs[name]:,} {name}" for name in ("signed", "stale") if signs[name]]
    if questions > retired and not signed:
        signed = ["signed by nobody yet"]
    return (
        "; ".join(
            [
                f"{counted(questions, 'question')}: {join_words(parts)}",
                *filter(None, [join_words(signed)]),
            ]
        )
        + "."
    )
