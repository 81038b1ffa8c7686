"""A day is read however a teacher types it."""

import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.errors import ItembankError
from itembank.planning.calendar.days import parse_day

TODAY = datetime.date(2026, 11, 25)  # a Wednesday
DAYS = st.dates(datetime.date(2000, 1, 1), datetime.date(2099, 12, 31))
WAYS = ("%Y-%m-%d", "%d/%m/%Y", "%d/%m/%y", "%d %b %Y", "%d %B %Y")


@given(day=DAYS, today=DAYS, past=st.booleans(), way=st.sampled_from(WAYS))
def test_a_whole_date_is_the_same_on_every_day(day, today, past, way):
    text = day.strftime(way)
    assert parse_day(text, today, past) == day
    assert parse_day(f" {text.upper()} ", today, past) == day


@given(today=DAYS.filter(lambda day: 2001 < day.year < 2098), away=st.integers(-180, 180))
def test_a_date_without_its_year_is_the_nearest(today, away):
    day = today + datetime.timedelta(days=away)
    for way in ("%d %b", "%d/%m", "%d %B"):
        assert parse_day(day.strftime(way), today) == day


@given(day=DAYS, away=st.integers(0, 6))
def test_a_day_of_the_week_is_the_next_or_the_last(day, away):
    later = day + datetime.timedelta(days=away)
    for way in ("%A", "%a"):
        assert parse_day(later.strftime(way), day) == later
        assert parse_day(day.strftime(way), later, past=True) == day


@pytest.mark.parametrize(
    ("text", "day"),
    [
        ("yesterday", datetime.date(2026, 11, 24)),
        ("today", TODAY),
        ("tomorrow", datetime.date(2026, 11, 26)),
        ("1st December", datetime.date(2026, 12, 1)),
        ("3rd Sept", datetime.date(2026, 9, 3)),
        ("29 feb", datetime.date(2028, 2, 29)),
        ("4 Jan", datetime.date(2027, 1, 4)),
        ("Thurs", datetime.date(2026, 11, 26)),
    ],
)
def test_days(text, day):
    today = datetime.date(2027, 12, 25) if text == "29 feb" else TODAY
    assert parse_day(text, today) == day


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("2026-02-30", "2026-11-30"),
        ("31/11/2026", "2026-11-30"),
        ("29 Feb", "not a day of the calendar"),
        ("31 Nov", "not a day of the calendar"),
        ("next week", "30 Nov"),
        ("", "30 Nov"),
        ("mo", "30 Nov"),
        ("30 Novembre", "30 Nov"),
        ("20261130", "30 Nov"),
        ("0/0/0000", "2026-11-30"),
        ("0001-01-01", "Check the year"),
        ("9999-12-31", "Check the year"),
        ("٣٠/11/2026", "30 Nov"),
    ],
)
def test_no_days(text, words):
    with pytest.raises(ItembankError, match=words):
        parse_day(text, TODAY)
