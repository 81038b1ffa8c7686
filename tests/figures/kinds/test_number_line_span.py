"""Spans of number lines: their words rebuild the facts, lies are found out, faults are told."""

from __future__ import annotations

import dataclasses
import re

import pytest

from itembank.figures.drawing import Arc, Drawing, Mark, Stroke
from itembank.figures.figure import FigureError, Reading, drawn, fault, kind_of, read, words
from itembank.figures.figure_data import from_data, to_data
from itembank.figures.kinds.number.line_span import Span
from itembank.figures.kinds.number.number_line import Jump, NumberLine
from itembank.items.asks.of_figure import as_find, of_figure
from itembank.notation import parse
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.value import NotExact
from itembank.proof.exact.exact_road import ROAD as EXACT
from itembank.proof.measured.measure import disagreement, measuring
from itembank.proof.sympy.sympy_road import ROAD as SYMPY
from tests.figures.every_figure import examples

INEQUALITY = Reading("inequality", ("x",))


def shown(span: Span) -> NumberLine:
    return NumberLine(t.num(-4), t.num(6), 10, (2, 4, 6, 8), span=span)


BOTH = shown(Span(2, 7, high_counts=True))
UP = shown(Span(low=3, low_counts=True))
DOWN = shown(Span(high=5))


def spans() -> list[NumberLine]:
    found = [
        example
        for example in examples("number line", 200, seed=5)
        if isinstance(example, NumberLine)
    ]
    return [each for each in found if each.span is not None]


def test_the_words_are_enough_to_answer() -> None:
    assert len(spans()) > 20
    for figure in spans():
        assert figure.span is not None
        said = words(figure)
        circles = re.findall(r"an? (open|filled) circle (\d+) steps? after", said)
        places = [int(at) for _, at in circles]
        counts = [kind == "filled" for kind, _ in circles]
        span = figure.span
        if len(circles) == 2:
            assert (places, counts) == ([span.low, span.high], [span.low_counts, span.high_counts])
        elif "to the right" in said:
            assert (places, counts, span.high) == ([span.low], [span.low_counts], None)
        else:
            assert "to the left" in said
            assert (places, counts, span.low) == ([span.high], [span.high_counts], None)


@pytest.mark.parametrize(
    ("figure", "question", "answer"),
    [
        (BOTH, "Write the inequality for {x}.", "-2 < x ≤ 3"),
        (UP, "What is the inequality for {n}?", "n ≥ -1"),
        (DOWN, "Write down the inequality in {y} that is shown.", "y < 1"),
        (BOTH, "List all the integers that {x} can be.", "-1, 0, 1, 2, 3"),
        (UP, "What is the smallest integer that {x} can be?", "-1"),
        (DOWN, "What is the largest integer that {x} can be?", "0"),
    ],
)
def test_questions_are_read_and_answered_by_both_roads(
    figure: NumberLine, question: str, answer: str
) -> None:
    letter = question[question.index("{") + 1]
    before, _, after = question.partition(f"{{{letter}}}")
    ask = of_figure(figure, (before, t.Sym(letter), after))
    assert line(as_find(ask).target) == answer
    for road in (EXACT, SYMPY):
        assert not road.of(ask)(ask, parse(answer)).fault
    turned = answer.translate(str.maketrans("<≤>≥", "≤<≥>"))
    wrong = parse(turned if turned != answer else "17")
    for road in (EXACT, SYMPY):
        assert road.of(ask)(ask, wrong).fault


@pytest.mark.parametrize(
    "question",
    ["List the integers that {x} can be.", "What is the largest integer that {x} can be?"],
)
def test_what_has_no_end_has_no_such_answer(question: str) -> None:
    before, _, after = question.partition("{x}")
    with pytest.raises(FigureError):
        of_figure(UP, (before, t.Sym("x"), after))


def with_mark(figure: NumberLine, old: Mark, new: Mark) -> Drawing:
    made = drawn(figure)
    return dataclasses.replace(made, marks=tuple(new if m == old else m for m in made.marks))


def test_a_circle_that_is_filled_or_moved_and_an_arrow_turned_are_found_out() -> None:
    measure = measuring(BOTH).measure
    assert measure(drawn(BOTH), INEQUALITY) == read(BOTH, INEQUALITY)
    for circle in drawn(BOTH).of("end of span"):
        assert isinstance(circle, Arc)
        filled = "paper" if circle.fill == "ink" else "ink"
        lie = with_mark(BOTH, circle, dataclasses.replace(circle, fill=filled))
        assert measure(lie, INEQUALITY) != read(BOTH, INEQUALITY)
        aside = dataclasses.replace(circle, centre=circle.centre._replace(x=circle.centre.x + 1))
        with pytest.raises(NotExact):
            measure(with_mark(BOTH, circle, aside), INEQUALITY)
    (stroke,) = drawn(UP).of("span")
    assert isinstance(stroke, Stroke)
    turned = dataclasses.replace(stroke, points=stroke.points[::-1])
    with pytest.raises(NotExact):
        measuring(UP).measure(with_mark(UP, stroke, turned), INEQUALITY)


@pytest.mark.parametrize(
    "figure",
    [
        shown(Span()),
        shown(Span(7, 2)),
        shown(Span(low=11)),
        shown(Span(low=2, high_counts=True)),
        dataclasses.replace(UP, points=(("A", 3),)),
        dataclasses.replace(UP, jumps=(Jump(1, 2, t.Int(1)),)),
    ],
)
def test_a_span_that_makes_no_sense_is_refused(figure: NumberLine) -> None:
    assert fault(figure)


def test_a_span_with_no_whole_number_has_no_integers() -> None:
    between = from_data(
        {
            **{"kind": "number line", "first": "0.5", "last": "1.25", "steps": 5},
            "span": {"low": 0, "high": 3, "high_counts": True},
        }
    )
    assert disagreement(between) == ""
    for name in ("least integer", "greatest integer", "integers"):
        with pytest.raises(FigureError):
            read(between, Reading(name))
        with pytest.raises(NotExact):
            measuring(between).measure(drawn(between), Reading(name))


@pytest.mark.parametrize("last", ["1000", "1000000000"])
def test_a_span_of_a_great_many_integers_lists_none(last: str) -> None:
    data = {
        "kind": "number line",
        "first": 0,
        "last": last,
        "steps": 4,
        "span": {"low": 0, "high": 4},
    }
    wide = from_data(data)
    assert disagreement(wide) == ""
    assert line(read(wide, Reading("greatest integer"))) == line(t.num(int(last) - 1))
    with pytest.raises(FigureError):
        read(wide, Reading("integers"))
    with pytest.raises(NotExact):
        measuring(wide).measure(drawn(wide), Reading("integers"))


def test_a_span_comes_back_from_its_data() -> None:
    for figure in (BOTH, UP, DOWN):
        assert from_data(to_data(figure)) == figure
        assert kind_of(figure).fault(figure) == ""
