"""Which questions a pack has taken, or is to avoid: each with all that are the same in disguise."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import cache

from itembank.errors import ItembankError
from itembank.items.item import Item
from itembank.items.topics.registry import find_item
from itembank.packs.choosing.candidate import BankCandidate, Candidate, address_of
from itembank.packs.data.source import TopicSources

Same = Callable[[Item], tuple[object, ...]]
"""What is equal for two items that are one question in disguise, wherever they come from."""


class Taken:
    """The questions that were taken so far, and those that are to be avoided, with their twins.

    Two items with equal `twin` are one question in disguise, so taking one takes both. The
    twins of a generator are told apart within their topic alone; where several sources are in
    play, `same` finds the same question in all of them.
    """

    def __init__(self, same: Same | None = None) -> None:
        self.same = same
        self.avoided: set[object] = set()
        """Addresses and twins that are passed over as long as there is anything else."""
        self._used: set[tuple[object, ...]] = set()
        self._marks: dict[str, tuple[object, ...]] = {}

    def avoid(self, addresses: Iterable[str], topics: Iterable[TopicSources]) -> None:
        """From now on pass over the questions at some addresses, and their twins.

        Where a tier has nothing else left, they are asked all the same.
        """
        self.avoided = set()
        names = {topic.id for topic in topics}
        for address in addresses:
            self.avoided.add(address)
            # Made for its twins, which takes its time: only where a topic of this pack could ask
            # one.
            if address.partition("/")[0] in names and address.count("/") == 2:
                item = made_once(address)
                if item is None:
                    continue
                self.avoided.add(item.twin)
                if self.same is not None:
                    self.avoided.add(self._mark(item))

    def passed_over(self, candidate: Candidate) -> bool:
        """Tell whether a question, or its twin, is one of those to avoid."""
        return bool(self.avoided) and (
            address_of(candidate) in self.avoided
            or not self.avoided.isdisjoint(self.twins(candidate))
        )

    def free(self, candidate: Candidate) -> bool:
        """Tell whether neither the item nor its twin was taken."""
        return self._used.isdisjoint(self.twins(candidate))

    def alike(self, item: Candidate, others: list[Candidate]) -> bool:
        """Tell whether an item is the twin of one of `others`."""
        if item.item.twin in [taken.item.twin for taken in others]:
            return True
        return self.same is not None and self._mark(item.item) in [
            self._mark(taken.item) for taken in others
        ]

    def take(self, candidate: Candidate) -> Candidate:
        """Mark an item as used and return it."""
        self._used.add(candidate.item.twin)
        if self.same is not None:
            self._used.add(self._mark(candidate.item))
        return candidate

    def give_back(self, candidate: Candidate) -> None:
        """Let an item that was taken be offered again: it is not asked after all."""
        self._used.discard(candidate.item.twin)
        if self.same is not None:
            self._used.discard(self._mark(candidate.item))

    def twins(self, candidate: Candidate) -> tuple[tuple[object, ...], ...]:
        """Return what is equal for the twins of an item: in its topic, then wherever they are.

        Of a question that a person wrote both are one, and known without reading it.
        """
        if isinstance(candidate, BankCandidate) and candidate.question.mark is not None:
            return (candidate.question.mark,)
        if self.same is None:
            return (candidate.item.twin,)
        return candidate.item.twin, self._mark(candidate.item)

    def _mark(self, item: Item) -> tuple[object, ...]:
        assert self.same is not None
        found = self._marks.get(item.address)
        if found is None:
            found = self._marks[item.address] = self.same(item)
        return found


@cache
def made_once(address: str) -> Item | None:
    """Return the item at an address: the packs of a week avoid the same hundreds of them."""
    try:
        return find_item(address)
    except ItembankError:  # its topic has changed since
        return None
