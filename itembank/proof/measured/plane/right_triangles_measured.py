"""Sides and angles of a right-angled triangle that is drawn, from what stands at its sides.

Sides come from the squares of two others, or by the law of sines from one and the angles that
face them; an angle from the square of its cosine. Each is then held to the drawing itself.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

import sympy

from itembank.notation import tree as t
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import amount_tree, number_tree

if TYPE_CHECKING:
    from itembank.proof.measured.plane.polygon_outline import Outline

_NEAR, _NEAR_DEGREES = 0.006, 0.6
"""How far a drawing to scale may be off: a little more than its own tolerance (polygon_faults)."""


class RightTriangle:
    """A drawn triangle with a mark of a right angle: side k goes from corner k to the next."""

    def __init__(self, shape: Outline, like: t.Node, accurate: bool) -> None:
        if shape.count != 3 or len(shape.right) != 1:
            raise NotExact("it is no right-angled triangle")
        (self.right,) = shape.right
        self.shape, self.like, self.accurate = shape, like, accurate
        # Each side faces the corner that is no end of it.
        self.sides = {
            side: value
            for side in range(3)
            if (value := shape.settled.value(shape.side(side))) is not None
        }
        self.acute = {
            corner: value
            for corner in shape.angle_labels
            if corner != self.right
            and (value := shape.settled.value(shape.angle(corner))) is not None
        }

    def side(self, side: int) -> t.Node:
        """Return the length of a side."""
        if side in self.sides:
            return amount_tree(self.sides[side], self.like)
        if len(self.sides) == 2 and not self.acute:
            square = self._square(side)
            self._drawn_as(side, float(sympy.sqrt(square)))
            return self._root(square)
        if len(self.sides) != 1 or not self.acute:
            raise NotExact("the drawing does not settle this side")
        ((known, length),) = self.sides.items()
        facing = {2: self._degrees((side + 2) % 3), 1: self._degrees((known + 2) % 3)}
        top, bottom = (t.Trig("sin", t.Quantity(n, "°")) for n in (facing[2], facing[1]))
        value = length * to_sympy(top) / to_sympy(bottom)
        self._drawn_as(side, float(value))
        base = amount_tree(length, self.like)
        return t.times(base, t.Frac(top, bottom))

    def angle(self, corner: int) -> t.Node:
        """Return an acute angle by the square of its cosine."""
        if corner == self.right or self.acute:
            raise NotExact("the drawing gives this angle, or none with its sides")
        ends = [side for side in range(3) if corner in (side, (side + 1) % 3)]
        whole = (self.right + 1) % 3
        (beside,) = (side for side in ends if side != whole)
        ratio = self._square(beside) / self._square(whole)
        shown = t.Trig("cos", t.Root(number_tree(ratio)), True)
        drawn = self.shape.square(beside) / self.shape.square(whole)
        gap = math.degrees(math.acos(math.sqrt(ratio)) - math.acos(math.sqrt(drawn)))
        if self.accurate and abs(gap) > _NEAR_DEGREES:
            raise NotExact("the angle is drawn with another size than its sides make")
        return shown

    def _degrees(self, corner: int) -> t.Node:
        """Return the size of a corner in degrees, a number."""
        if corner == self.right:
            return t.Int(90)
        (known, size), *_ = self.acute.items()
        return number_tree(size if corner == known else 90 - size)

    def _square(self, side: int) -> Any:
        """Return the square of a side, by those of the others where it has no label."""
        if side in self.sides:
            return self.sides[side] ** 2
        if len(self.sides) != 2:
            raise NotExact("the drawing does not settle this side")
        whole = (self.right + 1) % 3
        squares = [self.sides[leg] ** 2 for leg in range(3) if leg not in (side, whole)]
        if side == whole:
            return sum(squares)
        return self.sides[whole] ** 2 - squares[0]

    def _root(self, square: Any) -> t.Node:
        if not isinstance(self.like, t.Quantity):
            return t.Root(number_tree(square))
        size = to_sympy(t.Quantity(t.Int(1), self.like.unit))
        return t.Quantity(t.Root(number_tree(square / size**2)), self.like.unit)

    def _drawn_as(self, side: int, value: float) -> None:
        """Hold a length to the drawing, by the scale of a side that is labelled."""
        if not self.accurate:
            return
        known, length = next(iter(self.sides.items()))
        scale = float(length) / math.sqrt(self.shape.square(known))
        if abs(scale * math.sqrt(self.shape.square(side)) / value - 1) > _NEAR:
            raise NotExact("a side is drawn with another length than the others make")
