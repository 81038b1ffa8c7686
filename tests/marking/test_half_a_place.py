"""What rounds to the key is half a place away at most, and that half belongs to one side only."""

import mpmath
import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.marking.form.policy import Policy, number_before
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


@pytest.mark.parametrize(
    ("before", "inside", "outside"),
    [
        ("25π", ["78.54", "78.53", "78.5398", "78.539816339744830962"], ["78.52", "78.55", "78.5"]),
        ("√2", ["1.41", "1.414", "1.4142135623730950488"], ["1.42", "1.413", "1.4143"]),
        ("2/3", ["0.67", "0.66", "0.666666"], ["0.65", "0.68", "0.6667777"]),
        ("-2/3", ["-0.67", "-0.66"], ["-0.65", "-0.68", "0.67"]),
    ],
)
def test_only_digits_of_the_number_itself_are_right_so_far(before, inside, outside):
    number = parse(before)
    key = parse({"25π": "78.5", "√2": "1.4", "2/3": "0.7", "-2/3": "-0.7"}[before])
    how = Policy(("rounded",), rounding=("places", 1), unrounded=number_before(number, key))
    assert [text for text in inside if not unrounded(how, parse(text), key)] == []
    assert [text for text in outside if unrounded(how, parse(text), key)] == []


@given(st.integers(2, 400), st.integers(1, 20))
def test_a_root_or_a_circle_is_known_as_mpmath_knows_it(number, radius):
    with mpmath.workdps(45):
        for text, worth in (
            (f"√{number}", mpmath.sqrt(number)),
            (f"{radius}π", radius * mpmath.pi),
            (f"π × {radius}^2 × √{number}", mpmath.pi * radius**2 * mpmath.sqrt(number)),
        ):
            known = number_before(parse(text), parse("1"))
            assert (
                abs(mpmath.mpf(known.numerator) / known.denominator - worth) < mpmath.mpf(10) ** -29
            )
