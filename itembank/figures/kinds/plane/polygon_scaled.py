"""A polygon in the room that it is drawn in: in ordinary numbers, and exactly where it is drawn.

Labels are placed by the ordinary numbers, each the nearest to what is exact: a quotient of whole
numbers, which is far quicker to work out than a fraction.
"""

from __future__ import annotations

import math
from fractions import Fraction

from itembank.figures.drawing import Point
from itembank.figures.kinds.labels.near_marks import Near
from itembank.figures.kinds.plane.polygon_shape import Shape

Rays = tuple[Near, Near]


class Scaled:
    """A shape as large as it may be in a room, its lowest and leftmost corners at the edges.

    >>> triangle = Scaled(Shape("ABC", ((1, 1), (4, 1), (4, 2))), 9, 4)
    >>> triangle.at["C"], triangle.spot("C")
    ((9.0, 3.0), Point(x=Fraction(9, 1), y=Fraction(3, 1)))
    """

    def __init__(self, shape: Shape, wide: int, high: int) -> None:
        self.shape = shape
        corners = shape.whole
        xs, ys = [x for x, _ in corners], [y for _, y in corners]
        left, low = min(xs), min(ys)
        across, up = max(xs) - left, max(ys) - low
        # What the corners are multiplied by, and divided by.
        self.times, self.over = (wide, across) if wide * up <= high * across else (high, up)
        self.corners = [(x - left, y - low) for x, y in corners]
        times, over = self.times, self.over
        self.at: dict[str, Near] = {
            letter: (x * times / over, y * times / over)
            for letter, (x, y) in zip(shape.letters, self.corners, strict=True)
        }
        self._rays: dict[str, Rays] = {}

    def whole(self, letter: str) -> tuple[int, int]:
        """Return the place of a corner before it is multiplied and divided."""
        return self.corners[self.shape.letters.index(letter)]

    def spot(self, letter: str) -> Point:
        """Return the exact place of a corner."""
        return self.exact(*self.whole(letter))

    def exact(self, x: int, y: int, parts: int = 1) -> Point:
        """Return the exact place of what stands at so many parts of a whole before."""
        over = self.over * parts
        return Point(Fraction(x * self.times, over), Fraction(y * self.times, over))

    def near(self, x: int, y: int, parts: int = 1) -> Near:
        """Return the place that :meth:`exact` returns in ordinary numbers."""
        over = self.over * parts
        return x * self.times / over, y * self.times / over

    def around(self, letter: str) -> tuple[str, str]:
        """Return the letters after and before a corner, anticlockwise round its inside."""
        before, after = self.shape.around(letter)
        return (after, before) if self.shape.twice_area > 0 else (before, after)

    def steps(self, letter: str) -> Rays:
        """Return the steps along the two sides of a corner, anticlockwise round its inside."""
        x, y = self.whole(letter)
        first, other = (self.whole(end) for end in self.around(letter))
        return self.near(first[0] - x, first[1] - y), self.near(other[0] - x, other[1] - y)

    def rays(self, letter: str) -> Rays:
        """Return the directions of :meth:`steps`, each of length 1."""
        if letter not in self._rays:
            (a, b), (c, d) = self.steps(letter)
            first, other = math.hypot(a, b), math.hypot(c, d)
            self._rays[letter] = ((a / first, b / first), (c / other, d / other))
        return self._rays[letter]

    def degrees(self, letter: str) -> float:
        """Return the angle inside a corner, in degrees."""
        (a, b), (c, d) = self.steps(letter)
        return math.degrees(math.atan2(d, c) - math.atan2(b, a)) % 360
