"""Cross products agree where something is divided by zero; no road may take that for a solution."""

import pytest

from itembank.items.item import Find, Rewrite
from itembank.notation import parse
from itembank.notation.value import NotExact
from itembank.proof.exact.exact_road import ROAD
from itembank.proof.exact.reckoning.elimination import answer
from itembank.proof.exact.reckoning.truth import true
from itembank.proof.lines.line_rules import line_fault


@pytest.mark.parametrize("relation", ["12/x = 3/x", "x/x = 0", "(2x)/x = 3"])
def test_a_value_that_makes_a_denominator_zero_solves_nothing(relation):
    with pytest.raises(NotExact, match="no real solution"):
        ROAD.of(Find(parse("x")))(Find(parse("x"), (parse(relation),)), parse("0"))


def test_proportions_are_solved_as_before():
    assert answer(parse("x"), (parse("12/x = 3"),)) == (4,)
    assert answer(parse("x"), (parse("x : 6 = 2 : 3"),)) == (4,)


def test_a_quotient_of_quotients_of_letters_in_a_ratio_has_no_one_value():
    ratio = (parse("a : b : c = 1 : 1 : 1"),)
    assert answer(parse("(a/b)/(b/c)"), ratio) == (1,)
    # (s - 0.7)/s² is 0.3 at s = 1 and at s = 7/3.
    with pytest.raises(NotExact, match="only a ratio"):
        answer(parse("((a - 0.7)/b)/c"), ratio)


@pytest.mark.parametrize("relation", ["0 : 5 : 3 = 0 : 7 : 2", "0 : 0 = 2 : 3", "2 : 3 = 0 : 0"])
def test_ratios_with_zeros_are_equal_only_where_they_are(relation):
    assert not true(parse(relation))
    assert true(parse("0 : 5 = 0 : 7"))


def test_nothing_to_nothing_is_no_line_of_working():
    ask = Rewrite(parse("2x : 4x"), "simplify")
    assert line_fault(ask, parse("x : 2x")) == ""
    assert line_fault(ask, parse("0 : 0"))
