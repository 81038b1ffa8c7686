"""The difficulty measure against pairs judged one by one, and along the tiers of every topic."""

import random
from dataclasses import replace
from statistics import mean, median

import pytest

from itembank.items.item import Find, Item, Tier, prompt
from itembank.items.measures.difficulty import EXPECTED_LINES, WEIGHTS, difficulty, parts_of
from itembank.items.measures.features import features
from itembank.items.topics.registry import find_item, find_topic, topic_ids
from itembank.notation.parse import parse
from tests.depth import cases, some, whole
from tests.items.judged import Pair, bank_items, pairs, rows

LOOKED_AT = cases(40, 300)
"""Items of a tier that are looked at: enough for its middle, and for a share below it."""
BELOW = 0.4
"""Most of a tier that may lie below the middle of the tier below it."""
BELOW_ON_AVERAGE = 0.06


def gap(pair: Pair) -> float:
    return difficulty(pair.first) - difficulty(pair.second)


def agreement(chosen) -> float:
    """Return the share of pairs that the measure orders as the judge did; a tie is no order."""
    return mean(gap(pair) * pair.harder > 0 for pair in chosen)


def ordered(held_out: bool) -> list[Pair]:
    return [pair for pair in pairs() if pair.harder and pair.held_out is held_out]


def without_working(item: Item) -> Item:
    return replace(item, steps=())


def test_nearly_all_pairs_still_stand_as_they_were_judged():
    assert len(pairs()) >= 0.9 * len(rows())
    assert len(ordered(False)) >= 165
    assert len(ordered(True)) >= 80


def test_pairs_are_of_all_kinds_and_each_has_its_reason():
    for kind, least in (("one topic", 120), ("one strand", 60), ("two strands", 100)):
        assert sum(row["pair"] == kind for row in rows()) >= least
    assert all(len(row["reason"]) > 10 for row in rows())
    assert len({frozenset((row["first"], row["second"])) for row in rows()}) == len(rows())


def test_agreement_with_the_judge_on_the_pairs_fitted_to():
    assert agreement(ordered(False)) >= 0.93


def test_agreement_with_the_judge_on_the_pairs_held_out():
    assert agreement(ordered(True)) >= 0.85


def test_a_question_judged_much_harder_always_comes_out_harder():
    wrong = [pair.number for pair in pairs() if pair.much and gap(pair) * pair.harder <= 0]
    assert wrong == []


@pytest.mark.parametrize("held_out", [False, True])
def test_questions_judged_equal_lie_nearer_than_those_that_are_not(held_out):
    equal = [abs(gap(p)) for p in pairs() if not p.harder and p.held_out is held_out]
    much = [abs(gap(p)) for p in pairs() if p.much and p.held_out is held_out]
    assert median(equal) < 0.5 * median([abs(gap(p)) for p in ordered(held_out)])
    assert mean(equal) < 0.3 * mean(much)


def test_a_question_whose_working_nobody_wrote_is_on_the_same_scale():
    """The order survives without any working; no question moves far, nor all of them together."""
    judged = [pair for pair in pairs() if pair.harder]
    bare = [
        (difficulty(without_working(p.first)) - difficulty(without_working(p.second))) * p.harder
        for p in judged
    ]
    assert mean(number > 0 for number in bare) >= 0.82
    items = {item.address: item for pair in judged for item in (pair.first, pair.second)}
    moved = [difficulty(without_working(item)) - difficulty(item) for item in items.values()]
    assert abs(mean(moved)) < 0.3
    assert mean(map(abs, moved)) < 0.8


def looked_at(topic: str, tier: Tier) -> list[float]:
    source = find_topic(topic)
    own = source.spaces[tier].own
    count = min(len(own), LOOKED_AT)
    # From all over the tier: a middle of so few drawn by lot would be too unsteady.
    places = [own[n * len(own) // count] for n in range(count)]
    return [difficulty(source.item(tier, place)) for place in places]


def below(topic: str) -> tuple[float, float]:
    """Return the share of core below the middle of support, and of challenge below core's."""
    support, core, challenge = (looked_at(topic, tier) for tier in Tier)
    assert median(support) < median(core) < median(challenge), topic
    return (
        mean(number < median(support) for number in core),
        mean(number < median(core) for number in challenge),
    )


@whole
def test_difficulty_rises_from_tier_to_tier_in_every_topic_and_for_nearly_every_question():
    shares = {topic: below(topic) for topic in some(topic_ids(), 30)}
    assert {topic: share for topic, share in shares.items() if max(share) > BELOW} == {}
    assert mean(share for both in shares.values() for share in both) < BELOW_ON_AVERAGE


def test_neither_the_topic_nor_the_tier_is_looked_at():
    for item in random.Random(4).sample(sorted(bank_items().values(), key=str), 50):
        other = replace(item, topic="none.at-all", tier=Tier.CHALLENGE, address="x:y")
        assert difficulty(other) == difficulty(item)


def test_every_weight_is_of_something_counted_and_every_part_adds_up():
    counted = set(features(find_item("ratio.share/core/12")))
    assert set(WEIGHTS) | set(EXPECTED_LINES) <= counted
    assert counted - set(WEIGHTS) <= {"working", "size on the way"}
    assert min(WEIGHTS.values()) > 0
    for address in ("ratio.share/challenge/9", "equations.both-sides/core/234"):
        item = find_item(address)
        assert sum(parts_of(item).values()) == pytest.approx(difficulty(item), abs=0.05)


def bare(words: str, asked: str, key: str) -> float:
    """Return the difficulty of a question without working."""
    target = parse(asked)
    runs = prompt(words, e=target)
    item = Item("x/core/0", "x", Tier.CORE, runs, Find(target), parse(key), "", (), (), (), 1, ())
    return difficulty(item)


def test_a_recurring_decimal_is_harder_to_change_than_a_percentage_or_a_plain_decimal():
    recurring = bare("Write {e} as a fraction in its lowest terms.", "0.8\u03070\u0307", "80/99")
    plain_one = bare("Write {e} as a fraction in its lowest terms.", "0.32", "8/25")
    percentage = bare("Write {e} as a decimal.", "49%", "0.49")
    assert recurring > plain_one + 0.5
    assert recurring > percentage + 0.5


def test_the_size_of_the_numbers_weighs_less_than_a_line_of_working():
    tenfold = WEIGHTS["size"]
    assert tenfold < 0.5 * WEIGHTS["lines"]


@pytest.mark.parametrize("topic", topic_ids())
def test_one_more_line_of_working_never_makes_a_question_easier(topic):
    for tier in Tier:
        item = find_topic(topic).item(tier, 3)
        longer = replace(item, steps=(*item.steps, item.steps[-1]))
        assert difficulty(longer) >= difficulty(item)
