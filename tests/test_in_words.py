"""Days and numbers of things are put into words in one place."""

import ast
import datetime
import re
from pathlib import Path

from hypothesis import given
from hypothesis import strategies as st

from itembank.planning.calendar.days import parse_day
from itembank.text.in_words import (
    counted,
    day_month_year,
    long_date,
    long_day,
    moment,
    plural,
    short_day,
)

PRODUCT = Path(__file__).parents[1]
NAMES = re.compile(r"%-?[aAbBp]")
ENDINGS = {"s", "es"}
MAY_HAVE = re.compile(rf"""{NAMES.pattern}|["']e?s["']""")
"""What a file that makes such words has in it: only these are parsed."""


@given(st.dates(datetime.date(1950, 1, 1), datetime.date(2150, 1, 1)))
def test_a_day_is_said_as_the_calendar_has_it(date):
    # The tests run with no locale set, in which strftime names days and months in English.
    assert long_date(date) == f"{date:%A} {date.day} {date:%B} {date.year}"
    assert long_date(date).startswith(long_day(date))
    assert long_date(date).endswith(day_month_year(date))
    assert short_day(date) == f"{date.day} {date:%b}"
    assert datetime.datetime.strptime(day_month_year(date), "%d %B %Y").date() == date


@given(st.integers(-150, 150))
def test_what_is_said_of_a_day_is_read_back_as_that_day(days):
    today = datetime.date(2026, 11, 30)
    date = today + datetime.timedelta(days=days)
    assert parse_day(day_month_year(date), today) == date


@given(st.datetimes(datetime.datetime(2000, 1, 1), datetime.datetime(2100, 1, 1)))
def test_a_moment_is_said_to_the_minute(when):
    assert moment(when) == f"{when.day} {when:%b} at {when:%H:%M}"


@given(st.integers(0, 10**9))
def test_a_number_of_things_is_read_back_as_that_number(count):
    number, _, noun = counted(count, "pupil").partition(" ")
    assert int(number.replace(",", "")) == count
    assert (noun == "pupil") == (count == 1)
    assert plural(count, "is", "are") == ("is" if count == 1 else "are")


def nodes():
    """Yield what may make words of days and numbers in the product's code, with where it stands."""
    for folder in ("itembank", "generators"):
        for path in (PRODUCT / folder).rglob("*.py"):
            if path.name != "in_words.py":
                place, source = path.relative_to(PRODUCT), path.read_text(encoding="utf-8")
                for node in ast.walk(ast.parse(source)) if MAY_HAVE.search(source) else ():
                    if isinstance(node, ast.FormattedValue | ast.IfExp):
                        yield f"{place}:{node.lineno}", node


def texts(node):
    return {one.value for one in (node.body, node.orelse) if isinstance(one, ast.Constant)}


def test_there_is_no_second_place_that_does():
    found = []
    for place, node in nodes():
        if isinstance(node, ast.FormattedValue) and node.format_spec is not None:
            spec = ast.unparse(node.format_spec)
            found += [f"{place} names a day or a month"] if NAMES.search(spec) else []
        if isinstance(node, ast.IfExp) and "" in texts(node) and texts(node) & ENDINGS:
            found += [f"{place} makes a plural"]
    assert not found, "\n".join(found)
