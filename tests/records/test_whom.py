"""Who is meant when a pupil is forgotten: just that seat, and just those days."""

import datetime

import pytest

from itembank.records.pupils.whom import Whom

DAY = datetime.date(2026, 11, 30)
EVE, MORROW = DAY - datetime.timedelta(days=1), DAY + datetime.timedelta(days=1)


@pytest.mark.parametrize("other", ["A10", "A11", "A", "1", "AA1", "B1", "A1B", ""])
def test_a_seat_is_no_other_that_begins_or_ends_alike(other):
    whom = Whom("8K", "A1")
    assert whom.of_seat("A1")
    assert whom.of_seat("a1")
    assert not whom.of_seat(other)
    if other:
        assert not whom.said_in(f"{other} asked first")


@pytest.mark.parametrize("other", ["8", "8KL", "K", "8L", ""])
def test_a_class_is_no_other_that_begins_alike(other):
    assert Whom("8K").of_lesson("8k", DAY)
    assert not Whom("8K").of_lesson(other, DAY)


def test_the_day_before_which_is_not_one_of_those_before_and_the_first_day_counts():
    before, since = Whom("8K", before=DAY), Whom("8K", "A1", since=DAY)
    assert [before.of_lesson("8K", day) for day in (EVE, DAY, MORROW)] == [True, False, False]
    assert [since.of_lesson("8K", day) for day in (EVE, DAY, MORROW)] == [False, True, True]
