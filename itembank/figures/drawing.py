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

from collections.abc import Iterable
from fractions import Fraction

from itembank.data_class import dataclass
from itembank.figures.drawn_marks import (
    ARROW_LONG,
    ARROW_WIDE,
    WEIGHTS,
    Across,
    Arc,
    Area,
    Content,
    Exact,
    Fill,
    Mark,
    Point,
    Stroke,
    Text,
    Up,
    Weight,
    rectangle,
)
from itembank.figures.mark_edges import Box, edges, text_box

__all__ = [
    "ARROW_LONG",
    "ARROW_WIDE",
    "WEIGHTS",
    "Across",
    "Arc",
    "Area",
    "Box",
    "Content",
    "Drawing",
    "Exact",
    "Fill",
    "Mark",
    "Point",
    "Stroke",
    "Text",
    "Up",
    "Weight",
    "drawing",
    "rectangle",
    "text_box",
]
"""A figure draws with these: marks, and how far they reach, stand in files of their own."""


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
    return Drawing(kept, *edges(kept))
