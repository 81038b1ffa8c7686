"""The states of a bank's items, worked out with a progress bar, and chosen by what was asked."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from itembank.cli.bank.item_text import count
from itembank.errors import ItembankError
from itembank.files.faults import join_words, nearest

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from itembank.bank.model.bank import Bank, Entry
    from itembank.bank.proof.state import EntryState

STATES = ("proved", "disproved", "needs-a-person", "unsigned", "signed", "stale", "retired")
"""What an item can be asked to be; a retired one is that alone."""


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


def is_in(state: EntryState, wanted: str) -> bool:
    """Tell whether an item is in one of :data:`STATES`."""
    if state.retired is not None or wanted == "retired":
        return state.retired is not None and wanted == "retired"
    proof = state.outcome.state.value.replace(" ", "-")
    return wanted in (proof, state.sign.state.value)


def known_states(typed: Iterable[str]) -> list[str]:
    """Return the states that were typed, in any case, with spaces or hyphens.

    Raises:
        ItembankError: one of them is no state.
    """
    found = []
    for word in typed:
        state = word.strip().lower().replace(" ", "-")
        if state not in STATES:
            near = nearest(state, STATES, 1)
            advice = f"Did you mean {near[0]}?" if near else f"It is {join_words(STATES, 'or')}."
            raise ItembankError(f"There is no state ‘{word}’. {advice}")
        found.append(state)
    return found


def totals(states: Sequence[EntryState]) -> str:
    """Return how many items are in which state, in a sentence."""
    used = [one for one in states if one.retired is None]
    proofs = Counter(one.outcome.state.value for one in used)
    signs = Counter(one.sign.state.value for one in used)
    parts = [f"{proofs[name]:,} {name}" for name in ("proved", "disproved") if proofs[name]]
    if needs := proofs["needs a person"]:
        parts.append(f"{needs:,} {'needs' if needs == 1 else 'need'} a person")
    if retired := len(states) - len(used):
        parts.append(f"{retired:,} retired")
    signed = [f"{signs[name]:,} {name}" for name in ("signed", "stale") if signs[name]]
    if used and not signed:
        signed = ["signed by nobody yet"]
    return (
        "; ".join(
            [
                f"{count(len(states), 'question')}: {join_words(parts)}",
                *filter(None, [join_words(signed)]),
            ]
        )
        + "."
    )
