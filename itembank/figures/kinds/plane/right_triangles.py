"""Sides and angles of right-angled triangles that sums do not settle: Pythagoras, sine, tangent.

What is found is an expression of the labels, exact, and worked out by whoever asks for it.

>>> from itembank.figures.kinds.plane.polygon import Polygon
>>> from itembank.notation.parse import parse
>>> corners = ((t.Int(0), t.Int(0)), (t.Int(5), t.Int(0)), (t.Int(0), t.Int(7)))
>>> sides = (("AB", parse("5 cm")), ("CA", parse("7 cm")))
>>> from itembank.notation.line import line
>>> line(side_found(Polygon(corners, sides=sides, right="A"), "BC"))
'√((5 cm)^2 + (7 cm)^2)'
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from itembank.figures.kinds.plane.polygon_facts import facts_of, length_unit
from itembank.figures.kinds.plane.polygon_shape import shape_of
from itembank.figures.written_as import in_unit
from itembank.notation import tree as t
from itembank.notation.tree.trigonometry import TrigName

if TYPE_CHECKING:
    from itembank.figures.kinds.plane.polygon import Polygon

_TWO = t.Int(2)


def side_found(figure: Polygon, side: str) -> t.Node | None:
    """Return a side from two others, or from one and an angle; None where they do not tell."""
    triangle = _Triangle.of(figure)
    if triangle is None:
        return None
    known = triangle.sides
    hypotenuse, legs = triangle.hypotenuse, triangle.legs
    if side in known:
        return triangle.length(side)
    if len(known) == 2:
        a, b = (_square(triangle.length(name)) for name in (*legs, hypotenuse) if name in known)
        return t.Root(t.add(a, b) if side == hypotenuse else t.sub(b, a))
    if len(known) != 1 or triangle.angle is None:
        return None
    (given,) = known
    corner, angle = triangle.angle
    ratio, above = triangle.ratio(corner, side, given)
    length, taken = triangle.length(given), t.Trig(ratio, angle)
    return t.times(length, taken) if above else t.divide(length, taken)


def angle_found(figure: Polygon, corner: str) -> t.Node | None:
    """Return an acute angle from two sides; None where they do not tell."""
    triangle = _Triangle.of(figure)
    if triangle is None or corner in figure.right or len(triangle.sides) < 2:
        return None
    first, other = [
        name for name in (*triangle.legs, triangle.hypotenuse) if name in triangle.sides
    ][:2]
    ratio, above = triangle.ratio(corner, first, other)
    top, bottom = (first, other) if above else (other, first)
    value = triangle.sides[top] / triangle.sides[bottom]
    return t.Trig(ratio, t.frac(value.numerator, value.denominator), True)


def letter_at(figure: Polygon, letter: str) -> tuple[str, str] | None:
    """Return the one side or angle that a letter alone labels: ``("side", "BC")``; None if none."""
    shape = shape_of(figure)
    places = [("side", shape.side(side)) for side, node in figure.sides if node == t.Sym(letter)]
    places += [("angle", corner) for corner, node in figure.angles if node == t.Sym(letter)]
    return places[0] if len(places) == 1 else None


class _Triangle:
    """The sides of a right-angled triangle that are known, and the angle that is given."""

    def __init__(self, figure: Polygon) -> None:
        shape, facts = shape_of(figure), facts_of(figure)
        self._right = figure.right
        self._unit = length_unit(figure)
        self.legs = [side for side in shape.sides if self._right in side]
        self.hypotenuse = next(side for side in shape.sides if self._right not in side)
        self.sides: dict[str, Fraction] = {}
        for side in shape.sides:
            if (value := facts.length(side)) is not None:
                self.sides[side] = value
        self.angle: tuple[str, t.Node] | None = None
        for corner, _ in figure.angles:
            size = facts.angle(corner)
            if corner not in self._right and size is not None:
                self.angle = corner, in_unit(size, "°")
                break

    @classmethod
    def of(cls, figure: Polygon) -> _Triangle | None:
        """Return the triangle, None where the figure is none or has no mark of a right angle."""
        if len(figure.corners) != 3 or len(figure.right) != 1:
            return None
        made = cls(figure)
        return made if made.settles_once else None

    @property
    def settles_once(self) -> bool:
        """Tell whether the labels say nothing twice, or the same: else answers would differ."""
        if len(self.sides) < 3:
            return self.angle is None or len(self.sides) < 2
        a, b = (self.sides[leg] for leg in self.legs)
        return self.angle is None and a * a + b * b == self.sides[self.hypotenuse] ** 2

    def length(self, side: str) -> t.Node:
        """Return a known side with its unit."""
        return in_unit(self.sides[side], self._unit)

    def ratio(self, corner: str, first: str, other: str) -> tuple[TrigName, bool]:
        """Return the ratio at a corner that two sides make, and whether the first stands above."""
        names = {self._place(corner, side): side for side in (first, other)}
        if "adjacent" not in names:
            return "sin", names["opposite"] == first
        if "opposite" not in names:
            return "cos", names["adjacent"] == first
        return "tan", names["opposite"] == first

    def _place(self, corner: str, side: str) -> str:
        if side == self.hypotenuse:
            return "hypotenuse"
        return "adjacent" if corner in side else "opposite"


def _square(side: t.Node) -> t.Node:
    return t.Power(t.Bracket(side), _TWO)
