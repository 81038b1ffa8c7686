"""Conditions that a number is asked to meet: even, prime, a factor of 12."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from fractions import Fraction
from math import isqrt

from itembank.items.asks.give import CONDITIONS, Condition
from itembank.items.forms.value_forms import LARGEST_PRIME, is_prime
from itembank.notation import tree as t
from itembank.notation.line import shown_line
from itembank.notation.value import NotExact, exact


def is_met(condition: Condition, values: Sequence[Fraction]) -> bool:
    """Tell whether all of some numbers meet a condition."""
    if condition.name == "different":
        return len({*values}) == len(values)
    of = [exact(node) for node in condition.of]
    return all(_MEETS[condition.name](value, *of) for value in values)


def condition_unmet(
    condition: Condition, shown: Sequence[t.Node], values: Sequence[Fraction]
) -> str:
    """Return which of some numbers does not meet a condition, in words, or ``""``.

    >>> from itembank.items.asks import Condition
    >>> condition_unmet(Condition("even"), (t.Int(4), t.Int(7)), (Fraction(4), Fraction(7)))
    '7 is not an even number'
    """
    if condition.name == "different":
        return "the numbers are not different"
    of = [exact(node) for node in condition.of]
    for node, value in zip(shown, values, strict=True):
        if not _MEETS[condition.name](value, *of):
            said = CONDITIONS[condition.name][1].format(*map(shown_line, condition.of))
            if condition.name == "factor" and value < 0:
                return f"{shown_line(node)} is less than 0, and factors are taken to be more than 0"
            return f"{shown_line(node)} is not {said}"
    return ""


def _whole(value: Fraction) -> bool:
    return value.denominator == 1


def _root(value: Fraction, index: int) -> bool:
    """Tell whether a number is the square or cube of a whole number above 0."""
    if not _whole(value) or value < 1:
        return False
    n = value.numerator
    if index == 2:
        return isqrt(n) ** 2 == n
    # In whole numbers, by halving: a float's cube root is a little off, and wrong for long ones.
    low, high = 1, 1 << (n.bit_length() // 3 + 1)
    while low < high:
        middle = (low + high) // 2
        low, high = (middle + 1, high) if middle**3 < n else (low, middle)
    return low**3 == n


def _prime(value: Fraction) -> bool:
    # Refused, not called composite: the other road asks a test that knows larger primes.
    if value > LARGEST_PRIME:
        raise NotExact("this is too large to tell whether it is prime")
    return _whole(value) and is_prime(value.numerator)


_MEETS: dict[str, Callable[..., bool]] = {
    "whole": _whole,
    "positive": lambda value: value > 0,
    "negative": lambda value: value < 0,
    "even": lambda value: _whole(value / 2),
    "odd": lambda value: _whole(value) and not _whole(value / 2),
    "prime": _prime,
    "square": lambda value: _root(value, 2),
    "cube": lambda value: _root(value, 3),
    "multiple": lambda value, of: _whole(value) and of != 0 and _whole(value / of),
    "factor": lambda value, of: _whole(value) and value > 0 and _whole(of / value),
}
