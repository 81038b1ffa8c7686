"""Reflections: in the axes, in upright and level lines, in y = x; and mirror lines to find.

England's programme of study for key stage 3 (2013) asks pupils to "identify properties of, and
describe the results of, translations, rotations and reflections applied to given figures" (from
memory).
"""

from __future__ import annotations

from typing import Any

from generators._drawn import to_draw
from generators.transformations._reflect_mistakes import (
    BOTH_AXES,
    CHANGED_LINE,
    EDGE,
    IN_AXIS,
    ON_THE_LINE,
    OTHER_AXIS,
)
from generators.transformations._reflected_points import with_points
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
)
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_AXIS = range(2)


def _mirrored(what: int, k: int, at: Spot) -> Spot:
    """Return the image of a place in x = k (0), y = k (1) or y = x (2)."""
    x, y = at
    return ((2 * k - x, y), (x, 2 * k - y), (y, x))[what]


def _mirror_named(what: int, k: int) -> tuple[str, dict[str, t.Node]]:
    """Return how a question names the mirror, and the mathematics in that name."""
    x, y = t.Sym("x"), t.Sym("y")
    if what == 2:
        return "the line {m}", {"m": t.equals(y, x)}
    if k:
        return "the line {m}", {"m": t.equals((x, y)[what], t.num(k))}
    return ("the {y}-axis", {"y": y}) if what == 0 else ("the {x}-axis", {"x": x})


def _support(shape: int, what: int, x: int, y: int) -> bool:
    corners = placed(TRIANGLES[shape], (x, y))
    seen = inside(corners, gap=1) and inside([(x, y)], gap=2)
    return seen and x != 0 != y and abs(x) != abs(y) and _beside(what, 0, corners)


def _beside(what: int, k: int, corners: tuple[Spot, ...]) -> bool:
    """Tell whether a shape lies on one side of its mirror."""
    sides = {(place[what] > k) - (place[what] < k) for place in corners}
    return len(sides - {0}) == 1


def _core(shape: int, what: int, k: int, x: int, y: int) -> bool:
    corners = placed(TRIANGLES[shape], (x, y))
    if not (
        inside(corners, gap=1) and inside([(x, y)], gap=2) and k != 0 and _beside(what, k, corners)
    ):
        return False
    moved = image(corners, lambda at: _mirrored(what, k, at))
    ends = {
        _mirrored(what, k, (x, y)),
        _mirrored(what, 0, (x, y)),
        _mirrored(1 - what, k, (x, y)),
        (x, y),
    }
    return inside(moved) and len(ends) == 4 and (x + 2 * y + 3 * k + shape) % 4 == 0


def _challenge(what: int, shape: int, k: int, x: int, y: int) -> bool:
    """Keep reflections in y = x, and pairs of shapes with a line between them."""
    if what == 2:
        corners = placed(TRIANGLES[shape], (x, y))
        moved = image(corners, lambda at: _mirrored(2, 0, at))
        side = {(u > v) - (u < v) for u, v in corners} - {0}
        fits = inside([*corners, *moved], gap=1) and inside([(x, y)], gap=2) and len(side) == 1
        return fits and k == 0 and x != -y and 0 not in (x, y) and x != y
    if shape >= len(SCALENE) or k == 0:
        return False
    corners = placed(SCALENE[shape], (x, y))
    moved = image(corners, lambda at: _mirrored(what, k, at))
    near = min(abs(place[what] - k) for place in corners)
    apart = inside(corners, gap=1) and inside(moved, gap=1) and _beside(what, k, corners)
    return apart and 0 < near < 3 and (x + y + k) % 2 == 0


def _shape_drawn(shape: int, what: int, k: int, x: int, y: int) -> bool:
    """Keep a shape and its image apart on the grid."""
    corners = placed(SCALENE[shape], (x, y))
    moved = image(corners, lambda at: _mirrored(what, k, at))
    near = min(abs(place[what] - k) for place in corners)
    apart = inside(corners) and inside(moved) and _beside(what, k, corners)
    return apart and 0 < near < 4 and (x + y + k) % 5 == shape


def _to_reflect(topic: Topic, tier: Tier, shape: int, what: int, k: int, x: int, y: int) -> Draft:
    """Return a shape on a grid, whose image in a line is to be drawn."""
    corners = placed(SCALENE[shape], (x, y))
    moved = image(corners, lambda at: _mirrored(what, k, at))
    given = picture((outline(corners, "A"),))
    shown = picture((outline(corners, "A"), outline(moved, "B")))
    mirror, shown_in_it = _mirror_named(what, k)
    text = prompt(
        f"Draw the image of shape A after a reflection in {mirror} and label it B.",
        **shown_in_it,
    )
    steps = (
        Step("Take the corners one by one. Each goes as far to the other side of the mirror."),
        Step("Join the images of the corners in the same order."),
    )
    return to_draw(text, given, shown, steps, ("to reflect", shape, what, k, x, y))


@register
class Reflect(Topic):
    """Shapes in a mirror line."""

    id = "transformations.reflect"
    title = "Reflections"
    statements = ("geometry.transformations",)
    prerequisites = ("graphs.coordinates",)
    misconceptions = (OTHER_AXIS, BOTH_AXES, IN_AXIS, CHANGED_LINE, ON_THE_LINE, EDGE)
    spaces = {
        Tier.SUPPORT: Space(
            _support, shape=range(len(TRIANGLES)), what=_AXIS, x=range(-5, 6), y=range(-4, 5)
        ).also(
            _to_reflect,
            _shape_drawn,
            shape=range(3),
            what=_AXIS,
            k=(0,),
            x=range(-6, 7),
            y=range(-5, 6),
        ),
        Tier.CORE: Space(
            _core,
            shape=range(len(TRIANGLES)),
            what=_AXIS,
            k=range(-3, 4),
            x=range(-5, 6),
            y=range(-4, 5),
        ).also(
            _to_reflect,
            _shape_drawn,
            shape=range(3),
            what=_AXIS,
            k=(-2, -1, 1, 2),
            x=range(-6, 7),
            y=range(-5, 6),
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            what=range(3),
            shape=range(len(TRIANGLES)),
            k=range(-2, 3),
            x=range(-5, 6),
            y=range(-4, 5),
        ),
    }
    spaces = with_points(kinds.with_statements(spaces))

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            shape, what, x, y = values
            return self._image(TRIANGLES[shape], what, 0, (x, y))
        if tier is Tier.CORE:
            shape, what, k, x, y = values
            return self._image(TRIANGLES[shape], what, k, (x, y))
        what, shape, k, x, y = values
        if what == 2:
            return self._image(TRIANGLES[shape], 2, 0, (x, y))
        return self._mirror(SCALENE[shape], what, k, (x, y))

    def _image(self, shape: tuple[Spot, ...], what: int, k: int, at: Spot) -> Draft:
        figure = picture((outline(placed(shape, at)),), (("A", at),))
        x, y = at
        mirror, shown_in_it = _mirror_named(what, k)
        text = prompt(
            f"What are the coordinates of the image of A after a reflection in {mirror}?",
            **shown_in_it,
        )
        key = pair(*_mirrored(what, k, at))
        if what == 2:
            wrong = slips((OTHER_AXIS, pair(x, -y)), (BOTH_AXES, pair(-x, -y)), key=key)
            steps = [
                Step(f"A is at ({x}, {y}).".replace("-", "−")),
                Step("In the line y = x the coordinates change places.", key),
            ]
        elif k == 0:
            wrong = slips(
                (OTHER_AXIS, pair(*_mirrored(1 - what, 0, at))), (BOTH_AXES, pair(-x, -y)), key=key
            )
            far = abs(at[what])
            steps = [
                Step(f"A is {far} from the {'yx'[what]}-axis: go {far} to the other side.", key)
            ]
        else:
            foot = (k, y) if what == 0 else (x, k)
            wrong = slips(
                (IN_AXIS, pair(*_mirrored(what, 0, at))),
                (CHANGED_LINE, pair(*_mirrored(1 - what, k, at))),
                (ON_THE_LINE, pair(*foot)),
                key=key,
            )
            far = abs(at[what] - k)
            steps = [
                Step(
                    f"The mirror is {'upright' if what == 0 else 'level'}, and A is {far} from "
                    f"it: go {far} to the other side.",
                    key,
                ),
            ]
        return Draft(
            text,
            of_figure(figure, text),
            key,
            "point",
            tuple(steps),
            wrong,
            ("image", placed(shape, at), what, k),
            figure=figure,
        )

    def _mirror(self, shape: tuple[Spot, ...], what: int, k: int, at: Spot) -> Draft:
        corners = placed(shape, at)
        moved = image(corners, lambda place: _mirrored(what, k, place))
        figure = picture((outline(corners, "P"), outline(moved, "Q")))
        text = ("Write down the equation of the mirror line that takes shape P to shape Q.",)
        first, second = t.Sym("xy"[what]), t.Sym("yx"[what])
        near = min(abs(place[what] - k) for place in corners)
        edge = k - near if corners[0][what] < k else k + near
        return Draft(
            text,
            of_figure(figure, text),
            t.equals(first, t.num(k)),
            "subject",
            (
                Step("The mirror lies halfway between a corner and its image."),
                Step(
                    f"It is {'an upright' if what == 0 else 'a level'} line.",
                    t.equals(first, t.num(k)),
                ),
            ),
            slips(
                (CHANGED_LINE, t.equals(second, t.num(k))),
                (IN_AXIS, t.equals(first, t.Int(0))),
                (EDGE, t.equals(first, t.num(edge)) if edge else None),
            ),
            ("mirror", corners, what, k),
            figure=figure,
        )
