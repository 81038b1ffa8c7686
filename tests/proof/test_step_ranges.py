"""Working of a double inequality: every line has the same solutions as the question."""

from __future__ import annotations

import pytest

from itembank.items.item import Inequality, Item, Step, Tier
from itembank.notation import parse
from itembank.notation import tree as t
from itembank.notation.value import NotExact
from itembank.proof.lines.line_rules import line_fault
from itembank.proof.lines.steps import step_fault


def worked(*lines: str) -> Item:
    asked = parse("-1 < 2x + 3 ≤ 9")
    assert isinstance(asked, t.Relation)
    steps = tuple(Step("", parse(line)) for line in lines)
    key = parse("-2 < x ≤ 3")
    return Item(
        "a:b", "t", Tier.CORE, (asked,), Inequality(asked), key, "inequality", steps, (), (), 1, ()
    )


def test_lines_with_the_same_solutions_follow() -> None:
    assert step_fault(worked("-4 < 2x ≤ 6", "-2 < x ≤ 3")) == ""


@pytest.mark.parametrize("line", ["-1 < 2x ≤ 6", "-4 ≤ 2x ≤ 6", "-3 < 2x"])
def test_a_line_that_changes_an_end_does_not(line: str) -> None:
    fault = step_fault(worked(line, "-2 < x ≤ 3"))
    assert fault == "line 1 of the working has another solution than the question"


def test_a_line_in_another_letter_does_not() -> None:
    assert step_fault(worked("-4 < 2y ≤ 6", "-2 < x ≤ 3")).endswith("is about another letter")


def test_one_half_of_a_chain_may_be_worked_on_alone() -> None:
    assert step_fault(worked("-4 < 2x", "-2 < x ≤ 3")) == ""


def test_two_inequalities_in_one_line_are_one_statement() -> None:
    asked = parse("x^2 > 4")
    assert isinstance(asked, t.Relation)
    other = "has another solution than the question"
    says = [
        line_fault(Inequality(asked), parse(line))
        for line in ("x < -2, x > 2", "x < -2, x > 3", "x > 2")
    ]
    assert says == ["", other, other]


@pytest.mark.parametrize("line", ["x > -2, x ≤ 3", "-4 < 2x, 2x ≤ 6"])
def test_the_halves_of_a_chain_may_stand_in_one_list(line: str) -> None:
    assert step_fault(worked(line, "-2 < x ≤ 3")) == ""


@pytest.mark.parametrize("line", ["x > -2, x ≤ 4", "x > -2 or x ≤ 3"])
def test_halves_that_hold_elsewhere_do_not(line: str) -> None:
    assert step_fault(worked(line, "-2 < x ≤ 3")).endswith("has another solution than the question")


def test_a_list_may_also_hold_the_cases_of_an_inequality() -> None:
    asked, line = parse("x^2 > 9"), parse("x < -3, x > 3")
    assert isinstance(asked, t.Relation)
    assert line_fault(Inequality(asked), line) == ""


def test_an_inequality_in_two_letters_has_no_working_that_is_checked() -> None:
    asked = parse("2a < b")
    assert isinstance(asked, t.Relation)
    with pytest.raises(NotExact, match="not an inequality in one letter"):
        line_fault(Inequality(asked), parse("a < b/2"))
