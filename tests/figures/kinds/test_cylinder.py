"""Cylinders: lies are found, words hold the facts, published values come out."""

from __future__ import annotations

import dataclasses
import re
from fractions import Fraction

import pytest

from itembank.figures.drawing import Stroke
from itembank.figures.figure import FigureError, Reading, drawn, kind_of, read, words
from itembank.figures.figure_data import from_data
from itembank.figures.kinds.solid.cylinder import Cylinder
from itembank.items.asks.of_figure import as_find, of_figure
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.parse import parse
from itembank.notation.value import NotExact, exact
from itembank.proof.measured.measure import measuring
from tests.figures.every_figure import examples
from tests.figures.held import LIED, TOLD, holds
from tests.figures.lies import changed, found_out, moved, places, relabelled, stretched, without

TIN = Cylinder(parse("8 cm"), radius=parse("5 cm"))
PIPE = Cylinder(parse("20 cm"), diameter=parse("8 cm"))
NOTHING, ASIDE = Fraction(0), Fraction(1, 2)


def _times_pi(node: t.Node) -> Fraction:
    """Return how many times π an amount is, in its base unit."""
    return exact(t.replaced(node, {t.Sym("π"): t.Int(1)}))


def _whole_rim_dashed():
    made = drawn(TIN)
    at = places(made, "edge")[0]
    mark = made.marks[at]
    assert isinstance(mark, Stroke)
    turned = tuple(point._replace(y=-point.y) for point in mark.points)
    return changed(made, at, dataclasses.replace(mark, points=turned))


LIES = {
    "a radius that is labelled longer": (
        TIN,
        lambda: relabelled(TIN, "radius label", parse("6 cm")),
    ),
    "a diameter labelled as its radius": (
        PIPE,
        lambda: relabelled(PIPE, "diameter label", parse("4 cm")),
    ),
    "another height": (TIN, lambda: relabelled(TIN, "height label", parse("9 cm"))),
    "a height in another unit": (TIN, lambda: relabelled(TIN, "height label", parse("8 m"))),
    "a wall that leans": (TIN, lambda: moved(TIN, "wall", ASIDE, NOTHING)),
    "a wall that is missing": (TIN, lambda: without(TIN, "wall", 1)),
    "a lid that stands higher": (TIN, lambda: moved(TIN, "top", NOTHING, ASIDE)),
    "a lid that is higher than a circle": (TIN, lambda: stretched(TIN, "top", Fraction(11, 10))),
    "a radius that stops short": (TIN, lambda: moved(TIN, "radius", -ASIDE, NOTHING)),
    "no radius": (TIN, lambda: without(TIN, "radius")),
    "a diameter beside the middle": (PIPE, lambda: moved(PIPE, "diameter", NOTHING, ASIDE)),
    "the front of its base drawn behind": (TIN, _whole_rim_dashed),
    "a label of the height at the radius": (
        TIN,
        lambda: moved(TIN, "height label", Fraction(-3), Fraction(5)),
    ),
}


@pytest.mark.parametrize("lie", LIES)
@holds(LIED, "cylinder")
def test_a_planted_lie_is_found_out(lie: str) -> None:
    figure, false = LIES[lie]
    assert not found_out(figure, drawn(figure))
    assert found_out(figure, false())
    with pytest.raises(NotExact):
        measuring(figure).measure(false(), Reading("volume"))


def test_archimedes_on_the_cylinder_round_a_ball() -> None:
    """On the Sphere and Cylinder I, 34, corollary (from memory).

    As high as it is wide, with its ends, it has 3/2 of the ball's surface and of its volume.
    """
    for r in (3, 7, 20):
        figure = Cylinder(t.Int(2 * r), radius=t.Int(r))
        assert _times_pi(read(figure, Reading("surface area"))) == Fraction(3, 2) * 4 * r**2
        ball = Fraction(4, 3) * r**3
        assert _times_pi(read(figure, Reading("volume"))) == Fraction(3, 2) * ball


def test_a_granary_of_the_rhind_papyrus() -> None:
    """Problem 41 (from memory): 9 cubits across and 10 high, it holds 640 cubic cubits.

    The papyrus takes eight ninths of the diameter for the side of a square as large as a circle.
    """
    figure = Cylinder(t.Int(10), diameter=t.Int(9))
    found = _times_pi(read(figure, Reading("volume"))) * Fraction(16, 9) ** 2
    assert found == 640


@holds(TOLD, "cylinder")
def test_the_words_hold_the_facts() -> None:
    told = {"": 1, "centimetres": Fraction(1, 100), "millimetres": Fraction(1, 1000), "metres": 1}
    for figure in examples("cylinder", 60):
        found = re.fullmatch(
            r"A cylinder has the (radius|diameter) (.+?)(?: ([a-z]*metres))? and the height "
            r"(.+?)(?: ([a-z]*metres))?\.",
            words(figure),
        )
        assert found is not None
        across, height = (
            Fraction(found[k].replace(" point ", ".")) * told[found[k + 1] or ""] for k in (2, 4)
        )
        r = across if found[1] == "radius" else across / 2
        wanted = {
            "radius": r,
            "diameter": 2 * r,
            "area of the base": r * r,
            "curved surface area": 2 * r * height,
            "surface area": 2 * r * (r + height),
            "volume": r * r * height,
        }
        readings = kind_of(figure).readings(figure)
        for reading in readings:
            assert _times_pi(read(figure, reading)) == wanted[reading.name], words(figure)
        assert Reading("surface area") in readings


@pytest.mark.parametrize(
    ("figure", "prompt", "answer"),
    [
        (TIN, "Work out the volume of the cylinder.", "200π cm^3"),
        (TIN, "Find the volume of this solid.", "200π cm^3"),
        (TIN, "Work out the curved surface area of the cylinder.", "80π cm^2"),
        (TIN, "Calculate the total surface area of the cylinder.", "130π cm^2"),
        (TIN, "What is the diameter of the cylinder?", "10 cm"),
        (PIPE, "What is the radius of the cylinder?", "4 cm"),
        (PIPE, "Find the area of the base of the cylinder.", "16π cm^2"),
    ],
)
def test_ways_to_ask(figure: Cylinder, prompt: str, answer: str) -> None:
    assert line(as_find(of_figure(figure, (prompt,))).target) == answer


def test_another_solid_is_not_asked_for() -> None:
    for solid in ("cuboid", "prism", "cone", "circle"):
        with pytest.raises(FigureError):
            of_figure(TIN, (f"Work out the volume of the {solid}.",))


def test_bad_data_is_refused() -> None:
    for data, said in (
        ({"height": "4 cm"}, "needs a radius or a diameter"),
        ({"height": "4 cm", "radius": "2 cm", "diameter": "4 cm"}, "not both"),
        ({"radius": "4 cm"}, "missing"),
        ({"height": "4 kg", "radius": "2 kg"}, "no length"),
        ({"height": "4 m", "radius": "2 cm"}, "one unit"),
        ({"height": "0 cm", "radius": "2 cm"}, "more than 0"),
        ({"height": "x", "radius": "2 cm"}, "lengths"),
        ({"height": "400 cm", "radius": "2 cm"}, "5 times"),
        ({"height": "1 cm", "radius": "20 cm"}, "5 times"),
        ({"height": "4" * 30 + " cm", "radius": "4" * 30 + " cm"}, "there is room for 17 by 11"),
        ({"height": "4 cm", "radius": "2 cm", "hight": 1}, "did you mean"),
    ):
        with pytest.raises(FigureError, match=said):
            from_data({"kind": "cylinder", **data})
