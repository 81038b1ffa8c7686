"""Solids: Euler's relation, the Platonic solids, graphs built from words, and planted lies."""

from __future__ import annotations

import re
from fractions import Fraction

import numpy as np
import pytest

from itembank.figures.figure import FigureError, Reading, drawn, fault, kind_of, read, words
from itembank.figures.kinds.solid.solid import Solid
from itembank.figures.kinds.solid.solid_model import model
from itembank.items.asks.of_figure import as_find, of_figure
from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.proof.measured.measure import as_measured, measured
from tests.figures.every_figure import examples
from tests.figures.held import LIED, TOLD, holds
from tests.figures.lies import changed, found_out, moved, places, without

PARTS = ("faces", "edges", "vertices")


def counts(figure: Solid, way=read) -> list[int]:
    return [int(exact(way(figure, Reading(part)))) for part in PARTS]


def test_eulers_relation_holds_for_every_solid():
    """F − E + V = 2 for solids without holes (Euler 1758, from memory)."""
    for figure in examples("solid", 80, seed=3):
        for way in (read, measured):
            faces, edges, vertices = counts(figure, way)
            assert faces - edges + vertices == 2, figure


@pytest.mark.parametrize(
    ("figure", "platonic"),
    [
        # Faces, edges and vertices as tables of the Platonic solids have them (from memory).
        (Solid("pyramid", 3), [4, 6, 4]),  # tetrahedron
        (Solid("prism", 4), [6, 12, 8]),  # cube
        (Solid("double pyramid", 4), [8, 12, 6]),  # octahedron
    ],
)
def test_three_platonic_solids(figure, platonic):
    assert counts(figure) == counts(figure, measured) == platonic


def graph(text: str) -> tuple[set[frozenset], int]:
    """Return the edges of a solid between named corners, and its number of faces, from words."""
    n = int(re.search(r"(\d) sides", text)[1])
    ring = [(k, (k + 1) % n) for k in range(n)]

    def round_of(name):
        return {frozenset(((name, a), (name, b))) for a, b in ring}

    def up(name, top):
        return {frozenset(((name, k), top)) for k in range(n)}

    def between(low, high):
        return {frozenset(((low, k), (high, k))) for k in range(n)}

    if text.startswith("A prism"):
        return round_of("low") | round_of("high") | between("low", "high"), n + 2
    if text.startswith("A pyramid has"):
        return round_of("low") | up("low", "top"), n + 1
    if text.startswith("A pyramid stands"):
        walls = round_of("low") | round_of("high") | between("low", "high")
        return walls | up("high", "top"), 1 + n + n
    assert text.startswith("Two equal pyramids")
    return round_of("mid") | up("mid", "top") | up("mid", "bottom"), n + n


@holds(TOLD, "solid")
def test_the_words_alone_tell_what_is_counted():
    for figure in examples("solid", 60, seed=8):
        edges, faces = graph(words(figure))
        corners = {corner for edge in edges for corner in edge}
        assert counts(figure) == [faces, len(edges), len(corners)]


def test_the_model_is_what_a_hull_of_its_corners_is():
    """A third engine: the faces of the hull, found by scipy, with as many sides."""
    from scipy.spatial import ConvexHull  # slow to load: every process reads this file

    for figure in examples("solid", 40, seed=5):
        solid = model(figure.shape, figure.sides, figure.height, figure.lying)
        hull = ConvexHull(np.array(solid.corners, dtype=float))
        assert len(hull.vertices) == len(solid.corners)
        planes: dict[tuple[float, ...], set[int]] = {}
        for plane, corners in zip(hull.equations, hull.simplices, strict=True):
            planes.setdefault(tuple(np.round(plane, 6)), set()).update(map(int, corners))
        sides = sorted(map(len, planes.values()))
        assert sides == sorted(map(len, solid.faces)), figure
        for sort in range(3, 9):
            assert read(figure, Reading("sided", (str(sort),))) == t.Int(sides.count(sort))


def test_no_corner_is_drawn_near_another_or_on_an_edge():
    for figure in examples("solid", 60, seed=2):
        lines = [mark.points for mark in drawn(figure).marks]
        spots = {spot for line in lines for spot in line}
        for a, b in lines:
            way = b.x - a.x, b.y - a.y
            square = way[0] ** 2 + way[1] ** 2
            for spot in spots - {a, b}:
                off = spot.x - a.x, spot.y - a.y
                along = (off[0] * way[0] + off[1] * way[1]) / square
                across = off[0] * way[1] - off[1] * way[0]
                if 0 <= along <= 1:
                    assert across**2 >= Fraction(1, 16) * square
                else:
                    assert off[0] ** 2 + off[1] ** 2 >= Fraction(1, 16)


@pytest.mark.parametrize(
    ("figure", "prompt", "value"),
    [
        (Solid("prism", 6), ("How many edges does the prism have?",), 18),
        (Solid("prism", 4), ("How many faces does the cuboid have?",), 6),
        (Solid("pyramid", 5), ("How many corners does the pentagonal pyramid have?",), 6),
        (Solid("tower", 4), ("How many vertices does the solid have?",), 9),
        (Solid("prism", 5), ("How many more edges than vertices does the solid have?",), 5),
        (
            Solid("pyramid", 4),
            ("How many of the faces of the pyramid are triangles?",),
            4,
        ),
        (
            Solid("prism", 3),
            ("How many of the faces of the solid have ", t.Int(4), " sides?"),
            3,
        ),
    ],
)
def test_ways_to_ask(figure, prompt, value):
    ask = of_figure(figure, prompt)
    assert exact(as_find(ask).target) == exact(as_measured(ask).target) == value


@pytest.mark.parametrize(
    ("figure", "prompt", "said"),
    [
        (Solid("prism", 6), "How many edges does the pyramid have?", "no pyramid"),
        (Solid("pyramid", 5), "How many edges does the cuboid have?", "no cuboid"),
        (Solid("tower", 4), "How many faces does the prism have?", "no prism"),
        (Solid("tower", 4), "How many faces does the tower have?", "no tower"),
        (Solid("prism", 5), "How many more faces than edges does the prism have?", "not more"),
        (Solid("prism", 5), "How many hidden edges does the prism have?", "understood"),
        (Solid("prism", 5), "How many faces does the prism not have?", "no prism not"),
        (
            Solid("prism", 4),
            "Which is the name of the solid: cuboid, cube or square prism?",
            "none",
        ),
        (
            Solid("prism", 5),
            "Which is the name of the solid: cuboid, hexagonal prism or tetrahedron?",
            "one of the names",
        ),
    ],
)
def test_what_it_does_not_show_is_refused(figure, prompt, said):
    with pytest.raises(FigureError, match=said):
        of_figure(figure, (prompt,))


@pytest.mark.parametrize(
    ("figure", "said"),
    [
        (Solid("prism", 2), "3 to 8 sides"),
        (Solid("prism", 10**6), "3 to 8 sides"),
        (Solid("prism", 6, 5), "30 to 100"),
        (Solid("prism", 6, 10**9), "30 to 100"),
        (Solid("pyramid", 6, 45, True), "only a prism"),
        (Solid("prism", 7, 45, True), "only a prism"),
        (Solid("prism", 5, 30), "look like one"),
    ],
)
def test_a_solid_that_cannot_be_drawn_well_is_refused(figure, said):
    assert said in fault(figure)


@pytest.mark.parametrize(
    "figure",
    [Solid("prism", 6), Solid("pyramid", 5), Solid("tower", 4), Solid("double pyramid", 3)],
)
@holds(LIED, "solid")
def test_planted_lies_are_found_out(figure):
    made = drawn(figure)
    assert not found_out(figure, made)
    for role in ("edge", "hidden edge"):
        for which in range(len(places(made, role))):
            assert found_out(figure, without(figure, role, which))
            assert found_out(figure, moved(figure, role, Fraction(1, 3), Fraction(0), which))
    # An edge too many, between two corners that have none.
    solid = model(figure.shape, figure.sides, figure.height, figure.lying)
    ends = {frozenset(mark.points) for mark in made.marks}
    spots = sorted({spot for mark in made.marks for spot in mark.points})
    pair = next((a, b) for a in spots for b in spots if a < b and frozenset((a, b)) not in ends)
    assert len(solid.edges) == len(ends)
    at = places(made, "hidden edge")[0]
    extra = made.marks[at]
    from dataclasses import replace

    false = replace(made, marks=(*made.marks, replace(extra, points=pair)))
    assert found_out(figure, false)
    assert not found_out(figure, changed(made, at, extra))


def test_names_are_read_on_both_roads():
    named = [
        ("prism", 3, "triangular prism"),
        ("prism", 4, "cuboid"),
        ("prism", 8, "octagonal prism"),
        ("pyramid", 3, "tetrahedron"),
        ("pyramid", 4, "square-based pyramid"),
        ("pyramid", 7, "heptagonal pyramid"),
    ]
    for shape, sides, name in named:
        figure = Solid(shape, sides, 50)
        asked = Reading("called", ("cuboid", "tetrahedron", name))
        assert read(figure, asked) == measured(figure, asked) == t.Label(name)
        assert asked.name in {reading.name for reading in kind_of(figure).readings(figure)}
