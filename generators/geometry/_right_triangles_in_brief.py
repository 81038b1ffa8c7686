"""Short questions about Pythagoras that are told in words: a diagonal, a side, an area."""

from __future__ import annotations

from math import gcd

from generators.geometry import _pythagoras_mistakes as m
from generators.geometry._areas import length, unit_of
from generators.geometry._squares_of_sides import (
    SQUARES,
    difference_of_squares,
    root_of_difference,
    root_of_sum,
    sum_of_squares,
)
from itembank.items.item import Draft, Tier
from itembank.items.kinds.brief import Brief, told
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_TRIPLES = (
    (3, 4, 5),
    (5, 12, 13),
    (8, 15, 17),
    (7, 24, 25),
    (20, 21, 29),
    (9, 40, 41),
    (12, 35, 37),
)


def _sides(triple: int, scale: int, turned: int) -> tuple[int, int, int]:
    a, b, c = (scale * n for n in _TRIPLES[triple])
    return (b, a, c) if turned else (a, b, c)


def _side(topic: Topic, tier: Tier, triple: int, scale: int, turned: int) -> Draft:
    a, b, c = _sides(triple, scale, turned)
    unit = unit_of(a + scale)
    known, key, longest = (length(n, unit) for n in (a, b, c))
    square = length(b * b, f"{unit}^2")
    return told(
        "A rectangle has a side of {a} and a diagonal of {c}. How long is its other side?",
        root_of_difference(longest, known),
        key,
        "quantity",
        [
            (SQUARES, t.equals(difference_of_squares(longest, known), square)),
            ("Take the square root.", t.equals(t.Root(square), key)),
        ],
        [(m.SIDES_SUBTRACTED, c - a), (m.NO_ROOT, b * b)],
        ("side in brief", a, b, c),
        (2,),
        a=known,
        c=longest,
    )


def _diagonal(topic: Topic, tier: Tier, triple: int, scale: int) -> Draft:
    a, b, c = _sides(triple, scale, 0)
    unit = unit_of(a + scale)
    p, q, key = (length(n, unit) for n in (a, b, c))
    square = length(c * c, f"{unit}^2")
    return told(
        "A rectangle is {a} by {b}. How long is its diagonal?",
        root_of_sum(p, q),
        key,
        "quantity",
        [
            (SQUARES, t.equals(sum_of_squares(p, q), square)),
            ("Take the square root.", t.equals(t.Root(square), key)),
        ],
        [(m.SIDES_ADDED, a + b), (m.NO_ROOT, c * c)],
        ("diagonal in brief", a, b, c),
        (2,),
        a=p,
        b=q,
    )


def _area(topic: Topic, tier: Tier, triple: int, scale: int, turned: int) -> Draft:
    a, b, c = _sides(triple, scale, turned)
    unit = unit_of(a + scale)
    known, other, longest = (length(n, unit) for n in (a, b, c))
    square, key = length(b * b, f"{unit}^2"), length(a * b, f"{unit}^2")
    return told(
        "A rectangle has a side of {a} and a diagonal of {c}. What is its area?",
        t.times(known, root_of_difference(longest, known)),
        key,
        "quantity",
        [
            (SQUARES, t.equals(difference_of_squares(longest, known), square)),
            ("Take the square root for the other side.", t.equals(t.Root(square), other)),
            ("Multiply the sides.", t.equals(t.times(known, other), key)),
        ],
        [(m.DIAGONAL_AS_SIDE, a * c), (m.SIDES_SUBTRACTED, a * (c - a))],
        ("area in brief", a, b, c),
        (2,),
        a=known,
        c=longest,
    )


def _keep(triple: int, scale: int, turned: int) -> bool:
    return scale * _TRIPLES[triple][2] <= 120 and gcd(scale, 11) == 1


_ALL = {"triple": range(7), "scale": range(1, 16), "turned": (0, 1)}
BRIEF = {
    Tier.SUPPORT: (
        Brief(
            _diagonal,
            lambda triple, scale: _keep(triple, scale, 0),
            {"triple": range(7), "scale": range(1, 16)},
        ),
    ),
    Tier.CORE: (Brief(_side, _keep, _ALL),),
    Tier.CHALLENGE: (Brief(_area, _keep, _ALL),),
}
"""The short questions of each tier."""
