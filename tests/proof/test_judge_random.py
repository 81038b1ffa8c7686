"""Random questions built from their answers, or answered by flint, and judged."""

from __future__ import annotations

from fractions import Fraction
from math import isqrt

import flint
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from itembank.notation.sines import PI
from itembank.proof.exact.exact_road import by_first_road
from itembank.proof.exact.reckoning.surd import Surd
from itembank.proof.exact.reckoning.univariate import count_roots, real_roots, value_at
from itembank.proof.outcome import State
from itembank.proof.sympy.sympy_road import by_second_road
from tests.depth import cases
from tests.proof.asked import asked

small = st.integers(-9, 9)
nonzero = small.filter(bool)
quick = settings(max_examples=cases(25, 40), deadline=None)


def term(c: int, body: str) -> str:
    return f"+ ({c}){body}" if body else f"+ ({c})"


def state(kind: str, question: str, key: str) -> State:
    """What both roads say, which have to agree; the form of a key is another matter."""
    item = asked(kind, question, key)
    first, second = by_first_road(item).fault, by_second_road(item).fault
    assert bool(first) == bool(second), (first, second)
    return State.DISPROVED if first else State.PROVED


@quick
@given(nonzero, small, nonzero, small)
def test_quadratics_with_rational_roots(a: int, b: int, c: int, d: int) -> None:
    # (ax + b)(cx + d) has the roots −b/a and −d/c.
    roots = {Fraction(-b, a), Fraction(-d, c)}
    question = f"({a * c})x^2 {term(a * d + b * c, 'x')} {term(b * d, '')} = 0"
    key = " or ".join(f"x = {root}" for root in roots)
    assert state("solve", question, key) is State.PROVED
    wrong = [f"x = {root + 1}" for root in roots if root + 1 not in roots]
    for other in wrong:
        assert state("solve", question, f"{key} or {other}") is State.DISPROVED
        assert state("solve", question, other) is State.DISPROVED
    if len(roots) == 2:
        assert state("solve", question, f"x = {min(roots)}") is State.DISPROVED


@quick
@given(small, nonzero, st.sampled_from([2, 3, 5, 6, 7, 10, 12]), st.integers(1, 5))
def test_quadratics_with_surd_roots(p: int, q: int, r: int, scale: int) -> None:
    # x = p ± q√r are the roots of x² − 2px + p² − q²r.
    question = f"{scale}x^2 {term(-2 * p * scale, 'x')} {term((p * p - q * q * r) * scale, '')} = 0"
    plus, minus = f"x = {p} + {abs(q)}√{r}", f"x = {p} - {abs(q)}√{r}"
    assert state("solve", question, f"{minus} or {plus}") is State.PROVED
    assert state("solve", question, plus) is State.DISPROVED
    assert state("solve", question, f"{minus} or {plus} + 1") is State.DISPROVED


@quick
@given(*[small] * 4, small, small)
def test_simultaneous_equations(a: int, b: int, c: int, d: int, x: int, y: int) -> None:
    assume(a * d != b * c)
    question = f"({a})x + ({b})y = {a * x + b * y}; ({c})x + ({d})y = {c * x + d * y}"
    assume(all("x" in part and "y" in part for part in question.split(";")))
    assert state("solve", question, f"y = {y}, x = {x}") is State.PROVED
    assert state("solve", question, f"x = {x + 1}, y = {y}") is State.DISPROVED
    if x != y:
        assert state("solve", question, f"x = {y}, y = {x}") is State.DISPROVED


@quick
@given(st.lists(small, min_size=2, max_size=3), st.lists(small, min_size=2, max_size=4))
def test_products_are_multiplied_out_as_flint_does(p: list[int], q: list[int]) -> None:
    def shown(coefficients: list[int]) -> str:
        return " ".join(["0", *(term(c, f"x^{k}") for k, c in enumerate(coefficients))])

    product = [int(c) for c in (flint.fmpz_poly(p) * flint.fmpz_poly(q)).coeffs()]
    question = f"({shown(p)})({shown(q)})"
    assert state("expand", question, shown(product)) is State.PROVED
    assert state("expand", question, shown([*product, 0, 1])) is State.DISPROVED
    assert state("expand", question, f"{shown(product)} + 1") is State.DISPROVED


@quick
@given(small, small, small, st.integers(4, 6))
def test_sequences(a: int, b: int, c: int, count: int) -> None:
    terms = ", ".join(str(a * n * n + b * n + c) for n in range(1, count + 1))
    rule = f"({a})n^2 + ({b})n + ({c})"
    assert state("sequence", terms, rule) is State.PROVED
    assert state("sequence", terms, f"{rule} + n - 1") is State.DISPROVED


@quick
@given(st.lists(st.integers(1, 400), min_size=2, max_size=4))
def test_common_factors_and_multiples_as_flint_has_them(numbers: list[int]) -> None:
    hcf, lcm = flint.fmpz(0), flint.fmpz(1)
    for n in numbers:
        hcf, lcm = hcf.gcd(n), lcm.lcm(n)
    shown = ", ".join(map(str, numbers))
    assert state("hcf", shown, str(hcf)) is State.PROVED
    assert state("lcm", shown, str(lcm)) is State.PROVED
    assert state("hcf", shown, str(hcf + 1)) is State.DISPROVED
    assert state("lcm", shown, str(lcm * 2)) is State.DISPROVED


@quick
@given(st.fractions(-99, 99, max_denominator=400), st.integers(1, 3))
def test_rounding_leaves_the_nearest_number_that_can_be_printed(
    value: Fraction, places: int
) -> None:
    step = Fraction(1, 10**places)
    near = [k * step for k in range(int(value / step) - 2, int(value / step) + 3)]
    best = min(near, key=lambda one: (abs(one - value), -abs(one)))

    def shown(number: Fraction) -> str:
        return f"{'-' if number < 0 else ''}{float(abs(number)):.{places}f}"

    assert state(f"places {places}", str(value), shown(best)) is State.PROVED
    assert state(f"places {places}", str(value), shown(best + step)) is State.DISPROVED


@quick
@given(st.lists(small, min_size=2, max_size=6).filter(lambda p: bool(p[-1])))
def test_real_roots_are_counted_as_flint_counts_them(p: list[int]) -> None:
    square_free = flint.fmpz_poly(p)
    square_free = square_free // square_free.gcd(square_free.derivative())
    real = sum(1 for root, _ in square_free.complex_roots() if root.imag == 0)
    assert count_roots([Surd.of(c) for c in p]) == real


@given(*[st.fractions(-9, 9, max_denominator=9)] * 3)
def test_the_roots_of_a_quadratic_make_it_zero(a: Fraction, b: Fraction, c: Fraction) -> None:
    assume(a)
    p = [Surd.of(c), Surd.of(b), Surd.of(a)]
    roots = real_roots(p)
    assert len(roots) == (b * b > 4 * a * c) + (b * b >= 4 * a * c)
    assert all(value_at(p, root) == Surd.of(0) for root in roots)


@given(st.lists(st.tuples(st.sampled_from([1, 2, 3, 6, 10]), small), min_size=1, max_size=4))
def test_the_sign_of_a_surd_is_that_of_its_floating_value(pairs: list[tuple[int, int]]) -> None:
    total, size = Surd.of(0), 0.0
    for root, c in pairs:
        total = total + Surd.of(c) * Surd.root(root)
        size += c * root**0.5
    assume(abs(size) > 1e-9 or not total.terms)
    assert total.sign == (0 if not total.terms else 1 if size > 0 else -1)
    if total.terms:
        assert total / total == Surd.of(1)


def test_the_circle_constant_is_flints() -> None:
    with flint.ctx.workprec(400):
        digits = flint.arb.pi().str(55, radius=False)
    assert str(int(PI * 10**49)) == digits.replace(".", "")[:50]


@pytest.mark.parametrize("n", [2, 50, 99, 12345])
def test_roots_are_rounded_as_whole_number_roots_are(n: int) -> None:
    # √n to 3 places: the nearest whole number to √(n × 10⁶), found by whole numbers alone.
    nearest = (isqrt(4 * n * 10**6) + 1) // 2
    key = f"{nearest // 1000}.{nearest % 1000:03d}"
    assert state("places 3", f"√{n}", key) is State.PROVED
