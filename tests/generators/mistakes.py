"""The likely mistakes of a generated item one by one, those of one answer too."""

from __future__ import annotations

from collections.abc import Iterator

from itembank.items.item import Item, Slip, Tier
from itembank.items.topics.registry import find_topic
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import causes


def each_mistake(item: Item) -> tuple[Slip, ...]:
    """Return every mistake with its answer; the item says those with one answer together."""
    name, tier, index = item.address.split("/")
    topic = find_topic(name)
    return topic.draft(Tier(tier), *topic.spaces[Tier(tier)][int(index)]).slips


def own_items(topic: Topic, tier: Tier) -> Iterator[Item]:
    """Yield the items of a tier that ask the topic's own kind of question, in order."""
    return (topic.item(tier, index) for index in topic.spaces[tier].own)


def declared_ones(topic: Topic) -> set[tuple[str, str]]:
    """Return the ids and names of the mistakes that some item shows by itself.

    Those that belong to a kind of question are no topic's.
    """
    found = (
        slip.misconception
        for tier, space in topic.spaces.items()
        for values in space
        for slip in topic.draft(tier, *values).slips
    )
    return {
        (mistake.id, mistake.name)
        for mistake in found
        if len(causes(mistake.id)) == 1 and not mistake.id.startswith("kinds.")
    }


def shown_by_own(topic: Topic) -> frozenset[str]:
    """Return the ids of the misconceptions that the topic's own kind of question shows."""
    return frozenset(
        slip.misconception.id
        for tier, space in topic.spaces.items()
        for index in space.own
        for slip in topic.make(tier, *space[index]).slips
    )
