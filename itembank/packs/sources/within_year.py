"""The part of a topic that suits a class's year, as a source of questions.

Addresses stay what they are: nothing is taken out of a topic's own space, whose items are
numbered as ever. What is beyond the year is left out of a pack, unless the department
asks for it (``beyond_year``).
"""

from __future__ import annotations

from bisect import bisect_left
from collections import Counter
from collections.abc import Mapping
from functools import cache, cached_property

from itembank.errors import ItembankError
from itembank.files.faults import join_words
from itembank.items.item import Item, Misconception, Tier
from itembank.items.measures.years import Content
from itembank.items.topics.listing import first_years
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.text.in_words import plural

HOW_TO_ASK = (
    "To ask for it all the same, write beyond_year = true or a list of topics in department.toml."
)
BEYOND = "beyond the year"
"""The matter of an error that goes away where content of later years may be asked."""


class WithinYear:
    """A topic without what is beyond a year: a source for packs."""

    def __init__(self, topic: Topic, year: int) -> None:
        self.topic, self.year = topic, year
        self.id, self.title = topic.id, topic.title
        self.misconceptions: tuple[Misconception, ...] = topic.misconceptions

    @cached_property
    def spaces(self) -> Mapping[Tier, Space]:
        """Return what each tier's items are made from, without what is beyond the year."""
        return {tier: self._space(tier) for tier in self.topic.spaces}

    def item(self, tier: Tier, index: int) -> Item:
        """Return the item at an index among those that are left."""
        return self.topic.item(tier, self._left[tier][index])

    def place(self, tier: Tier, number: int) -> int | None:
        """Return the index here of the item of that number, or None where it is left out."""
        left = self._left[tier]
        at = bisect_left(left, number)
        return at if at < len(left) and left[at] == number else None

    def beyond(self, tier: Tier) -> str:
        """Return the sentences on what is left out of a tier, or "" where nothing is."""
        gone = self._gone(tier)
        if not gone:
            return ""
        count = gone.total()
        more = plural(count, "question is", "questions are")
        what = join_words([f"{content} (from year {content.from_year})" for content in gone])
        return f"{count} more {more} beyond year {self.year}: {what}. {HOW_TO_ASK}"

    def matter(self, tier: Tier) -> str:
        """Return the matter of an error about a tier that is used up."""
        return BEYOND if self._gone(tier) else ""

    @cached_property
    def lacks_a_tier(self) -> bool:
        """Tell whether nothing is left of some tier."""
        return not all(self._left.values())

    @cached_property
    def is_empty(self) -> bool:
        """Tell whether nothing at all is left."""
        return not any(self._left.values())

    @cached_property
    def _left(self) -> dict[Tier, list[int]]:
        return {
            tier: [
                number
                for number, values in enumerate(space)
                if self.topic.from_year(tier, *values) <= self.year
            ]
            for tier, space in self.topic.spaces.items()
        }

    def _space(self, tier: Tier) -> Space:
        whole = self.topic.spaces[tier]
        if len(self._left[tier]) == len(whole):
            return whole
        return whole.where(lambda *values: self.topic.from_year(tier, *values) <= self.year)

    def _gone(self, tier: Tier) -> Counter[Content]:
        found = (self.topic.content(tier, *values) for values in self.topic.spaces.get(tier, ()))
        return Counter(
            content for content in found if content is not None and content.from_year > self.year
        )


@cache
def within_year(topic: Topic, year: int | None) -> Topic | WithinYear:
    """Return a topic as a source for a class of a year: itself, where all of it suits.

    >>> from itembank.items.topics.registry import find_topic
    >>> topic = find_topic("fractions.decimals-percentages")
    >>> len(within_year(topic, 7).spaces[Tier.CHALLENGE]) < len(topic.spaces[Tier.CHALLENGE])
    True
    >>> within_year(topic, 10) is topic, within_year(topic, None) is topic
    (True, True)
    """
    if year is None or all(year >= first for first in first_years(topic)):
        return topic
    return WithinYear(topic, year)


def all_beyond(topic: Topic, year: int) -> bool:
    """Tell whether a whole topic is beyond a year."""
    return all(year < first for first in first_years(topic))


def refuse_if_beyond(topic: Topic, year: int | None) -> None:
    """Raise an error where nothing of a topic suits a year.

    Raises:
        ItembankError: all of it is beyond the year; says what it is, and what to do.
    """
    if year is not None and all_beyond(topic, year):
        raise ItembankError(f"{why_beyond(topic, year)} {HOW_TO_ASK}", matter=BEYOND)


def why_beyond(topic: Topic, year: int) -> str:
    """Return the sentence on a topic that is beyond a year as a whole."""
    contents = list(dict.fromkeys(p.content for parts in topic.later.values() for p in parts))
    if not contents:
        return f"{topic.id} is beyond year {year}: it suits classes from year 7 on."
    what = join_words([f"{content}, from year {content.from_year}" for content in contents])
    return f"{topic.id} is beyond year {year}: {what} ({contents[0].document})."
