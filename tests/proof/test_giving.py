"""Questions with many right answers: both roads, against brute force that uses neither."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from math import isqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.items.asks import Condition, Give
from itembank.items.forms.form_rules import number_node
from itembank.items.membership import is_member, unmet
from itembank.notation import parse
from itembank.notation import tree as t
from itembank.notation.value import NotExact
from itembank.proof.claim.finding import Finding
from itembank.proof.exact.many_answers import find_given
from itembank.proof.lines.line_of_many import given_fault
from itembank.proof.sympy.sympy_giving import given as by_sympy
from tests.depth import cases

X, A, B = t.Sym("x"), t.Sym("a"), t.Sym("b")


def between(low: str, high: str, *conditions: Condition) -> Give:
    return Give((X,), (parse(f"{low} < x < {high}"),), conditions)


PAIR = Give((A, B), (parse("a × b = 24"), parse("a > 2"), parse("b > 2")), (Condition("whole"),))


@pytest.mark.parametrize(
    ("ask", "right", "wrong"),
    [
        (between("1/3", "1/2"), ["2/5", "0.4", "40%", "5/12"], ["1/3", "1/2", "5/6", "1/6", "0"]),
        (between("-2", "1"), ["0", "-1.5", "-1/3"], ["-2", "1", "3"]),
        (PAIR, ["3, 8", "8, 3", "4, 6"], ["2, 12", "5, 7", "1, 24", "4, 8", "4.8, 5", "24"]),
        (between("20", "30", Condition("prime")), ["23", "29"], ["21", "25", "27", "31", "2"]),
        (between("30", "50", Condition("multiple", (t.Int(7),))), ["35", "42"], ["28", "40"]),
        (Give((X,), (), (Condition("factor", (t.Int(24),)),)), ["1", "24", "6"], ["5", "48", "-6"]),
        (between("1", "30", Condition("square")), ["4", "25"], ["1", "8", "27", "6.25"]),
        (between("1", "100", Condition("cube")), ["8", "64"], ["1", "9", "100"]),
        (between("1", "9", Condition("even")), ["2", "8"], ["3", "2.5", "10"]),
        (between("1", "9", Condition("odd")), ["3", "7"], ["2", "2.5", "9"]),
        (Give((X,), (parse("2x + 3 > 11"),), (Condition("whole"),)), ["5", "40"], ["4", "5.5"]),
        (Give((X,), (parse("x < 0"),)), ["-1", "-0.5"], ["0", "2"]),
        (
            Give((A, B), (parse("a + b = 20"),), (Condition("prime"), Condition("different"))),
            ["3, 17", "7, 13"],
            ["10, 10", "1, 19", "5, 15", "2, 18"],
        ),
        (Give((A, B), (parse("a + b = 3/4"),)), ["1/4, 1/2", "1/8, 5/8"], ["1/4, 1/4"]),
    ],
)
def test_both_roads_tell_right_answers_from_wrong(
    ask: Give, right: list[str], wrong: list[str]
) -> None:
    for road in (find_given, by_sympy):
        assert [road(ask, parse(text)).fault for text in right] == [""] * len(right), road
        for text in wrong:
            assert road(ask, parse(text)).fault, (road, text)
    assert all(unmet(ask, parse(text)) for text in wrong)


@pytest.mark.parametrize(
    "ask",
    [
        between("1/3", "1/3"),  # nothing lies between
        between("24", "28", Condition("prime")),
        Give((A, B), (parse("a × b = 7"), parse("a > 1"), parse("b > 1")), (Condition("whole"),)),
        between("22", "28", Condition("prime")),  # 23 alone: there is one answer
        Give((A, B), (parse("a × b = 6"), parse("a > 1"), parse("b > 1")), (Condition("whole"),)),
    ],
)
def test_a_question_with_no_answer_or_with_one_is_not_proved(ask: Give) -> None:
    for road in (find_given, by_sympy):
        assert not any(_proved(road, ask, text) for text in ("23", "2, 3", "1/3", "7"))


def _proved(road: Callable[[Give, t.Node], Finding], ask: Give, text: str) -> bool:
    try:
        return not road(ask, parse(text)).fault
    except NotExact:
        return False  # it is left to a person


def test_what_is_not_met_is_said_truly() -> None:
    said = {
        "5/6": "5/6 is not between 1/3 and 1/2: it is more than 1/2",
        "0.25": "0.25 is not between 1/3 and 1/2: it is less than 1/3",
        "3/6": "3/6 is not between 1/3 and 1/2: it is equal to 1/2",
        "1/3, 2/5": "one number is asked for",
    }
    for text, words in said.items():
        assert unmet(between("1/3", "1/2"), parse(text)) == words
    assert unmet(PAIR, parse("5, 7")) == "5 × 7 is 35, not 24"
    assert unmet(PAIR, parse("2, 12")) == "2 is not more than 2"
    assert unmet(PAIR, parse("4 × 6 = 25")) == "4 × 6 = 25 is not true"
    nothing = Give((X,), (), (Condition("multiple", (t.Int(0),)),))
    assert unmet(nothing, parse("5")) == "5 is not a multiple of 0"
    factor = Give((X,), (), (Condition("factor", (t.Int(24),)),))
    assert unmet(factor, parse("48")) == "48 is not a factor of 24"


def test_an_answer_with_a_root_is_not_decided() -> None:
    with pytest.raises(NotExact):
        is_member(between("1", "2"), parse("√2"))


@given(
    st.fractions(-5, 5, max_denominator=12),
    st.fractions(-5, 5, max_denominator=12),
    st.fractions(-5, 5, max_denominator=24),
)
@settings(max_examples=cases(25, 60), deadline=None)
def test_between_agrees_with_fractions(low: Fraction, high: Fraction, x: Fraction) -> None:
    relation = t.Relation(number_node(low), (("<", X), ("<", number_node(high))))
    ask = Give((X,), (relation,))
    assert is_member(ask, number_node(x)) == (low < x < high)
    if low < high:
        assert bool(find_given(ask, number_node(x)).fault) == (not low < x < high)
        assert bool(by_sympy(ask, number_node(x)).fault) == (not low < x < high)


@given(st.integers(1, 400), st.integers(-30, 400))
@settings(max_examples=cases(25, 60), deadline=None)
def test_conditions_agree_with_brute_force(n: int, x: int) -> None:
    brute = {
        "factor": x > 0 and any(x * k == n for k in range(1, n + 1)),
        "multiple": any(n * k == x for k in range(-31, 401)),
        "prime": x > 1 and all(x % k for k in range(2, x)),
        "square": x > 0 and isqrt(x) ** 2 == x,
        "cube": x > 0 and any(k**3 == x for k in range(1, 9)),
        "even": x % 2 == 0,
        "odd": x % 2 == 1,
        "positive": x > 0,
        "negative": x < 0,
    }
    for name, expected in brute.items():
        of = (t.Int(n),) if name in ("factor", "multiple") else ()
        ask = Give((X,), (), (Condition(name, of),))
        assert is_member(ask, number_node(x)) == expected, name


def test_lines_of_working_say_what_the_question_says() -> None:
    ask = between("1/3", "1/2")
    assert given_fault(ask, parse("4/12 < x < 6/12")) == ""
    assert given_fault(ask, parse("4/12 < x < 7/12")) == "says something else than the question"
    with pytest.raises(NotExact):
        given_fault(ask, parse("7/8"))
