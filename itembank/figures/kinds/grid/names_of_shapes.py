"""Which names a triangle or a quadrilateral has, by the lengths and ways of its sides.

Names are meant as mathematicians mean them: a square is a rectangle, a rhombus, a kite and a
trapezium too. So one name of several *fits best* if all others that fit say less.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import permutations
from math import lcm

Place = tuple[Fraction, Fraction]

SAYS_LESS: dict[str, frozenset[str]] = {
    "square": frozenset(
        (
            *("rectangle", "rhombus", "parallelogram", "kite", "trapezium"),
            "isosceles trapezium",
        )
    ),
    "rectangle": frozenset(("parallelogram", "trapezium", "isosceles trapezium")),
    "rhombus": frozenset(("parallelogram", "kite", "trapezium")),
    "parallelogram": frozenset(("trapezium",)),
    "isosceles trapezium": frozenset(("trapezium",)),
    "trapezium": frozenset(),
    "kite": frozenset(),
    "equilateral": frozenset(("isosceles",)),
    "isosceles": frozenset(),
    "scalene": frozenset(),
    "acute-angled": frozenset(),
    "right-angled": frozenset(),
    "obtuse-angled": frozenset(),
}
"""Each name, and those that fit whatever it fits and say less (Euclid's Elements, definitions
20 to 22 of book 1, but each name taken to include the narrower ones, as is usual now)."""
OF_FOUR = frozenset(name for name in SAYS_LESS if "angled" not in name) - {
    *("equilateral", "isosceles", "scalene")
}


def names_of(corners: Sequence[Place]) -> frozenset[str]:
    """Return all names of a triangle, or of a quadrilateral without a corner that points in.

    >>> wide = [(Fraction(x), Fraction(y)) for x, y in ((0, 0), (4, 0), (4, 2), (0, 2))]
    >>> sorted(names_of(wide))
    ['isosceles trapezium', 'parallelogram', 'rectangle', 'trapezium']
    """
    return _names_of(_whole(corners))


Spot = tuple[int, int]


def _whole(places: Sequence[Place]) -> list[Spot]:
    """Return places in whole numbers, so many times as far apart: no name hangs on the size."""
    times = lcm(*(value.denominator for place in places for value in place))
    return [
        (x.numerator * (times // x.denominator), y.numerator * (times // y.denominator))
        for x, y in places
    ]


def _ways(corners: Sequence[Spot]) -> list[Spot]:
    """Return the steps from each corner to the next."""
    return [
        (c - a, d - b) for (a, b), (c, d) in zip(corners, (*corners[1:], corners[0]), strict=True)
    ]


def _names_of(corners: Sequence[Spot]) -> frozenset[str]:
    ways = _ways(corners)
    long = [x * x + y * y for x, y in ways]
    if len(corners) == 3:
        return _of_three(ways, long)
    if len(corners) != 4 or len({_turn(ways[k - 1], ways[k]) > 0 for k in range(4)}) > 1:
        return frozenset()
    level = [not _turn(ways[k], ways[k + 2]) for k in (0, 1)]
    right = all(not _dot(ways[k - 1], ways[k]) for k in range(4))
    found = set()
    if any(level):
        found.add("trapezium")
        equal = (level[0] and long[1] == long[3]) or (level[1] and long[0] == long[2])
        # Of parallelograms the slanting sides are equal too: the angles have to match.
        if equal and (right or not all(level)):
            found.add("isosceles trapezium")
    if all(level):
        found.add("parallelogram")
    if right:
        found.add("rectangle")
    if len({*long}) == 1:
        found.add("rhombus")
    if right and len({*long}) == 1:
        found.add("square")
    if (long[0] == long[1] and long[2] == long[3]) or (long[1] == long[2] and long[3] == long[0]):
        found.add("kite")
    return frozenset(found)


def _turn(a: Spot, b: Spot) -> int:
    return a[0] * b[1] - a[1] * b[0]


def _dot(a: Spot, b: Spot) -> int:
    return a[0] * b[0] + a[1] * b[1]


def _of_three(ways: list[Spot], long: list[int]) -> frozenset[str]:
    if not _turn(ways[0], ways[1]):
        return frozenset()
    equal = len({*long})
    found = {3: {"scalene"}, 2: {"isosceles"}, 1: {"isosceles", "equilateral"}}[equal]
    # By the law of cosines the largest angle is right where the longest side's square is the sum
    # of the others'.
    gap = 2 * max(long) - sum(long)
    found.add("right-angled" if not gap else "obtuse-angled" if gap > 0 else "acute-angled")
    return frozenset(found)


def best_name(corners: Sequence[Place], offered: Sequence[str]) -> str | None:
    """Return the name of some that fits best, or None where none of them does.

    >>> tall = [(Fraction(x), Fraction(y)) for x, y in ((0, 0), (1, 3), (4, 4), (3, 1))]
    >>> best_name(tall, ("parallelogram", "rhombus", "square"))
    'rhombus'
    """
    fitting = names_of(corners) & {*offered}
    best = [name for name in fitting if fitting - {name} <= SAYS_LESS[name]]
    return best[0] if len(best) == 1 else None


def corner_that_makes(
    name: str, three: Sequence[Place], offered: Sequence[tuple[str, Place]]
) -> str | None:
    """Return the letter of the one point that makes a shape with three others, in any order."""
    spots = _whole([*three, *(at for _, at in offered)])
    orders = [order for order in permutations(spots[:3]) if order[0] < order[2]]
    right, darts = [], []
    for (letter, _), spot in zip(offered, spots[3:], strict=True):
        made = [(*order, spot) for order in orders]
        if any(name in _names_of(corners) for corners in made):
            right.append(letter)
        elif name == "kite" and any(map(_dart, made)):
            darts.append(letter)
    return right[0] if len(right) == 1 and not darts else None


def _dart(corners: Sequence[Spot]) -> bool:
    """Tell whether a shape with a corner that points in might pass for a kite."""
    long = [_dot(way, way) for way in _ways(corners)]
    return (long[0] == long[1] and long[2] == long[3]) or (
        long[1] == long[2] and long[3] == long[0]
    )
