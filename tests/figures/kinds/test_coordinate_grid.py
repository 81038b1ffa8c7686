"""Coordinate grids: their words, the lies they are caught in, wordings, a textbook's gradient."""

from __future__ import annotations

import contextlib
import re
from dataclasses import replace
from fractions import Fraction

import pytest

from itembank.figures.drawing import Stroke, Text, text_box
from itembank.figures.figure import FigureError, Reading, drawn, fault, read, words
from itembank.figures.figure_data import from_data
from itembank.figures.kinds.grid.coordinate_grid import CoordinateGrid, GridLine, GridShape
from itembank.items.asks.of_figure import asked_in
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.parse import parse
from itembank.notation.value import NotExact, exact
from itembank.proof.measured.measure import disagreement, measured, measuring
from tests.figures.every_figure import examples
from tests.figures.grid_reader import grid_said
from tests.figures.held import LIED, TOLD, holds


def grid(*points, lines=(), low=-6, high=6):
    placed = tuple((name, t.num(x), t.num(y)) for name, x, y in points)
    return CoordinateGrid(low, high, low, high, points=placed, lines=tuple(lines))


def shaped(*corners):
    shape = GridShape(tuple((t.num(x), t.num(y)) for x, y in corners))
    return CoordinateGrid(-6, 6, -6, 6, shapes=(shape,))


def through(a, b, name="", segment=False, points=()):
    return GridLine(tuple(map(t.num, a)), tuple(map(t.num, b)), name, segment, points)


@holds(TOLD, "coordinate grid")
def test_points_and_gradients_are_known_from_the_words_alone():
    seen = set()
    for figure in examples("coordinate grid", 40):
        points, lines, shapes, titles = grid_said(words(figure))
        for name, (x, y) in points.items():
            told = read(figure, Reading("coordinates", (name,)))
            assert tuple(map(exact, told.parts)) == (x, y)
            seen.add("point")
        for name, ((a, b), (c, d), _) in lines.items():
            if a != c:
                slope = exact(read(figure, Reading("gradient", (name,))))
                assert slope * (c - a) == d - b
                seen.add("line")
        assert {name: [*map(_spot, each)] for name, each in _corners(figure)} == shapes
        assert titles == (figure.x_title, figure.y_title)
        seen |= {"shape"} if shapes else set()
    assert seen == {"point", "line", "shape"}


def _spot(corner):
    return tuple(map(exact, corner))


def _corners(figure):
    return [(shape.name, shape.corners) for shape in figure.shapes]


def test_the_words_do_not_give_coordinates_or_gradients():
    figure = grid(("A", 3, -2), lines=[through((0, 1), (1, 4))])
    assert words(figure) == (
        "A grid has x from minus 6 to 6 and y from minus 6 to 6. The point A is 3 squares right "
        "and 2 squares down from the origin. A straight line goes through two places, each "
        "counted from the origin: 0 squares right and 1 square up; 1 square right and 4 squares "
        "up."
    )


def test_what_a_grid_shows():
    figure = grid(("A", 3, -2), ("B", 3, 5), ("C", -2, 0), lines=[through((0, 1), (2, -3), "L")])
    for name, of, value in (
        ("coordinates", ("A",), "(3, -2)"),
        ("midpoint", ("A", "B"), "(3, 1.5)"),
        ("length", ("A", "B"), "7"),
        ("letter", ("(-2, 0)",), '"C"'),
        ("gradient", ("L",), "-2"),
        ("y-intercept", ("",), "1"),
    ):
        assert line(read(figure, Reading(name, of))) == value
        assert line(measured(figure, Reading(name, of))) in (value, "(3, 3/2)")
    for reading in (
        Reading("length", ("A", "C")),
        Reading("gradient", ("M",)),
        Reading("letter", ("(1, 1)",)),
        Reading("letter", ("1",)),
        Reading("point on the line", ("L",)),
    ):
        with pytest.raises(FigureError):
            read(figure, reading)


def test_an_upright_line_has_no_gradient_and_a_far_crossing_is_not_read():
    upright = grid(lines=[through((2, 0), (2, 4))])
    steep = grid(lines=[through((2, 0), (3, 5))])
    for figure, name in ((upright, "gradient"), (upright, "y-intercept"), (steep, "y-intercept")):
        with pytest.raises(FigureError):
            read(figure, Reading(name, ("",)))
        with pytest.raises(NotExact):
            measured(figure, Reading(name, ("",)))


@pytest.mark.parametrize(
    ("figure", "said"),
    [
        (grid(("A", 7, 0)), r"the point A is at \(7, 0\), which is off the grid"),
        (grid(("A", 1, 0), ("A", 2, 0)), "two things have the letter A"),
        (grid(("A", 1, 0), ("B", 1, 0)), "stand at one place"),
        (grid(("A", 1, 0), lines=[through((0, 0), (1, 1), "A")]), "two things have the letter"),
        (
            grid(("A", 1, 4), lines=[through((0, 0), (1, 1), points=("A",))]),
            r"said to go through A, and misses it: A is at \(1, 4\)",
        ),
        (grid(lines=[through((0, 0), (1, 1), points=("Z",))]), "there is no such point"),
        (
            grid(("A", 4, 4), lines=[through((0, 0), (1, 1), segment=True, points=("A",))]),
            "misses it",
        ),
        (grid(lines=[through((1, 1), (1, 1))]), "needs two places"),
        (grid(lines=[through((0, 0), (9, 1))]), "not on the grid"),
        (CoordinateGrid(0, 10**8, 0, 10), "as far as"),
        (CoordinateGrid(0, 9, 0, 9, 2, 1), "whole squares of 2"),
        (CoordinateGrid(0, 100, 0, 9), "2 to 30 squares across"),
        (CoordinateGrid(0, 5, 0, 5, points=(("A", t.frac(1, 3), t.Int(1)),)), "halves"),
        (CoordinateGrid(0, 5, 0, 5, points=(("A", t.Sym("a"), t.Int(1)),)), "to be numbers"),
        (shaped((0, 0), (4, 0), (2, 0)), "three corners in a row on one straight line"),
        (shaped((0, 0), (4, 4), (4, 0), (0, 4)), "crosses itself"),
        (shaped((0, 0), (4, 4)), "3 to 10 corners"),
        (shaped((0, 0), (0, 0), (4, 0)), "has one corner twice"),
        (shaped((0, 0), (9, 0), (0, 4)), "a corner that is not on the grid"),
        (CoordinateGrid(0, 5, 0, 5, x_title="Hours"), "both axes have a title or none"),
        (CoordinateGrid(0, 5, 0, 5, x_title="Hours " * 9, y_title="Litres"), "13 wide"),
        (CoordinateGrid(0, 5, 0, 5, points=(("AB", t.Int(1), t.Int(1)),)), "single capital"),
    ],
)
def test_a_grid_that_contradicts_itself_is_refused(figure, said):
    assert re.search(said, fault(figure))


def moved(figure, role, change):
    made = drawn(figure)
    marks = tuple(change(mark) if mark.role == role else mark for mark in made.marks)
    return replace(made, marks=marks)


def _aside(mark):
    if isinstance(mark, Stroke):
        return replace(mark, points=tuple(p._replace(x=p.x + 1) for p in mark.points))
    return replace(mark, at=mark.at._replace(x=mark.at.x + 1))


def _steeper(mark):
    first, last = mark.points
    return replace(mark, points=(first, last._replace(y=last.y + Fraction(1, 2))))


@pytest.mark.parametrize(
    ("role", "change", "reading"),
    [
        ("point", _aside, Reading("coordinates", ("A",))),
        ("x number", _aside, Reading("coordinates", ("A",))),
        ("line", _steeper, Reading("gradient", ("",))),
        ("line", _aside, Reading("y-intercept", ("",))),
        ("x axis", _steeper, Reading("coordinates", ("A",))),
        ("upright", _steeper, Reading("coordinates", ("A",))),
        ("level", _steeper, Reading("y-coordinate", ("A",))),
    ],
)
@holds(LIED, "coordinate grid")
def test_a_drawing_that_lies_is_found_out(role, change, reading):
    figure = grid(("A", 3, -2), lines=[through((0, 1), (2, 3))])
    assert disagreement(figure) == ""
    true = read(figure, reading)
    if role == "upright":
        made = drawn(figure)
        where = next(n for n, mark in enumerate(made.marks) if mark.role == role)
        slanted = replace(
            made.marks[where],
            points=(made.marks[where].points[0], made.marks[where].points[1]._replace(x=9)),
        )
        lie = replace(made, marks=(*made.marks[:where], slanted, *made.marks[where + 1 :]))
    else:
        lie = moved(figure, role, change)
    with contextlib.suppress(NotExact):
        assert line(measuring(figure).measure(lie, reading)) != line(true)


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("What are the coordinates of A?", "(0, 2)"),
        ("Write down the coordinates of the point B.", "(4, 2)"),
        ("Find the midpoint of AB.", "(2, 2)"),
        ("What are the coordinates of the midpoint of the line segment AB?", "(2, 2)"),
        ("What is the length of AB?", "4"),
        ("How long is the line AB, in units?", "4"),
        ("Find the gradient of the line.", "1/2"),
        ("Work out the gradient of the line L.", "1/2"),
        ("What is the y-intercept of the straight line L?", "-1"),
        ("At what value of y does the line cross the y-axis?", "-1"),
        ("What is the x-coordinate of B?", "4"),
        ("Which point lies on the line L?", '"C"'),
    ],
)
def test_ways_to_ask(text, value):
    figure = grid(("A", 0, 2), ("B", 4, 2), ("C", -2, -2), lines=[through((0, -1), (2, 0), "L")])
    ((_, reading),) = asked_in(figure, (text,)).readings
    assert line(read(figure, reading)) == value


def test_a_letter_is_asked_for_by_its_coordinates():
    figure = grid(("A", 0, 2), ("B", 4, 2))
    prompt = ("Which point has coordinates ", parse("(4, 2)"), "?")
    ((_, reading),) = asked_in(figure, prompt).readings
    assert read(figure, reading) == t.Label("B")


def test_published_gradients():
    """From OpenStax, Elementary Algebra, chapter 4.4, as remembered: slope is rise over run.

    The line through (2, −3) and (−1, 5) falls 8 as it runs 3; that through (0, 5) and (4, 2) falls
    3 as it runs 4.
    """
    for (a, b), slope in ((((2, -3), (-1, 5)), "-8/3"), (((0, 5), (4, 2)), "-3/4")):
        figure = grid(lines=[through(a, b)])
        reading = Reading("gradient", ("",))
        assert line(read(figure, reading)) == line(measured(figure, reading)) == slope


def test_a_grid_in_a_file():
    figure = from_data(
        {
            "kind": "coordinate grid",
            "left": 0,
            "right": 10,
            "bottom": 0,
            "top": 10,
            "points": [["A", 3, "4.5"]],
            "lines": [{"start": [0, 1], "end": [2, 5], "points": []}],
        }
    )
    assert line(read(figure, Reading("coordinates", ("A",)))) == "(3, 4.5)"
    assert line(read(figure, Reading("gradient", ("",)))) == "2"


def test_two_letters_between_their_points_stand_apart():
    """Side by side between two points nobody could tell at a glance which letter is which one's."""
    points = [("A", -3, 3), ("B", -3, 0), ("C", 0, 0), ("P", 0, -3), ("Q", 0, 3), ("R", 3, 0)]
    placed = tuple((name, t.num(x), t.num(y)) for name, x, y in points)
    made = drawn(CoordinateGrid(-5, 5, -4, 4, points=placed))
    names = [name for name, _, _ in points]
    named = [mark for mark in made.marks if isinstance(mark, Text) and mark.content in names]
    assert len(named) == len(names)
    boxes = [text_box(mark) for mark in named]
    for place, box in enumerate(boxes):
        for other in boxes[place + 1 :]:
            across = max(other.left - box.right, box.left - other.right)
            up = max(other.bottom - box.top, box.bottom - other.top)
            assert across >= Fraction(3, 4) or up > 0
