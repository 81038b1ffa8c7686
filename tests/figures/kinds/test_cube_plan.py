"""Plans of cubes: a block of numpy built from the words alone, planted lies, what is refused."""

from __future__ import annotations

import re
from fractions import Fraction

import numpy as np
import pytest

from itembank.figures.figure import FigureError, Reading, drawn, fault, read, words
from itembank.figures.kinds.solid.cube_plan import CubePlan
from itembank.items.asks.of_figure import as_find, of_figure
from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.proof.measured.measure import as_measured, measured
from tests.figures.every_figure import examples
from tests.figures.held import LIED, TOLD, holds
from tests.figures.lies import found_out, moved, relabelled, without


def block(text: str) -> np.ndarray:
    """Return the cubes that words tell of: by row from the back, by column, by height."""
    rows = re.search(r"right: (.*)\.$", text)[1].replace("none", "0").split("; ")
    heights = np.array([[int(n) for n in row.split(", ")] for row in rows])
    return np.arange(9)[None, None, :] < heights[:, :, None]


def counts(solid: np.ndarray) -> dict[Reading, int]:
    box = [len(np.flatnonzero(solid.any(axis=axes))) for axes in ((1, 2), (0, 2), (0, 1))]
    return {
        Reading("cubes"): solid.sum(),
        Reading("squares", ("plan",)): solid.any(axis=2).sum(),
        Reading("squares", ("front elevation",)): solid.any(axis=0).sum(),
        Reading("squares", ("side elevation",)): solid.any(axis=1).sum(),
        Reading("cuboid"): np.prod([solid.shape[0], solid.shape[1], box[2]]),
    }


@holds(TOLD, "cube plan")
def test_numpy_sees_as_many_squares_from_each_side():
    for figure in examples("cube plan", 80, seed=6):
        for reading, count in counts(block(words(figure))).items():
            assert exact(read(figure, reading)) == count, (figure, reading)
            assert exact(measured(figure, reading)) == count, (figure, reading)


PLAN = CubePlan(((2, 1, 3), (1, 0, 2)))


@holds(LIED, "cube plan")
def test_drawings_that_lie_are_found_out():
    assert not found_out(PLAN, drawn(PLAN))
    for lie in (
        relabelled(PLAN, "number", t.Int(4)),
        without(PLAN, "number"),
        without(PLAN, "square", 2),
        without(PLAN, "front"),
        moved(PLAN, "front", Fraction(0), Fraction(9)),
        moved(PLAN, "side", Fraction(-9), Fraction(0)),
        moved(PLAN, "square", Fraction(1, 2), Fraction(0)),
    ):
        assert found_out(PLAN, lie)


@pytest.mark.parametrize(
    ("words_", "value"),
    [
        ("How many cubes are there altogether?", 9),
        ("How many cubes is the solid made of?", 9),
        ("How many squares does the plan have?", 5),
        ("How many squares does the front elevation have?", 6),
        ("How many squares does the side elevation have?", 5),
        ("How many more squares does the front elevation have than the plan?", 1),
        ("What is the least number of cubes that have to be added to make a cuboid?", 9),
    ],
)
def test_ways_to_ask(words_, value):
    ask = of_figure(PLAN, (words_,))
    assert exact(as_find(ask).target) == exact(as_measured(ask).target) == value


@pytest.mark.parametrize(
    "words_",
    [
        "How many squares does the back elevation have?",
        "How many more squares does the plan have than the front elevation?",
        "How many cubes are not there?",
    ],
)
def test_what_it_does_not_show_is_refused(words_):
    with pytest.raises(FigureError):
        of_figure(PLAN, (words_,))


@pytest.mark.parametrize(
    ("rows", "said"),
    [
        (((1, 2), (3,)), "of one length"),
        (((1, 0), (2, 0)), "has no cubes"),
        (((1, 12),), "0 to 9 cubes"),
        (((1,) * 5,), "1 to 4 rows"),
    ],
)
def test_what_is_no_plan_is_refused(rows, said):
    assert said in fault(CubePlan(rows))
