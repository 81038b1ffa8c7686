"""That a value is right but not rounded is said only of the number that was to be rounded."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Round
from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict
from itembank.notation.line import line
from itembank.notation.quotients import number
from itembank.proof.exact.rounding import rounded
from tests.marking.questions import question

_LEFT = Verdict.WRONG_FORM


@pytest.mark.parametrize(
    ("prompt", "key", "way", "answer", "verdict"),
    [
        ("Round {3.1384} to 2 decimal places.", "3.14", "nearest", "3.14", Verdict.RIGHT),
        ("Round {3.1384} to 2 decimal places.", "3.14", "nearest", "3.1384", Verdict.WRONG_FORM),
        ("Round {3.1384} to 2 decimal places.", "3.14", "nearest", "3.138", Verdict.WRONG_FORM),
        # Near the key, and yet no rounding of this number.
        ("Round {3.1384} to 2 decimal places.", "3.14", "nearest", "3.1416", Verdict.WRONG),
        ("Truncate {3.789} to 1 decimal place.", "3.7", "down", "3.789", Verdict.WRONG_FORM),
        ("Truncate {3.789} to 1 decimal place.", "3.7", "down", "3.8", Verdict.WRONG),
        ("Truncate {3.789} to 1 decimal place.", "3.7", "down", "3.74", Verdict.WRONG),
        (
            "Round {3.4567 kg} to 1 decimal place.",
            "3.5 kg",
            "nearest",
            "3.46 kg",
            Verdict.WRONG_FORM,
        ),
        # More places than asked for, and the last of them is wrong.
        ("Round {3.1384} to 2 decimal places.", "3.14", "nearest", "3.139", Verdict.WRONG),
        ("Round {-3.1384} to 2 decimal places.", "-3.14", "nearest", "-3.139", Verdict.WRONG),
        ("Round {3.1384} to 2 decimal places.", "3.14", "nearest", "3.137", Verdict.WRONG),
        # Units that are not the ones that amounts are counted in within.
        ("Round {3.138 cm} to 1 decimal place.", "3.1 cm", "nearest", "3.138 cm", _LEFT),
        ("Round {3.138 cm} to 1 decimal place.", "3.1 cm", "nearest", "3.14 cm", _LEFT),
        ("Round {3.138 cm} to 1 decimal place.", "3.1 cm", "nearest", "3.12 cm", Verdict.WRONG),
        ("Round {12.345%} to 1 decimal place.", "12.3%", "nearest", "12.345%", _LEFT),
        ("Round {12.345%} to 1 decimal place.", "12.3%", "nearest", "12.32%", Verdict.WRONG),
    ],
)
def test_what_is_not_rounded_yet(prompt, key, way, answer, verdict):
    places = 2 if "2 decimal" in prompt else 1
    asked = question(key, "rounded", prompt, lambda m: Round(m[0], "places", places, way))
    assert mark(asked, answer).verdict is verdict


@given(st.decimals("0.001", "99.999", places=3), st.decimals("0.001", "99.999", places=3))
def test_another_number_is_never_called_right(asked, answer):
    """What is marked right, but for its rounding, is the printed number or a rounding of it."""
    _, key = rounded(
        number(asked.as_integer_ratio()[0]) / number(asked.as_integer_ratio()[1]), "places", 1
    )
    shown = line(decimal_node(key))
    shown = shown if "." in shown else f"{shown}.0"
    item = question(
        shown,
        "rounded",
        f"Round {{{asked}}} to 1 decimal place.",
        lambda m: Round(m[0], "places", 1),
    )
    verdict = mark(item, str(answer)).verdict
    if verdict is Verdict.WRONG_FORM:
        assert answer == asked or Fraction(answer) == key
