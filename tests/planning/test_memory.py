"""The forgetting model: gaps grow with success and shrink with failure."""

import datetime

from hypothesis import given
from hypothesis import strategies as st

from itembank.planning.memory import (
    FIRST_LEVEL,
    LONGEST,
    SHORTEST,
    TARGET,
    Seen,
    after_teaching,
    asked,
    due,
    recall,
    remember,
    saved,
)

DAY = datetime.date(2026, 9, 7)
days = st.integers(0, 300)
shares = st.floats(0, 1)
histories = st.lists(st.tuples(days, st.integers(0, 30)), max_size=8)


def later(count):
    return DAY + datetime.timedelta(days=count)


def made(history):
    return remember(DAY, [Seen(later(day), right, 30) for day, right in history])


@given(histories, days)
def test_recall_falls_with_time_and_stays_a_share(history, gap):
    memory = made(history)
    soon, late = (recall(memory, memory.last + datetime.timedelta(days=d)) for d in (gap, gap + 1))
    assert 0 <= late <= soon <= 1
    assert SHORTEST <= memory.half_life <= LONGEST


@given(histories, days, shares, shares)
def test_the_more_are_right_the_longer_it_lasts(history, gap, one, other):
    memory = made(history)
    day = memory.last + datetime.timedelta(days=gap)
    less, more = (asked(memory, day, share) for share in sorted((one, other)))
    assert less.half_life <= more.half_life + 1e-9
    assert less.level <= more.level + 1e-9


@given(st.integers(1, 60))
def test_a_success_after_a_longer_gap_lasts_longer(gap):
    memory = after_teaching(DAY)
    assert asked(memory, later(gap), 1).half_life <= asked(memory, later(gap + 1), 1).half_life


def test_gaps_grow_with_each_success_and_shrink_after_failure():
    memory, gaps = after_teaching(DAY), []
    for _ in range(6):
        day = due(memory)
        gaps.append((day - memory.last).days)
        memory = asked(memory, day, 0.95)
    assert gaps == sorted(gaps)
    assert gaps[-1] > 4 * gaps[0]
    failed = asked(memory, due(memory), 0.2)
    assert (due(failed) - failed.last).days < gaps[-1]


def test_a_weak_topic_is_due_sooner_than_a_strong_one():
    weak, strong = (remember(DAY, [Seen(later(7), right, 30)]) for right in (9, 28))
    assert due(weak) < due(strong)


@given(histories)
def test_due_is_the_first_day_below_the_target(history):
    memory = made(history)
    day = due(memory)
    assert recall(memory, day) <= TARGET + 1e-9
    if day > memory.last:
        assert recall(memory, day - datetime.timedelta(days=1)) > TARGET


@given(histories, st.integers(0, 120))
def test_what_is_saved_is_mean_recall_over_the_days_after(history, gap):
    memory = made(history)
    day = memory.last + datetime.timedelta(days=gap)
    after = asked(memory, day)

    def mean(one):  # the integral as a sum over hours
        start = (day - one.last).days
        hours = [one.level * 2 ** (-(start + (h + 0.5) / 24) / one.half_life) for h in range(504)]
        return sum(hours) / 504

    assert abs(saved(memory, day, 21) - (mean(after) - mean(memory))) < 1e-4


def test_occasions_count_in_the_order_of_their_dates():
    first, second = Seen(later(3), 5, 30), Seen(later(20), 28, 30)
    assert remember(DAY, [first, second]) == remember(DAY, [second, first])
    # Asked without results: what was expected stands in for what was not counted.
    quiet = remember(DAY, [first, Seen(later(9), 0, 0)])
    assert quiet == asked(remember(DAY, [first]), later(9), None)
    assert remember(DAY, []).level == FIRST_LEVEL
