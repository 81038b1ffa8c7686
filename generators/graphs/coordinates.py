"""Coordinates: a point read and found, in all four quadrants, and the fourth corner of a shape.

England's programme of study for key stage 3 (2013) asks pupils to "work with coordinates in all
four quadrants" (from memory).
"""

from __future__ import annotations

from typing import Any

from generators._drawn import to_draw
from generators._turns import by_turns
from generators.graphs._grids import Spot, grid, pair, steps_from
from generators.graphs._misconceptions import SIGN_LOST, SWAPPED
from generators.graphs._place_mistakes import (
    COUNTS_FROM_ONE,
    FIRST_ALONE,
    LEVEL,
    OTHER_ORDER,
    OTHER_WAY,
)
from generators.graphs._places_told import with_places
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

FIRST = (0, 8, 0, 7)
FOUR = (-6, 6, -5, 5)
_LETTERS = ("ABC", "BCA", "CAB")
_SHAPES = ("parallelogram", "rectangle", "square")


def _support(what: int, x: int, y: int, turn: int) -> bool:
    """Keep points that are another point with their coordinates swapped, not next to it."""
    if abs(x - y) <= 1:
        return False
    # Which point: the one swapped is on the grid, and the third is another one.
    return what == 0 or (x < 8 and abs(x - (y + 3) % 8) != 0)


def _core(what: int, x: int, y: int, wide: int, high: int) -> bool:
    """Keep points that are not in the first quadrant, and rectangles that fit the grid."""
    if what < 2:  # a point; its width only turns its letter
        swapped_shown = what == 0 or abs(y) < 6 > abs(x) < 5
        other = min(x, y) < 0 and abs(x - y) > 1 and x != -y and abs(x) > 1
        return other and swapped_shown and high == 2 and wide < 5
    fits = x + wide <= 5 and y + high <= 4 and min(x, y) < 0 and wide != high
    # The rectangle's fourth corner is (x, y + high).
    return fits and x != y + high and min(x, y + high) < 0 and (x + 2 * y + wide) % 7 == 0


def _challenge(kind: int, x: int, y: int, a: int, b: int, c: int, d: int) -> bool:
    """Keep slanted shapes that fit the grid, whose wrong corners are others than the right one."""
    # What is quickest told comes first: the product has three quarters of a million points.
    if (x + y + a + c) % 5 != kind or 0 in (a, b, c, d):
        return False
    if kind == 1 and (c, d) not in ((-2 * b, 2 * a), (2 * b, -2 * a)):
        return False
    if kind == 2 and ((c, d) != (-b, a) or a * a + b * b < 8):
        return False
    if kind == 0 and (a * d == b * c or abs(a * d - b * c) < 8 or a * c + b * d == 0):
        return False
    # B is at (x, y); A and C are a, b and c, d away.
    corners = _corners(x, y, a, b, c, d)
    if not all(-6 < u < 6 and -5 < v < 5 for u, v in corners):
        return False
    far = all(
        (u - p) ** 2 + (v - q) ** 2 > 3
        for k, (u, v) in enumerate(corners)
        for p, q in corners[k + 1 :]
    )
    u, v = corners[3]
    wrong = (x + c - a, y + d - b) != (v, u) or (x + a, y + d) not in corners
    return far and wrong and u != v


def _corners(x: int, y: int, a: int, b: int, c: int, d: int) -> tuple[Spot, Spot, Spot, Spot]:
    return (x + a, y + b), (x, y), (x + c, y + d), (x + a + c, y + b + d)


def _plotted(x: int, y: int, edges: tuple[int, int, int, int]) -> bool:
    """Keep points that are another one when x and y change places."""
    left, right, bottom, top = edges
    inside = left < x < right and bottom < y < top
    return inside and x != y and (edges is FIRST or min(x, y) < 0)


def _to_plot(topic: Topic, tier: Tier, x: int, y: int, edges: tuple[int, int, int, int]) -> Draft:
    """Return an empty grid on which a point is to be plotted."""
    text = prompt("Plot the point {at} and label it P.", at=pair(x, y))
    given, shown = grid(edges), grid(edges, (("P", (x, y)),))
    steps = (
        Step(f"Start at (0, 0). {_way(x, y)}"),
        Step("Mark P there with a cross."),
    )
    return to_draw(text, given, shown, steps, ("to plot", x, y, edges))


@register
class Coordinates(Topic):
    """Coordinates of points, and corners that complete a shape."""

    id = "graphs.coordinates"
    title = "Coordinates in four quadrants"
    statements = ("algebra.coordinates",)
    misconceptions = (
        SWAPPED,
        COUNTS_FROM_ONE,
        FIRST_ALONE,
        SIGN_LOST,
        OTHER_ORDER,
        LEVEL,
        OTHER_WAY,
    )
    spaces = {
        Tier.SUPPORT: Space(_support, what=range(2), x=range(9), y=range(8), turn=range(3)).also(
            _to_plot, _plotted, x=range(9), y=range(8), edges=(FIRST,)
        ),
        Tier.CORE: Space(
            _core,
            what=range(3),
            x=range(-5, 6),
            y=range(-4, 5),
            wide=range(2, 8),
            high=range(2, 7),
        ).also(_to_plot, _plotted, x=range(-5, 6), y=range(-4, 5), edges=(FOUR,)),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=range(3),
            x=range(-4, 5),
            y=range(-3, 4),
            a=range(-3, 4),
            b=range(-3, 4),
            c=range(-4, 5),
            d=range(-4, 5),
        ),
    }
    spaces = with_places(kinds.with_statements(spaces))
    spaces = kinds.with_people_asked(spaces, "graphs.coordinates")

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.CHALLENGE:
            kind, x, y, *ways = values
            return self._corner(_SHAPES[kind], *_corners(x, y, *ways))
        what, x, y, *rest = values
        if tier is Tier.SUPPORT:
            (turn,) = rest
            return (self._read, self._which)[what](x, y, turn, FIRST)
        wide, high = rest
        if what < 2:
            return (self._which, self._read)[what](x, y, wide - 2, FOUR)
        corners = ((x, y), (x + wide, y), (x + wide, y + high), (x, y + high))
        return self._corner("rectangle", *corners)

    def _read(self, x: int, y: int, turn: int, edges: tuple[int, int, int, int]) -> Draft:
        letters = _LETTERS[turn]
        third = (-x, y) if edges is FOUR and x not in (0, y) and abs(x) > 1 else None
        figure = grid(edges, sorted(_placed(letters, (x, y), (y, x), third, edges)))
        name = letters[0]
        ways = (f"Write down the coordinates of {name}.", f"What are the coordinates of {name}?")
        text = (by_turns(ways, x + y),)
        key = pair(x, y)
        lost = pair(abs(x), abs(y))
        wrong = slips(
            (SWAPPED, pair(y, x)),
            (COUNTS_FROM_ONE, pair(x + 1, y + 1)) if edges is FIRST else (SIGN_LOST, lost),
            key=key,
        )
        return Draft(
            text,
            of_figure(figure, text),
            key,
            "point",
            (Step(f"Start at (0, 0). {_way(x, y)}", key),),
            wrong,
            ("read", x, y, turn, edges),
            figure=figure,
        )

    def _which(self, x: int, y: int, turn: int, edges: tuple[int, int, int, int]) -> Draft:
        letters = _LETTERS[turn]
        third = (x, (y + 3) % 8) if edges is FIRST else (-x, y)
        figure = grid(edges, sorted(_placed(letters, (x, y), (y, x), third, edges)))
        text = prompt("Which point is at {at}?", at=pair(x, y))
        return Draft(
            text,
            of_figure(figure, text),
            t.Label(letters[0]),
            "name",
            (Step(f"Start at (0, 0). {_way(x, y)}", t.Label(letters[0])),),
            slips(
                (SWAPPED, t.Label(letters[1])),
                (FIRST_ALONE if edges is FIRST else SIGN_LOST, t.Label(letters[2])),
            ),
            ("which", x, y, turn, edges),
            figure=figure,
        )

    def _corner(self, shape: str, a: Spot, b: Spot, c: Spot, d: Spot) -> Draft:
        figure = grid(FOUR, (("A", a), ("B", b), ("C", c)))
        text = (f"Write down the coordinates of D so that ABCD is a {shape}.",)
        key = pair(*d)
        slanted = a[0] != b[0] and a[1] != b[1]
        wrong = slips(
            (OTHER_ORDER, pair(b[0] + c[0] - a[0], b[1] + c[1] - a[1])),
            (SWAPPED, pair(d[1], d[0])),
            (LEVEL, pair(a[0], c[1]) if a[0] != c[0] and a[1] != c[1] else None)
            if slanted
            else (SIGN_LOST, pair(abs(d[0]), abs(d[1]))),
            key=key,
        )
        way = steps_from(b, a)
        return Draft(
            text,
            of_figure(figure, text),
            key,
            "point",
            (
                Step(f"From B to A it goes {way}."),
                Step(f"BA and CD are parallel and equally long: from C go {way}.", key),
            ),
            wrong,
            (shape, a, b, c),
            figure=figure,
        )


def _way(x: int, y: int) -> str:
    along = f"{abs(x)} to the {'right' if x > 0 else 'left'}" if x else "0 along"
    up = f"{abs(y)} {'up' if y > 0 else 'down'}" if y else "0 up"
    return f"Go along first: {along}. Then {up}."


def _placed(
    letters: str, own: Spot, other: Spot, third: Spot | None, edges: tuple[int, int, int, int]
) -> list[tuple[str, Spot]]:
    """Return the point asked for, the one with its coordinates swapped, and a third."""
    left, right, bottom, top = edges
    found = [(letters[0], own)]
    if left <= other[0] <= right and bottom <= other[1] <= top:
        found.append((letters[1], other))
    if third is not None:
        found.append((letters[2], third))
    return found
