"""A part of the answer is not the answer; one of many right answers keeps the form asked for."""

import pytest

from itembank.items.asks import Give
from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict
from itembank.marking.worth.same_worth import same
from itembank.notation import parse
from itembank.notation import tree as t
from tests.marking.questions import question


@pytest.mark.parametrize(
    ("answer", "right"),
    [
        ("x = 2 or x = 5", True),
        ("5, 2", True),
        ("x = 2", False),
        ("5", False),
        ("x = 2 or x = 2", False),
        ("x = 2 or x = 3", False),
        ("x = 2 or x = 5 or x = 7", False),
    ],
)
def test_every_solution_and_no_other_is_given(answer, right):
    asked = question("x = 2 or x = 5", "roots", "Solve {x^2 - 7x + 10 = 0}.")
    assert (mark(asked, answer).verdict is Verdict.RIGHT) == right


@pytest.mark.parametrize(
    ("answer", "verdict"),
    [
        ("2/5", Verdict.RIGHT),
        ("5/12", Verdict.RIGHT),
        ("0.4", Verdict.WRONG_FORM),
        ("40%", Verdict.WRONG_FORM),
        ("1/2", Verdict.WRONG),
        ("0.5", Verdict.WRONG),
        ("2:35 pm", Verdict.UNREADABLE),
    ],
)
def test_one_of_many_right_answers_has_the_form_that_is_asked_for(answer, verdict):
    asked = question(
        "2/5",
        "fraction",
        "Write a fraction between {1/3} and {1/2}.",
        lambda maths: Give((t.Sym("x"),), (parse("1/3 < x < 1/2"),)),
    )
    assert mark(asked, answer).verdict is verdict


@pytest.mark.parametrize("unit", ["m", "cm", "kg", "g", "s", "min", "l", "ml", "m^2"])
def test_an_amount_is_not_worth_a_bare_number(unit):
    assert not same(parse(f"5 {unit}"), parse("5"))
    assert same(parse("5"), parse(f"5 {unit}"))  # there the unit is only left out
    asked = question("5", "integer", "Work out {2 + 3}.")
    assert mark(asked, f"5 {unit}").verdict is not Verdict.RIGHT
