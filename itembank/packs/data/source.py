"""What a pack's questions on a topic are taken from: one source, or several in order.

A :class:`~itembank.items.topics.topic.Topic` is a source as it stands; so is the part of a bank
that is on a topic (:mod:`itembank.packs.sources.bank_source`). :class:`InOrder` puts sources of one
topic in the order of a teacher's preference.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Protocol, TypeAlias

from itembank.items.item import Item, Misconception, Tier
from itembank.items.topics.space import Space


class Source(Protocol):
    """Items of one topic, numbered from 0 in each tier; a tier that is missing has none."""

    def __hash__(self) -> int:
        """Return a hash: a source is the same only as itself."""

    @property
    def id(self) -> str:
        """Return the topic's id, ``strand.topic``."""

    @property
    def title(self) -> str:
        """Return what a teacher calls the topic."""

    @property
    def spaces(self) -> Mapping[Tier, Space]:
        """Return what each tier's items are made from."""

    @property
    def misconceptions(self) -> tuple[Misconception, ...]:
        """Return the misconceptions that some item can show."""

    def item(self, tier: Tier, index: int) -> Item:
        """Return the item at an index of a tier: the same one every time."""


class InOrder:
    """Several sources of one topic; the first is taken from for as long as it will do."""

    def __init__(self, *sources: Source) -> None:
        self.sources = sources

    @property
    def id(self) -> str:
        """Return the topic's id."""
        return self.sources[0].id

    @property
    def title(self) -> str:
        """Return what a teacher calls the topic."""
        return self.sources[0].title


TopicSources: TypeAlias = Source | InOrder
"""What a pool takes a topic's items from."""


def sources(topic: TopicSources) -> tuple[Source, ...]:
    """Return the sources to take from, the preferred one first.

    >>> from itembank.items.topics.registry import find_topic
    >>> ratio = find_topic("ratio.share")
    >>> sources(ratio) == (ratio,)
    True
    """
    return topic.sources if isinstance(topic, InOrder) else (topic,)


def size(source: Source, tier: Tier) -> int:
    """Return how many items a source has in a tier."""
    return len(source.spaces[tier]) if tier in source.spaces else 0


def too_few(source: object, tier: Tier) -> str:
    """Return what a source says of a tier that is used up, or "" where it has no more to say."""
    say: Any = getattr(source, "too_few", None) or getattr(source, "beyond", None)
    return str(say(tier)) if say is not None else ""


def matter_of(source: object, tier: Tier) -> str:
    """Return the matter of an error about a tier that is used up, or "" where it has no name."""
    name: Any = getattr(source, "matter", None)
    return str(name(tier)) if name is not None else ""


def is_short(topic: TopicSources) -> bool:
    """Tell whether a topic may run out of questions of some tier.

    It may where people wrote all there is, and where a whole tier is beyond a class's year.
    """
    return all(
        hasattr(source, "too_few") or getattr(source, "lacks_a_tier", False)
        for source in sources(topic)
    )
