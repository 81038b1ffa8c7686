"""Grids, line graphs and polygons measured a third time: from the drawing, by fractions alone.

The first road reads a figure's data, the second measures its drawing with sympy. Here the drawing
is measured with Python's own fractions and square roots of whole numbers, label by label, and
nothing is shared with either road. What is said of a polygon drawn to scale has to follow from
one labelled length and the corners.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise
from math import isqrt

from itembank.figures.drawing import Arc, Area, Drawing, Stroke, Text, text_box
from itembank.figures.figure import Reading, drawn, kind_of, read
from itembank.notation import tree as t
from itembank.notation.enclosing import bounds
from itembank.notation.value import exact, exact_or_none
from tests.figures.every_figure import examples
from tests.figures.held import COUNT, MEASURED, holds

Spot = tuple[Fraction, Fraction]


def spot(point: tuple[int | Fraction, int | Fraction]) -> Spot:
    return Fraction(point[0]), Fraction(point[1])


def rule(drawing: Drawing, role: str, at: int) -> tuple[Fraction, Fraction]:
    """Return what stands at place 0, and what an em is worth, from the outermost numbers."""
    marks = [mark for mark in drawing.of(role) if isinstance(mark, Text)]
    rows = sorted((Fraction(mark.at[at]), exact(mark.content)) for mark in marks)
    (low, first), (high, last) = rows[0], rows[-1]
    worth = (last - first) / (high - low)
    assert all(first + (place - low) * worth == value for place, value in rows)
    return first - low * worth, worth


def middle(mark: Text) -> Spot:
    box = text_box(mark)
    return (box.left + box.right) / 2, (box.bottom + box.top) / 2


def gap(a: Spot, b: Spot) -> Fraction:
    return (a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2


def apart(at: Spot, path: list[Spot]) -> Fraction:
    """Return the square of the least distance of a place from a row of strokes."""
    best = min(gap(at, corner) for corner in path)
    for (a, b), (c, d) in pairwise(path):
        u, v = c - a, d - b
        along = ((at[0] - a) * u + (at[1] - b) * v) / (u * u + v * v)
        if 0 < along < 1:
            best = min(best, gap(at, (a + along * u, b + along * v)))
    return best


class Plane:
    """What is drawn on a grid, in the numbers of its axes."""

    def __init__(self, drawing: Drawing) -> None:
        self.x, self.y = rule(drawing, "x number", 0), rule(drawing, "y number", 1)
        letters = {str(m.content): middle(m) for m in drawing.of("letter") if isinstance(m, Text)}
        strokes = [m for m in drawing.of("point") if isinstance(m, Stroke)]
        crosses = []
        for mark in strokes[::2]:
            (a, b), (c, d) = map(spot, mark.points)
            crosses.append(((a + c) / 2, (b + d) / 2))
        self.points: dict[str, Spot] = {}
        for cross in crosses:
            name = min(letters, key=lambda letter: gap(letters[letter], cross))
            self.points[name] = self.at(cross)
        for name in self.points:
            del letters[name]
        self.tracks: dict[str, list[tuple[str, list[Spot]]]] = {}
        marks = [m for m in drawing.marks if m.role in ("line", "segment", "shape", "path")]
        paths = [[*map(spot, m.points)] for m in marks if isinstance(m, Stroke)]
        names = dict.fromkeys(range(len(paths)), "")
        for letter, at in letters.items():
            names[min(range(len(paths)), key=lambda k: apart(at, paths[k]))] = letter
        for k, (mark, path) in enumerate(zip(marks, paths, strict=True)):
            self.tracks.setdefault(mark.role, []).append((names[k], [*map(self.at, path)]))

    def at(self, place: Spot) -> Spot:
        return self.x[0] + place[0] * self.x[1], self.y[0] + place[1] * self.y[1]


@holds(MEASURED, "coordinate grid")
def test_grids_show_what_is_read_from_them() -> None:
    seen = set()
    for figure in examples("coordinate grid", COUNT, seed=3):
        plane = Plane(drawn(figure))
        assert {name: (exact(x), exact(y)) for name, x, y in figure.points} == plane.points
        for reading in kind_of(figure).readings(figure):
            told = read(figure, reading)
            at = [plane.points[name] for name in reading.of if name in plane.points]
            match reading.name, at:
                case "coordinates", [place]:
                    assert tuple(map(exact, t.children(told))) == place
                case "midpoint", [(a, b), (c, d)]:
                    assert tuple(map(exact, t.children(told))) == ((a + c) / 2, (b + d) / 2)
                case "gradient between", [(a, b), (c, d)]:
                    assert exact(told) * (c - a) == d - b
                case "gradient", []:
                    lines = dict((*plane.tracks.get("line", []), *plane.tracks.get("segment", [])))
                    first, last = lines[reading.of[0]]
                    assert exact(told) * (last[0] - first[0]) == last[1] - first[1]
                case "crossing", []:
                    lines = dict((*plane.tracks.get("line", []), *plane.tracks.get("segment", [])))
                    x, y = map(exact, t.children(told))
                    for name in reading.of:
                        (a, b), (c, d) = lines[name]
                        assert (x - a) * (d - b) == (y - b) * (c - a)
                case _:
                    continue
            seen.add(reading.name)
        shapes = [path for _, path in plane.tracks.get("shape", [])]
        wanted = [
            [(exact(x), exact(y)) for x, y in shape.corners]
            for shape in figure.shapes
            if shape.closed
        ]
        assert [path[:-1] for path in shapes] == wanted
        seen |= {"shape"} if shapes else set()
    assert seen == {
        *("coordinates", "midpoint", "gradient between", "gradient", "crossing", "shape")
    }


@holds(MEASURED, "line graph")
def test_line_graphs_show_what_is_read_from_them() -> None:
    for figure in examples("line graph", COUNT, seed=3):
        made = drawn(figure)
        zero, worth = rule(made, "number", 1)
        joined = {
            point for run in made.of("graph") if isinstance(run, Stroke) for point in run.points
        }
        spots = {spot.centre for spot in made.of("point") if isinstance(spot, Arc)}
        assert joined <= spots
        for mark in made.of("place"):
            assert isinstance(mark, Text)
            heights = [Fraction(y) for x, y in spots if x == mark.at.x]
            assert len(heights) == (mark.content != figure.missing)
            if not heights:
                continue
            (height,) = heights
            told = read(figure, Reading("value", (str(mark.content),)))
            assert exact(told) == zero + height * worth


def root(value: Fraction) -> Fraction | None:
    top, bottom = isqrt(value.numerator), isqrt(value.denominator)
    return Fraction(top, bottom) if Fraction(top, bottom) ** 2 == value else None


@holds(MEASURED, "polygon")
def test_polygons_to_scale_show_what_is_read_from_them() -> None:
    checked = 0
    for figure in examples("polygon", COUNT, seed=3):
        if not figure.accurate or not figure.lettered:
            continue
        made = drawn(figure)
        (area,) = made.of("polygon")
        assert isinstance(area, Area)
        corners = [*map(spot, area.points)]
        names = {str(m.content): middle(m) for m in made.of("corner") if isinstance(m, Text)}
        places = {
            name: min(corners, key=lambda corner: gap(corner, at)) for name, at in names.items()
        }
        told, near = {}, []
        for reading in kind_of(figure).readings(figure):
            if reading.name == "side":
                value = read(figure, reading)
                a, b = (places[name] for name in reading.of[0])
                if exact_or_none(value) is None:  # a root, or what a sine gives
                    near.append((sum(bounds(value, 12)) / 2, gap(a, b)))
                else:
                    told[reading.of[0]] = (exact(value), gap(a, b))
        if near:
            length, square = next(iter(told.values()))
            for value, other in near:
                assert abs(float(value / length) ** 2 / float(other / square) - 1) < 0.01, figure
        if figure.angles:
            continue  # the corners are only near where a sine puts them
        # Every two sides that are told are drawn in their own ratio.
        scales = {value**2 / square for value, square in told.values()}
        assert len(scales) <= 1, figure
        checked += len(told) > 1
        if len(scales) == 1 and Reading("area") in kind_of(figure).readings(figure):
            twice = sum(
                a * d - b * c
                for (a, b), (c, d) in zip(corners, (*corners[1:], corners[0]), strict=True)
            )
            unit = exact(read(figure, Reading("area")))
            assert unit == abs(Fraction(twice)) / 2 * scales.pop()
    assert checked > COUNT // 14
