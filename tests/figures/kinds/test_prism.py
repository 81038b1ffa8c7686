"""Cuboids and prisms: lies are found, words hold the facts, published values come out."""

from __future__ import annotations

import dataclasses
import re
from fractions import Fraction

import pytest

from itembank.figures.drawing import Stroke, Text
from itembank.figures.figure import FigureError, Reading, drawn, fault, kind_of, read, words
from itembank.figures.figure_data import from_data
from itembank.figures.kinds.solid.prism import Prism
from itembank.items.asks.of_figure import as_find, of_figure
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.parse import parse
from itembank.notation.value import NotExact, exact
from itembank.proof.measured.measure import disagreement, measuring
from tests.figures.every_figure import examples
from tests.figures.held import LIED, TOLD, holds

BOX = Prism("rectangle", parse("5 cm"), parse("3 cm"), parse("4 cm"))
WEDGE = Prism("triangle", parse("3 cm"), parse("4 cm"), parse("10 cm"), parse("5 cm"))


def test_a_slope_that_fits_no_right_angled_triangle_is_told() -> None:
    assert fault(WEDGE) == ""
    lie = dataclasses.replace(WEDGE, slope=parse("6 cm"))
    assert "not the longest side of a right-angled triangle" in fault(lie)


@pytest.mark.parametrize("figure", [BOX, WEDGE])
@holds(LIED, "prism")
def test_an_edge_label_that_lies_is_told(figure: Prism) -> None:
    true = drawn(figure)
    for label in true.of("edge label"):
        assert isinstance(label, Text)
        lie = dataclasses.replace(label, content=parse("7 cm"))
        marks = tuple(lie if mark is label else mark for mark in true.marks)
        with pytest.raises(NotExact, match="do not agree"):
            measuring(figure).measure(dataclasses.replace(true, marks=marks), Reading("volume"))


@pytest.mark.parametrize("figure", [BOX, WEDGE])
def test_an_edge_that_is_missing_or_not_dashed_is_told(figure: Prism) -> None:
    true = drawn(figure)
    for mark in true.marks:
        if isinstance(mark, Stroke):
            without = tuple(other for other in true.marks if other is not mark)
            role = "edge" if mark.role == "hidden edge" else "hidden edge"
            swapped = (*without, dataclasses.replace(mark, role=role))
            for marks in (without, swapped):
                lie = dataclasses.replace(true, marks=marks)
                with pytest.raises(NotExact):
                    measuring(figure).measure(lie, Reading("volume"))


def test_euclid_on_prisms() -> None:
    """Elements XI.28: a plane through diagonals halves a parallelepiped into two prisms."""
    whole = Prism("rectangle", WEDGE.width, WEDGE.height, WEDGE.length)
    assert exact(read(whole, Reading("volume"))) == 2 * exact(read(WEDGE, Reading("volume")))
    assert line(read(WEDGE, Reading("volume"))) == "60 cm^3"
    assert line(read(WEDGE, Reading("surface area"))) == "132 cm^2"


def test_the_frustum_of_the_moscow_papyrus() -> None:
    """Problem 14 (from memory): 6 high, on a square of side 4 and under one of side 2, it is 56.

    It is cut into the box under the upper square, four triangular prisms at its sides, and four
    pyramids at its corners, each a third of its own box (Euclid, Elements XII.7 and corollary).
    """

    def volume(end: str, width: int, height: int, length: int) -> Fraction:
        return exact(read(Prism(end, *map(t.Int, (width, height, length))), Reading("volume")))

    middle, side = volume("rectangle", 2, 6, 2), volume("triangle", 1, 6, 2)
    corner = volume("rectangle", 1, 6, 1) / 3
    assert middle + 4 * side + 4 * corner == 56


@holds(TOLD, "prism")
def test_the_words_hold_the_facts() -> None:
    for figure in examples("prism", 60):
        text = words(figure)
        size = 100 if "centi" in text else 1
        numbers = [Fraction(int(n), size) for n in re.findall(r"(\d+) (?:centi)?metre", text)]
        w, h, far = numbers[0], numbers[1], numbers[-1]
        half = 2 if "triangle" in text else 1
        assert exact(read(figure, Reading("volume"))) == w * h * far / half, text
        if Reading("surface area") in kind_of(figure).readings(figure):
            faces = w * h + far * (w + h + numbers[2]) if half == 2 else 2 * (w * h + far * (w + h))
            assert exact(read(figure, Reading("surface area"))) == faces, text


@pytest.mark.parametrize(
    ("prompt", "answer"),
    [
        ("Work out the volume of the cuboid.", "60 cm^3"),
        ("Find the surface area of this cuboid.", "94 cm^2"),
        ("Calculate the total surface area of the solid.", "94 cm^2"),
    ],
)
def test_ways_to_ask(prompt: str, answer: str) -> None:
    assert line(as_find(of_figure(BOX, (prompt,))).target) == answer


def test_bad_data_is_refused() -> None:
    box = {"kind": "prism", "end": "rectangle", "width": "5 cm", "height": "3 cm"}
    for data, said in (
        ({}, "missing"),
        ({"length": "4 kg"}, "no length"),
        ({"length": "4 m"}, "one unit"),
        ({"length": "0 cm"}, "more than 0"),
        ({"length": "x"}, "lengths"),
        ({"length": "400 cm"}, "8 times"),
        ({"length": "4 cm", "slope": "5 cm"}, "only a triangle"),
        ({"length": "4 cm", "end": "circle"}, "none of"),
    ):
        with pytest.raises(FigureError, match=said):
            from_data({**box, **data})


@pytest.mark.parametrize(
    ("figure", "names"),
    [
        (BOX, {"cuboid", "prism", "box", "solid"}),
        (WEDGE, {"triangular prism", "prism", "solid"}),
        (Prism("rectangle", *[parse("4 cm")] * 3), {"cube", "cuboid", "prism", "box", "solid"}),
    ],
)
def test_a_solid_is_called_what_it_is(figure: Prism, names: set[str]) -> None:
    for name in ("cuboid", "cube", "box", "prism", "triangular prism", "solid"):
        prompt = (f"Work out the volume of the {name}.",)
        if name in names:
            of_figure(figure, prompt)
        else:
            with pytest.raises(FigureError, match=f"no {name}"):
                of_figure(figure, prompt)


@pytest.mark.parametrize("long", ["3 cm", "10 cm", "12 cm"])
@pytest.mark.parametrize("high", ["2 cm", "5 cm", "8 cm"])
@pytest.mark.parametrize("wide", ["5 cm", "11 cm", "12 cm"])
def test_each_label_is_read_at_its_own_edge_however_flat_the_box(wide, high, long) -> None:
    assert disagreement(Prism("rectangle", parse(wide), parse(high), parse(long))) == ""
