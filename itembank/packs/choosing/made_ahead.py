"""Makes questions that are to be looked at in a copy of this process, beside those made here.

What stands at an address is always the same, and so is the room that it takes: nothing that is
chosen depends on who made it, or on whether anybody did.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from functools import partial
from typing import NamedTuple, TypeAlias

from itembank.items.item import Item, Tier
from itembank.packs.choosing.candidate import BankCandidate
from itembank.packs.choosing.item_pool import Pool
from itembank.packs.data.source import TopicSources, sources
from itembank.processes.beside import Beside
from itembank.processes.machine import cores
from itembank.processes.process_kinds import best_kind

Place: TypeAlias = tuple[str, Tier]
"""A topic and a tier of it."""

Shares: TypeAlias = dict[tuple[str, bool], float | None]
"""The room that questions take, by their addresses and by whether their figure is shown."""


class Made(NamedTuple):
    """A question that was made, the number of its source in its topic, and its place there."""

    topic: str
    source: int
    tier: Tier
    at: int
    item: Item
    figure_size: tuple[float, float] | None


def make_ahead(
    places: Sequence[Place],
    look: Callable[[str, Tier], object],
    topics: Mapping[str, TopicSources],
    pool: Pool,
    shares: Shares,
) -> None:
    """Have every second of some places looked through by a copy of this process.

    `look` makes candidates of the `pool` and notes `shares`; all of them are known here then, as
    if the looking had been done here. The other places are looked through meanwhile. Nothing is
    done where there is no core for it, or where it would not be a copy.
    """
    if len(places) < 2 or cores() < 2 or not best_kind().inherits:
        return
    with Beside(partial(_made, places[1::2], look, topics, pool, shares)) as helper:
        for place in places[::2]:
            look(*place)
        try:
            made, known = helper.result()
        except RuntimeError:  # it was killed: what it would have made is made here when asked for
            return
    for topic, number, tier, at, item, size in made:
        candidate = pool.keep(sources(topics[topic])[number], tier, at, item)
        # It is worked out once, by drawing the figure; the copy has done so.
        vars(candidate)["figure_size"] = size
    shares.update(known)


def _made(
    places: Sequence[Place],
    look: Callable[[str, Tier], object],
    topics: Mapping[str, TopicSources],
    pool: Pool,
    shares: Shares,
) -> tuple[list[Made], Shares]:
    """Look through places, and return what was made for it, as data."""
    known = set(shares)
    made: list[Made] = []
    for topic, tier in places:
        of = list(enumerate(sources(topics[topic])))
        before = {number: pool.made(source, tier).keys() for number, source in of}
        look(topic, tier)
        made += [
            Made(topic, number, tier, index, candidate.item, candidate.figure_size)
            for number, source in of
            for index, candidate in pool.made(source, tier).items()
            if index not in before[number] and not isinstance(candidate, BankCandidate)
        ]
    return made, {place: share for place, share in shares.items() if place not in known}
