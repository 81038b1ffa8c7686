"""Questions of one kind: those of a topic that has it, and plain words where it has none."""

import random

import pytest

from itembank.items.item import Tier
from itembank.items.measures.kind_told import kind_told
from itembank.items.topics.of_kind import NoSuchKind, all_kinds, kinds_of, of_kind, the_kind
from itembank.items.topics.registry import find_topic


@pytest.mark.parametrize("id", ["equations.one-step", "ratio.unit-form", "fractions.equivalent"])
def test_every_kind_that_is_told_is_found_and_nothing_else(id):
    topic = find_topic(id)
    for kind in kinds_of(topic):
        assert kind in all_kinds()
        found = [
            (tier, *each)
            for tier in topic.spaces
            for each in of_kind(topic, tier, kind, 3, random.Random(7))
        ]
        assert found, kind
        assert len({(tier, index) for tier, index, _ in found}) == len(found)
        for tier, index, item in found:
            assert kind_told(item.ask, item.prompt) == kind
            assert item.address == f"{id}/{tier.value}/{index}"


def test_no_kind_of_a_tier_is_missed_that_a_walk_over_it_meets():
    topic = find_topic("ratio.unit-form")
    for tier in topic.spaces:
        met = {kind_told(item.ask, item.prompt) for item in topic.walk(tier)}
        assert set(kinds_of(topic, (tier,))) == met


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ("spot the mistake", "no questions of the kind"),
        ("tru or flase", "Did you mean true or false?"),
        ("", "There is no kind of question called ‘’"),
    ],
)
def test_what_is_not_there_is_said_with_what_is(typed, says):
    with pytest.raises(NoSuchKind) as told:
        the_kind(typed, find_topic("ratio.unit-form"), (Tier.CORE,), "Unit form")
    assert says in str(told.value)
    assert "Unit form has work it out, " in str(told.value)
