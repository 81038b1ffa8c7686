"""Measures a solid: corners where its edges meet, and faces as the regions that they bound.

A solid that bulges everywhere is drawn twice over: its edges that are seen cut the inside of its
outline into the faces that are seen, and its hidden edges cut the same into those that are not.
Each region is walked round, so that its sides are counted too.
"""

from __future__ import annotations

from functools import lru_cache, partial
from itertools import pairwise
from typing import Any

import sympy

from itembank.figures.drawing import Drawing, Stroke
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring

Spot = tuple[Any, Any]
Side = tuple[Spot, Spot]


def _sides(drawing: Drawing, role: str) -> list[Side]:
    found = []
    for mark in drawing.of(role):
        if not isinstance(mark, Stroke) or len(mark.points) != 2:
            raise NotExact("an edge is not straight")
        a, b = ((sympy.Rational(x), sympy.Rational(y)) for x, y in mark.points)
        found.append((a, b))
    return found


def _turn(a: Spot, b: Spot, c: Spot) -> Any:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _outline(spots: set[Spot]) -> list[Spot]:
    """Return the corners of the outline, anticlockwise (the monotone chain, from memory)."""
    rounds = []
    for row in (sorted(spots), sorted(spots, reverse=True)):
        chain: list[Spot] = []
        for spot in row:
            while len(chain) > 1 and _turn(chain[-2], chain[-1], spot) <= 0:
                chain.pop()
            chain.append(spot)
        rounds += chain[:-1]
    return rounds


def _regions(sides: list[Side]) -> list[int]:
    """Return how many sides each region has that straight lines bound, the outside left out."""
    around: dict[Spot, list[Spot]] = {}
    for a, b in sides:
        around.setdefault(a, []).append(b)
        around.setdefault(b, []).append(a)
    for spot, ends in around.items():
        ends.sort(key=partial(_bearing, spot))
    left = {(a, b) for a, ends in around.items() for b in ends}
    found = []
    while left:
        step = start = min(left)
        ring = [start[0]]
        while True:
            left.discard(step)
            a, b = step
            ends = around[b]
            # The next one clockwise from where it came: so a region lies on the left.
            step = (b, ends[ends.index(a) - 1])
            if step == start:
                break
            ring.append(b)
        area = sum(p[0] * q[1] - q[0] * p[1] for p, q in pairwise((*ring, ring[0])))
        if area > 0:
            found.append(len(ring))
    return found


def _bearing(spot: Spot, end: Spot) -> tuple[int, Any]:
    """Return what puts ways from a corner in order, anticlockwise from due right, without angles.

    On either side of a level line they turn as the share of across to up falls.
    """
    x, y = end[0] - spot[0], end[1] - spot[1]
    if y == 0:
        return (0 if x > 0 else 2, sympy.Integer(0))
    return (1 if y > 0 else 3, -x / y)


@lru_cache(maxsize=256)
def _counted(drawing: Drawing) -> tuple[int, int, tuple[int, ...]]:
    """Return the numbers of corners and edges, and the number of sides of each face."""
    seen, hidden = _sides(drawing, "edge"), _sides(drawing, "hidden edge")
    every = [frozenset(side) for side in (*seen, *hidden)]
    if len({*every}) != len(every) or not hidden:
        raise NotExact("an edge is drawn twice, or none is hidden")
    spots = {spot for side in every for spot in side}
    rim = _outline(spots)
    border = [frozenset(pair) for pair in pairwise((*rim, rim[0]))]
    if not {*border} <= {frozenset(side) for side in seen}:
        raise NotExact("the outline of the solid is not closed")
    back = [*hidden, *((a, b) for a, b in pairwise((*rim, rim[0])))]
    faces = (*_regions(seen), *_regions(back))
    # Each edge is a side of two faces.
    if sum(faces) != 2 * len(every):
        raise NotExact("its edges do not bound its faces")
    return len(spots), len(every), faces


def _name(corners: int, faces: tuple[int, ...]) -> str:
    """Return the name of a prism or a pyramid, by the sides of its faces."""
    words = {3: "triangular", 5: "pentagonal", 6: "hexagonal", 7: "heptagonal", 8: "octagonal"}
    rows = sorted(faces)
    for n in range(3, 9):
        if rows == sorted([n, *[3] * n]) and corners == n + 1:
            return {3: "tetrahedron", 4: "square-based pyramid"}.get(n, f"{words.get(n)} pyramid")
        if rows == sorted([n, n, *[4] * n]) and corners == 2 * n:
            return "cuboid" if n == 4 else f"{words[n]} prism"
    return ""


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    corners, edges, faces = _counted(drawing)
    counts = {"faces": len(faces), "edges": edges, "vertices": corners}
    if reading.name in counts and not reading.of:
        return t.Int(counts[reading.name])
    if reading.name == "sided" and len(reading.of) == 1:
        return t.Int(sum(str(sides) == reading.of[0] for sides in faces))
    if reading.name == "called" and (name := _name(corners, faces)) in reading.of:
        return t.Label(name)
    raise NotExact("the drawing does not show it")


MEASURING = Measuring(_measure)
