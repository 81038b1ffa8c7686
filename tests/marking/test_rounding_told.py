"""What is told of a rounded answer, and of one with a division or a sum left in it."""

from fractions import Fraction

import pytest

from itembank.marking.form.left_to_do import NOT_DIVIDED, STILL_ADDED, unfinished
from itembank.marking.form.policy import Policy
from itembank.marking.form.rounded_answer import rounds_to, unrounded
from itembank.notation.parse import parse

TO_TWO = Policy(("rounded",), rounding=("places", 2), unrounded=Fraction("3.14159"))


@pytest.mark.parametrize(
    ("typed", "told"), [("3.1415", True), ("3.142", True), ("-3.1415", False), ("-3.142", False)]
)
def test_a_number_of_the_other_sign_is_not_the_key_before_rounding(typed, told):
    assert unrounded(TO_TWO, parse(typed), parse("3.14")) is told


@pytest.mark.parametrize(
    ("typed", "key", "figures", "right"),
    [
        ("12", "10", 1, True),
        ("14.9", "10", 1, True),
        ("15", "10", 1, False),
        ("104", "100", 2, True),
        ("106", "100", 2, False),
        ("0.0104", "0.01", 1, True),
    ],
)
def test_a_key_that_is_a_power_of_ten_has_its_last_figure_where_it_stands(
    typed, key, figures, right
):
    how = Policy(("rounded",), rounding=("figures", figures))
    assert rounds_to(how, parse(typed), parse(key)) is right


@pytest.mark.parametrize(
    ("typed", "key", "told"),
    [
        ("5/1", "5", "the denominator is 1"),
        ("10/2", "5", NOT_DIVIDED),
        ("2 + 2/3", "2 2/3", STILL_ADDED),
        ("1 + 5/3", "2 2/3", "it is not worked out"),
    ],
)
def test_what_is_left_to_do_is_told_as_it_is(typed, key, told):
    assert unfinished(Policy(("value",)), parse(typed), parse(key)) == told
