"""Circles: lies are found, words hold the facts, π stays π."""

from __future__ import annotations

import dataclasses
import re
from fractions import Fraction

import pytest
import sympy

from itembank.figures.drawing import Point, Stroke
from itembank.figures.figure import FigureError, Reading, drawn, fault, kind_of, read, words
from itembank.figures.figure_data import from_data
from itembank.figures.kinds.plane.circle import Circle
from itembank.items.asks.of_figure import as_find, of_figure
from itembank.notation.line import line
from itembank.notation.parse import parse
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import measuring
from tests.figures.every_figure import examples
from tests.figures.held import LIED, TOLD, holds


@holds(LIED, "circle")
def test_a_diameter_that_is_not_twice_the_radius_is_told() -> None:
    assert fault(Circle(parse("6 cm"), parse("12 cm"))) == ""
    assert "not twice its radius" in fault(Circle(parse("6 cm"), parse("11 cm")))


@pytest.mark.parametrize(
    ("role", "points"),
    [
        ("diameter", (Point(-1, 0), Point(1, 0))),
        ("diameter", (Point(-2, 1), Point(2, 1))),
        ("radius", (Point(0, 0), Point(1, 0))),
        ("radius", (Point(1, 0), Point(3, 0))),
    ],
)
def test_a_line_that_is_no_radius_or_diameter_is_told(
    role: str, points: tuple[Point, Point]
) -> None:
    figure = Circle(parse("6 cm")) if role == "radius" else Circle(diameter=parse("12 cm"))
    true = drawn(figure)
    marks = tuple(Stroke(points, role) if m.role == role else m for m in true.marks)
    with pytest.raises(NotExact):
        measuring(figure).measure(dataclasses.replace(true, marks=marks), Reading("area"))


def test_a_sector_with_another_angle_than_its_label_is_told() -> None:
    figure, other = (Circle(parse("6 cm"), sector=size) for size in (60, 61))
    label = drawn(other).of("angle label")
    marks = tuple(m for m in drawn(figure).marks if m.role != "angle label") + label
    with pytest.raises(NotExact, match="another angle"):
        measuring(figure).measure(dataclasses.replace(drawn(figure), marks=marks), Reading("area"))


def test_archimedes_on_the_circle_and_its_triangle() -> None:
    """Measurement of the Circle 1: its area is that of a triangle on radius and circumference."""
    for figure in examples("circle", 60):
        rows = kind_of(figure).readings(figure)
        around = next(r for r in rows if r.name in ("circumference", "arc"))
        radius, round_, area = (
            to_sympy(read(figure, reading))
            for reading in (Reading("radius"), around, Reading("area"))
        )
        assert sympy.simplify(radius * round_ / 2 - area) == 0
        assert area.has(sympy.pi)


@holds(TOLD, "circle")
def test_the_words_hold_the_facts() -> None:
    for figure in examples("circle", 60):
        found = re.search(r"(radius|diameter) (\d+)(?: (\w+))?.*?(?:angle (\d+))?", words(figure))
        degrees = re.search(r"angle (\d+) degrees", words(figure))
        assert found
        size = {"centimetres": 100, "centimetre": 100, "metres": 1, "metre": 1}.get(found[3])
        size = size or (1000 if (found[3] or "").startswith("milli") else 1)
        r = Fraction(int(found[2]), (2 if found[1] == "diameter" else 1) * size)
        part = Fraction(int(degrees[1]) if degrees else 360, 360)
        area = to_sympy(read(figure, Reading("area")))
        assert area == sympy.Rational(r * r * part) * sympy.pi, words(figure)


@pytest.mark.parametrize(
    ("prompt", "answer"),
    [
        ("Work out the area of the circle. Give your answer in terms of π.", "25π cm^2"),
        ("Find the circumference of this circle.", "10π cm"),
        ("What is the diameter of the circle?", "10 cm"),
    ],
)
def test_ways_to_ask(prompt: str, answer: str) -> None:
    assert line(as_find(of_figure(Circle(parse("5 cm")), (prompt,))).target) == answer


def test_bad_data_is_refused() -> None:
    for data, said in (
        ({}, "radius or a diameter"),
        ({"radius": "5 kg"}, "no length"),
        ({"radius": "-5 cm"}, "more than 0"),
        ({"radius": "x"}, "lengths"),
        ({"radius": "5 cm", "diameter": "10 m"}, "one unit"),
        ({"radius": "5 cm", "sector": 400}, "degrees"),
        ({"diameter": "5 cm", "sector": 90}, "radius, not"),
    ):
        with pytest.raises(FigureError, match=said):
            from_data({"kind": "circle", **data})


@pytest.mark.parametrize(
    ("sector", "name", "right"),
    [
        (0, "circle", True),
        (0, "sector", False),
        (0, "semicircle", False),
        (60, "sector", True),
        (60, "circle", False),
        (60, "quarter circle", False),
        (90, "quarter circle", True),
        (180, "semicircle", True),
        (180, "sector", True),
    ],
)
def test_a_circle_is_called_what_it_is(sector: int, name: str, right: bool) -> None:
    prompt = (f"Work out the area of the {name}.",)
    figure = Circle(parse("6 cm"), sector=sector)
    if right:
        of_figure(figure, prompt)
    else:
        with pytest.raises(FigureError, match=f"no {name}"):
            of_figure(figure, prompt)
