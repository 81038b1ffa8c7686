"""The first road to two numbers with a sum and a product: exact arithmetic.

Numbers with the sum s and the product p are the roots of z² − sz + p (Vieta, from memory), so
that there is one pair of them at most, and the half of s is as far from both.
"""

from __future__ import annotations

from fractions import Fraction
from math import isqrt

from itembank.items.asks import TwoNumbers
from itembank.items.forms.form_rules import number_node
from itembank.notation import tree as t
from itembank.notation.value import NotExact, exact
from itembank.proof.claim.finding import Finding, found


def find_two(ask: TwoNumbers, key: t.Node) -> Finding:
    """Return the two numbers, smaller first, and how the key differs from them.

    Raises:
        NotExact: there are no two different rational numbers with this sum and this product.

    >>> from itembank.notation import parse
    >>> ask = TwoNumbers(t.Int(10), t.Int(24))
    >>> find_two(ask, parse("6, 4")).fault, find_two(ask, parse("3, 7")).fault
    ('', 'it comes to 4, 6, the key says 3, 7')
    """
    half, product = exact(ask.total) / 2, exact(ask.product)
    square = half * half - product
    # A fraction in its lowest terms is a square just where top and bottom are.
    away = Fraction(isqrt(max(square.numerator, 0)), isqrt(square.denominator))
    if square <= 0 or away * away != square:
        raise NotExact("no two different fractions have this sum and this product")
    ours = (half - away, half + away)
    given = key.parts if isinstance(key, t.Listing) else (key,)
    right = tuple(sorted(exact(part) for part in given)) == ours
    return found(t.Listing(tuple(map(number_node, ours))), key, right)
