"""Which generated items a bank holds: its pinned ones, and those of its generated sets."""

from __future__ import annotations

import random
from typing import TYPE_CHECKING

from itembank.bank.model.fields import GeneratedSet
from itembank.items.item import Tier
from itembank.items.topics.registry import find_topic

if TYPE_CHECKING:
    from itembank.bank.model.bank import BankTopic


def set_addresses(made: GeneratedSet, topic: str) -> tuple[str, ...]:
    """Return the addresses of a generated set in a file on `topic`: the same ones every time.

    A set of so many is taken by its seed, none twice; a tier that grows does not change it.

    >>> set_addresses(GeneratedSet(tier="core", count=2, seed=1), "ratio.share")
    ('ratio.share/core/462', 'ratio.share/core/392')
    """
    if made.addresses:
        return made.addresses
    if made.tier is None or made.count is None:
        return ()  # never in a bank that loaded
    source = find_topic(made.topic or topic)
    # Seeded with text, which gives the same state on every machine and in every run.
    rng = random.Random(f"{made.seed}/{source.id}/{made.tier}")
    indices = source.spaces[Tier(made.tier)].lasting_sample(made.count, rng)
    return tuple(f"{source.id}/{made.tier}/{index}" for index in indices)


def made_addresses(topic: BankTopic) -> tuple[str, ...]:
    """Return the address of every generated item of a topic's file, each once."""
    found = [address for made in topic.generated for address in set_addresses(made, topic.id)]
    found += [pin.address for pin in topic.pinned]
    return tuple(dict.fromkeys(found))
