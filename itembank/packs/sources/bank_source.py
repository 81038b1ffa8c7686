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

    settled = True
    """Whether it was known to be of use before anybody chose."""

    def __init__(
        self,
        address: str,
        tier: Tier,
        read: Callable[[], Item],
        tell: Callable[[], Source],
        mark: tuple[object, ...] | None = None,
    ) -> None:
        self.address, self.tier, self._read, self._tell = address, tier, read, tell
        self._mark = mark

    @property
    def mark(self) -> tuple[object, ...] | None:
        """What is equal for the same question in disguise, where it is known beforehand."""
        return self._mark

    @property
    def unreadable(self) -> str:
        """Why nobody could use it, as far as reading it tells; empty where it may be used."""
        return ""

    @property
    def known_refusal(self) -> str:
        """Why it may not be used, where its index tells so already; nothing is proved."""
        return ""

    @property
    def refused(self) -> str:
        """Why it may not be used, as far as anybody looked."""
        return ""

    @property
    def tried(self) -> bool:
        """Whether it is known whether it may be used."""
        return True

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
        self._settled: set[Tier] = set()
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

    @cached_property
    def is_settled(self) -> bool:
        """Whether all of its questions were known to be of use before anybody chose."""
        return all(question.settled for question in self.by_address.values())

    def settle(self, tier: Tier) -> bool:
        """Find out of every question of a tier whether it may be used; False where it is known."""
        if self.is_settled or tier in self._settled:
            return False
        from itembank.packs.sources.untried import try_together

        try_together(self.questions.get(tier, ()))
        self._settled.add(tier)
        return True

    def is_open(self, tier: Tier, index: int) -> bool:
        """Tell whether the question at a place may turn out to be of use.

        What is not settled counts as open even where it was tried: how much there seems to be
        must not depend on what somebody proved earlier.
        """
        question = self.questions[tier][index]
        return not question.refused if tier in self._settled else not question.unreadable

    def too_few(self, tier: Tier) -> str:
        """Return the sentences for a tier that is used up: what it holds, and what to do."""
        there_now = self.questions.get(tier, ())
        held = sum(not question.refused for question in there_now)
        single = len(self.banks) == 1
        banks = (
            f"The bank {self.banks[0]} has"
            if single
            else f"The banks {join_words(self.banks)} have"
        )
        there = f"{held} there" if held else "none there"
        found_out = Counter(question.refused for question in there_now if question.refused)
        left = self.left_out.get(tier, Counter()) + found_out
        why = join_words([counted(reason, count) for reason, count in sorted(left.items())])
        out = f"; {sum(left.values())} more cannot be used: {why}" if left else ""
        return " ".join(filter(None, (f"{banks} {there}{out}.", self._advice)))

    def matter(self, tier: Tier) -> str:
        """Return the matter of an error about a tier that is used up."""
        return self._matter
