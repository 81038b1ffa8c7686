"""Real numbers made of square roots: exact sums, products, quotients, signs and roundings.

A :class:`Surd` is a sum of rational multiples of square roots of square-free whole numbers,
1 among them. These roots are linearly independent over the rationals (Besicovitch, *J. London
Math. Soc.* 15, 1940; from memory), so a surd is zero exactly when it has no term; the sign of
any other is found by enclosing it ever more closely.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from functools import total_ordering
from math import gcd, isqrt

from itembank.items.forms.form_rules import number_node
from itembank.notation import tree as t
from itembank.notation.algebra import square_free
from itembank.notation.quotients import Polynomial, Quotient
from itembank.notation.value import NotExact, Rational, over

MOST_TERMS = 64
LARGEST_RADICAND = 10**12
"""Roots of larger numbers are taken only where they come out: a square factor is tried for."""


@total_ordering
@dataclass(frozen=True, slots=True, eq=False)
class Surd:
    """A real number as (number under the root, rational coefficient) pairs, in order.

    >>> Surd.of(1) / (Surd.root(2) - Surd.of(1)) == Surd.root(2) + Surd.of(1)
    True
    >>> sorted([Surd.of(3), Surd.root(8), Surd.root(10)])[0] == Surd.root(8)
    True
    """

    terms: tuple[tuple[int, Fraction], ...]

    @staticmethod
    def of(value: Fraction | int) -> Surd:
        """Return a rational number."""
        return Surd(((1, Fraction(value)),) if value else ())

    @staticmethod
    def root(value: Fraction | int) -> Surd:
        """Return the square root of a rational number that is not negative."""
        value = Fraction(value)
        if value < 0:
            raise NotExact("a negative number has no square root")
        # √(a/b) is √(ab)/b, so that only whole numbers stand under a root.
        under = value.numerator * value.denominator
        if isqrt(under) ** 2 == under:
            return Surd.of(Fraction(isqrt(under), value.denominator))
        if under > LARGEST_RADICAND:
            raise NotExact("the number under the root is too large")
        outside, inside = square_free(under)
        return _made([(inside, Fraction(outside, value.denominator))])

    def __add__(self, other: Surd) -> Surd:
        if len(self.terms) == 1 and len(other.terms) == 1:
            ((root, c),), ((same, d),) = self.terms, other.terms
            if root == same:
                return Surd(((root, c + d),) if c + d else ())
        return _made([*self.terms, *other.terms])

    def __neg__(self) -> Surd:
        return Surd(tuple((root, -c) for root, c in self.terms))

    def __sub__(self, other: Surd) -> Surd:
        return self + -other

    def __mul__(self, other: Surd) -> Surd:
        if self.is_rational and other.is_rational:
            both = self.terms and other.terms
            return Surd(((1, self.terms[0][1] * other.terms[0][1]),) if both else ())
        pieces = []
        for a, c in self.terms:
            for b, d in other.terms:
                # √a × √b with a = gm and b = gn is g√(mn); mn is square-free, since a and b are.
                shared = gcd(a, b)
                pieces.append(((a // shared) * (b // shared), c * d * shared))
        return _made(pieces)

    def __truediv__(self, other: Surd) -> Surd:
        top, bottom = self, other
        if not bottom.terms:
            raise NotExact("this divides by zero")
        while not bottom.is_rational:
            # Multiplied by its conjugate in one prime, the bottom is rid of that prime.
            prime = _prime_of(next(root for root, _ in bottom.terms if root != 1))
            other_side = Surd(tuple((r, -c if r % prime == 0 else c) for r, c in bottom.terms))
            top, bottom = top * other_side, bottom * other_side
        return top * Surd.of(1 / bottom.rational)

    def __eq__(self, other: object) -> bool:
        return self.terms == other.terms if isinstance(other, Surd) else NotImplemented

    def __hash__(self) -> int:
        return hash(self.terms)

    def __lt__(self, other: Surd) -> bool:
        return (self - other).sign < 0

    @property
    def is_rational(self) -> bool:
        """Tell whether no root is left."""
        # In order of the numbers under the roots, of which each comes once.
        return not self.terms or self.terms[-1][0] == 1

    @property
    def rational(self) -> Fraction:
        """Return the number; raises NotExact where a root is left."""
        if not self.is_rational:
            raise NotExact("this is not a rational number")
        return self.terms[0][1] if self.terms else Fraction(0)

    @property
    def sign(self) -> int:
        """Return 1, 0 or −1."""
        if not self.terms:
            return 0
        if self.is_rational:
            return 1 if self.terms[0][1] > 0 else -1
        digits = 20
        # This ends: the terms are independent over the rationals, so the sum is not zero, and
        # close enough bounds are on one side of it.
        while True:
            low, high = self.enclosed(digits)
            if low > 0 or high < 0:
                return 1 if low > 0 else -1
            digits *= 2

    def enclosed(self, digits: int) -> tuple[Fraction, Fraction]:
        """Return bounds below and above, each root taken to so many decimal places."""
        low = high = Fraction(0)
        scale = 10**digits
        for root, c in self.terms:
            # In whole numbers: isqrt is exact at any length, where a float has 16 digits.
            below = isqrt(root * scale * scale)
            above = below if below * below == root * scale * scale else below + 1
            ends = sorted((c * Fraction(below, scale), c * Fraction(above, scale)))
            low, high = low + ends[0], high + ends[1]
        return low, high


def _made(pieces: Iterable[tuple[int, Fraction]]) -> Surd:
    total: dict[int, Fraction] = {}
    for root, c in pieces:
        total[root] = total.get(root, Fraction(0)) + c
    # Each new prime under a root doubles the terms that a quotient may have.
    if len(total) > MOST_TERMS:
        raise NotExact("this has too many different roots")
    return Surd(tuple(sorted((root, c) for root, c in total.items() if c)))


def _prime_of(n: int) -> int:
    return next((p for p in range(2, isqrt(n) + 1) if n % p == 0), n)


def surd(value: Quotient) -> Surd:
    """Return the number that a quotient of polynomials without letters is.

    Raises:
        NotExact: a letter is left in it.
    """
    if len(value.bottom) == 1:
        ((monomial, c),) = value.bottom.items()
        if monomial == ((), 1):
            return surd_polynomial(value.top, c)
    return surd_polynomial(value.top) / surd_polynomial(value.bottom)


def surd_polynomial(side: Polynomial, bottom: Rational = 1) -> Surd:
    """Return the number that a polynomial without letters is, divided by `bottom`."""
    if any(powers for powers, _ in side):
        raise NotExact("a letter is left over")
    return _made((root, over(c, bottom)) for (_, root), c in side.items())


def surd_node(value: Surd) -> t.Node:
    """Return a surd as a tree: over one denominator where it has one.

    >>> from itembank.notation import line
    >>> line(surd_node(Surd.of(Fraction(3, 2)) - Surd.root(Fraction(5, 4))))
    '(3 - √5)/2'
    """
    if value.is_rational:
        return number_node(value.rational)
    bottom = 1
    for _, c in value.terms:
        bottom = bottom * c.denominator // gcd(bottom, c.denominator)
    pieces = [_term(root, (c * bottom).numerator) for root, c in value.terms]
    if len(pieces) == 1 and bottom > 1 and isinstance(pieces[0], t.Neg):
        return t.Neg(t.Frac(pieces[0].of, t.Int(bottom)))
    rest: list[tuple[t.SumOp, t.Node]] = [
        ("-", piece.of) if isinstance(piece, t.Neg) else ("+", piece) for piece in pieces[1:]
    ]
    top = t.Sum(pieces[0], tuple(rest)) if rest else pieces[0]
    return top if bottom == 1 else t.Frac(top, t.Int(bottom))


def _term(root: int, c: int) -> t.Node:
    size = abs(c)
    node: t.Node = t.Int(size) if root == 1 else t.Root(t.Int(root))
    if root != 1 and size != 1:
        node = t.Juxt((t.Int(size), node))
    return t.Neg(node) if c < 0 else node
