"""Marks in ordinary numbers: what labels keep clear of, made exact only when they are drawn.

Whether every label has a place is asked of every figure that is made, and few of them are drawn.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from fractions import Fraction
from typing import TypeAlias

from itembank.figures.drawing import WEIGHTS, Arc, Area, Exact, Mark, Point, Stroke, Weight

GAP = 0.1
"""How far a label keeps from a stroke's edge, in ems."""
FAR = {weight: float(wide) / 2 + GAP for weight, wide in WEIGHTS.items()}
"""How far a label keeps from the middle of a stroke, by its weight."""
_ARC = 24
"""How many straight strokes stand for an arc where labels keep clear of it."""
_CLEAR = math.cos(math.pi / _ARC) ** 2 - 1e-6
"""The square of how near such a stroke comes to the middle, the radius being 1."""
_SURE = 1e-6
"""Far more than ordinary numbers are off by, and far less than can be seen."""

Near: TypeAlias = tuple[float, float]
Box: TypeAlias = tuple[float, float, float, float]
"""The left, bottom, right and top edge: of a label, or of what marks fit in."""


def exactly(x: float, y: float) -> Point:
    """Return a place to the nearest thousandth of an em."""
    return Point(Fraction(round(x * 1000), 1000), Fraction(round(y * 1000), 1000))


def rounded(x: float, y: float) -> Near:
    """Return the place of :func:`exactly` in ordinary numbers."""
    return round(x * 1000) / 1000, round(y * 1000) / 1000


def near(point: tuple[Exact, Exact]) -> Near:
    """Return a place in ordinary numbers."""
    return float(point[0]), float(point[1])


def unit(a: Near, b: Near) -> Near:
    """Return the direction from a place to another, of length 1."""
    far = math.hypot(b[0] - a[0], b[1] - a[1])
    return ((b[0] - a[0]) / far, (b[1] - a[1]) / far)


def edges_of(points: list[Near]) -> Box:
    """Return the edges of the box that points fit in."""
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return min(xs), min(ys), max(xs), max(ys)


def holds(box: Box, other: Box) -> bool:
    """Tell whether no part of another box lies outside of a box."""
    return box[0] <= other[0] and box[1] <= other[1] and other[2] <= box[2] and other[3] <= box[3]


class Path:
    """A stroke or an area: it goes straight from each of its points to the next.

    `made` returns the mark itself; the points of an area come back to the first.
    """

    __slots__ = ("edges", "far", "made", "points")

    def __init__(self, points: list[Near], weight: Weight, made: Callable[[], Mark]) -> None:
        self.points = points
        self.far = FAR[weight]
        self.made = made
        self.edges = edges_of(points)
        """The left, bottom, right and top edge: nothing of it lies outside."""

    def meets(self, box: Box) -> bool:
        """Tell whether a label comes too near to it."""
        left, bottom, right, top = box
        far = self.far
        left, right, bottom, top = left - far, right + far, bottom - far, top + far
        # Most marks are beside the label altogether, and so are most segments of the others.
        first, least, last, most = self.edges
        if last < left or first > right or most < bottom or least > top:
            return False
        return _meets(self.points, (left, bottom, right, top))


def sketched(points: tuple[Near, ...], role: str, weight: Weight = "normal") -> Path:
    """Return a stroke through places that are rounded to the nearest thousandth of an em."""
    return Path(
        [rounded(*point) for point in points],
        weight,
        lambda: Stroke(tuple(exactly(*point) for point in points), role, weight),
    )


class Curve:
    """An arc by its centre, its radius and where it starts and ends, as :class:`Arc`.

    Its points are worked out when a label comes near: most labels are near few marks.
    """

    __slots__ = ("_points", "centre", "edges", "end", "far", "made", "radius", "sector", "start")

    def __init__(
        self,
        centre: Near,
        radius: float,
        ends: tuple[Near, Near],
        weight: Weight,
        made: Callable[[], Mark],
        sector: bool = False,
    ) -> None:
        self.centre, self.radius, self.sector = centre, radius, sector
        self.start, self.end = ends
        self.far = FAR[weight]
        self.made = made
        self._points: list[Near] | None = None
        # Of the whole circle: no cosine is more than 1, so no point of the arc lies outside.
        cx, cy = centre
        self.edges: Box = (cx - radius, cy - radius, cx + radius, cy + radius)

    @property
    def points(self) -> list[Near]:
        """Return the points that it goes through, as so many short strokes."""
        if self._points is None:
            (cx, cy), r = self.centre, self.radius
            start = math.atan2(self.start[1] - cy, self.start[0] - cx)
            end = math.atan2(self.end[1] - cy, self.end[0] - cx)
            sweep = (end - start) % (2 * math.pi) or 2 * math.pi
            angles = [start + sweep * k / _ARC for k in range(_ARC + 1)]
            points = [(cx + r * math.cos(a), cy + r * math.sin(a)) for a in angles]
            self._points = [(cx, cy), *points, (cx, cy)] if self.sector else points
        return self._points

    def meets(self, box: Box) -> bool:
        """Tell whether a label comes too near to it."""
        left, bottom, right, top = box
        far = self.far
        left, right, bottom, top = left - far, right + far, bottom - far, top + far
        (x, y), r = self.centre, self.radius
        # Outside the circle altogether: then beside every stroke between two of its points.
        aside = left - x if x < left else x - right if x > right else 0.0
        above = bottom - y if y < bottom else y - top if y > top else 0.0
        if aside * aside + above * above > r * r + _SURE:
            return False
        # Inside it altogether: then nearer to the middle than any of those strokes.
        across, up = max(right - x, x - left), max(top - y, y - bottom)
        if across * across + up * up < _CLEAR * r * r and not self.sector:
            return False
        return _meets(self.points, (left, bottom, right, top))


Track: TypeAlias = Path | Curve
"""What a label has to keep clear of."""


def track_of(mark: Stroke | Area | Arc) -> Track:
    """Return a mark in ordinary numbers."""
    if isinstance(mark, Arc):
        ends = (near(mark.start), near(mark.end))
        return Curve(
            near(mark.centre), float(mark.radius), ends, mark.weight, lambda: mark, mark.sector
        )
    points = [near(point) for point in mark.points]
    if isinstance(mark, Area):
        points.append(points[0])
    return Path(points, mark.weight, lambda: mark)


def _meets(points: list[Near], box: Box) -> bool:
    """Tell whether a path runs through a box (Liang and Barsky's clipping, from memory).

    >>> box = (1.0, 0.0, 2.0, 1.0)
    >>> _meets([(0.0, 0.0), (2.0, 2.0)], box), _meets([(0.0, 2.0), (2.0, 2.0)], box)
    (True, False)
    """
    left, bottom, right, top = box
    ends = iter(points)
    bx, by = next(ends)
    for point in ends:
        ax, ay = bx, by
        bx, by = point
        if (
            (ax < left and bx < left)
            or (ax > right and bx > right)
            or (ay < bottom and by < bottom)
            or (ay > top and by > top)
        ):
            continue
        low, high = 0.0, 1.0
        if step := bx - ax:
            first, last = (left - ax) / step, (right - ax) / step
            if first > last:
                first, last = last, first
            if first > low:
                low = first
            if last < high:
                high = last
        if step := by - ay:
            first, last = (bottom - ay) / step, (top - ay) / step
            if first > last:
                first, last = last, first
            if first > low:
                low = first
            if last < high:
                high = last
        if low <= high:
            return True
    return False
