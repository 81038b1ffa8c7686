"""The likely mistakes of a generated item one by one, those of one answer too."""

from __future__ import annotations

from itembank.items.item import Item, Slip, Tier
from itembank.items.topics.registry import find_topic


def each_mistake(item: Item) -> tuple[Slip, ...]:
    """Return every mistake with its answer; the item says those with one answer together."""
    name, tier, index = item.address.split("/")
    topic = find_topic(name)
    return topic.make(Tier(tier), *topic.spaces[Tier(tier)][int(index)]).slips
