"""Offers items from the spaces of topics, never the same question twice in one pack."""

from __future__ import annotations

import random
from collections.abc import Callable, Iterable, Iterator
from heapq import heappop, heappush
from itertools import chain, count, islice

from itembank.items.item import Item, Tier
from itembank.packs.choosing.candidate import BankCandidate, Candidate
from itembank.packs.choosing.chance import shuffled
from itembank.packs.choosing.taken_questions import Same, Taken
from itembank.packs.choosing.too_few import too_small
from itembank.packs.data.source import (
    Source,
    TopicSources,
    is_short,
    size,
    sources,
)
from itembank.packs.sources.bank_source import BankSource

LOOK_AHEAD = 24
"""How many points of a space are looked at where one is to be picked by a wish."""

TOO_DEAR = 50.0
"""The cost at which the next source is tried, however much the first is preferred."""

Fits = Callable[[Source, Tier, int], bool]
"""Whether what stands at an index of a source's tier is to be offered, before it is made."""


class Pool(Taken):
    """The items of some topics, and which of them a pack has not used yet.

    A bank may have questions of which nobody knows yet whether they may be used. Where it is to
    be found out as they are taken, the pool `proves`; else whoever made it sees to that.
    """

    def __init__(self, same: Same | None = None, *, proves: bool = False) -> None:
        super().__init__(same)
        self._proves = proves
        self._order = count()
        self.trusted: list[BankCandidate] = []
        """Questions that were taken for usable, though nobody knows yet whether they are."""
        self._made: dict[tuple[int, Tier, int], Candidate] = {}

    def at(self, source: Source, tier: Tier, index: int) -> Candidate:
        """Return the item at an index, made once however often it is looked at."""
        place = (id(source), tier, index)  # what is made holds the source, so the id stays its own
        found = self._made.get(place)
        if found is None:
            values = source.spaces[tier][index]
            if isinstance(source, BankSource):
                found = BankCandidate(source.questions[tier][index], index, values, source)
            else:
                found = Candidate(source.item(tier, index), index, values, source)
            self._made[place] = found
        return found

    def keep(self, source: Source, tier: Tier, index: int, item: Item) -> Candidate:
        """Return the item at an index, which was made elsewhere, unless it was made here too."""
        place = (id(source), tier, index)
        if place not in self._made:
            self._made[place] = Candidate(item, index, source.spaces[tier][index], source)
        return self._made[place]

    def made(self, source: Source, tier: Tier) -> dict[int, Candidate]:
        """Return what was made of a tier of a source, by its index."""
        return {
            index: candidate
            for (of, at, index), candidate in self._made.items()
            if of == id(source) and at is tier
        }

    def first(self, topic: TopicSources, tier: Tier) -> Candidate | None:
        """Return the first item of a tier, used or not, or None where there is none."""
        everything = (
            self.at(source, tier, index)
            for source in sources(topic)
            for index in range(size(source, tier))
        )
        return next((candidate for candidate in everything if candidate.can_be_looked_at), None)

    def room(
        self, topic: TopicSources, tier: Tier, rested: bool = False, most: int | None = None
    ) -> int:
        """Return how many different questions of a tier are left; `most` of them are counted.

        They are counted where people wrote them all; where some are generated there are as
        good as always enough, and every point of the space counts. With `rested`, those to be
        avoided are as good as used.
        """
        if not is_short(topic):
            return sum(size(source, tier) for source in sources(topic))
        found: set[object] = set()
        for source in sources(topic):
            for index in range(size(source, tier)):
                if most is not None and len(found) >= most:
                    return most
                if isinstance(source, BankSource) and not source.is_open(tier, index):
                    continue
                candidate = self.at(source, tier, index)
                if self.free(candidate) and not (rested and self.passed_over(candidate)):
                    # The last is what is alike whatever made it; the first holds within a topic
                    # alone.
                    found.add(self.twins(candidate)[-1])
        return len(found)

    def offers(
        self, source: Source, tier: Tier, rng: random.Random, fits: Fits | None = None
    ) -> Iterator[Candidate]:
        """Yield the free items of a tier in random order, until there are no more."""
        for index in shuffled(size(source, tier), rng):
            if fits is not None and not fits(source, tier, index):
                continue
            candidate = self.at(source, tier, index)
            if candidate.can_be_looked_at and self.free(candidate):
                yield candidate

    def refuses(self, candidate: Candidate, next_ones: Iterable[Candidate] = ()) -> bool:
        """Tell whether a question may not be used, as far as is known or is to be found out.

        Where it has to be proved, the `next_ones` are proved with it; where it is not, it is noted
        as one that was trusted. No choice may look in any other way at whether it may be used.
        """
        if not isinstance(candidate, BankCandidate) or candidate.question.settled:
            return False
        refused = bool(candidate.question.known_refusal)
        if candidate.question.tried:
            return refused
        if self._proves:
            _try((candidate, *next_ones))
            return bool(candidate.question.refused)
        self.trusted.append(candidate)
        return False

    def pick(
        self,
        topic: TopicSources,
        tier: Tier,
        rng: random.Random,
        cost: Callable[[Candidate], float] = lambda candidate: 0,
        look_ahead: int = LOOK_AHEAD,
        fits: Fits | None = None,
    ) -> Candidate:
        """Take the free item of least cost among the first few offered; none costs below 0.

        Only what `fits` is offered, as long as there is any.

        The preferred source is looked at first; the next one only where nothing is left in it
        that costs less than :data:`TOO_DEAR`. Where the best may not be used, which shows only
        when it is looked into, the next best is taken, and where none may, as many are offered
        once more.

        Raises:
            TooFew: every question of the tier is used; says how many there are.
        """
        ranked: list[tuple[float, int, Candidate]] = []
        best: Candidate | None = None
        for source in sources(topic):
            offered: Iterator[Candidate] = self.offers(source, tier, rng, fits)
            if self.avoided:
                offered = (item for item in offered if not self.passed_over(item))
            refused = ahead = 0
            while True:
                looked = self._rank(offered, cost, look_ahead, ranked)
                best = self._best(ranked)
                if best is not None or not looked:
                    break
                refused += looked
                if self._proves and refused > ahead:
                    # To prove one after another that may not be used would take for ever.
                    some = list(islice(offered, max(look_ahead, refused)))
                    _try(some)
                    offered, ahead = chain(some, offered), ahead + len(some)
            # Else the next source may have one that does better; what this one offered stays
            # ranked.
            if best is not None and ranked[0][0] < TOO_DEAR:
                break
        if best is None and fits is not None:
            return self.pick(topic, tier, rng, cost, look_ahead)
        if best is None and self.avoided:
            # For this one question only: other tiers may still have something else.
            held, self.avoided = self.avoided, set()
            try:
                return self.pick(topic, tier, rng, cost, look_ahead)
            finally:
                self.avoided = held
        if best is None:
            raise too_small(topic, tier, self.same)
        return self.take(best)

    def _rank(
        self,
        offered: Iterator[Candidate],
        cost: Callable[[Candidate], float],
        look_ahead: int,
        ranked: list[tuple[float, int, Candidate]],
    ) -> int:
        """Rank the next of those offered, up to one that costs nothing; return how many."""
        looked = 0
        for candidate in offered:
            price = cost(candidate)
            # Of those that cost the same the first is taken.
            heappush(ranked, (price, next(self._order), candidate))
            looked += 1
            # Nothing costs less than nothing: to look further would only take time.
            if price == 0 or looked >= look_ahead:
                break
        return looked

    def _best(self, ranked: list[tuple[float, int, Candidate]]) -> Candidate | None:
        """Return the best of those that were ranked; what may not be used is taken away."""
        while ranked:
            candidate = ranked[0][-1]
            if not self.refuses(candidate, (ahead for *_, ahead in ranked)):
                return candidate
            heappop(ranked)
        return None


def _try(candidates: Iterable[Candidate]) -> None:
    from itembank.packs.sources.untried import try_together

    try_together(
        candidate.question for candidate in candidates if isinstance(candidate, BankCandidate)
    )
