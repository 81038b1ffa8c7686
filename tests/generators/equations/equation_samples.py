"""The topics on equations, and the same sample of their questions for every test."""

from __future__ import annotations

import random
from collections.abc import Iterator
from functools import cache
from typing import NamedTuple

from itembank.figures.figure import words as figure_words
from itembank.items.item import Item, Run, Tier
from itembank.items.topics.registry import find_topic
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t
from itembank.notation.line import line
from tests.generators.mistakes import own_items

NAMES = (
    "one-step",
    "two-step",
    "brackets",
    "both-sides",
    "both-sides-brackets",
    "fractional",
    "negative-solutions",
    "form-and-solve",
    "substitution",
    "inequalities",
)
MOST = 400
"""Items of a tier in a sample: the most that a test here asks for."""
SOLVED = NAMES[:7]
BOTH = ("both-sides", "both-sides-brackets", "fractional", "negative-solutions")


def topic(name: str) -> Topic:
    return find_topic(f"equations.{name}")


@cache
def places_of(name: str, tier: Tier) -> tuple[int, ...]:
    """Return where the sample of a tier stands in its space, always at the same places."""
    own = topic(name).spaces[tier].own
    return tuple(random.Random(name).sample(own, min(MOST, len(own))))


@cache
def item_at(name: str, tier: Tier, index: int) -> Item:
    """Return an item, made once for all tests, and only where one asks for it."""
    return topic(name).item(tier, index)


def sampled(name: str, count: int, tiers: tuple[Tier, ...] = tuple(Tier)) -> Iterator[Item]:
    """Yield `count` items of each tier, always the same ones."""
    assert count <= MOST
    for tier in tiers:
        yield from (item_at(name, tier, index) for index in places_of(name, tier)[:count])


class Asked(NamedTuple):
    """What an item prints, and its key: of every item, since these take little room."""

    prompt: tuple[Run, ...]
    key: t.Node
    text: str


@cache
def walked(name: str, tier: Tier) -> tuple[Asked, ...]:
    """Return what every item of a tier asks, in order, made once for all tests."""
    return tuple(Asked(item.prompt, item.key, text(item)) for item in own_items(topic(name), tier))


def printed(name: str, tier: Tier) -> list[str]:
    """Return what every item of a tier prints, in order."""
    return [asked.text for asked in walked(name, tier)]


def text(item: Item) -> str:
    """Return what is read aloud: the prompt, and after it what is said of its figure."""
    asked = "".join(run if isinstance(run, str) else line(run) for run in item.prompt)
    return asked if item.figure is None else f"{asked} {figure_words(item.figure)}"
