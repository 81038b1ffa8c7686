"""Brackets for a browser: closed up round what is flat, as tall as what is tall, in pairs."""

import re
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.notation.browser_brackets import closed_up

FLAT = "<mn>1</mn>"
TALL = "<mfrac><mn>1</mn><mn>2</mn></mfrac>"
OPEN, SHUT = "<mo>(</mo>", "<mo>)</mo>"


def stretchy(mathml):
    """Return of each bracket whether it stretches."""
    return ["stretchy" not in start for start in re.findall(r"<mo([^>]*)>[()]", mathml)]


@pytest.mark.parametrize(
    ("mathml", "expected"),
    [
        (OPEN + FLAT + SHUT, [False, False]),
        (OPEN + TALL + SHUT, [True, True]),
        # The inner pair holds nothing tall, the outer one does.
        (OPEN + OPEN + FLAT + SHUT + TALL + SHUT, [True, False, False, True]),
        (OPEN + FLAT + SHUT + TALL + OPEN + FLAT + SHUT, [False] * 4),
        (SHUT + FLAT + OPEN, [True, True]),
    ],
)
def test_only_what_holds_something_tall_stretches(mathml, expected):
    assert stretchy(closed_up(mathml)) == expected


@given(st.lists(st.sampled_from([OPEN, SHUT, FLAT, TALL]), max_size=12))
def test_nothing_else_changes(parts):
    text = "".join(parts)
    shown = closed_up(text)
    assert shown.replace(' stretchy="false"', "") == text
    assert closed_up(shown) == shown
    ElementTree.fromstring(f"<math>{shown}</math>")
