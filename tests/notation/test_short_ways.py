"""Lines are read in fewer steps than lark takes, and come to what lark makes of them."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.notation.normalise import normalise, one_by_one
from itembank.notation.parse import _parser, _quick_parser

PARTS = (
    *("3", "12", "0.5", "x", "y", "p", "π", "√", "(", ")", "+", "-", "×", "÷", "/", "^", " ", ":"),
    *("=", "<", "≤", ",", " or ", " of ", "%", "£", " kg", " min", "09:45", "2:35 pm", "°", "□"),
    *("3/4", "1 1/2", "2x", "x^2", "(x + 1)", "1, 2, 3", "0.3\u0307", '"A"', "x = ", "-"),
)


def outcome(read, text):
    try:
        return read(text)
    except Exception as error:
        return type(error), str(error), getattr(error, "pos_in_stream", None)


@pytest.mark.parametrize("pence", [True, False])
@pytest.mark.parametrize("times", [True, False])
@given(parts=st.lists(st.sampled_from(PARTS), max_size=9))
def test_a_line_comes_to_the_same(pence, times, parts):
    text = normalise("".join(parts))[0]
    quick = _quick_parser(pence, times)
    assert type(quick).__name__ == "ShortWays"  # else this lark is not the one it knows
    if text:
        assert outcome(quick.parse, text) == outcome(_parser(pence, times).parse, text)


@given(st.text(alphabet=[*"09aZ ()+-/^.,:;=<>!'\"×÷√π£%≤≥≠?_*½²−\u00a0\t"], max_size=12))
def test_a_line_that_stays_as_it_is_is_seen_at_once(text):
    (quick, at), (plain, places) = normalise(text), one_by_one(text)
    assert (quick, list(at)) == (plain, list(places))
