"""Points, lines and transformations on grids against values that textbooks give."""

from __future__ import annotations

import pytest

from itembank.figures.figure import Reading, read
from itembank.figures.kinds.grid.coordinate_grid import CoordinateGrid, GridLine, GridShape
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.proof.measured.measure import measured


def grid(points=(), lines=(), shapes=()):
    placed = tuple((name, t.num(x), t.num(y)) for name, x, y in points)
    return CoordinateGrid(-12, 12, -9, 9, points=placed, lines=tuple(lines), shapes=tuple(shapes))


def by_both_roads(figure, reading):
    told = line(read(figure, reading))
    found = measured(figure, reading)
    if not isinstance(found, t.Relation):
        assert line(found) == told
    return told


@pytest.mark.parametrize(
    ("ends", "middle"),
    [
        # From OpenStax, Intermediate Algebra, section on distance and midpoint formulas, as
        # remembered.
        pytest.param(((-5, -4), (7, 2)), "(1, -1)", id="OpenStax midpoint of (-5, -4), (7, 2)"),
        pytest.param(((-2, -6), (6, -4)), "(2, -5)", id="OpenStax midpoint of (-2, -6), (6, -4)"),
    ],
)
def test_published_midpoints(ends, middle):
    (a, b), (c, d) = ends
    figure = grid((("A", a, b), ("B", c, d)))
    assert by_both_roads(figure, Reading("midpoint", ("A", "B"))) == middle


@pytest.mark.parametrize(
    ("ends", "equation"),
    [
        # From OpenStax, Elementary Algebra, section on finding the equation of a line, as
        # remembered: through (5, 4) and (3, 6), and through (0, -4) with a gradient of 2/5 (that is
        # through (5, -2) too).
        pytest.param(((5, 4), (3, 6)), "y = -x + 9", id="OpenStax through (5, 4), (3, 6)"),
        pytest.param(((0, -4), (5, -2)), "y = (2/5)x - 4", id="OpenStax 2/5 and -4"),
    ],
)
def test_published_equations_of_lines(ends, equation):
    (a, b), (c, d) = ends
    drawn = GridLine((t.num(a), t.num(b)), (t.num(c), t.num(d)))
    assert by_both_roads(grid(lines=(drawn,)), Reading("equation", ("",))) == equation


@pytest.mark.parametrize(
    ("move", "image"),
    [
        # The rules of school textbooks for (x, y), common practice, no source: (x, -y), (-x, y),
        # (y, x); anticlockwise by 90, 180 and 270 degrees (-y, x), (-x, -y), (y, -x).
        ("a reflection in the x-axis", "(5, -2)"),
        ("a reflection in the y-axis", "(-5, 2)"),
        ("a reflection in the line y = x", "(2, 5)"),
        ("a rotation of 90° anticlockwise about the origin", "(-2, 5)"),
        ("a rotation of 180° about the origin", "(-5, -2)"),
        ("a rotation of 270° anticlockwise about the origin", "(2, -5)"),
        ("a rotation of 90° clockwise about the origin", "(2, -5)"),
        ("a reflection in the line x = 1", "(-3, 2)"),
        ("an enlargement by scale factor 2, centre (1, 1)", "(9, 3)"),
    ],
)
def test_rules_of_transformations(move, image):
    assert by_both_roads(grid((("A", 5, 2),)), Reading("image", ("A", move))) == image


def test_two_reflections_in_crossing_lines_are_a_half_turn():
    """Two mirrors at a right angle turn by half a turn (Euclid's plane, common knowledge)."""
    figure = grid((("A", 5, 2),))
    mirrors = ("a reflection in the x-axis", "a reflection in the y-axis")
    turned = ("a rotation of 180° about the origin",)
    both = [by_both_roads(figure, Reading("image", ("A", *m))) for m in (mirrors, turned)]
    assert both[0] == both[1]


def test_a_shape_that_could_be_turned_in_several_ways_is_not_asked_about():
    square = ((1, 1), (3, 1), (3, 3), (1, 3))
    moved = tuple((-x, y) for x, y in square)
    shapes = [
        GridShape(tuple((t.num(x), t.num(y)) for x, y in corners), name)
        for corners, name in ((square, "P"), (moved, "Q"))
    ]
    figure = grid(shapes=shapes)
    with pytest.raises(t.NotationError):
        read(figure, Reading("centre of rotation", ("P", "Q")))


def journey(*corners, time="hours"):
    steps = (1, 20) if time == "hours" else (5, 2)
    shape = GridShape(tuple((t.Int(x), t.Int(y)) for x, y in corners), closed=False)
    return CoordinateGrid(
        *(0, 12 * steps[0], 0, 8 * steps[1], *steps),
        shapes=(shape,),
        x_title=f"Time ({time})",
        y_title="Distance from depot (km)",
    )


@pytest.mark.parametrize(
    ("corners", "time", "speed"),
    [
        # The puzzle of the harmonic mean, told in many textbooks: there at 30 and back at 60 miles
        # an hour makes 40, not 45 (from memory). Here with 120 km each way, in 4 h and 2 h.
        pytest.param(((0, 0), (4, 120), (6, 0)), "hours", "40", id="there at 30, back at 60"),
        # 15 km in 20 minutes is 45 km/h (common practice in classrooms, no source).
        pytest.param(((0, 0), (10, 9), (20, 15)), "minutes", "45", id="15 km in 20 minutes"),
    ],
)
def test_published_average_speeds(corners, time, speed):
    figure = journey(*corners, time=time)
    reading = Reading("speed", ("", "all the way", "kilometres", "hour"))
    assert by_both_roads(figure, reading) == speed
