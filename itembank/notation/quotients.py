"""Quotients of polynomials in letters and square roots of whole numbers, in exact arithmetic.

A :class:`Quotient` is a polynomial over a polynomial. A polynomial is a dictionary from
*monomials* to rational coefficients; a monomial is the letters with their exponents and one
square root of a square-free whole number, so that √12 is 2 of √3. Two quotients agree, whatever
their letters are worth, exactly when their cross products do: the monomials are linearly
independent over the rationals (square roots of different square-free numbers are; Besicovitch,
*J. London Math. Soc.* 15, 1940; from memory).

>>> (letter("x") + number(1)) * (letter("x") - number(1)) == letter("x") * letter("x") - number(1)
True
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import gcd

from itembank.notation.value import NotExact, Rational, over

Monomial = tuple[tuple[tuple[str, int], ...], int]
"""The letters with their exponents, in alphabetical order, and the number under the root."""
Polynomial = dict[Monomial, Rational]
"""The coefficient of each monomial; one that is whole may be an int."""

UNIT: Monomial = ((), 1)
MOST_TERMS = 300
"""Terms a polynomial may have, so that typed text cannot make us multiply out for ever."""
LARGEST_DEGREE = 64


@dataclass(frozen=True, slots=True, eq=False)
class Quotient:
    """A polynomial over a polynomial that is not zero."""

    top: Polynomial
    bottom: Polynomial

    def __add__(self, other: Quotient) -> Quotient:
        # Most quotients have the bottom 1: multiplied crosswise, terms would grow for nothing.
        if self.bottom == other.bottom:
            return Quotient(plus(self.top, other.top), self.bottom)
        return Quotient(
            plus(product(self.top, other.bottom), product(other.top, self.bottom)),
            product(self.bottom, other.bottom),
        )

    def __neg__(self) -> Quotient:
        return Quotient({m: -c for m, c in self.top.items()}, self.bottom)

    def __sub__(self, other: Quotient) -> Quotient:
        return self + -other

    def __mul__(self, other: Quotient) -> Quotient:
        return Quotient(product(self.top, other.top), product(self.bottom, other.bottom))

    def __truediv__(self, other: Quotient) -> Quotient:
        if not other.top:
            raise NotExact("this divides by zero")
        return Quotient(product(self.top, other.bottom), product(self.bottom, other.top))

    def __eq__(self, other: object) -> bool:
        """Tell whether two quotients agree for every value of their letters."""
        if not isinstance(other, Quotient):
            return NotImplemented
        # Crosswise, so that nothing has to be cancelled, which in several letters is much harder.
        return product(self.top, other.bottom) == product(other.top, self.bottom)

    __hash__ = None  # type: ignore[assignment]  # equal quotients are written in many ways

    def letters(self) -> frozenset[str]:
        """Return the letters that occur, whether or not they would cancel."""
        return frozenset(
            name for side in (self.top, self.bottom) for powers, _ in side for name, _ in powers
        )


OVER_ONE: Polynomial = {UNIT: 1}
"""What most quotients have for a bottom: to multiply by this very one changes nothing."""


def number(value: Rational) -> Quotient:
    """Return a rational number as a quotient."""
    return Quotient({UNIT: value} if value else {}, OVER_ONE)


def letter(name: str) -> Quotient:
    """Return one letter as a quotient."""
    return Quotient({(((name, 1),), 1): 1}, OVER_ONE)


def plus(a: Polynomial, b: Polynomial) -> Polynomial:
    """Return the sum of two polynomials; terms that cancel are left out."""
    total = dict(a)
    for monomial, c in b.items():
        _more(total, monomial, c)
    return total


def _more(total: Polynomial, monomial: Monomial, c: Rational) -> None:
    """Add a term to a polynomial; one that cancels is taken out."""
    before = total.get(monomial)
    value = c if before is None else before + c
    if value:
        total[monomial] = value
    else:
        total.pop(monomial, None)


def product(a: Polynomial, b: Polynomial) -> Polynomial:
    """Return the product of two polynomials.

    Raises:
        NotExact: it would have more than :data:`MOST_TERMS` terms, or be too high in degree.
    """
    if a is OVER_ONE or b is OVER_ONE:
        kept = b if a is OVER_ONE else a
        if len(kept) > MOST_TERMS:
            raise NotExact("this multiplies out to too many terms")
        return kept
    # Before the work is done, not after; terms may still gather to fewer, so the bound is wide.
    if len(a) * len(b) > MOST_TERMS**2 // 4:
        raise NotExact("this multiplies out to too many terms")
    total: Polynomial = {}
    for first, c in a.items():
        for second, d in b.items():
            monomial, factor = _times(first, second)
            _more(total, monomial, c * d if factor == 1 else c * d * factor)
    if len(total) > MOST_TERMS:
        raise NotExact("this multiplies out to too many terms")
    return total


def _times(a: Monomial, b: Monomial) -> tuple[Monomial, int]:
    """Return the product of two monomials and the whole number that comes out of the roots."""
    (powers, root), (others, other_root) = a, b
    if powers and others:
        merged = dict(powers)
        for name, n in others:
            merged[name] = merged.get(name, 0) + n
        # Small trees can have any degree: ((x^64)^64)^64.
        if sum(merged.values()) > LARGEST_DEGREE:
            raise NotExact(f"the degree is more than {LARGEST_DEGREE}")
        powers = tuple(sorted(merged.items()))
    else:
        powers = powers or others
    if root == 1 or other_root == 1:
        return (powers, root * other_root), 1
    shared = gcd(root, other_root)
    return (powers, (root // shared) * (other_root // shared)), shared


def rational(value: Quotient) -> Fraction:
    """Return the number that a quotient is.

    Raises:
        NotExact: it is not a rational number.

    >>> rational(number(3) / number(6))
    Fraction(1, 2)
    """
    if set(value.top) <= {UNIT} and set(value.bottom) <= {UNIT}:
        return over(value.top.get(UNIT, 0), value.bottom[UNIT])
    # √8/√2 is rational though its parts are not: then the top is that number times the bottom.
    monomial, c = next(iter(value.bottom.items()))
    ratio = over(value.top.get(monomial, 0), c)
    if value == number(ratio):
        return ratio
    raise NotExact("this is not a rational number")
