"""Finds shorter questions for a starter that is too full: of the same topics and tiers.

Many are looked at, and ranked by a rough guess of the room that they take; the few that look the
shortest are set, to know it.
"""

from __future__ import annotations

import random
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import islice
from operator import itemgetter
from typing import Protocol, TypeAlias

from itembank.figures.figure import Figure
from itembank.items.item import Tier
from itembank.packs.choosing.candidate import Candidate
from itembank.packs.choosing.chance import generator
from itembank.packs.choosing.cost import apart, likeness
from itembank.packs.choosing.item_pool import Pool
from itembank.packs.choosing.made_ahead import Shares, make_ahead
from itembank.packs.choosing.question_room import room_of, shared_figure
from itembank.packs.choosing.too_few import TooFew
from itembank.packs.data.source import TopicSources, sources

Swap: TypeAlias = tuple[Candidate, Candidate]
"""A question of a starter, and a shorter one that may stand instead of it."""
SHORTER_LOOK_AHEAD = 64
"""How many unused items are looked at for one that is shorter."""
MEASURED = 8
"""How many of them are set to know how much room they take: the shortest by a rough guess."""
FULLEST = 0.985
"""The share of a slide beyond which no starter that was tried stood on it: columns of whole
questions leave more than that empty."""
SHORTER = 115.0
"""What it costs to take all of a slide, where shorter questions are wanted: a line of half a slide
is a thirtieth of it, and costs as much as a question quite like two others."""
HARDLY = 0.2
"""What all else counts where the shortest are needed."""
UNKNOWN = 40.0
"""What it costs that nobody knows how much room a question takes."""
WORTH_LOOKING = 0.05
"""The share of a slide that a question takes which is as short as any."""
SAVED = 0.008
"""The share of a slide that a shorter question must save: a quarter of a line."""


class SlideRoom(Protocol):
    """What tells how full a slide is; it draws, so it takes a while."""

    def fits(self, questions: Sequence[Candidate], count: int) -> bool:
        """Tell whether questions stand on so many slides."""

    def share(self, candidate: Candidate, shown: bool) -> float | None:
        """Return the least share of a slide that a question takes; None if it cannot be set.

        Its figure counts unless it is `shown` by another question.
        """

    @property
    def slips(self) -> bool:
        """Whether one side of a pupil slip is to hold what one slide holds."""

    def without_slips(self) -> SlideRoom:
        """Return what tells how full slides are, whatever slips hold."""


class Rooms:
    """The room that questions take on a slide, each measured once."""

    def __init__(self, slide: SlideRoom) -> None:
        self._slide = slide
        self.shares: Shares = {}

    def share(self, candidate: Candidate, shown: bool = False) -> float | None:
        """Return the least share of a slide that a question takes; None if it cannot be set."""
        place = (candidate.item.address, shown)
        if place not in self.shares:
            self.shares[place] = self._slide.share(candidate, shown)
        return self.shares[place]

    def of_all(self, candidates: Iterable[Candidate]) -> float:
        """Return the least share of a slide that questions take, a figure that they share once."""
        seen: set[Figure] = set()
        total = 0.0
        for candidate in candidates:
            figure = shared_figure(candidate)
            total += self.share(candidate, figure in seen) or 0.0
            seen |= {figure} if figure else set()
        return total

    def hold(self, questions: Sequence[Candidate], count: int) -> bool:
        """Tell whether so many slides hold some questions; it is drawn if it may be so."""
        return self.of_all(questions) <= FULLEST * count and self._slide.fits(questions, count)


def looked_at(seed: int, topic: str, tier: Tier) -> random.Random:
    """Return what says which questions of a tier are looked at: the same whenever it is asked."""
    return generator(seed, f"shorter/{topic}/{tier}")


@dataclass
class ShorterOnes:
    """The shortest questions of the topics of a starter, each tier looked through once."""

    topics: Mapping[str, TopicSources]
    seed: int
    pool: Pool
    held: Sequence[Candidate]
    rooms: Rooms
    _short: dict[tuple[str, Tier], dict[str, float]] = field(default_factory=dict)

    def may_go(self, questions: Sequence[Candidate]) -> list[Candidate]:
        """Return the questions that are not held."""
        return [candidate for candidate in questions if candidate not in self.held]

    def short(self, topic: str, tier: Tier) -> Mapping[str, float]:
        """Return the shortest questions of a tier: their share of a slide by their addresses."""
        found = self._short.get((topic, tier))
        if found is None:
            found = self._short[topic, tier] = self._looked_through(topic, tier)
        return found

    def _looked_through(self, topic: str, tier: Tier) -> dict[str, float]:
        offered: list[tuple[float, Candidate]] = []
        for source in sources(self.topics[topic]):
            rng = looked_at(self.seed, topic, tier)
            some = islice(self.pool.offers(source, tier, rng), SHORTER_LOOK_AHEAD)
            # Each is guessed at as soon as it is made: what its making drew is still known.
            offered += [(room_of(candidate), candidate) for candidate in some]
        found: dict[str, float] = {}
        for _, candidate in sorted(offered, key=itemgetter(0))[:MEASURED]:
            share = self.rooms.share(candidate)
            if share is not None:
                found[candidate.item.address] = share
        return found

    def _look_ahead(self, going: Sequence[Candidate]) -> None:
        """Make what is to be looked at instead of some questions, on two cores if any is drawn.

        Of those in words alone a hundred are made in the time that a second process takes to begin.
        """
        if all(candidate.figure_size is None for candidate in going):
            return
        places = {(candidate.item.topic, candidate.item.tier) for candidate in going}
        make_ahead(
            sorted(places - self._short.keys()),
            self._looked_through,
            self.topics,
            self.pool,
            self.rooms.shares,
        )

    def least(self, tiers: Iterable[tuple[str, Tier]]) -> float:
        """Return about the least share of a slide that questions of some tiers take."""
        lowest: dict[str, list[float]] = {}
        for topic, tier in tiers:
            shares = self.short(topic, tier).values()
            lowest.setdefault(topic, []).append(min(shares, default=0.0))
        # Two questions of a topic may share a figure, which is most of what the second takes.
        return sum(
            max(shares) + sum(min(share, 2 * WORTH_LOOKING) for share in sorted(shares)[:-1])
            for shares in lowest.values()
        )

    def found(self, questions: Sequence[Candidate], gently: bool) -> list[Swap]:
        """Return a shorter question for each that may go, where there is one, the longest first.

        `gently`: as hard, and as unlike the rest as may be; else the shortest. None of them stays
        taken.
        """
        found: list[Swap] = []
        now = list(questions)
        shares = {id(question): self.rooms.share(question) or 0.0 for question in questions}
        going = [
            question for question in self.may_go(questions) if shares[id(question)] >= WORTH_LOOKING
        ]
        self._look_ahead(going)
        for longest in sorted(going, key=lambda c: shares[id(c)], reverse=True):
            rest = [candidate for candidate in now if candidate is not longest]
            topic, tier = self.topics[longest.item.topic], longest.item.tier
            # The same are looked at in each deal, and made once.
            rng = looked_at(self.seed, topic.id, tier)
            price = self._price(longest, rest, 1.0 if gently else HARDLY)
            try:
                sibling = self.pool.pick(topic, tier, rng, price, SHORTER_LOOK_AHEAD)
            except TooFew:
                continue
            share = self.rooms.share(sibling)
            if share is None or share > shares[id(longest)] - SAVED:
                self.pool.give_back(sibling)
                continue
            found.append((longest, sibling))
            now = [*rest, sibling]
        for _, sibling in found:
            self.pool.give_back(sibling)
        return found

    def _price(
        self, model: Candidate, rest: Sequence[Candidate], wish: float
    ) -> Callable[[Candidate], float]:
        """Return what it costs to ask an item instead of one that is too long."""
        short = self.short(model.item.topic, model.item.tier)

        def price(candidate: Candidate) -> float:
            share = short.get(candidate.item.address)
            if share is None:
                return UNKNOWN + room_of(candidate)
            return SHORTER * share + wish * (apart(candidate, model) + likeness(candidate, rest))

        return price
