"""Finds two questions of a topic that are asked about one figure, which a slide shows once.

Teachers ask several things about one chart. Where a starter is too full, two questions about two
large figures make way for two about one of them, where the topic has such a pair.
"""

from __future__ import annotations

import random
from collections.abc import Iterable, Mapping, Sequence
from itertools import islice
from typing import TypeAlias

from itembank.figures.figure import Figure
from itembank.items.item import Tier
from itembank.packs.choosing.candidate import BankCandidate, Candidate
from itembank.packs.choosing.chance import generator
from itembank.packs.choosing.cost import apart, likeness
from itembank.packs.choosing.item_pool import Pool
from itembank.packs.choosing.question_room import (
    LINE_HIGH,
    room_of_all,
    shared_figure,
)
from itembank.packs.data.source import TopicSources, sources

Swap: TypeAlias = tuple[Candidate, Candidate]
"""A question of a starter, and a shorter one that may stand instead of it."""
SHORTER_LOOK_AHEAD = 64
"""How many unused items are looked at for one that is shorter."""
WORTH = 2.0
"""Ems that a shared figure must save."""


def looked_at(seed: int, topic: str, tier: Tier) -> random.Random:
    """Return what says which questions of a tier are looked at: the same whenever it is asked."""
    return generator(seed, f"shorter/{topic}/{tier}")


def about_one_figure(
    swaps: Sequence[Swap],
    questions: Sequence[Candidate],
    may_go: Sequence[Candidate],
    topics: Mapping[str, TopicSources],
    seed: int,
    pool: Pool,
) -> list[Swap]:
    """Return the swaps, with two of a topic to questions about one figure where that is lower."""
    instead = {id(candidate): other for candidate, other in swaps}
    chosen: list[Swap] = []
    for topic in dict.fromkeys(candidate.item.topic for candidate in may_go):
        models = [candidate for candidate in may_go if candidate.item.topic == topic]
        now = [instead.get(id(model), model) for model in models]
        if len(models) < 2 or not all(shared_figure(each) for each in now[:2]):
            continue
        rest = [instead.get(id(other), other) for other in questions if other.item.topic != topic]
        pair = _pair(models[:2], rest + now[2:], topics[topic], seed, pool)
        if pair and room_of_all(pair) + WORTH < room_of_all(now[:2]):
            chosen += zip(models, pair, strict=False)
    settled = {id(model) for model, _ in chosen}
    return [
        *(swap for swap in chosen if swap[0] is not swap[1]),
        *(swap for swap in swaps if id(swap[0]) not in settled),
    ]


def _pair(
    models: Sequence[Candidate],
    rest: Sequence[Candidate],
    topic: TopicSources,
    seed: int,
    pool: Pool,
) -> list[Candidate] | None:
    """Return the best pair of a topic's questions about one figure, of the tiers of `models`."""
    first, second = (_offered(model, topic, seed, pool) for model in models)
    about: dict[Figure, list[Candidate]] = {}
    for candidate in first:
        if (figure := shared_figure(candidate)) is not None:
            about.setdefault(figure, []).append(candidate)
    best: tuple[float, list[Candidate]] | None = None
    for other in second:
        figure = shared_figure(other)
        for candidate in about.get(figure, ()) if figure is not None else ():
            if pool.alike(candidate, [other, *rest]) or pool.alike(other, list(rest)):
                continue
            pair = [candidate, other]
            cost = 4.0 * room_of_all(pair) / LINE_HIGH + likeness(candidate, [other])
            for model, asked in zip(models, pair, strict=True):
                cost += apart(asked, model) + likeness(asked, rest)
            if best is None or cost < best[0]:
                best = (cost, pair)
    return best[1] if best else None


def _offered(model: Candidate, topic: TopicSources, seed: int, pool: Pool) -> Iterable[Candidate]:
    """Return the questions of a model's tier that were looked at, and the model itself."""
    tier = model.item.tier
    source = sources(topic)[0]
    rng = looked_at(seed, topic.id, tier)
    offered = islice(pool.offers(source, tier, rng), SHORTER_LOOK_AHEAD)
    return [model, *(each for each in offered if not isinstance(each, BankCandidate))]
