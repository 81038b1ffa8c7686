"""The quick fractions are the standard library's in all that can be told of them."""

from __future__ import annotations

import copy
import operator
import pickle
from fractions import Fraction as Standard

import pytest
import sympy
from hypothesis import given
from hypothesis import strategies as st

from itembank.fraction import Fraction

WHOLE = st.one_of(st.integers(-12, 12), st.integers(-(10**40), 10**40))
PAIRS = st.tuples(WHOLE, WHOLE.filter(bool))
OTHERS = st.one_of(
    WHOLE,
    st.booleans(),
    st.fractions(),
    PAIRS.map(lambda pair: Standard(*pair)),
    st.floats(allow_nan=False, allow_infinity=False, width=16),
)
BINARY = [
    *(operator.add, operator.sub, operator.mul, operator.truediv, operator.floordiv, operator.mod),
    *(operator.lt, operator.le, operator.gt, operator.ge, operator.eq, operator.ne),
]
UNARY = [
    *(operator.neg, operator.pos, operator.abs, float, int, bool, hash, str, repr, round),
    *(operator.attrgetter("numerator"), operator.attrgetter("denominator")),
]


def quick(pair):
    return Fraction(*pair)


def came_of(do, *values):
    """Return what came of it with its type, a quick fraction told as a standard one."""
    try:
        result = do(*values)
    except (ArithmeticError, TypeError) as error:
        return type(error), str(error)
    return Standard if isinstance(result, Standard) else type(result), result


@pytest.mark.parametrize("do", BINARY)
@given(pair=PAIRS, other=OTHERS)
def test_two_numbers(do, pair, other):
    assert came_of(do, quick(pair), other) == came_of(do, Standard(*pair), other)
    assert came_of(do, other, quick(pair)) == came_of(do, other, Standard(*pair))


@pytest.mark.parametrize("do", BINARY)
@given(first=PAIRS, second=PAIRS)
def test_two_quick_ones(do, first, second):
    assert came_of(do, quick(first), quick(second)) == came_of(
        do, Standard(*first), Standard(*second)
    )


@pytest.mark.parametrize("do", UNARY)
@given(pair=PAIRS)
def test_one_number(do, pair):
    assert came_of(do, quick(pair)) == came_of(do, Standard(*pair))


@given(st.tuples(st.integers(-9, 9), st.integers(1, 9)), st.integers(-5, 5))
def test_powers(pair, exponent):
    assert came_of(pow, quick(pair), exponent) == came_of(pow, Standard(*pair), exponent)


@given(PAIRS, OTHERS)
def test_it_stays_quick_and_in_lowest_terms(pair, other):
    if isinstance(other, Standard | int) and not isinstance(other, bool):
        for result in (
            *(quick(pair) + other, other + quick(pair), quick(pair) - other, other - quick(pair)),
            *(quick(pair) * other, other * quick(pair), -quick(pair), abs(quick(pair))),
            *((quick(pair) / other,) if other else ()),
        ):
            assert type(result) is Fraction
            assert (result.numerator, result.denominator) == Standard(
                result.numerator, result.denominator
            ).as_integer_ratio()


@pytest.mark.parametrize(
    "given",
    [
        (),
        (3,),
        ("3/4",),
        (0.5,),
        (Standard(6, 4),),
        (Fraction(6, 4),),
        (6, -4),
        (Standard(1, 2), 3),
    ],
)
def test_it_is_made_of_the_same(given):
    assert came_of(Fraction, *given) == came_of(Standard, *given)
    assert type(Fraction(*given)) is Fraction


@pytest.mark.parametrize("given", [("x",), (1, 0), (None,), (1j,), (0.5, 2)])
def test_it_is_refused_alike(given):
    def fault(kind):
        with pytest.raises((TypeError, ValueError, ZeroDivisionError)) as caught:
            kind(*given)
        return caught.type, str(caught.value)

    assert fault(Fraction) == fault(Standard)


def test_it_travels_and_others_know_it():
    value = Fraction(-6, 4)
    for same in (pickle.loads(pickle.dumps(value)), copy.copy(value), copy.deepcopy(value)):
        assert (type(same), same) == (Fraction, Standard(-3, 2))
    assert sympy.sympify(value) == sympy.Rational(-3, 2)
    assert {value: 1}[Standard(-3, 2)] == 1
