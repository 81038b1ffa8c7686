"""Rotations of points without a picture: half turns, quarter turns, and about another point."""

from __future__ import annotations

from collections.abc import Mapping

from generators._turns import by_turns
from generators.transformations._points import U, V, found_point, signed
from generators.transformations._rotate_mistakes import (
    ABOUT_ORIGIN,
    HALF_TURN,
    OTHER_WAY,
    REFLECTS,
)
from generators.transformations._shapes import Spot, pair, ways
from itembank.items.item import Draft, Step, Tier
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_IMAGE = (
    "What is the image of {p} after a rotation of {d}{w} about {c}?",
    "The point {p} is rotated {d}{w} about {c}. Where is its image?",
)
_BEFORE = "A rotation of {d}{w} about {c} takes a point to {p}. Where was the point?"


def _turned(quarters: int, centre: Spot, at: Spot) -> Spot:
    """Return the image of a place after quarter turns anticlockwise."""
    x, y = at[0] - centre[0], at[1] - centre[1]
    for _ in range(quarters % 4):
        x, y = -y, x
    return centre[0] + x, centre[1] + y


def _half(way: int, x: int, y: int) -> bool:
    return 0 not in (x, y) and abs(x) != abs(y) and (x + 2 * y + way) % 3 == 0


def _quarter(way: int, turn: int, x: int, y: int) -> bool:
    return 0 not in (x, y) and abs(x) != abs(y) and (x + 2 * y + way + turn) % 5 == 0


def _about(turn: int, x: int, y: int, u: int, v: int) -> bool:
    """Keep centres off the origin and off the point's own lines, where each wrong way shows."""
    if 0 in (x - u, y - v, u, v, x, y) or (x + 2 * y + 3 * u + 5 * v + turn) % 23:
        return False
    ends = [_turned(quarters, (u, v), (x, y)) for quarters in range(4)]
    mirrored = (2 * u - x, y)
    ends += [_turned(turn, (0, 0), (x, y)), mirrored]
    return len({*ends}) == 6


def _turn_said(quarters: int) -> tuple[t.Node, str]:
    degrees, way = {1: (90, " anticlockwise"), 2: (180, ""), 3: (90, " clockwise")}[quarters]
    return t.Quantity(t.Int(degrees), "°"), way


def _text(words: str, side: str, centre: str) -> str:
    return words.replace("{w}", side).replace("{c}", centre)


def _relations(quarters: int, x: t.Node, y: t.Node) -> tuple[t.Node, t.Node]:
    """Return how far across and up an image lies from the centre."""
    if quarters == 2:
        return _against(x), _against(y)
    return (_against(y), x) if quarters == 1 else (y, _against(x))


def _against(value: t.Node) -> t.Node:
    return t.Neg(value if isinstance(value, t.Int) else t.Bracket(value))


def _origin(topic: Topic, tier: Tier, way: int, turn: int, x: int, y: int) -> Draft:
    """Return a rotation about the origin by so many quarter turns anticlockwise, on or back."""
    back = way == 2
    quarters = -turn % 4 if back else turn
    key = _turned(quarters, (0, 0), (x, y))
    degrees, side = _turn_said(turn)
    new = _relations(quarters, t.num(x), t.num(y))
    if turn == 2:
        wrong = slips((REFLECTS, pair(-x, y)), (OTHER_WAY, pair(-y, x)))
        steps = (
            Step(f"From the origin to the point: {ways(x, y)}."),
            Step("Half a turn changes each way to its opposite: both signs.", pair(*key)),
        )
    else:
        wrong = slips(
            (OTHER_WAY, pair(*_turned(-quarters, (0, 0), (x, y)))),
            (REFLECTS, pair(-x, y)),
            (HALF_TURN, pair(*_turned(quarters + 2, (0, 0), (x, y)))),
            key=pair(*key),
        )
        said = "back, so the other way" if back else f"90°{side}"
        steps = (
            Step(f"From the origin to the point: {ways(x, y)}."),
            Step(f"Turn that way {said}: {ways(*key)}.", pair(*key)),
        )
    return found_point(
        _text(_BEFORE if back else _IMAGE[way], side, "the origin"),
        {"p": pair(x, y), "d": degrees},
        (t.equals(U, new[0]), t.equals(V, new[1])),
        key,
        steps,
        wrong,
        ("told turn", way, turn, x, y),
    )


def _half_turn(topic: Topic, tier: Tier, way: int, x: int, y: int) -> Draft:
    return _origin(topic, tier, way, 2, x, y)


def _centred(topic: Topic, tier: Tier, turn: int, x: int, y: int, u: int, v: int) -> Draft:
    """Return a rotation about another point."""
    key = _turned(turn, (u, v), (x, y))
    degrees, side = _turn_said(turn)
    new = _relations(turn, t.sub(t.num(x), signed(u)), t.sub(t.num(y), signed(v)))
    from_centre = _turned(turn, (0, 0), (x - u, y - v))
    return found_point(
        _text(by_turns(_IMAGE, x + y + u + v), side, "{c}"),
        {"p": pair(x, y), "d": degrees, "c": pair(u, v)},
        (
            t.equals(t.sub(U, signed(u)), new[0]),
            t.equals(t.sub(V, signed(v)), new[1]),
        ),
        key,
        (
            Step(f"From the centre to the point: {ways(x - u, y - v)}."),
            Step(f"After the turn that is {ways(*from_centre)}."),
            Step("Go that way from the centre.", pair(*key)),
        ),
        slips(
            (ABOUT_ORIGIN, pair(*_turned(turn, (0, 0), (x, y)))),
            (REFLECTS, pair(2 * u - x, y)),
            (OTHER_WAY, pair(*_turned(-turn, (u, v), (x, y)))),
            key=pair(*key),
        ),
        ("told centre", turn, x, y, u, v),
    )


def with_points(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of rotations with points told by their coordinates at their ends."""
    near, far = range(-7, 8), range(-4, 6)
    return {
        Tier.SUPPORT: spaces[Tier.SUPPORT].also(_half_turn, _half, way=range(2), x=near, y=near),
        Tier.CORE: spaces[Tier.CORE].also(
            _origin, _quarter, way=range(3), turn=(1, 3), x=near, y=near
        ),
        Tier.CHALLENGE: spaces[Tier.CHALLENGE].also(
            _centred, _about, turn=range(1, 4), x=far, y=far, u=far, v=far
        ),
    }
