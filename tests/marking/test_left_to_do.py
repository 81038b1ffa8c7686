"""An answer of the right value with work left in it, and working that leaves a unit out."""

import pytest

from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict
from tests.marking.questions import question


@pytest.mark.parametrize(
    ("key", "form", "answer"),
    [
        ("x = 2 + √3", "solution", "x = 1 + 1 + √3"),
        ("x = 2 + √3", "solution", "1 + 1 + √3"),
        ("x = 2 + √3 or x = 2 - √3", "roots", "x = 2 + √3 or x = 3 - 1 - √3"),
        ("y = 5x", "solution", "y = 2x + 3x"),
        ("x = 2a + 3", "solution", "x = a + a + 3"),
    ],
)
def test_a_solution_that_is_not_worked_out_is_not_right_yet(key, form, answer):
    asked = question(key, form)
    assert mark(asked, key).verdict is Verdict.RIGHT
    assert mark(asked, answer).verdict is Verdict.WRONG_FORM


@pytest.mark.parametrize(
    ("working", "says"),
    [
        ("3 × 40 = 120 = £1.20", ""),
        ("3 × 40 = 130 = £1.20", "The answer is right; 3 × 40 = 130 on the way is not true."),
    ],
)
def test_pence_without_their_sign_are_no_false_line(working, says):
    asked = question("£1.20", "amount", "What do {3} pens at {40p} each cost?")
    marked = mark(asked, working)
    assert (marked.verdict, marked.says) == (Verdict.RIGHT, says)
