"""Polynomials as the forms need them: common factors, and whether one splits further."""

from __future__ import annotations

from fractions import Fraction
from math import gcd, isqrt, lcm
from typing import Any

from itembank.notation import tree as t
from itembank.notation.quotients import Monomial, Polynomial, Quotient, product
from itembank.notation.value import NotExact, Rational, over


def whole_content(polynomial: Polynomial) -> int:
    """Return the highest common factor of whole coefficients; 0 where one is not whole.

    >>> from itembank.notation.algebra import algebra
    >>> from itembank.notation.parse import parse
    >>> whole_content(algebra(parse("6x + 4")).top), whole_content(algebra(parse("0.5x")).top)
    (2, 0)
    """
    if any(c.denominator != 1 for c in polynomial.values()):
        return 0
    return gcd(*(c.numerator for c in polynomial.values()))


def common_letters(polynomial: Polynomial) -> frozenset[str]:
    """Return the letters that are a factor of every term."""
    found = [frozenset(name for name, _ in powers) for powers, _ in polynomial]
    return frozenset.intersection(*found) if found else frozenset()


class TooLarge(t.NotationError):
    """A polynomial is too long for its factors to be looked for."""


LARGEST_DEGREE = 12
"""The highest degree, all letters together, of a polynomial that is looked into for factors."""
MOST_TERMS = 40


def splits(polynomial: Polynomial) -> bool:
    """Tell whether a polynomial is a product of two that hold letters, with rational numbers.

    One of degree 1 is not; aU² + bUV + cV², with U and V products of letters, is exactly when
    b² − 4ac is the square of a rational number. Others are left to sympy, which factorises by
    reduction modulo primes and lifting (Zassenhaus, *J. Number Theory* 1, 1969; in several
    letters Wang, *Math. Comp.* 32, 1978; from memory).

    Raises:
        TooLarge: it is too long to be looked into.

    >>> from itembank.notation.algebra import algebra
    >>> from itembank.notation.parse import parse
    >>> [splits(algebra(parse(t)).top) for t in ("x^2 - 9", "x^2 + 4", "4a^2 - b^2", "x^3 - 8")]
    [True, False, True, True]
    """
    # With roots for coefficients, x² − 2 would split: schools factorise with rational numbers.
    if any(root != 1 for _, root in polynomial):
        return False
    degree = max((sum(n for _, n in powers) for powers, _ in polynomial), default=0)
    if degree < 2 or len(polynomial) < 2:
        return False
    if not common_letters(polynomial):
        of_second_degree = _splits_as_quadratic(polynomial)
        if of_second_degree is not None:
            return of_second_degree
    if degree > LARGEST_DEGREE or len(polynomial) > MOST_TERMS:
        raise TooLarge("this is too long for its factors to be looked for")
    poly = _sympy_poly(polynomial, sorted(_letters(polynomial)))
    # By how often each factor comes: (x + 1)² is two.
    return int(sum(times for _, times in poly.factor_list()[1])) > 1


def _splits_as_quadratic(polynomial: Polynomial) -> bool | None:
    """Tell whether aU² + bUV + cV² splits; None for a polynomial of another kind.

    Of U² and V² one may be itself a square of squares, as in x⁴ − 5x² + 6: then that it does not
    split as a quadratic does not settle it, as x⁴ + 4 shows.
    """
    if len(polynomial) > 3:
        return None
    ends = sorted(polynomial, key=lambda monomial: _exponents(monomial, polynomial))
    first, last = ends[0], ends[-1]
    low, high = _exponents(first, polynomial), _exponents(last, polynomial)
    if any(n % 2 for n in (*low, *high)):
        return None
    b: Rational = 0
    if len(ends) == 3:
        middle = _exponents(ends[1], polynomial)
        if any(2 * m != n + k for m, n, k in zip(middle, low, high, strict=True)):
            return None
        b = polynomial[ends[1]]
    discriminant = b * b - 4 * polynomial[first] * polynomial[last]
    if discriminant >= 0 and all(
        isqrt(n) ** 2 == n for n in (discriminant.numerator, discriminant.denominator)
    ):
        return True
    return False if max(*low, *high) == 2 and sum(low) <= 2 and sum(high) <= 2 else None


def _letters(polynomial: Polynomial) -> set[str]:
    return {name for powers, _ in polynomial for name, _ in powers}


def _sympy_poly(polynomial: Polynomial, letters: list[str]) -> Any:
    from sympy import QQ, Poly, Symbol

    terms = {
        tuple(dict(powers).get(name, 0) for name in letters): QQ(c.numerator, c.denominator)
        for (powers, _), c in polynomial.items()
    }
    return Poly.from_dict(terms, *map(Symbol, letters), domain=QQ)


def proportional(first: Quotient, second: Quotient) -> bool:
    """Tell whether one quotient is a number times the other.

    >>> from itembank.notation.algebra import algebra
    >>> from itembank.notation.parse import parse
    >>> a, b, c = (algebra(parse(text)) for text in ("2(x + 1)", "(x + 1)/3", "x + 2"))
    >>> proportional(a, b), proportional(a, c)
    (True, False)
    """
    if len(first.top) == len(first.bottom) == len(second.top) == len(second.bottom) == 1:
        return [*first.top, *first.bottom] == [*second.top, *second.bottom]
    try:
        left, right = product(first.top, second.bottom), product(second.top, first.bottom)
    except NotExact:
        return False
    if left.keys() != right.keys():
        return False
    return len({over(c, right[monomial]) for monomial, c in left.items()}) <= 1


def _exponents(monomial: Monomial, polynomial: Polynomial) -> tuple[int, ...]:
    letters = sorted({name for powers, _ in polynomial for name, _ in powers})
    return tuple(dict(monomial[0]).get(name, 0) for name in letters)


def share_a_factor(above: Polynomial, below: Polynomial) -> bool:
    """Tell whether two polynomials have a factor with a letter in it in common.

    In one letter by Euclid's algorithm over the rational numbers; in several by sympy, where
    neither is of one term alone (:func:`common_letters` tells of those).
    """
    if any(root != 1 for side in (above, below) for _, root in side):
        return False
    letters = _letters(above) & _letters(below)
    if len(_letters(above) | _letters(below)) == 1:
        (letter,) = letters or {""}
        a, b = (_coefficients(side, letter) for side in (above, below))
        while b:
            a, b = b, _remainder(a, b)
        return len(a) > 1
    if not letters or len(above) < 2 or len(below) < 2:
        return False
    names = sorted(_letters(above) | _letters(below))
    shared = _sympy_poly(above, names).gcd(_sympy_poly(below, names))
    return bool(shared.total_degree() > 0)


def _coefficients(polynomial: Polynomial, letter: str) -> list[Fraction]:
    """Return the coefficients of a polynomial in one letter, the highest power first."""
    by_power = {dict(powers).get(letter, 0): c for (powers, _), c in polynomial.items()}
    return [Fraction(by_power.get(n, 0)) for n in range(max(by_power, default=-1), -1, -1)]


def _remainder(a: list[Fraction], b: list[Fraction]) -> list[Fraction]:
    rest = list(a)
    while len(rest) >= len(b):
        factor = rest[0] / b[0]
        for place, c in enumerate(b):
            rest[place] -= factor * c
        rest.pop(0)
    while rest and not rest[0]:
        rest.pop(0)
    # Scaled to whole numbers, so that coefficients stay short.
    size = lcm(*(c.denominator for c in rest)) if rest else 1
    rest = [c * size for c in rest]
    shared = gcd(*(c.numerator for c in rest)) if rest else 1
    return [c / shared for c in rest]
