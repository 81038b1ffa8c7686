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
