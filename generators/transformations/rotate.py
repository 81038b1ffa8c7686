"""Rotations: about the origin, about another point, and the centre to find.

England's programme of study for key stage 3 (2013) asks pupils to "identify properties of, and
describe the results of, translations, rotations and reflections applied to given figures" (from
memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.transformations._rotate_mistakes import (
    ABOUT_ORIGIN,
    HALF_TURN,
    MIDDLE,
    OTHER_WAY,
    REFLECTS,
)
from generators.transformations._rotated_points import with_points
from generators.transformations._shapes import (
    SCALENE,
    TRIANGLES,
    Spot,
    image,
    inside,
    outline,
    pair,
    picture,
    placed,
    ways,
)
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_TURNS = ((90, True), (90, False), (270, True), (270, False))


def _turned(quarters: int, centre: Spot, at: Spot) -> Spot:
    """Return the image of a place after quarter turns anticlockwise."""
    x, y = at[0] - centre[0], at[1] - centre[1]
    for _ in range(quarters % 4):
        x, y = -y, x
    return centre[0] + x, centre[1] + y


def _quarters(turn: int) -> int:
    degrees, clockwise = _TURNS[turn]
    return -degrees // 90 if clockwise else degrees // 90


def _support(shape: int, x: int, y: int) -> bool:
    corners = placed(TRIANGLES[shape], (x, y))
    moved = image(corners, lambda at: _turned(2, (0, 0), at))
    return inside([*corners, *moved], gap=1) and inside([(x, y)], gap=2) and 0 not in (x, y, x - y)


def _core(shape: int, turn: int, x: int, y: int) -> bool:
    corners = placed(TRIANGLES[shape], (x, y))
    moved = image(corners, lambda at: _turned(_quarters(turn), (0, 0), at))
    fits = inside([*corners, *moved], gap=1) and inside([(x, y)], gap=2)
    return fits and 0 not in (x, y) and abs(x) != abs(y) and (x + 2 * y + shape + turn) % 3 == 0


def _challenge(what: int, shape: int, turn: int, x: int, y: int, u: int, v: int) -> bool:
    """Keep centres off the origin, with images on the grid."""
    quarters = _quarters(turn)
    if what == 0:
        if (x + 2 * y + 3 * u + 5 * v + shape + turn) % 16:
            return False
        corners = placed(TRIANGLES[shape], (x, y))
        moved = image(corners, lambda at: _turned(quarters, (u, v), at))
        ends = [_turned(k, (u, v), (x, y)) for k in range(4)]
        ends.append(_turned(quarters, (0, 0), (x, y)))
        fits = inside([*corners, *moved], gap=1) and inside([(x, y)], gap=2)
        apart = len({*ends}) == 5 and (u, v) != (0, 0)
        return fits and apart
    if shape >= len(SCALENE) or turn > 1 or u == v or (x + 2 * y + u + v + shape) % 2:
        return False
    corners = placed(SCALENE[shape], (x, y))
    moved = image(corners, lambda at: _turned(quarters, (u, v), at))
    fits = inside([*corners, *moved], gap=1) and not {*corners} & {*moved}
    # The shapes lie on different sides of an upright or a level line.
    across = max(a for a, _ in corners) < min(a for a, _ in moved)
    across |= min(a for a, _ in corners) > max(a for a, _ in moved)
    up = max(b for _, b in corners) < min(b for _, b in moved)
    up |= min(b for _, b in corners) > max(b for _, b in moved)
    return fits and across and up


@register
class Rotate(Topic):
    """Shapes turned about a centre."""

    id = "transformations.rotate"
    title = "Rotations"
    statements = ("geometry.transformations",)
    prerequisites = ("graphs.coordinates",)
    misconceptions = (OTHER_WAY, REFLECTS, HALF_TURN, ABOUT_ORIGIN, MIDDLE)
    spare = "Half turns of a small triangle that stays on the grid."
    spaces = {
        Tier.SUPPORT: Space(_support, shape=range(len(TRIANGLES)), x=range(-5, 6), y=range(-4, 5)),
        Tier.CORE: Space(
            _core,
            shape=range(len(TRIANGLES)),
            turn=range(len(_TURNS)),
            x=range(-5, 6),
            y=range(-4, 5),
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            what=range(2),
            shape=range(len(TRIANGLES)),
            turn=range(len(_TURNS)),
            x=range(-4, 5),
            y=range(-4, 5),
            u=range(-3, 4),
            v=range(-3, 4),
        ),
    }
    spaces = with_points(kinds.with_statements(spaces))

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            shape, x, y = values
            return self._image(TRIANGLES[shape], None, (x, y), (0, 0))
        if tier is Tier.CORE:
            shape, turn, x, y = values
            return self._image(TRIANGLES[shape], turn, (x, y), (0, 0))
        what, shape, turn, x, y, u, v = values
        if what == 0:
            return self._image(TRIANGLES[shape], turn, (x, y), (u, v))
        return self._centre(SCALENE[shape], turn, (x, y), (u, v))

    def _image(self, shape: tuple[Spot, ...], turn: int | None, at: Spot, centre: Spot) -> Draft:
        figure = picture((outline(placed(shape, at)),), (("A", at),))
        quarters = 2 if turn is None else _quarters(turn)
        degrees, way = 180, ""
        if turn is not None:
            degrees, clockwise = _TURNS[turn]
            way = " clockwise" if clockwise else " anticlockwise"
        about = "the origin" if centre == (0, 0) else "{c}"
        text = prompt(
            f"What are the coordinates of the image of A after a rotation of {{d}}{way} about "
            f"{about}?",
            d=t.Quantity(t.Int(degrees), "°"),
            **({} if centre == (0, 0) else {"c": pair(*centre)}),
        )
        x, y = at
        key = pair(*_turned(quarters, centre, at))
        u, v = x - centre[0], y - centre[1]
        if turn is None:
            wrong = slips((REFLECTS, pair(-x, y)), (OTHER_WAY, pair(-y, x)), key=key)
        else:
            wrong = slips(
                (OTHER_WAY, pair(*_turned(-quarters, centre, at))),
                (REFLECTS, pair(centre[0] - u, centre[1] + v)),
                (HALF_TURN, pair(*_turned(2, centre, at)))
                if centre == (0, 0)
                else (ABOUT_ORIGIN, pair(*_turned(quarters, (0, 0), at))),
                key=key,
            )
        new = _turned(quarters, (0, 0), (u, v))
        start = "the origin" if centre == (0, 0) else "the centre"
        there = f"From {start} to A: {ways(u, v)}."
        after = f"After the turn that is {ways(*new)} from {start}."
        # A half turn only changes each way to its opposite: one line says it.
        steps = [Step(f"{there} {after}", key)] if turn is None else [Step(there), Step(after, key)]
        if centre != (0, 0):
            steps.insert(1, Step("Turn that way about the centre."))
        return Draft(
            text,
            of_figure(figure, text),
            key,
            "point",
            tuple(steps),
            wrong,
            ("image", placed(shape, at), turn, centre),
            figure=figure,
        )

    def _centre(self, shape: tuple[Spot, ...], turn: int, at: Spot, centre: Spot) -> Draft:
        corners = placed(shape, at)
        quarters = _quarters(turn)
        moved = image(corners, lambda place: _turned(quarters, centre, place))
        figure = picture((outline(corners, "P"), outline(moved, "Q")))
        text = (
            "What are the coordinates of the centre of the rotation that takes shape P to shape Q?",
        )
        key = pair(*centre)
        first, last = corners[0], moved[0]
        (a, b), (c, d) = first, last
        wrong = slips(
            (MIDDLE, pair(Fraction(a + c, 2), Fraction(b + d, 2))),
            (OTHER_WAY, pair(*_other_centre(first, last, quarters))),
            key=key,
        )
        return Draft(
            text,
            of_figure(figure, text),
            key,
            "point",
            (
                Step("The centre is as far from a corner as from the image of that corner."),
                Step("Try such points: turn a tracing of P about each by 90°."),
                Step("Here P lands on Q.", key),
            ),
            wrong,
            ("centre", corners, turn, centre),
            figure=figure,
        )


def _other_centre(first: Spot, last: Spot, quarters: int) -> tuple[Fraction, Fraction]:
    """Return about which point the corner turns to its image the other way: on the other side."""
    (a, b), (c, d) = first, last
    sign = 1 if quarters % 4 == 1 else -1
    # The centre of a quarter turn stands off the middle by half the way, at a right angle to it.
    return (
        Fraction(a + c, 2) + sign * Fraction(d - b, 2),
        Fraction(b + d, 2) - sign * Fraction(c - a, 2),
    )
