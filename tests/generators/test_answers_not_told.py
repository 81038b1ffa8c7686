"""No question to ask a pupil tells the answer, and none is too long to be read aloud."""

from __future__ import annotations

import random
import re

import pytest

from itembank.items.item import Tier
from itembank.items.topics.registry import topics
from itembank.notation import line
from itembank.notation import tree as t
from tests.depth import cases, each, whole
from tests.generators.mistakes import each_mistake

ASKED = cases(6, 60, 30)
"""Questions of each tier that are looked at."""
LARGE = 24
"""Smaller numbers stand in questions by chance: 3 × 4 on an item whose answer is 3."""


def numbers(text):
    return set(re.findall(r"(?<![\w./])-?\d+(?:[./]\d+)?(?![\w/\u0307])", text.replace("−", "-")))


def telling(key):
    """Return the numbers of a key that no text holds by chance."""
    return {n for n in numbers(key) if "/" in n or "." in n or abs(int(n)) > LARGE}


@whole
@pytest.mark.parametrize("topic", each(topics(), 52), ids=lambda topic: topic.id)
def test_no_question_to_ask_tells_the_answer(topic):
    told = []
    for tier in Tier:
        own = topic.spaces[tier].own
        for index in random.Random(f"{topic.id}/{tier}").sample(own, min(len(own), ASKED)):
            item = topic.item(tier, index)
            if isinstance(item.key, t.Label) or item.form in ("list", "sign"):
                continue
            printed = "".join(run if isinstance(run, str) else line(run) for run in item.prompt)
            for slip in each_mistake(item):
                seen = numbers(printed) | numbers(line(slip.wrong)) | {"1/2", "1/4", "0.5", "50"}
                ask = slip.misconception.ask
                key = line(item.key)
                if (
                    key in ask
                    if isinstance(item.key, t.Mixed)
                    else (telling(key) - seen) & numbers(ask)
                ):
                    told.append((item.address, line(item.key), ask))
    assert told == []


@whole
@pytest.mark.parametrize("topic", each(topics(), 52, 1), ids=lambda topic: topic.id)
def test_a_question_to_ask_is_short_and_points_where_it_says(topic):
    for tier in Tier:
        own = topic.spaces[tier].own
        for index in random.Random(f"{topic.id}/{tier}").sample(own, min(len(own), ASKED // 2)):
            item = topic.item(tier, index)
            words = "".join(run for run in item.prompt if isinstance(run, str))
            for slip in each_mistake(item):
                ask = slip.misconception.ask
                if "last sentence" in ask:
                    assert words.endswith("?"), (words, ask)
                assert len(ask) <= 110, ask
                assert max(len(part.split()) for part in re.split(r"[.?:]", ask)) <= 20, ask
                assert ask[-1] in "?."
                assert "  " not in ask
