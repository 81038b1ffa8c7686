"""Short questions about bearings: a turn past north, either way round."""

from __future__ import annotations

from generators._turns import by_turns
from generators.geometry import _bearing_mistakes as m
from generators.geometry._angles import deg
from itembank.items.item import Draft, Tier
from itembank.items.kinds.brief import Brief, told
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_WHO = ("A boat", "A drone", "A hiker")
_FULL = deg(360)


def _text(way: str, number: int) -> str:
    who = by_turns(_WHO, number)
    return f"{who} on a bearing of {{a}} turns {{b}} {way}. What is its new three-figure bearing?"


def _clockwise(topic: Topic, tier: Tier, a: int, b: int) -> Draft:
    first, turn, added, key = (deg(size) for size in (a, b, a + b, a + b - 360))
    return told(
        _text("clockwise", a + b),
        t.Sum(first, (("+", turn), ("-", _FULL))),
        key,
        "quantity",
        [
            ("Going clockwise, add the turn.", t.equals(t.add(first, turn), added)),
            (
                "That is past north. Take away a full turn.",
                t.equals(t.sub(added, _FULL), key),
            ),
        ],
        [(m.OVER_360, a + b), (m.OTHER_WAY, a - b), (m.TURN_ALONE, b)],
        ("clockwise in brief", a, b),
        (360,),
        a=first,
        b=turn,
    )


def _anticlockwise(topic: Topic, tier: Tier, a: int, b: int) -> Draft:
    first, turn, more, key = (deg(size) for size in (a, b, 360 + a, 360 + a - b))
    return told(
        _text("anticlockwise", a + b),
        t.Sum(first, (("+", _FULL), ("-", turn))),
        key,
        "quantity",
        [
            ("The turn goes past north, so add a full turn.", t.equals(t.add(first, _FULL), more)),
            ("Going anticlockwise, subtract the turn.", t.equals(t.sub(more, turn), key)),
        ],
        [(m.OTHER_WAY, a + b), (m.TURN_ALONE, b)],
        ("anticlockwise in brief", a, b),
        (360,),
        a=first,
        b=turn,
    )


BRIEF = {
    Tier.CHALLENGE: (
        Brief(
            _clockwise,
            lambda a, b: a + b >= 460 and a - b >= 100 and len({a + b - 360, a - b, b}) == 3,
            {"a": range(283, 358, 6), "b": range(112, 179, 11)},
        ),
        Brief(
            _anticlockwise,
            lambda a, b: b - a >= 10 and len({360 + a - b, a + b, b}) == 3,
            {"a": range(103, 150, 6), "b": range(127, 176, 8)},
        ),
    ),
}
"""The short questions of a tier; the others' own are short."""
