"""Measures two triangles: which labels stand at which sides and corners, and what they settle.

Whether the triangles are congruent is found by making them: every triangle with the sides and
angles that are told, by the laws of sines and cosines. They are congruent for certain where each
can be made in one way only, and both ways agree. Their sizes on the drawing say nothing.
"""

from __future__ import annotations

from functools import lru_cache
from itertools import permutations
from typing import Any, NamedTuple

import sympy

from itembank.figures.drawing import Arc, Area, Drawing, Mark, Stroke, Text, drawing
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring, number_tree
from itembank.proof.measured.plane.polygon_outline import Outline

_SAME, _ROUNDED = sympy.Float("1e-30", 50), sympy.Rational(1, 50)
"""By how much two lengths may differ, of one: where each is told by three labels at most, and
where one has a label more, whose length is rounded."""


class _Triangle(NamedTuple):
    """What is told of a triangle: sides by the corner across, angles at theirs, in degrees."""

    outline: Outline
    sides: dict[int, Any]
    angles: dict[int, Any]
    labels: dict[int, t.Node]

    @property
    def many(self) -> int:
        """How much is told of it."""
        return len(self.sides) + len(self.angles)

    def angle(self, corner: int, known: dict[int, Any]) -> Any:
        """Return an angle that is known, or that the two others leave; None for neither."""
        if corner in known:
            return known[corner]
        others = [known[k] for k in range(3) if k != corner and k in known]
        return 180 - sum(others) if len(others) == 2 else None


def _x(mark: Mark) -> Any:
    match mark:
        case Text():
            return mark.at.x
        case Arc():
            return mark.centre.x
        case Stroke() | Area():
            return min(point.x for point in mark.points)


@lru_cache(maxsize=128)
def _triangles(made: Drawing) -> tuple[_Triangle, _Triangle]:
    areas = [mark for mark in made.of("polygon") if isinstance(mark, Area)]
    if len(areas) != 2:
        raise NotExact("there are not two outlines")
    # Nothing is measured off the outlines below, only the labels: a pupil has to know that as well.
    if not made.of("not accurate"):
        raise NotExact("it does not say that it is not drawn accurately")
    left, right = sorted(areas, key=_x)
    # Labels stand near their own triangle: halfway between the two parts them.
    edge = (max(p.x for p in left.points) + min(p.x for p in right.points)) / 2
    kept = [mark for mark in made.marks if mark.role != "not accurate"]
    return (
        _told([mark for mark in kept if _x(mark) < edge]),
        _told([mark for mark in kept if _x(mark) >= edge]),
    )


def _told(marks: list[Mark]) -> _Triangle:
    outline = Outline(drawing(marks))
    labels = {
        (side + 2) % 3: label
        for side, label in outline.side_labels.items()
        if not isinstance(label, str)
    }
    sides = {corner: to_sympy(label) for corner, label in labels.items()}
    angles = {corner: to_sympy(label) for corner, label in outline.angle_labels.items()}
    angles |= dict.fromkeys(outline.right, sympy.Integer(90))
    return _Triangle(outline, sides, angles, labels)


def _ways(triangle: _Triangle) -> list[tuple[Any, ...]] | None:
    """Return the sides of every triangle with what is told, by corners; None for no end of them."""
    sides = {k: sympy.N(side, 50) for k, side in triangle.sides.items()}
    angles = {
        k: sympy.N(angle * sympy.pi / 180, 50)
        for k in range(3)
        if (angle := triangle.angle(k, triangle.angles)) is not None
    }
    if len(sides) == 3:
        return [tuple(sides[k] for k in range(3))]
    if len(sides) == 2:
        third = next(k for k in range(3) if k not in sides)
        found = _third_side(sides, angles, third)
        return found and [tuple({**sides, third: far}[k] for k in range(3)) for far in found]
    if len(sides) == 1 and len(angles) == 3:
        ((corner, side),) = sides.items()
        worth = side / sympy.sin(angles[corner])
        return [tuple(worth * sympy.sin(angles[k]) for k in range(3))]
    return None


def _third_side(sides: dict[int, Any], angles: dict[int, Any], third: int) -> list[Any] | None:
    (i, a), (j, b) = sides.items()
    if third in angles:
        return [sympy.sqrt(a**2 + b**2 - 2 * a * b * sympy.cos(angles[third]))]
    for across, other, at in ((a, b, i), (b, a, j)):
        if at in angles:  # a² = b² + c² − 2bc cos A, as an equation for c
            middle = other * sympy.cos(angles[at])
            under = across**2 - (other * sympy.sin(angles[at])) ** 2
            # The side across is too short to reach.
            if under < 0:
                raise NotExact("there is no triangle with what is told")
            ends = (middle + sympy.sqrt(under), middle - sympy.sqrt(under))
            # Of two ends only those on the right side of the corner count; nought is no side.
            return [far for far in ends if far > _SAME]
    return None


def _pairings(first: _Triangle, second: _Triangle) -> list[tuple[int, ...]]:
    """Return how corners can go together, where each triangle can be made in one way only."""
    ways = _ways(first), _ways(second)
    # Two sides and an angle across from one may fit two triangles: nothing is equal then.
    if any(way is None or len(way) != 1 for way in ways):
        return []
    assert ways[0] is not None
    assert ways[1] is not None
    mine, theirs = ways[0][0], ways[1][0]
    # A fourth label of a triangle follows from the others, and is printed rounded.
    near = _SAME if max(first.many, second.many) <= 3 else _ROUNDED
    return [
        pairing
        for pairing in permutations(range(3))
        if all(abs(theirs[pairing[k]] / mine[k] - 1) <= near for k in range(3))
    ]


def _condition(first: _Triangle, second: _Triangle) -> str:
    if not _pairings(first, second):
        return "none"
    bare = min((first, second), key=lambda triangle: triangle.many)
    if len(bare.sides) == 3:
        return "SSS"
    if len(bare.sides) == 1:
        return "ASA"
    # With the right angle between the two sides it is SAS: RHS needs the side across from it.
    square = [corner for corner, angle in bare.angles.items() if angle == 90]
    return "RHS" if square and square[0] in bare.sides else "SAS"


def _measure(made: Drawing, reading: Reading) -> t.Node:
    first, second = _triangles(made)
    if reading == Reading("condition"):
        return t.Label(_condition(first, second))
    name = reading.of[0].upper()
    own, other = (first, second) if {*name} <= {*first.outline.names} else (second, first)
    corners = [own.outline.names[letter] for letter in name]
    pairings = _pairings(own, other)
    partner = pairings[0] if len(pairings) == 1 else None
    if reading.name == "side":
        (corner,) = {0, 1, 2} - {*corners}
        if corner in own.labels:
            return own.labels[corner]
        if partner is not None and partner[corner] in other.labels:
            return other.labels[partner[corner]]
    elif reading.name == "angle":
        corner = corners[len(corners) // 2]
        known = dict(own.angles)
        if partner is not None:
            known |= {k: other.angles[partner[k]] for k in range(3) if partner[k] in other.angles}
        value = own.angle(corner, own.angles)
        value = own.angle(corner, known) if value is None else value
        if value is not None:
            return t.Quantity(number_tree(value), "°")
    raise NotExact("the drawing does not show it")


MEASURING = Measuring(_measure)
