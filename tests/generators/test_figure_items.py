"""Questions about figures: keys and mistakes found again from the words for who cannot see."""

from __future__ import annotations

import random
from functools import cache
from itertools import islice

import pytest

from itembank.figures.figure import words
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import topics
from itembank.items.topics.space_part import is_other_kind
from itembank.items.topics.topic import Topic
from itembank.notation import line
from tests.depth import cases, whole
from tests.generators.asked_plainly import plain
from tests.generators.figure_methods import FIGURE_METHODS, KEYS, answer, seen
from tests.generators.mistakes import each_mistake

MOST = cases(60, 150, 150)
FIGURED = tuple(
    topic
    for topic in topics()
    if topic.strand in ("fractions", "ratio") and topic.id.partition(".")[2] in KEYS
)
each_topic = pytest.mark.parametrize("topic", FIGURED, ids=lambda topic: topic.id)


@cache
def with_figures(topic: Topic) -> tuple[Item, ...]:
    """Return up to `MOST` questions of each tier that show a figure, made once for all tests."""
    found: list[Item] = []
    for tier in Tier:
        space = topic.spaces[tier]
        # Some topics have them at a space's end, as a kind of their own; others among the rest.
        asked = sorted(plain(topic, tier))
        asked.sort(key=lambda n: not is_other_kind(space[n]))
        last = sum(is_other_kind(space[n]) for n in asked)
        rng = random.Random(topic.id)
        chosen = [
            *rng.sample(asked[:last], last),
            *rng.sample(asked[last:], len(asked) - last),
        ]
        drawn = (item for index in chosen if (item := topic.item(tier, index)).figure is not None)
        found += islice(drawn, MOST)
    return tuple(found)


@whole
@each_topic
def test_the_key_is_found_again_from_the_words_alone(topic: Topic) -> None:
    items = with_figures(topic)
    assert len(items) > 40
    for item in items:
        found = seen(item)
        assert answer(line(item.key)) == KEYS[topic.id.partition(".")[2]](found), found


@whole
@each_topic
def test_each_mistake_is_what_its_method_gives(topic: Topic) -> None:
    name = topic.id.partition(".")[2]
    used = set()
    for item in with_figures(topic):
        found = seen(item)
        for slip in each_mistake(item):
            which = name, slip.misconception.id.partition(".")[2]
            used.add(which)
            assert answer(line(slip.wrong)) == FIGURE_METHODS[which](found), (which, found)
    assert used == {which for which in FIGURE_METHODS if which[0] == name}


@each_topic
def test_no_figure_is_asked_about_twice_in_the_same_words(topic: Topic) -> None:
    asked = [(words(item.figure), item.prompt) for item in with_figures(topic) if item.figure]
    assert len({*asked}) == len(asked)
