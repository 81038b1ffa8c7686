"""Short questions about prisms that are told in words."""

from __future__ import annotations

from fractions import Fraction

from generators.geometry import _solid_mistakes as m
from generators.geometry._areas import length, unit_of
from itembank.items.item import Draft, Tier
from itembank.items.kinds.brief import Brief, told
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

TWO = t.Int(2)


def _volume(topic: Topic, tier: Tier, end: int, long: int) -> Draft:
    unit = unit_of(end + long)
    area, along, key = length(end, f"{unit}^2"), length(long, unit), length(end * long, f"{unit}^3")
    return told(
        "A prism has a cross-section of {a} and a length of {l}. What is its volume?",
        t.times(area, along),
        key,
        "quantity",
        [("Multiply the cross-section by the length.", t.equals(t.times(area, along), key))],
        [
            (m.HALVED_TOO, Fraction(end * long, 2)),
            (m.EDGES_ADDED, end + long),
            (m.SQUARE_OF_AREA, end * long * long),
        ],
        ("volume in brief", end, long),
        a=area,
        l=along,
    )


def _long(topic: Topic, tier: Tier, end: int, long: int) -> Draft:
    unit = unit_of(end + long)
    area, key, size = length(end, f"{unit}^2"), length(long, unit), length(end * long, f"{unit}^3")
    return told(
        "A prism has a volume of {v} and a cross-section of {a}. How long is it?",
        t.divide(size, area),
        key,
        "quantity",
        [("Divide the volume by the cross-section.", t.equals(t.divide(size, area), key))],
        [
            (m.SUBTRACTED_BACK, end * long - end),
            (m.MULTIPLIED_AGAIN, end * long * end),
        ],
        ("length in brief", end, long),
        v=size,
        a=area,
    )


def _triangular(topic: Topic, tier: Tier, base: int, high: int, long: int) -> Draft:
    unit = unit_of(base + high + long)
    b, h, along = (length(n, unit) for n in (base, high, long))
    end, key = length(base * high // 2, f"{unit}^2"), length(base * high // 2 * long, f"{unit}^3")
    product = length(base * high, f"{unit}^2")
    return told(
        "A prism {l} long has a triangle of base {b} and height {h} as its end. "
        "What is its volume?",
        t.times(t.divide(t.times(b, h), TWO), along),
        key,
        "quantity",
        [
            ("Multiply the base by the height.", t.equals(t.times(b, h), product)),
            ("Halve it for the triangle.", t.equals(t.divide(product, TWO), end)),
            ("Multiply by the length.", t.equals(t.times(end, along), key)),
        ],
        [
            (m.NOT_HALVED, base * high * long),
            (m.ONE_FACE, base * high),
            (m.EDGES_ADDED, base + high + long),
        ],
        ("triangular in brief", base, high, long),
        (2,),
        l=along,
        b=b,
        h=h,
    )


BRIEF = {
    Tier.SUPPORT: (
        Brief(
            _volume,
            lambda end, long: end != long,
            {"end": (7, 9, 12, 14, 15, 18, 20, 25, 30), "long": range(4, 21)},
        ),
    ),
    Tier.CORE: (
        Brief(
            _long,
            lambda end, long: end != long + 1,
            {"end": (6, 8, 12, 15, 20, 24, 25, 30), "long": range(4, 21)},
        ),
    ),
    Tier.CHALLENGE: (
        Brief(
            _triangular,
            lambda base, high, long: base * high % 2 == 0 and long > 2 and base != high,
            {"base": (4, 5, 6, 8, 10), "high": (3, 4, 5, 6), "long": (7, 9, 10, 12, 15, 20)},
        ),
    ),
}
"""The short questions of each tier."""
