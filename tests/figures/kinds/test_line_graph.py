"""Line graphs: their words rebuild the facts, lies are found out, and questions are read whole."""

from __future__ import annotations

import dataclasses
import itertools
import re
from fractions import Fraction

import pytest

from itembank.figures.drawing import Arc, Stroke, Text
from itembank.figures.figure import FigureError, Reading, drawn, kind_of, read, words
from itembank.figures.kinds.chart.line_graph import LineGraph
from itembank.items.asks.of_figure import as_find, of_figure
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.value import NotExact, exact
from itembank.proof.measured.measure import measuring
from tests.figures.every_figure import examples
from tests.figures.held import LIED, TOLD, holds

WARMTH = LineGraph(
    (("09:00", 12), ("10:00", 15), ("11:00", 19), ("12:00", 17)),
    5,
    5,
    "Temperature (°C)",
    "Time",
    "The greenhouse",
)


def rebuilt(text: str) -> dict[str, Fraction]:
    """Return the value at each place, from the words alone."""
    scale, between = re.search(r"in steps of (\d+)(?:, with (\d+) equal steps)?", text).groups()
    found = {}
    for name, place in re.findall(r"The point at (.+?) stands (.+?)\.", text):
        numbers = list(map(Fraction, re.findall(r"\d+", place)))
        if place.startswith("at "):
            (found[name],) = numbers
        elif place.startswith("halfway"):
            found[name] = sum(numbers) / 2
        else:
            found[name] = numbers[1] + numbers[0] * Fraction(int(scale), int(between))
    return found


@holds(TOLD, "line graph")
def test_the_words_are_enough_to_answer() -> None:
    for figure in examples("line graph", 60, seed=2):
        values = rebuilt(words(figure))
        gone = re.findall(r"No point is drawn at (.+?)\.", words(figure))
        assert gone == [figure.missing] * bool(figure.missing)
        assert len(values) == len(figure.points) - len(gone)
        for name, value in values.items():
            assert exact(read(figure, Reading("value", (name,)))) == value


@pytest.mark.parametrize(
    ("question", "answer"),
    [
        ("What was the temperature at 10:00?", "15"),
        ("At what time was the temperature {19} degrees?", "11:00"),
        ("At what time was the temperature {17}?", "12:00"),
        ("At what time was the temperature {16} degrees?", None),
        ("At what time was the temperature {19} cm?", None),
        ("At what time was the depth {19}?", None),
        ("On which plant was the temperature {19}?", None),
        ("At what time was the temperature not {19}?", None),
        (
            "The graph shows the temperature. At what time was the temperature highest?",
            "11:00",
        ),
        ("At which time was the temperature the lowest?", "09:00"),
        ("By how much did the temperature rise between 09:00 and 11:00?", "7"),
        ("How many degrees did the temperature fall from 11:00 to 12:00?", "2"),
        ("What is the difference between the temperature at 09:00 and at 10:00?", "3"),
        ("By how much did the temperature fall between 09:00 and 11:00?", None),
        ("By how much did the temperature rise between 11:00 and 09:00?", None),
        ("By how much did the price rise between 09:00 and 11:00?", None),
        ("What was the temperature at 10:30?", None),
        ("What was the total temperature?", None),
        ("What was the temperature at 10:00 and 11:00 in total?", None),
        ("What was the temperature not at 10:00?", None),
        ("What was the highest temperature?", None),
    ],
)
def test_a_question_is_read_whole_or_refused(question: str, answer: str | None) -> None:
    if answer is None:
        with pytest.raises(FigureError):
            as_find(of_figure(WARMTH, (question,)))
        return
    target = as_find(of_figure(WARMTH, (question,))).target
    assert (target.text if isinstance(target, t.Label) else str(exact(target))) == answer


@pytest.mark.parametrize("lie", ["graph", "point", "number", "place"])
@holds(LIED, "line graph")
def test_planted_lies_are_found_out(lie: str) -> None:
    made = drawn(WARMTH)
    marks = list(made.marks)
    at = max(i for i, mark in enumerate(marks) if mark.role == lie)
    mark = marks[at]
    if isinstance(mark, Stroke):
        first, *rest = mark.points
        marks[at] = dataclasses.replace(mark, points=(first._replace(y=first.y * 2), *rest))
    elif isinstance(mark, Arc):
        marks[at] = dataclasses.replace(mark, centre=mark.centre._replace(y=mark.centre.y + 1))
    else:
        assert isinstance(mark, Text)
        content = t.Int(900) if lie == "number" else "13:00"
        marks[at] = dataclasses.replace(mark, content=content)
    false = dataclasses.replace(made, marks=tuple(marks))
    wrong = 0
    for reading in kind_of(WARMTH).readings(WARMTH):
        try:
            wrong += line(measuring(WARMTH).measure(false, reading)) != line(read(WARMTH, reading))
        except NotExact:
            wrong += 1
    assert wrong


@pytest.mark.parametrize(
    ("figure", "said"),
    [
        (LineGraph((("Mon", 1), ("Tue", 7)), 2, 1, "Rain"), "does not stand on a line"),
        (LineGraph((("Mon", 1), ("Tue", 700)), 1, 1, "Rain"), "more than 8 lines"),
        (LineGraph((("Mon", -1), ("Tue", 7)), 1, 1, "Rain"), "from 0 to"),
        (LineGraph((("Mon", 1), ("mon", 7)), 1, 1, "Rain"), "two of its names"),
        (LineGraph((("Mon", 1), ("Monday", 7)), 1, 1, "Rain"), "two of its names"),
        (LineGraph((("Mon", 1), ("Tue", 7)), 1, 1), "counts"),
        (LineGraph((("Mon", 1),), 1, 1, "Rain"), "2 to 8 places"),
        (LineGraph((("Mon", 1),) * 10_000_000, 1, 1, "Rain"), "2 to 8 places"),
        (
            LineGraph(tuple((f"Wednesdays {n}", 4) for n in range(5)), 1, 1, "Rain"),
            "side by side",
        ),
    ],
)
def test_what_cannot_be_drawn_is_said_plainly(figure: LineGraph, said: str) -> None:
    assert said in kind_of(figure).fault(figure)


def test_squares_grow_by_the_odd_numbers() -> None:
    """Each square is an odd number more than the one before (Nicomachus; from memory)."""
    figure = LineGraph(tuple((f"{n}", n * n) for n in range(1, 5)), 5, 5, "Square", "Number")
    values = [
        exact(measuring(figure).measure(drawn(figure), Reading("value", (str(n),))))
        for n in range(1, 5)
    ]
    assert [b - a for a, b in itertools.pairwise(values)] == [3, 5, 7]
