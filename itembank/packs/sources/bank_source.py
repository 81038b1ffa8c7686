"""The part of a department's banks that is on one topic, as a source of questions."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Mapping, Sequence
from functools import cached_property
from itertools import chain

from itembank.files.faults import join_words
from itembank.items.item import Item, Misconception, Tier
from itembank.items.topics.space import Space
from itembank.packs.data.pack_item import Source
from itembank.packs.sources.sources_in_words import counted


class Question:
    """A question of a bank that may stand in a pack; it is read when somebody looks at it."""

    def __init__(
        self,
        address: str,
        tier: Tier,
        read: Callable[[], Item],
        tell: Callable[[], Source],
        mark: tuple[object, ...] | None = None,
    ) -> None:
        self.address, self.tier, self._read, self._tell = address, tier, read, tell
        self.mark = mark
        """What is equal for the same question in disguise, where it is known beforehand."""

    @cached_property
    def item(self) -> Item:
        """The question itself, read from its text here and now."""
        return self._read()

    @cached_property
    def source(self) -> Source:
        """Where it comes from, and who signed it."""
        return self._tell()


class BankSource:
    """The questions of some banks on one topic that may be used.

    They are all different in every way, so that a tier has one axis alone: its place. What a
    bank's questions fail to show is not known, so no misconception is promised.
    """

    misconceptions: tuple[Misconception, ...] = ()

    def __init__(
        self,
        id: str,
        title: str,
        banks: Sequence[str],
        questions: Iterable[Question],
        left_out: Mapping[Tier, Counter[str]],
        advice: str = "",
        matter: str = "",
    ) -> None:
        self._advice, self._matter = advice, matter
        self.id, self.title, self.banks, self.left_out = id, title, banks, left_out
        self.questions: dict[Tier, list[Question]] = {}
        for question in questions:
            self.questions.setdefault(question.tier, []).append(question)
        self.spaces = {
            tier: Space(None, place=range(len(held))) for tier, held in self.questions.items()
        }
        self.by_address = {
            question.address: question for question in chain(*self.questions.values())
        }

    def item(self, tier: Tier, index: int) -> Item:
        """Return the question at a place of a tier."""
        return self.questions[tier][index].item

    def place(self, address: str) -> tuple[Tier, int] | None:
        """Return the tier and the place of the question at an address; None where it has none."""
        question = self.by_address.get(address)
        return (
            None
            if question is None
            else (question.tier, self.questions[question.tier].index(question))
        )

    def too_few(self, tier: Tier) -> str:
        """Return the sentences for a tier that is used up: what it holds, and what to do."""
        held = len(self.questions.get(tier, ()))
        single = len(self.banks) == 1
        banks = (
            f"The bank {self.banks[0]} has"
            if single
            else f"The banks {join_words(self.banks)} have"
        )
        there = f"{held} there" if held else "none there"
        left = self.left_out.get(tier, Counter())
        why = join_words([counted(reason, count) for reason, count in sorted(left.items())])
        out = f"; {sum(left.values())} more cannot be used: {why}" if left else ""
        return " ".join(filter(None, (f"{banks} {there}{out}.", self._advice)))

    def matter(self, tier: Tier) -> str:
        """Return the matter of an error about a tier that is used up."""
        return self._matter
