"""The questions of a topic that are of one kind: *true or false*, *missing number*, *match pairs*.

A kind that is there for a change stands in parts of its own at the end of a tier's space, often a
hundredth of it. So each part is looked into, and not the space as a whole.
"""

from __future__ import annotations

import random
from collections.abc import Iterator, Mapping, Sequence
from functools import lru_cache
from typing import TYPE_CHECKING, Protocol

from itembank.errors import ItembankError
from itembank.files.faults import join_words, nearest
from itembank.items.item import Tier
from itembank.items.measures.kind_told import kind_told

if TYPE_CHECKING:
    from itembank.items.item import Item
    from itembank.items.topics.space import Space


class Spaces(Protocol):
    """What offers questions from spaces: a topic, or as much of it as suits a class."""

    @property
    def spaces(self) -> Mapping[Tier, Space]:
        """The points of each tier."""

    def item(self, tier: Tier, index: int, /) -> Item:
        """Return the question at an index."""

    def __hash__(self) -> int:
        """Tell it from others: the kinds it has are found once."""


FEW = 12
"""Questions that are looked at in each part of a space, to know which kinds it holds."""
MOST_LOOKED = 400
"""Questions that are looked at in a part before it is given up."""


class NoSuchKind(ItembankError):
    """A kind of question that a topic has none of; says which it has."""


@lru_cache(maxsize=512)
def kinds_of(topic: Spaces, tiers: tuple[Tier, ...] = tuple(Tier)) -> tuple[str, ...]:
    """Return the kinds of question that a topic has in some tiers, in the order it has them.

    >>> from itembank.items.topics.registry import find_topic
    >>> kinds_of(find_topic("ratio.unit-form"), (Tier.SUPPORT,))[:2]
    ('work it out', 'true or false')
    """
    found: dict[str, None] = {}
    for tier in tiers:
        for part in _parts(topic, tier):
            for index in _few(part):
                item = topic.item(tier, index)
                found.setdefault(kind_told(item.ask, item.prompt))
    return tuple(found)


def _parts(topic: Spaces, tier: Tier) -> Iterator[Sequence[int]]:
    if tier in topic.spaces:
        yield from topic.spaces[tier].part_indices


def _few(part: Sequence[int]) -> Iterator[int]:
    """Yield a few indices of a part, evenly spaced."""
    count = min(FEW, len(part))
    for place in range(count):
        yield part[place * len(part) // count]


def the_kind(
    typed: str, topic: Spaces, tiers: Sequence[Tier] = tuple(Tier), title: str = "This topic"
) -> str:
    """Return the kind that somebody means, of those that a topic has.

    Raises:
        NoSuchKind: there is none of that name, or the topic has none of it.

    >>> from itembank.items.topics.registry import find_topic
    >>> the_kind("True-or-False", find_topic("ratio.unit-form"))
    'true or false'
    """
    wanted = " ".join(typed.replace("-", " ").lower().split())
    there = kinds_of(topic, tuple(tiers))
    if wanted in there:
        return wanted
    known = all_kinds()
    where = f"{title} has {join_words(there)}"
    if tuple(tiers) != tuple(Tier):
        where += f" in {join_words([tier.value for tier in tiers])}"
    if wanted in known:
        raise NoSuchKind(f"{title} has no questions of the kind ‘{wanted}’. {where}.")
    near = nearest(wanted, known)
    advice = f" Did you mean {join_words(near, 'or')}?" if near else ""
    raise NoSuchKind(f"There is no kind of question called ‘{typed[:40]}’.{advice} {where}.")


def all_kinds() -> tuple[str, ...]:
    """Return what every kind of question is called."""
    from itembank.items.asks.ask_kind import KINDS
    from itembank.items.measures.kind_told import MISSING, WORD_PROBLEM, WORK_OUT

    told = (kind.told for kind in KINDS.values() if kind.told)
    return tuple(dict.fromkeys((WORK_OUT, WORD_PROBLEM, MISSING, *told)))


def of_kind(
    topic: Spaces, tier: Tier, kind: str, count: int, rng: random.Random
) -> list[tuple[int, Item]]:
    """Return up to `count` questions of a kind of a tier by chance, each with its index."""
    found: list[tuple[int, Item]] = []
    parts = [part for part in _parts(topic, tier) if _holds(topic, tier, part, kind)]
    rng.shuffle(parts)
    for part in parts:
        for index in rng.sample(part, min(len(part), MOST_LOOKED)):
            item = topic.item(tier, index)
            if kind_told(item.ask, item.prompt) == kind:
                found.append((index, item))
                if len(found) >= count:
                    return found
    return found


def _holds(topic: Spaces, tier: Tier, part: Sequence[int], kind: str) -> bool:
    few = (topic.item(tier, index) for index in _few(part))
    return any(kind_told(item.ask, item.prompt) == kind for item in few)
