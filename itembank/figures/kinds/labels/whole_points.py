"""Points by whole numbers over one: exact, and quick to reckon with.

A fraction is brought to lowest terms at every step. Where most points only have to be near enough
to tell whether a label has room, they are brought there when they are drawn.
"""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache
from typing import NamedTuple

from itembank.figures.circle_points import unit_point
from itembank.figures.drawing import Arc, Exact, Fill, Point, Stroke, Weight
from itembank.figures.kinds.labels.near_marks import Curve, Near, Path


class Whole(NamedTuple):
    """The point (x ÷ over, y ÷ over).

    >>> Whole(1, 3, 2).near, Whole(1, 3, 2).exact
    ((0.5, 1.5), Point(x=Fraction(1, 2), y=Fraction(3, 2)))
    """

    x: int
    y: int
    over: int = 1

    @property
    def near(self) -> Near:
        """Return it in ordinary numbers, each the nearest there is."""
        return self.x / self.over, self.y / self.over

    @property
    def exact(self) -> Point:
        """Return it as a point of a drawing."""
        return Point(Fraction(self.x, self.over), Fraction(self.y, self.over))

    def plus(self, other: Whole, times: Exact = 1) -> Whole:
        """Return the point that another is so many times added to.

        >>> Whole(1, 0).plus(Whole(0, 1, 3), Fraction(3, 2))
        Whole(x=6, y=3, over=6)
        """
        top, bottom = times.numerator * self.over, times.denominator * other.over
        return Whole(
            self.x * bottom + other.x * top,
            self.y * bottom + other.y * top,
            self.over * bottom,
        )

    def moved(self, length: Exact, degrees: int) -> Whole:
        """Return the point so far from it, so many degrees anticlockwise from the right."""
        return self.plus(way(degrees % 360), length)

    def along(self, degrees: int) -> Fraction:
        """Return how far it is from nought in a direction, by its foot on that line.

        >>> Whole(3, 5, 2).along(90)
        Fraction(5, 2)
        """
        unit = way(degrees % 360)
        return Fraction(self.x * unit.x + self.y * unit.y, self.over * unit.over)

    def turned(self, by: Whole) -> Whole:
        """Return it turned as a point of the unit circle is turned from the right."""
        return Whole(
            self.x * by.x - self.y * by.y, self.x * by.y + self.y * by.x, self.over * by.over
        )


ORIGIN = Whole(0, 0)


@lru_cache(maxsize=512)
def way(degrees: int) -> Whole:
    """Return the point of the unit circle in a direction.

    >>> way(90)
    Whole(x=0, y=1, over=1)
    """
    return whole(unit_point(Fraction(degrees, 360)))


def whole(point: Point) -> Whole:
    """Return a point of a drawing by whole numbers."""
    (x, across), (y, up) = point.x.as_integer_ratio(), point.y.as_integer_ratio()
    return Whole(x, y, across) if across == up else Whole(x * up, y * across, across * up)


def stroke(
    points: tuple[Whole, ...], role: str, weight: Weight = "normal", *, dashed: bool = False
) -> Path:
    """Return a stroke through points."""
    return Path(
        [point.near for point in points],
        weight,
        lambda: Stroke(tuple(point.exact for point in points), role, weight, dashed),
    )


def arc(
    centre: Whole,
    radius: Exact,
    ends: tuple[Whole, Whole],
    role: str,
    weight: Weight = "normal",
    *,
    fill: Fill = "none",
) -> Curve:
    """Return an arc, as :class:`itembank.figures.drawing.Arc` has it."""
    first, last = ends
    return Curve(
        centre.near,
        float(radius),
        (first.near, last.near),
        weight,
        lambda: Arc(centre.exact, radius, first.exact, last.exact, role, fill, weight),
    )
