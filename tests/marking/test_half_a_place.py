"""What rounds to the key is half a place away at most, and that half belongs to one side only."""

import pytest

from itembank.marking.form.policy import Policy
from itembank.marking.form.rounded_answer import unrounded
from itembank.notation import parse


@pytest.mark.parametrize(
    ("rounding", "key", "inside", "outside"),
    [
        (("places", 2), "3.14", ["3.135", "3.1449"], ["3.1349", "3.145"]),
        (("places", 2), "-3.14", ["-3.135", "-3.1449"], ["-3.1349", "-3.145"]),
        (("nearest", 10), "40", ["35", "44.9"], ["34.9", "45"]),
        (("figures", 2), "3400", ["3350", "3449"], ["3349", "3450"]),
        (("figures", 2), "0.034", ["0.0335", "0.0344"], ["0.0334", "0.0345"]),
        (("figures", 2), "-3400", ["-3350", "-3449"], ["-3349", "-3450"]),
    ],
)
def test_half_a_place_is_the_limit(rounding, key, inside, outside):
    how = Policy(("rounded",), rounding=rounding)
    assert [text for text in inside if not unrounded(how, parse(text), parse(key))] == []
    assert [text for text in outside if unrounded(how, parse(text), parse(key))] == []
