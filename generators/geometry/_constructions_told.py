"""Bisectors without a picture: halves of lines and angles, halves of halves, and in a triangle."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from generators._turns import by_turns
from generators.geometry._areas import length, said_question
from generators.geometry._construction_mistakes import (
    COPIED,
    DOUBLED,
    HALVED_AGAIN,
    HALVED_ONCE,
    NOT_HALVED,
    RIGHT_LEFT_OUT,
)
from itembank.items.item import Draft, Misconception, Step, Tier
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_LINE = (
    "AB is {a} long. Its perpendicular bisector meets it at M. How long is AM?",
    "The perpendicular bisector of AB cuts it at M. AB is {a} long. How long is MB?",
)
_ANGLE = (
    "An angle of {a} is bisected. How large is each part?",
    "A bisector is drawn in an angle of {a}. How large are the two parts?",
)
_WHOLE = (
    "The bisector of an angle makes two parts of {a}. How large is the whole angle?",
    "An angle is bisected, and each part is {a}. How large was the angle?",
)
_TWICE = (
    "An angle of {a} is bisected, and one of the parts again. How large is the smallest part?",
    "Half of an angle of {a} is bisected. How large is each of the new parts?",
)
_ADB = (
    "In triangle ABC, A is {a} and B is {b}. The bisector of A meets BC at D. "
    "How large is angle ADB?"
)


def _half(ask: int, size: int) -> bool:
    kept = size % 4 == 2 * ask % 4 if ask == 1 else size % 5 == ask
    return kept and (ask == 0 or size < 85 or ask == 1) and (ask > 0 or size < 40)


def _quarter(size: int) -> bool:
    return size not in (60, 90, 120)


def _meets(a: int, b: int) -> bool:
    key = 180 - a // 2 - b
    return a + b < 160 and len({key, 180 - a - b, 180 - b}) == 3 and (a // 4 + b) % 4 == 0


def _one(topic: Topic, tier: Tier, ask: int, size: int) -> Draft:
    """Return half of a line (0) or an angle (1), or an angle from its half (2)."""
    given = length(size, "cm") if ask == 0 else t.Quantity(t.Int(size), "°")
    texts = (_LINE, _ANGLE, _WHOLE)[ask]
    value = Fraction(2 * size) if ask == 2 else Fraction(size, 2)
    key = length(value, "cm" if ask == 0 else "°")
    done = t.times(t.Int(2), given) if ask == 2 else t.divide(given, t.Int(2))
    say = "It is made of two equal parts: double." if ask == 2 else "Both parts are equal: halve."
    wrong: list[tuple[Misconception, Fraction | int]] = (
        [(COPIED, size), (HALVED_AGAIN, Fraction(size, 2))]
        if ask == 2
        else [(NOT_HALVED, size), (DOUBLED, 2 * size)]
    )
    return said_question(
        by_turns(texts, size // 2),
        done,
        key,
        [Step(say, t.equals(done, key))],
        wrong,
        ("told half", ask, size),
        (2,),
        a=given,
    )


def _two(topic: Topic, tier: Tier, size: int) -> Draft:
    """Return a quarter of an angle."""
    given = t.Quantity(t.Int(size), "°")
    half, key = length(Fraction(size, 2), "°"), length(Fraction(size, 4), "°")
    return said_question(
        by_turns(_TWICE, size // 2),
        t.divide(given, t.Int(2), t.Int(2)),
        key,
        [
            Step("Halve for the first bisector.", t.equals(t.divide(given, t.Int(2)), half)),
            Step("Halve again for the second.", t.equals(t.divide(half, t.Int(2)), key)),
        ],
        [(HALVED_ONCE, size // 2), (NOT_HALVED, size)],
        ("told twice", size),
        (2,),
        a=given,
    )


def _in_triangle(topic: Topic, tier: Tier, a: int, b: int) -> Draft:
    """Return the angle that a bisector makes with a side of a triangle."""
    first, second = t.Quantity(t.Int(a), "°"), t.Quantity(t.Int(b), "°")
    half = t.Quantity(t.Int(a // 2), "°")
    total, key = t.Quantity(t.Int(180), "°"), t.Quantity(t.Int(180 - a // 2 - b), "°")
    part = t.divide(first, t.Int(2))
    return said_question(
        _ADB,
        t.sub(total, part, second),
        key,
        [
            Step("The bisector halves A.", t.equals(part, half)),
            Step(
                "The angles of triangle ABD add up to 180°.",
                t.equals(t.sub(total, half, second), key),
            ),
        ],
        [(NOT_HALVED, 180 - a - b), (RIGHT_LEFT_OUT, 180 - b)],
        ("told triangle", a, b),
        (2, 180),
        a=first,
        b=second,
    )


def with_told(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of constructions with bisectors told in words at their ends."""
    return {
        Tier.SUPPORT: spaces[Tier.SUPPORT].also(_one, _half, ask=range(3), size=range(5, 172)),
        Tier.CORE: spaces[Tier.CORE].also(_two, _quarter, size=range(22, 178, 2)),
        Tier.CHALLENGE: spaces[Tier.CHALLENGE].also(
            _in_triangle, _meets, a=range(24, 120, 4), b=range(21, 110, 4)
        ),
    }
