"""One of several solutions, and rounding down or up, held to engines that neither road uses."""

from decimal import ROUND_DOWN, ROUND_HALF_UP, ROUND_UP, Decimal

import flint
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from itembank.items.item import Find, Item, Pick, Round, Solve, Tier
from itembank.notation import parse
from itembank.notation import tree as t
from itembank.proof.judge import judge
from itembank.proof.outcome import State

WAYS = {"nearest": ROUND_HALF_UP, "down": ROUND_DOWN, "up": ROUND_UP}


def asked(prompt, ask, key, form):
    runs = tuple(prompt)
    return Item("a:b", "a.b", Tier.CORE, runs, ask, key, form, (), (), (), 1, ())


@given(
    st.integers(-12, 12), st.integers(-12, 12),
    st.sampled_from(["largest", "smallest", "positive", "negative"]),
)  # fmt: skip
def test_the_one_solution_that_is_named(a, b, which):
    assume(a != b)
    product = flint.fmpz_poly([-a, 1]) * flint.fmpz_poly([-b, 1])
    constant, linear, _ = (int(product[k]) for k in range(3))
    equation = parse(f"x^2 + {linear}x + {constant} = 0".replace("+ -", "- "))
    wanted = {
        "largest": [max(a, b)],
        "smallest": [min(a, b)],
        "positive": [root for root in (a, b) if root > 0],
        "negative": [root for root in (a, b) if root < 0],
    }[which]
    for root in (a, b):
        item = asked((equation,), Pick(Solve((equation,)), which), t.num(root), "value")
        state = judge(item).state
        if len(wanted) != 1:
            assert state is State.NEEDS_PERSON
        else:
            assert state is (State.PROVED if root == wanted[0] else State.DISPROVED)


@given(st.integers(1, 9), st.integers(1, 9), st.integers(1, 30))
def test_the_larger_share(a, b, one):
    assume(a != b)
    total, ratio = parse(str((a + b) * one)), parse(f"{a} : {b}")
    relations = (parse(f"a + b = {(a + b) * one}"), parse(f"a : b = {a} : {b}"))
    ask = Pick(Find(parse("a, b"), relations), "largest")
    for share in {a * one, b * one}:
        state = judge(asked((total, ratio), ask, t.num(share), "value")).state
        assert state is (State.PROVED if share == max(a, b) * one else State.DISPROVED)


@given(
    st.decimals("-99.999", "99.999", places=3), st.sampled_from(["places", "figures"]),
    st.integers(1, 3), st.sampled_from(sorted(WAYS)),
)  # fmt: skip
def test_rounding_agrees_with_the_decimal_arithmetic_of_the_library(value, detail, amount, way):
    assume(value)
    exponent = -amount if detail == "places" else value.adjusted() - amount + 1
    step = Decimal(1).scaleb(exponent)
    right = value.quantize(step, WAYS[way])
    shown = f"{right:f}"
    target = parse(f"{value:f}")
    item = asked((target,), Round(target, detail, amount, way), parse(shown), "rounded")
    outcome = judge(item)
    assert outcome.state is not State.DISPROVED or "decimal place" in outcome.says
    other = parse(f"{right + step:f}")
    wrong = asked((target,), Round(target, detail, amount, way), other, "rounded")
    assert judge(wrong).state is not State.PROVED


@pytest.mark.parametrize("which", ["largest", "positive"])
def test_two_solutions_are_not_the_one(which):
    equation = parse("x^2 = 9")
    key = parse("x = 3 or x = -3")
    outcome = judge(asked((equation,), Pick(Solve((equation,)), which), key, "roots"))
    assert outcome.state is State.DISPROVED
    assert "one answer" in outcome.says


def test_a_share_picked_among_equal_ones_is_left_to_a_person():
    relations = (parse("a + b = 10"), parse("a : b = 1 : 1"))
    ask = Pick(Find(parse("a, b"), relations), "largest")
    item = asked((parse("10"), parse("1 : 1")), ask, parse("5"), "value")
    assert judge(item).state is State.NEEDS_PERSON
