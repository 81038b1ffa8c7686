"""The surface of a page: what is drawn is tagged as it is drawn, and plain shapes on it.

A mark stands in an element of the structure tree, or in an artifact where it is decoration;
anything else is refused. Coordinates are points from the bottom left corner; colours are
``#RRGGBB``.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import AbstractContextManager, contextmanager
from functools import lru_cache
from typing import Protocol

from itembank.pages.engine.page.theme import INK
from itembank.pages.engine.pdf.tagging import Element, text_string

Point = tuple[float, float]


class UntaggedMarkError(RuntimeError):
    """Something was drawn outside every element and artifact."""


@lru_cache(maxsize=8192)
def pt(value: float) -> str:
    """Return a number of points as PDF syntax, to a hundredth.

    >>> pt(2.50), pt(-0.001)
    ('2.5', '0')
    """
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


@lru_cache(maxsize=64)
def _rgb(colour: str) -> str:
    return " ".join(pt(int(colour[i : i + 2], 16) / 255) for i in (1, 3, 5))


class Tree(Protocol):
    """What a surface has to know of its document: where in the structure tree it draws."""

    current: Element

    def tag(
        self, kind: str, alt: str = "", attributes: str = ""
    ) -> AbstractContextManager[Element]:
        """Put what is drawn inside into a new element."""


class Surface:
    """A page with no text on it yet: marked content and shapes."""

    def __init__(self, document: Tree, number: int) -> None:
        self._tree = document
        self.number = number
        self.ops: list[str] = []
        self.owners: list[Element] = []
        self._open: Element | str | None = None
        self._artifact = False
        self._fill = ""

    # Marked content

    def mark(self) -> None:
        """Open marked content for the current element, unless it is open already."""
        if self._artifact:
            if self._open != "artifact":
                self.close()
                self.ops.append("/Artifact BMC")
                self._open = "artifact"
            return
        element = self._tree.current
        # What is open already goes on: each stretch costs a number, and two lines of the file.
        if element is self._open:
            return
        self.close()
        # The root holds elements only. A mark in it would belong to nothing that is read out.
        if element.parent is None:
            raise UntaggedMarkError("a mark must stand in a tag or in an artifact")
        if element.page is None:
            element.page = self.number
        mcid = len(self.owners)
        # Once for all its pieces, or a formula over two lines would be copied twice.
        first = not element.children
        actual = f" /ActualText {text_string(element.actual)}" if element.actual and first else ""
        kind = element.kind if element.kind != "Formula" else "Span"
        self.owners.append(element)
        element.children.append((self.number, mcid))
        self.ops.append(f"/{kind} <</MCID {mcid}{actual}>> BDC")
        self._open = element

    def close(self) -> None:
        """Close the marked content that is open, if any."""
        if self._open is not None:
            self.ops.append("EMC")
            self._open = None

    @contextmanager
    def artifact(self) -> Iterator[None]:
        """Draw decoration: nothing inside is read out."""
        outer, self._artifact = self._artifact, True
        try:
            yield
        finally:
            self._artifact = outer

    @contextmanager
    def figure(self, alt: str, box: tuple[float, float, float, float]) -> Iterator[None]:
        """Draw a picture that means something, with its alternative text and its box."""
        with self._tree.tag("Figure", alt=alt) as element:
            element.box = box
            yield

    # Shapes

    def colour(self, fill: str) -> None:
        """Fill what is drawn next with a colour."""
        if fill != self._fill:
            self.ops.append(f"{_rgb(fill)} rg")
            self._fill = fill

    def _shape(self, path: str, fill: str | None, stroke: str | None, width: float) -> None:
        self.mark()
        if fill:
            self.colour(fill)
        if stroke:
            self.ops.append(f"{_rgb(stroke)} RG {pt(width)} w")
        self.ops.append(f"{path} {'B' if fill and stroke else 'f' if fill else 'S'}")

    def rect(
        self,
        x: float,
        y: float,
        width: float,
        height: float,
        *,
        fill: str | None = None,
        stroke: str | None = None,
        line: float = 1.0,
        radius: float = 0.0,
    ) -> None:
        """Draw a rectangle from its bottom left corner, with rounded corners if asked."""
        if not radius:
            self._shape(f"{pt(x)} {pt(y)} {pt(width)} {pt(height)} re", fill, stroke, line)
            return
        r, k = radius, radius * 0.4477  # 1 - 4/3·tan(π/8): the cubic nearest to a quarter circle
        right, top = x + width, y + height
        path = (
            f"{pt(x + r)} {pt(y)} m {pt(right - r)} {pt(y)} l "
            f"{pt(right - k)} {pt(y)} {pt(right)} {pt(y + k)} {pt(right)} {pt(y + r)} c "
            f"{pt(right)} {pt(top - r)} l "
            f"{pt(right)} {pt(top - k)} {pt(right - k)} {pt(top)} {pt(right - r)} {pt(top)} c "
            f"{pt(x + r)} {pt(top)} l "
            f"{pt(x + k)} {pt(top)} {pt(x)} {pt(top - k)} {pt(x)} {pt(top - r)} c "
            f"{pt(x)} {pt(y + r)} l "
            f"{pt(x)} {pt(y + k)} {pt(x + k)} {pt(y)} {pt(x + r)} {pt(y)} c h"
        )
        self._shape(path, fill, stroke, line)

    def polygon(
        self,
        points: Sequence[Point],
        *,
        fill: str | None = None,
        stroke: str | None = None,
        line: float = 1.0,
    ) -> None:
        """Draw a closed shape with round joins."""
        first, *rest = points
        path = f"1 j {pt(first[0])} {pt(first[1])} m "
        path += " ".join(f"{pt(x)} {pt(y)} l" for x, y in rest)
        self._shape(path + " h", fill, stroke, line)

    def line(
        self, start: Point, end: Point, *, colour: str = INK, width: float = 1.0, dash: str = ""
    ) -> None:
        """Draw a straight line; `dash` is a PDF dash array such as ``4 3``."""
        path = f"{pt(start[0])} {pt(start[1])} m {pt(end[0])} {pt(end[1])} l"
        if dash:
            self.mark()
            self.ops.append(f"[{dash}] 0 d")
        self._shape(path, None, colour, width)
        # A dash holds for all that is drawn after it.
        if dash:
            self.ops.append("[] 0 d")

    def path(
        self,
        path: str,
        *,
        fill: str | None = None,
        stroke: str | None = None,
        line: float = 1.0,
        dash: str = "",
    ) -> None:
        """Draw a path given as PDF operators, with round joins and ends."""
        if dash:
            self.mark()
            self.ops.append(f"[{dash}] 0 d")
        self._shape(f"1 j 1 J {path}" if stroke else path, fill, stroke, line)
        if dash:
            self.ops.append("[] 0 d")

    def hatched(self, path: str, lines: str, colour: str, width: float) -> None:
        """Draw lines where they lie inside a closed path."""
        if not lines:
            return
        self.mark()
        self.ops.append(f"q {path} W n {_rgb(colour)} RG {pt(width)} w {lines} S Q")
