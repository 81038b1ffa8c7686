"""Labels as long and as wide as a kind allows: they touch nothing, and no road is led astray."""

from __future__ import annotations

import copy
import re
from collections.abc import Iterator
from typing import Any

import pytest

from itembank.figures.drawing import Text, text_box
from itembank.figures.figure import Figure, FigureError, drawn
from itembank.figures.figure_data import MOST_SIGNS, from_data, to_data
from itembank.proof.measured.measure import disagreement
from tests.depth import cases, whole
from tests.figures.every_figure import examples, names
from tests.figures.test_every_figure import _crosses

FIGURES = cases(1, 4, 4)
NUMBERS = ("88/89", "8 88/89", "-8 88/89", *("8" * count for count in range(2, 10)))


def _words(data: Any, way: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    """Yield the way to each word, and to each number that is written as mathematics."""
    if isinstance(data, dict):
        for key, value in data.items():
            if key != "kind":
                yield from _words(value, (*way, key))
    elif isinstance(data, list):
        for place, value in enumerate(data):
            yield from _words(value, (*way, place))
    elif isinstance(data, str):
        yield way


def _at(data: Any, way: tuple[Any, ...]) -> Any:
    for key in way:
        data = data[key]
    return data


def _with(data: dict[str, Any], way: tuple[Any, ...], text: str) -> dict[str, Any]:
    made = copy.deepcopy(data)
    _at(made, way[:-1])[way[-1]] = text
    return made


def _sound(data: dict[str, Any]) -> bool:
    try:
        from_data(data)
    except FigureError:
        return False
    return True


def lengthened(figure: Figure) -> Figure:
    """Return a figure whose words are as long as they may be, one after another, all of W."""
    data = to_data(figure)
    for number, way in enumerate(list(_words(data))):
        was = _at(data, way)
        if re.fullmatch(r"[A-Za-z][A-Za-z ]+", was):
            last = chr(ord("A") + number % 26)  # so that no two names are one
            low, high = len(was), MOST_SIGNS
            if not _sound(_with(data, way, "W" * (low - 1) + last)):
                continue  # one of a few words that the kind knows
            if _sound(_with(data, way, "W" * (high - 1) + last)):
                low = high  # as mostly: only what has less room is looked for step by step
            while low < high:
                middle = (low + high + 1) // 2
                fits = _sound(_with(data, way, "W" * (middle - 1) + last))
                low, high = (middle, high) if fits else (low, middle - 1)
            data = _with(data, way, "W" * (low - 1) + last)
        elif re.fullmatch(r"\d+", was):
            for longer in NUMBERS:
                if _sound(_with(data, way, longer)):
                    data = _with(data, way, longer)
    return from_data(data)


@whole
@pytest.mark.parametrize("name", names())
def test_the_longest_labels_touch_nothing(name: str) -> None:
    for figure in map(lengthened, examples(name, FIGURES, seed=31)):
        made = drawn(figure)
        labels = [mark for mark in made.marks if isinstance(mark, Text)]
        for place, label in enumerate(labels):
            for other in labels[place + 1 :]:
                told = (figure, label.content, other.content)
                assert not text_box(label).meets(text_box(other)), told
            if not label.paper:
                assert not any(_crosses(mark, label) for mark in made.marks), (figure, label)
        assert disagreement(figure) == ""
