"""Short questions about how many members two sets have, without a diagram."""

from __future__ import annotations

from generators.probability import _misconceptions as m
from generators.probability._sets_told import BOTH_FOR_UNION, UNION_FOR_BOTH, WHOLE_CIRCLE
from generators.probability._venn_in_brief import keep_both, keep_either
from itembank.items.item import Draft, Misconception, Tier
from itembank.items.kinds.brief import Brief, told
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

NOT_SHARED_TWICE = Misconception(
    "probability.sets-overlap-twice",
    "adds the two sets and counts what is in both twice",
    "How often have you counted the members of both?",
)
NO_OUTSIDE = Misconception(
    "probability.sets-no-outside",
    "leaves out what is in neither set",
    "Which members are in neither of the sets?",
)
MISTAKES = (NOT_SHARED_TWICE, NO_OUTSIDE)


def _outside_other(topic: Topic, tier: Tier, first: int, both: int) -> Draft:
    """Return the question how many members the first set has that the second has not."""
    a, c, key = t.Int(first), t.Int(both), t.Int(first - both)
    return told(
        "A set has {a} members. {c} of them are in another set too. How many are not?",
        t.sub(a, c),
        key,
        "integer",
        [("Take away the members of both.", t.equals(t.sub(a, c), key))],
        [(WHOLE_CIRCLE, first), (NOT_SHARED_TWICE, first + both)],
        ("outside other", first, both),
        a=a,
        c=c,
    )


def _complement(topic: Topic, tier: Tier, total: int, first: int) -> Draft:
    """Return the question how many members are not in a set."""
    n, a, key = t.Int(total), t.Int(first), t.Int(total - first)
    return told(
        "A universal set has {n} members and its subset A has {a}. How many are not in A?",
        t.sub(n, a),
        key,
        "integer",
        [("Take the members of A away from all.", t.equals(t.sub(n, a), key))],
        [(m.OTHER_CIRCLE, first), (NOT_SHARED_TWICE, total + first)],
        ("complement", total, first),
        n=n,
        a=a,
    )


def _union(topic: Topic, tier: Tier, first: int, second: int, both: int) -> Draft:
    """Return the question how many members a union has."""
    a, b, c = map(t.Int, (first, second, both))
    added, key = t.Int(first + second), t.Int(first + second - both)
    return told(
        "Two sets have {a} and {b} members. {c} are in both. How many members has their union?",
        t.sub(t.add(a, b), c),
        key,
        "integer",
        [
            ("Add the members of each set.", t.equals(t.add(a, b), added)),
            (
                "Those in both are counted twice: take them away once.",
                t.equals(t.sub(added, c), key),
            ),
        ],
        [
            (NOT_SHARED_TWICE, first + second),
            (BOTH_FOR_UNION, both),
            (m.LEAVES_OVERLAP, first + second - 2 * both),
        ],
        ("union", *sorted((first, second)), both),
        a=a,
        b=b,
        c=c,
    )


def _both(topic: Topic, tier: Tier, total: int, first: int, second: int, outside: int) -> Draft:
    """Return the question how many members are in both sets, from those in neither."""
    n, a, b, d = map(t.Int, (total, first, second, outside))
    some, added = t.Int(total - outside), t.Int(first + second)
    key = t.Int(first + second - total + outside)
    return told(
        "Of {n} members {a} are in A, {b} are in B and {d} in neither. How many are in both?",
        t.sub(t.add(a, b), t.Bracket(t.sub(n, d))),
        key,
        "integer",
        [
            ("Find how many are in the union.", t.equals(t.sub(n, d), some)),
            ("Add the members of each set.", t.equals(t.add(a, b), added)),
            ("What is more than the union is counted twice.", t.equals(t.sub(added, some), key)),
        ],
        [
            (UNION_FOR_BOTH, total - outside),
            (NOT_SHARED_TWICE, first + second),
            (NO_OUTSIDE, abs(total - first - second)),
        ],
        ("both", total, *sorted((first, second)), outside),
        n=n,
        a=a,
        b=b,
        d=d,
    )


def _keep_union(first: int, second: int, both: int) -> bool:
    return first < second and keep_either(first, second, both)


def _keep_both(total: int, first: int, second: int, outside: int) -> bool:
    return first < second and keep_both(total, first, second, outside)


BRIEF = {
    Tier.SUPPORT: (
        Brief(
            _outside_other,
            lambda first, both: both + 2 < first and first != 2 * both,
            {"first": range(11, 30, 3), "both": range(3, 18, 3)},
        ),
        Brief(
            _complement,
            lambda total, first: first + 4 < total != 2 * first,
            {"total": (20, 24, 30, 36), "first": range(7, 24, 2)},
        ),
    ),
    Tier.CORE: (
        Brief(
            _union,
            _keep_union,
            {"first": range(9, 20, 2), "second": range(12, 28, 3), "both": (3, 4, 5, 7, 8)},
        ),
    ),
    Tier.CHALLENGE: (
        Brief(
            _both,
            _keep_both,
            {
                "total": (25, 30, 36, 40, 50),
                "first": (9, 13, 16, 18, 24),
                "second": (14, 17, 20, 23, 27),
                "outside": (3, 4, 7, 10),
            },
        ),
    ),
}
"""The short questions of each tier."""
