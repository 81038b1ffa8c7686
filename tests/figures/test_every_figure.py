"""What holds for figures of every kind: data, drawing, words, and two roads that agree."""

from __future__ import annotations

import dataclasses
import random
from itertools import pairwise

import pytest

from itembank.figures import figure_data, kinds
from itembank.figures.drawing import Arc, Area, Drawing, Point, Stroke, Text, text_box
from itembank.figures.figure import KINDS, Reading, drawn, kind_of, read, words
from itembank.figures.figure_data import MOST, from_data, to_data
from itembank.figures.label_room import room
from itembank.figures.svg import svg
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.mathml import mathml
from itembank.notation.value import NotExact
from itembank.pages.engine.faces.fonts import face
from itembank.pages.engine.maths.formula import formula
from itembank.pages.engine.text.flow import as_text
from itembank.proof.measured.measure import disagreement, measuring
from tests.depth import cases, whole
from tests.figures.every_figure import examples, lacking, names

COUNT = cases(4, 25, 15)


def every_kind(test):
    return whole(pytest.mark.parametrize("name", names())(test))


def test_every_kind_has_examples() -> None:
    assert lacking() == []


@every_kind
def test_a_figure_comes_back_from_its_data(name: str) -> None:
    for figure in examples(name, COUNT):
        data = to_data(figure)
        figure_data._WRITTEN.clear()  # as in a process that did not write it
        assert from_data(data) == figure
        assert to_data(figure) == data
        assert from_data(data) == figure


def test_a_kind_is_loaded_by_its_name() -> None:
    assert {kinds.module_of(name) for name in KINDS} == set(kinds.MODULES)
    for name, kind in KINDS.items():
        assert kind.figure.__module__.endswith(f".{kinds.module_of(name)}")


@every_kind
def test_the_drawing_is_exact(name: str) -> None:
    for figure in examples(name, COUNT):
        for mark in drawn(figure).marks:
            points = {
                Stroke: lambda m: m.points,
                Area: lambda m: m.points,
                Arc: lambda m: (m.centre, m.start, m.end, (m.radius, 0)),
                Text: lambda m: (m.at,),
            }[type(mark)](mark)
            assert not any(isinstance(value, float) for point in points for value in point)


@every_kind
def test_what_is_read_is_what_is_measured(name: str) -> None:
    for figure in examples(name, COUNT):
        assert disagreement(figure) == ""


@every_kind
def test_labels_touch_neither_one_another_nor_a_stroke(name: str) -> None:
    for figure in examples(name, COUNT):
        made = drawn(figure)
        labels = [mark for mark in made.marks if isinstance(mark, Text)]
        for place, label in enumerate(labels):
            box = text_box(label)
            for other in labels[place + 1 :]:
                assert not box.meets(text_box(other)), (figure, label.content, other.content)
            if not label.paper:
                assert not any(_crosses(mark, label) for mark in made.marks), (
                    figure,
                    label.content,
                )


def _crosses(mark: object, label: Text) -> bool:
    """Tell whether a stroke's line, or an area's edge, runs through a label's box."""
    if isinstance(mark, Stroke | Area):
        points = [(float(x), float(y)) for x, y in mark.points]
        if isinstance(mark, Area):
            if not mark.outline:
                return False
            points.append(points[0])
        return any(_cut(a, b, label) for a, b in pairwise(points))
    return False


def _cut(a: tuple[float, float], b: tuple[float, float], label: Text) -> bool:
    left, bottom, right, top = map(float, text_box(label))
    low, high = 0.0, 1.0  # the part of the segment inside the box (Liang and Barsky, from memory)
    for p, q in (
        (a[0] - b[0], a[0] - left),
        (b[0] - a[0], right - a[0]),
        (a[1] - b[1], a[1] - bottom),
        (b[1] - a[1], top - a[1]),
    ):
        if p == 0:
            if q <= 0:
                return False
        elif p < 0:
            low = max(low, q / p)
        else:
            high = min(high, q / p)
    return high - low > 1e-9


@every_kind
def test_a_label_is_no_larger_on_a_page_than_the_drawing_keeps_room_for(name: str) -> None:
    for figure in examples(name, COUNT):
        for mark in drawn(figure).marks:
            if isinstance(mark, Text):
                kept = room(mark.content, mark.bold)
                shown = mark.content if isinstance(mark.content, str) else ""
                text = shown or as_text(mathml(mark.content))  # type: ignore[arg-type]
                weight = face(mark.bold)
                if text and all(map(weight.has, text)):
                    assert weight.width(text) <= kept.width
                    continue
                assert not isinstance(mark.content, str), mark.content
                made = formula(mathml(mark.content))
                assert made.width <= kept.width, line(mark.content)
                assert made.ascent <= kept.up, line(mark.content)
                assert made.descent <= kept.down, line(mark.content)


@every_kind
def test_the_words_are_whole_sentences_and_differ_where_answers_do(name: str) -> None:
    said: dict[str, object] = {}
    for figure in examples(name, 3 * COUNT):
        text = words(figure)
        assert text[0].isupper(), text
        assert text.endswith("."), text
        assert "  " not in text
        answers = [line(read(figure, reading)) for reading in kind_of(figure).readings(figure)]
        assert said.setdefault(text, answers) == answers, text


@every_kind
def test_the_picture_for_web_pages_is_one_element_without_style_or_script(name: str) -> None:
    from xml.etree import ElementTree

    for figure in examples(name, 5):
        text = svg(figure)
        root = ElementTree.fromstring(text)
        assert root.tag.endswith("svg")
        assert root.get("role") == "img"
        assert root.get("aria-label") == words(figure)
        assert " style=" not in text
        assert "<script" not in text


@every_kind
def test_a_drawing_moved_out_of_place_is_found_out(name: str, monkeypatch) -> None:
    """Of the lies that moving a single mark tells, the second road believes none."""
    chance = random.Random(name)
    told = 0
    for figure in examples(name, cases(3, 12, 12)):
        kind = kind_of(figure)
        made = drawn(figure)
        readings = list(kind.readings(figure))
        if not readings:
            continue
        for _ in range(4):
            lie = _moved(made, chance)
            if lie is None:
                continue
            for reading in readings:
                true = read(figure, reading)
                try:
                    found = measuring(figure).measure(lie, reading)
                except (NotExact, t.NotationError):
                    told += 1
                    continue
                if line(found) != line(true):
                    told += 1
    if any(kind_of(f).readings(f) for f in examples(name, 3)):
        assert told


def _moved(made: Drawing, chance: random.Random) -> Drawing | None:
    """Return a drawing of which one stroke or area that means something was moved aside."""
    marks = list(made.marks)
    places = [i for i, m in enumerate(marks) if isinstance(m, Stroke | Area | Arc) and m.role]
    if not places:
        return None
    at = chance.choice(places)
    mark = marks[at]
    if isinstance(mark, Arc) and mark.whole:
        x, y = mark.centre
        marks[at] = dataclasses.replace(mark, centre=Point(x + 1, y + 1))
    elif isinstance(mark, Arc):
        marks[at] = dataclasses.replace(mark, start=mark.end, end=mark.start)
    else:
        first, *rest = mark.points
        marks[at] = dataclasses.replace(
            mark, points=(first._replace(x=first.x + 1, y=first.y + 1), *rest)
        )
    return dataclasses.replace(made, marks=tuple(marks))


def test_data_that_no_figure_has_is_refused_in_plain_words() -> None:
    from itembank.figures.figure import FigureError

    kind = {"kind": "number line", "first": 0, "last": 1, "steps": 4}
    for data, said in (
        ({}, "kind"),
        ({"kind": "numberline"}, "did you mean ‘number line’"),
        ({**kind, "step": 2}, "did you mean ‘steps’"),
        ({**kind, "first": 0.5}, "in quotation marks"),
        ({**kind, "steps": "4"}, "whole number"),
        ({**kind, "steps": 10**7}, "1 to 40 steps"),
        ({**kind, "points": [["A", 1]] * (MOST + 1)}, f"more than {MOST}"),
        ({**kind, "points": {"A" * 70: 1}}, "at most 60 signs"),
        ({**kind, "last": "1//2"}, "cannot be read"),
        ([], "a table with a kind"),
    ):
        with pytest.raises(FigureError, match=said):
            from_data(data)


@every_kind
@pytest.mark.parametrize(
    "value", [10**30, "W" * 4000, ["W" * 4000] * 3, {"W" * 4000: 1}, [1] * 10**5]
)
def test_a_value_of_any_size_in_any_key_is_refused_in_one_short_sentence(name: str, value) -> None:
    from itembank.figures.figure import FigureError

    data = to_data(next(examples(name, 1)))
    for key in data:
        with pytest.raises(FigureError) as told:
            from_data({**data, key: value})
        # The longest lists the kinds that there are.
        assert len(str(told.value)) < 900, key
        assert "\n" not in str(told.value)


def test_a_reading_that_a_figure_has_not_is_refused() -> None:
    from itembank.figures.figure import FigureError

    for name in KINDS:
        figure = next(examples(name, 1))
        with pytest.raises(FigureError):
            read(figure, Reading("colour of the sky"))
