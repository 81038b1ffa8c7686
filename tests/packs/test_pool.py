"""Which question a pool gives: in what order, at what cost, and what it takes with it."""

import random
from itertools import islice, pairwise

import pytest

from itembank.items.item import Tier
from itembank.packs.choosing.chance import generator, shuffled
from itembank.packs.choosing.item_pool import TOO_DEAR, Pool
from itembank.packs.choosing.starter import Share, _dealt
from itembank.packs.choosing.too_few import TooFew
from itembank.packs.data.source import InOrder
from tests.packs.small_topics import adding

TOPIC = adding("small.pool", 18)
"""306 questions a tier: more than are looked at, and than are shuffled as a list."""
SIZE = len(TOPIC.spaces[Tier.SUPPORT])


def offered(seed, pool=None):
    return (pool or Pool()).offers(TOPIC, Tier.SUPPORT, random.Random(seed))


def picked(seed, cost, look_ahead=24, **options):
    rng = random.Random(seed)
    return Pool().pick(TOPIC, Tier.SUPPORT, rng, cost, look_ahead, **options)


@pytest.mark.parametrize("seed", range(4))
def test_of_those_that_cost_the_same_the_first_that_is_offered_is_taken(seed):
    first = next(offered(seed))
    assert picked(seed, lambda candidate: 1.0).index == first.index


@pytest.mark.parametrize("seed", range(4))
def test_the_first_that_costs_nothing_ends_the_search(seed):
    looked = []

    def cost(candidate):
        looked.append(candidate.index)
        return float(len(looked) < 5)

    assert picked(seed, cost).index == looked[4]
    assert len(looked) == 5


@pytest.mark.parametrize("seed", range(4))
def test_the_cheapest_of_those_looked_at_is_taken_and_no_more_are_looked_at(seed):
    few = [candidate.index for candidate in islice(offered(seed), 8)]
    assert picked(seed, lambda candidate: 1 + candidate.index, 8).index == min(few)


def test_each_question_has_its_turn_to_be_first():
    """A lot as fair as can be: none of 30 comes first more than thrice as often as it should."""
    topic = adding("small.lot", 6)  # 30 questions
    counts = [0] * len(topic.spaces[Tier.SUPPORT])
    for seed in range(900):
        rng = random.Random(seed)
        counts[next(Pool().offers(topic, Tier.SUPPORT, rng)).index] += 1
    assert min(counts) > 0
    assert max(counts) <= 3 * 900 / len(counts)


def test_the_last_half_of_a_large_space_comes_in_an_order_of_its_own_too():
    """What is left once half of a space was drawn does not come in the order of its addresses."""
    late = list(shuffled(1000, random.Random(1)))[500:]
    rising = sum(a < b for a, b in pairwise(late))
    assert 200 < rising < 300


def test_each_purpose_has_chance_of_its_own():
    """Else a longer sheet would change the starter, and versions would be the first one again."""
    purposes = ("starter", "starter/1", "sheet/core", "sheet/support", "version/1")
    draws = {tuple(generator(7, purpose).choices(range(99), k=8)) for purpose in purposes}
    assert len(draws) == len(purposes)


@pytest.mark.parametrize("seed", range(3))
def test_what_nothing_fits_is_looked_for_without_the_wish(seed):
    assert picked(seed, lambda candidate: 0, fits=lambda source, tier, index: False)


@pytest.mark.parametrize("seed", range(3))
def test_only_what_fits_is_taken_while_there_is_any(seed):
    wanted = SIZE - 1
    found = picked(seed, lambda candidate: 0, fits=lambda source, tier, index: index == wanted)
    assert found.index == wanted


def sums_alike(item):
    return ("sum", item.key)


def test_the_same_question_of_another_source_goes_and_comes_back_with_what_was_taken():
    first, second = adding("small.a", 5), adding("small.b", 5)
    pool = Pool(same=sums_alike)
    mine, theirs = (pool.at(topic, Tier.SUPPORT, 0) for topic in (first, second))
    assert mine.item.twin != theirs.item.twin
    pool.take(mine)
    assert not pool.free(theirs)
    pool.give_back(mine)
    assert pool.free(mine)
    assert pool.free(theirs)


def test_what_is_too_dear_is_taken_where_there_is_nothing_else():
    assert picked(0, lambda candidate: TOO_DEAR + 1)


@pytest.mark.parametrize("seed", range(3))
def test_what_was_avoided_is_avoided_again_after_it_had_to_be_asked(seed, monkeypatch):
    """That one tier has nothing else left says nothing of the next."""
    topic = adding("small.few", 2)  # one question, in two orders
    more = adding("small.more", 4)
    items = [source.item(Tier.SUPPORT, 0) for source in (topic, more)]
    known = {item.address: item for item in items}
    monkeypatch.setattr("itembank.packs.choosing.taken_questions.made_once", known.get)
    pool, rng = Pool(), random.Random(seed)
    pool.avoid(list(known), [topic, more])
    assert pool.pick(topic, Tier.SUPPORT, rng).item.twin == items[0].twin
    for _ in range(5):  # six questions are different, and one of them is to be avoided
        assert pool.pick(more, Tier.SUPPORT, rng).item.twin != items[1].twin
    assert pool.pick(more, Tier.SUPPORT, rng).item.twin == items[1].twin


def test_room_counts_different_questions_and_not_addresses():
    """Six sums of two of four numbers, each in two orders, in two sources that hold the same."""
    topics = [adding(name, 4) for name in ("small.own", "small.theirs")]
    for topic in topics:
        topic.lacks_a_tier = True  # so that it may run out, and is counted
    pool = Pool(same=lambda item: ("sum", *item.twin[2:]))
    assert pool.room(topics[0], Tier.SUPPORT) == 6
    both = InOrder(*topics)
    assert len({pool.at(topic, Tier.SUPPORT, 0).item.twin for topic in topics}) == 2
    assert pool.room(both, Tier.SUPPORT) == 6
    pool.take(pool.at(topics[0], Tier.SUPPORT, 0))
    assert pool.room(both, Tier.SUPPORT) == 5
    assert pool.room(both, Tier.SUPPORT, most=2) == 2


def test_a_deal_that_finds_too_few_questions_leaves_all_of_them_to_the_next():
    """A starter may be dealt anew to fit a slide; a deal that fails took some before it failed."""
    topic = adding("small.few", 2)
    pool = Pool()
    with pytest.raises(TooFew):
        _dealt([Share(topic, 6)], 1, pool, [])
    for tier in Tier:
        assert all(map(pool.free, (pool.at(topic, tier, index) for index in range(2))))
