"""The conditions for congruent triangles: SSS, SAS, ASA and RHS, from what is told of each.

England's programme of study names these four (2013, from memory). Two angles settle the third, so
that a side with any two angles counts as ASA, where the side is across from equal angles.

>>> three = Told({0: Fraction(5), 1: Fraction(6), 2: Fraction(7)}, {})
>>> condition(three, three)
'SSS'
>>> angles = Told({}, {0: Fraction(50), 1: Fraction(60), 2: Fraction(70)})
>>> condition(angles, angles)
'none'
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from itertools import permutations
from typing import NamedTuple

NONE = "none"
"""What is said where none of the conditions shows that two triangles are congruent."""
CONDITIONS = ("SSS", "SAS", "ASA", "RHS", NONE)
"""What a question offers to choose from."""
Pairing = tuple[int, int, int]
"""The corner of the other triangle that goes with each corner."""


class Told(NamedTuple):
    """What is told of a triangle: each angle at its corner, each side by the corner across."""

    sides: Mapping[int, Fraction]
    angles: Mapping[int, Fraction]

    @property
    def many(self) -> int:
        """How much is told."""
        return len(self.sides) + len(self.angles)

    def completed(self) -> Told:
        """Return the same with the third angle, where two are told."""
        lacking = [corner for corner in range(3) if corner not in self.angles]
        if len(lacking) != 1:
            return self
        third = 180 - sum(self.angles.values(), Fraction(0))
        return Told(self.sides, {**self.angles, lacking[0]: third})


def condition(first: Told, second: Told) -> str:
    """Return the one condition by which two triangles are congruent, `NONE` where none is.

    It is ``""`` where more than one is, or where they are congruent for another reason; also
    where both have more than three labels, or one has and they may be congruent by what those
    come to.
    """
    bare = max(first.many, second.many) <= 3
    if min(first.many, second.many) > 3:
        return ""
    first, second = first.completed(), second.completed()
    names = {name for _, name in _shown(first, second)}
    if len(names) == 1:
        return names.pop()
    return "" if names or not bare or _settled_otherwise(first, second) else NONE


def partner_value(own: Told, other: Told, kind: str, at: int) -> Fraction | None:
    """Return a side or an angle, told or found by the congruent partner; None where it is not."""
    own, other = own.completed(), other.completed()
    told = own.sides if kind == "side" else own.angles
    if at in told:
        return told[at]
    found = set()
    for pairing, _ in _shown(own, other):
        # Two angles may be told of different triangles: together they settle the third.
        angles = dict(own.angles)
        angles |= {k: other.angles[pairing[k]] for k in range(3) if pairing[k] in other.angles}
        sides = {k: other.sides[pairing[k]] for k in range(3) if pairing[k] in other.sides}
        all_ = Told(sides, angles).completed()
        found.add((all_.sides if kind == "side" else all_.angles).get(at))
    return found.pop() if len(found) == 1 else None


def _shown(first: Told, second: Told) -> Iterator[tuple[Pairing, str]]:
    """Yield the ways to pair the corners by which the triangles are congruent, each with why."""
    for pairing, sides, angles in _pairings(first, second):
        if name := _named(sides, angles, first):
            yield pairing, name


def _pairings(first: Told, second: Told) -> Iterator[tuple[Pairing, set[int], set[int]]]:
    """Yield the ways to pair the corners that nothing told is against, each with what is equal."""
    for pairing in permutations(range(3), 3):
        both = ((first.sides, second.sides), (first.angles, second.angles))
        shared = [{k for k in mine if pairing[k] in theirs} for mine, theirs in both]
        if all(
            mine[k] == theirs[pairing[k]]
            for (mine, theirs), corners in zip(both, shared, strict=True)
            for k in corners
        ):
            yield pairing, shared[0], shared[1]


def _named(sides: set[int], angles: set[int], told: Told) -> str:
    """Return the condition that equal sides and angles make, ``""`` for none."""
    if len(sides) == 3:
        return "SSS"
    if len(sides) == 2:
        (between,) = {0, 1, 2} - sides
        if between in angles:
            return "SAS"
        # Across from one of the two sides, which is the hypotenuse then.
        return "RHS" if any(told.angles[k] == 90 for k in angles) else ""
    return "ASA" if len(sides) == 1 and len(angles) >= 2 else ""


def _settled_otherwise(first: Told, second: Told) -> bool:
    """Tell whether two equal sides and an equal angle across from one of them settle the rest.

    They do where that side is as long as the other one or longer: only one triangle is like that.
    """
    return any(
        first.sides[across] >= first.sides[side]
        for _, sides, angles in _pairings(first, second)
        for across in sides & angles
        for side in sides - {across}
    )
