"""Typed whole numbers: read exactly, or refused without a fault of Python's own."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.errors import ItembankError
from itembank.items.topics.registry import find_item
from itembank.planning.calendar.days import period_order
from itembank.records.entries.teacher_text import read_views
from itembank.text.whole_number import whole_number

HOSTILE = ("9" * 5000, "0" * 5000 + "1", "²", "٣", "１", "1_0", "+1", "-1", " 1", "", "1.0")


@given(st.integers(0, 10**15 - 1))
def test_what_is_written_in_figures_is_read_back(number):
    assert whole_number(str(number)) == number


@given(st.text())
def test_other_text_is_no_number(text):
    found = whole_number(text)
    assert (found is None) == (not (text.isascii() and text.isdigit() and len(text) <= 15))


@pytest.mark.parametrize("text", HOSTILE)
def test_an_address_with_such_a_number_is_refused_in_words(text):
    with pytest.raises(ItembankError) as caught:
        find_item(f"ratio.share/core/{text}")
    assert len(str(caught.value)) < 250


@pytest.mark.parametrize("text", ["9" * 5000, "²", "٣"])
def test_periods_and_own_views_take_any_text(text):
    period_order(text)
    with pytest.raises(ItembankError):
        read_views(f"{text} sure {text} partly {text} not", [])
    with pytest.raises(ItembankError):
        read_views(f"{text} {text} {text}", [])


@pytest.mark.parametrize("text", ["12 9", "dunno", "12 9 six", "twelve sure"])
def test_who_mistypes_hands_is_told_how_hands_are_written_and_not_of_seats_alone(text):
    with pytest.raises(ItembankError, match="as in 12 sure 9 partly 6 not"):
        read_views(text, ["A1", "A2"])
    # Where seats were read, only seats are spoken of.
    with pytest.raises(ItembankError, match="A9") as caught:
        read_views("A1 sure, A9 not sure", ["A1", "A2"])
    assert "Hands" not in str(caught.value)
