"""Patterns that need some words find what they would find without being told so."""

import importlib
import re
import re._constants as op
import re._parser as parser
from itertools import groupby

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.text.late_pattern import Needing, late

WHERE = (
    "itembank.wording.sentences.units_said",
    "itembank.wording.story.amount_asked",
    "itembank.wording.tasks.answers.answer_phrases",
    "itembank.wording.tasks.other_kinds.kinds_said",
)
NEEDING = [
    pytest.param(value, id=f"{name.rpartition('.')[2]}.{called}")
    for name in WHERE
    for called, value in vars(importlib.import_module(name)).items()
    if isinstance(value, Needing)
]


def always(parsed, needs):
    """Tell whether whatever a pattern finds holds some words."""
    for literal, run in groupby(parsed, key=lambda part: part[0] is op.LITERAL):
        parts = list(run)
        if literal and needs in "".join(chr(code) for _, code in parts).casefold():
            return True
        for kind, told in () if literal else parts:
            if kind is op.SUBPATTERN and always(told[3], needs):
                return True
            if kind is op.BRANCH and all(always(branch, needs) for branch in told[1]):
                return True
            if kind in (op.MAX_REPEAT, op.MIN_REPEAT) and told[0] and always(told[2], needs):
                return True
    return False


@pytest.mark.parametrize("pattern", NEEDING)
def test_what_a_pattern_needs_is_in_all_that_it_finds(pattern):
    text = pattern.pattern.pattern
    assert always(parser.parse(text, re.I), pattern.needs)
    assert pattern.needs == pattern.needs.casefold()
    # Python takes two more letters for an i in any case; folding makes neither of them one.
    assert "i" not in pattern.needs


def test_some_patterns_need_some_words():
    assert len(NEEDING) >= 9
    assert not always(parser.parse("(?:nearest )?ten|nearest one"), "nearest")
    assert always(parser.parse("the (?:nearest )+ten|a nearest one"), "nearest")


@given(st.text("NEAREStſ Kten", max_size=20), st.booleans())
def test_a_pattern_finds_the_same_whatever_it_needs(words, whole):
    plain = re.compile(r"\bnearest (ten|one)?", re.I)
    if whole:
        words = f"{words}neareſt tEn{words}"
    needing = late(plain.pattern, re.I, needs="nearest")
    for look in ("search", "fullmatch"):
        found, same = getattr(plain, look)(words), getattr(needing, look)(words)
        assert (found and found.span()) == (same and same.span())
    assert [m.span() for m in plain.finditer(words)] == [m.span() for m in needing.finditer(words)]


def test_a_pattern_is_not_compiled_for_words_without_what_it_needs():
    broken = late("nearest (", needs="nearest")
    assert broken.search("to 2 decimal places") is None
    assert list(broken.finditer("Work it out.")) == []
    with pytest.raises(re.error):
        broken.search("to the Nearest")
