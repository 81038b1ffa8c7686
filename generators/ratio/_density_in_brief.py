"""Short questions about density: found, and used for a mass, a volume or a block."""

from __future__ import annotations

from fractions import Fraction

from generators.ratio._density_mistakes import (
    ADDS_EDGES,
    DIVIDES,
    LIKE_WATER,
    MULTIPLIES,
    SUBTRACTS,
)
from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Draft, Tier
from itembank.items.kinds.brief import Brief, told
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t


def _of(number: Fraction | int, unit: str) -> t.Quantity:
    return t.Quantity(decimal_node(number), unit)


def _found(topic: Topic, tier: Tier, halves: int, volume: int) -> Draft:
    density = Fraction(halves, 2)
    mass, space, key = _of(density * volume, "g"), _of(volume, "cm^3"), _of(density, "g/cm^3")
    return told(
        "A stone has a mass of {m} and a volume of {v}. What is its density?",
        t.divide(mass, space),
        key,
        "quantity",
        [("Divide the mass by the volume.", t.equals(t.divide(mass, space), key))],
        [
            (MULTIPLIES, density * volume * volume),
            (SUBTRACTS, density * volume - volume),
        ],
        ("found in brief", halves, volume),
        m=mass,
        v=space,
    )


def _mass(topic: Topic, tier: Tier, tenths: int, volume: int) -> Draft:
    density = Fraction(tenths, 10)
    given, space, key = _of(density, "g/cm^3"), _of(volume, "cm^3"), _of(density * volume, "g")
    other = volume / density
    return told(
        "A metal has a density of {d}. What is the mass of {v} of it?",
        t.times(given, space),
        key,
        "quantity",
        [("Multiply the density by the volume.", t.equals(t.times(given, space), key))],
        [
            (DIVIDES, other if (10 * other).denominator == 1 else None),
            (LIKE_WATER, volume),
            (SUBTRACTS, abs(volume - density)),
        ],
        ("mass in brief", tenths, volume),
        d=given,
        v=space,
    )


def _volume(topic: Topic, tier: Tier, tenths: int, volume: int) -> Draft:
    density = Fraction(tenths, 10)
    given, mass, key = _of(density, "g/cm^3"), _of(density * volume, "g"), _of(volume, "cm^3")
    return told(
        "A metal has a density of {d}. What is the volume of {m} of it?",
        t.divide(mass, given),
        key,
        "quantity",
        [("Divide the mass by the density.", t.equals(t.divide(mass, given), key))],
        [(MULTIPLIES, density * volume * density), (SUBTRACTS, abs(density * volume - density))],
        ("volume in brief", tenths, volume),
        d=given,
        m=mass,
    )


def _block(topic: Topic, tier: Tier, a: int, b: int, c: int, tenths: int) -> Draft:
    density, size = Fraction(tenths, 10), a * b * c
    p, q, r = (_of(n, "cm") for n in (a, b, c))
    mass, space, key = _of(density * size, "g"), _of(size, "cm^3"), _of(density, "g/cm^3")
    added = density * size / (a + b + c)
    return told(
        "A cuboid {p} by {q} by {r} has a mass of {m}. What is its density?",
        t.divide(mass, t.Bracket(t.times(p, q, r))),
        key,
        "quantity",
        [
            ("Find the volume.", t.equals(t.times(p, q, r), space)),
            ("Divide the mass by the volume.", t.equals(t.divide(mass, space), key)),
        ],
        [
            (ADDS_EDGES, added if (10 * added).denominator == 1 else None),
            (SUBTRACTS, density * size - size),
            (MULTIPLIES, density * size * size),
        ],
        ("block in brief", *sorted((a, b, c)), tenths),
        p=p,
        q=q,
        r=r,
        m=mass,
    )


BRIEF = {
    Tier.SUPPORT: (
        Brief(
            _found,
            lambda halves, volume: halves % 2 == 0 or volume % 2 == 0,
            {"halves": range(4, 21), "volume": (6, 8, 9, 12, 15, 20, 25, 30, 40)},
        ),
    ),
    Tier.CORE: (
        Brief(
            _mass,
            lambda tenths, volume: tenths % 10 != 0,
            {"tenths": range(14, 90, 5), "volume": (5, 8, 12, 20, 30, 40, 50)},
        ),
        Brief(
            _volume,
            lambda tenths, volume: tenths % 10 != 0,
            {"tenths": range(15, 90, 6), "volume": (4, 6, 15, 20, 25, 30, 60)},
        ),
    ),
    Tier.CHALLENGE: (
        Brief(
            _block,
            lambda a, b, c, tenths: a >= b > c,
            {
                "a": (4, 5, 6, 8, 10),
                "b": (3, 4, 5, 6, 7),
                "c": (2, 3, 4, 5),
                "tenths": (15, 20, 25, 30, 40, 50, 80),
            },
        ),
    ),
}
"""The short questions of each tier."""
