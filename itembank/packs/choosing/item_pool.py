"""Draws items from the spaces of topics, never the same question twice in one pack.

Every choice is made by a :class:`random.Random` seeded with text, which Python turns into
the same state on every machine and in every run; ``hash`` and the global generator are not
used.
"""

from __future__ import annotations

import random
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from functools import cache, cached_property
from typing import Any

from itembank.errors import ItembankError
from itembank.items.item import Item, Tier
from itembank.items.measures.closeness import Look, look, structure
from itembank.items.measures.difficulty import difficulty
from itembank.items.topics.registry import find_item
from itembank.items.topics.space import Space
from itembank.notation import tree as t
from itembank.packs.data.source import (
    Drawable,
    Source,
    is_short,
    matter_of,
    size,
    sources,
    too_few,
)
from itembank.packs.sources.bank_source import BankSource, Question
from itembank.text.in_words import plural

LOOK_AHEAD = 24
"""How many points of a space are looked at where one is to be picked by a wish."""
TOO_DEAR = 50.0
"""The cost at which the next source is tried, however much the first is preferred."""
Same = Callable[[Item], tuple[object, ...]]
"""What is equal for two items that are one question in disguise, wherever they come from."""


def generator(seed: int, purpose: str) -> random.Random:
    """Return the source of all chance for one purpose of the pack with this seed.

    One source for each purpose, so that asking for longer sheets leaves the starter as it is.

    >>> generator(7, "starter").randrange(1000) == generator(7, "starter").randrange(1000)
    True
    """
    return random.Random(f"{seed}/{purpose}")


@dataclass(frozen=True)
class Drawn:
    """An item taken from a source, with the parameters it was made from.

    What is measured of it is measured once, when it is first asked for: many are looked at
    for each that is taken.
    """

    item: Item
    index: int
    values: tuple[Any, ...]
    source: Source

    @cached_property
    def difficulty(self) -> float:
        """How hard the item is."""
        return difficulty(self.item)

    @cached_property
    def look(self) -> Look:
        """What a pupil sees of it at a glance."""
        return look(self.item)

    @cached_property
    def length(self) -> int:
        """About how many characters its prompt is long, a fraction counting as three."""
        return sum(
            len(run)
            if isinstance(run, str)
            else 3 * sum(not t.children(part) for part in t.walk(run))
            for run in self.item.prompt
        )

    @cached_property
    def structure(self) -> tuple[object, ...]:
        """What it has in common with items solved by the same steps."""
        return structure(self.item)


class DrawnFromBank(Drawn):
    """A question of a bank, which is read only when more is asked of it than its address."""

    def __init__(self, question: Question, index: int, values: tuple[Any, ...], source: Source):
        for name, value in (
            *(("question", question), ("index", index), ("values", values)),
            ("source", source),
        ):
            object.__setattr__(self, name, value)

    question: Question

    @property
    def item(self) -> Item:
        """The question itself."""
        return self.question.item


class Pool:
    """The items of some topics that a pack has not used yet.

    Two items with equal `twin` are one question in disguise, so taking one takes both. The
    twins of a generator are told apart within their topic alone; where several sources are in
    play, `same` finds the same question in all of them.
    """

    def __init__(self, same: Same | None = None) -> None:
        self._used: set[tuple[object, ...]] = set()
        self._made: dict[tuple[int, Tier, int], Drawn] = {}
        self._same = same
        self._marks: dict[str, tuple[object, ...]] = {}
        self._avoided: set[object] = set()

    def at(self, source: Source, tier: Tier, index: int) -> Drawn:
        """Return the item at an index, made once however often it is looked at."""
        place = (id(source), tier, index)  # what is made holds the source, so the id stays its own
        found = self._made.get(place)
        if found is None:
            values = source.spaces[tier][index]
            if isinstance(source, BankSource):
                found = DrawnFromBank(source.questions[tier][index], index, values, source)
            else:
                found = Drawn(source.item(tier, index), index, values, source)
            self._made[place] = found
        return found

    def avoid(self, addresses: Iterable[str], topics: Iterable[Drawable]) -> None:
        """From now on pass over the questions at some addresses, and their twins.

        Where a tier has nothing else left, they are asked all the same.
        """
        self._avoided = set()
        names = {topic.id for topic in topics}
        for address in addresses:
            self._avoided.add(address)
            if address.partition("/")[0] in names and address.count("/") == 2:
                item = _made_once(address)
                if item is None:
                    continue
                self._avoided.add(item.twin)
                if self._same is not None:
                    self._avoided.add(self._mark(item))

    def passed_over(self, drawn: Drawn) -> bool:
        """Tell whether a question, or its twin, is one of those to avoid."""
        return bool(self._avoided) and (
            _address(drawn) in self._avoided or not self._avoided.isdisjoint(self._twins(drawn))
        )

    def free(self, drawn: Drawn) -> bool:
        """Tell whether neither the item nor its twin was taken."""
        return self._used.isdisjoint(self._twins(drawn))

    def alike(self, item: Drawn, others: list[Drawn]) -> bool:
        """Tell whether an item is the twin of one of `others`."""
        if item.item.twin in [other.item.twin for other in others]:
            return True
        return self._same is not None and self._mark(item.item) in [
            self._mark(other.item) for other in others
        ]

    def take(self, drawn: Drawn) -> Drawn:
        """Mark an item as used and return it."""
        self._used.add(drawn.item.twin)
        if self._same is not None:
            self._used.add(self._mark(drawn.item))
        return drawn

    def first(self, topic: Drawable, tier: Tier) -> Drawn | None:
        """Return the first item of a tier, used or not, or None where there is none."""
        source = next((source for source in sources(topic) if size(source, tier)), None)
        return None if source is None else self.at(source, tier, 0)

    def room(self, topic: Drawable, tier: Tier, rested: bool = False) -> int:
        """Return how many different questions of a tier are left.

        They are counted where people wrote them all; where some are generated there are as
        good as always enough, and every point of the space counts. With `rested`, those to be
        avoided are as good as used.
        """
        if not is_short(topic):
            return sum(size(source, tier) for source in sources(topic))
        everything = [
            self.at(source, tier, index)
            for source in sources(topic)
            for index in range(size(source, tier))
        ]
        free = [
            drawn
            for drawn in everything
            if self.free(drawn) and not (rested and self.passed_over(drawn))
        ]
        return len({self._twins(drawn)[-1] for drawn in free})

    def offers(self, source: Source, tier: Tier, rng: random.Random) -> Iterator[Drawn]:
        """Yield the free items of a tier in random order, until there are no more."""
        for index in shuffled(size(source, tier), rng):
            drawn = self.at(source, tier, index)
            if self.free(drawn):
                yield drawn

    def pick(
        self,
        topic: Drawable,
        tier: Tier,
        rng: random.Random,
        cost: Callable[[Drawn], float] = lambda drawn: 0,
        look_ahead: int = LOOK_AHEAD,
    ) -> Drawn:
        """Take the free item of least cost among the first few offered; none costs below 0.

        The preferred source is looked at first; the next one only where nothing is left in it
        that costs less than :data:`TOO_DEAR`.

        Raises:
            ItembankError: every question of the tier is used; says how many there are.
        """
        best: Drawn | None = None
        least = 0.0
        for source in sources(topic):
            offered: Iterator[Drawn] = self.offers(source, tier, rng)
            if self._avoided:
                offered = (item for item in offered if not self.passed_over(item))
            for seen, drawn in enumerate(offered):
                price = cost(drawn)
                if best is None or price < least:
                    best, least = drawn, price
                if least == 0 or seen + 1 >= look_ahead:
                    break
            if best is not None and least < TOO_DEAR:
                break
        if best is None and self._avoided:
            held, self._avoided = self._avoided, set()
            try:
                return self.pick(topic, tier, rng, cost, look_ahead)
            finally:
                self._avoided = held
        if best is None:
            raise self._too_small(topic, tier)
        return self.take(best)

    def _twins(self, drawn: Drawn) -> tuple[tuple[object, ...], ...]:
        """Return what is equal for the twins of an item: in its topic, then wherever they are.

        Of a question that a person wrote both are one, and known without reading it.
        """
        if isinstance(drawn, DrawnFromBank) and drawn.question.mark is not None:
            return (drawn.question.mark,)
        if self._same is None:
            return (drawn.item.twin,)
        return drawn.item.twin, self._mark(drawn.item)

    def _mark(self, item: Item) -> tuple[object, ...]:
        assert self._same is not None
        found = self._marks.get(item.address)
        if found is None:
            found = self._marks[item.address] = self._same(item)
        return found

    def _too_small(self, topic: Drawable, tier: Tier) -> ItembankError:
        """Return the error for a tier with fewer different questions than a pack needs."""
        items = [
            source.item(tier, index)
            for source in sources(topic)
            for index in range(size(source, tier))
        ]
        count = len({item.twin if self._same is None else self._same(item) for item in items})
        questions = plural(count, "question", "different questions")
        only = f"only {count}" if count else "no"
        questions = questions if count else "question that can be used"
        said = [f"{topic.id} has {only} {tier} {questions}, and this pack needs more."]
        said += [words for source in sources(topic) if (words := too_few(source, tier))]
        said.append("Ask for fewer questions or versions, or add another topic.")
        matters = [name for source in sources(topic) if (name := matter_of(source, tier))]
        return ItembankError(" ".join(said), matter=matters[0] if matters else "")


def _address(drawn: Drawn) -> str:
    return drawn.question.address if isinstance(drawn, DrawnFromBank) else drawn.item.address


@cache
def _made_once(address: str) -> Item | None:
    """Return the item at an address: the packs of a week avoid the same hundreds of them."""
    try:
        return find_item(address)
    except ItembankError:  # its topic has changed since
        return None


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


def differing(first: tuple[Any, ...], other: tuple[Any, ...]) -> int:
    """Return in how many parameters two points of a space differ.

    >>> differing((1, 2, 3), (1, 5, 3))
    1
    """
    return sum(a != b for a, b in zip(first, other, strict=True))


def along(space: Space, index: int, axis: int) -> list[int]:
    """Return the other indices of `space` that differ from `index` in one axis alone.

    >>> along(Space(None, a=(1, 2), b=(5, 6, 7)), 1, 1)
    [0, 2]
    """
    here = space[index]
    there = (
        space.place((*here[:axis], value, *here[axis + 1 :]))
        for value in list(space.axes.values())[axis]
        if value != here[axis]
    )
    return [place for place in there if place is not None]
