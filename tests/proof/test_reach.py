"""A question that stands for more than a machine can hold is left to a person, at once."""

from dataclasses import replace

import pytest

from itembank.bank.proof.judging import judge_all
from itembank.items.asks import (
    Answered,
    Ask,
    Common,
    Condition,
    ErrorInterval,
    FaultyWorking,
    Give,
    Inequality,
    Round,
    WhoIsRight,
)
from itembank.items.topics.registry import find_item, topic_ids
from itembank.notation import parse
from itembank.notation import tree as t
from itembank.processes.work_place import ThisMachine
from itembank.proof.claim.reach import out_of_reach
from itembank.proof.judge import State, judge
from tests.proof.asked import asked

NINES = "9" * 200
SIX = "a + b + c + d + e + f"

TOO_MUCH = [
    ("find", "9^(9^9)", "5"),
    ("find", "1 + 1", "9^(9^9)"),
    ("find", "0 × 9^(9^9)", "0"),
    ("find", "2^(√2 × 9^(9^9))", "5"),
    ("find", "((9^64)^64)^64", "5"),
    ("find", " × ".join(f"(1 + √{n})" for n in range(2, 40)), "5"),
    ("find", "x; x = 10^200000", "5"),
    ("places 2", "0.5^(9^9)", "0"),
    ("figures 2", NINES, "5"),
    ("hcf", f"{NINES}, 6, 9", "3"),
    ("expand", f"({SIX})^64", "x"),
    ("simplify", "x", f"({SIX})^64"),
    ("expand", "(x + 1)^1000000", "x"),
    ("simplify", "x^(9^9)", "x"),
    ("solve", f"({SIX})^64 = 0", "x = 3"),
    ("solve", "x^(9^9) = 4", "x = 2"),
    ("solve", "(x^64)^64 = 5", "x = 2"),
    ("solve", "(x + y)^(9^9) = 5", "x = 2"),
    ("solve", "(x + 1/7)^60 = x", "x = 3 or x = -1"),
    ("solve", "(√x + √y)^40 = 3; x + y = 4", "x = 1, y = 3"),
    ("solve", "(x^60 + y^60 + 1)(x^60 - y^60 - 1) = 0", "x = 3"),
    ("solve", " + ".join(f"1/(x + {n})" for n in range(1, 20)) + " = 5", "x = 3"),
    ("solve", "x^2 = 4", "x = 9^(9^9) or x = -2"),
    ("inequality", "(x + 1/7)^60 < x", "x < 3"),
    ("subject", "y = x^(9^9); x", "x = y - 3"),
    ("sequence", "1, 2, 3, 9^(9^9)", "n"),
    ("order", "9^(9^9), 3, 5", "3, 5, 9^(9^9)"),
]


def test_what_is_too_large_is_left_to_a_person_at_once():
    """Judged in processes that are ended after ten seconds, so that a fault here stops nobody."""
    items = [asked(*row) for row in TOO_MUCH]
    outcomes = judge_all(items, judge, place=ThisMachine(2), longest=10.0)
    for row, outcome in zip(TOO_MUCH, outcomes, strict=True):
        assert outcome.state is State.NEEDS_PERSON, row
        assert outcome.says.startswith("This is too much to work out: "), (row, outcome.says)


@pytest.mark.parametrize(
    ("kind", "question", "key"),
    [
        ("find", "2^64", "18446744073709551616"),
        ("find", "6.02 × 10^23 ÷ (3 × 10^(-8))", "20066666666666666666666666666666 2/3"),
        ("find", "64^(2/3)", "16"),
        ("find", "√2 × √8", "4"),
        ("solve", "x^2 = 10^40", "x = 10^20 or x = -(10^20)"),
        ("solve", "x^4 - 5x^2 + 4 = 0", "x = 1 or x = -1 or x = 2 or x = -2"),
        ("solve", "x^2 + y^2 = 25; y = x + 1", "x = 3, y = 4 or x = -4, y = -3"),
        ("hcf", "123456789, 987654321", "9"),
        ("figures 3", "123456789 × 987654321", "122000000000000000"),
        ("subject", "V = (4/3)πr^3; r", "r = ∛(3V/(4π))"),
        ("expand", "(x + 1)^5", "x^5 + 5x^4 + 10x^3 + 10x^2 + 5x + 1"),
    ],
)
def test_what_school_asks_is_within_reach(kind, question, key):
    assert out_of_reach(asked(kind, question, key)) == ""


def of_long_number(n: t.Node) -> list[tuple[Ask, int]]:
    """Return questions that do something with a number, each with how many digits it may have."""
    common, five = Common((n, t.Int(6)), "hcf"), t.Int(5)
    return [
        (common, 18),
        (Give((t.Sym("n"),), (), (Condition("factor", (n,)),)), 18),
        (Answered(common, five, "integer"), 18),
        (WhoIsRight(common, (("A", five), ("B", t.Int(3))), "integer"), 18),
        (FaultyWorking(common, (five,), "integer"), 18),
        (Round(n, "figures", 2), 60),
        (ErrorInterval(t.Sym("x"), n, "figures", 2), 60),
    ]


@pytest.mark.parametrize("place", range(7))
def test_a_number_may_be_as_long_as_what_is_done_with_it_lets_it_be(place):
    any_question = asked("find", "1 + 1", "2")
    for digits in (18, 19, 60, 61):
        ask, most = of_long_number(t.Int(int("9" * digits)))[place]
        says = out_of_reach(replace(any_question, ask=ask))
        assert says == (
            ""
            if digits <= most
            else f"this is too much to work out: it has a number of more than {most} digits"
        )


def test_a_number_that_is_only_compared_may_be_longer():
    wide = t.relate(t.Sym("x"), "<", parse(NINES))
    assert out_of_reach(replace(asked("find", "1 + 1", "2"), ask=Inequality(wide))) == ""


@pytest.mark.parametrize("base", ["2", "x", "(1/2)"])
@pytest.mark.parametrize("sign", ["", "-"])
def test_an_exponent_has_a_greatest_size_and_the_reason_names_it(base, sign):
    most, more = (asked("simplify", f"{base}^({sign}{n})", "1") for n in (64, 65))
    assert out_of_reach(most) == ""
    assert out_of_reach(more) == "this is too much to work out: an exponent is larger than 64"


def test_every_topic_is_within_reach():
    for topic in topic_ids():
        for tier in ("support", "core", "challenge"):
            for index in (0, 1, 17):
                assert out_of_reach(find_item(f"{topic}/{tier}/{index}")) == ""
