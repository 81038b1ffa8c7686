"""Properties of named shapes without a picture: equal sides, angles, and a corner of a kite."""

from __future__ import annotations

from collections.abc import Mapping

from generators._turns import by_turns
from generators.geometry._areas import TWO_SIDES, said_question
from generators.geometry._misconceptions import COPIED, NOT_SHARED, REST_OF_TURN
from generators.geometry._shape_mistakes import PAIRS_FOR_ALL, PARALLEL_ONLY, STRAIGHT_ON
from generators.graphs._grids import pair
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_IN_PAIRS = ("kite", "parallelogram", "rectangle")
_LEANING = ("parallelogram", "rhombus")


def _sides(which: int, a: int, b: int) -> bool:
    apart = a != b and 4 * a not in (2 * (a + b), a + b)
    return apart and (a + 2 * b + which) % 4 == 0


def _angle(which: int, asked: int, size: int) -> bool:
    kept = size not in (90, 60, 120, 45, 135) and size % 4 == 2 * which
    return kept and (asked == 0 or size % 2 == 0)


def _kite(level: int, a: int, long: int, at: int, beside: int, out: int) -> bool:
    """Keep kites with unequal sides whose corner B lies off the middle of AC, and no right one."""
    apart = 0 < beside < long and 2 * beside != long and out != 0
    return apart and (level + a + 2 * long + 3 * at + beside + out) % 23 == 0


def _perimeter(topic: Topic, tier: Tier, which: int, a: int, b: int) -> Draft:
    """Return the perimeter of a shape whose sides are equal in pairs."""
    name = _IN_PAIRS[which]
    first, second = t.Quantity(t.Int(a), "cm"), t.Quantity(t.Int(b), "cm")
    total = t.Quantity(t.Int(2 * (a + b)), "cm")
    text = by_turns(
        (
            f"A {name} has sides of {{a}} and {{b}}. What is its perimeter?",
            f"Two sides of a {name} are {{a}} and {{b}}. What is its perimeter?",
        ),
        a,
    )
    return said_question(
        text,
        t.times(t.Int(2), t.Bracket(t.add(first, second))),
        total,
        [
            Step(f"In a {name} the sides are equal in pairs."),
            Step("Add all four.", t.equals(t.add(first, second, first, second), total)),
        ],
        [(PAIRS_FOR_ALL, 4 * a), (TWO_SIDES, a + b)],
        ("told sides", which, a, b),
        (2,),
        a=first,
        b=second,
    )


def _angles(topic: Topic, tier: Tier, which: int, asked: int, size: int) -> Draft:
    """Return the angle beside one of a parallelogram, or a base angle of an isosceles triangle."""
    shown = t.Quantity(t.Int(size), "°")
    half_turn = t.Quantity(t.Int(180), "°")
    rest = t.sub(half_turn, shown)
    left = t.Quantity(t.Int(180 - size), "°")
    if asked == 0:
        name = _LEANING[which]
        return said_question(
            f"One angle of a {name} is {{a}}. How large is the angle next to it?",
            rest,
            left,
            [
                Step(
                    f"Opposite sides of a {name} are parallel: two angles next to each other "
                    "add up to 180°."
                ),
                Step("Subtract.", t.equals(rest, left)),
            ],
            [(COPIED, size), (REST_OF_TURN, 360 - size)],
            ("told angle", which, asked, size),
            (180,),
            a=shown,
        )
    text = (
        "The angle between the equal sides of an isosceles triangle is {a}. "
        "How large is each other angle?",
        "An isosceles triangle has {a} between its equal sides. How large are its other angles?",
    )[which]
    key = t.Quantity(t.Int((180 - size) // 2), "°")
    return said_question(
        text,
        t.divide(t.Bracket(rest), t.Int(2)),
        key,
        [
            Step("The angles of a triangle add up to 180°.", t.equals(rest, left)),
            Step("The other two are equal: halve.", t.equals(t.divide(left, t.Int(2)), key)),
        ],
        [(NOT_SHARED, 180 - size), (COPIED, size)],
        ("told angle", which, asked, size),
        (2, 180),
        a=shown,
    )


def _corner(
    topic: Topic, tier: Tier, level: int, a: int, long: int, at: int, beside: int, out: int
) -> Draft:
    """Return the corner D of a kite with a level (1) or an upright (0) line of symmetry AC."""
    places = [(a, at), (a + beside, at + out), (a + long, at), (a + beside, at - out)]
    if not level:
        places = [(v, u) for u, v in places]
    first, second, third, last = places
    u, v = t.Sym("u"), t.Sym("v")
    turned, kept = (v, u) if level else (u, v)
    place = 1 if level else 0
    half = t.Frac(t.add(t.num(second[place]), turned), t.Int(2))
    parallel = tuple(p + r - q for p, q, r in zip(first, second, third, strict=True))
    straight = tuple(2 * p - q for p, q in zip(first, second, strict=True))
    key = pair(*last)
    return Draft(
        prompt(
            "ABCD is a kite with line of symmetry AC. A is {a}, B is {b} and C is {c}. Where is D?",
            a=pair(*first),
            b=pair(*second),
            c=pair(*third),
        ),
        Find(
            t.pair(u, v),
            (
                t.equals(half, t.num(first[place])),
                t.equals(kept, t.num(second[1 - place])),
            ),
        ),
        key,
        "point",
        (
            Step(f"AC is {'level' if level else 'upright'}, and D is the mirror image of B in it."),
            Step(f"B is {abs(out)} from AC: go as far to the other side.", key),
        ),
        slips((PARALLEL_ONLY, pair(*parallel)), (STRAIGHT_ON, pair(*straight)), key=key),
        ("told kite", level, a, long, at, beside, out),
        constants=(2,),
    )


def with_told(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of named shapes with shapes told in words at their ends."""
    return {
        Tier.SUPPORT: spaces[Tier.SUPPORT].also(
            _perimeter, _sides, which=range(3), a=range(3, 13), b=range(3, 16)
        ),
        Tier.CORE: spaces[Tier.CORE].also(
            _angles, _angle, which=range(2), asked=range(2), size=range(28, 152, 2)
        ),
        Tier.CHALLENGE: spaces[Tier.CHALLENGE].also(
            _corner,
            _kite,
            level=range(2),
            a=(-3, -1, 0, 1, 2),
            long=(4, 5, 6, 7),
            at=(-1, 1, 2, 3),
            beside=(1, 2, 3, 4),
            out=(-4, -3, -2, 2, 3, 4),
        ),
    }
