"""Short questions about the angles of polygons that need no figure."""

from __future__ import annotations

from generators.geometry import _misconceptions as m
from generators.geometry._angles import deg
from itembank.items.item import Draft, Tier
from itembank.items.kinds.brief import Brief, told
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t


def _sum(topic: Topic, tier: Tier, n: int) -> Draft:
    sides, key = t.Int(n), deg(180 * (n - 2))
    less = t.sub(sides, t.Int(2))
    return told(
        "What do the interior angles of a polygon with {n} sides add up to?",
        t.times(t.Bracket(less), deg(180)),
        key,
        "quantity",
        [
            ("There are two triangles fewer than sides.", t.equals(less, t.Int(n - 2))),
            ("Each has 180°.", t.equals(t.times(t.Int(n - 2), deg(180)), key)),
        ],
        [(m.SUM_WITHOUT_TWO, 180 * n), (m.ONE_TOO_FEW, 180 * (n - 1))],
        ("sum in brief", n),
        (2, 180),
        n=sides,
    )


def _sides(topic: Topic, tier: Tier, n: int) -> Draft:
    total, key = deg(180 * (n - 2)), t.Int(n)
    return told(
        "The interior angles of a polygon add up to {s}. How many sides has it?",
        t.add(t.divide(total, deg(180)), t.Int(2)),
        key,
        "integer",
        [
            (
                "Find how many triangles there are.",
                t.equals(t.divide(total, deg(180)), t.Int(n - 2)),
            ),
            ("There are two more sides.", t.equals(t.add(t.Int(n - 2), t.Int(2)), key)),
        ],
        [(m.TWO_NOT_ADDED, n - 2), (m.ONE_TOO_FEW, n - 1)],
        ("sides in brief", n),
        (2, 180),
        s=total,
    )


def _last(topic: Topic, tier: Tier, n: int, size: int) -> Draft:
    sides, whole, key = t.Int(n), 180 * (n - 2), deg(size)
    known = deg(whole - size)
    less = t.sub(sides, t.Int(2))
    return told(
        "A polygon has {n} sides. All its angles but one add up to {s}. How large is that one?",
        t.sub(t.times(t.Bracket(less), deg(180)), known),
        key,
        "quantity",
        [
            ("There are two triangles fewer than sides.", t.equals(less, t.Int(n - 2))),
            ("Each has 180°.", t.equals(t.times(t.Int(n - 2), deg(180)), deg(whole))),
            ("Subtract the angles that you know.", t.equals(t.sub(deg(whole), known), key)),
        ],
        [(m.SUM_WITHOUT_TWO, 360 + size), (m.ONE_TOO_FEW, 180 + size)],
        ("last in brief", n, size),
        (2, 180),
        n=sides,
        s=known,
    )


BRIEF = {
    Tier.SUPPORT: (Brief(_sum, None, {"n": range(11, 70)}),),
    Tier.CORE: (Brief(_sides, None, {"n": range(11, 70)}),),
    Tier.CHALLENGE: (
        Brief(_last, None, {"n": (5, 6, 7, 8, 9, 10, 12), "size": range(95, 171, 9)}),
    ),
}
"""The short questions of each tier."""
