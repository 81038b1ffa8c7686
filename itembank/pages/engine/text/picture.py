"""A figure on a page: its drawing, at the size of the words around it, in one tagged element.

The element holds the figure's words as its alternative text. Lengths of a drawing are ems, so its
labels are as large as the text of the page.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache

from itembank.figures.drawing import WEIGHTS, Arc, Area, Drawing, Mark, Stroke, Text, text_box
from itembank.figures.figure import drawn
from itembank.figures.figure_data import from_data
from itembank.figures.label_room import room
from itembank.figures.svg import arc_ends, arrow_heads
from itembank.notation.mathml import mathml
from itembank.packs.data.pack_item import Picture
from itembank.pages.engine.faces.fonts import face
from itembank.pages.engine.maths.formula import formula
from itembank.pages.engine.page.page import Page
from itembank.pages.engine.page.surface import Point, pt
from itembank.pages.engine.page.theme import GRID, INK, WHITE, tint
from itembank.pages.engine.text.flow import as_text, written

MARGIN = 0.1
"""Room around a drawing, in ems."""

TONE = tint(INK, 0.18)
"""The tone under the stripes of what is shaded: 3 : 1 against its outline on every paper."""

STRIPES = 0.22
"""From one stripe of a hatching to the next, in ems."""


_KEPT: dict[str, Drawing] = {}


def drawing_of(picture: Picture) -> Drawing:
    """Return what is drawn of a figure in a pack; each is worked out once."""
    key = written(picture)
    found = _KEPT.get(key)
    if found is None:
        if len(_KEPT) > 512:
            _KEPT.clear()
        found = _KEPT[key] = drawn(from_data(picture.data))
    return found


def edges(picture: Picture, other: Picture | None = None) -> Drawing:
    """Return a figure's drawing, with edges that hold another figure's drawing too."""
    made = drawing_of(picture)
    if other is None:
        return made
    too = drawing_of(other)
    return Drawing(
        made.marks,
        min(made.left, too.left),
        min(made.bottom, too.bottom),
        max(made.right, too.right),
        max(made.top, too.top),
    )


def draw_picture(
    page: Page,
    picture: Picture,
    x: float,
    y: float,
    size: float,
    other: Picture | None = None,
    beside: float = 0.0,
) -> None:
    """Draw a figure with its bottom left corner at (x, y), its type at `size` points.

    With an `other` figure it stands where both have room: what they share is at one place. Where
    words of a larger type stand `beside` it, its lines are as thick as that type asks for.
    """
    draw_marks(page, edges(picture, other), picture.words, x, y, size, max(size, beside))


def draw_marks(
    page: Page, made: Drawing, words: str, x: float, y: float, size: float, lines: float = 0.0
) -> None:
    """Draw any drawing with its bottom left corner at (x, y); `words` stand for it.

    Its lines are as thick as beside type of `lines` points: of its own size where none is given.
    """
    width = (float(made.width) + 2 * MARGIN) * size
    height = (float(made.height) + 2 * MARGIN) * size
    with page.figure(words, (x, y, x + width, y + height)):
        pen = _Pen(page, made, x + MARGIN * size, y + MARGIN * size, size, lines)
        for mark in made.marks:
            pen.mark(mark)
        pen.finish_line()


class _Pen:
    """Draws marks of one drawing at its place on a page."""

    def __init__(
        self, page: Page, made: Drawing, x: float, y: float, size: float, lines: float = 0.0
    ) -> None:
        self.page, self.size, self.lines = page, size, lines or size
        self.x0, self.y0 = x - float(made.left) * size, y - float(made.bottom) * size
        # Lines alike that follow each other are one path: a grid is one thing, and a small one.
        self._begun: list[str] = []
        self._alike = (0.0, "", INK)

    def at(self, point: tuple[object, object]) -> Point:
        x, y = point
        return self.x0 + float(x) * self.size, self.y0 + float(y) * self.size  # type: ignore[arg-type]

    def mark(self, mark: Mark) -> None:
        if isinstance(mark, Text):
            self.finish_line()
            self.text(mark)
            return
        width = float(WEIGHTS[mark.weight]) * self.lines
        if isinstance(mark, Stroke):
            self.stroke(mark, width)
            return
        self.finish_line()
        if isinstance(mark, Area):
            points = [self.at(point) for point in mark.points]
            path = _polygon(points)
            box = _box(points)
            self.filled(path, box, mark.fill)
            if mark.outline:
                self.page.path(path, stroke=_colour(mark), line=width)
        else:
            self.arc(mark, width)

    def stroke(self, mark: Stroke, width: float) -> None:
        points = [self.at(point) for point in mark.points]
        path = f"{_at(points[0])} m " + " ".join(f"{_at(point)} l" for point in points[1:])
        dash = f"{pt(4 * width)} {pt(3 * width)}" if mark.dashed else ""
        alike = (width, dash, _colour(mark))
        if self._alike != alike:
            self.finish_line()
            self._alike = alike
        self._begun.append(path)
        for head in arrow_heads(mark):
            self.finish_line()
            self.page.path(_polygon([self.at(point) for point in head]), fill=INK)

    def finish_line(self) -> None:
        """Draw the lines that were begun."""
        if self._begun:
            width, dash, colour = self._alike
            self.page.path(" ".join(self._begun), stroke=colour, line=width, dash=dash)
            self._begun = []

    def arc(self, mark: Arc, width: float) -> None:
        centre = self.at(mark.centre)
        radius = float(mark.radius) * self.size
        start, _, sweep = arc_ends(mark)
        first = math.atan2(float(start.y - mark.centre.y), float(start.x - mark.centre.x))
        curve = _curve(centre, radius, first, math.radians(sweep))
        if mark.whole:
            path = f"{curve} h"
        elif mark.sector:
            begin, _, rest = curve.partition(" m ")
            path = f"{_at(centre)} m {begin} l {rest} h"
        else:
            path = curve
        box = (centre[0] - radius, centre[1] - radius, centre[0] + radius, centre[1] + radius)
        self.filled(path, box, mark.fill)
        self.page.path(path, stroke=_colour(mark), line=width)

    def filled(self, path: str, box: tuple[float, float, float, float], fill: str) -> None:
        if fill == "none":
            return
        if fill in ("paper", "ink"):
            self.page.path(path, fill=WHITE if fill == "paper" else INK)
            return
        if fill == "shade":
            self.page.path(path, fill=TONE)
        self.page.hatched(path, _hatching(fill, box, self.size), INK, 0.045 * self.size)

    def text(self, label: Text) -> None:
        box = text_box(label)
        content = label.content
        text = content if isinstance(content, str) else as_text(mathml(content))
        weight = face(label.bold)
        layout = None
        if text and all(map(weight.has, text)):
            width = weight.width(text)
        else:
            layout = formula(mathml(content) if not isinstance(content, str) else _words(content))
            width = layout.width
        across = {"left": 0.0, "centre": 0.5, "right": 1.0}[label.across]
        left = float(box.left) + (float(box.right - box.left) - width) * across
        down = room(content, label.bold).down
        x, y = self.at((left, float(box.bottom + down)))
        if label.paper:
            low, high = self.at((left, box.bottom)), self.at((left + width, box.top))
            patch = [low, (high[0], low[1]), high, (low[0], high[1])]
            self.page.path(_polygon(patch), fill=WHITE)
        if layout is None:
            self.page.text(x, y, text, self.size, bold=label.bold)
        else:
            self.page.label_formula(x, y, layout, self.size)


def _colour(mark: Stroke | Area | Arc) -> str:
    return GRID if mark.weight == "faint" else INK


def _words(text: str) -> str:
    from html import escape

    return f"<math><mtext>{escape(text)}</mtext></math>"


def _at(point: Point) -> str:
    return f"{pt(point[0])} {pt(point[1])}"


def _polygon(points: Sequence[Point]) -> str:
    return f"{_at(points[0])} m " + " ".join(f"{_at(point)} l" for point in points[1:]) + " h"


def _box(points: Sequence[Point]) -> tuple[float, float, float, float]:
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return min(xs), min(ys), max(xs), max(ys)


def _curve(centre: Point, radius: float, first: float, sweep: float) -> str:
    """Return part of a circle as cubics, at most an eighth of a turn each.

    The handles are 4/3·tan(a/4) of the radius long, as is usual for a circle (from memory).
    """
    pieces = max(1, math.ceil(sweep / (math.pi / 4)))
    step = sweep / pieces
    k = 4 / 3 * math.tan(step / 4) * radius
    x, y = centre
    out = [f"{pt(x + radius * math.cos(first))} {pt(y + radius * math.sin(first))} m"]
    for number in range(pieces):
        a, b = first + number * step, first + (number + 1) * step
        ax, ay = x + radius * math.cos(a), y + radius * math.sin(a)
        bx, by = x + radius * math.cos(b), y + radius * math.sin(b)
        out.append(
            f"{pt(ax - k * math.sin(a))} {pt(ay + k * math.cos(a))} "
            f"{pt(bx + k * math.sin(b))} {pt(by - k * math.cos(b))} {pt(bx)} {pt(by)} c"
        )
    return " ".join(out)


@lru_cache(maxsize=256)
def _hatching(fill: str, box: tuple[float, float, float, float], size: float) -> str:
    """Return the lines of a hatching over a box: slanted, crossed, level, or short for dots."""
    left, bottom, right, top = box
    step = STRIPES * size
    lines = []
    if fill in ("shade", "cross"):
        # Each begins at a multiple of the step, so that neighbours' stripes meet.
        first = math.floor((left - top) / step)
        last = math.ceil((right - bottom) / step)
        for number in range(first, last + 1):
            # The line x - y = number * step.
            gap = number * step
            lines.append(f"{pt(bottom + gap)} {pt(bottom)} m {pt(top + gap)} {pt(top)} l")
    if fill == "cross":
        first = math.floor((left + bottom) / step)
        last = math.ceil((right + top) / step)
        for number in range(first, last + 1):
            total = number * step
            lines.append(f"{pt(total - bottom)} {pt(bottom)} m {pt(total - top)} {pt(top)} l")
    if fill == "bars":
        for number in range(math.ceil(bottom / step), math.floor(top / step) + 1):
            lines.append(f"{pt(left)} {pt(number * step)} m {pt(right)} {pt(number * step)} l")
    if fill == "dots":
        dot = 0.1 * size
        for row in range(math.ceil(bottom / step), math.floor(top / step) + 1):
            for column in range(math.ceil(left / step), math.floor(right / step) + 1):
                x, y = column * step, row * step
                lines.append(f"{pt(x)} {pt(y)} m {pt(x + dot)} {pt(y)} l")
    return " ".join(lines)
