"""Scatter graphs: what is read is what stands there, wordings, and the lies they are caught in."""

from __future__ import annotations

import statistics
from dataclasses import replace
from fractions import Fraction

import pytest

from itembank.figures.figure import FigureError, Reading, drawn, fault, read
from itembank.figures.kinds.chart.scatter_graph import ScatterGraph
from itembank.items.asks.of_figure import of_figure
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.value import exact
from itembank.proof.measured.measure import disagreement, measuring
from tests.figures.every_figure import examples
from tests.figures.held import LIED, holds

DATA = ((1, 5), (3, 10), (4, 15), (7, 30), (11, 35))
PLANTS = ScatterGraph(
    *("Age (weeks)", "Height (cm)", 12, 40, 1, 5),
    tuple((t.Int(x), t.Int(y)) for x, y in DATA),
    ((t.Int(0), t.Int(5)), (t.Int(12), t.Int(35))),
)


def test_a_type_of_correlation_is_the_sign_of_pearsons_coefficient():
    """Read only where all points rise or all fall, so that no other measure could differ."""
    found = 0
    for figure in examples("scatter graph", 120):
        try:
            said = read(figure, Reading("correlation"))
        except FigureError:
            continue
        xs, ys = zip(*((exact(x), exact(y)) for x, y in figure.data), strict=True)
        assert (statistics.correlation(xs, ys) > 0) == (said == t.Label("positive"))
        found += 1
    assert found > 10


def test_points_that_do_not_all_rise_have_no_type_that_is_read():
    up_and_down = replace(PLANTS, data=(*PLANTS.data[:4], (t.Int(11), t.Int(25))))
    for figure in (up_and_down, replace(PLANTS, data=PLANTS.data[:3])):
        with pytest.raises(FigureError):
            read(figure, Reading("correlation"))


def test_two_points_that_are_nearly_as_far_are_no_outlier():
    assert line(read(PLANTS, Reading("outlier"))) == "(7, 30)"
    twice = replace(PLANTS, data=(*PLANTS.data, (t.Int(9), t.Int(20))))
    with pytest.raises(FigureError):
        read(twice, Reading("outlier"))


@pytest.mark.parametrize(
    "asked",
    [
        "What is the height of the plant with an age of 5 weeks?",  # no such plant
        "What is the age of the plant with an age of 4 weeks?",
        "What is the mass of the plant with an age of 4 weeks?",
        "What is the height, in metres, of the plant with an age of 4 weeks?",
        "What is the height of the plant with an age of 4 days?",
        "How many plants do not have a height of more than 15 cm?",
        "How many plants have a height of more than 15 weeks?",
        "Use the line of best fit to estimate the height of a plant with an age of 6.3 weeks.",
        "Use the line of best fit to estimate the height of a plant with an age of 20 weeks.",
        "How strong is the correlation?",
    ],
)
def test_what_it_does_not_show_is_refused(asked):
    with pytest.raises(FigureError):
        of_figure(PLANTS, (asked,))


@holds(LIED, "scatter graph")
def test_a_cross_out_of_place_and_a_line_that_slips_are_found_out():
    moved = replace(PLANTS, data=(*PLANTS.data[:4], (t.Int(11), t.Dec("37", "5"))))
    found = measuring(PLANTS).measure(drawn(moved), Reading("value", ("x", "11")))
    assert exact(found) == Fraction(75, 2) != exact(read(PLANTS, Reading("value", ("x", "11"))))
    slipped = replace(PLANTS, best=((t.Int(0), t.Int(5)), (t.Int(12), t.Int(40))))
    found = measuring(PLANTS).measure(drawn(slipped), Reading("estimate", ("x", "12")))
    assert line(found) == "40"
    assert disagreement(PLANTS) == ""


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ({"right": 13, "x_step": 2}, "whole number of squares"),
        ({"x_title": ""}, "title"),
        ({"data": ()}, "1 to 16 points"),
        ({"data": ((t.Int(13), t.Int(5)),)}, "off the grid"),
        ({"data": ((t.Int(1), t.Int(6)),)}, "between the halves"),
        ({"data": ((t.Int(1), t.Int(5)), (t.Int(1), t.Int(5)))}, "one place"),
        ({"best": ((t.Int(12), t.Int(5)), (t.Int(0), t.Int(35)))}, "from left to right"),
    ],
)
def test_data_that_contradicts_itself_is_refused(change, said):
    assert said in fault(replace(PLANTS, **change))
