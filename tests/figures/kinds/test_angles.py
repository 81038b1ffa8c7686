"""Angles on lines, round points and in parallels: lies are found, words hold the facts."""

from __future__ import annotations

import dataclasses
import re
from fractions import Fraction

import pytest

from itembank.figures.figure import FigureError, Reading, fault, kind_of, read, words
from itembank.figures.figure_data import from_data
from itembank.figures.kinds.plane.angles import Angles
from itembank.items.asks.of_figure import as_find, of_figure
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.parse import parse
from itembank.notation.value import exact
from itembank.proof.measured.measure import disagreement
from tests.figures.every_figure import examples
from tests.figures.examples.angles import deg
from tests.figures.held import LIED, TOLD, holds

X = t.Sym("x")
LINE = Angles("line", (48, 132), ((1, deg(48)), (2, X)))
POINT = Angles("point", (90, 120, 150), ((2, deg(120)), (3, X)), (1,))
CROSS = Angles("crossing", (50,), ((1, deg(50)), (3, X)))
PARALLEL = Angles("parallel", (70,), ((1, deg(70)), (8, X)))
LIES = {
    "angles on a line to 180": (LINE, {"labels": ((1, deg(48)), (2, deg(133)))}),
    "angles round a point to 360": (POINT, {"labels": ((2, deg(120)), (3, deg(149)))}),
    "sizes add up to 181": (LINE, {"sizes": (48, 133)}),
    "the angle labelled 50° is drawn as 48°": (
        LINE,
        {"accurate": True, "labels": ((1, deg(50)), (2, X))},
    ),
    "is obtuse .100°., and is drawn acute": (LINE, {"labels": ((1, deg(100)), (2, X))}),
    "drawn no larger": (
        Angles("line", (40, 50, 90), ((1, deg(40)), (2, deg(50))), (3,)),
        {"labels": ((1, deg(50)), (2, deg(40)))},
    ),
    "marked as a right angle": (POINT, {"labels": ((3, X),), "right": (2,)}),
    "cannot all be true": (CROSS, {"labels": ((1, deg(50)), (2, deg(131)))}),
    "cannot all be true together": (PARALLEL, {"labels": ((1, deg(70)), (5, deg(71)))}),
    "would be -20": (LINE, {"labels": ((1, deg(200)), (2, X))}),
    "labelled or marked twice": (LINE, {"labels": ((1, deg(48)), (1, X))}),
    "with a unit in one label": (CROSS, {"labels": ((1, parse("x°")), (2, X))}),
}


@pytest.mark.parametrize("told", LIES)
@holds(LIED, "angles")
def test_a_lie_is_told(told: str) -> None:
    true, changes = LIES[told]
    assert fault(true) == ""
    assert re.search(told, fault(dataclasses.replace(true, **changes)))


@pytest.mark.parametrize(
    ("figure", "degrees"), [(LINE, 132), (POINT, 150), (CROSS, 50), (PARALLEL, 110)]
)
def test_the_angle_is_found(figure: Angles, degrees: int) -> None:
    assert line(read(figure, Reading("angle", ("x",)))) == f"{degrees}°"
    for prompt in (("Work out the size of angle ", X, "."), ("Find the value of ", X, ".")):
        assert [line(relation) for relation in as_find(of_figure(figure, prompt)).relations] == [
            f"x = {degrees}°"
        ]


def test_euclid_on_parallels_and_crossing_lines() -> None:
    """Elements I.15 (vertically opposite) and I.29 (alternate, corresponding, co-interior)."""
    for size in (40, 75, 118):
        for first, other, sum_is in ((1, 3, 0), (1, 5, 0), (3, 5, 0), (4, 5, 180), (3, 6, 180)):
            given = size if first % 2 else 180 - size
            figure = Angles("parallel", (size,), ((first, deg(given)), (other, X)), turn=10)
            found = exact(read(figure, Reading("angle", ("x",))))
            assert found == (sum_is - given if sum_is else given)
            assert disagreement(figure) == ""


@holds(TOLD, "angles")
def test_the_words_hold_the_facts() -> None:
    """The angle, worked out from the words alone."""
    seen = 0
    for figure in examples("angles", 120):
        for reading in kind_of(figure).readings(figure):
            text = words(figure)
            found = exact(read(figure, reading))
            given = [int(n) for n in re.findall(r"(\d+) degrees", text)]
            if text.startswith(("A straight line is", "Round a point")):
                whole = 180 if "line" in text else 360
                assert found == whole - sum(given) - 90 * text.count("a right angle")
            else:
                names = [
                    name.strip()
                    for run in re.findall(r"are ([^.]*)\.", text)[-2:]
                    for name in re.split(", | and ", run)
                    if "crossed" not in name
                ]
                a = next(k for k, name in enumerate(names) if "degrees" in name)
                b = names.index(reading.of[0])
                assert found == (given[0] if (a - b) % 2 == 0 else 180 - given[0]), text
            seen += 1
    assert seen > 20


def test_several_letters_are_held_together_by_one_equation() -> None:
    figure = Angles("line", (60, 70, 50), ((1, X), (2, t.Sym("y")), (3, deg(50))))
    assert [line(relation) for relation in kind_of(figure).relations(figure)] == ["x + y = 130°"]
    assert disagreement(figure) == ""
    forms = Angles("line", (60, 120), ((1, parse("(2x)°")), (2, parse("(3x + 30)°"))))
    assert [line(relation) for relation in kind_of(forms).relations(forms)] == ["x = 30"]
    assert Fraction(30) == exact(parse("30"))


def test_bad_data_is_refused() -> None:
    data = {"kind": "angles", "arrangement": "line", "sizes": [48, 132], "labels": [[1, "48°"]]}
    for changes, said in (
        ({"arrangement": "lines"}, "none of"),
        ({"sizes": [180]}, "2 to 6"),
        ({"sizes": [1] * 180}, "2 to 6"),
        ({"sizes": [10, 170]}, "15° or more"),
        ({"labels": [[3, "x"]]}, "numbered from 1 to 2"),
        ({"labels": [[1, "48"]]}, "with °"),
        ({"labels": [[1, "48 cm"]]}, "no angle"),
        ({"turn": 400}, "turned"),
        ({"arrangement": "crossing"}, "one size"),
    ):
        with pytest.raises(FigureError, match=said):
            from_data({**data, **changes})
    with pytest.raises(FigureError):
        of_figure(LINE, ("Find the value of ", t.Sym("y"), "."))
