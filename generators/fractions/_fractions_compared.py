"""Which of two fractions, near each other, is the larger."""

from __future__ import annotations

from math import gcd, lcm

from generators.fractions._fractions_on_a_line import Pair
from generators.fractions._order_mistakes import BIG_DENOMINATOR, BIG_NUMERATOR
from itembank.items import kinds
from itembank.items.item import Draft, Misconception, Step, Tier
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

TERMINATING: tuple[Pair, ...] = (
    (1, 4),
    (3, 4),
    (1, 5),
    (2, 5),
    (3, 5),
    (4, 5),
    (3, 8),
    (5, 8),
    (7, 8),
    (3, 10),
    (7, 10),
    (7, 20),
    (9, 20),
    (13, 20),
    (17, 20),
)


def two_differ(b: int, a: int, d: int, c: int) -> bool:
    """Keep two proper fractions in lowest terms that numerators or denominators alone misjudge."""
    if a >= b or c >= d or gcd(a, b) != 1 or gcd(c, d) != 1 or b == d:
        return False
    return a * d != b * c and misjudged(b, a, d, c) is not None


def misjudged(b: int, a: int, d: int, c: int) -> Misconception | None:
    """Return the mistake by which the smaller of a/b and c/d is taken for the larger."""
    first_larger = a * d > b * c
    if a != c and (a > c) != first_larger:
        return BIG_NUMERATOR
    return BIG_DENOMINATOR if a != c and (b < d) != first_larger else None


def compared(topic: Topic, tier: Tier, b: int, a: int, d: int, c: int) -> Draft:
    """Return the statement which of two fractions is the larger."""
    first, second = t.frac(a, b), t.frac(c, d)
    bottom = lcm(b, d)
    larger, holds = a * d > b * c, kinds.lot(2, a, b, c, d) == 0
    mistake = misjudged(b, a, d, c)
    assert mistake is not None  # the filter keeps no other
    sign: t.RelationOp = ">" if larger == holds else "<"
    return kinds.statement(
        t.Relation(first, ((sign, second),)),
        holds,
        mistake=mistake,
        steps=(
            Step(f"Write it over {bottom}.", t.equals(first, t.frac(a * bottom // b, bottom))),
            Step(f"Write it over {bottom}.", t.equals(second, t.frac(c * bottom // d, bottom))),
        ),
        twin=(a, b, c, d),
    )
