"""Polynomials as the forms need them: common factors, and whether one splits further."""

from __future__ import annotations

from fractions import Fraction
from math import gcd, isqrt, lcm

from itembank.notation.algebra import Monomial, Polynomial


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


def splits(polynomial: Polynomial) -> bool:
    """Tell whether aU² + bUV + cV², with U and V products of letters, has rational factors.

    It has them exactly when b² − 4ac is the square of a rational number.

    >>> from itembank.notation.algebra import algebra
    >>> from itembank.notation.parse import parse
    >>> [splits(algebra(parse(t)).top) for t in ("x^2 - 9", "x^2 + 4", "4a^2 - b^2")]
    [True, False, True]
    """
    if not 2 <= len(polynomial) <= 3 or any(root != 1 for _, root in polynomial):
        return False
    ends = sorted(polynomial, key=lambda monomial: _exponents(monomial, polynomial))
    first, last = ends[0], ends[-1]
    low, high = _exponents(first, polynomial), _exponents(last, polynomial)
    if any(n % 2 for n in (*low, *high)):
        return False
    b = Fraction(0)
    if len(ends) == 3:
        middle = _exponents(ends[1], polynomial)
        if any(2 * m != n + k for m, n, k in zip(middle, low, high, strict=True)):
            return False
        b = polynomial[ends[1]]
    discriminant = b * b - 4 * polynomial[first] * polynomial[last]
    return discriminant >= 0 and all(
        isqrt(n) ** 2 == n for n in (discriminant.numerator, discriminant.denominator)
    )


def _exponents(monomial: Monomial, polynomial: Polynomial) -> tuple[int, ...]:
    letters = sorted({name for powers, _ in polynomial for name, _ in powers})
    return tuple(dict(monomial[0]).get(name, 0) for name in letters)


def share_a_factor(above: Polynomial, below: Polynomial) -> bool:
    """Tell whether two polynomials in one letter have a factor with that letter in common.

    Found by Euclid's algorithm for polynomials over the rational numbers.
    """
    letters = {name for side in (above, below) for powers, _ in side for name, _ in powers}
    if len(letters) != 1 or any(root != 1 for side in (above, below) for _, root in side):
        return False
    (letter,) = letters
    a, b = (_coefficients(side, letter) for side in (above, below))
    while b:
        a, b = b, _remainder(a, b)
    return len(a) > 1


def _coefficients(polynomial: Polynomial, letter: str) -> list[Fraction]:
    """Return the coefficients of a polynomial in one letter, the highest power first."""
    by_power = {dict(powers).get(letter, 0): c for (powers, _), c in polynomial.items()}
    return [by_power.get(n, Fraction(0)) for n in range(max(by_power, default=-1), -1, -1)]


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
