"""Places for the labels of a figure of lines: each where it touches nothing.

A label comes with the places it may stand at, the best first; it takes the first that is free.
What a place is free of is judged in ordinary numbers, with a gap much wider than their error; the
places themselves are exact.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from fractions import Fraction
from functools import lru_cache
from heapq import merge

from itembank.figures.drawing import (
    WEIGHTS,
    Arc,
    Area,
    Content,
    Exact,
    Mark,
    Point,
    Stroke,
    Text,
)
from itembank.figures.label_room import room
from itembank.notation import tree as t
from itembank.notation.line import shown_line

GAP = 0.1
"""How far a label keeps from a stroke's edge, in ems."""
APART = 0.4
"""How far side by side labels keep from each other: 91° 85° is not to be read as one number."""
_ARC = 24

Near = tuple[float, float]
Box = tuple[float, float, float, float]
"""The left, bottom, right and top edge of a label."""


def exactly(x: float, y: float) -> Point:
    """Return a place to the nearest thousandth of an em."""
    return Point(Fraction(round(x * 1000), 1000), Fraction(round(y * 1000), 1000))


def unit(a: Near, b: Near) -> Near:
    """Return the direction from a place to another, of length 1."""
    far = math.hypot(b[0] - a[0], b[1] - a[1])
    return ((b[0] - a[0]) / far, (b[1] - a[1]) / far)


@lru_cache(maxsize=4096)
def half_size(content: Content) -> Near:
    """Return half the width and half the height of a label."""
    need = room(content)
    return float(need.width) / 2, float(need.height) / 2


def reach(content: Content, way: Near) -> float:
    """Return how far a label reaches from its middle in a direction."""
    w, h = half_size(content)
    return w * abs(way[0]) + h * abs(way[1])


class Sheet:
    """Marks with labels put between them."""

    def __init__(self, marks: Iterable[Mark]) -> None:
        self.marks: list[Mark] = list(marks)
        self.homeless: list[str] = []
        self._tracks = [_Track(mark) for mark in self.marks if not isinstance(mark, Text)]
        self._boxes: list[Box] = []

    def put(self, content: Content, places: Iterable[Near], role: str) -> None:
        """Put a label with its middle at the first place where it touches nothing."""
        w, h = half_size(content)
        last: Box | None = None
        for x, y in places:
            # Numbers as exact as the places they stand for, to far less than the gap.
            x, y = round(x * 1000) / 1000, round(y * 1000) / 1000
            last = (x - w, y - h, x + w, y + h)
            if self._free(last):
                self._keep(content, last, role)
                return
        said = content if isinstance(content, str) else shown_line(content)
        self.homeless.append(said)
        if last is not None:
            self._keep(content, last, role)

    def _keep(self, content: Content, box: Box, role: str) -> None:
        left, bottom, right, top = box
        at = exactly((left + right) / 2, (bottom + top) / 2)
        self.marks.append(Text(at, content, role=role))
        self._boxes.append(box)

    def _free(self, box: Box) -> bool:
        left, bottom, right, top = box
        for a, b, c, d in self._boxes:
            if left < c + APART and a < right + APART and bottom < d + GAP and b < top + GAP:
                return False
        for track in self._tracks:
            far = track.far
            low, high, down, up = left - far, right + far, bottom - far, top + far
            # Most marks are beside the label altogether, and so are most segments of the others.
            first, least, last, most = track.edges
            if last < low or first > high or most < down or least > up:
                continue
            points = track.points()
            begin = points[0]
            for end in points[1:]:
                start, begin = begin, end
                (ax, ay), (bx, by) = start, end
                if (
                    (ax < low and bx < low)
                    or (ax > high and bx > high)
                    or (ay < down and by < down)
                    or (ay > up and by > up)
                ):
                    continue
                if crosses(start, end, (low, down, high, up)):
                    return False
        return True

    def below(self, content: Content, role: str) -> None:
        """Put a label under the middle of all there is."""
        points = [point for track in self._tracks for point in track.points()]
        xs = [x for x, _ in points]
        ys = [y for _, y in points] + [box[1] for box in self._boxes]
        _, h = half_size(content)
        self.put(content, [((min(xs) + max(xs)) / 2, min(ys) - h - 2 * GAP)], role)


class _Track:
    """A stroke, area or arc as what a label has to keep clear of.

    The points of an arc are worked out when a label comes near: most labels are near few marks.
    """

    __slots__ = ("_mark", "_points", "edges", "far")

    def __init__(self, mark: Stroke | Area | Arc) -> None:
        self._mark = mark
        self._points: list[Near] | None = None
        self.far = _FAR[mark.weight]
        if isinstance(mark, Arc):
            # The whole circle: no cosine is more than 1, so no point of the arc lies outside.
            (cx, cy), r = _near(mark.centre), float(mark.radius)
            self.edges = (cx - r, cy - r, cx + r, cy + r)
        else:
            xs, ys = zip(*self.points(), strict=True)
            self.edges = (min(xs), min(ys), max(xs), max(ys))

    def points(self) -> list[Near]:
        """Return the points that it goes through, straight from each to the next."""
        if self._points is None:
            self._points = _points(self._mark)
        return self._points


_FAR = {weight: float(wide) / 2 + GAP for weight, wide in WEIGHTS.items()}


def _points(mark: Stroke | Area | Arc) -> list[Near]:
    """Return the points of a mark, a curve as so many short strokes."""
    if isinstance(mark, Arc):
        (cx, cy), r = _near(mark.centre), float(mark.radius)
        start = math.atan2(float(mark.start.y) - cy, float(mark.start.x) - cx)
        end = math.atan2(float(mark.end.y) - cy, float(mark.end.x) - cx)
        sweep = (end - start) % (2 * math.pi) or 2 * math.pi
        angles = [start + sweep * k / _ARC for k in range(_ARC + 1)]
        points = [(cx + r * math.cos(a), cy + r * math.sin(a)) for a in angles]
        return [(cx, cy), *points, (cx, cy)] if mark.sector else points
    points = [_near(point) for point in mark.points]
    return [*points, points[0]] if isinstance(mark, Area) else points


def _near(point: tuple[Exact, Exact]) -> Near:
    return float(point[0]), float(point[1])


def crosses(a: Near, b: Near, box: Box) -> bool:
    """Tell whether a segment runs through a box (Liang and Barsky's clipping, from memory).

    >>> crosses((0, 0), (2, 2), (1, 0, 2, 1)), crosses((0, 2), (2, 2), (1, 0, 2, 1))
    (True, False)
    """
    left, bottom, right, top = box
    low, high = 0.0, 1.0
    for p, q in (
        (a[0] - b[0], a[0] - left),
        (b[0] - a[0], right - a[0]),
        (a[1] - b[1], a[1] - bottom),
        (b[1] - a[1], top - a[1]),
    ):
        if p == 0:
            if q < 0:
                return False
        elif p < 0:
            low = max(low, q / p)
        else:
            high = min(high, q / p)
    return low <= high


def between(
    content: t.Node,
    at: Near,
    first: Near,
    other: Near,
    arc: float,
    most: float,
    begun: float = 0.0,
) -> Iterator[Near]:
    """Yield places for the label of an angle, from its arc outward, near its bisector first.

    `first` and `other` are the directions of its rays, anticlockwise from the one to the other;
    `most` is how far from the vertex the middle of the label may be; a wide one may reach farther
    if it begins no farther than `begun`.
    """
    start = math.atan2(first[1], first[0])
    sweep = (math.atan2(other[1], other[0]) - start) % (2 * math.pi) or 2 * math.pi

    def along(part: float) -> Iterator[tuple[float, float, float]]:
        """Yield how bad each place in one direction is, and where it is, from the best outward."""
        turn = start + sweep * part
        way = (math.cos(turn), math.sin(turn))
        half = reach(content, way)
        least = arc + half + 2 * GAP
        # A place off the bisector has to be a good deal nearer to be taken.
        worse = 1.5 * abs(part - 0.5)
        far, steps = least, 0
        while far <= most or far - half <= begun:
            yield far + worse, at[0] + way[0] * far, at[1] + way[1] * far
            steps += 1
            far = least + 0.15 * steps

    # Worked out one by one: mostly the first is free.
    for parts in ((0.5, 0.42, 0.58, 0.34, 0.66), (0.27, 0.73, 0.2, 0.8)):
        for _, x, y in merge(*map(along, parts)):
            yield x, y


def beside(label: t.Node, a: Near, b: Near, way: Near) -> list[Near]:
    """Return places beside the middle of a segment, and a little along it."""
    far = reach(label, way) + 2 * GAP
    return [
        (
            a[0] + (b[0] - a[0]) * part + way[0] * (far + more),
            a[1] + (b[1] - a[1]) * part + way[1] * (far + more),
        )
        for more in (0, 0.2, 0.4)
        for part in (0.5, 0.44, 0.56, 0.4, 0.6)
    ]
