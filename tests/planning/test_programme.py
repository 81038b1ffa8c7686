"""The integer programme: its best is the best there is, also where fractions would be better."""

import itertools

import highspy
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.errors import ItembankError
from itembank.planning.choosing.programme import OPTIONS, Programme
from tests.depth import cases


def test_what_fractions_would_do_better_is_still_whole():
    # The fractional best of three things, each two of which exclude each other, is a half of
    # each: 1.5 in all (the odd cycle, the usual example of what relaxing loses).
    programme = Programme()
    things = [programme.count(0, 1, 1.0 + place / 100) for place in range(3)]
    for pair in itertools.combinations(things, 2):
        programme.require(pair, 0, 1)
    assert programme.solve() == [0, 0, 1]


@given(
    st.lists(st.tuples(st.integers(0, 2), st.integers(-9, 9)), min_size=1, max_size=5),
    st.lists(
        st.tuples(st.sets(st.integers(0, 4), min_size=1), st.integers(0, 3), st.integers(0, 3)),
        max_size=4,
    ),
    st.tuples(st.sets(st.integers(0, 4)), st.sets(st.integers(0, 4))),
)
@settings(max_examples=cases(25, 60), deadline=None)
def test_no_other_whole_numbers_are_worth_more(variables, rows, pair):
    programme = Programme()
    for most, worth in variables:
        programme.count(0, most, worth)
    here = range(len(variables))
    rows = [([k for k in some if k in here], min(a, b), max(a, b)) for some, a, b in rows]
    for some, low, high in rows:
        programme.require(some, low, high)
    fewer, more = ([k for k in some if k in here] for some in pair)
    more = [k for k in more if k not in fewer]
    programme.no_more(fewer, more)

    def fits(values):
        return all(low <= sum(values[k] for k in some) <= high for some, low, high in rows) and sum(
            values[k] for k in fewer
        ) <= (sum(values[k] for k in more) if fewer else 0)

    def total(values):
        return sum(value * worth for value, (_, worth) in zip(values, variables, strict=True))

    every = [v for v in itertools.product(*(range(m + 1) for m, _ in variables)) if fits(v)]
    if every:
        found = programme.solve()
        assert fits(found)
        assert total(found) == max(map(total, every))
    else:
        with pytest.raises(ItembankError, match="No choice of topics fits"):
            programme.solve()


def test_a_programme_of_nothing_has_nothing_to_say():
    assert Programme().solve() == []


def test_nothing_is_printed_while_it_is_solved(capfd):
    test_what_fractions_would_do_better_is_still_whole()
    assert capfd.readouterr() == ("", "")


def test_how_it_is_run_is_known_to_the_solver():
    highs = highspy.Highs()
    for option, value in OPTIONS.items():
        assert highs.setOptionValue(option, value) == highspy.HighsStatus.kOk
