"""Enlargements: from the origin, from another centre, and scale factor and centre to find.

England's programme of study for key stage 3 (2013) asks pupils to "construct similar shapes by
enlargement, with and without coordinate grids" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.transformations._enlarge_mistakes import (
    ADDS_FACTOR,
    AREA_FACTOR,
    FROM_ORIGIN,
    FROM_POINT,
    MIDDLE,
    ONE_COORDINATE,
    UPSIDE_DOWN,
)
from generators.transformations._enlarged_points import with_points
from generators.transformations._shapes import (
    SCALENE,
    TRIANGLES,
    Spot,
    inside,
    outline,
    pair,
    picture,
    placed,
    ways,
)
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

FIRST = (0, 14, 0, 10)
LARGE = (-7, 7, -5, 5)
# The small ones leave room for factors other than 2 and a half.
_SHAPES = (*SCALENE[:3], ((0, 0), (1, 0), (1, 2)), ((0, 0), (2, 0), (0, 1)))


def _grown(k: Fraction, centre: Spot, at: Spot) -> tuple[Fraction, Fraction]:
    return centre[0] + k * (at[0] - centre[0]), centre[1] + k * (at[1] - centre[1])


def _whole(places: list[tuple[Fraction, Fraction]]) -> list[Spot]:
    return [(int(x), int(y)) for x, y in places]


def _support(shape: int, k: int, x: int, y: int) -> bool:
    corners = placed(TRIANGLES[shape], (x, y))
    moved = [(k * u, k * v) for u, v in corners]
    # Away from the axes a letter has room.
    seen = inside(corners, FIRST, 1) and x > 1 and 1 < y < 7
    return seen and inside(moved, FIRST) and (x + k, y + k) != (k * x, k * y)


def _from_centre(shape: int, k: int, x: int, y: int, u: int, v: int) -> bool:
    # What is quick comes first: most of a large space is left out by it.
    if (x + 2 * y + 3 * u + 5 * v + shape) % 5 or x == u or y == v or (u, v) == (0, 0):
        return False
    corners = placed(TRIANGLES[shape], (x, y))
    moved = [(u + k * (a - u), v + k * (b - v)) for a, b in corners]
    ends = {
        (u + k * (x - u), v + k * (y - v)),
        (k * x, k * y),
        (x + k * (x - u), y + k * (y - v)),
        (x, y),
    }
    fits = inside(corners, LARGE, 1) and inside([(x, y)], LARGE, 2) and inside(moved, LARGE)
    return fits and len(ends) == 4


def _sizes(what: int, k: int) -> tuple[int, Fraction]:
    """Return how large a shape is drawn, and its factor: for kind 2 it becomes smaller."""
    return (k, Fraction(1, k)) if what == 2 else (1, Fraction(k))


def _two_shapes(what: int, shape: int, k: int, x: int, y: int, u: int, v: int) -> bool:
    """Keep pairs of shapes apart from each other; the centre is on the grid, off both of them."""
    # What is quick comes first: most of a large space is left out by it.
    if shape >= len(_SHAPES) or k == 1 or (x + y + u + v + what) % 2 or (u, v) == (0, 0):
        return False
    size, factor = _sizes(what, k)
    times, parts = factor.numerator, factor.denominator
    if (x - u) % parts or (y - v) % parts:
        return False  # all corners lie as far from the first as is drawn, in whole squares
    corners = tuple((x + size * a, y + size * b) for a, b in _SHAPES[shape])
    if not inside(corners, LARGE, 1):
        return False
    moved = [(u + times * (a - u) // parts, v + times * (b - v) // parts) for a, b in corners]
    if not inside(moved, LARGE, 1):
        return False
    columns = [sorted(a for a, _ in drawn) for drawn in (corners, moved)]
    apart = columns[0][-1] + 1 < columns[1][0] or columns[1][-1] + 1 < columns[0][0]
    # Halfway from a corner to its image is one wrong centre, and the origin another.
    halfway = [sum(pair) for pair in zip(corners[0], moved[0], strict=True)]
    if what == 0 and halfway == [0, 0]:
        return False
    return apart and (u, v) not in (*corners, *moved)


def _core(what: int, shape: int, k: int, x: int, y: int, u: int, v: int) -> bool:
    return what > 0 and _two_shapes(what, shape, k, x, y, u, v)


def _challenge(what: int, shape: int, k: int, x: int, y: int, u: int, v: int) -> bool:
    """Keep corners enlarged from a centre off the origin, and centres to find."""
    if what == 0:
        return _two_shapes(what, shape, k, x, y, u, v)
    fits = what == 1 and k > 1 and (x + y + u + 2 * v) % 3 == 0
    return fits and _from_centre(shape, k, x, y, u, v)


@register
class Enlarge(Topic):
    """Shapes that grow from a centre."""

    id = "transformations.enlarge"
    title = "Enlargements"
    statements = ("geometry.similarity", "ratio.scale")
    prerequisites = ("graphs.coordinates",)
    misconceptions = (
        *(ADDS_FACTOR, ONE_COORDINATE, FROM_ORIGIN, FROM_POINT),
        *(UPSIDE_DOWN, AREA_FACTOR, MIDDLE),
    )
    spare = "Triangles whose image stays on a grid that fits a slide."
    spaces = {
        Tier.SUPPORT: Space(
            _support, shape=range(len(TRIANGLES)), k=range(2, 5), x=range(1, 8), y=range(1, 8)
        ),
        **{
            tier: Space(
                keep,
                what=range(3),
                shape=range(len(TRIANGLES)),
                k=range(1, 4),
                x=range(-6, 6),
                y=range(-4, 5),
                u=range(-6, 7),
                v=range(-4, 5),
            )
            for tier, keep in ((Tier.CORE, _core), (Tier.CHALLENGE, _challenge))
        },
    }
    spaces = with_points(kinds.with_statements(spaces))

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            shape, k, x, y = values
            return self._image(TRIANGLES[shape], k, (x, y), (0, 0), FIRST)
        what, shape, k, x, y, u, v = values
        if tier is Tier.CHALLENGE and what == 1:
            return self._image(TRIANGLES[shape], k, (x, y), (u, v), LARGE)
        size, factor = _sizes(what, k)
        corners = tuple((x + size * a, y + size * b) for a, b in _SHAPES[shape])
        return (self._centre if what == 0 else self._factor)(corners, factor, (u, v))

    def _image(
        self,
        shape: tuple[Spot, ...],
        k: int,
        at: Spot,
        centre: Spot,
        edges: tuple[int, int, int, int],
    ) -> Draft:
        figure = picture((outline(placed(shape, at)),), (("A", at),), edges)
        own = centre == (0, 0)
        text = prompt(
            "What are the coordinates of the image of A after an enlargement by scale factor {k}, "
            f"centre {'the origin' if own else '{c}'}?",
            k=t.Int(k),
            **({} if own else {"c": pair(*centre)}),
        )
        x, y = at
        across, up = x - centre[0], y - centre[1]
        key = pair(*_grown(Fraction(k), centre, at))
        if own:
            wrong = slips(
                (ADDS_FACTOR, pair(x + k, y + k)), (ONE_COORDINATE, pair(k * x, y)), key=key
            )
            steps = [
                Step("Multiply the x-coordinate.", _product(k, x)),
                Step("Multiply the y-coordinate.", _product(k, y)),
            ]
        else:
            wrong = slips(
                (FROM_ORIGIN, pair(k * x, k * y)),
                (FROM_POINT, pair(x + k * across, y + k * up)),
                key=key,
            )
            steps = [
                Step(f"From the centre to A: {ways(across, up)}."),
                Step(f"{k} times that is {ways(k * across, k * up)}."),
                Step("Go that far from the centre.", key),
            ]
        return Draft(
            text,
            of_figure(figure, text),
            key,
            "point",
            tuple(steps),
            wrong,
            ("image", placed(shape, at), k, centre),
            figure=figure,
        )

    def _shapes(
        self, corners: tuple[Spot, ...], factor: Fraction, centre: Spot
    ) -> tuple[Spot, ...]:
        return tuple(_whole([_grown(factor, centre, corner) for corner in corners]))

    def _centre(self, corners: tuple[Spot, ...], factor: Fraction, centre: Spot) -> Draft:
        moved = self._shapes(corners, factor, centre)
        figure = picture((outline(corners, "P"), outline(moved, "Q")), (), LARGE)
        text = (
            "What are the coordinates of the centre of the enlargement that takes shape P to "
            "shape Q?",
        )
        key = pair(*centre)
        (a, b), (c, d) = corners[0], moved[0]
        return Draft(
            text,
            of_figure(figure, text),
            key,
            "point",
            (
                Step("Join each corner of P to the same corner of Q, and make the lines longer."),
                Step("They all meet at the centre."),
                Step("Read its coordinates.", key),
            ),
            slips(
                (FROM_ORIGIN, pair(0, 0)),
                (MIDDLE, pair(Fraction(a + c, 2), Fraction(b + d, 2))),
                key=key,
            ),
            ("centre", corners, factor, centre),
            figure=figure,
        )

    def _factor(self, corners: tuple[Spot, ...], factor: Fraction, centre: Spot) -> Draft:
        moved = self._shapes(corners, factor, centre)
        figure = picture((outline(corners, "P"), outline(moved, "Q")), (), LARGE)
        text = ("What is the scale factor of the enlargement that takes shape P to shape Q?",)
        first, second = (_longest(shape) for shape in (corners, moved))
        steps = (
            Step(f"A side of P is {first} long, and the same side of Q {second}."),
            Step("How many times the first is the second?"),
            Step("Divide.", _divided(second, first, factor)),
        )
        return Draft(
            text,
            of_figure(figure, text),
            number_node(factor),
            "number",
            steps,
            slips((UPSIDE_DOWN, 1 / factor), (AREA_FACTOR, factor**2), write=number_node),
            ("factor", corners, factor, centre),
            figure=figure,
        )


def _product(k: int, value: int) -> t.Relation:
    return t.equals(t.times(t.Int(k), t.num(value)), t.num(k * value))


def _divided(second: int, first: int, factor: Fraction) -> t.Node:
    return t.equals(t.frac(second, first), number_node(factor))


def _longest(corners: tuple[Spot, ...]) -> int:
    """Return the length of the longest side that is level or upright."""
    sides = zip(corners, (*corners[1:], corners[0]), strict=True)
    return max(abs(a - c) + abs(b - d) for (a, b), (c, d) in sides if a == c or b == d)
