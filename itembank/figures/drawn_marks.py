"""What a drawing is made of: strokes, areas, arcs and labels, each with what it stands for.

Lengths are ems, x goes right and y goes up; :mod:`itembank.figures.drawing` says why.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Literal, NamedTuple, TypeAlias

from itembank.data_class import dataclass
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

ARROW_LONG = 6
"""How long an arrow's head is, in widths of its stroke."""
ARROW_WIDE = 3
"""How far it reaches to each side."""

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


def rectangle(left: Exact, bottom: Exact, right: Exact, top: Exact) -> tuple[Point, ...]:
    """Return the corners of a rectangle, anticlockwise from the bottom left.

    >>> rectangle(0, 0, 2, 1)[2]
    Point(x=2, y=1)
    """
    return (Point(left, bottom), Point(right, bottom), Point(right, top), Point(left, top))
