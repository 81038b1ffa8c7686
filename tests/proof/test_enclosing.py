"""Bounds of roots, π and sines hold what ball arithmetic finds, and rounding waits for them."""

from __future__ import annotations

import random
import re
from fractions import Fraction

import pytest
from flint import fmpq
from hypothesis import given
from hypothesis import strategies as st

from itembank.items.asks import Round
from itembank.notation import tree as t
from itembank.notation.algebra import algebra
from itembank.notation.enclosing import bounds, root_below
from itembank.notation.parse import parse
from itembank.notation.sines import angle_bounds, cosine, sine, tangent
from itembank.notation.value import NotExact
from itembank.proof.exact.rounding import enclosed, find_rounded, gap
from itembank.proof.sympy.sympy_integers import rounded
from tests.balls import arb


def ball(value: Fraction) -> arb:
    return arb(fmpq(value.numerator, value.denominator))


degrees = st.fractions(-720, 720, max_denominator=1000)


@given(degrees, st.sampled_from((12, 30, 45)))
def test_a_sine_lies_between_its_bounds(angle: Fraction, digits: int) -> None:
    x = ball(angle) * arb.pi() / 180
    for found, made in ((sine, x.sin()), (cosine, x.cos())):
        low, high = found(angle, digits)
        # An angle such as 30° has a sine that is a fraction, at which no ball is one-sided.
        assert ball(low) <= made + arb("1e-80")
        assert made - arb("1e-80") <= ball(high)
        assert high - low < Fraction(1, 10 ** (digits - 2))


@given(degrees.filter(lambda a: abs((a - 90) % 180 - 90) < 89))
def test_a_tangent_lies_between_its_bounds(angle: Fraction) -> None:
    low, high = tangent(angle, 30)
    made = (ball(angle) * arb.pi() / 180).tan()
    assert ball(low) <= made + arb("1e-80")
    assert made - arb("1e-80") <= ball(high)
    assert high - low < Fraction(1, 10**20)


@given(st.fractions(Fraction(-399, 400), Fraction(399, 400), max_denominator=400))
def test_an_angle_lies_between_its_bounds(ratio: Fraction) -> None:
    turn = 180 / arb.pi()
    for name, made in (
        ("sin", ball(ratio).asin() * turn),
        ("cos", ball(ratio).acos() * turn),
        ("tan", ball(5 * ratio).atan() * turn),
    ):
        given_ratio = 5 * ratio if name == "tan" else ratio
        low, high = angle_bounds(name, (given_ratio, given_ratio), 30)
        assert ball(low) < made < ball(high)
        assert high - low < Fraction(1, 10**7)


@given(st.fractions(0, 10**6, max_denominator=1000), st.sampled_from((2, 3, 4)))
def test_a_root_is_cut_off_below(value: Fraction, index: int) -> None:
    found = root_below(value, index, 20)
    assert found**index <= value < (found + Fraction(1, 10**20)) ** index


ASKED = [
    ("√(50/π)", "places", 1, "4.0"),
    ("8 cm × sin(35°)", "places", 1, "4.6 cm"),
    ("8 cm ÷ cos(20°)", "places", 1, "8.5 cm"),
    ("12 m × tan(28°)", "figures", 3, "6.38 m"),
    ("sin^-1(5/8)", "places", 1, "38.7"),
    ("cos^-1(7/11)", "places", 1, "50.5"),
    ("tan^-1(3/4)", "nearest", 1, "37"),
    ("2 × √((9 cm)^2 ÷ π)", "places", 2, "10.16 cm"),
]


@pytest.mark.parametrize(("target", "detail", "amount", "key"), ASKED)
def test_both_roads_round_alike(target: str, detail: str, amount: int, key: str) -> None:
    for road in (find_rounded, rounded):
        ask = Round(parse(target), detail, amount)  # type: ignore[arg-type]
        assert not road(ask, parse(key)).fault, road
        wrong = parse(re.sub(r"\d(?=\D*$)", lambda last: str((int(last[0]) + 1) % 10), key))
        assert road(ask, wrong).fault, road


def test_roads_agree_on_triangles_at_random() -> None:
    chance = random.Random(5)
    for _ in range(25):
        side, angle = chance.randrange(3, 40), chance.choice([n for n in range(15, 80) if n % 15])
        name = chance.choice(("sin", "cos", "tan"))
        target = t.times(t.Int(side), t.Trig(name, t.Quantity(t.Int(angle), "°")))
        x = arb(angle) * arb.pi() / 180
        value = side * {"sin": x.sin(), "cos": x.cos(), "tan": x.tan()}[name]
        tenths = int((10 * value + arb("0.5")).floor().unique_fmpz())
        key = t.Dec(str(tenths // 10), str(tenths % 10))
        assert not find_rounded(Round(target, "places", 1), key).fault
        assert not rounded(Round(target, "places", 1), key).fault


@pytest.mark.parametrize("text", ["√(50/x)", "sin^-1(5/4)", "tan(90°)", "1 ÷ (√2 × √2 - 2)"])
def test_what_has_no_bounds_is_told(text: str) -> None:
    with pytest.raises(NotExact):
        bounds(parse(text), 30)


def test_a_number_that_lies_where_rounding_turns_is_left_open() -> None:
    # √2 × √2 is 2, which bounds alone cannot tell; with sines no exact algebra helps.
    square = "sin(20°) × sin(20°) + cos(20°) × cos(20°)"
    with pytest.raises(NotExact, match="too near"):
        find_rounded(Round(parse(f"({square}) × 0.25"), "places", 1), parse("0.3"))


@pytest.mark.parametrize(
    ("text", "square"), [("√2/√3", "2/3"), ("√7/(1 + √2)", None), ("-√5", "5")]
)
def test_bounds_of_roots_hold_them_and_stand_in_order(text: str, square: str | None) -> None:
    low, high = enclosed(algebra(parse(text)), 8)
    assert low < high
    if square is not None:
        wanted = Fraction(square)
        least, most = sorted((low**2, high**2))
        assert least <= wanted <= most
    else:
        # √7/(1 + √2) = √14 − √7 = 1.095906…
        assert low <= Fraction("1.0959061")
        assert Fraction("1.0959060") <= high


def test_bounds_of_pi_hold_it_to_the_last_place_that_is_known() -> None:
    low, high = enclosed(algebra(parse("π")), 60)
    assert ball(low) < arb.pi() < ball(high)


def test_what_may_divide_by_nought_has_no_bounds() -> None:
    """To so few digits √2 and the number beside it are one."""
    quotient = algebra(parse("1/(√2 - 1.4142135623730950488)"))
    with pytest.raises(NotExact, match="too near to zero"):
        enclosed(quotient, 12)
    low, high = enclosed(quotient, 40)
    assert 0 < low < high


def test_the_gap_of_what_is_the_same_lies_about_nought() -> None:
    node = parse("√(50/π)")
    low, high = gap(node, node, Fraction(1))
    assert low < 0 < high
