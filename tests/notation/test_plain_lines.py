"""The plainest lines are read without the grammar, to the very trees that it has for them."""

import json
import string
import subprocess
import sys

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.notation.line import line
from itembank.notation.parse import ParseError, _read, parse
from itembank.notation.plain_lines import plain_line
from itembank.notation.units import UNITS
from tests.depth import cases, whole

# Much that is plain, much that nearly is, and signs that make either of the other.
wholes = st.sampled_from(["0", "1", "2", "7", "10", "12", "105", "1600", "9999", "007", "12345"])
numbers = st.one_of(
    wholes,
    st.builds("{}/{}".format, wholes, wholes),
    st.builds("{} {}/{}".format, wholes, wholes, wholes),
    st.builds("{}.{}".format, wholes, st.sampled_from(["0", "5", "25", "050", "123456"])),
)
signed = st.builds("{}{}".format, st.sampled_from(["", "-", "--", "−", "+"]), numbers)
places = st.builds("({}, {})".format, signed, signed)
times = st.one_of(st.just(""), wholes, st.builds("({})".format, numbers), numbers)
lines = st.builds(
    "{} = {}{}{}{}".format,
    st.sampled_from("yyyyxp"),
    st.sampled_from(["", "-"]),
    times,
    st.sampled_from(["x", "x", "x", "y", "p", ""]),
    st.one_of(st.just(""), st.builds(" {} {}".format, st.sampled_from("+-×"), numbers)),
)
terms = st.builds(
    "{}{}".format, st.one_of(st.just(""), wholes), st.sampled_from(string.ascii_lowercase)
)
sums = st.builds("({} {} {})".format, terms, st.sampled_from("+-×"), wholes)
units = st.sampled_from(["", "°", "%", *(f" {unit}" for unit in UNITS), " days", " sweets", "cm"])
labels = st.builds("{}{}".format, st.one_of(signed, terms, sums), units)
pounds = st.builds("{}{}".format, st.sampled_from(["£", "-£", "$"]), numbers)
minutes = st.integers(0, 62)
times_of_day = st.builds("{:02}:{:02}".format, minutes, minutes)
texts = st.one_of(
    *(signed, places, lines, labels, labels, pounds, times_of_day),
    st.text("0123456789-/., ()xy=+£°:", max_size=9),
)


@whole
@settings(max_examples=cases(300, 1200, 1200), deadline=None)
@given(texts)
def test_it_reads_as_the_grammar_does(text):
    found = plain_line(text)
    if found is None:
        return
    for pence in (True, False):
        assert found == _read(text, pence, None, True), text
        assert line(found, pence=pence) == text, "it is written as it was"


@pytest.mark.parametrize(
    "text",
    [
        *("0", "-4", "105", "2.50", "-0.5", "3/4", "-6 2/5", "(2, -3)", "(1/2, 0.5)"),
        *("y = x", "y = -x - 1", "y = 3x + 2", "y = (1/2)x - 3", "y = -(1/3)x"),
        *("27 cm", "4.5 m", "1 1/2 km", "48°", "-3 °C", "30 kg", "12%", "£40", "£314.50"),
        *("x", "2x", "2x°", "(2x + 5)°", "(4n - 5) cm", "b cm", "07:05", "23:59"),
    ],
)
def test_what_figures_are_asked_by_and_labelled_with_is_plain(text):
    assert plain_line(text) == _read(text, True, None, True)


@pytest.mark.parametrize(
    "text",
    [
        *("", "1 5/3", "7:05", "24:00", "12 : 18", "y = 2(x + 1)", "(1, 2, 3)", "007", "5\n"),
        *("5cm", "5 days", "1 5/3 cm", "60 sweets", "3p", "p", "£3.5", "-£4", "(x + 5)", "x\n"),
    ],
)
def test_what_is_not_plain_is_left_to_the_grammar(text):
    assert plain_line(text) is None


def test_what_is_written_and_cannot_be_read_is_told_as_ever():
    with pytest.raises(ParseError):
        parse("1 5/3 2")


def test_no_grammar_is_built_for_them():
    said = subprocess.run(
        [
            sys.executable,
            "-c",
            "import json, sys; from itembank.notation.parse import parse_written as read\n"
            "for text in ('(2, -3)', 'y = 2x + 1', '3 1/2', '27 cm', '£4.50'): read(text)\n"
            "print(json.dumps('lark' in sys.modules))",
        ],
        capture_output=True,
        text=True,
        check=True,
    )
    assert json.loads(said.stdout) is False
