"""How far the marks of a drawing reach: the edges of all of them, and the room of each label."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from fractions import Fraction
from functools import lru_cache
from typing import NamedTuple, TypeAlias

from itembank.figures.drawn_marks import (
    ARROW_WIDE,
    WEIGHTS,
    Arc,
    Content,
    Exact,
    Mark,
    Stroke,
    Text,
)
from itembank.figures.label_room import room


class Box(NamedTuple):
    """A rectangle by its edges."""

    left: Fraction
    bottom: Fraction
    right: Fraction
    top: Fraction

    def meets(self, other: Box, gap: Exact = 0) -> bool:
        """Tell whether two boxes come nearer than `gap` to each other.

        >>> left, right = Box(*map(Fraction, (0, 0, 1, 1))), Box(*map(Fraction, (1, 0, 2, 1)))
        >>> left.meets(right), left.meets(right, Fraction(1, 10))
        (False, True)
        """
        return (
            self.left < other.right + gap
            and other.left < self.right + gap
            and self.bottom < other.top + gap
            and other.bottom < self.top + gap
        )


def text_box(label: Text) -> Box:
    """Return the room that a label may take.

    >>> from itembank.figures.drawn_marks import Point
    >>> text_box(Text(Point(0, 0), "8")).right
    Fraction(17, 50)
    """
    need = room(label.content, label.bold)
    x, y = Fraction(label.at.x), Fraction(label.at.y)
    left = {"left": x, "centre": x - need.width / 2, "right": x - need.width}[label.across]
    bottom = {"bottom": y, "middle": y - need.height / 2, "top": y - need.height}[label.up]
    return Box(left, bottom, left + need.width, bottom + need.height)


def edges(marks: Sequence[Mark]) -> tuple[Fraction, Fraction, Fraction, Fraction]:
    """Return how far marks reach to the left, to the bottom, to the right and to the top.

    >>> from itembank.figures.drawn_marks import Point
    >>> edges([Stroke((Point(0, 0), Point(4, 0)))])[2]
    Fraction(203, 50)
    """
    near = [_near_box(mark) for mark in marks]
    found = []
    for side, farthest in enumerate((min, min, max, max)):
        # Which marks reach farthest is told in ordinary numbers, and how far exactly.
        end = farthest(box[side] for box in near)
        found.append(
            farthest(
                _edge(mark, side)
                for mark, box in zip(marks, near, strict=True)
                if abs(box[side] - end) < _NEARLY
            )
        )
    left, bottom, right, top = found
    return left, bottom, right, top


_NEARLY = 1e-6
"""In ems: far more than the error of an ordinary number as large as a drawing."""
_NearBox: TypeAlias = tuple[float, float, float, float]


def _near_box(mark: Mark) -> _NearBox:
    """Return the box of a mark in ordinary numbers."""
    if isinstance(mark, Arc):
        edge, (x, y), r = _NEAR_WEIGHTS[mark.weight], map(float, mark.centre), float(mark.radius)
        ways = _reached(mark)
        xs = [x + r * way / 1000 for way, _ in ways]
        ys = [y + r * way / 1000 for _, way in ways]
        return min(xs) - edge, min(ys) - edge, max(xs) + edge, max(ys) + edge
    if isinstance(mark, Text):
        width, height = _near_size(mark.content, mark.bold)
        left = float(mark.at.x) - _BEFORE[mark.across] * width
        bottom = float(mark.at.y) - _BEFORE[mark.up] * height
        return left, bottom, left + width, bottom + height
    edge = _NEAR_WEIGHTS[mark.weight]
    if isinstance(mark, Stroke) and mark.arrow:
        edge *= ARROW_WIDE
    xs, ys = [float(x) for x, _ in mark.points], [float(y) for _, y in mark.points]
    return min(xs) - edge, min(ys) - edge, max(xs) + edge, max(ys) + edge


_NEAR_WEIGHTS = {weight: float(wide) for weight, wide in WEIGHTS.items()}
_BEFORE = {"left": 0, "bottom": 0, "centre": 0.5, "middle": 0.5, "right": 1, "top": 1}
"""Which part of a label's size lies before its place."""


@lru_cache(maxsize=4096)
def _near_size(content: Content, bold: bool) -> tuple[float, float]:
    need = room(content, bold)
    return float(need.width), float(need.height)


def _edge(mark: Mark, side: int) -> Fraction:
    """Return how far a mark reaches to the left, to the bottom, to the right or to the top."""
    if isinstance(mark, Text):
        return text_box(mark)[side]
    wide = WEIGHTS[mark.weight]
    if isinstance(mark, Arc):
        reached: Iterable[Exact] = _extent(mark)[side % 2]
    else:
        reached = (point[side % 2] for point in mark.points)
    if isinstance(mark, Stroke) and mark.arrow:
        wide *= ARROW_WIDE
    return Fraction(min(reached) - wide if side < 2 else max(reached) + wide)


def _extent(arc: Arc) -> tuple[list[Exact], list[Exact]]:
    """Return how far an arc goes: to its ends, and to the edges of its circle that it passes."""
    (x, y), r, ways = arc.centre, arc.radius, _reached(arc)
    return (
        [x + r * Fraction(way, 1000) for way, _ in ways],
        [y + r * Fraction(way, 1000) for _, way in ways],
    )


def _reached(arc: Arc) -> list[tuple[int, int]]:
    """Return where an arc goes from its centre, in thousandths of its radius."""
    (x, y) = arc.centre
    turns = [
        math.atan2(float(end.y - y), float(end.x - x)) / math.tau for end in (arc.start, arc.end)
    ]
    sweep = (turns[1] - turns[0]) % 1 or 1
    quarters = ((1000, 0), (0, 1000), (-1000, 0), (0, -1000))
    passed = [way for k, way in enumerate(quarters) if (k / 4 - turns[0]) % 1 <= sweep + 1e-9]
    # To the thousandth: the edges of a drawing are no measurement.
    ends = [
        (round(1000 * math.cos(turn * math.tau)), round(1000 * math.sin(turn * math.tau)))
        for turn in turns
    ]
    return [*passed, *ends, *([(0, 0)] * arc.sector)]
