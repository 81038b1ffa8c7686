"""Polygons: lies are found, words hold the facts, and published values come out."""

from __future__ import annotations

import dataclasses
import re
from fractions import Fraction

import pytest

from itembank.figures.figure import FigureError, Reading, fault, kind_of, read, words
from itembank.figures.figure_data import from_data
from itembank.figures.kinds.plane.polygon import Height, Polygon
from itembank.items.asks.of_figure import as_find, of_figure
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.parse import parse
from itembank.notation.value import exact
from itembank.proof.measured.measure import disagreement
from tests.figures.every_figure import examples
from tests.figures.examples.polygon import cm, corners
from tests.figures.held import LIED, TOLD, holds


def deg(text: str) -> t.Node:
    return parse(f"{text}°")


RIGHT = Polygon(
    corners((0, 0), (4, 0), (0, 3)), sides=(("AB", cm(4)), ("CA", cm(3)), ("BC", cm(5))), right="A"
)
EVEN = Polygon(
    corners((0, 0), (8, 0), (4, 3)),
    angles=(("A", deg("40")), ("C", parse("x"))),
    equal=(("AC", "BC"),),
    accurate=False,
)
SLANTED = Polygon(
    corners((0, 0), (10, 0), (13, 6), (3, 6)),
    angles=(("A", deg("65")), ("B", deg("115")), ("C", deg("65")), ("D", deg("115"))),
    parallel=(("AB", "DC"), ("AD", "BC")),
    accurate=False,
)
HIGH = Polygon(
    corners((0, 0), (9, 0), (4, 5)), sides=(("AB", cm(9)),), height=Height("C", "AB", cm(5))
)
LIES = {
    "drawn 4 cm long": (RIGHT, {"sides": (("CA", cm(3)), ("AB", cm(5)))}),
    "drawn as 53.1°": (RIGHT, {"sides": (), "right": "", "angles": (("C", deg("55")),)}),
    "add up to 190°": (
        EVEN,
        {"equal": (), "angles": (("A", deg("50")), ("B", deg("40")), ("C", deg("100")))},
    ),
    "marked as a right angle": (RIGHT, {"right": "B"}),
    "marked as equal": (RIGHT, {"equal": (("AB", "AC"),)}),
    "marked as parallel": (SLANTED, {"angles": (), "parallel": (("AB", "BC"),)}),
    "drawn no larger": (
        EVEN,
        {"equal": (), "angles": (("A", deg("30")), ("B", deg("41")), ("C", parse("x")))},
    ),
    "is acute .60°., and is drawn obtuse": (EVEN, {"angles": (("A", deg("60")),)}),
    "drawn no longer": (
        RIGHT,
        {"accurate": False, "right": "", "sides": (("AB", cm(4)), ("CA", cm(5)))},
    ),
    "no shape": (
        RIGHT,
        {
            "accurate": False,
            "right": "",
            "sides": (("AB", cm(4)), ("CA", cm(3)), ("BC", cm(7))),
        },
    ),
    "by its sides": (
        RIGHT,
        {"accurate": False, "sides": (("AB", cm(4)), ("CA", cm(3)), ("BC", cm(6)))},
    ),
    "cross": (RIGHT, {"corners": corners((0, 0), (4, 3), (4, 0), (0, 3)), "sides": ()}),
    "are in a line": (RIGHT, {"corners": corners((0, 0), (4, 0), (8, 0)), "sides": ()}),
    "at one place": (RIGHT, {"corners": corners((0, 0), (0, 0), (8, 0)), "sides": ()}),
    "no height": (HIGH, {"height": Height("A", "AB", cm(5))}),
    "height labelled 6 cm is drawn 5 cm": (HIGH, {"height": Height("C", "AB", cm(6))}),
    "cannot all be true": (SLANTED, {"angles": (("A", deg("65")), ("B", deg("116")))}),
    "not more than 0": (RIGHT, {"sides": (("AB", parse("-4 cm")),)}),
    "none left": (EVEN, {"equal": (), "angles": (("A", deg("80")), ("C", deg("100")))}),
    "side CA itself": (
        RIGHT,
        {"height": Height("C", "AB", cm(3))},
    ),
}


@pytest.mark.parametrize("told", LIES)
@holds(LIED, "polygon")
def test_a_lie_is_told(told: str) -> None:
    true, changes = LIES[told]
    assert fault(true) == ""
    assert re.search(told, fault(dataclasses.replace(true, **changes)))


def test_a_side_and_an_angle_are_found_from_the_others() -> None:
    ell = next(f for f in examples("polygon", 60) if len(f.corners) == 6 and f.lettered)
    a, d, e, f = (exact(label) for _, label in ell.sides[:4])
    assert exact(read(ell, Reading("side", ("CD",)))) == a - f
    assert exact(read(ell, Reading("perimeter"))) == 2 * (a + d + e)
    ask = of_figure(EVEN, ("Work out the size of angle ", t.Sym("x"), "."))
    assert [line(relation) for relation in as_find(ask).relations] == ["x = 100°"]


def test_published_values() -> None:
    # Heron, Metrica 1: the triangle of sides 13, 14 and 15 has the area 84.
    heron = Polygon(
        corners((0, 0), (14, 0), (5, 12)), sides=(("AB", cm(14)), ("BC", cm(15)), ("CA", cm(13)))
    )
    assert line(read(heron, Reading("area"))) == "84 cm^2"
    # Plimpton 322, its first row: 119, 120 and 169 (Neugebauer and Sachs, 1945).
    tablet = Polygon(
        corners((0, 0), (120, 0), (0, 119)),
        sides=(("AB", cm(120)), ("BC", cm(169)), ("CA", cm(119))),
        right="A",
    )
    assert line(read(tablet, Reading("area"))) == "7140 cm^2"
    assert "drawn" in fault(dataclasses.replace(tablet, sides=(("AB", cm(120)), ("BC", cm(168)))))
    for figure in (heron, tablet):
        assert disagreement(figure) == ""


def test_the_angles_of_a_regular_polygon_by_euclid() -> None:
    """Elements I.32 and its corollary: n angles make 2n − 4 right angles."""
    from itembank.figures.circle_points import in_direction
    from itembank.figures.drawing import Point

    for count in (3, 5, 6, 8, 9, 10, 12):
        ring = [in_direction(Point(0, 0), 10, Fraction(360 * k, count)) for k in range(count)]
        spots = tuple(
            tuple(t.frac(round(v * 1000), 1000) if v else t.Int(0) for v in map(Fraction, spot))
            for spot in ring
        )
        size = t.frac((count - 2) * 180, count) if (count - 2) * 180 % count else None
        label = t.Quantity(size or t.Int((count - 2) * 180 // count), "°")
        figure = Polygon(spots, angles=(("A", label),))  # type: ignore[arg-type]
        assert fault(figure) == ""
        wrong = t.Quantity(t.Int((count - 2) * 180 // count + 3), "°")
        assert "is drawn as" in fault(dataclasses.replace(figure, angles=(("A", wrong),)))


@holds(TOLD, "polygon")
def test_the_words_hold_the_facts() -> None:
    """Areas worked out from the words alone, by another way than the figure's own."""
    seen = 0
    for figure in examples("polygon", 80):
        if Reading("area") not in kind_of(figure).readings(figure):
            continue
        text = words(figure)
        sides = {a: int(n) for a, n in re.findall(r"Side (\w\w) is (\d+) centimetres", text)}
        high = re.search(r"to side (\w\w), at a right angle to it. It is (\d+) c", text)
        ways = re.search(r"From A they go (.*?)\.", text)
        if high:
            found = Fraction(sum(sides.values()) * int(high[2]), 2)
        elif ways and ways[1].count("to") == 6:
            found = Fraction(sides["AB"] * sides["BC"] + sides["EF"] * sides["DE"])
        elif ways:
            found = Fraction(sides["AB"] * sides["BC"])
        else:
            found = Fraction(sides["AB"] * sides["CA"], 2)
        seen += 1
        assert exact(read(figure, Reading("area"))) * 10000 == found, text
    assert seen > 40


@pytest.mark.parametrize(
    ("prompt", "answer"),
    [
        ("Work out the area of the triangle.", "6 cm^2"),
        ("Find the perimeter of this shape.", "12 cm"),
        ("How long is BC?", "5 cm"),
        ("What is the size of angle BAC?", "90°"),
    ],
)
def test_ways_to_ask(prompt: str, answer: str) -> None:
    ask = of_figure(dataclasses.replace(RIGHT, lettered=True), (prompt,))
    assert line(as_find(ask).target) == answer


def test_what_is_not_shown_is_not_answered() -> None:
    for prompt in ("Work out angle BCA.", "Work out the length of AB.", "Find the value of y."):
        with pytest.raises(FigureError):
            of_figure(HIGH, (prompt,))


def test_bad_data_is_refused_at_once() -> None:
    triangle = {"kind": "polygon", "corners": [[0, 0], [4, 0], [0, 3]]}
    for changes, said in (
        ({"corners": [[0, 0], [1, 0]]}, "3 to 12 corners"),
        ({"corners": [[k, k * k] for k in range(90)]}, "3 to 12"),
        ({"corners": [[0, 0], [10**8, 0], [0, 1]]}, "at most"),
        ({"corners": [["x", 0], [4, 0], [0, 3]]}, "pairs of numbers"),
        ({"names": "ABB"}, "letter of its own"),
        ({"sides": {"AD": "3 cm"}}, "no side AD"),
        ({"sides": {"AB": "4 cm", "BA": "4 cm"}}, "twice"),
        ({"sides": {"AB": "4 cm", "AC": "3"}}, "some have none"),
        ({"sides": {"AB": "4 kg"}}, "lengths"),
        ({"angles": {"B": "37"}}, "with °"),
        ({"angles": {"Q": "37°"}}, "no corner Q"),
    ):
        with pytest.raises(FigureError, match=said):
            from_data({**triangle, **changes})


@pytest.mark.parametrize("high", [444, 666, 888, 1200, 8888])
def test_a_right_angle_is_marked_at_its_own_corner_however_narrow(high: int) -> None:
    spots = tuple((t.Int(x), t.Int(y)) for x, y in ((0, high), (8888, 0), (0, 0)))
    sides = (("KM", parse("7")), ("KL", parse("7.4")))
    narrow = Polygon(spots, "KLM", lettered=True, sides=sides, right="M", accurate=False)
    assert fault(narrow) == ""
    assert disagreement(narrow) == ""
