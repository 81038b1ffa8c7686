"""Scores of whole starters tell of a class and its day, and little of any one topic."""

import datetime
import sys
from pathlib import Path
from statistics import fmean

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.planning.choosing.class_memory import Scored, remember_class, share_out
from itembank.planning.choosing.memory import Seen, doubt_on, interval_on, recall, remember
from tests.depth import cases, left

BENCH = Path(__file__).parents[2] / "bench"
DAY = datetime.date(2026, 9, 7)
TOPICS = [f"topic-{n}" for n in range(8)]
TAUGHT = dict.fromkeys(TOPICS, DAY)


def later(days):
    return DAY + datetime.timedelta(days=days)


def scored(days, share, topics=TOPICS, variance=0.002):
    return Scored(later(days), share, variance, dict.fromkeys(topics, 1))


def part(days, topics=TOPICS):
    """Return the occasions of topics that were part of scores on those days."""
    return {topic: [Seen(later(day), 0, 0, scored=True) for day in days] for topic in topics}


occasions = st.lists(
    st.tuples(st.integers(0, 200), st.integers(0, 28)).map(
        lambda pair: Seen(later(pair[0]), pair[1], 28)
    ),
    max_size=6,
)


@given(st.dictionaries(st.sampled_from(TOPICS), occasions))
def test_without_scores_each_topic_is_remembered_by_itself(seen):
    found = remember_class(TAUGHT, seen)
    for topic in TOPICS:
        assert found[topic] == remember(DAY, seen.get(topic, ()))


@given(
    days=st.lists(st.integers(1, 120), min_size=1, max_size=4, unique=True).map(sorted),
    shares=st.data(),
)
@settings(max_examples=cases(25, 50))
def test_a_higher_score_never_lowers_what_is_expected_of_its_topics(days, shares):
    share = st.floats(0, 1)
    given_ = [shares.draw(share) for _ in days]
    last = shares.draw(st.floats(given_[-1], 1))
    low, high = (
        remember_class(TAUGHT, part(days), [scored(d, s) for d, s in zip(days, row, strict=True)])
        for row in (given_, [*given_[:-1], last])
    )
    for topic in TOPICS:
        assert high[topic].level >= low[topic].level - 1e-12
        assert recall(high[topic], later(200)) >= recall(low[topic], later(200)) - 1e-12


@given(st.lists(st.floats(0, 1), min_size=12, max_size=12))
def test_scores_alone_leave_every_topic_in_doubt(shares):
    days = range(7, 91, 7)
    rows = [scored(day, share) for day, share in zip(days, shares, strict=True)]
    whole = remember_class(TAUGHT, part(days), rows)
    counted = {topic: [Seen(later(day), 20, 28) for day in days] for topic in TOPICS}
    alone = remember_class(TAUGHT, counted)
    for topic in TOPICS:
        assert not whole[topic].alone
        # A dozen scores leave a topic in more doubt than one count of its own answers.
        assert whole[topic].doubt > 2 * alone[topic].doubt
        assert doubt_on(whole[topic], later(90)) > doubt_on(alone[topic], later(90))


def test_what_was_seen_by_question_is_kept_apart_by_a_score():
    seen = part([14])
    for topic, right in zip(TOPICS, (6, 27, 12, 25, 6, 27, 12, 25), strict=True):
        seen[topic].insert(0, Seen(later(7), right, 28))
    found = remember_class(TAUGHT, seen, [scored(14, 0.6)])
    shares = [recall(found[topic], later(21)) for topic in TOPICS[:4]]
    assert shares[0] < shares[2] < shares[3] < shares[1]
    assert shares[1] - shares[0] > 0.2


def test_a_topic_in_no_scheme_takes_its_part_of_a_score():
    known = {"a": (0.6, 0.3)}
    share_out(Scored(DAY, 0.9, 0.001, {"a": 1, "nowhere": 7}), known)
    some = known["a"][0]
    known = {"a": (0.6, 0.3)}
    share_out(Scored(DAY, 0.9, 0.001, {"a": 8}), known)
    # Seven eighths of the score may be the other topic's.
    assert 0.6 < some < known["a"][0]
    assert 0.8 < known["a"][0] < 0.9


def test_a_score_without_variance_or_at_its_ends_is_sound():
    for share in (0.0, 1.0):
        found = remember_class(
            TAUGHT, part([7, 14]), [scored(d, share, variance=0.0) for d in (7, 14)]
        )
        for topic in TOPICS:
            low, high = interval_on(found[topic], later(20))
            assert 0 <= low < recall(found[topic], later(20)) < high <= 1


@pytest.mark.parametrize("depth", ["by question", left("by scores"), "by bands"])
def test_intervals_hold_what_is_true_in_a_simulated_year(depth, monkeypatch):
    # The whole of it is bench/simulate_depths.py, where it is 85 to 95 % over thirty years.
    monkeypatch.setattr(sys, "path", [str(BENCH), *sys.path])
    from simulate_depths import DEPTHS, measure
    from simulate_year import USUAL

    *_, held = measure(USUAL, DEPTHS[depth], 11, every=2)
    assert len(held) > 500
    assert 0.8 <= fmean(held) <= 0.98
