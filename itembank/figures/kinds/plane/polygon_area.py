"""The area of a polygon from what stands on it, by the rule for its shape."""

from __future__ import annotations

from fractions import Fraction
from math import isqrt
from typing import TYPE_CHECKING

from itembank.figures.drawing import Exact
from itembank.figures.kinds.plane.polygon_facts import facts_of, labels_of, to_scale
from itembank.figures.kinds.plane.polygon_shape import shape_of

if TYPE_CHECKING:
    from itembank.figures.kinds.plane.polygon import Polygon


def sign_of(value: Exact) -> int:
    """Return 1, 0 or −1 as a number is above, at or below 0."""
    return (value > 0) - (value < 0)


def area_of(figure: Polygon) -> Fraction | None:
    """Return the area from the lengths alone, in squares of the base unit, if they settle it."""
    if not to_scale(figure):
        return None
    facts, shape = facts_of(figure), shape_of(figure)
    lengths = {side: facts.length(side) for side in shape.sides}
    if facts.rectilinear and all(lengths.values()):
        x = y = twice = Fraction(0)
        for side in shape.sides:
            dx, dy = shape.way(side)
            far = lengths[side] or Fraction(0)
            a, b = x + sign_of(dx) * far, y + sign_of(dy) * far
            twice += x * b - a * y
            x, y = a, b
        return abs(twice) / 2
    if figure.height is not None and figure.height.label is not None:
        high = facts.solved.value(labels_of(figure)["height"])
        base = shape.side(figure.height.side)
        if high is None or lengths[base] is None:
            return None
        if len(shape.letters) == 3:
            return high * (lengths[base] or 0) / 2
        if len(shape.letters) == 4:
            leg = next(s for s in shape.sides if not {*s} & {*base})
            if lengths[leg] is not None and facts.parallel(base, leg):
                return high * ((lengths[base] or 0) + (lengths[leg] or 0)) / 2
    if len(shape.letters) == 4:
        # Beside a right angle the side between two parallel ones is the height.
        for k, cross in enumerate(shape.sides):
            base, leg = shape.sides[k - 1], shape.sides[(k + 1) % 4]
            both = [far for far in (lengths[base], lengths[leg]) if far]
            up = lengths[cross]
            if up and len(both) == 2 and {*cross} & {*figure.right} and facts.parallel(base, leg):
                return up * sum(both) / 2
    if len(shape.letters) != 3:
        return None
    for corner in figure.right:
        legs = [lengths[s] for s in shape.sides if corner in s]
        if all(legs):
            return (legs[0] or 0) * (legs[1] or 0) / Fraction(2)
    return _three_sides([far for far in lengths.values() if far])


def _three_sides(sides: list[Fraction]) -> Fraction | None:
    """Return a triangle's area by Heron's formula (Metrica, book 1), where it is a fraction."""
    if len(sides) != 3:
        return None
    half = sum(sides, Fraction(0)) / 2
    square = half
    for side in sides:
        square *= half - side
    if square <= 0:
        return None
    top, bottom = isqrt(square.numerator), isqrt(square.denominator)
    return Fraction(top, bottom) if Fraction(top, bottom) ** 2 == square else None
