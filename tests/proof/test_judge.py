"""Right keys of every kind are proved, wrong ones disproved, and what nobody can tell is said."""

from __future__ import annotations

from dataclasses import replace

import pytest

from itembank.notation import parse
from itembank.proof.judge import judge
from itembank.proof.outcome import State
from tests.proof.asked import asked

RIGHT = (
    ("solve", "x^2 - 5x + 6 = 0", "x = 3 or x = 2"),
    ("solve", "x^2 = 7", "x = √7 or x = -√7"),
    ("solve", "2x^2 - 4x - 3 = 0", "x = (2 + √10)/2 or x = (2 - √10)/2"),
    ("solve", "x^2 + 6x + 9 = 0", "x = -3"),
    ("solve", "0.0121x^2 - 1.001x + 0.0909 = 0", "x = 1/11 or x = 909/11"),
    ("solve", "x^3 - x = 0", "x = 0 or x = 1 or x = -1"),
    ("solve", "x^4 - 5x^2 + 6 = 0", "x = √2 or x = -√2 or x = √3 or x = -√3"),
    ("solve", "3/(x - 1) + 2/(x + 1) = 1", "x = (5 + √33)/2 or x = (5 - √33)/2"),
    ("solve", "x^2/(x - 1) = 1/(x - 1)", "x = -1"),
    ("solve", "x/2 + y/3 = 4; x - y = 3", "y = 3, x = 6"),
    ("solve", "y = x + 1; x^2 + y^2 = 25", "x = 3, y = 4 or x = -4, y = -3"),
    ("solve", "x + y + z = 6; x - y = -1; 2z = x + 5", "x = 1, y = 2, z = 3"),
    ("solve", "5(2p - 3) = 4p", "p = 5/2"),
    ("solve", "x√2 = 6", "x = 3√2"),
    ("solve", "2πr = 10", "r = 5/π"),
    ("expand", "(3x - 2)^3", "27x^3 - 54x^2 + 36x - 8"),
    ("expand", "(x + √2)(x - √2)", "x^2 - 2"),
    ("factorise", "6x^2 + 7x - 3", "(3x - 1)(2x + 3)"),
    ("simplify", "((x + 1)/2)/((x^2 - 1)/4)", "2/(x - 1)"),
    ("simplify", "(1/x + 1/y)/(1/x - 1/y)", "(y + x)/(y - x)"),
    ("simplify", "x^3 ÷ x^5", "x^(-2)"),
    ("simplify", "4p + 3q - p", "3p + 3q"),
    ("find", "√12 + √27", "5√3"),
    ("find", "1/(√2 - 1)", "√2 + 1"),
    ("find", "(3 × 10^4) ÷ (2 × 10^(-5))", "1.5 × 10^9"),
    ("find", "£60 + 15% of £60", "£69"),
    ("find", "150 km ÷ 3 h", "50 km/h"),
    ("find", "√(b^2 - 4ac); a = 1; b = 5; c = 6", "1"),
    ("inequality", "-1 < 2x + 3 ≤ 7", "-2 < x ≤ 2"),
    ("inequality", "x^2 ≥ 9", "x ≤ -3 or x ≥ 3"),
    ("subject", "1/f = 1/u + 1/v; u", "u = (fv)/(v - f)"),
    ("subject", "A = πr^2; r", "r = √(A/π) or r = -√(A/π)"),
    ("subject", "x^2 = (a - b)^2; x", "x = a - b or x = b - a"),
    ("subject", "x^2 = a/4; x", "x = (√a)/2 or x = -(√a)/2"),
    ("sequence", "5, 8, 11, 14", "3n + 2"),
    ("sequence", "1/2, 2, 9/2, 8", "(1/2)n^2"),
    ("hcf", "84, 120, 36", "12"),
    ("lcm", "6x, 9x^2", "18x^2"),
    ("places 1", "3.96", "4.0"),
    ("figures 3", "99.96", "100"),
    ("figures 3", "π × 3^2", "28.3"),
    ("nearest 1", "-2.5", "-3"),
    ("places 2", "£45 ÷ 7", "£6.43"),
    ("order", "√2, 3/2, 1.4", "1.4, √2, 3/2"),
)

WRONG = (
    ("solve", "x^2 - 5x + 6 = 0", "x = 2", "x = 3 is missing"),
    ("solve", "x^2 - 5x + 6 = 0", "x = 2 or x = -3", "30 = 0"),
    ("solve", "x^2 = 7", "x = √7", "x = -√7 is missing"),
    ("solve", "(x^2 - 1)/(x - 1) = 2", "x = 1", "a denominator is zero"),
    ("solve", "x + y = 7; x - y = 3", "x = 2, y = 5", "-3 = 3"),
    ("solve", "x + y = 7; x - y = 3", "x = 5", "no value for y"),
    ("solve", "3(x + 1) = 3x + 3", "x = 1", "every value of x"),
    ("solve", "x^2 + 1 = 0", "x = 1", "no real solution"),
    ("expand", "(x + 2)(x + 3)", "x^2 + 6x + 6", "the term in x: 5 against 6"),
    ("expand", "(x + 2)(x + 3)", "x^2 + 5x + 5", "the number on its own: 6 against 5"),
    ("simplify", "(2x^3)^4", "8x^12", "16 against 8"),
    ("simplify", "1/(x + 1) + 1/(x - 1)", "(2x)/(x^2 + 1)", "(2x)/(x^2 - 1)"),
    ("find", "√50", "7.07", "5√2"),
    ("find", "4 cm × 3 cm", "12 cm", "area"),
    ("inequality", "-1 < 2x + 3 ≤ 7", "-2 ≤ x ≤ 2", "at x = -2"),
    ("inequality", "x^2 ≥ 9", "x ≥ 3", "at x = -4"),
    ("subject", "y = 3x + 2; x", "x = (y + 2)/3", "x = (y - 2)/3"),
    ("subject", "A = πr^2; r", "r = √(Aπ) or r = -√(Aπ)", "√(A/π)"),
    ("sequence", "5, 8, 11, 14", "3n + 5", "1st term would be 8"),
    ("sequence", "3, 6, 12, 24", "2 × 3^(n - 1)", "1st term would be 2"),
    ("hcf", "12, 18", "3", "6"),
    ("places 1", "3.96", "4", "1 decimal place"),
    ("nearest 1", "-2.5", "-2", "-3"),
    ("order", "√2, 3/2, 1.4", "√2, 1.4, 3/2", "the 1st"),
)

UNTOLD = (
    ("solve", "x + y = 7; 2x + 2y = 14", "x = 5, y = 2", "settle"),
    ("solve", "2^x = 8", "x = 3", "exponent"),
    ("solve", "√x = 3", "x = 9", "under a root"),
    ("find", "c; c^2 = 3^2 + 4^2", "5", "more than one solution"),
    ("find", "1 ÷ 0", "0", "divides by zero"),
    ("subject", "A = πr^2; r", "r = √(A/π)", "one of two roots"),
    ("subject", "x^2 = (a - b)^2; x", "x = a - b or x = -(b - a)", "one of two roots"),
    ("find", "y; x : y = 2 : 3; x = 0", "0", "0 : 0"),
    ("sequence", "5, 8", "3n + 2", "differences"),
    ("sequence", "3, 6, 12, 24", "3 × 2^(n - 1)", "differences"),
)


@pytest.mark.parametrize(("kind", "question", "key"), RIGHT)
def test_a_right_key_is_proved_by_both_roads(kind: str, question: str, key: str) -> None:
    outcome = judge(asked(kind, question, key))
    assert (outcome.state, outcome.says) == (State.PROVED, "")


@pytest.mark.parametrize(("kind", "question", "key", "says"), WRONG)
def test_a_wrong_key_is_disproved_and_where_it_parts_is_said(
    kind: str, question: str, key: str, says: str
) -> None:
    outcome = judge(asked(kind, question, key))
    assert outcome.state is State.DISPROVED
    assert says in outcome.says


@pytest.mark.parametrize(("kind", "question", "key", "says"), UNTOLD)
def test_what_cannot_be_told_needs_a_person_and_says_why(
    kind: str, question: str, key: str, says: str
) -> None:
    outcome = judge(asked(kind, question, key))
    assert outcome.state is State.NEEDS_PERSON
    assert says in outcome.says


def test_a_right_value_in_the_wrong_form_is_disproved_by_its_form() -> None:
    outcome = judge(asked("find", "3/4 + 1/6", "22/24", "lowest-terms"))
    assert outcome.state is State.DISPROVED
    assert "lowest terms" in outcome.says
    assert outcome.first == outcome.second == "11/12"


def test_a_model_with_a_number_that_is_not_printed_is_not_proved() -> None:
    item = asked("find", "3 × 40", "120")
    assert judge(item).state is State.PROVED
    outcome = judge(replace(item, prompt=("Three boxes of ", parse("30"))))
    assert outcome.state is State.NEEDS_PERSON
    assert "does not print" in outcome.says


@pytest.mark.parametrize(
    "key", ["x, y", "x = 1 = 2", "x > 1", "2 : 3", '"Pack A", "Pack B"', "1/0"]
)
@pytest.mark.parametrize(("kind", "question"), sorted({(kind, q) for kind, q, _ in RIGHT}))
def test_no_key_of_whatever_kind_stops_the_judge(kind: str, question: str, key: str) -> None:
    outcome = judge(asked(kind, question, key))
    assert outcome.state is not State.PROVED
    assert outcome.says
    assert "broke off" not in outcome.says
