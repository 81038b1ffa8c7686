"""What a formula is made of while it is set: parts within parts, and how far their ink reaches.

Lengths are in thousandths of the text's size. Within a part places count downwards, as in
MathML; how far a part reaches counts upwards from its line, as in a font.
"""

from __future__ import annotations

from typing import NamedTuple

from itembank.pages.engine.faces.maths_metrics import Shape


class Rule(NamedTuple):
    """A bar, its left end upon the point where it stands and its foot upon its line."""

    width: float
    thick: float


class Ink(NamedTuple):
    """A sign as it is drawn."""

    shape: Shape
    size: float
    character: str


class Part:
    """Something set: what it is made of, each with its place, and how far its ink reaches."""

    __slots__ = (
        "advance",
        "first",
        "high",
        "holds",
        "kind",
        "last",
        "left",
        "low",
        "right",
        "size",
    )

    def __init__(self, kind: str, size: float) -> None:
        self.kind, self.size = kind, size
        self.holds: list[tuple[float, float, Part | Ink | Rule]] = []
        self.left = self.right = self.low = self.high = self.advance = 0.0
        self.first: Shape | None = None
        self.last: Shape | None = None

    def reach(self, left: float, right: float, low: float, high: float) -> None:
        """Say how far the ink reaches; what comes next stands where it ends."""
        self.left, self.right, self.low, self.high = left, right, low, high
        self.advance = right


def last_kind(part: Part) -> str:
    """Return the kind of what ends a part, looking into a row."""
    if part.kind == "mrow" and part.holds:
        last = part.holds[-1][2]
        return last.kind if isinstance(last, Part) else part.kind
    return part.kind


def marks_of(part: Part) -> list[tuple[Ink | Rule, float, float]]:
    """Return every mark within a part, with its place from the part's own."""
    found: list[tuple[Ink | Rule, float, float]] = []
    _walk(part, 0.0, 0.0, found)
    return found


def _walk(part: Part, x: float, y: float, out: list[tuple[Ink | Rule, float, float]]) -> None:
    for dx, dy, held in part.holds:
        if isinstance(held, Part):
            _walk(held, x + dx, y + dy, out)
        else:
            out.append((held, x + dx, y + dy))
