"""Whole numbers as products of primes, as numbers and as trees."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from math import prod

from itembank.notation import tree as t

Primes = tuple[tuple[int, int], ...]
"""Primes with their powers, smallest first."""


@cache
def primes_of(n: int) -> Primes:
    """Return the primes of a whole number above 1 and how often each stands in it.

    >>> primes_of(84)
    ((2, 2), (3, 1), (7, 1))
    """
    found, p = [], 2
    while n > 1:
        k = 0
        while n % p == 0:
            n //= p
            k += 1
        if k:
            found.append((p, k))
        p += 1
    return tuple(found)


def written_out(n: int) -> tuple[int, ...]:
    """Return the prime factors of a number, each as often as it stands in it.

    >>> written_out(84)
    (2, 2, 3, 7)
    """
    return tuple(p for p, k in primes_of(n) for _ in range(k))


def worth(primes: Primes) -> int:
    """Return the number that a product of powers comes to."""
    return prod(p**k for p, k in primes)


def product(primes: Iterable[tuple[int, int]]) -> t.Node:
    """Return powers as a product, in index notation.

    >>> from itembank.notation.line import line
    >>> line(product(((2, 3), (7, 1))))
    '2^3 × 7'
    """
    factors = [t.Int(p) if k == 1 else t.Power(t.Int(p), t.Int(k)) for p, k in primes]
    return factors[0] if len(factors) == 1 else t.times(*factors)


def in_index_form(n: int) -> t.Node:
    """Return a number as a product of powers of primes."""
    return product(primes_of(n))


def factors(numbers: Iterable[int]) -> t.Node:
    """Return numbers joined by times signs."""
    first, *rest = map(t.Int, numbers)
    return t.times(first, *rest) if rest else first


def is_prime(n: int) -> bool:
    """Tell whether a whole number is prime."""
    return n > 1 and primes_of(n) == ((n, 1),)
