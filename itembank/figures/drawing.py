"""A figure's drawing: strokes, areas and labels at exact places.

Lengths are ems of the page's type, so that a label is never smaller than the words around it and
a slide, a sheet and a large-print copy show one picture. x goes right, y goes up. Every number is
whole or a fraction: nothing is placed by eye, and the second road to a key can measure it.

Each mark has a `role`, which says what it stands for ("tick", "side", "bar"), never how much it
is worth: the proof measures that.

>>> from fractions import Fraction
>>> half = Fraction(1, 2)
>>> picture = drawing([Stroke((Point(0, 0), Point(4, 0))), Text(Point(4, half), "A")])
>>> picture.left, picture.right, picture.bottom
(Fraction(-3, 50), Fraction(217, 50), Fraction(-3, 50))
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from fractions import Fraction
from functools import lru_cache
from typing import Literal, NamedTuple, TypeAlias

from itembank.data_class import dataclass
from itembank.figures.label_room import room
from itembank.notation import tree as t

Exact: TypeAlias = int | Fraction

Content: TypeAlias = str | t.Node
"""What a label says: plain text, or a piece of mathematics."""

Weight: TypeAlias = Literal["faint", "thin", "normal", "heavy"]
WEIGHTS: dict[str, Fraction] = {
    "faint": Fraction(3, 100),
    "thin": Fraction(3, 100),
    "normal": Fraction(6, 100),
    "heavy": Fraction(12, 100),
}
"""How wide each kind of stroke is, in ems: 1 to 3 points on a slide, never under half a point.

Faint ones are as wide as thin ones and paler, for the lines of a grid that other marks lie on: a
picture that is shown small has no stroke under a dot of the screen, so that by their width alone
nobody could tell them from these."""

Fill: TypeAlias = Literal["none", "paper", "shade", "dots", "cross", "bars", "ink"]
"""How an area is filled. Each is told from the others in grey: ``shade`` is stripes on a tone,
``dots`` and ``cross`` and ``bars`` are what they say, ``ink`` is full, ``paper`` the page's own
colour."""


class Point(NamedTuple):
    """A place in a drawing, in ems."""

    x: Exact
    y: Exact


@dataclass(frozen=True, slots=True)
class Stroke:
    """A line through points, straight from each to the next."""

    points: tuple[Point, ...]
    role: str = ""
    weight: Weight = "normal"
    dashed: bool = False
    arrow: Literal["", "end", "both"] = ""


@dataclass(frozen=True, slots=True)
class Area:
    """A closed shape with straight sides."""

    points: tuple[Point, ...]
    role: str = ""
    fill: Fill = "none"
    weight: Weight = "normal"
    outline: bool = True


@dataclass(frozen=True, slots=True)
class Arc:
    """Part of a circle, anticlockwise from one direction to another; all of it if they are equal.

    `start` and `end` are points in the directions from the centre where it begins and ends: how
    far away they are does not matter. With `sector` it is a slice, closed through the centre.
    """

    centre: Point
    radius: Exact
    start: Point
    end: Point
    role: str = ""
    fill: Fill = "none"
    weight: Weight = "normal"
    sector: bool = False

    @property
    def whole(self) -> bool:
        """Whether it is the whole circle."""
        return self.start == self.end


Across: TypeAlias = Literal["left", "centre", "right"]
Up: TypeAlias = Literal["bottom", "middle", "top"]


@dataclass(frozen=True, slots=True)
class Text:
    """A label; `across` and `up` say which point of its box stands `at` its place.

    A label on a stroke stands on `paper`: a patch of the page's own colour under it.
    """

    at: Point
    content: Content
    across: Across = "centre"
    up: Up = "middle"
    role: str = ""
    bold: bool = False
    paper: bool = False


Mark: TypeAlias = Stroke | Area | Arc | Text


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


@dataclass(frozen=True, slots=True)
class Drawing:
    """What is drawn, in order, and the edges of all of it."""

    marks: tuple[Mark, ...]
    left: Fraction
    bottom: Fraction
    right: Fraction
    top: Fraction

    @property
    def width(self) -> Fraction:
        """How wide it is, in ems."""
        return self.right - self.left

    @property
    def height(self) -> Fraction:
        """How high it is, in ems."""
        return self.top - self.bottom

    def of(self, role: str) -> tuple[Mark, ...]:
        """Return the marks of a role, in order."""
        return tuple(mark for mark in self.marks if mark.role == role)


def text_box(label: Text) -> Box:
    """Return the room that a label may take.

    >>> text_box(Text(Point(0, 0), "8")).right
    Fraction(17, 50)
    """
    need = room(label.content, label.bold)
    x, y = Fraction(label.at.x), Fraction(label.at.y)
    left = {"left": x, "centre": x - need.width / 2, "right": x - need.width}[label.across]
    bottom = {"bottom": y, "middle": y - need.height / 2, "top": y - need.height}[label.up]
    return Box(left, bottom, left + need.width, bottom + need.height)


def drawing(marks: Iterable[Mark]) -> Drawing:
    """Return a drawing with its edges.

    Raises
    ------
    ValueError
        If nothing is drawn.
    """
    kept = tuple(marks)
    if not kept:
        raise ValueError("a drawing needs a mark")
    near = [_near_box(mark) for mark in kept]
    edges = []
    for side, farthest in enumerate((min, min, max, max)):
        # Which marks reach farthest is told in ordinary numbers, and how far exactly.
        end = farthest(box[side] for box in near)
        edges.append(
            farthest(
                _edge(mark, side)
                for mark, box in zip(kept, near, strict=True)
                if abs(box[side] - end) < _NEARLY
            )
        )
    return Drawing(kept, *edges)


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


ARROW_LONG = 6
"""How long an arrow's head is, in widths of its stroke."""
ARROW_WIDE = 3
"""How far it reaches to each side."""


def rectangle(left: Exact, bottom: Exact, right: Exact, top: Exact) -> tuple[Point, ...]:
    """Return the corners of a rectangle, anticlockwise from the bottom left.

    >>> rectangle(0, 0, 2, 1)[2]
    Point(x=2, y=1)
    """
    return (Point(left, bottom), Point(right, bottom), Point(right, top), Point(left, top))
