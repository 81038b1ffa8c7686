"""Finds two questions of a topic that are asked about one figure, which a slide shows once.

Teachers ask several things about one chart. Where a starter is too full, two questions about two
large figures make way for two about one of them, where the topic has such a pair.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import islice

from itembank.figures.figure import Figure
from itembank.packs.choosing.candidate import BankCandidate, Candidate
from itembank.packs.choosing.cost import apart, likeness
from itembank.packs.choosing.question_room import LINE_HIGH, room_of_all, shared_figure
from itembank.packs.choosing.shorter_ones import (
    SHORTER_LOOK_AHEAD,
    ShorterOnes,
    Swap,
    looked_at,
)
from itembank.packs.data.source import sources

WORTH = 0.05
"""The share of a slide that a shared figure must save."""


def about_one_figure(
    swaps: Sequence[Swap], questions: Sequence[Candidate], shorter: ShorterOnes
) -> list[Swap]:
    """Return the swaps, with two of a topic to questions about one figure where that is lower."""
    instead = {id(candidate): partner for candidate, partner in swaps}
    may_go = shorter.may_go(questions)
    chosen: list[Swap] = []
    for topic in dict.fromkeys(candidate.item.topic for candidate in may_go):
        models = [candidate for candidate in may_go if candidate.item.topic == topic]
        now = [instead.get(id(model), model) for model in models]
        if len(models) < 2 or not all(shared_figure(candidate) for candidate in now[:2]):
            continue
        rest = [
            instead.get(id(question), question)
            for question in questions
            if question.item.topic != topic
        ]
        pair = _pair(models[:2], rest + now[2:], shorter)
        share = shorter.rooms.of_all
        if pair and share(pair) + WORTH < share(now[:2]):
            # Two make way for the pair; what else the topic asks stays as it is.
            chosen += zip(models, pair, strict=False)
    settled = {id(model) for model, _ in chosen}
    return [
        *(swap for swap in chosen if swap[0] is not swap[1]),
        *(swap for swap in swaps if id(swap[0]) not in settled),
    ]


def _pair(
    models: Sequence[Candidate], rest: Sequence[Candidate], shorter: ShorterOnes
) -> list[Candidate] | None:
    """Return the best pair of a topic's questions about one figure, of the tiers of `models`."""
    first, second = (_offered(model, shorter) for model in models)
    pool = shorter.pool
    about: dict[Figure, list[Candidate]] = {}
    for candidate in first:
        if (figure := shared_figure(candidate)) is not None:
            about.setdefault(figure, []).append(candidate)
    best: tuple[float, list[Candidate]] | None = None
    for partner in second:
        figure = shared_figure(partner)
        for candidate in about.get(figure, ()) if figure is not None else ():
            if pool.alike(candidate, [partner, *rest]) or pool.alike(partner, list(rest)):
                continue
            pair = [candidate, partner]
            cost = 4.0 * room_of_all(pair) / LINE_HIGH + likeness(candidate, [partner])
            for model, asked in zip(models, pair, strict=True):
                cost += apart(asked, model) + likeness(asked, rest)
            if best is None or cost < best[0]:
                best = (cost, pair)
    return best[1] if best else None


def _offered(model: Candidate, shorter: ShorterOnes) -> Iterable[Candidate]:
    """Return the questions of a model's tier that were looked at, and the model itself."""
    topic, tier = model.item.topic, model.item.tier
    source = sources(shorter.topics[topic])[0]
    rng = looked_at(shorter.seed, topic, tier)
    offered = islice(shorter.pool.offers(source, tier, rng), SHORTER_LOOK_AHEAD)
    return [
        model,
        # Whether a bank's question may be used is found out only by whoever picks it.
        *(candidate for candidate in offered if not isinstance(candidate, BankCandidate)),
    ]
