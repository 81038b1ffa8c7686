"""Wordings of a figure are looked for by the letters they need: none that is met is passed over."""

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.figures.figure import KINDS
from itembank.figures.kinds import load_all
from itembank.text.needed_letters import Needing, needs
from tests.depth import cases, whole

load_all()
WORDED = sorted(name for name, kind in KINDS.items() if kind.wordings)
PATTERNS = sorted({wording.pattern for kind in KINDS.values() for wording in kind.wordings})


@whole
@settings(max_examples=cases(3, 12, 12))
@given(st.data())
@pytest.mark.parametrize("kind", WORDED)
def test_what_meets_a_wording_holds_the_letters_it_needs(kind, data):
    patterns = [wording.pattern for wording in KINDS[kind].wordings]
    at = data.draw(st.integers(0, len(patterns) - 1))
    pattern = re.compile(patterns[at], re.IGNORECASE)
    words = data.draw(st.from_regex(pattern, fullmatch=True))
    assert at in Needing(patterns).of(words)


def test_many_wordings_need_letters():
    assert sum(bool(needs(pattern)) for pattern in PATTERNS) > len(PATTERNS) / 2


@pytest.mark.parametrize(
    ("wording", "letters"),
    [
        ("squares? on", ("square",)),
        ("squares* on", ("square",)),
        ("ab{0,2}cde", ("cde",)),
        (r"\bsum\b of", ("sum",)),
        ("[abc]def", ("def",)),
        ("(?:long )?way(?: out)*", ("way",)),
        ("sum|total", ()),
    ],
)
def test_what_may_be_left_out_is_not_needed(wording, letters):
    assert needs(wording) == letters
