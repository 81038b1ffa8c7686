"""Who has signed a bank's questions by now: a pack says only who had when it was made."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from itembank.bank.index.kept_signoffs import sign_states
from itembank.bank.index.opened import KeptBank, with_bank
from itembank.data_class import dataclass
from itembank.errors import ItembankError


@dataclass(frozen=True, slots=True)
class SignedNow:
    """How a question that a pack asks stands in its bank."""

    state: str
    """``signed``, ``stale`` or ``unsigned``."""
    by: tuple[str, ...]
    """The codes of those who signed; of a stale question, who did before it was edited."""
    as_printed: bool
    """Whether the bank still says what the pack does."""


def signed_now(folder: Path, printed: Mapping[str, str]) -> dict[str, SignedNow]:
    """Return how questions of the bank in a folder are signed; those that went are left out.

    `printed` has the questions by their ids, each with the hash that its pack keeps of it.

    Raises:
        ItembankError: the bank has faults.
    """

    def look(bank: KeptBank) -> dict[str, SignedNow]:
        entries = []
        for id in printed:
            try:
                entries.append(bank.find(id))
            except ItembankError:
                continue
        return {
            entry.id: SignedNow(
                sign.state.value,
                tuple(signoff.by for signoff in sign.signoffs),
                entry.kept.content == printed[entry.id],
            )
            for entry, sign in zip(entries, sign_states(bank, entries), strict=True)
        }

    return with_bank(folder, look)
