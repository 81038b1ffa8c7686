"""Questions about charts and tables of counts are read whole, or refused."""

from __future__ import annotations

import re

import pytest

from itembank.figures.figure import Figure, FigureError
from itembank.figures.kinds.chart.bar_chart import BarChart, Series
from itembank.figures.kinds.chart.chart_axis import scale_fault
from itembank.figures.kinds.chart.pictogram import Pictogram
from itembank.figures.kinds.table.frequency_table import FrequencyTable
from itembank.figures.kinds.table.two_way_table import TwoWayTable
from itembank.items.asks.of_figure import as_find, of_figure
from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.proof.measured.measure import as_measured

BARS = BarChart(("Mon", "Tue", "Wed"), (Series((12, 8, 10)),), 4, 2, "Trays")
TWO = BarChart(
    ("Mon", "Tue"), (Series((12, 8), "leeks"), Series((4, 16), "kale")), 4, 1, "Trays sold"
)
WAYS = FrequencyTable("Way", tuple(map(t.Label, ("bus", "car"))), (9, 4), "Pupils")
GOALS = FrequencyTable("Goals", tuple(map(t.Int, (0, 1, 2))), (4, 5, 6), "Matches")
SQUARES = Pictogram(("Monday", "Tuesday"), (8, 10), 4, "trays")
CLASSES = TwoWayTable(
    ("7M", "8K"),
    ("girls", "boys"),
    tuple(tuple(map(t.Int, row)) for row in ((14, 16, 30), (13, 12, 25), (27, 28, 55))),
)
ANSWERED = [
    (BARS, "How many trays were sold on Tue?", "8"),
    (BARS, "How many trays were sold on Tuesday?", "8"),
    (BARS, "How many more trays were sold on Monday than on Tuesday?", "4"),
    (BARS, "How many more trays were sold on Mon than on Tue?", "4"),
    (BARS, "How many trays were sold on Mon and Tue altogether?", "20"),
    (BARS, "How many trays were sold altogether?", "30"),
    (BARS, "On which day were the most trays sold?", "Mon"),
    (TWO, "How many trays of kale were sold on Tue?", "16"),
    (TWO, "How many trays of kale were sold on Tuesday?", "16"),
    (TWO, "How many trays of leeks were sold altogether?", "20"),
    (TWO, "On which day were the most trays of kale sold?", "Tue"),
    (SQUARES, "How many fewer trays were sold on Monday than on Tuesday?", "2"),
    (WAYS, "Which way did the most pupils choose?", "bus"),
    (CLASSES, "How many girls are in 7M?", "14"),
    (CLASSES, "How many pupils are in 8K?", "25"),
    (CLASSES, "How many pupils are there altogether?", "55"),
    (GOALS, "Find the mean number of goals.", "17/15"),
    (GOALS, "Find the mode of the number of goals.", "2"),
    (GOALS, "What is the median?", "1"),
    (GOALS, "How many goals are there altogether?", "17"),
    (GOALS, "Work out the total number of goals.", "17"),
    (GOALS, "How many matches are there altogether?", "15"),
    (GOALS, "Work out the total number of matches.", "15"),
]
REFUSED = [
    (GOALS, "Find the mean number of matches."),
    (GOALS, "Find the mean of the frequencies."),
    (GOALS, "Find the median of the matches."),
    (GOALS, "Find the range of points."),
    (GOALS, "How many goals were missed altogether?"),
    (GOALS, "Find the mean number of goals not scored."),
    (BARS, "How many days were there altogether?"),
    (BARS, "How many hours were worked in total?"),
    (BARS, "How many trays were sold from Mon to Wed altogether?"),
    (BARS, "How many trays were sold before Tue in total?"),
    (BARS, "How many trays were not sold on Mon?"),
    (BARS, "How many trays were sold on Mon and Tue?"),
    (BARS, "How many boxes were broken on Mon?"),
    (BARS, "How many more trays were sold on Tue than on Mon?"),
    (BARS, "Which day sold the second most?"),
    (BARS, "Which day has the most letters in its name?"),
    (TWO, "How many trays were sold on Mon?"),
    (TWO, "On which day were the most trays sold?"),
    (SQUARES, "How many squares are there on Monday?"),
    (WAYS, "How many pupils chose the train?"),
    (CLASSES, "How many girls in 7M are tall?"),
    (CLASSES, "How many girls are not in 7M?"),
    (CLASSES, "How many girls are in 7M or 8K?"),
    (CLASSES, "How many more girls than boys are in 7M?"),
]


@pytest.mark.parametrize(("figure", "question", "answer"), ANSWERED)
def test_a_question_is_answered_alike_from_the_data_and_from_the_drawing(
    figure: Figure, question: str, answer: str
) -> None:
    ask = of_figure(figure, (question,))
    for found in (as_find(ask).target, as_measured(ask).target):
        assert (found.text if isinstance(found, t.Label) else str(exact(found))) == answer


@pytest.mark.parametrize(("figure", "question"), REFUSED)
def test_what_would_be_another_question_is_refused(figure: Figure, question: str) -> None:
    with pytest.raises(FigureError):
        of_figure(figure, (question,))


def test_a_scale_that_does_not_fit_is_told_with_one_that_does() -> None:
    for values, scale, said in (
        ((4, 70), 2, "more than 8 lines for 70; steps of 10, cut into 5, would fit"),
        ((30, 60), 200, "too coarse for 60; steps of 10 would fit"),
        ((1, 9999), 10, "no scale fits all of its values"),
    ):
        assert said in scale_fault(values, scale, 1)
        offered = re.search(r"steps of (\d+)(?:, cut into (\d),)? would fit", said)
        if offered:
            assert scale_fault(values, int(offered[1]), int(offered[2] or 1)) == ""
