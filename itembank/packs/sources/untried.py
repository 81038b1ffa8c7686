"""Questions of a large topic: read and proved as a pack comes to need them, never all of them.

A pack takes some dozens of the thousands of questions that a bank may have on a topic. Which
ones it takes must not depend on what an index happens to know already, or the same pack would be
another one tomorrow. So chance orders all of them, usable or not, and only those that were taken
are proved, all together; where one cannot be used, everything is chosen once more without it
(:mod:`itembank.packs.choosing.chosen_and_proved`).
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from functools import cached_property
from typing import TYPE_CHECKING, TypeVar

from itembank.bank.index.item_standing import outcomes, outcomes_kept
from itembank.bank.index.kept_signoffs import sign_states
from itembank.bank.question.as_item import as_item
from itembank.bank.question.twins import twin_mark
from itembank.bank.question.year import year_of
from itembank.items.item import Tier
from itembank.notation.tree import NotationError
from itembank.packs.sources.bank_source import Question
from itembank.packs.sources.told_of_bank import bank_source
from itembank.packs.sources.within_year import BEYOND
from itembank.processes.lost import Results
from itembank.processes.work_place import ThisMachine
from itembank.proof.outcome import Outcome, State

if TYPE_CHECKING:
    from itembank.bank.index.opened import KeptBank
    from itembank.bank.index.rows.kept_entry import KeptEntry
    from itembank.bank.proof.signoff import SignState
    from itembank.items.item import Item
    from itembank.packs.data.pack_item import Source


P = TypeVar("P")
R = TypeVar("R")


class UntriedQuestion(Question):
    """A question of which nothing is known yet but where it stands and its tier.

    Args:
        bank: its bank.
        id: its id in the bank.
        tier: its tier.
        year: the class's year, where no question beyond it is to be asked.
        sign: who signed it, where that is known already.
    """

    settled = False

    def __init__(
        self,
        bank: KeptBank,
        id: str,
        tier: Tier,
        year: int | None = None,
        sign: SignState | None = None,
    ) -> None:
        self.bank, self._id, self._year, self._sign = bank, id, year, sign
        self.outcome: Outcome | None = None
        """What both roads make of it, as far as that was asked for."""
        super().__init__(f"{bank.name}:{id}", tier, self._as_item, self._told)

    @cached_property
    def entry(self) -> KeptEntry:
        """The question as its bank has it."""
        return self.bank.find(self._id)

    @cached_property
    def unreadable(self) -> str:
        """Why nobody could use it, as far as reading it tells; empty where it may be used."""
        try:
            item = self.item
        except NotationError:
            return State.NEEDS_PERSON.value
        beyond = self._year is not None and self._year < year_of(item, self.entry.item)
        return BEYOND if beyond else ""

    @cached_property
    def mark(self) -> tuple[object, ...]:
        """What is equal for the same question in disguise."""
        return ("question", twin_mark(self.item.twin))

    @property
    def known_refusal(self) -> str:
        """Why it may not be used, where its index tells so already; nothing is proved."""
        if not self.unreadable and self.outcome is None:
            self.outcome = outcomes_kept(self.bank, [self.entry]).get(self.entry.kept.fact)
        return self.refused

    @property
    def refused(self) -> str:
        """Why it may not be used, as far as anybody looked."""
        # Only where it was read already: to tell what is known must read nothing.
        if self.__dict__.get("unreadable"):
            return self.unreadable
        if self.outcome is None or self.outcome.state is State.PROVED:
            return ""
        return self.outcome.state.value

    @property
    def tried(self) -> bool:
        """Whether it is known whether it may be used."""
        return bool(self.refused) or self.outcome is not None

    def _as_item(self) -> Item:
        return as_item(self.entry)

    def _told(self) -> Source:
        sign = self._sign or sign_states(self.bank, [self.entry])[0]
        return bank_source(self.bank, self.entry, sign)


class _Apart(ThisMachine):
    """Does work on this machine, but never in this process.

    A proof without end would hold up a pack; in another process it is cut off.
    """

    def each(
        self,
        how: Callable[[P], R],
        pieces: Sequence[P],
        *,
        longest: float | None = None,
        few: int = 1,
        loads: Sequence[str] = (),
    ) -> Results[R]:
        # With few pieces it would do them here, where nothing can cut off a proof.
        return super().each(how, pieces, longest=longest, few=0, loads=loads)


def try_together(questions: Iterable[Question]) -> None:
    """Find out whether questions may be used; what is not known yet is proved, and kept."""
    by_bank: dict[KeptBank, list[UntriedQuestion]] = {}
    for question in questions:
        if isinstance(question, UntriedQuestion) and not (question.tried or question.unreadable):
            by_bank.setdefault(question.bank, []).append(question)
    for bank, untried in by_bank.items():
        found = outcomes(bank, [question.entry for question in untried], place=_Apart())
        for question, outcome in zip(untried, found, strict=True):
            question.outcome = outcome
