"""The corners of a polygon figure as exact points, its sides and angles by their letters."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from itembank.figures.drawing import Exact
from itembank.notation import tree as t
from itembank.notation.value import worth
from itembank.once import once

if TYPE_CHECKING:
    from itembank.figures.kinds.plane.polygon import Polygon

LETTERS = "ABCDEFGHIJKL"
Spot = tuple[Exact, Exact]
"""A place, in whole numbers where it has them: they are far quicker to reckon with."""


@dataclass(frozen=True)
class Shape:
    """A polygon's letters and corners in order, anticlockwise or not."""

    letters: str
    corners: tuple[Spot, ...]

    def spot(self, letter: str) -> Spot:
        """Return the place of a corner."""
        return self._spots[letter]

    @cached_property
    def _spots(self) -> dict[str, Spot]:
        return dict(zip(self.letters, self.corners, strict=True))

    @cached_property
    def sides(self) -> list[str]:
        """Return the sides in order, each by its two letters."""
        n = len(self.letters)
        return [self.letters[i] + self.letters[(i + 1) % n] for i in range(n)]

    def side(self, name: str) -> str:
        """Return a side as it is called in order, ``""`` where two letters name none."""
        return self._called.get(name, "")

    @cached_property
    def _called(self) -> dict[str, str]:
        """Each side by both of its names; of a name for two sides that one which is in order."""
        return {side[::-1]: side for side in self.sides} | {side: side for side in self.sides}

    def way(self, side: str) -> Spot:
        """Return the step from the one end of a side to the other."""
        (a, b), (c, d) = self._spots[side[0]], self._spots[side[1]]
        return c - a, d - b

    def square(self, side: str) -> Exact:
        """Return the square of a side's length."""
        x, y = self.way(side)
        return x * x + y * y

    @cached_property
    def whole(self) -> tuple[tuple[int, int], ...]:
        """Return the corners all multiplied by one number, so that they are whole."""
        parts = math.lcm(*(n.denominator for corner in self.corners for n in corner))
        return tuple(
            (x.numerator * (parts // x.denominator), y.numerator * (parts // y.denominator))
            for x, y in self.corners
        )

    @cached_property
    def twice_area(self) -> Exact:
        """Return twice the area, less than nought if the corners go clockwise."""
        pairs = zip(self.corners, self.corners[1:] + self.corners[:1], strict=True)
        return sum(a * d - b * c for (a, b), (c, d) in pairs)

    def around(self, letter: str) -> tuple[str, str]:
        """Return the letters before and after a corner."""
        at, n = self.letters.index(letter), len(self.letters)
        return self.letters[at - 1], self.letters[(at + 1) % n]

    def rays(self, letter: str) -> tuple[Spot, Spot]:
        """Return the steps along the two sides of a corner, anticlockwise round its inside."""
        return self._all_rays[self.letters.index(letter)]

    @cached_property
    def _all_rays(self) -> list[tuple[Spot, Spot]]:
        out = []
        for at, (x, y) in enumerate(self.corners):
            after, before = self.corners[(at + 1) % len(self.corners)], self.corners[at - 1]
            (a, b), (c, d) = (after, before) if self.twice_area > 0 else (before, after)
            out.append(((a - x, b - y), (c - x, d - y)))
        return out

    def degrees(self, letter: str) -> float:
        """Return the angle inside a corner, in degrees, as an ordinary number."""
        return self._all_degrees[self.letters.index(letter)]

    @cached_property
    def _all_degrees(self) -> list[float]:
        out = []
        for (a, b), (c, d) in self._all_rays:
            turn = math.atan2(float(d), float(c)) - math.atan2(float(b), float(a))
            out.append(math.degrees(turn) % 360)
        return out

    def square_corner(self, letter: str) -> bool:
        """Tell whether the angle inside a corner is exactly a right angle."""
        (a, b), (c, d) = self.rays(letter)
        return a * c + b * d == 0 and a * d - b * c > 0

    def angle(self, name: str) -> str:
        """Return the corner that B or ABC names, ``""`` for none."""
        if len(name) == 1 and name in self.letters:
            return name
        if len(name) == 3 and name[1] in self.letters:
            return name[1] if {*self.around(name[1])} == {name[0], name[2]} else ""
        return ""


@once
def shape_of(figure: Polygon) -> Shape:
    """Return the corners of a figure whose coordinates are numbers."""
    letters = figure.names or LETTERS[: len(figure.corners)]
    return Shape(letters, tuple((_plain(x), _plain(y)) for x, y in figure.corners))


def _plain(coordinate: t.Node) -> Exact:
    value = worth(coordinate)
    return value.numerator if value.denominator == 1 else value
