"""Small pieces that the ratio topics share: amounts, ratios in lowest terms, pairs of parts."""

from __future__ import annotations

from fractions import Fraction
from math import gcd

from itembank.items.forms.form_rules import decimal_node, money_node
from itembank.notation import tree as t
from itembank.notation.units import unit_known

COPRIME = tuple((a, b) for a in range(1, 10) for b in range(a + 1, 10) if gcd(a, b) == 1)
"""Every pair of different parts up to 9 in lowest terms, the smaller first."""

TRIPLES = tuple(
    (a, b, c)
    for a in range(1, 7)
    for b in range(a + 1, 8)
    for c in range(b + 1, 9)
    if gcd(a, b, c) == 1
)
"""Three different parts up to 8 in lowest terms, in rising order."""

METRIC = (
    ("cm", "m", 100),
    ("g", "kg", 1000),
    ("ml", "l", 1000),
    ("p", "£", 100),
    ("min", "h", 60),
)
"""A smaller unit, a larger one, and how many of the first make one of the second."""

TWO_SORTS = (
    ("The bars show the members of a club.", ("juniors", "seniors")),
    ("The bars show the bulbs in a bed.", ("tulips", "lilies")),
    ("The bars show the tickets that were sold.", ("singles", "returns")),
)
"""What two bars show, and what they are called."""


def lowest(*parts: int) -> tuple[int, ...]:
    """Return the parts of a ratio divided by their highest common factor.

    >>> lowest(12, 18, 30)
    (2, 3, 5)
    """
    factor = gcd(*parts)
    return tuple(part // factor for part in parts)


def whole_ratio(*parts: int) -> t.Ratio:
    """Return a ratio of whole numbers as written.

    >>> whole_ratio(2, 3) == t.Ratio((t.Int(2), t.Int(3)))
    True
    """
    return t.Ratio(tuple(t.Int(part) for part in parts))


def factored(factor: int, *parts: int) -> t.Ratio:
    """Return a ratio with a common factor shown: ``(6 × 2) : (6 × 3)``."""
    return t.Ratio(tuple(t.Bracket(t.times(t.Int(factor), t.Int(part))) for part in parts))


def swapped(parts: tuple[int, ...], swap: int) -> tuple[int, ...]:
    """Return the parts in the other order where `swap` is odd.

    Which order a question has is read off its numbers, so that a space never holds the same
    pair of numbers in both orders.

    >>> swapped((2, 3), 5), swapped((2, 3), 4)
    ((3, 2), (2, 3))
    """
    return parts[::-1] if swap % 2 else parts


def turned(parts: tuple[int, ...], turn: int) -> tuple[int, ...]:
    """Return three parts in one of their six orders.

    >>> turned((1, 2, 3), 4)
    (1, 3, 2)
    """
    around = parts[turn % 3 :] + parts[: turn % 3]
    return around[::-1] if turn // 3 % 2 else around


def amount(value: Fraction | int, unit: str) -> t.Node:
    """Return a value with its unit: ``£`` and ``p`` as money, no unit as a plain number.

    >>> amount(Fraction(3, 2), "£")
    Money(amount=Dec(whole='1', places='50', recurring=''), sign='£')
    >>> amount(Fraction(3, 2), "kg")
    Quantity(amount=Dec(whole='1', places='5', recurring=''), unit='kg')
    """
    if unit == "£":
        return money_node(value)
    number = decimal_node(value)
    if unit in ("p", "€", "$"):
        return t.Money(money_node(value).amount if unit != "p" else number, unit)
    return t.Quantity(number, unit) if unit else number


def unit_name(unit: str) -> str:
    """Return the name of a unit in the plural.

    >>> unit_name("cm"), unit_name("p")
    ('centimetres', 'pence')
    """
    return unit_known(unit).many
