"""Shaded shapes, patterns, nets and scatter graphs: their words alone give every reading.

The words are read by patterns of this file. What they come to is worked out in other ways than
the figures do it: symmetry by trying every mirror, a net of a cube by rolling a die over it, a
scatter graph by counting.
"""

from __future__ import annotations

import re
from fractions import Fraction
from statistics import covariance

import pytest

from itembank.figures.figure import Reading, kind_of, read, words
from itembank.notation.line import line
from itembank.notation.value import exact
from tests.figures.every_figure import examples
from tests.figures.held import TOLD, holds

Cell = tuple[int, int]


@holds(TOLD, "shaded shape")
def test_the_parts_of_a_shape_are_told() -> None:
    for figure in examples("shaded shape", 60, seed=9):
        text = words(figure)
        wholes = re.match(r"There are (\d) ", text)
        count = int(wholes[1]) if wholes else 1
        cut = re.search(r"divided into (?:(\d+) rows of )?(\d+) equal parts\.", text)
        dark = re.search(r"\. (None|\d+) of the parts (?:is|are) shaded\.$", text)
        assert cut is not None
        assert dark is not None
        each = int(cut[1] or 1) * int(cut[2])
        shaded = 0 if dark[1] == "None" else int(dark[1])
        assert exact(read(figure, Reading("parts"))) == each * count
        assert exact(read(figure, Reading("shaded"))) == Fraction(shaded, each)
        assert exact(read(figure, Reading("unshaded"))) == count - Fraction(shaded, each)


SIDES = {
    **{"equilateral triangle": 3, "square": 4, "pentagon": 5, "hexagon": 6},
    **{"heptagon": 7, "octagon": 8, "nonagon": 9, "decagon": 10},
}


@holds(TOLD, "cut polygon")
def test_the_triangles_of_a_polygon_are_told() -> None:
    tried = 0
    for figure in examples("cut polygon", 80, seed=9):
        text = words(figure)
        name = re.match(r"An? (?:regular )?(.+?) is (?:cut|drawn)", text)
        assert name is not None
        sides = SIDES[name[1]]
        numbers = re.search(r"numbers? ([\d, and]+)\.$", text)
        dark = {int(n) - 1 for n in re.findall(r"\d+", numbers[1])} if numbers else set()
        turns = [k for k in range(sides) if {(n + k) % sides for n in dark} == dark]
        # A mirror through the middle takes triangle n to another; k says which mirror.
        mirrors = [k for k in range(sides) if {(k - n) % sides for n in dark} == dark]
        for reading in kind_of(figure).readings(figure):
            wanted = {"lines of symmetry": len(mirrors), "order of rotation": len(turns)}
            assert exact(read(figure, reading)) == wanted[reading.name], text
            tried += 1
    assert tried > 60


def _symmetry(rows: int, columns: int, dark: set[Cell]) -> tuple[int, int]:
    """Return how many mirrors and how many turns of the rectangle leave the pattern as it is."""
    down, over = rows - 1, columns - 1
    mirrors = [lambda r, c: (down - r, c), lambda r, c: (r, over - c)]
    turns = [lambda r, c: (r, c), lambda r, c: (down - r, over - c)]
    if rows == columns:
        mirrors += [lambda r, c: (c, r), lambda r, c: (down - c, down - r)]
        turns += [lambda r, c: (c, down - r), lambda r, c: (down - c, r)]
    kept = [
        [way for way in ways if {way(*cell) for cell in dark} == dark] for ways in (mirrors, turns)
    ]
    return len(kept[0]), len(kept[1])


@holds(TOLD, "shaded squares")
def test_the_squares_of_a_pattern_are_told() -> None:
    asked = set()
    for figure in examples("shaded squares", 120, seed=9):
        text = words(figure)
        size = re.match(r"A pattern has (\d+) rows of (\d+) squares\.", text)
        assert size is not None
        rows, columns = int(size[1]), int(size[2])
        dark: set[Cell] = set()
        for row, told in re.findall(r"In row (\d+) (.+?)\.", text):
            numbers = map(int, re.findall(r"\d+", told))
            places = range(1, columns + 1) if told == "all squares are shaded" else numbers
            dark |= {(int(row) - 1, place - 1) for place in places}
        letters = {
            name: (int(row) - 1, int(column) - 1)
            for name, column, row in re.findall(r"(\w) is square (\d+) of row (\d+)\.", text)
        }
        for reading in kind_of(figure).readings(figure):
            asked.add(reading.name)
            found = line(read(figure, reading)).strip('"')
            if reading.name in ("lines of symmetry", "order of rotation"):
                which = reading.name == "order of rotation"
                assert int(found) == _symmetry(rows, columns, dark)[which], text
                continue
            which = reading.name == "square for order"
            fitting = [
                name
                for name, cell in letters.items()
                if _symmetry(rows, columns, dark | {cell})[which] == int(reading.of[0])
            ]
            assert [found] == fitting, text
    assert {"lines of symmetry", "order of rotation", "square for lines"} <= asked


def _rolled(cells: list[Cell]) -> dict[Cell, int]:
    """Return which face of a die lies on each square, rolled over them edge by edge."""
    start = cells[0]
    found = {start: 1}
    # Bottom, north, east; the opposite of face n is 7 - n.
    left = [(start, (1, 2, 3))]
    while left:
        (x, y), (bottom, north, east) = left.pop()
        for cell, die in (
            ((x + 1, y), (east, north, 7 - bottom)),
            ((x - 1, y), (7 - east, north, bottom)),
            ((x, y + 1), (north, 7 - bottom, east)),
            ((x, y - 1), (7 - north, bottom, east)),
        ):
            if cell in cells and cell not in found:
                found[cell] = die[0]
                left.append((cell, die))
    return found


@holds(TOLD, "net")
def test_the_faces_of_a_net_are_told() -> None:
    tried = dict.fromkeys(("opposite", "net of a cube", "volume"), 0)
    for figure in examples("net", 150, seed=9):
        text = words(figure)
        pieces: dict[str, list[tuple[str, Cell]]] = {}
        sizes: list[Cell] = []
        name = ""
        for sentence in text.split(". "):
            if made := re.match(r"(?:Shape (\w)|A net) is made of", sentence):
                name = made[1] or ""
                pieces[name] = []
            elif square := re.match(r"(\w)\b.* is in column (\d+) .*row (\d+)", sentence):
                pieces[name].append((square[1], (int(square[2]), int(square[3]))))
            elif face := re.match(r"A rectangle is (\d+) squares? wide and (\d+) squ", sentence):
                sizes.append((int(face[1]), int(face[2])))
        for reading in kind_of(figure).readings(figure):
            value = line(read(figure, reading)).strip('"')
            if reading.name == "opposite":
                on = _rolled([cell for _, cell in pieces[""]])
                at = dict(pieces[""])
                assert on[at[value]] == 7 - on[at[reading.of[0]]], text
            elif reading.name == "net of a cube":
                folding = [
                    letter
                    for letter, squares in pieces.items()
                    if len({*_rolled([cell for _, cell in squares]).values()}) == 6
                ]
                assert folding == [value], text
            else:
                amount = int(value.split()[0])
                faces = sizes or [(1, 1)] * 6
                areas = [w * h for w, h in faces]
                product = 1
                for area in areas:
                    product *= area
                # Each length stands in four of the six areas.
                wanted = {
                    "volume": amount**4 == product,
                    "surface area": amount == sum(areas),
                    "longest edge": amount == max(max(face) for face in faces),
                }
                assert wanted[reading.name], text
            if reading.name in tried:
                tried[reading.name] += 1
    assert min(tried.values()) > 5, tried


@holds(TOLD, "scatter graph")
def test_the_points_of_a_scatter_graph_are_told() -> None:
    asked = set()
    for figure in examples("scatter graph", 120, seed=9):
        text = words(figure)
        square = re.search(r"A square is (\d+) wide and (\d+) high\.", text)
        assert square is not None
        wide, high = int(square[1]), int(square[2])

        def placed(told: str, size: Cell = (wide, high)) -> list[tuple[Fraction, Fraction]]:
            pairs = re.findall(r"([\d.]+) along and ([\d.]+) up", told)
            return [(Fraction(x) * size[0], Fraction(y) * size[1]) for x, y in pairs]

        points = placed(text.split("Its points, in squares:")[1].split(" A line of")[0])
        ends = placed(text.split("A line of best fit goes from")[1]) if "best fit" in text else []
        gaps = [_over(ends, at) for at in points] if ends else []
        for reading in kind_of(figure).readings(figure):
            asked.add(reading.name)
            found = line(read(figure, reading)).strip('"')
            if reading.name == "correlation":
                rises = covariance([float(x) for x, _ in points], [float(y) for _, y in points])
                assert found == ("positive" if rises > 0 else "negative"), text
            elif reading.name == "outlier":
                far = max(range(len(points)), key=lambda k: abs(gaps[k]))
                x, y = (Fraction(number) for number in found.strip("()").split(", "))
                assert (x, y) == points[far], text
            elif reading.name == "estimate":
                axis, value = reading.of
                k = "xy".index(axis)
                (a, b), (c, d) = (end[:: -1 if k else 1] for end in ends)
                # To the nearest half of a square, as a reader sees it.
                half = Fraction((wide, high)[1 - k], 2)
                there = b + (Fraction(value) - a) * (d - b) / (c - a)
                assert abs(Fraction(found) - there) <= half / 2, text
            else:
                assert Fraction(found) == _counted(reading, points, gaps), text
    assert {"count", "correlation", "outlier", "estimate", "above the line", "value"} <= asked


def _over(ends: list[tuple[Fraction, Fraction]], at: tuple[Fraction, Fraction]) -> Fraction:
    """Return how far a point stands over the line through two ends, up the page."""
    (a, b), (c, d) = ends
    return at[1] - b - (at[0] - a) * (d - b) / (c - a)


def _counted(
    reading: Reading, points: list[tuple[Fraction, Fraction]], gaps: list[Fraction]
) -> Fraction:
    if reading.name == "count":
        return Fraction(len(points))
    if reading.name in ("above the line", "below the line"):
        sign = 1 if reading.name[0] == "a" else -1
        return Fraction(sum(sign * gap > 0 for gap in gaps))
    axis, value = reading.of
    k = "xy".index(axis)
    if reading.name in ("more", "less"):
        sign = 1 if reading.name == "more" else -1
        return Fraction(sum(sign * (point[k] - Fraction(value)) > 0 for point in points))
    (found,) = [point[1 - k] for point in points if point[k] == Fraction(value)]
    return found


@pytest.mark.parametrize(
    ("cells", "cube"),
    [
        ([(1, 0), (0, 1), (1, 1), (2, 1), (3, 1), (1, 2)], True),
        ([(0, 0), (1, 0), (2, 0), (0, 1), (1, 1), (2, 1)], False),
    ],
)
def test_a_die_that_is_rolled_tells_a_net(cells: list[Cell], cube: bool) -> None:
    assert (len({*_rolled(cells).values()}) == 6) is cube
