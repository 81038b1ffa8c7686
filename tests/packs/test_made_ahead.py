"""What a copy of this process made beside it changes nothing of what is chosen."""

import pytest

from itembank.items.item import Tier
from itembank.items.topics.registry import find_topic
from itembank.packs.build import starter_addresses
from itembank.packs.choosing import made_ahead
from itembank.packs.choosing.item_pool import Pool
from itembank.packs.choosing.question_room import room_of
from itembank.pages.draw import fits_slides
from itembank.planning.department.pack_request import PlannedTopic
from tests.depth import left
from tests.packs.packs import request

DRAWN = (
    ("geometry.constructions", "statistics.scatter-graphs", "probability.venn"),
    ("geometry.plans", "statistics.pie-charts", "probability.trees", "geometry.similarity"),
)


@pytest.fixture
def kept(monkeypatch):
    """Note each question that was made in another process and is known here then."""
    found = []
    keep = Pool.keep

    def noting(self, source, tier, index, item):
        found.append(item.address)
        return keep(self, source, tier, index, item)

    monkeypatch.setattr(Pool, "keep", noting)
    return found


@pytest.mark.parametrize(
    ("topics", "seed"),
    [left(DRAWN[0], 1), left(DRAWN[0], 2), (DRAWN[1], 1), left(DRAWN[1], 2)],
)
def test_the_same_is_chosen_on_one_core(two_cores, kept, monkeypatch, topics, seed):
    asked = request(topics=tuple(map(PlannedTopic, topics)), seed=seed)
    by_two = starter_addresses(asked, fits_slides)
    made, kept[:] = list(kept), []
    monkeypatch.setattr(made_ahead, "cores", lambda: 1)
    assert starter_addresses(asked, fits_slides) == by_two
    assert not kept
    if seed == 1:
        assert len(made) > 50, "a second process made none"


def test_what_comes_back_is_what_would_be_made_here(two_cores):
    topics = {name: find_topic(name) for name in ("geometry.similarity", "probability.venn")}
    places = [(name, Tier.CORE) for name in topics]
    pool, shares = Pool(), {}

    def look(topic, tier):
        for index in range(5):
            candidate = pool.at(topics[topic], tier, index)
            shares[candidate.item.address, False] = room_of(candidate)

    made_ahead.make_ahead(places, look, topics, pool, shares)
    assert len(shares) == 10
    for name, topic in topics.items():
        made = pool.made(topic, Tier.CORE)
        assert sorted(made) == [0, 1, 2, 3, 4]
        for index, candidate in made.items():
            assert candidate is pool.at(topic, Tier.CORE, index)
            here = Pool().at(topic, Tier.CORE, index)
            assert candidate == here
            assert candidate.figure_size == here.figure_size
            assert shares[f"{name}/core/{index}", False] == room_of(here)


def test_a_process_that_dies_leaves_the_work_to_this_one(two_cores, monkeypatch):
    import os

    topics = {name: find_topic(name) for name in ("geometry.similarity", "probability.venn")}
    here, pool, shares = os.getpid(), Pool(), {}

    def look(topic, tier):
        if os.getpid() != here:
            os._exit(0)
        shares[topic, False] = room_of(pool.at(topics[topic], tier, 0))

    made_ahead.make_ahead([(name, Tier.CORE) for name in topics], look, topics, pool, shares)
    assert len(shares) == 1
