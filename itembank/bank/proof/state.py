"""What is known about every item of a bank: whether its key is proved, and who signed it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from itembank.bank.model.signed import Retirement
from itembank.bank.proof.signoff import Signing, SignState
from itembank.data_class import dataclass
from itembank.proof.outcome import Outcome, State
from itembank.text.in_words import day_month_year

if TYPE_CHECKING:
    from itembank.bank.model.bank import Entry


@dataclass(frozen=True, slots=True)
class EntryState:
    """The state of one item: `entry` is None for a generated item that the bank holds."""

    address: str
    topic: str
    entry: Entry | None
    outcome: Outcome
    sign: SignState
    retired: Retirement | None = None

    @property
    def proved(self) -> bool:
        """Whether both roads agree on the key. A sign-off does not make an item proved."""
        return self.outcome.state is State.PROVED

    @property
    def signed(self) -> bool:
        """Whether a sign-off stands for what the item says now."""
        return self.sign.state is Signing.SIGNED

    def usable(self, signed_only: bool = False) -> bool:
        """Whether a pack may use the item: proved, not retired, and signed where that is asked."""
        return self.why_not(signed_only) == ""

    def why_not(self, signed_only: bool = False) -> str:
        """Return why a pack may not use the item, or ``""``."""
        if self.retired is not None:
            return self.retired_says
        if not self.proved:
            return self.outcome_says
        if signed_only and not self.signed:
            return self.sign.says
        return ""

    @property
    def outcome_says(self) -> str:
        """Return what the proof came to: ``proved``, or the state and why."""
        state, says = self.outcome.state.value, self.outcome.says
        return f"{state}: {says}" if says and not self.proved else state

    @property
    def retired_says(self) -> str:
        """Return since when and why the item is retired, or ``""``."""
        if self.retired is None:
            return ""
        day, why = self.retired
        return (
            f"retired on {day_month_year(day)}: {why}"
            if why
            else f"retired on {day_month_year(day)}"
        )

    @property
    def word(self) -> str:
        """Return the state in a word or two, for a table: ``signed, not proved``."""
        if self.retired is not None:
            return "retired"
        if self.outcome.state is State.DISPROVED:
            return "disproved"
        if self.sign.state is Signing.UNSIGNED:
            return self.outcome.state.value
        if self.proved:
            return f"proved, {self.sign.state.value}"
        return "signed, not proved" if self.signed else "needs a person, stale"

    @property
    def says(self) -> str:
        """Return everything known, for the notes: proof, sign-off and retirement."""
        parts = [self.retired_says, self.outcome_says]
        if self.entry is not None:
            parts.append(self.sign.says)
        return "; ".join(filter(None, parts))
