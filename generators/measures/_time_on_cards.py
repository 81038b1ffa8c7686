"""Lengths of time in decimal hours, in minutes, and in hours and minutes: cards and orders."""

from __future__ import annotations

from fractions import Fraction
from itertools import combinations

from generators._scatter import unlike
from generators.measures._clock_mistakes import HUNDRED
from generators.measures._clocks import length
from generators.ratio._parts import amount
from generators.ratio._units_mistakes import BY_NUMBER
from itembank.items.item import Draft, Tier
from itembank.items.kinds.equal_ways import (
    Way,
    odd_way_out,
    order_fits,
    ways_in_order,
    ways_matched,
)
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

QUARTERS = (15, 30, 45)
TENTHS = (6, 12, 18, 24, 36, 42, 48, 54)
_PARTS = tuple(sorted((*QUARTERS, *TENTHS)))
_THREES = tuple(combinations(_PARTS, 3))


def _hours(minutes: int) -> t.Node:
    """Return a length of time in hours, as a decimal."""
    return amount(Fraction(minutes, 60), "h")


def _hundredths(minutes: int) -> int:
    """Return what the digits after the point are taken for: 0.4 hours for 40 minutes."""
    return 100 * (minutes % 60) // 60


def _way(kind: str, minutes: int) -> Way:
    """Return a length of time in one of three ways of writing it."""
    plain = t.Quantity(t.Int(minutes), "min")
    if kind == "minutes":
        return Way(plain)
    if kind == "decimal":
        shown = _hours(minutes)
        return Way(shown, "An hour is 60 minutes: multiply by 60.", t.equals(shown, plain))
    shown = length(minutes)
    return Way(shown, "Write the hours in minutes, and add the rest.", t.equals(shown, plain))


def odd_length(topic: Topic, tier: Tier, hours: int, part: int, which: int) -> Draft:
    """Return one length of time in three ways, and one that takes an hour for 100 minutes."""
    minutes = 60 * hours + part
    wrong = _hundredths(minutes)
    odd = _way("mixed", 60 * hours + wrong) if which == 0 else _way("minutes", 100 * hours + wrong)
    others = [_way(kind, minutes) for kind in ("decimal", "minutes", "mixed")]
    return odd_way_out(odd, others, HUNDRED, ("lengths", hours, part, which))


def _odd_fits(hours: int, part: int, which: int) -> bool:
    return which == 1 or _hundredths(part) < 60


def lengths_matched(topic: Topic, tier: Tier, hours: int, three: int, which: int) -> Draft:
    """Return three lengths of time in decimal hours to match with hours and minutes."""
    lengths = [60 * hours + part for part in _THREES[three]]
    return ways_matched(
        [(_hours(minutes), length(minutes)) for minutes in lengths],
        length(60 * hours + _hundredths(lengths[which])),
        called=("time", "the equal time"),
        mistake=(HUNDRED, which),
        say=lambda _: "multiply the part of an hour by 60.",
        twin=("lengths", hours, *_THREES[three], which),
    )


def _match_fits(hours: int, three: int, which: int) -> bool:
    parts = _THREES[three]
    spare = _hundredths(parts[which])
    return spare < 60 and spare not in parts and (hours + three + 2 * which) % 11 == 0


_KINDS = ("decimal", "minutes", "mixed", "decimal")


def _lengths(seed: int) -> list[int]:
    """Return four lengths of time, near one another."""
    hours, *places = unlike(seed, 5, 0, len(_PARTS) - 1)
    return [60 * (1 + (hours + (place + seed) // 7) % 3) + _PARTS[place] for place in places]


def _as_hundreds(kind: str, minutes: int) -> int:
    """Return the minutes of who takes an hour for 100 of them."""
    if kind == "minutes":
        return minutes
    hours, part = divmod(minutes, 60)
    return 100 * hours + (_hundredths(minutes) if kind == "decimal" else part)


def _by_face(kind: str, minutes: int) -> Fraction:
    """Return the number that stands there, whatever its unit."""
    hours, part = divmod(minutes, 60)
    return {
        "minutes": Fraction(minutes),
        "decimal": Fraction(minutes, 60),
        "mixed": Fraction(100 * hours + part, 100),
    }[kind]


def lengths_in_order(topic: Topic, tier: Tier, seed: int) -> Draft:
    """Return four lengths of time to put in order."""
    told = list(zip(_KINDS, _lengths(seed), strict=True))
    return ways_in_order(
        [_way(*entry) for entry in told],
        _lengths(seed),
        (
            (HUNDRED, [_as_hundreds(*entry) for entry in told]),
            (BY_NUMBER, [_by_face(*entry) for entry in told]),
        ),
        ("lengths in order", *_lengths(seed)),
    )


def _order_fits(seed: int) -> bool:
    told = list(zip(_KINDS, _lengths(seed), strict=True))
    hundreds, faces = [_as_hundreds(*entry) for entry in told], [_by_face(*entry) for entry in told]
    apart = len({*hundreds}) == 4
    return apart and order_fits(_lengths(seed), hundreds, faces)


def with_cards(spaces: dict[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of a topic, with cards and orders of lengths of time at their ends."""
    grown = dict(spaces)
    for tier, parts in ((Tier.SUPPORT, QUARTERS), (Tier.CORE, TENTHS)):
        grown[tier] = grown[tier].also(
            odd_length, _odd_fits, hours=range(1, 10), part=parts, which=(0, 1)
        )
    grown[Tier.CORE] = grown[Tier.CORE].also(
        lengths_matched, _match_fits, hours=range(1, 6), three=range(len(_THREES)), which=range(3)
    )
    grown[Tier.CHALLENGE] = grown[Tier.CHALLENGE].also(
        lengths_in_order, _order_fits, seed=range(1, 500)
    )
    return grown
