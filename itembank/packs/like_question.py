"""Questions that could stand in a starter in the place of one that is there."""

from __future__ import annotations

import random
from collections.abc import Iterator
from itertools import islice

from itembank.errors import CheckFailed
from itembank.items.item import Tier
from itembank.packs.build import sources_of
from itembank.packs.choosing.candidate import Candidate
from itembank.packs.choosing.chance import generator
from itembank.packs.choosing.fixed_questions import bar_items, held_items
from itembank.packs.choosing.item_pool import LOOK_AHEAD, Pool
from itembank.packs.data.pack_item import PackItem
from itembank.packs.data.source import Source, sources
from itembank.packs.pack_proof import prove_anew, prove_by_first_road
from itembank.packs.sources.bank_source import BankSource
from itembank.planning.department.pack_request import PackRequest, stated


def like_it(request: PackRequest, address: str, most: int, kind: str = "") -> list[PackItem]:
    """Return up to `most` questions that the starter could ask in the place of one of its own.

    They are on its topic, unlike all that the starter asks, and none that is to be avoided: first
    those of its own tier, the nearest in difficulty first, then those of the other tiers. Each
    key is proved by both roads. With a `kind`, such as *true or false*, they are of that alone.

    Raises:
        ItembankError: the starter asks nothing at `address`, or a bank cannot be read.
        NoSuchKind: nothing is of that kind; says which there are.
    """
    from itembank.packs.data.convert import Faces, pack_item

    banks, topics, pool = sources_of(request)
    bar_items(topics, request.never, pool)
    for candidate in held_items(topics, request.items, pool):
        pool.take(candidate)
    (asked,) = held_items(topics, [address], pool)
    pool.avoid(request.avoid, topics)
    (topic,) = (topic for topic in topics if topic.id == asked.item.topic)
    rng = generator(stated(request.seed), f"like {address}")
    found: list[tuple[bool, float, int, Candidate]] = []
    for tier in Tier:
        for source in sources(topic):
            offers = (
                _of_kind(pool, source, tier, kind, rng) if kind else pool.offers(source, tier, rng)
            )
            rested = (candidate for candidate in offers if not pool.passed_over(candidate))
            for candidate in islice(rested, LOOK_AHEAD):
                far = abs(candidate.difficulty - asked.difficulty)
                found.append((tier is not asked.item.tier, far, len(found), candidate))
    near: list[Candidate] = []
    for *_, candidate in sorted(found, key=lambda row: row[:3]):
        if len(near) < most and not pool.alike(candidate, near) and _proved(candidate):
            near.append(candidate)
    faces = Faces()
    return [
        pack_item(
            candidate.item,
            candidate.source,
            faces,
            1,
            banks.source_of(candidate.item) if banks is not None else None,
            topic.title,
        )
        for candidate in near
    ]


def _of_kind(
    pool: Pool, source: Source, tier: Tier, kind: str, rng: random.Random
) -> Iterator[Candidate]:
    """Yield the free questions of a kind of a source's tier by chance."""
    if isinstance(source, BankSource):
        yield from (
            candidate for candidate in pool.offers(source, tier, rng) if candidate.kind == kind
        )
        return
    from itembank.items.topics.of_kind import of_kind

    for index, _ in of_kind(source, tier, kind, 2 * LOOK_AHEAD, rng):
        candidate = pool.at(source, tier, index)
        if candidate.can_be_looked_at and pool.free(candidate):
            yield candidate


def _proved(candidate: Candidate) -> bool:
    """Tell whether a key is proved; one that is not is never offered, and the audit names it."""
    try:
        prove_by_first_road([candidate.item])
        prove_anew([candidate.item])
    except CheckFailed:
        return False
    return True
