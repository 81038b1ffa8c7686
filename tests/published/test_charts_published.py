"""Charts and tables against tables of books: every value, total and average by both roads.

All of them are from memory; the sums that the sources print too say that they are copied right.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest

from itembank.figures.figure import Figure, Reading, read
from itembank.figures.kinds.chart.bar_chart import BarChart, Series
from itembank.figures.kinds.chart.line_graph import LineGraph
from itembank.figures.kinds.chart.pictogram import Pictogram
from itembank.figures.kinds.chart.pie_chart import PieChart
from itembank.figures.kinds.table.frequency_table import FrequencyTable
from itembank.figures.kinds.table.two_way_table import TwoWayTable
from itembank.items.asks.of_figure import as_find, of_figure
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.value import exact
from itembank.proof.measured.measure import as_measured, measured


def holds(figure: Figure, reading: Reading, value: Fraction | int) -> None:
    for way in (read, measured):
        assert exact(way(figure, reading)) == value, (way, reading)


# Mendel, Versuche über Pflanzen-Hybriden (1866), 556 seeds of peas, from memory: 315 round and
# yellow, 101 rough (angular, in his words) and yellow, 108 round and green, 32 rough and green.
PEAS = ((315, 108), (101, 32))


def _peas(*hidden: tuple[int, int]) -> TwoWayTable:
    rows = [[*row, sum(row)] for row in PEAS]
    rows.append([sum(column) for column in zip(*rows, strict=True)])
    cells = tuple(
        tuple(None if (r, c) in hidden else t.Int(n) for c, n in enumerate(row))
        for r, row in enumerate(rows)
    )
    return TwoWayTable(("round", "rough"), ("yellow", "green"), cells)


@pytest.mark.parametrize("hidden", [(), ((0, 0), (2, 1)), ((1, 1), (1, 0), (0, 2))])
def test_mendels_peas_in_a_two_way_table(hidden: tuple[tuple[int, int], ...]) -> None:
    """The totals are those of his text: 423 round and 133 wrinkled, 416 yellow and 140 green."""
    figure = _peas(*hidden)
    for of, value in (
        (("round", "yellow"), 315),
        (("rough", "green"), 32),
        (("round", "Total"), 423),
        (("rough", "Total"), 133),
        (("Total", "yellow"), 416),
        (("Total", "green"), 140),
        (("Total", "Total"), 556),
    ):
        holds(figure, Reading("count", of), value)


def test_mendels_law_in_a_pie_chart() -> None:
    """Three of four to one of four (the same work, from memory)."""
    figure = PieChart((("round", 270), ("wrinkled", 90)), "seeds", 32)
    for name, part in (("round", Fraction(3, 4)), ("wrinkled", Fraction(1, 4))):
        holds(figure, Reading("fraction", (name,)), part)
        holds(figure, Reading("value", (name,)), 32 * part)


# Pascal, Traité du triangle arithmétique (1665), from memory: five coins fall in 32 ways, and show
# 0 to 5 heads in 1, 5, 10, 10, 5 and 1 of them.
def test_pascals_coins_in_a_frequency_table() -> None:
    figure = FrequencyTable("Heads", tuple(map(t.Int, range(6))), (1, 5, 10, 10, 5, 1), "Ways")
    for name, value in (
        ("total", 32),
        ("mean", Fraction(5, 2)),
        ("median", Fraction(5, 2)),
        ("range", 5),
        ("sum", 80),
    ):
        holds(figure, Reading(name), value)
    for heads, ways in zip(range(6), (1, 5, 10, 10, 5, 1), strict=True):
        holds(figure, Reading("value", (str(heads),)), ways)


# Von Bortkiewicz, Das Gesetz der kleinen Zahlen (1898), from memory: in 200 reports there were 0 to
# 4 of what he counted in 109, 65, 22, 3 and 1, on average 0.61.
def test_the_law_of_small_numbers_in_a_frequency_table() -> None:
    counts = (109, 65, 22, 3, 1)
    figure = FrequencyTable("Counted", tuple(map(t.Int, range(5))), counts, "Reports")
    holds(figure, Reading("total"), 200)
    holds(figure, Reading("mean"), Fraction("0.61"))
    holds(figure, Reading("median"), 0)
    for way in (read, measured):
        assert line(way(figure, Reading("largest"))) == "0"


# The first four months of a common year have 31, 28, 31 and 30 days: the Gregorian calendar, from
# memory.
def test_the_days_of_months_in_a_bar_chart() -> None:
    days = {"Jan": 31, "Feb": 28, "Mar": 31, "Apr": 30}
    figure = BarChart(tuple(days), (Series(tuple(days.values())),), 5, 5, "Days")
    holds(figure, Reading("total"), 120)
    for name, value in days.items():
        holds(figure, Reading("value", (name,)), value)
    for way in (read, measured):
        assert line(way(figure, Reading("smallest"))) == '"Feb"'


# Euclid, Elements XIII: the five solids have 4, 6, 8, 12 and 20 faces; from memory.
def test_euclids_solids_in_a_pictogram() -> None:
    faces = {"Tetra": 4, "Cube": 6, "Octa": 8, "Dodeca": 12, "Icosa": 20}
    figure = Pictogram(tuple(faces), tuple(faces.values()), 4, "faces")
    holds(figure, Reading("total"), 50)
    for name, value in faces.items():
        holds(figure, Reading("value", (name,)), value)


# Galileo, Two New Sciences (1638), third day, from memory: what falls goes 1, 4, 9, 16 units in 1,
# 2, 3, 4 equal times, so 1, 3, 5, 7 in each.
def test_galileos_fall_on_a_line_graph() -> None:
    points = (("1st", 1), ("2nd", 4), ("3rd", 9), ("4th", 16))
    figure = LineGraph(points, 5, 5, "Distance", "Time")
    for name, value in points:
        holds(figure, Reading("value", (name,)), value)
    for ((before, _), (after, _)), odd in zip(pairwise(points), (3, 5, 7), strict=True):
        ask = of_figure(figure, (f"By how much does the distance rise from {before} to {after}?",))
        for found in (as_find(ask), as_measured(ask)):
            assert exact(found.target) == odd
