"""Chooses the starter: balanced over its topics, easy first, nothing twice.

The rules, all common practice without a source:

* each topic gets as many questions as the plan says; the others share the rest, their counts
  differing by at most one, and the topics named first get the extra ones;
* of N questions, one in eight is challenge, half of what is left (rounded up) is support
  and the rest core, so that most pupils can start and few finish early. Each topic's
  questions run through the tiers, so no topic is all easy or all hard;
* the questions stand in order of difficulty, the easiest first;
* no two are the same question in disguise; near copies, one story told twice, and answers that
  repeat or end alike are avoided wherever the spaces allow
  (:mod:`itembank.items.measures.closeness`);
* where all questions of a topic are a bank's, and it has no more of a tier, a question of the
  nearest tier stands in;
* kinds of question are mixed: a third to a half of the questions are of other kinds than *work it
  out* where the topics have them, each kind once before any comes twice;
* at most one question has a long prompt wherever the topics allow, so that the starter fits
  one slide in type that is read from the back of the room; where it turns out too full all the
  same, the longest make way for shorter ones of their topic and tier, as hard and as unlike
  the rest (:mod:`itembank.packs.choosing.one_slide`);
* a parallel version has, at each number, the same topic and tier, and an unused item that is
  solved by the same steps and is as hard as the first version's, among those looked at that
  have another answer (so that an answer copied from a neighbour is wrong).
"""

from __future__ import annotations

import random
from collections.abc import Callable, Iterable, Sequence
from functools import partial

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.items.item import Tier
from itembank.items.measures.closeness import alike_running
from itembank.items.measures.looks import Look
from itembank.packs.choosing.candidate import Candidate, address_of
from itembank.packs.choosing.chance import generator
from itembank.packs.choosing.cost import (
    OTHER_STRUCTURE,
    THIRD_ALIKE,
    apart,
    crowding,
    likeness,
    mixing,
    sameness,
)
from itembank.packs.choosing.item_pool import Pool
from itembank.packs.choosing.one_slide import Deals, Tiers, in_order, on_one_slide
from itembank.packs.choosing.parameters import kind_at
from itembank.packs.choosing.shorter_ones import SlideRoom
from itembank.packs.choosing.too_few import TooFew
from itembank.packs.data.source import Source, TopicSources, is_short

VERSION_LOOK_AHEAD = 256
"""How many unused items are looked at for one question of a parallel version."""
SAME_ANSWER = 100.0
"""What an answer that a neighbour could copy costs: more than any gap in difficulty."""


@dataclass(frozen=True, slots=True)
class Share:
    """A topic and how many starter questions are on it."""

    topic: TopicSources
    count: int


def share_out(counts: Sequence[int | None], questions: int) -> list[int]:
    """Return the number of questions on each topic; None stands for an even share of the rest.

    >>> share_out([None, None, None], 8), share_out([None, 4, None], 8)
    ([3, 3, 2], [2, 4, 2])
    """
    free = [place for place, count in enumerate(counts) if count is None]
    rest = questions - sum(count or 0 for count in counts)
    even, extra = divmod(rest, len(free)) if free else (0, 0)
    shares = [count or 0 for count in counts]
    for order, place in enumerate(free):
        shares[place] = even + (order < extra)
    return shares


def tier_counts(questions: int) -> dict[Tier, int]:
    """Return how many starter questions are of each tier.

    >>> [tuple(tier_counts(n).values()) for n in (1, 4, 8, 10, 20)]
    [(1, 0, 0), (2, 2, 0), (4, 3, 1), (5, 4, 1), (9, 9, 2)]
    """
    challenge = questions // 8
    core = (questions - challenge) // 2
    return {
        Tier.SUPPORT: questions - challenge - core,
        Tier.CORE: core,
        Tier.CHALLENGE: challenge,
    }


def slots(shares: Sequence[Share], rng: random.Random) -> list[tuple[TopicSources, Tier]]:
    """Return the topic and tier of each question, the easiest tier first.

    The topics take turns, in an order drawn by lot; the tiers are dealt along that row.
    """
    # By lot, or the topic that is named first would always have the easiest question.
    order = rng.sample(shares, len(shares))
    row = [
        share.topic
        for turn in range(max((share.count for share in order), default=0))
        for share in order
        if turn < share.count
    ]
    tiers = [tier for tier, count in tier_counts(len(row)).items() for _ in range(count)]
    return list(zip(row, tiers, strict=True))


def _open(
    row: list[tuple[TopicSources, Tier]], held: Sequence[Candidate]
) -> list[tuple[TopicSources, Tier]]:
    """Return the places of a row that held questions leave open, of their own tier if it can be."""
    rest = list(row)
    for candidate in held:
        item = candidate.item
        there = [place for place, (topic, _) in enumerate(rest) if topic.id == item.topic]
        if not there:
            raise ItembankError(
                f"{item.address} is to be asked, but the starter has no question left on "
                f"{item.topic}. Ask more questions on it, or fewer by address."
            )
        same = [place for place in there if rest[place][1] is item.tier]
        # Of its own tier, or what is held would take the starter off its mix of tiers.
        del rest[(same or there)[0]]
    return rest


def nearest_tier(topic: TopicSources, tier: Tier, pool: Pool) -> Tier:
    """Return the tier, or where the banks have no more of it the nearest one, the easier first.

    A tier whose questions were all used of late comes after one that has others.
    """
    if not is_short(topic):
        return tier
    order = list(Tier)
    near = sorted(order, key=lambda level: abs(order.index(level) - order.index(tier)))
    rested = (level for level in near if pool.room(topic, level, rested=True, most=1))
    left = (level for level in near if pool.room(topic, level, most=1))
    return next(rested, next(left, tier))


def choose_starter(
    shares: Sequence[Share],
    versions: int,
    seed: int,
    pool: Pool,
    held: Sequence[Candidate] = (),
    slide: SlideRoom | None = None,
) -> list[list[Candidate]]:
    """Return the questions of each version of the starter, in order.

    Those that are `held` stand in it whatever the rules say; where all are, in the order given.
    Whoever can draw it may have a starter chosen that fits one `slide`, or else two, where there is
    one.

    Raises:
        ItembankError: a topic has too few different questions, or more are held than it has.
    """
    for candidate in held:
        pool.take(candidate)
    # What is held is taken by now: no twin of it is drawn beside it.
    first = _dealt(shares, seed, pool, held)
    topics = {share.topic.id: share.topic for share in shares}
    if slide is not None and len(held) < len(first):
        deals = Deals(
            lambda deal: _tiers(_places(shares, seed, held, deal)[0]),
            partial(_dealt, shares, seed, pool, held),
        )
        first = on_one_slide(first, deals, topics, seed, pool, held, slide)
    made = [first]
    for number in range(1, versions):
        made.append(_parallel(made, topics, generator(seed, f"version/{number}"), pool))
    return made


def _places(
    shares: Sequence[Share], seed: int, held: Sequence[Candidate], deal: int
) -> tuple[list[tuple[TopicSources, Tier]], random.Random]:
    """Return the places that a deal leaves open, and the source of chance to fill them by."""
    name = f"starter/{deal}" if deal else "starter"
    rng = generator(seed, name)
    places = _open(slots(shares, rng), held)
    if held:
        # Whoever takes one question out wants another, not the one that this seed began with.
        rng = generator(seed, " ".join([name, *sorted(map(address_of, held))]))
    return places, rng


def _tiers(places: Iterable[tuple[TopicSources, Tier]]) -> Tiers:
    return [(topic.id, tier) for topic, tier in places]


def _dealt(
    shares: Sequence[Share], seed: int, pool: Pool, held: Sequence[Candidate], deal: int = 0
) -> list[Candidate]:
    """Return the questions of a starter, in order: another one for each number of a `deal`.

    Raises:
        TooFew: a topic has too few different questions; none is taken then.
    """
    first = list(held)
    places, rng = _places(shares, seed, held, deal)
    try:
        for topic, wanted in places:
            tier = nearest_tier(topic, wanted, pool)
            first.append(
                pool.pick(
                    topic,
                    tier,
                    rng,
                    lambda candidate: (
                        likeness(candidate, first)
                        + crowding(candidate, first)
                        + mixing(candidate, first)
                        + sameness(candidate, first)
                    ),
                )
            )
    except TooFew:
        # Whoever deals otherwise then has all of them to choose from.
        for candidate in first[len(held) :]:
            pool.give_back(candidate)
        raise
    return first if len(first) == len(held) else in_order(first)


def _parallel(
    made: Sequence[Sequence[Candidate]],
    topics: dict[str, TopicSources],
    rng: random.Random,
    pool: Pool,
) -> list[Candidate]:
    """Take a version as hard as the first, number by number, with other answers than `made`."""
    version: list[Candidate] = []
    for place, model in enumerate(made[0]):
        neighbours = [earlier[place].look for earlier in made]
        topic, cost = topics[model.item.topic], _sibling_cost(model, neighbours, version)
        version.append(
            pool.pick(topic, model.item.tier, rng, cost, VERSION_LOOK_AHEAD, partial(_akin, model))
        )
    return version


def _akin(model: Candidate, source: Source, tier: Tier, index: int) -> bool:
    """Tell whether a point of a space asks a question as the model's point does."""
    return source is not model.source or kind_at(source.spaces[tier][index]) == kind_at(
        model.values
    )


def _sibling_cost(
    model: Candidate, neighbours: Sequence[Look], version: Sequence[Candidate]
) -> Callable[[Candidate], float]:
    """Return what it costs to ask an item where neighbours are asked `model`."""
    found = False
    before = [question.look for question in version[-2:]]

    def third(candidate: Candidate) -> float:
        return THIRD_ALIKE * alike_running([*before, candidate.look])

    def cost(candidate: Candidate) -> float:
        nonlocal found
        if found and candidate.structure != model.structure:
            return OTHER_STRUCTURE  # one of the same structure costs less: no need to measure
        if any(candidate.look.answer == neighbour.answer for neighbour in neighbours):
            return SAME_ANSWER + apart(candidate, model) + third(candidate)
        price = apart(candidate, model) + likeness(candidate, version) + third(candidate)
        found = found or price < OTHER_STRUCTURE
        return price

    return cost
