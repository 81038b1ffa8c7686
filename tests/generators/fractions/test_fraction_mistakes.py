"""Each likely mistake on fractions, carried out again from the printed question.

A method below reads only the printed line and does what the name of its misconception says, in
:class:`fractions.Fraction`. What it gets must be the wrong answer of the slip, on random items of
every tier. The methods share no code with the generators.
"""

from __future__ import annotations

import random
import re
from collections.abc import Iterator

import pytest

from itembank.items.item import Item, Tier
from itembank.items.topics.registry import topics
from itembank.items.topics.topic import Topic
from itembank.notation import line
from tests.depth import cases, only_whole, whole
from tests.generators.figure_methods import FIGURE_METHODS
from tests.generators.fractions.fraction_methods import printed, read
from tests.generators.fractions.fraction_mistakes import METHODS
from tests.generators.mistakes import each_mistake, shown_by_own

TOPICS = tuple(topic for topic in topics() if topic.id.startswith("fractions."))

SAMPLE = cases(40, 120, 120)


def sample(topic: Topic) -> Iterator[Item]:
    for tier in Tier:
        own = topic.spaces[tier].own
        chosen = random.Random(f"{topic.id}/{tier}").sample(own, min(SAMPLE, len(own)))
        items = (topic.item(tier, index) for index in chosen)
        # Shaded shapes are read here too; other figures have a reader of their own.
        shapes = topic.id == "fractions.shaded"
        yield from (item for item in items if shapes or item.figure is None)


@whole
@pytest.mark.parametrize("topic", TOPICS, ids=lambda topic: topic.id)
def test_a_slip_is_what_its_wrong_method_gives_on_the_printed_question(topic: Topic) -> None:
    name = topic.id.partition(".")[2]
    for item in sample(topic):
        for slip in each_mistake(item):
            method = METHODS[name, slip.misconception.id.partition(".")[2]]
            text = line(slip.wrong)
            found = method(item)
            same = text == found if isinstance(found, str) else read(text) == found
            assert same, (item.address, printed(item), slip.misconception.name, text, found)


@only_whole
def test_every_misconception_of_the_strand_has_its_method() -> None:
    declared = {
        (topic.id.partition(".")[2], misconception.id.partition(".")[2])
        for topic in TOPICS
        for misconception in topic.misconceptions
        if misconception.id in shown_by_own(topic)
    }
    on_figures = declared & FIGURE_METHODS.keys()
    assert declared == set(METHODS) | on_figures


@whole
def test_no_question_to_ask_speaks_of_another_operation() -> None:
    # The signs of a question to ask stand in the printed question too; changing the numbers of
    # its example is no change of operation. A sum of equal parts may stand for a product.
    allowed = {"multiply": "+×", "divide": "÷"}
    for topic in TOPICS:
        name = topic.id.partition(".")[2]
        for item in sample(topic):
            text = printed(item).replace("-", "−")
            signs = set(re.findall(r"[+−×÷]", text)) | set(allowed.get(name, ""))
            if "□" in text and set("+−") & signs:
                # An addition with a box is undone by subtracting, and the other way round.
                signs |= set("+−")
            # A story names its operation in words.
            if not re.search(r"[+−×÷]", text):
                continue
            for slip in each_mistake(item):
                said = set(re.findall(r"[+−×÷]", slip.misconception.ask))
                assert said <= signs, (printed(item), slip.misconception.ask)


@whole
def test_a_question_about_kept_numerators_shows_a_fraction_of_the_item_and_one_it_is_not() -> None:
    asked = re.compile(r"Is (\d+)/(\d+) worth as much as (\d+)/(\d+)\?.*")
    for topic in TOPICS:
        if topic.id not in ("fractions.add-unlike", "fractions.add-mixed"):
            continue
        for item in sample(topic):
            for slip in each_mistake(item):
                which = slip.misconception
                if which.id == "fractions.keep-numerators" and which not in topic.misconceptions:
                    found = asked.fullmatch(slip.misconception.ask)
                    assert found, slip.misconception.ask
                    n, d, kept, common = map(int, found.groups())
                    assert f"{n}/{d}" in printed(item)
                    assert n == kept
                    assert d != common
                    assert common % d == 0
