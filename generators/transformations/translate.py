"""Translations: where a corner goes, where it came from, and the translation between two shapes.

England's programme of study for key stage 3 (2013) asks pupils to "identify properties of, and
describe the results of, translations, rotations and reflections applied to given figures" (from
memory).
"""

from __future__ import annotations

from typing import Any

from generators._drawn import to_draw
from generators.transformations._shapes import (
    SCALENE,
    TRIANGLES,
    Spot,
    inside,
    outline,
    pair,
    picture,
    placed,
)
from generators.transformations._translate_mistakes import CHANGED_OVER, GAP, OPPOSITE, SHIFT_ALONE
from generators.transformations._translated_points import with_points
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


def _point(shape: int, x: int, y: int, across: int, up: int) -> bool:
    """Keep moves that stay on the grid, told apart from their opposite and their mirror."""
    # What is quickest told comes first: most points fail it.
    if (x + 2 * y + across + 3 * up) % 13 != shape or not _uneven(across, up):
        return False
    corners = placed(TRIANGLES[shape], (x, y))
    moved = placed(corners, (across, up))
    return (
        inside(corners, gap=1)
        and inside([(x, y)], gap=2)
        and inside(moved)
        and (x + across, y + up) != (across, up)
    )


def _uneven(across: int, up: int) -> bool:
    """Tell whether a move goes both ways, and not as far the one as the other."""
    return 0 not in (across, up) and abs(across) != abs(up)


def _pair(shape: int, x: int, y: int, across: int, up: int) -> bool:
    """Keep two shapes apart from each other, with room for a point beside them."""
    apart = shape < len(SCALENE) and (abs(across) > 3 or abs(up) > 3)
    if not apart or (x + 2 * y + across + 3 * up) % 5 != shape or not _uneven(across, up):
        return False
    corners = placed(SCALENE[shape], (x, y))
    moved = placed(corners, (across, up))
    return (
        inside(corners, gap=1)
        and inside(moved, gap=1)
        and _free(corners, moved, across, up) is not None
    )


def _free(corners: tuple[Spot, ...], moved: tuple[Spot, ...], across: int, up: int) -> Spot | None:
    """Return a place for the point that is asked about, away from both shapes."""
    taken = (*corners, *moved)
    for at in ((-4, 3), (4, -3), (-4, -3), (4, 3), (0, 3), (0, -3), (-4, 0), (4, 0)):
        far = all((at[0] - x) ** 2 + (at[1] - y) ** 2 > 9 for x, y in taken)
        if far and at != (-across, -up) and 0 not in (at[0] + across, at[1] + up):
            return at
    return None


def _shape_moved(shape: int, x: int, y: int, across: int, up: int) -> bool:
    """Keep a shape and its image apart on the grid, moved by two different numbers of squares."""
    apart = abs(across) > 3 or abs(up) > 3
    if not apart or (x + 2 * y + across + 3 * up) % 45 != shape or not _uneven(across, up):
        return False
    corners = placed(SCALENE[shape], (x, y))
    return inside(corners) and inside(placed(corners, (across, up)))


def _to_move(topic: Topic, tier: Tier, shape: int, x: int, y: int, across: int, up: int) -> Draft:
    """Return a shape on a grid, whose image after a translation is to be drawn."""
    corners = placed(SCALENE[shape], (x, y))
    given = picture((outline(corners, "A"),))
    shown = picture((outline(corners, "A"), outline(placed(corners, (across, up)), "B")))
    text = prompt(
        f"Draw the image of shape A after a translation of {{a}} {_squares(across)} "
        f"{'right' if across > 0 else 'left'} and {{u}} {_squares(up)} "
        f"{'up' if up > 0 else 'down'} and label it B.",
        a=t.Int(abs(across)),
        u=t.Int(abs(up)),
    )
    steps = (
        Step(f"Move each corner of A {_ways(across, up)}."),
        Step("Join the images of the corners in the same order."),
    )
    return to_draw(text, given, shown, steps, ("to move", shape, x, y, across, up))


@register
class Translate(Topic):
    """Shapes moved without being turned."""

    id = "transformations.translate"
    title = "Translations"
    statements = ("geometry.transformations",)
    prerequisites = ("graphs.coordinates",)
    misconceptions = (OPPOSITE, CHANGED_OVER, GAP, SHIFT_ALONE)
    spaces = {
        tier: Space(
            keep,
            shape=range(len(TRIANGLES)),
            x=range(-5, 6),
            y=range(-4, 5),
            across=range(-8, 9),
            up=range(-7, 8),
        )
        for tier, keep in zip(Tier, (_point, _point, _pair), strict=True)
    }
    spaces[Tier.SUPPORT] = spaces[Tier.SUPPORT].also(
        _to_move,
        _shape_moved,
        shape=range(3),
        x=range(-6, 7),
        y=range(-5, 6),
        across=range(-8, 9),
        up=range(-7, 8),
    )
    spaces = with_points(kinds.with_statements(spaces))

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        shape, x, y, across, up = values
        if tier is Tier.CHALLENGE:
            return self._like(SCALENE[shape], (x, y), across, up)
        return self._moved(TRIANGLES[shape], (x, y), across, up, back=tier is Tier.CORE)

    def _moved(
        self, shape: tuple[Spot, ...], at: Spot, across: int, up: int, *, back: bool
    ) -> Draft:
        x, y = at
        start = placed(shape, at)
        figure = picture((outline(start),), (("A", at),))
        # Backwards the translation is the one that led here.
        a, u = (-across, -up) if back else (across, up)
        numbers = {"a": t.Int(abs(a)), "u": t.Int(abs(u))}
        move = (
            f"a translation of {{a}} {_squares(a)} {'right' if a > 0 else 'left'} "
            f"and {{u}} {_squares(u)} {'up' if u > 0 else 'down'}"
        )
        asks = "point whose image is A" if back else "image of A"
        text = prompt(f"What are the coordinates of the {asks} after {move}?", **numbers)
        key = pair(x + across, y + up)
        wrong = slips(
            (OPPOSITE, pair(x - across, y - up)),
            (CHANGED_OVER, pair(x + up, y + across)),
            (SHIFT_ALONE, pair(across, up)),
            key=key,
        )
        ways = _ways(across, up)
        say = f"A is the image: go back {ways}." if back else f"From A go {ways}."
        return Draft(
            text,
            of_figure(figure, text),
            key,
            "point",
            (Step(say, key),),
            wrong,
            ("moved", start, across, up, back),
            figure=figure,
        )

    def _like(self, shape: tuple[Spot, ...], at: Spot, across: int, up: int) -> Draft:
        start = placed(shape, at)
        moved = placed(start, (across, up))
        free = _free(start, moved, across, up)
        assert free is not None
        x, y = free
        figure = picture((outline(start, "P"), outline(moved, "Q")), (("A", free),))
        text = (
            "What are the coordinates of the image of A after the translation that takes shape P "
            "to shape Q?",
        )
        key = pair(x + across, y + up)
        width = max(u for u, _ in start) - min(u for u, _ in start)
        short = across - width if across > 0 else across + width
        wrong = slips(
            (OPPOSITE, pair(x - across, y - up)),
            (CHANGED_OVER, pair(x + up, y + across)),
            (GAP, pair(x + short, y + up)),
            key=key,
        )
        ways = _ways(across, up)
        return Draft(
            text,
            of_figure(figure, text),
            key,
            "point",
            (
                Step(f"A corner of P goes {ways} to the same corner of Q."),
                Step(f"A goes {ways} too.", key),
            ),
            wrong,
            ("like", start, across, up),
            figure=figure,
        )


def _squares(count: int) -> str:
    return "square" if abs(count) == 1 else "squares"


def _ways(across: int, up: int) -> str:
    return (
        f"{abs(across)} {'right' if across > 0 else 'left'} and "
        f"{abs(up)} {'up' if up > 0 else 'down'}"
    )
