"""Times of day and lengths of time as pupils type them. Each answer judged by hand."""

import pytest

from itembank.items.item import Find, Item, Tier
from itembank.marking.mark import mark
from itembank.notation import parse

RIGHT, FORM, WRONG, UNREAD = "right", "right value, wrong form", "wrong", "unreadable"


def verdict(target, key, answer, words="Work out "):
    target, key = parse(target, times=True), parse(key, times=True)
    item = Item(
        "a:b", "ratio.speed", Tier.CORE, (words, target, "."), Find(target), key, "value",
        (), (), (), 1, (),
    )  # fmt: skip
    return mark(item, answer).verdict.value


@pytest.mark.parametrize(
    ("answer", "expected"),
    [
        ("15:25", RIGHT),
        ("15.25", RIGHT),
        ("1525", RIGHT),
        ("3:25 pm", RIGHT),
        ("3.25pm", RIGHT),
        ("3:25PM", RIGHT),
        ("at 3:25 p.m.", RIGHT),
        ("3:25", UNREAD),
        ("3:25 am", WRONG),
        ("15:20", WRONG),
        ("25", WRONG),
        ("55500", WRONG),
    ],
)
def test_a_time_of_day(answer, expected):
    assert verdict("14:35 + 50 min", "15:25", answer) == expected


@pytest.mark.parametrize(
    ("answer", "expected"),
    [
        ("3 h 25 min", RIGHT),
        ("3h 25m", RIGHT),
        ("3h25", RIGHT),
        ("3 hours 25 minutes", RIGHT),
        ("3 hours and 25 minutes", RIGHT),
        ("3 hrs & 25 mins", RIGHT),
        ("205 min", RIGHT),
        ("205 minutes", RIGHT),
        ("3:25", UNREAD),
        ("2 h 85 min", FORM),
        ("3 h 15 min", WRONG),
        ("3.25 h", WRONG),
        ("3 kg 25 g", WRONG),
        ("15:25", UNREAD),
    ],
)
def test_a_length_of_time(answer, expected):
    assert verdict("2 h 35 min + 50 min", "3 h 25 min", answer) == expected


def test_a_length_of_time_asked_for_in_two_units_is_not_done_in_one():
    words = "Give the time in hours and minutes: "
    assert verdict("100 min + 55 min", "2 h 35 min", "155 min", words) == FORM
    assert verdict("100 min + 55 min", "2 h 35 min", "2h 35min", words) == RIGHT


def test_pounds_are_a_mass_where_the_key_is_one():
    assert verdict("10 st 4 lb", "144 lb", "144 pounds") == RIGHT
    assert verdict("10 st 4 lb", "144 lb", "£144") == WRONG
