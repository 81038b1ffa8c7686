"""Every kind of key, in the spellings people type, and what each lacks when it is not right."""

from __future__ import annotations

import importlib.util
import random
import tracemalloc
from fractions import Fraction
from pathlib import Path

import pytest
import sympy
from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.items.item import Common, Rewrite, Round, Sequence, Solve, Subject
from itembank.marking.form.policy import ACCEPT, accept_fault
from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict
from itembank.notation.parse import parse
from itembank.notation.value import exact
from tests.depth import cases

_spec = importlib.util.spec_from_file_location(
    "questions", Path(__file__).with_name("questions.py")
)
_module = importlib.util.module_from_spec(_spec)
_spec.loader.exec_module(_module)
question = _module.question

QUADRATIC = question(
    "x = -4 or x = 7",
    "roots",
    "Solve {x^2 - 3x - 28 = 0}.",
    lambda m: Solve(tuple(m)),
    wrong=["x = 4 or x = -7"],
)
PAIR = question(
    "x = 2, y = 5", "roots", "Solve {x + y = 7} and {y = 2x + 1}.", lambda m: Solve(tuple(m))
)
SUBJECT = question(
    "x = (y - 2)/3",
    "subject",
    "Make {x} the subject of {y = 3x + 2}.",
    lambda m: Subject(m[1], m[0]),
)
NTH = question("3n + 2", "nth-term", "Find it for {5, 8, 11}.", lambda m: Sequence(m[0].parts))
EXPAND = question(
    "2x + 6", "expanded", "Expand {2(x + 3)}.", lambda m: Rewrite(m[0], "expand"), wrong=["2x + 3"]
)
FACTORISE = question(
    "3(x + 2)", "factorised", "Factorise {3x + 6}.", lambda m: Rewrite(m[0], "factorise")
)
PRIMES = question("2^2 × 3", "prime-factors", "Write {12} as a product of prime factors.")
STANDARD = question("3.2 × 10^4", "standard-form", "Write {32000} in standard form.")
SURD = question("2√3", "surd", "Simplify {√12}.")
HCF = question("6", "value", "Find the HCF of {12, 18}.", lambda m: Common(m[0].parts, "hcf"))
PENCE = question("4p", "simplified", "Simplify {p + 3p}.", lambda m: Rewrite(m[0], "simplify"))
METRES = question("5m", "simplified", "Simplify {2m + 3m}.", lambda m: Rewrite(m[0], "simplify"))
MONEY = question("£4.50", "money", "What is the price, in pounds?")
PLACES = question(
    "2.50", "rounded", "Round {2.499} to 2 decimal places.", lambda m: Round(m[0], "places", 2)
)
BETWEEN = question("-2 < x ≤ 3", "inequality", "Solve {-4 < 2x ≤ 6}.")
SHARED = question("£24, £36", "amounts", "Share {£60} in the ratio {2 : 3}.")
CANCEL = question("3/4", "lowest-terms", "Cancel {12/16}.", wrong=["6/8"])
WORKED = question("3/4", "value", "Work out {1/2 + 1/4}.")
FORMULA = question("r = √(A/π)", "subject", "Make {r} the subject of {A = πr^2}.")
OUTSIDE = question("x < -2 or x > 3", "inequality", "Solve it.")
THREE = question("x = 0, y = 0 or x = 1, y = 1 or x = -1, y = -1", "roots", "Solve it.")
BOTH = question("x = √y or x = -√y", "subject", "Make {x} the subject of {y = x^2}.")

RIGHT = [
    (OUTSIDE, "x < -2 or x > 3|x>3, x<-2|3<x or -2 > x|X<-2 OR X>3|x<-2; x>3|−2>x or 3<x"),
    (THREE, "x=-1,y=-1,x=0,y=0,x=1,y=1|x=0, y=0 or x=1, y=1 or x=-1, y=-1"),
    (BOTH, "x=±√y|x = √y or x = -√y|±sqrt(y)|-√y or √y|x=-√y, x=√y|X = ±√Y"),
    (QUADRATIC, "x = -4 or x = 7|7 and -4|x=7, x=-4|-4, 7|X=-4 OR X=7|x=-4,7|−4; 7|-4 & 7"),
    (PAIR, "x = 2, y = 5|y=5 and x=2|2, 5|(2, 5)|x=2 y=5|X=2,Y=5|x=2; y=5"),
    (SUBJECT, "x = (y-2)/3|(y-2)/3|x=y/3 - 2/3|(y-2)/3 = x|X=(Y-2)/3|x=(y-2)÷3"),
    (NTH, "3n+2|2 + 3n|nth term = 3n+2|3N+2|3*n+2|T(n)=3n+2|the nth term is 3n + 2"),
    (EXPAND, "2x+6|6 + 2x|2*x+6|2·x + 6|2 × x + 6|2X+6|2 x + 6|=2x+6|2x + 6."),
    (FACTORISE, "3(x+2)|(x+2)3|3*(x+2)|(x+2)*3|3 × (2 + x)|3(X + 2)"),
    (PRIMES, "2^2 × 3|2×2×3|2²×3|2*2*3|2 x 2 x 3|3 x 2^2"),
    (STANDARD, "3.2 x 10^4|3.2 × 10⁴|3.2*10^4|3.2E4|3.2·10⁴|3.2X10^4"),
    (SURD, "2√3|2 √3|2sqrt(3)|2*√3|√3 × 2|2root3"),
    (HCF, "6|HCF = 6|hcf is 6|６|6.|answer: 6"),
    (PENCE, "4p|4 p|4P|4*p|4·p|4 × p"),
    (METRES, "5m|5 m|5M|5*m|m × 5|5×m"),
    (MONEY, "£4.50|4.50|4.50 pounds|£ 4.50|4 pounds and 50 pence|£4.50p"),
    (PLACES, "2.50|2.50.| 2.50 |２.５０|=2.50|+2.50"),
    (BETWEEN, "-2<x<=3|3>=x>-2|x>-2 and x<=3|x ≤ 3, x > -2|−2 < X ≤ 3|-2 < x =< 3"),
    (SHARED, "£24, £36|24,36|24 and 36|24 36|24; 36|£24 and £36|24 & 36"),
    (WORKED, "3/4|6/8|0.75|75%|.75|3 / 4|¾"),
    (FORMULA, "r = √(A/π)|sqrt(A/π)|r=√(A÷π)|r = √A/√π|√(A/π) = r"),
]
OTHERS = [
    (FORMULA, "r = (A/π)^(1/2)", Verdict.WRONG_FORM, "power"),
    (FORMULA, "(A/π)^0.5", Verdict.WRONG_FORM, "power"),
    (FORMULA, "(A/π)^(1/3)", Verdict.WRONG, ""),
    (QUADRATIC, "4,-7", Verdict.KNOWN, "Why"),
    (QUADRATIC, "x=7", Verdict.WRONG, "missing"),
    (QUADRATIC, "7 or -4 or 3", Verdict.WRONG, ""),
    (QUADRATIC, "x=7 or x = 8/2-8", Verdict.WRONG_FORM, "work out"),
    (QUADRATIC, "banana", Verdict.UNREADABLE, "banana"),
    (PAIR, "5, 2", Verdict.WRONG, ""),
    (PAIR, "x=2", Verdict.WRONG, ""),
    (SUBJECT, "3x = y - 2", Verdict.WRONG, "alone"),
    (SUBJECT, "x = (2y-4)/6", Verdict.WRONG_FORM, "cancelled"),
    (SUBJECT, "x=y-2/3", Verdict.WRONG, ""),
    (NTH, "5+3(n-1)", Verdict.WRONG_FORM, "bracket"),
    (NTH, "n+3", Verdict.WRONG, ""),
    (NTH, "n3+2", Verdict.UNREADABLE, "write n^3 for a power"),
    (EXPAND, "2(x+3)", Verdict.WRONG_FORM, "bracket"),
    (EXPAND, "x+x+6", Verdict.WRONG_FORM, "like terms"),
    (EXPAND, "2x+3", Verdict.KNOWN, "Why"),
    (FACTORISE, "3x+6", Verdict.WRONG_FORM, "product"),
    (PRIMES, "4x3", Verdict.WRONG_FORM, "4 is not a prime"),
    (STANDARD, "32 × 10^3", Verdict.WRONG_FORM, "less than 10"),
    (STANDARD, "3.2x10^5", Verdict.WRONG, ""),
    (SURD, "√12", Verdict.WRONG_FORM, "simplified"),
    (SURD, "3.46", Verdict.WRONG, ""),
    (MONEY, "£4.5", Verdict.WRONG_FORM, "two places"),
    (MONEY, "450p", Verdict.WRONG_FORM, "pounds"),
    (PLACES, "2.5", Verdict.WRONG_FORM, "2 decimal places"),
    (PLACES, "2.499", Verdict.WRONG_FORM, "2 decimal places"),
    (PLACES, "2.51", Verdict.WRONG, ""),
    (BETWEEN, "-2<x<3", Verdict.WRONG, ""),
    (SHARED, "36, 24", Verdict.WRONG, ""),
    (SHARED, "24:36", Verdict.WRONG_FORM, "list"),
    (CANCEL, "6/8", Verdict.KNOWN, "Why"),
    (CANCEL, "9/12", Verdict.WRONG_FORM, "lowest terms"),
    (WORKED, "1/2+1/4", Verdict.WRONG_FORM, "work out"),
]


@pytest.mark.parametrize(
    ("item", "typed"), [(item, word) for item, texts in RIGHT for word in texts.split("|")]
)
def test_right_in_every_spelling(item, typed):
    assert mark(item, typed).verdict is Verdict.RIGHT


@pytest.mark.parametrize(("item", "typed", "verdict", "says"), OTHERS)
def test_what_is_not_right_is_told_how(item, typed, verdict, says):
    marked = mark(item, typed)
    assert marked.verdict is verdict
    assert says in marked.says


@pytest.mark.parametrize(
    ("accept", "key", "form", "prompt", "typed", "without"),
    [
        ("any-form", "3/4", "lowest-terms", "?", "9/12", Verdict.WRONG_FORM),
        ("decimal", "3/4", "lowest-terms", "?", "0.75", Verdict.WRONG_FORM),
        ("any-order", "1, 2, 3", "list", "?", "3, 1, 2", Verdict.WRONG),
        ("any-places", "£4.50", "money", "?", "£4.5", Verdict.WRONG_FORM),
        ("no-unit", "4 kg", "quantity", "Give the units.", "4", Verdict.WRONG_FORM),
        ("within 0.5", "5", "value", "?", "5.4", Verdict.WRONG),
    ],
)
def test_an_item_may_accept_more(accept, key, form, prompt, typed, without):
    assert mark(question(key, form, prompt), typed).verdict is without
    assert mark(question(key, form, prompt, accept=[accept]), typed).verdict is Verdict.RIGHT


def test_an_item_may_ask_for_more():
    strict = question("4 kg", "quantity", accept=["unit-needed"])
    assert mark(strict, "4").verdict is Verdict.WRONG_FORM
    strict = question("x = 3/2", "solution", accept=["lowest-terms-needed"])
    assert mark(strict, "6/4").verdict is Verdict.WRONG_FORM
    assert mark(question("x = 3/2", "solution"), "6/4").verdict is Verdict.RIGHT


def test_words_to_accept_by_are_checked():
    assert not any(map(accept_fault, ACCEPT))
    assert "no-unit" in accept_fault("nounit")
    assert accept_fault("within reason")


HOSTILE = [
    "7" * 10_000_000,
    "(" * 10_000 + "7" + ")" * 10_000,
    "9^9^9^9",
    "((9^9)^9)^9",
    "1/" + "7" * 1_000,
    "7/(3-3)",
    "\u202e\u0000" * 90,
    "\ud800\udfff" * 50,
    "(a+b+c+d+e+f+g)^64",
    "((x+1)^8)^8",
    "√(" + "×".join(["(9^64)^40"] * 14) + ")",
    "∛(" + "×".join(["(9^64)^40"] * 14) + ")",
    "+".join(["√999999937"] * 16),
    "(" * 40 + "x+1" + ")^9" * 40,
    "1.2̇" * 60,
    "ﷺ" * 199,
    "√" * 199 + "7",
]


@pytest.mark.parametrize("number", range(len(HOSTILE)))
def test_hostile_text_gets_a_verdict_in_little_memory(number):
    for item, _ in RIGHT:
        mark(item, "1")  # the parser is built once, and is no part of an answer
        tracemalloc.start()
        try:
            marked = mark(item, HOSTILE[number])
            peak = tracemalloc.get_traced_memory()[1]
        finally:
            tracemalloc.stop()
        assert marked.verdict in (Verdict.UNREADABLE, Verdict.WRONG)
        assert peak < 50_000_000


MARKS = "0123456789xynp+-−×÷*/^().,=<>≤≥:;√%£½²̇ …±or and to "


@settings(max_examples=cases(75, 800), deadline=None)
@given(st.one_of(st.text(MARKS, max_size=40), st.text(max_size=60)), st.sampled_from(RIGHT))
def test_no_text_raises(text, kind):
    assert mark(kind[0], text).verdict in Verdict


WORTH_THE_SAME = (Verdict.RIGHT, Verdict.WRONG_FORM)


@settings(max_examples=cases(60, 1_000), deadline=None)
@given(*[st.integers(-4, 4)] * 6)
def test_equality_of_expressions_agrees_with_sympy(a, b, c, d, e, f):
    x = sympy.Symbol("x")
    left = f"({a}x + {b})({c}x + {d})".replace("+ -", "- ")
    right = f"{e}x^2 + {f}x + {b * d}".replace("+ -", "- ")
    equal = sympy.expand((a * x + b) * (c * x + d) - (e * x**2 + f * x + b * d)) == 0
    verdict = mark(question(right, "expanded"), left).verdict
    assert (verdict in WORTH_THE_SAME) == equal


def test_many_answers_agree_with_flint_on_value():
    """A thousand hold each sign, each kind of sum, and equal and unequal pairs by the dozen."""
    flint = pytest.importorskip("flint")
    rng = random.Random(7)
    for _ in range(cases(1_000, 20_000)):
        top, bottom = rng.randint(-9, 9), rng.randint(1, 9)
        other, below = rng.randint(-9, 9), rng.randint(1, 9)
        typed = rng.choice([f"{other}/{below}", f"{other * 3}/{below * 3}", f"{other} ÷ {below}"])
        equal = flint.fmpq(top, bottom) == flint.fmpq(other, below)
        key = f"{top}/{bottom}"
        assert exact(parse(key)) == Fraction(top, bottom)
        verdict = mark(question(key, "value"), typed).verdict
        assert (verdict in WORTH_THE_SAME) == bool(equal), (key, typed)
