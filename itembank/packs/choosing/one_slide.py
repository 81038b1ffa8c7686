"""Chooses a starter again that turned out too full for one slide, or else for two.

How full a slide is only whoever draws it can say, so that is handed in. Drawing takes a while, and
only what may be too long is drawn.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from functools import partial

from itembank.items.item import Tier
from itembank.packs.choosing.candidate import Candidate
from itembank.packs.choosing.cost import apart, likeness
from itembank.packs.choosing.item_pool import Pool, TooFew
from itembank.packs.choosing.question_room import LINE_HIGH, room_of, room_of_all
from itembank.packs.choosing.shared_figures import (
    SHORTER_LOOK_AHEAD,
    Swap,
    about_one_figure,
    looked_at,
)
from itembank.packs.data.source import TopicSources

Fits = Callable[[Sequence[Candidate], int], bool]
"""Tells whether questions stand on so many slides; it draws them, so it takes a while."""
ROOMY = 25.0
"""Ems that stood on one slide in all draws that were tried, however they were shared."""
MOST_FITTED = 10
"""With more questions than this two slides are what is wanted."""
HIGHEST = 44.0
"""Ems beyond which no starter that was tried stood on one slide."""
SHORTER = 4.0
"""What a line of a question costs where shorter ones are wanted."""
MOST_DEALS = 4
"""How often the tiers are dealt before a starter stays as it was."""


def on_one_slide(
    first: list[Candidate],
    deal: Callable[[int], list[Candidate]],
    topics: Mapping[str, TopicSources],
    seed: int,
    pool: Pool,
    held: Sequence[Candidate],
    fits: Fits,
) -> list[Candidate]:
    """Return `first` where it fits a slide, else a starter that does, or that fits two.

    First its longest questions make way for shorter ones, without a figure or with a smaller one;
    where that is not enough the tiers are dealt anew, so that another topic has the long ones:
    `deal` takes another starter from the pool for each number. What is `held` stays. Where no
    slide holds any of them, `first` is shortened to stand on two, and stays where that fails.
    """
    if len(first) > MOST_FITTED or room_of_all(first) <= ROOMY:
        return first
    made = first
    dealt: list[list[tuple[str, Tier]]] = []
    for number in range(MOST_DEALS):
        try:
            made = deal(number) if number else first
        except TooFew:  # a small bank, dealt otherwise
            break
        # As the tiers fall to the topics, so long are the shortest questions there are.
        tiers = sorted((each.item.topic, each.item.tier) for each in made)
        if tiers not in dealt:
            found = _shortened(made, topics, seed, pool, held, fits, 1)
            if found is not None:
                return found
            dealt.append(tiers)
        _give_back(made, held, pool)
    first = [candidate if candidate in held else pool.take(candidate) for candidate in first]
    return _shortened(first, topics, seed, pool, held, fits, 2) or first


def _give_back(questions: Iterable[Candidate], held: Sequence[Candidate], pool: Pool) -> None:
    for candidate in questions:
        if candidate not in held:
            pool.give_back(candidate)


def _shortened(
    questions: Sequence[Candidate],
    topics: Mapping[str, TopicSources],
    seed: int,
    pool: Pool,
    held: Sequence[Candidate],
    fits: Fits,
    count: int,
) -> list[Candidate] | None:
    """Return a starter like this one on so many slides; None, and nothing changed, if none is.

    As few as will do of its longest questions make way for shorter ones of the same topic and
    tier, about as hard. What is `held` stays.
    """

    def has_room(asked: Sequence[Candidate]) -> bool:
        # By the room that they take it is known sooner that one slide cannot hold them.
        return (count > 1 or room_of_all(asked) <= HIGHEST) and fits(asked, count)

    if has_room(questions):
        return list(questions)
    others = _shorter_ones(questions, topics, seed, pool, held)
    if count == 1:  # on one slide two questions may share a figure
        others = about_one_figure(others, questions, _may_go(questions, held), topics, seed, pool)
    swapped = partial(_swapped, questions, others)
    if others and has_room(swapped(len(others))):
        few, enough = 0, len(others)
        while enough - few > 1:
            middle = (few + enough) // 2
            few, enough = (few, middle) if has_room(swapped(middle)) else (middle, enough)
        for candidate, other in others[:enough]:
            pool.give_back(candidate)
            pool.take(other)
        return swapped(enough)
    return None


def _swapped(questions: Sequence[Candidate], others: Sequence[Swap], count: int) -> list[Candidate]:
    """Return a starter with the first few of `others` in it."""
    instead = {id(candidate): other for candidate, other in others[:count]}
    return in_order(instead.get(id(candidate), candidate) for candidate in questions)


def _shorter_ones(
    questions: Sequence[Candidate],
    topics: Mapping[str, TopicSources],
    seed: int,
    pool: Pool,
    held: Sequence[Candidate],
) -> list[Swap]:
    """Return for each question that may go a shorter one, where there is one, the longest first.

    None of them stays taken.
    """
    found: list[Swap] = []
    now = list(questions)
    for longest in sorted(_may_go(questions, held), key=room_of, reverse=True):
        rest = [candidate for candidate in now if candidate is not longest]
        topic, tier = topics[longest.item.topic], longest.item.tier
        # The same are looked at in each deal, and made once.
        rng = looked_at(seed, topic.id, tier)
        try:
            other = pool.pick(topic, tier, rng, _shorter(longest, rest), SHORTER_LOOK_AHEAD)
        except TooFew:
            continue
        if room_of(other) >= room_of(longest):
            pool.give_back(other)
            continue
        found.append((longest, other))
        now = [*rest, other]
    for _, other in found:
        pool.give_back(other)
    return found


def _may_go(questions: Sequence[Candidate], held: Sequence[Candidate]) -> list[Candidate]:
    return [candidate for candidate in questions if candidate not in held]


def _shorter(model: Candidate, rest: Sequence[Candidate]) -> Callable[[Candidate], float]:
    """Return what it costs to ask an item instead of one that is too long."""

    def cost(candidate: Candidate) -> float:
        lines = room_of(candidate) / LINE_HIGH
        return SHORTER * lines + apart(candidate, model) + likeness(candidate, rest)

    return cost


def in_order(questions: Iterable[Candidate]) -> list[Candidate]:
    """Return questions as a starter asks them, the easiest first."""
    return sorted(questions, key=lambda candidate: candidate.difficulty)
