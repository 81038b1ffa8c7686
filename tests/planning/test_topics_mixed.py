"""A starter mixes recent topics, older ones and those of earlier years."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.planning.choosing.choose_topics import ChoiceSettings, choose_topics
from itembank.planning.choosing.topic_programme import limits_of, mix
from tests.planning.choice_samples import counts, some_topics, topic, week


def test_recent_and_older_topics_are_mixed():
    recent = [topic(f"r{k}", 4 + k, 29, 1) for k in range(4)]  # just seen and nearly all right
    older = [topic(f"o{k}", 60 + k, 6, 30) for k in range(12)]
    (choice,) = choose_topics(week(0), recent + older, {})
    assert sum(name.startswith("r") for name in counts(choice)) == 1
    more = ChoiceSettings(fewest_recent=3)
    (choice,) = choose_topics(week(0), recent + older, {}, more)
    assert sum(name.startswith("r") for name in counts(choice)) == 3


@pytest.mark.parametrize(("pinned", "further"), [(0, 3), (1, 2), (3, 0), (4, 0)])
def test_what_is_pinned_counts_among_the_older_questions(pinned, further):
    topics = [topic(f"r{k}", 4 + k) for k in range(8)] + [topic(f"o{k}", 60 + k) for k in range(8)]
    (lesson,) = week(0, pinned={f"o{k}": 1 for k in range(pinned)})
    rules = ChoiceSettings(fewest_recent=0, fewest_older=3)
    asked = mix(lesson, topics, *limits_of(lesson, topics), rules)
    assert [fewest for _, fewest in asked] == ([further] if further else [])


def test_what_is_wanted_of_recent_and_of_older_topics_never_exceeds_a_short_starter():
    """Four and four of eight are 1.5 and 1.5 of three: each is rounded up, and there are three."""
    topics = [topic(f"r{k}", 4 + k) for k in range(6)] + [topic(f"o{k}", 60 + k) for k in range(6)]
    rules = ChoiceSettings(fewest_recent=4, fewest_older=4, fewest_this_year=0)
    (lesson,) = week(0, questions=3)
    assert [n for _, n in mix(lesson, topics, *limits_of(lesson, topics), rules)] == [2, 1]
    (choice,) = choose_topics([lesson], topics, {}, rules)
    assert sum(counts(choice).values()) == 3
    assert sum(name.startswith("r") for name in counts(choice)) == 2


@pytest.mark.parametrize(("wanted", "this_year"), [(0, 0), (4, 4), (8, 8)])
def test_topics_of_this_year_have_their_share(wanted, this_year):
    # What earlier years taught was never seen since: by worth alone it would take everything.
    earlier = [replace(topic(f"e{k}", 700 + k), earlier=True) for k in range(12)]
    now = [topic(f"n{k}", 40 + k, 29, 1) for k in range(12)]
    rules = ChoiceSettings(fewest_recent=0, fewest_older=0, fewest_this_year=wanted)
    (choice,) = choose_topics(week(0), earlier + now, {}, rules)
    assert sum(name.startswith("n") for name in counts(choice)) == this_year


@pytest.mark.parametrize("there", range(5))
def test_in_september_earlier_years_fill_a_starter(there):
    earlier = [replace(topic(f"e{k}", 400 + k), earlier=True) for k in range(12)]
    now = [topic(f"n{k}", 3 + k, 29, 1) for k in range(there)]
    (choice,) = choose_topics(week(0), earlier + now, {})
    assert sum(counts(choice).values()) == 8
    assert sum(name.startswith("n") for name in counts(choice)) == there


@given(
    st.integers(0, 6), st.integers(0, 6), st.integers(0, 12), st.integers(0, 8), st.integers(0, 8)
)
def test_whatever_is_wanted_of_this_year_can_be_had(fresh, older, earlier, recent, this_year):
    topics = [topic(f"f{k}", 5 + k) for k in range(fresh)]
    topics += [topic(f"o{k}", 60 + k) for k in range(older)]
    topics += [replace(topic(f"e{k}", 400 + k), earlier=True) for k in range(earlier)]
    if not topics:
        return
    rules = ChoiceSettings(
        fewest_recent=recent, fewest_older=8 - recent, fewest_this_year=this_year
    )
    (choice,) = choose_topics(week(0), topics, {}, rules)
    assert sum(counts(choice).values()) == 8


@pytest.mark.parametrize(("days", "recent"), [(20, True), (21, True), (22, False)])
def test_a_topic_is_recent_up_to_so_many_days_after_it_was_taught(days, recent):
    topics = [topic("edge", days), *some_topics(9)[3:]]
    (lesson,) = week(0, questions=4)
    rules = ChoiceSettings(recent=21, fewest_recent=8, fewest_older=0)
    ((places, _),) = mix(lesson, topics, [0] * 7, [1] * 7, rules) or [([], 0)]
    assert (0 in places) == recent


def test_recent_topics_of_this_year_are_among_those_of_this_year():
    topics = [topic(f"n{k}", 5 + k) for k in range(12)]
    topics += [replace(topic(f"e{k}", 400 + k), earlier=True) for k in range(12)]
    (lesson,) = week(0)
    rules = ChoiceSettings(fewest_recent=4, fewest_older=0, fewest_this_year=8)
    assert [n for _, n in mix(lesson, topics, *limits_of(lesson, topics), rules)] == [4, 8]
