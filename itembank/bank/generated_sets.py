"""The generated items that a bank names: by a tier, a count and a seed, or one by one."""

from __future__ import annotations

import random
from collections.abc import Iterator
from typing import TYPE_CHECKING

from itembank.bank.model import GeneratedSet
from itembank.items.item import Tier
from itembank.items.registry import find_topic

if TYPE_CHECKING:
    from itembank.bank.load import Bank


def addresses_of(made: GeneratedSet, topic: str) -> tuple[str, ...]:
    """Return the addresses of a set in a file on `topic`, in the order they are drawn.

    The same set names the same items on every machine, for as long as the topic's tier holds
    the same items.

    >>> addresses_of(GeneratedSet(tier="core", count=2, seed=3), "ratio.share") == addresses_of(
    ...     GeneratedSet(topic="ratio.share", tier="core", count=2, seed=3), "fractions.divide"
    ... )
    True
    >>> addresses_of(GeneratedSet(addresses=("ratio.share/core/1",)), "ratio.share")
    ('ratio.share/core/1',)
    """
    if made.addresses:
        return tuple(dict.fromkeys(made.addresses))
    if made.tier is None or made.count is None or made.seed is None:
        return ()  # a bank with such a set has faults and is not loaded
    source, tier = find_topic(made.topic or topic), Tier(made.tier)
    rng = random.Random(f"set/{source.id}/{tier}/{made.seed}")
    space = source.spaces[tier]
    return tuple(f"{source.id}/{tier}/{at}" for at in space.sample(made.count, rng))


def generated_addresses(bank: Bank) -> Iterator[str]:
    """Yield the address of each generated item that a bank's sets and pins name, each once."""
    seen: set[str] = set()
    for topic in bank.topics:
        named = [one for made in topic.generated for one in addresses_of(made, topic.id)]
        for address in (*named, *(pin.address for pin in topic.pinned)):
            if address not in seen:
                seen.add(address)
                yield address
