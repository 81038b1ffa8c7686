"""What holds between the labels of a polygon: sums of angles, equal sides, sides that balance."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations, pairwise
from typing import TYPE_CHECKING

from itembank.figures.drawing import Exact
from itembank.figures.kinds.linear_facts import Facts, Form, form_of, less, plus
from itembank.figures.kinds.plane.polygon_shape import Shape, shape_of
from itembank.notation import tree as t
from itembank.once import once

if TYPE_CHECKING:
    from itembank.figures.kinds.plane.polygon import Polygon


@once
def labels_of(figure: Polygon) -> dict[str, Form]:
    """Return the linear form of every label: of sides, of angles (∠B) and of the height."""
    shape = shape_of(figure)
    forms = {shape.side(side): form_of(label) for side, label in figure.sides}
    forms |= {f"∠{corner}": form_of(label) for corner, label in figure.angles}
    if figure.height is not None and figure.height.label is not None:
        forms["height"] = form_of(figure.height.label)
    return forms


def length_unit(figure: Polygon) -> str:
    """Return the unit of its lengths, ``""`` where they are bare numbers."""
    labels = [label for _, label in figure.sides]
    if figure.height is not None and figure.height.label is not None:
        labels.append(figure.height.label)
    return next((label.unit for label in labels if isinstance(label, t.Quantity)), "")


def units_of(figure: Polygon) -> dict[str, str]:
    """Return the unit of each letter: of its own where no unit stands behind it."""
    units: dict[str, str] = {}
    for _, label in figure.sides:
        if not isinstance(label, t.Quantity):
            units |= dict.fromkeys(t.symbols(label), length_unit(figure))
    for _, label in figure.angles:
        if not isinstance(label, t.Quantity):
            units |= dict.fromkeys(t.symbols(label), "°")
    return units


class PolygonFacts:
    """The equations of a polygon, solved."""

    def __init__(self, figure: Polygon) -> None:
        self._figure, self.shape = figure, shape_of(figure)
        self._labels = labels_of(figure)
        convex = [c for c in self.shape.letters if self.shape.degrees(c) < 180]
        level = all(0 in self.shape.way(side) for side in self.shape.sides)
        self.rectilinear = level and {*convex} <= {*figure.right}
        self.solved = Facts(self._equations())
        self._lengths: dict[str, Fraction | None] = {}
        self._angles: dict[str, Fraction | None] = {}

    def side(self, name: str) -> Form:
        """Return the length of a side as a linear form."""
        return self._labels.get(name) or {name: 1}

    def corner(self, name: str) -> Form:
        """Return the angle at a corner as a linear form."""
        if name in self._figure.right:
            return {"": 90}
        return self._labels.get(f"∠{name}") or {f"∠{name}": 1}

    def length(self, side: str) -> Fraction | None:
        """Return a side's length where the labels settle it."""
        if side not in self._lengths:
            self._lengths[side] = self.solved.value(self.side(side))
        return self._lengths[side]

    def angle(self, corner: str) -> Fraction | None:
        """Return an angle where the labels settle it."""
        if corner not in self._angles:
            self._angles[corner] = self.solved.value(self.corner(corner))
        return self._angles[corner]

    def perimeter(self) -> Fraction | None:
        """Return the perimeter where the labels settle it."""
        return self.solved.value(plus(*map(self.side, self.shape.sides)))

    def parallel(self, first: str, other: str) -> bool:
        """Tell whether two sides are marked as parallel, or follow to be."""
        groups = [{self.shape.side(s) for s in group} for group in self._figure.parallel]
        return any({first, other} <= group for group in groups) or self._boxed()

    def _boxed(self) -> bool:
        return len(self.shape.letters) == 4 and len(self._figure.right) >= 3

    def _equations(self) -> Iterator[Form]:
        shape = self.shape
        whole = {"": -180 * (len(shape.letters) - 2)}
        yield plus(*map(self.corner, shape.letters), whole)
        for group in self._figure.equal:
            for first, other in pairwise(shape.side(side) for side in group):
                yield less(self.side(first), self.side(other))
        if len(shape.letters) == 3:
            yield from self._isosceles(shape)
        yield from self._parallels(shape)
        if self.rectilinear:
            # What goes right comes back to the left, and what goes up comes down.
            for axis in (0, 1):
                yield plus(
                    *(
                        self.side(s) if shape.way(s)[axis] > 0 else less({}, self.side(s))
                        for s in shape.sides
                        if shape.way(s)[axis]
                    )
                )

    def _isosceles(self, shape: Shape) -> Iterator[Form]:
        for group in self._figure.equal:
            for first, other in combinations([shape.side(side) for side in group], 2):
                # Each angle lies opposite the side that its corner is no end of.
                a, b = (next(c for c in shape.letters if c not in s) for s in (first, other))
                yield less(self.corner(a), self.corner(b))

    def _parallels(self, shape: Shape) -> Iterator[Form]:
        sides, n = shape.sides, len(shape.sides)
        pairs = 0
        for i, cross in enumerate(sides):
            if self.parallel(sides[i - 1], sides[(i + 1) % n]):
                pairs += 1
                # Where both turn inwards they are co-interior angles.
                if all(shape.degrees(corner) < 180 for corner in cross):
                    half = {"": -180}
                    yield plus(self.corner(cross[0]), self.corner(cross[1]), half)
        if n == 4 and pairs == 4:
            yield less(self.side(sides[0]), self.side(sides[2]))
            yield less(self.side(sides[1]), self.side(sides[3]))


@once
def facts_of(figure: Polygon) -> PolygonFacts:
    """Return the facts of a figure whose data has been looked through."""
    return PolygonFacts(figure)


@once
def lengths_drawn(figure: Polygon) -> list[tuple[t.Node, Fraction, Exact]]:
    """Return each length that is labelled and settled, with the square it is drawn with."""
    shape, facts = shape_of(figure), facts_of(figure)
    found: list[tuple[t.Node, Fraction, Exact]] = []
    for name, label in figure.sides:
        side = shape.side(name)
        value = facts.length(side)
        if value is not None:
            found.append((label, value, shape.square(side)))
    if figure.height is not None and figure.height.label is not None:
        value = facts.solved.value(labels_of(figure)["height"])
        if value is not None:
            found.append((figure.height.label, value, height_square(figure)))
    return found


def height_square(figure: Polygon) -> Fraction:
    """Return the square of how far the height's corner is from its side."""
    assert figure.height is not None
    shape = shape_of(figure)
    side = shape.side(figure.height.side)
    x, y = shape.way(side)
    (a, b), (c, d) = shape.spot(side[0]), shape.spot(figure.height.corner)
    return Fraction((x * (d - b) - y * (c - a)) ** 2) / shape.square(side)


def to_scale(figure: Polygon) -> bool:
    """Tell whether all lengths are drawn exactly to one scale."""
    found = lengths_drawn(figure)
    if not found:
        return False
    (_, first, first_square), *others = found
    return all(as_drawn(first, first_square, value, square) for _, value, square in others)


def as_drawn(first: Fraction, first_square: Exact, value: Fraction, square: Exact) -> bool:
    """Tell whether two lengths are as those of what is drawn, of which there are the squares.

    >>> as_drawn(Fraction(3, 100), 9, Fraction(1, 20), 25)
    True
    """
    top, bottom = first.numerator * value.denominator, first.denominator * value.numerator
    return top * top * square == bottom * bottom * first_square
