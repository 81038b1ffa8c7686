"""Draws items from the spaces of topics, never the same question twice in one pack.

Every choice is made by a :class:`random.Random` seeded with text, which Python turns into
the same state on every machine and in every run; ``hash`` and the global generator are not
used.
"""

from __future__ import annotations

import random
from bisect import bisect_left
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

from itembank.errors import ItembankError
from itembank.items.difficulty import difficulty
from itembank.items.item import Item, Tier
from itembank.items.space import Space
from itembank.items.topic import Topic

LOOK_AHEAD = 24
"""How many points of a space are looked at where one is to be picked by a wish."""


def generator(seed: int, purpose: str) -> random.Random:
    """Return the source of all chance for one purpose of the pack with this seed.

    One source for each purpose, so that asking for longer sheets leaves the starter as it is.

    >>> generator(7, "starter").randrange(1000) == generator(7, "starter").randrange(1000)
    True
    """
    return random.Random(f"{seed}/{purpose}")


@dataclass(frozen=True, slots=True)
class Drawn:
    """An item taken from a space, with the parameters it was made from."""

    item: Item
    index: int
    values: tuple[Any, ...]
    difficulty: float


class Pool:
    """The items of some topics that a pack has not used yet.

    Two items with equal `twin` are one question in disguise, so taking one takes both.
    """

    def __init__(self) -> None:
        self._used: set[tuple[object, ...]] = set()
        self._made: dict[tuple[str, Tier, int], Drawn] = {}

    def at(self, topic: Topic, tier: Tier, index: int) -> Drawn:
        """Return the item at an index, made once however often it is looked at."""
        place = (topic.id, tier, index)
        found = self._made.get(place)
        if found is None:
            item = topic.item(tier, index)
            found = Drawn(item, index, topic.spaces[tier][index], difficulty(item))
            self._made[place] = found
        return found

    def free(self, drawn: Drawn) -> bool:
        """Tell whether neither the item nor its twin was taken."""
        return drawn.item.twin not in self._used

    def take(self, drawn: Drawn) -> Drawn:
        """Mark an item as used and return it."""
        self._used.add(drawn.item.twin)
        return drawn

    def offers(self, topic: Topic, tier: Tier, rng: random.Random) -> Iterator[Drawn]:
        """Yield the free items of a tier in random order, until there are no more."""
        for index in shuffled(len(topic.spaces[tier]), rng):
            drawn = self.at(topic, tier, index)
            if self.free(drawn):
                yield drawn

    def pick(
        self,
        topic: Topic,
        tier: Tier,
        rng: random.Random,
        cost: Callable[[Drawn], float] = lambda drawn: 0,
        look_ahead: int = LOOK_AHEAD,
    ) -> Drawn:
        """Take the free item of least cost among the first few offered; none costs below 0.

        Raises:
            ItembankError: every question of the tier is used; says how many there are.
        """
        best: Drawn | None = None
        least = 0.0
        for seen, drawn in enumerate(self.offers(topic, tier, rng)):
            price = cost(drawn)
            if best is None or price < least:
                best, least = drawn, price
            if least == 0 or seen + 1 >= look_ahead:
                break
        if best is None:
            raise too_small(topic, tier)
        return self.take(best)


def too_small(topic: Topic, tier: Tier) -> ItembankError:
    """Return the error for a tier with fewer different questions than a pack needs."""
    count = len({topic.item(tier, index).twin for index in range(len(topic.spaces[tier]))})
    questions = "question" if count == 1 else "different questions"
    return ItembankError(
        f"{topic.id} has only {count} {tier} {questions}, and this pack needs more. "
        "Ask for fewer questions or versions, or add another topic."
    )


def shuffled(count: int, rng: random.Random) -> Iterator[int]:
    """Yield 0 … count − 1 in random order, without listing them all when few are wanted.

    >>> sorted(shuffled(5, random.Random(1)))
    [0, 1, 2, 3, 4]
    """
    if count <= 64:
        yield from rng.sample(range(count), count)
        return
    seen: set[int] = set()
    while len(seen) < count // 2:
        index = rng.randrange(count)
        if index not in seen:
            seen.add(index)
            yield index
    rest = [index for index in range(count) if index not in seen]
    yield from rng.sample(rest, len(rest))


def differing(one: tuple[Any, ...], other: tuple[Any, ...]) -> int:
    """Return in how many parameters two points of a space differ.

    >>> differing((1, 2, 3), (1, 5, 3))
    1
    """
    return sum(a != b for a, b in zip(one, other, strict=True))


def along(space: Space, index: int, axis: int) -> list[int]:
    """Return the other indices of `space` that differ from `index` in one axis alone.

    A space lists its points in the order of its axes' values, so each is found by bisection.

    >>> along(Space(None, a=(1, 2), b=(5, 6, 7)), 1, 1)
    [0, 2]
    """
    axes = list(space.axes.values())
    here = space[index]
    places = [{value: place for place, value in enumerate(values)} for values in axes]

    def place_of(at: int) -> list[int]:
        return [found[value] for found, value in zip(places, space[at], strict=True)]

    found = []
    for value in axes[axis]:
        there = (*here[:axis], value, *here[axis + 1 :])
        if value == here[axis] or (space.keep is not None and not space.keep(*there)):
            continue
        wanted = [place[one] for place, one in zip(places, there, strict=True)]
        at = bisect_left(range(len(space)), wanted, key=place_of)
        if at < len(space) and space[at] == there:
            found.append(at)
    return found
