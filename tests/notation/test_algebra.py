"""Exact algebra agrees with python-flint, which it does not use, and with published values."""

import itertools
from fractions import Fraction
from math import isqrt

import flint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.notation import parse
from itembank.notation.algebra import LARGEST_RADICAND, algebra, square_free
from itembank.notation.quotients import MOST_TERMS, letter, number, rational
from itembank.notation.tree import Bracket, Frac, Int, Neg, Power, Product, Root, Sum, Sym
from itembank.notation.value import NotExact, exact
from tests.depth import cases

CONTEXT = flint.fmpq_mpoly_ctx.get(("x", "y"), "lex")
X, Y = CONTEXT.gens()
leaves = st.builds(Int, st.integers(0, 9)) | st.sampled_from([Sym("x"), Sym("y")])


def _grow(inner):
    group = st.builds(Bracket, inner)
    return (
        st.builds(lambda a, op, b: Sum(a, ((op, b),)), group, st.sampled_from("+-"), group)
        | st.builds(lambda a, b: Product(a, (("×", b),)), group, group)
        | st.builds(Neg, group)
        | st.builds(lambda a, n: Power(a, Int(n)), group, st.integers(0, 3))
        | st.builds(lambda a, n: Frac(a, Int(n)), group, st.integers(1, 9))
    )


polynomials = st.recursive(leaves, _grow, max_leaves=6)


def in_flint(node):
    """Return a tree of `polynomials` as flint's polynomial over the rationals."""
    match node:
        case Int(n):
            return CONTEXT.constant(n)
        case Sym(name):
            return X if name == "x" else Y
        case Bracket(of):
            return in_flint(of)
        case Neg(of):
            return -in_flint(of)
        case Sum(first, ((op, last),)):
            return in_flint(first) + (1 if op == "+" else -1) * in_flint(last)
        case Product(first, ((_, last),)):
            return in_flint(first) * in_flint(last)
        case Power(base, Int(n)):
            return in_flint(base) ** n
        case Frac(top, Int(n)):
            return in_flint(top) * flint.fmpq(1, n)
    raise TypeError(node)


@given(polynomials, polynomials)
@settings(max_examples=cases(50, 600), deadline=None)
def test_two_expressions_are_equal_exactly_when_flint_says_so(a, b):
    assert (algebra(a) == algebra(b)) == (in_flint(a) == in_flint(b))
    assert algebra(Bracket(a)) == algebra(a)


@given(polynomials)
@settings(max_examples=cases(40, 400), deadline=None)
def test_coefficients_are_those_of_flint(a):
    ours = algebra(a)
    (bottom,) = ours.bottom.values()
    theirs = {tuple(powers): Fraction(int(c.p), int(c.q)) for powers, c in in_flint(a).terms()}
    mine = {
        (dict(powers).get("x", 0), dict(powers).get("y", 0)): Fraction(c) / bottom
        for (powers, root), c in ours.top.items()
        if root == 1
    }
    assert mine == theirs


@given(polynomials, st.fractions(-5, 5, max_denominator=6), st.fractions(-5, 5, max_denominator=6))
@settings(max_examples=cases(40, 400), deadline=None)
def test_putting_numbers_for_letters_gives_the_value_at_them(a, x, y):
    value = rational(algebra(a, {"x": number(x), "y": number(y)}))
    there = in_flint(a)(*(flint.fmpq(v.numerator, v.denominator) for v in (x, y)))
    assert value == Fraction(int(there.p), int(there.q))


@given(st.integers(1, 10**6))
def test_square_free_part(n):
    outside, inside = square_free(n)
    assert outside * outside * inside == n
    assert all(int(exponent) == 1 for _, exponent in flint.fmpz(inside).factor())


@given(st.integers(1, 400), st.integers(1, 400))
def test_roots_multiply_and_add_as_square_roots_do(m, n):
    product = algebra(Root(Int(m))) * algebra(Root(Int(n)))
    assert product * product == number(m * n)
    is_square = isqrt(m * n) ** 2 == m * n
    try:
        assert rational(product) == isqrt(m * n)
    except NotExact:
        assert not is_square
    else:
        assert is_square


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("√50", "5√2"),
        ("√12 + √27", "5√3"),
        ("1/(√2)", "(√2)/2"),
        ("(3 + √5)(3 - √5)", "4"),
        ("6/(√3)", "2√3"),
        ("√(3/4)", "(√3)/2"),
        ("(x^2 - 9)/(x - 3)", "x + 3"),
        ("(2x + 1)^2", "4x^2 + 4x + 1"),
        ("x^-2", "1/(x^2)"),
        ("(√8)/(√2)", "2"),
        ("3.2 × 10^4", "32000"),
        ("∛27 + ∜16", "5"),
        ("∜4", "√2"),
    ],
)
def test_school_identities(one, other):
    assert algebra(parse(one)) == algebra(parse(other))
    assert algebra(parse(one)) != algebra(parse(other)) + number(1)


@pytest.mark.parametrize(
    "text", ["√x", "√(1 + √2)", "∛2", "√(-4)", "2^x", "1/(x - x)", "x = 3", "2 : 3", "9^99"]
)
def test_what_is_out_of_reach_is_said_so(text):
    with pytest.raises(NotExact):
        algebra(parse(text))


@pytest.mark.parametrize(
    "text",
    [
        "(a + b + c + d + e + f)^60",
        "((9^60)^60)^60",
        "((((x + 1)^60 + 1)^60 + 1)^60 + 1)^60",
        f"√{LARGEST_RADICAND + 7}",
    ],
)
def test_work_is_bounded_by_counting_not_by_a_clock(text):
    with pytest.raises(NotExact):
        algebra(parse(text))


def _sizes_of_powers(total):
    value, sizes = total, []
    while True:
        try:
            value = value * total
        except NotExact:
            return sizes
        sizes.append(len(value.top))


def test_no_result_has_more_terms_than_the_limit():
    total = letter("a")
    for name in "bcdefgh":
        total = total + letter(name)
    assert _sizes_of_powers(total) == [36, 120]  # C(9, 2) and C(10, 3); then C(11, 4) = 330
    assert 120 <= MOST_TERMS < 330


def test_exact_agrees_where_both_can_tell():
    numbers = ["3/4", "1 2/3", "0.16̇", "40%", "£4.50", "2^10", "√(49/4)"]
    for text, other in itertools.pairwise(numbers):
        total = parse(f"{text} + {other}")
        assert rational(algebra(total)) == exact(total)
