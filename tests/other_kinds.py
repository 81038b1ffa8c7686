"""Where a topic asks another kind of question than its own, found without laying out its spaces."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from itembank.items.item import Item, Tier
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic


def made_by(space: Space, suits: Callable[[Callable[..., Any]], bool] | None = None) -> list[int]:
    """Return the indices at which another kind of question is asked.

    `suits` tells of what makes them whether they are meant; all are where it is left out. A part
    of a space is of one kind, so it is asked once of each part and never of a point.

    >>> def halved(topic, tier, n): ...
    >>> def doubled(topic, tier, n): ...
    >>> space = Space(None, a=(1, 2)).also(halved, None, n=(5,)).also(doubled, None, n=(6, 7))
    >>> made_by(space), made_by(space, lambda make: make is doubled)
    ([2, 3, 4], [3, 4])
    """
    return [
        index
        for part, indices in zip(space.parts, space.part_indices, strict=True)
        if part.kind and (suits is None or suits(part.kind.make))
        for index in indices
    ]


def asked_about(topic: Topic, item: Item) -> Item:
    """Return the topic's own question that a question of another kind shows with an answer.

    It is looked up where the other says it is taken from; whether it is the one that is printed,
    a test finds out by comparing the two.
    """
    tier, index = Tier(item.tier), int(item.address.rpartition("/")[2])
    [_, values] = topic.spaces[tier][index]
    place = topic.spaces[tier].place(values)
    assert place is not None, item.address
    return topic.item(tier, place)
