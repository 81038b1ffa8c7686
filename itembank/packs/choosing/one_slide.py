"""Chooses a starter again that turned out too full for one slide, or else for two.

How full a slide is only whoever draws it can say, so that is handed in. Drawing takes a while, and
only what may be too long is drawn.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from typing import TypeAlias

from itembank.items.item import Tier
from itembank.packs.choosing.candidate import Candidate
from itembank.packs.choosing.item_pool import Pool
from itembank.packs.choosing.question_room import room_of_all
from itembank.packs.choosing.shared_figures import about_one_figure
from itembank.packs.choosing.shorter_ones import FULLEST, Rooms, ShorterOnes, SlideRoom, Swap
from itembank.packs.choosing.too_few import TooFew
from itembank.packs.data.source import TopicSources

ROOMY = 25.0
"""Ems that stood on one slide in all draws that were tried, however they were shared."""
MOST_FITTED = 10
"""With more questions than this two slides are what is wanted."""
MOST_DEALS = 24
"""How often the tiers are dealt to find all ways that they can fall to the topics."""

Tiers: TypeAlias = list[tuple[str, Tier]]
"""The tier of each question and its topic."""


@dataclass(frozen=True)
class Deals:
    """Deals of the tiers to the topics, by their numbers; the first is 0.

    `tiers` tells how they fall without choosing a question; `starter` takes a starter of them from
    the pool.
    """

    tiers: Callable[[int], Tiers]
    starter: Callable[[int], list[Candidate]]


def on_one_slide(
    first: list[Candidate],
    deals: Deals,
    topics: Mapping[str, TopicSources],
    seed: int,
    pool: Pool,
    held: Sequence[Candidate],
    slide: SlideRoom,
) -> list[Candidate]:
    """Return `first` where it fits a slide, else a starter that does, or that fits two.

    First its longest questions make way for shorter ones, without a figure or with a smaller one;
    where that is not enough the tiers are dealt anew, so that another topic has the long ones.
    What is `held` stays. Where slips are wanted it is looked for on one slide and on one side of a
    slip first, then on a slide alone. Where no slide holds any of them, `first` is shortened to
    stand on two, and stays where that fails.
    """
    if len(first) > MOST_FITTED:
        return first
    if slide.slips:
        rooms = Rooms(slide)
        shorter = ShorterOnes(topics, seed, pool, held, rooms)
        if found := _on_one(first, deals, shorter):
            return found
        slide = slide.without_slips()
    if room_of_all(first) <= ROOMY:
        return first
    shorter = ShorterOnes(topics, seed, pool, held, Rooms(slide))
    return _on_one(first, deals, shorter) or _shortened(first, shorter, count=2) or first


def _on_one(first: list[Candidate], deals: Deals, shorter: ShorterOnes) -> list[Candidate] | None:
    """Return a starter that stands on one slide; None, and nothing changed, if none is found."""
    held, pool = shorter.held, shorter.pool
    if found := _shortened(first, shorter, count=1):
        return found
    # Another deal may ask some of the same questions again.
    _give_back(first, held, pool)
    for number in _other_deals(deals, shorter, held):
        try:
            made = deals.starter(number)
        except TooFew:  # a small bank, dealt otherwise
            break
        if found := _shortened(made, shorter, count=1):
            return found
        _give_back(made, held, pool)
    for candidate in first:
        if candidate not in held:
            pool.take(candidate)
    return None


def _other_deals(deals: Deals, shorter: ShorterOnes, held: Sequence[Candidate]) -> list[int]:
    """Return the numbers of the deals that may fit a slide, the one with most room first.

    As the tiers fall to the topics, so long are the shortest questions there are.
    """
    found: list[Tiers] = [sorted(deals.tiers(0))]
    least: list[tuple[float, int]] = []
    standing = sum(shorter.rooms.share(candidate) or 0.0 for candidate in held)
    for number in range(1, MOST_DEALS):
        tiers = sorted(deals.tiers(number))
        # Sorted, so that deals which come to the same are tried once.
        if tiers in found:
            continue
        found.append(tiers)
        share = standing + shorter.least(tiers)
        if share <= FULLEST:
            least.append((share, number))
    return [number for _, number in sorted(least)]


def _give_back(questions: Iterable[Candidate], held: Sequence[Candidate], pool: Pool) -> None:
    for candidate in questions:
        if candidate not in held:
            pool.give_back(candidate)


def _shortened(
    questions: Sequence[Candidate], shorter: ShorterOnes, count: int
) -> list[Candidate] | None:
    """Return a starter like this one on so many slides; None, and nothing changed, if none is.

    As few as will do of its longest questions make way for shorter ones of the same topic and
    tier, about as hard where such are short enough.
    """
    rooms, pool = shorter.rooms, shorter.pool
    if rooms.hold(questions, count):
        return list(questions)
    for gently in (True, False):
        others = shorter.found(questions, gently)
        if count == 1:  # on one slide two questions may share a figure
            others = about_one_figure(others, questions, shorter)
        swapped = partial(_swapped, questions, others)
        if others and rooms.hold(swapped(len(others)), count):
            # The longest come first, and each swap saves room: the fewest that do are found by
            # halving.
            few, enough = 0, len(others)
            while enough - few > 1:
                middle = (few + enough) // 2
                if rooms.hold(swapped(middle), count):
                    enough = middle
                else:
                    few = middle
            for candidate, sibling in others[:enough]:
                pool.give_back(candidate)
                pool.take(sibling)
            return swapped(enough)
    return None


def _swapped(questions: Sequence[Candidate], others: Sequence[Swap], count: int) -> list[Candidate]:
    """Return a starter with the first few of `others` in it."""
    instead = {id(candidate): sibling for candidate, sibling in others[:count]}
    return in_order(instead.get(id(candidate), candidate) for candidate in questions)


def in_order(questions: Iterable[Candidate]) -> list[Candidate]:
    """Return questions as a starter asks them, the easiest first."""
    return sorted(questions, key=lambda candidate: candidate.difficulty)
