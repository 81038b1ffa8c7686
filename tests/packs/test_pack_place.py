"""The names of packs' folders come back as the lesson that they were made from."""

import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.packs.data.pack_place import folder_name, read_folder_name
from itembank.planning.calendar.timetable import PERIOD, parse_lesson

DAY = datetime.date(2026, 11, 30)


@pytest.mark.parametrize("written", ["Mon 1", "B Thu P.3", "Tue 1.5", "Fri 4b"])
def test_every_period_of_a_timetable_is_read_back(written):
    lesson = parse_lesson(written)
    assert lesson is not None
    named = folder_name("8K", DAY, lesson.period)
    assert read_folder_name(named) == ("8K", DAY, lesson.period)


@given(
    st.text(st.characters(codec="utf-8"), min_size=1, max_size=12),
    st.dates(),
    st.just("") | st.from_regex(PERIOD, fullmatch=True),
)
def test_a_name_comes_back_as_class_day_and_period(name, day, period):
    assert read_folder_name(folder_name(name, day, period)) == (name, day, period)
