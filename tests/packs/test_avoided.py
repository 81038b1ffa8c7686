"""Questions that a class had of late are passed over, and their twins, while there are others."""

import random

import pytest

from itembank.items.item import Tier
from itembank.packs.choosing import taken_questions
from itembank.packs.choosing.item_pool import Pool
from tests.packs.small_topics import adding

TOPIC = adding("small.few", 4)
"""Pairs of 2, 3, 4, 5: six questions, each in two orders."""
ITEMS = [TOPIC.item(Tier.SUPPORT, index) for index in range(len(TOPIC.spaces[Tier.SUPPORT]))]
ONE_OF_EACH = list({item.twin: item for item in ITEMS}.values())


@pytest.fixture(autouse=True)
def registered(monkeypatch):
    """Have the small topic's addresses be found, though it is not registered."""
    made = {item.address: item for item in ITEMS}
    monkeypatch.setattr(taken_questions, "made_once", made.get)


def avoiding(items):
    pool = Pool()
    pool.avoid([item.address for item in items], [TOPIC])
    return pool


@pytest.mark.parametrize("seed", range(6))
def test_a_question_that_was_had_comes_neither_as_it_was_nor_turned_round(seed):
    assert len(ONE_OF_EACH) == 6
    rng = random.Random(seed)
    left = ONE_OF_EACH[seed]
    pool = avoiding([item for item in ONE_OF_EACH if item is not left])
    assert pool.pick(TOPIC, Tier.SUPPORT, rng).item.twin == left.twin


@pytest.mark.parametrize("seed", range(3))
def test_where_all_were_had_one_comes_again_and_none_twice(seed):
    rng = random.Random(seed)
    pool = avoiding(ONE_OF_EACH[1:])
    taken = [pool.pick(TOPIC, Tier.SUPPORT, rng).item.twin for _ in ONE_OF_EACH]
    assert taken[0] == ONE_OF_EACH[0].twin
    assert len(set(taken)) == len(ONE_OF_EACH)
