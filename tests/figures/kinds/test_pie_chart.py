"""Pie charts: their words rebuild the facts, lies are found out, and questions are read whole."""

from __future__ import annotations

import dataclasses
import re
from fractions import Fraction
from itertools import combinations

import pytest
from hypothesis import event, given
from hypothesis import strategies as st

from itembank.figures.drawing import Stroke, Text, text_box
from itembank.figures.figure import FigureError, Reading, drawn, fault, kind_of, read, words
from itembank.figures.kinds.chart.pie_chart import PieChart
from itembank.figures.kinds.chart.pie_drawn import labels_of, pie_drawing, too_near
from itembank.items.asks.of_figure import as_find, of_figure
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.parse import parse
from itembank.notation.value import NotExact, exact
from itembank.proof.measured.chart.pie_chart_measured import MEASURING
from itembank.proof.measured.measure import as_measured, measuring
from tests.figures.every_figure import examples
from tests.figures.held import LIED, TOLD, holds

TRAVEL = PieChart((("Bus", 150), ("Walk", 90), ("Cycle", 120)), "pupils", 24)
LETTER = PieChart((("Leeks", 200), ("Kale", 90), ("Beans", 70)), letters=(("Beans", "x"),))


def rebuilt(text: str) -> tuple[dict[str, int], int]:
    """Return the degrees of each sector and the total (0 if not said), from the words alone."""
    sizes = {
        name: 90 if size == "a right angle" else int(size.split()[0]) if size[0].isdigit() else 0
        for name, size in re.findall(r"The angle of the sector (.+?) is (.+?)\.", text)
    }
    for name, size in sizes.items():
        sizes[name] = size or 360 - sum(sizes.values())
    total = re.search(r"stands for (\d+)", text)
    return sizes, int(total[1]) if total else 0


@holds(TOLD, "pie chart")
def test_the_words_are_enough_to_answer() -> None:
    for figure in examples("pie chart", 60, seed=2):
        sizes, total = rebuilt(words(figure))
        for name, degrees in sizes.items():
            assert read(figure, Reading("angle", (name,))) == t.Quantity(t.Int(degrees), "°")
            assert exact(read(figure, Reading("fraction", (name,)))) == Fraction(degrees, 360)
            if total:
                number = exact(read(figure, Reading("value", (name,))))
                assert number == Fraction(total * degrees, 360)


@pytest.mark.parametrize(
    ("question", "answer"),
    [
        ("How many pupils walk?", "6"),
        ("How many pupils chose bus?", "10"),
        ("How many pupils are there altogether?", "24"),
        ("How many more pupils cycle than walk?", "2"),
        ("How many pupils cycle or walk in total?", None),
        ("What fraction of the pupils chose Cycle?", "1/3"),
        ("What is the angle of the Bus sector?", "150°"),
        ("Work out the size of the angle for Cycle.", "120°"),
        ("How many degrees represent one pupil?", "15°"),
        ("The pie chart shows how pupils travel. Which sector is the smallest?", '"Walk"'),
        ("How many sectors are there in total?", None),
        ("How many pupils do not walk?", None),
        ("What is the angle of the train sector?", None),
        ("How many teachers walk?", None),
    ],
)
def test_a_question_is_read_whole_or_refused(question: str, answer: str | None) -> None:
    if answer is None:
        with pytest.raises(FigureError):
            as_find(of_figure(TRAVEL, (question,)))
        return
    target = as_find(of_figure(TRAVEL, (question,))).target
    if '"' in answer or "°" in answer:
        assert line(target) == answer
    else:
        assert exact(target) == exact(parse(answer))


def test_a_letter_is_settled_by_what_a_whole_turn_is() -> None:
    ask = of_figure(LETTER, ("Work out the value of ", t.Sym("x"), "."))
    for found in (as_find(ask), as_measured(ask)):
        assert [line(relation) for relation in found.relations] == ["200 + 90 + x = 360"]
    with pytest.raises(FigureError, match="called ‘y’"):
        of_figure(LETTER, ("Work out the value of ", t.Sym("y"), "."))


def test_a_pie_without_a_total_counts_nothing() -> None:
    figure = PieChart((("Leeks", 200), ("Kale", 160)))
    with pytest.raises(FigureError, match="how many there are in all"):
        read(figure, Reading("value", ("Kale",)))


@pytest.mark.parametrize("lie", ["angle", "sector", "pointer", "total", "right angle"])
@holds(LIED, "pie chart")
def test_planted_lies_are_found_out(lie: str) -> None:
    made = drawn(TRAVEL)
    marks = list(made.marks)
    at = next(i for i, mark in enumerate(marks) if mark.role == lie)
    mark = marks[at]
    if lie == "angle":
        marks[at] = dataclasses.replace(mark, content=t.Quantity(t.Int(140), "°"))
    elif lie == "sector":
        marks[at] = dataclasses.replace(mark, start=mark.end, end=mark.start)
    elif lie == "total":
        marks[at] = dataclasses.replace(mark, content="Total: 48 pupils")
    else:
        assert isinstance(mark, Stroke)
        points = tuple(point._replace(x=-point.x, y=-point.y) for point in mark.points)
        marks[at] = dataclasses.replace(mark, points=points)
    false = dataclasses.replace(made, marks=tuple(marks))
    wrong = 0
    for reading in kind_of(TRAVEL).readings(TRAVEL):
        try:
            wrong += line(measuring(TRAVEL).measure(false, reading)) != line(read(TRAVEL, reading))
        except NotExact:
            wrong += 1
    assert wrong


@pytest.mark.parametrize(
    ("figure", "said"),
    [
        (PieChart((("Bus", 150), ("Walk", 200))), "add up to 350°, not to 360°"),
        (PieChart((("Bus", 150), ("bus", 210))), "two of its names"),
        (PieChart((("Bus", 5), ("Walk", 355))), "the angle of ‘Bus’ is 5°"),
        (PieChart((("Bus", 150), ("Walk", 210)), "pupils", 10), "is no whole number"),
        (PieChart((("Bus", 150), ("Walk", 210)), "", 12), "say what is counted"),
        (PieChart((("Bus", 150), ("Walk", 210)), letters=(("Tram", "x"),)), "no sector called"),
        (PieChart((("Bus", 150),) * 10_000_000), "2 to 8 categories"),
    ],
)
def test_what_cannot_be_drawn_is_said_plainly(figure: PieChart, said: str) -> None:
    assert said in kind_of(figure).fault(figure)


def test_sectors_of_regular_polygons_are_their_angles_at_the_centre() -> None:
    """Central angles of the regular pentagon and hexagon, 72° and 60° (Euclid IV; from memory)."""
    for sides, degrees in ((5, 72), (6, 60)):
        figure = PieChart(tuple((f"Part {n}", degrees) for n in range(sides)))
        assert fault(figure) == ""
        found = MEASURING.measure(drawn(figure), Reading("fraction", ("Part 0",)))
        assert exact(found) == Fraction(1, sides)


@st.composite
def pies(draw: st.DrawFn) -> PieChart:
    """Return a pie chart whose labels may have no room side by side."""
    parts = draw(st.lists(st.integers(1, 12), min_size=2, max_size=7))
    whole = sum(parts)
    sizes = [15 + (360 - 15 * len(parts)) * part // whole for part in parts[1:]]
    names = draw(
        st.permutations(("Bus", "Walk", "Tram", "Ferry", "Bicycle", "Motorcycle", "On foot"))
    )
    sectors = zip(names, (360 - sum(sizes), *sizes), strict=False)
    return PieChart(tuple(sectors), letters=((names[0], "x"),) if draw(st.booleans()) else ())


@given(pies())
def test_labels_that_are_too_near_are_told_as_their_boxes_in_the_drawing_say(pie: PieChart) -> None:
    labels = labels_of(pie)
    drawn_there = [mark for mark in pie_drawing(pie).marks if isinstance(mark, Text)]
    boxes = [text_box(mark) for mark in drawn_there]
    found = next(
        (
            (labels[i].name, labels[j].name)
            for i, j in combinations(range(len(labels)), 2)
            if labels[i].name != labels[j].name and boxes[i].meets(boxes[j], Fraction(1, 5))
        ),
        None,
    )
    event("crowded" if found else "roomy")
    assert too_near(pie) == found
