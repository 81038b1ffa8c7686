"""Mastery: facility over time agrees with its definition, more right never hurts, it fades."""

import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.planning.choosing.memory import Seen, recall, remember
from itembank.records.reports.mastery import facility_over_time, mastery

TAUGHT = datetime.date(2026, 9, 7)
counts = st.integers(1, 40).flatmap(lambda n: st.tuples(st.integers(0, n), st.just(n)))
occasions = st.lists(st.tuples(st.integers(1, 200), counts), max_size=6).map(
    lambda rows: [Seen(day(gap), *pair) for gap, pair in rows]
)


def day(number):
    return TAUGHT + datetime.timedelta(days=number)


@given(occasions, st.integers(1, 60), counts, st.integers(0, 200))
def test_more_right_answers_never_lower_the_estimate(seen, gap, pair, wait):
    right, out_of = pair
    last = day(200 + gap)
    date = last + datetime.timedelta(days=wait)
    worse, better = (
        mastery(TAUGHT, [*seen, Seen(last, n, out_of)], date)
        for n in (right, min(right + 1, out_of))
    )
    assert better.now >= worse.now - 1e-12
    assert better.half_life >= worse.half_life - 1e-12


@given(occasions, st.integers(0, 300), st.integers(1, 300))
def test_it_fades_until_the_topic_is_asked_again(seen, wait, more):
    early = mastery(TAUGHT, seen, day(201 + wait))
    late = mastery(TAUGHT, seen, day(201 + wait + more))
    assert late.now < early.now
    again = [*seen, Seen(day(201 + wait), 10, 10)]
    assert mastery(TAUGHT, again, day(201 + wait + more)).now > late.now


@given(occasions, st.integers(0, 300))
def test_the_interval_holds_the_estimate_and_is_a_share(seen, wait):
    found = mastery(TAUGHT, seen, day(201 + wait))
    assert found.now == pytest.approx(recall(remember(TAUGHT, seen), day(201 + wait)))
    if not seen:
        assert found.low is None
        assert "not measured" in found.words()
    else:
        assert 0 <= found.low <= found.now <= found.high <= 1


def test_more_answers_with_the_same_share_make_it_surer():
    few, many = (mastery(TAUGHT, [Seen(day(7), 8 * n, 10 * n)], day(14)) for n in (1, 10))
    # Of few answers less is believed: they are drawn a little towards what was expected.
    assert few.now == pytest.approx(many.now, abs=0.02)
    assert many.high - many.low < (few.high - few.low) * 0.9


def test_what_comes_later_is_not_known_yet():
    seen = [Seen(day(7), 8, 10)]
    assert mastery(TAUGHT, [*seen, Seen(day(20), 0, 10)], day(14)) == mastery(TAUGHT, seen, day(14))


@given(occasions)
def test_facility_over_time_adds_up_each_day(seen):
    from statsmodels.stats.proportion import proportion_confint

    found = facility_over_time(seen)
    assert [point.date for point in found] == sorted({one.date for one in seen})
    for point in found:
        rows = [one for one in seen if one.date == point.date]
        right, out_of = sum(row.right for row in rows), sum(row.out_of for row in rows)
        assert point.interval.share == pytest.approx(right / out_of)
        assert point.interval[1:] == pytest.approx(
            proportion_confint(right, out_of, alpha=0.1, method="wilson"), abs=1e-9
        )
