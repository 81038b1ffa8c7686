"""Corners that make no polygon: too few, one that is none, sides that cross."""

from __future__ import annotations

from itertools import combinations
from typing import TYPE_CHECKING

from itembank.figures.drawing import Exact
from itembank.figures.kinds.plane.polygon_shape import LETTERS, Spot, shape_of
from itembank.notation import tree as t

if TYPE_CHECKING:
    from itembank.figures.kinds.plane.polygon import Polygon


LARGEST = 10_000


def no_shape(figure: Polygon) -> str:
    """Return why the corners make no polygon, as a clause, or an empty text."""
    count = len(figure.corners)
    if not 3 <= count <= len(LETTERS):
        return f"it may have 3 to {len(LETTERS)} corners"
    names = figure.names or LETTERS[:count]
    if len(names) != count or len({*names}) != count:
        return "each corner is to have a letter of its own"
    if not all("A" <= letter <= "Z" for letter in names):
        return "its corners are to be named by capital letters"
    try:
        shape = shape_of(figure)
    except t.NotationError:
        return "its corners are to be pairs of numbers"
    if any(
        not -LARGEST <= n <= LARGEST or n.denominator > LARGEST
        for spot in shape.corners
        for n in spot
    ):
        return f"a coordinate may be at most {LARGEST}, and a fraction at most as fine"
    spots, n = shape.corners, count
    for i, j in combinations(range(n), 2):
        if spots[i] == spots[j]:
            return f"the corners {names[i]} and {names[j]} are at one place"
    for i in range(n):
        a, b, c = spots[i - 1], spots[i], spots[(i + 1) % n]
        if _turn(a, b, c) == 0:
            return f"the corners {names[i - 1]}, {names[i]} and {names[(i + 1) % n]} are in a line"
    for i, j in combinations(range(n), 2):
        # Neighbours meet, and are to: at their corner.
        if j - i in (1, n - 1):
            continue
        if _meet(spots[i], spots[(i + 1) % n], spots[j], spots[(j + 1) % n]):
            return f"its sides {shape.sides[i]} and {shape.sides[j]} cross"
    return ""


def _turn(a: Spot, b: Spot, c: Spot) -> Exact:
    return (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0])


def _meet(a: Spot, b: Spot, c: Spot, d: Spot) -> bool:
    """Tell whether two segments have a point in common."""
    turns = [_turn(a, b, c), _turn(a, b, d), _turn(c, d, a), _turn(c, d, b)]
    if turns[0] * turns[1] < 0 and turns[2] * turns[3] < 0:
        return True
    on = zip(turns, ((a, b, c), (a, b, d), (c, d, a), (c, d, b)), strict=True)
    return any(turn == 0 and _within(*three) for turn, three in on)


def _within(a: Spot, b: Spot, c: Spot) -> bool:
    return all(min(a[k], b[k]) <= c[k] <= max(a[k], b[k]) for k in (0, 1))
