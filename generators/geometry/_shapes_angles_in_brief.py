"""Short questions about the angles of triangles and quadrilaterals, in words, without a picture."""

from __future__ import annotations

from fractions import Fraction

from generators.geometry import _misconceptions as m
from generators.geometry._angle_drafts import (
    keep_two,
    rest_of,
    valued,
)
from generators.geometry._angles import deg
from generators.geometry._area_drafts import shortened
from itembank.items.item import Draft, Tier
from itembank.items.kinds.brief import Brief, told
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t


def _triangle(topic: Topic, tier: Tier, a: int, b: int) -> Draft:
    return rest_of(
        "Two angles of a triangle are {a} and {b}. What is the third?",
        "The angles of a triangle add up to 180°.",
        180,
        (a, b),
        [(m.TRIANGLE_FULL_TURN, 360 - a - b), (m.TRIANGLE_ONE_ANGLE, 180 - a)],
    )


def _apex(topic: Topic, tier: Tier, a: int) -> Draft:
    key, twice = deg(180 - 2 * a), deg(2 * a)
    known, two = deg(a), t.Int(2)
    return told(
        "An isosceles triangle has two angles of {a} each. What is the third angle?",
        t.sub(deg(180), t.times(two, known)),
        key,
        "quantity",
        [
            ("The two equal angles together:", t.equals(t.times(two, known), twice)),
            ("The angles of a triangle add up to 180°.", t.equals(t.sub(deg(180), twice), key)),
        ],
        [(m.ONE_BASE_ANGLE, 180 - a), (m.TRIANGLE_FULL_TURN, 360 - 2 * a), (m.COPIED, a)],
        ("apex", a),
        (180, 2),
        a=known,
    )


def _base(topic: Topic, tier: Tier, a: int) -> Draft:
    return rest_of(
        "A triangle has an angle of {a}. Its other two angles are equal. How large is each?",
        "The angles of a triangle add up to 180°.",
        180,
        (a,),
        [(m.NOT_SHARED, 180 - a), (m.TRIANGLE_FULL_TURN, Fraction(360 - a, 2)), (m.COPIED, a)],
        2,
    )


def _triangle_letters(topic: Topic, tier: Tier, a: int, c: int, x: int) -> Draft:
    b = 180 - (a + c) * x
    return valued(
        "The angles of a triangle are {a}, {b} and {c}. What is {x}?",
        "The angles of a triangle add up to 180°.",
        ((a, 0), (c, 0), (0, b)),
        x,
        [
            (m.NUMBERS_LEFT_OUT, shortened(Fraction(180, a + c))),
            (m.ANGLE_NOT_LETTER, c * x),
            (m.NUMBERS_WRONG_WAY, shortened(Fraction(180 + b, a + c))),
        ],
    )


def _quadrilateral(topic: Topic, tier: Tier, a: int, b: int, c: int) -> Draft:
    return rest_of(
        "Three angles of a quadrilateral are {a}, {b} and {c}. What is the fourth?",
        "The angles of a quadrilateral add up to 360°.",
        360,
        (a, b, c),
        [
            (m.QUADRILATERAL_HALF_TURN, abs(180 - a - b - c)),
            (m.LEFT_OUT, 360 - a - b),
            (m.OPPOSITE_EQUAL, b),
        ],
    )


def _quadrilateral_shared(topic: Topic, tier: Tier, a: int, b: int) -> Draft:
    left = 360 - a - b
    return rest_of(
        "Two angles of a quadrilateral are {a} and {b}. The others are equal. How large is each?",
        "The angles of a quadrilateral add up to 360°.",
        360,
        (a, b),
        [(m.NOT_SHARED, left), (m.LEFT_OUT, shortened(Fraction(360 - a, 2))), (m.COPIED, a)],
        2,
    )


def _quadrilateral_letters(topic: Topic, tier: Tier, a: int, c: int, x: int, b: int) -> Draft:
    d = 360 - (a + c) * x - b
    return valued(
        "The angles of a quadrilateral are {a}, {b}, {c} and {d}. What is {x}?",
        "The angles of a quadrilateral add up to 360°.",
        ((a, 0), (c, 0), (0, b), (0, d)),
        x,
        [
            (m.NUMBERS_LEFT_OUT, shortened(Fraction(360, a + c))),
            (m.ANGLE_NOT_LETTER, c * x),
            (m.LEFT_OUT, shortened(Fraction(360 - b, a + c))),
            (m.NUMBERS_WRONG_WAY, shortened(Fraction(360 + b + d, a + c))),
            (m.NOT_SHARED, (a + c) * x),
        ],
        360,
    )


TRIANGLE = {
    Tier.SUPPORT: (Brief(_triangle, keep_two, {"a": range(31, 96, 4), "b": range(26, 120, 7)}),),
    Tier.CORE: (
        Brief(_apex, lambda a: a not in (60, 45), {"a": range(22, 87, 2)}),
        Brief(_base, lambda a: a not in (60, 90), {"a": range(24, 151, 4)}),
    ),
    Tier.CHALLENGE: (
        Brief(
            _triangle_letters,
            lambda a, c, x: a < c and a + c != 7 and 25 <= 180 - (a + c) * x < 110,
            {"a": (1, 2, 3), "c": (2, 3, 4, 5), "x": range(11, 41)},
        ),
    ),
}

QUADRILATERAL = {
    Tier.SUPPORT: (
        Brief(
            _quadrilateral,
            lambda a, b, c: (
                len({a, b, c, 360 - a - b - c}) == 4
                and 35 < 360 - a - b - c < 150
                and abs(180 - a - b - c) not in (b, 360 - a - b)
            ),
            {"a": (65, 78, 84, 92, 110), "b": (72, 95, 103, 118), "c": (58, 69, 87, 99, 124)},
        ),
    ),
    Tier.CORE: (
        Brief(
            _quadrilateral_shared,
            lambda a, b: a < b and (a + b) % 2 == 0 and 3 * a + b != 360 and a + 3 * b != 360,
            {"a": range(48, 110, 6), "b": range(62, 136, 6)},
        ),
    ),
    Tier.CHALLENGE: (
        Brief(
            _quadrilateral_letters,
            lambda a, c, x, b: (
                a < c and b < 360 - (a + c) * x - b < 150 and b not in (a * x, c * x)
            ),
            {"a": (1, 2), "c": (2, 3, 4), "x": range(20, 56, 2), "b": (65, 72, 80, 95)},
        ),
    ),
}
