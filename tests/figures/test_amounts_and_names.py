"""Amounts of one figure are of one sort and its answers in their currency; each name is one thing.

Each of these was once taken otherwise: as many metres as pounds agreed, euros were answered in
pounds, and *Monday* was read off the bar of *Mon*.
"""

from __future__ import annotations

import re
from itertools import permutations

import pytest

from itembank.figures.figure import FigureError, Reading, fault, kind_of, read
from itembank.figures.kinds.chart.bar_chart import BarChart, Series
from itembank.figures.kinds.chart.pictogram import Pictogram
from itembank.figures.kinds.number.bar_model import Bar, BarModel, Box
from itembank.figures.kinds.number.double_number_line import DoubleNumberLine, Pair
from itembank.figures.kinds.number.growing_pattern import GrowingPattern
from itembank.figures.kinds.number.number_line import NumberLine
from itembank.figures.kinds.sets.venn_diagram import VennDiagram
from itembank.figures.kinds.solid.net import Net
from itembank.figures.kinds.solid.solid import Solid
from itembank.figures.kinds.table.bus_timetable import Timetable
from itembank.figures.kinds.table.frequency_table import FrequencyTable
from itembank.figures.kinds.table.two_way_table import TwoWayTable
from itembank.items.asks.of_figure import asked_in
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.parse import parse
from itembank.proof.measured.measure import disagreement


def bar(*labels: str, total: str = "") -> BarModel:
    boxes = tuple(Box(1, parse(label) if label else None) for label in labels)
    return BarModel((Bar(boxes),), parse(total) if total else None)


SORTS = ("£10", "10 m", "10", "€10", "10 kg")


@pytest.mark.parametrize(("first", "second"), [*permutations(SORTS, 2)])
def test_amounts_of_two_sorts_do_not_agree(first: str, second: str) -> None:
    boxes = (Box(4, parse(first)), Box(4, parse(second)))
    assert "of one sort" in fault(BarModel((Bar(boxes),)))
    # As many at one mark as stand there by the other.
    five = parse(first.replace("10", "5"))
    pairs = (Pair(2, five, t.Int(3)), Pair(4, parse(second), t.Sym("x")))
    assert "of one sort" in fault(DoubleNumberLine(4, pairs))


@pytest.mark.parametrize(("first", "second"), [("50p", "£0.50"), ("2 m", "200 cm"), ("5", "5.0")])
def test_amounts_of_one_sort_may_be_written_in_two_ways(first: str, second: str) -> None:
    boxes = (Box(4, parse(first)), Box(4, parse(second)))
    assert fault(BarModel((Bar(boxes),))) == ""


@pytest.mark.parametrize(
    ("total", "part"),
    [("€40", "€8"), ("$40", "$8"), ("£40", "£8"), ("50p", "£0.10"), ("$7", "$1.40")],
)
def test_a_part_is_in_the_currency_of_the_whole(total: str, part: str) -> None:
    figure = bar("", "", "", "", "", total=total)
    assert line(read(figure, Reading("part"))) == part
    assert disagreement(figure) == ""


def test_a_day_cut_short_is_that_day() -> None:
    names = ("Mon", "Monday", "Tue")
    told = "two of its {} have one name"
    chart = BarChart(names, (Series((2, 4, 6)),), 2, 1, "Books")
    assert fault(chart) == told.format("categories")
    assert fault(Pictogram(names, (2, 4, 6), 2, "books")) == told.format("rows")
    labels = tuple(map(t.Label, names))
    assert fault(FrequencyTable("Day", labels, (2, 4, 6))) == told.format("values")


COUNTS = ((1, 2, 3), (4, 5, 9), (5, 7, 12))


def two_ways(rows: tuple[str, str], columns: tuple[str, str]) -> TwoWayTable:
    return TwoWayTable(rows, columns, tuple(tuple(map(t.Int, row)) for row in COUNTS))


def test_what_is_wrong_with_names_of_a_table_is_told_by_itself() -> None:
    assert fault(two_ways(("Mon", "Monday"), ("a", "b"))) == "two of its rows have one name"
    total = "one of its columns is called ‘Total’, and that is there already"
    assert fault(two_ways(("Mon", "Tue"), ("a", "total"))) == total


def test_a_name_of_a_row_and_of_a_column_asks_for_neither() -> None:
    table = two_ways(("Yes", "No"), ("Yes", "No"))
    assert fault(table) == ""
    with pytest.raises(FigureError, match="both a row and a column"):
        asked_in(table, ("How many said yes altogether?",))
    table = two_ways(("Yes", "No"), ("girls", "boys"))
    (reading,) = (reading for _, reading in asked_in(table, ("How many said yes?",)).readings)
    assert line(read(table, reading)) == "3"


@pytest.mark.parametrize("number", [0, 1, -4])
def test_a_member_that_stands_twice_is_found_whatever_it_is(number: int) -> None:
    sets = VennDiagram("A", "B", (number,), (number,), (), (), members=True)
    assert fault(sets) == f"{number} stands in it twice"


CROSS = tuple((x, y, 1, 1) for x, y in ((1, 0), (1, 1), (1, 2), (1, 3), (0, 1), (2, 1)))
WRAP = ((2, 0, 3, 2), (2, 2, 3, 4), (2, 6, 3, 2), (2, 8, 3, 4), (0, 2, 2, 4), (5, 2, 2, 4))


@pytest.mark.parametrize(
    "asks",
    ["What is the volume of the {}?", "How long is the longest edge of the {}?"],
)
def test_a_net_is_called_the_box_that_it_folds_to(asks: str) -> None:
    for pieces, box, no_box in ((CROSS, "cube", "cuboid"), (WRAP, "cuboid", "cube")):
        net = Net((pieces,), unit="cm")
        assert fault(net) == ""
        assert asked_in(net, (asks.format(box),)).readings
        with pytest.raises(FigureError, match=f"no net of a {no_box}"):
            asked_in(net, (asks.format(no_box),))


@pytest.mark.parametrize("name", ["a", "ab", "é", "É", ""])
def test_points_of_a_number_line_have_letters_that_questions_know(name: str) -> None:
    figure = NumberLine(t.Int(0), t.Int(10), 10, (), ((name, 3),))
    assert "single capital letters" in fault(figure)


@pytest.mark.parametrize("number", ["²", "9" * 5000, "x", ""])
def test_what_is_no_number_is_not_read(number: str) -> None:
    for figure, name in (
        (GrowingPattern(3, 2), "tiles"),
        (GrowingPattern(3, 2), "pattern"),
        (Solid("prism", 6), "sided"),
    ):
        with pytest.raises(FigureError):
            read(figure, Reading(name, (number,)))


def test_a_row_of_names_that_is_too_long_is_counted_whole() -> None:
    stops = tuple((f"Stop {n}", (t.ClockTime(8, n),)) for n in range(30))
    assert re.search(r"not 30$", fault(Timetable(stops)))


def test_a_number_in_a_question_about_a_table_of_numbers_is_no_name() -> None:
    goals = FrequencyTable("Goals", tuple(map(t.Int, range(3))), (4, 5, 6), "Matches")
    for asked in ("How many matches had {2} goals?", "Find the mode of the number of {2}."):
        with pytest.raises(FigureError):
            asked_in(goals, (asked,))


def test_a_letter_that_the_totals_do_not_settle_is_not_read() -> None:
    cells = ((None, t.Sym("x"), t.Int(3)), (None, None, t.Int(9)), (t.Int(5), t.Int(7), t.Int(12)))
    table = TwoWayTable(("7M", "8K"), ("walk", "bus"), cells)
    assert fault(table) == ""
    assert all(reading.name == "count" for reading in kind_of(table).readings(table))
