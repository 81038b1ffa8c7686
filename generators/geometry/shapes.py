"""Names of triangles and quadrilaterals: which fits best, and which corner makes a shape so.

England's programme of study for key stage 3 (2013) asks pupils to "derive and illustrate
properties of triangles, quadrilaterals ... using appropriate language" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from itertools import combinations
from typing import Any

from generators._scatter import unlike
from generators.geometry._areas import TWO_SIDES
from generators.geometry._misconceptions import COPIED, NOT_SHARED, REST_OF_TURN
from generators.geometry._shape_mistakes import (
    ACUTE_IF_ANY,
    EQUAL_SIDES,
    LARGEST_IS_RIGHT,
    LOOKS_RIGHT,
    NEIGHBOURS,
    ONE_FOR_TWO,
    ONE_PAIR,
    PAIRS_FOR_ALL,
    PAIRS_NOT_OPPOSITE,
    PARALLEL_ONLY,
    RIGHT_ANGLES,
    RIGHT_FOR_OBTUSE,
    SOME_RIGHT,
    STOPS_AT_PARALLEL,
    STRAIGHT_ON,
    SWAPS_STEPS,
)
from generators.geometry._shape_tables import EASY, TILTED, WHY
from generators.geometry._shapes_told import with_told
from generators.transformations._shapes import Spot, inside, outline, picture, placed
from itembank.figures.figure import fault
from itembank.figures.kinds.grid.coordinate_grid import CoordinateGrid
from itembank.figures.kinds.grid.names_of_shapes import corner_that_makes
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Misconception, Step, Tier
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t
from itembank.text.in_words import counted

_WRONG: dict[str, tuple[tuple[Misconception, str], ...]] = {
    "square": (
        (RIGHT_ANGLES, "rectangle"),
        (EQUAL_SIDES, "rhombus"),
        (STOPS_AT_PARALLEL, "parallelogram"),
    ),
    "rectangle": (
        (STOPS_AT_PARALLEL, "parallelogram"),
        (PAIRS_FOR_ALL, "square"),
        (ONE_PAIR, "trapezium"),
    ),
    "rhombus": (
        (STOPS_AT_PARALLEL, "parallelogram"),
        (LOOKS_RIGHT, "square"),
        (NEIGHBOURS, "kite"),
    ),
    "parallelogram": (
        (ONE_PAIR, "trapezium"),
        (LOOKS_RIGHT, "rectangle"),
        (PAIRS_FOR_ALL, "rhombus"),
    ),
    "kite": ((PAIRS_FOR_ALL, "rhombus"), (PAIRS_NOT_OPPOSITE, "parallelogram")),
    "trapezium": ((ONE_FOR_TWO, "parallelogram"), (SOME_RIGHT, "rectangle")),
    "isosceles trapezium": ((ONE_PAIR, "trapezium"), (ONE_FOR_TWO, "parallelogram")),
    "right-angled": ((ACUTE_IF_ANY, "acute-angled"), (RIGHT_FOR_OBTUSE, "obtuse-angled")),
    "obtuse-angled": ((ACUTE_IF_ANY, "acute-angled"), (LARGEST_IS_RIGHT, "right-angled")),
}
"""What each shape is taken for, and why."""


_MADE = tuple(
    (name, turned)
    for name, corners in (*EASY, *TILTED)
    if name in ("square", "rectangle", "rhombus", "kite")
    for turned in (corners, tuple((y, x) for x, y in corners))
)


_EDGES = (-5, 5, -4, 4)
"""The edges of a grid with large squares, where six letters have room."""


def _where(seed: int) -> Spot:
    x, y = unlike(seed, 2, -6, 6)
    return x, y


def _named(shapes: tuple[tuple[str, tuple[Spot, ...]], ...], which: int, seed: int) -> bool:
    return which < len(shapes) and inside(placed(shapes[which][1], _where(seed)), gap=1)


def _support(which: int, left_out: int, seed: int) -> bool:
    """Keep shapes that lie on the grid; of three wrong names one is left out."""
    wrongs = len(_WRONG[EASY[which][0]])
    return (left_out < wrongs if wrongs > 2 else left_out == 0) and _named(EASY, which, seed)


def _core(which: int, left_out: int, seed: int) -> bool:
    return left_out == 0 and _named(TILTED, which, seed)


def _offered(which: int, missing: int, seed: int) -> list[Spot] | None:
    """Return three corners, the fourth, and two places that do not make the shape.

    The first of these makes opposite sides parallel and no more, to the second the other mistake
    leads. None, where it cannot be asked.
    """
    name, shape = _MADE[which]
    spots = placed(shape, _where(seed))
    a, b, c, d = (spots[(missing + k) % 4] for k in (1, 2, 3, 4))
    if name == "kite" and _gap(a, b) == _gap(b, c):
        return None  # the fourth corner may be anywhere on the line of symmetry
    if name == "kite":
        parallel = (a[0] + c[0] - b[0], a[1] + c[1] - b[1])
        other = (2 * a[0] - b[0], 2 * a[1] - b[1])
    else:
        parallel = (b[0] + c[0] - a[0], b[1] + c[1] - a[1])
        other = (c[0] + a[1] - b[1], c[1] + a[0] - b[0])
    every = [a, b, c, d, parallel, other]
    if not inside(every, _EDGES, gap=0) or any(_gap(p, q) < 4 for p, q in combinations(every, 2)):
        return None  # nearer to one another their letters would have no room
    lettered = [(str(k), (Fraction(x), Fraction(y))) for k, (x, y) in enumerate(every)]
    three = [at for _, at in lettered[:3]]
    return every if corner_that_makes(name, three, lettered[3:]) == "3" else None


def _gap(a: Spot, b: Spot) -> int:
    return (a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2


def _challenge(which: int, missing: int, seed: int) -> bool:
    every = _offered(which, missing, seed) if which < len(_MADE) else None
    return every is not None and not fault(_points(every)[1])


@register
class Shapes(Topic):
    """The name that fits a shape best, standing straight or aslant; the corner that makes one."""

    id = "geometry.shapes"
    title = "Names of triangles and quadrilaterals"
    statements = ("geometry.properties", "geometry.terms")
    prerequisites = ("graphs.coordinates",)
    misconceptions = (
        *(STOPS_AT_PARALLEL, ONE_PAIR, RIGHT_ANGLES, EQUAL_SIDES, PAIRS_FOR_ALL, LOOKS_RIGHT),
        *(NEIGHBOURS, PAIRS_NOT_OPPOSITE, ONE_FOR_TWO, SOME_RIGHT, ACUTE_IF_ANY),
        *(RIGHT_FOR_OBTUSE, LARGEST_IS_RIGHT, PARALLEL_ONLY, SWAPS_STEPS),
        *(STRAIGHT_ON, TWO_SIDES, COPIED, NOT_SHARED, REST_OF_TURN),
    )
    spaces = {
        Tier.SUPPORT: Space(_support, which=range(len(EASY)), left_out=range(3), seed=range(1, 40)),
        Tier.CORE: Space(_core, which=range(len(TILTED)), left_out=range(1), seed=range(1, 80)),
        Tier.CHALLENGE: Space(
            _challenge, which=range(len(_MADE)), missing=range(4), seed=range(1, 169)
        ),
    }
    spaces = with_told(kinds.with_statements(spaces))

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.CHALLENGE:
            return _corner(*values)
        return _name(tier, *values)


def _name(tier: Tier, which: int, left_out: int, seed: int) -> Draft:
    name, shape = (EASY if tier is Tier.SUPPORT else TILTED)[which]
    corners = placed(shape, _where(seed))
    figure = picture((outline(corners, "P"),))
    wrongs = list(_WRONG[name])
    if tier is Tier.SUPPORT and len(wrongs) > 2:
        del wrongs[left_out]
    *first, last = sorted((name, *(wrong for _, wrong in wrongs)))
    noun = "triangle" if len(corners) == 3 else "quadrilateral"
    text = (f"Which name fits {noun} P best: {', '.join(first)} or {last}?",)
    why = WHY[name]
    if tier is Tier.SUPPORT:
        steps = [Step(" ".join(why), t.Label(name))]
    else:
        steps = [
            Step(f"Count along and up for each side. {why[0]}"),
            Step(why[1], t.Label(name)),
        ]
    return Draft(
        text,
        of_figure(figure, text),
        t.Label(name),
        "name",
        tuple(steps),
        slips(*((mistake, t.Label(wrong)) for mistake, wrong in wrongs)),
        (corners, *sorted((*first, last))),
        figure=figure,
    )


def _points(every: list[Spot]) -> tuple[dict[Spot, str], CoordinateGrid]:
    """Return the letters of corners and of places to choose from, and the grid with them."""
    letters = dict(zip(every[:3], "ABC", strict=True))
    letters |= dict(zip(sorted(every[3:]), "PQR", strict=True))
    points = sorted((letter, at) for at, letter in letters.items())
    return letters, picture((), points, _EDGES)


def _corner(which: int, missing: int, seed: int) -> Draft:
    name, _ = _MADE[which]
    every = _offered(which, missing, seed)
    assert every is not None
    letters = dict(zip(every[:3], "ABC", strict=True))
    letters |= dict(zip(sorted(every[3:]), "PQR", strict=True))
    figure = picture(
        (), [(letters[at], at) for at in sorted(letters, key=letters.__getitem__)], _EDGES
    )
    a, b, _, d, parallel, other = every
    text = (f"Which of the points P, Q and R makes a {name} with A, B and C?",)
    key = t.Label(letters[d])
    if name == "kite":
        steps = (
            Step("AB and BC are not equal, so AC is the line of symmetry."),
            Step("The fourth corner lies as far from AC as B, on the other side."),
            Step(f"That is {letters[d]}.", key),
        )
    else:
        steps = (
            Step(f"AB and BC are sides of the {name}: opposite sides are equal and parallel."),
            Step(f"From B to A go {_way(b, a)}. Go the same way from C."),
            Step(f"That leads to {letters[d]}.", key),
        )
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "name",
        steps,
        slips(
            (PARALLEL_ONLY, t.Label(letters[parallel])),
            (STRAIGHT_ON if name == "kite" else SWAPS_STEPS, t.Label(letters[other])),
        ),
        (name, *every),
        figure=figure,
    )


def _way(start: Spot, end: Spot) -> str:
    across, up = end[0] - start[0], end[1] - start[1]
    ways = [
        f"{counted(abs(across), 'square')} {'right' if across > 0 else 'left'}" if across else "",
        f"{counted(abs(up), 'square')} {'up' if up > 0 else 'down'}" if up else "",
    ]
    return " and ".join(filter(None, ways))
