"""Short questions about two overlapping groups, without a diagram."""

from __future__ import annotations

from generators._turns import by_turns
from generators.probability import _misconceptions as m
from itembank.items.item import Draft, Tier
from itembank.items.kinds.brief import Brief, told
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_INNER = (
    "{a} pupils sing and {b} of them also dance. How many sing but do not dance?",
    "{a} people swim and {b} of them also run. How many swim but do not run?",
    "{a} pupils study French and {b} of them also Spanish. How many study French only?",
)
_CIRCLE = (
    "{a} pupils only sing, {b} only dance and {c} do both. How many sing?",
    "{a} people only swim, {b} only run and {c} do both. How many swim?",
)
_EITHER = (
    "{a} pupils sing, {b} dance and {c} of these do both. How many pupils is that in all?",
    "{a} people swim, {b} run and {c} of these do both. How many people is that in all?",
)
_NEITHER = (
    "Of {n} pupils {a} sing, {b} dance and {c} do both. How many do neither?",
    "Of {n} people {a} swim, {b} run and {c} do both. How many do neither?",
)
_BOTH = (
    "Of {n} pupils {a} sing, {b} dance and {d} do neither. How many do both?",
    "Of {n} people {a} swim, {b} run and {d} do neither. How many do both?",
)


def _inner(topic: Topic, tier: Tier, first: int, both: int) -> Draft:
    """Return the question how many are in the first group alone."""
    a, b, key = t.Int(first), t.Int(both), t.Int(first - both)
    return told(
        by_turns(_INNER, first + both),
        t.sub(a, b),
        key,
        "integer",
        [("Take away those who do both.", t.equals(t.sub(a, b), key))],
        [(m.OVERLAP_TWICE, first + both), (m.LEAVES_OVERLAP, first)],
        ("inner", first, both),
        a=a,
        b=b,
    )


def _circle(topic: Topic, tier: Tier, first: int, second: int, both: int) -> Draft:
    """Return the question how many are in the first group, with the overlap."""
    a, b, c = map(t.Int, (first, second, both))
    key = t.Int(first + both)
    return told(
        by_turns(_CIRCLE, first + both + second),
        t.add(a, c),
        key,
        "integer",
        [("Add those who do both.", t.equals(t.add(a, c), key))],
        [
            (m.ONLY_REGION, first),
            (m.OTHER_CIRCLE, second + both),
            (m.EVERYTHING, first + second + both),
        ],
        ("circle", first, second, both),
        a=a,
        b=b,
        c=c,
    )


def _either(topic: Topic, tier: Tier, first: int, second: int, both: int) -> Draft:
    """Return the question how many are in at least one of two groups."""
    a, b, c = map(t.Int, (first, second, both))
    added, key = t.Int(first + second), t.Int(first + second - both)
    return told(
        by_turns(_EITHER, first + both + second),
        t.sub(t.add(a, b), c),
        key,
        "integer",
        [
            ("Add the two groups.", t.equals(t.add(a, b), added)),
            (
                "Those who do both are counted twice: take them away once.",
                t.equals(t.sub(added, c), key),
            ),
        ],
        [(m.OVERLAP_TWICE, first + second), (m.LEAVES_OVERLAP, first + second - 2 * both)],
        ("either", *sorted((first, second)), both),
        a=a,
        b=b,
        c=c,
    )


def _neither(topic: Topic, tier: Tier, total: int, first: int, second: int, both: int) -> Draft:
    """Return the question how many are in none of two groups."""
    n, a, b, c = map(t.Int, (total, first, second, both))
    added, some = t.Int(first + second), t.Int(first + second - both)
    key = t.Int(total - first - second + both)
    return told(
        by_turns(_NEITHER, first + both + second),
        t.sub(n, t.Bracket(t.sub(t.add(a, b), c))),
        key,
        "integer",
        [
            ("Add the two groups.", t.equals(t.add(a, b), added)),
            (
                "Those who do both are counted twice: take them away once.",
                t.equals(t.sub(added, c), some),
            ),
            ("Subtract from all.", t.equals(t.sub(n, some), key)),
        ],
        [
            (m.OVERLAP_TWICE, total - first - second),
            (m.LEAVES_OVERLAP, total - first - second - both),
            (m.MISSING_ALONE, first + second - both),
        ],
        ("neither", total, *sorted((first, second)), both),
        n=n,
        a=a,
        b=b,
        c=c,
    )


def _both(topic: Topic, tier: Tier, total: int, first: int, second: int, outside: int) -> Draft:
    """Return the question how many are in both groups, from those in neither."""
    n, a, b, d = map(t.Int, (total, first, second, outside))
    some, added = t.Int(total - outside), t.Int(first + second)
    key = t.Int(first + second - total + outside)
    return told(
        by_turns(_BOTH, first + outside + second),
        t.sub(t.add(a, b), t.Bracket(t.sub(n, d))),
        key,
        "integer",
        [
            ("Find how many do at least one.", t.equals(t.sub(n, d), some)),
            ("Add the two groups.", t.equals(t.add(a, b), added)),
            ("What is too many is counted twice.", t.equals(t.sub(added, some), key)),
        ],
        [
            (m.LEAVES_OUTSIDE, first + second - total),
            (m.MISSING_ALONE, total - outside),
            (m.ADDS_SHOWN, total - first - second if total > first + second else None),
        ],
        ("both", total, *sorted((first, second)), outside),
        n=n,
        a=a,
        b=b,
        d=d,
    )


def _keep_circle(first: int, second: int, both: int) -> bool:
    return first != second and both not in (first, second)


def keep_either(first: int, second: int, both: int) -> bool:
    return both < min(first, second) - 1 and first != second and 2 * both not in (first, second)


def _keep_neither(total: int, first: int, second: int, both: int) -> bool:
    outside = total - first - second + both
    return (
        keep_either(first, second, both)
        and first + second < total
        and outside not in (both, first, second, first + second - both)
    )


def keep_both(total: int, first: int, second: int, outside: int) -> bool:
    both = first + second - total + outside
    return (
        both > 1
        and total != first + second
        and keep_either(first, second, both)
        and outside not in (both, first, second)
        and abs(total - first - second) != both
    )


BRIEF = {
    Tier.SUPPORT: (
        Brief(
            _inner,
            lambda first, both: both + 2 < first and first != 2 * both,
            {"first": range(12, 31, 3), "both": range(4, 20, 3)},
        ),
        Brief(
            _circle,
            _keep_circle,
            {"first": range(7, 20, 4), "second": range(6, 22, 5), "both": (4, 8, 9, 12)},
        ),
    ),
    Tier.CORE: (
        Brief(
            _either,
            keep_either,
            {"first": range(11, 24, 4), "second": range(10, 26, 5), "both": (3, 4, 6, 8, 9)},
        ),
        Brief(
            _neither,
            _keep_neither,
            {
                "total": (30, 36, 45),
                "first": (11, 14, 17, 20),
                "second": (9, 12, 18),
                "both": (3, 5, 8),
            },
        ),
    ),
    Tier.CHALLENGE: (
        Brief(
            _both,
            keep_both,
            {
                "total": (28, 30, 32, 36, 40, 50),
                "first": (13, 17, 19, 24, 27),
                "second": (11, 16, 22, 25),
                "outside": (3, 5, 7, 10),
            },
        ),
    ),
}
"""The short questions of each tier."""
