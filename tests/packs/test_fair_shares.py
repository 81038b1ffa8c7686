"""Who comes first, who gives more, and what stands in: the order and the shares of a pack."""

import random
from collections import Counter
from itertools import pairwise

import pytest

from itembank.items.item import Tier
from itembank.packs.choosing.follow_up import choose_sheet
from itembank.packs.choosing.item_pool import Pool
from itembank.packs.choosing.starter import (
    Share,
    choose_starter,
    nearest_tier,
    share_out,
    slots,
    tier_counts,
)
from itembank.packs.choosing.too_few import TooFew
from tests.packs.small_topics import adding


def short(name, size):
    """Return a topic that may run out of questions: size × (size − 1) / 2 different ones a tier."""
    topic = adding(name, size)
    topic.lacks_a_tier = True
    return topic


def use_up(pool, topic, tier):
    for index in range(len(topic.spaces[tier])):
        pool.take(pool.at(topic, tier, index))


def test_which_topic_has_the_easiest_question_is_drawn_by_lot():
    shares = [Share(adding(f"small.s{n}", 6), 1) for n in range(4)]
    first = Counter(slots(shares, random.Random(seed))[0][0].id for seed in range(200))
    assert len(first) == 4
    assert min(first.values()) > 20


def test_topics_named_first_get_the_extra_questions():
    assert share_out([None, None, None, None], 6) == [2, 2, 1, 1]


@pytest.mark.parametrize("tier", list(Tier))
def test_a_question_that_is_held_takes_the_place_of_its_own_tier(tier):
    topic, pool = adding("small.held", 12), Pool()
    held = pool.at(topic, tier, 3)
    (starter,) = choose_starter([Share(topic, 8)], 1, 5, pool, [held])
    tiers = Counter(question.item.tier for question in starter)
    assert tiers == tier_counts(8)


def test_where_a_tier_is_used_up_the_nearest_stands_in_the_easier_first():
    topic, pool = short("small.near", 4), Pool()
    assert nearest_tier(topic, Tier.CHALLENGE, pool) is Tier.CHALLENGE
    use_up(pool, topic, Tier.CHALLENGE)
    assert nearest_tier(topic, Tier.CHALLENGE, pool) is Tier.CORE
    pool = Pool()
    use_up(pool, topic, Tier.CORE)
    assert nearest_tier(topic, Tier.CORE, pool) is Tier.SUPPORT


def test_a_tier_that_was_all_asked_of_late_comes_after_one_that_was_not(monkeypatch):
    topic, pool = short("small.late", 3), Pool()
    late = [topic.item(Tier.CORE, index) for index in range(len(topic.spaces[Tier.CORE]))]
    known = {item.address: item for item in late}
    monkeypatch.setattr("itembank.packs.choosing.taken_questions.made_once", known.get)
    pool.avoid(list(known), [topic])
    assert nearest_tier(topic, Tier.CORE, pool) is Tier.SUPPORT
    use_up(pool, topic, Tier.SUPPORT)
    use_up(pool, topic, Tier.CHALLENGE)
    assert nearest_tier(topic, Tier.CORE, pool) is Tier.CORE


def test_what_one_topic_cannot_give_is_shared_by_the_others():
    """Of nine the first has one to give: the two that have more give four each."""
    topics = [short("small.few", 2), short("small.x", 8), short("small.y", 8)]
    sheet = choose_sheet(topics, Tier.CORE, 9, opens=False, seed=1, pool=Pool())
    assert Counter(question.item.topic for question in sheet.items) == {
        "small.few": 1,
        "small.x": 4,
        "small.y": 4,
    }


def test_a_sheet_of_topics_with_nothing_left_is_refused_and_not_empty():
    topic, pool = short("small.none", 3), Pool()
    use_up(pool, topic, Tier.CORE)
    with pytest.raises(TooFew):
        choose_sheet([topic], Tier.CORE, 4, opens=False, seed=1, pool=pool)


@pytest.mark.parametrize("seed", range(3))
def test_a_sheet_of_single_questions_goes_from_the_easiest_to_the_hardest(seed):
    topic = adding("small.hard", 18)
    sheet = choose_sheet([topic], Tier.CHALLENGE, 10, opens=False, seed=seed, pool=Pool())
    levels = [question.difficulty for question in sheet.items]
    assert len(set(levels)) > 3
    assert all(a <= b for a, b in pairwise(levels))
