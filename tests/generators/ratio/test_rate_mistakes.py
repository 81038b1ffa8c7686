"""Each likely mistake on rates, units, money and inverse proportion, carried out once more."""

from __future__ import annotations

import random
import re
from collections.abc import Iterator
from fractions import Fraction

import pytest

from itembank.items.item import Item, Slip, Tier
from itembank.items.topics.registry import find_topic
from itembank.items.topics.topic import Topic
from itembank.notation import line
from tests.depth import cases, only_whole, whole
from tests.generators.mistakes import each_mistake, shown_by_own
from tests.generators.ratio.rate_methods import RATES, Amount, Asked

NAMES = ("speed", "density", "currency", "convert-units", "compound-units", "inverse-proportion")
TOPICS = tuple(find_topic(f"ratio.{name}") for name in NAMES)
SAMPLE = cases(50, 200, 200)


def sample(topic: Topic) -> Iterator[Item]:
    for tier in Tier:
        own = topic.spaces[tier].own
        chosen = random.Random(f"{topic.id}/{tier}").sample(own, min(SAMPLE, len(own)))
        yield from (topic.item(tier, index) for index in chosen)


def printed(item: Item) -> str:
    return "".join(run if isinstance(run, str) else line(run) for run in item.prompt)


def wrong_value(slip: Slip) -> Fraction | str | tuple[Amount, ...]:
    text = line(slip.wrong)
    if text.startswith('"'):
        return text.strip('"')
    amounts = tuple(Asked(text).amounts)
    return amounts[0].n if len(amounts) == 1 else amounts


@whole
@pytest.mark.parametrize("topic", TOPICS, ids=lambda topic: topic.id)
def test_a_slip_is_what_its_wrong_method_gives_on_the_printed_question(topic: Topic) -> None:
    for item in sample(topic):
        text = printed(item)
        for slip in each_mistake(item):
            found = RATES[slip.misconception.id.partition(".")[2]](Asked(text))
            wrong = wrong_value(slip)
            assert wrong in found, (item.address, text, slip.misconception.name, wrong, found)


@only_whole
def test_every_misconception_of_these_topics_has_its_method() -> None:
    declared = {name.partition(".")[2] for topic in TOPICS for name in shown_by_own(topic)}
    assert declared == set(RATES)


@whole
def test_a_wrong_answer_has_the_unit_of_the_right_one() -> None:
    sign = re.compile(r"[£€$]|[a-z][a-z/^0-9]*$")

    def unit(text: str) -> str:
        found = sign.search(text)
        return re.sub("(day|week)s$", r"\1", found[0]) if found else ""

    for topic in TOPICS:
        for item in sample(topic):
            key = line(item.key)
            if key.startswith('"') or "," in key:
                continue
            for slip in each_mistake(item):
                assert unit(line(slip.wrong)) == unit(key), item.address
