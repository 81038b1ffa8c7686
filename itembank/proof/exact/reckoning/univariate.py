"""Polynomials in one letter with surds for coefficients: values, roots, and how many there are.

A polynomial here is a list of coefficients, the constant first and the last never zero; the
zero polynomial is the empty list. The number of different real roots is found by Sturm's
theorem (J. C. F. Sturm, 1829; from memory, as in any text on the theory of equations).
"""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise
from math import gcd

from itembank.notation.quotients import Polynomial
from itembank.notation.value import NotExact
from itembank.proof.exact.reckoning.surd import Surd, surd_polynomial

Coefficients = list[Surd]
MOST_DIVISORS = 2_000
LARGEST_TRIED = 10**9


def coefficients(polynomial: Polynomial, letter: str) -> Coefficients:
    """Return a polynomial in `letter` as coefficients.

    Raises:
        NotExact: it has another letter in it.
    """
    by_power: dict[int, Polynomial] = {}
    for (powers, root), c in polynomial.items():
        exponent = 0
        for name, n in powers:
            if name != letter:
                raise NotExact(f"the letter {name} is left over")
            exponent = n
        by_power.setdefault(exponent, {})[((), root)] = c
    length = max(by_power, default=-1) + 1
    return trimmed([surd_polynomial(by_power.get(k, {})) for k in range(length)])


def trimmed(p: Coefficients) -> Coefficients:
    """Return `p` without leading zeros.

    >>> len(trimmed([Surd.of(3), Surd.of(2), Surd.of(0)]))  # 3 + 2x
    2
    """
    while p and not p[-1].terms:
        p = p[:-1]
    return p


def value_at(p: Coefficients, x: Surd) -> Surd:
    """Return the value of a polynomial (Horner's rule).

    >>> value_at([Surd.of(3), Surd.of(2)], Surd.of(5)) == Surd.of(13)
    True
    """
    if not p:
        return Surd.of(0)
    total = p[-1]
    for c in p[-2::-1]:
        total = total * x + c
    return total


def remainder(p: Coefficients, q: Coefficients) -> tuple[Coefficients, Coefficients]:
    """Return quotient and remainder of p divided by q, which is not zero.

    >>> square, more = [Surd.of(0), Surd.of(0), Surd.of(1)], [Surd.of(1), Surd.of(1)]
    >>> remainder(square, more) == ([Surd.of(-1), Surd.of(1)], [Surd.of(1)])  # (x + 1)(x - 1) + 1
    True
    """
    rest, out = list(p), [Surd.of(0)] * max(0, len(p) - len(q) + 1)
    while len(rest) >= len(q):
        c, shift = rest[-1] / q[-1], len(rest) - len(q)
        out[shift] = c
        for k, d in enumerate(q):
            rest[shift + k] = rest[shift + k] - c * d
        # The leading term is gone by construction; what it leaves may lead with zeros.
        rest = trimmed(rest[:-1])
    return out, rest


def common(p: Coefficients, q: Coefficients) -> Coefficients:
    """Return the greatest common divisor of two polynomials (Euclid).

    >>> less, more = [Surd.of(-1), Surd.of(1)], [Surd.of(1), Surd.of(1)]
    >>> len(common(less, [Surd.of(-1), Surd.of(0), Surd.of(1)])), len(common(less, more))
    (2, 1)
    """
    while q:
        p, q = q, remainder(p, q)[1]
    return p


def count_roots(p: Coefficients) -> int:
    """Return how many different real roots a polynomial that is not zero has.

    >>> unit, zero = Surd.of(1), Surd.of(0)
    >>> [count_roots([c, zero, unit]) for c in (-unit, zero, unit)]
    [2, 1, 0]
    """
    chain = [p, trimmed([Surd.of(k) * c for k, c in enumerate(p)][1:])]
    while chain[-1]:
        # Minus the remainder: Sturm's theorem counts changes of sign in this very chain. With a
        # root that comes twice it counts different roots still.
        chain.append([-c for c in remainder(chain[-2], chain[-1])[1]])
    chain.pop()
    # Far out the leading term alone has its sign, so all real numbers lie between these two.
    right = [q[-1].sign for q in chain]
    left = [q[-1].sign * (-1) ** (len(q) - 1) for q in chain]
    return _changes(left) - _changes(right)


def _changes(signs: list[int]) -> int:
    return sum(a != b for a, b in pairwise(signs))


def real_roots(p: Coefficients) -> list[Surd]:
    """Return the different real roots of a polynomial that is not zero, least first.

    Raises:
        NotExact: a root is neither rational nor found by the formula for quadratics.

    >>> [root.rational for root in real_roots([Surd.of(c) for c in (6, -5, -2, 1)])]
    [Fraction(-2, 1), Fraction(1, 1), Fraction(3, 1)]
    """
    found: set[Surd] = set()
    # Zero is taken out first, since the search below divides the constant term.
    while len(p) > 1 and not p[0].terms:
        found.add(Surd.of(0))
        p = p[1:]
    # A quadratic has its formula, roots and all; above it, rational roots are divided out.
    if len(p) > 3:
        for root in _rational_roots(p):
            found.add(root)
            while not value_at(p, root).terms:
                p = remainder(p, [-root, Surd.of(1)])[0]
    if len(p) == 2:
        found.add(-p[0] / p[1])
    elif len(p) == 3:
        found |= _quadratic(p)
    # A quadratic in x².
    elif len(p) == 5 and not (p[1].terms or p[3].terms):
        for square in _quadratic([p[0], p[2], p[4]]):
            # A negative square has no real root; 0 is none, for the constant term is not.
            if square.sign > 0:
                root = _root(square)
                found |= {root, -root}
    # That there is no real root is an answer too: to x⁴ + x + 1 = 0, for one.
    elif len(p) > 3 and count_roots(p):
        raise NotExact("this has roots that cannot be written with square roots alone")
    return sorted(found)


def _quadratic(p: Coefficients) -> set[Surd]:
    """Return the roots of a quadratic by the formula."""
    c, b, a = p
    discriminant = b * b - Surd.of(4) * a * c
    if discriminant.sign < 0:
        return set()
    root = _root(discriminant)
    return {(-b + root) / (Surd.of(2) * a), (-b - root) / (Surd.of(2) * a)}


def _root(square: Surd) -> Surd:
    if not square.is_rational:
        raise NotExact("this has a root under a root, and those are not worked out")
    return Surd.root(square.rational)


def _rational_roots(p: Coefficients) -> list[Surd]:
    """Return the rational roots: top divides the constant, bottom the leading coefficient."""
    if not all(c.is_rational for c in p):
        return []
    values = [c.rational for c in p]
    scale = 1
    for value in values:
        scale = scale * value.denominator // gcd(scale, value.denominator)
    first, last = abs(int(values[0] * scale)), abs(int(values[-1] * scale))
    # To try no candidate is safe: a root that stays in the polynomial is counted, not lost.
    if max(first, last) > LARGEST_TRIED:
        return []
    tried = {Fraction(t, b) for t in _divisors(first) for b in _divisors(last)}
    if len(tried) > MOST_DIVISORS:
        return []
    roots = []
    for size in tried:
        for candidate in (size, -size):
            total = Fraction(0)
            for c in reversed(values):
                total = total * candidate + c
            if not total:
                roots.append(Surd.of(candidate))
    return roots


def _divisors(n: int) -> list[int]:
    small, d = [], 1
    while d * d <= n:
        if n % d == 0:
            small += [d, n // d]
        d += 1
    return small
