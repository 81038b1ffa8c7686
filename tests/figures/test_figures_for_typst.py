"""The bench that compares pages with figures can write a figure of every kind for typst."""

from __future__ import annotations

from pathlib import Path

import pytest

from itembank.figures.figure import drawn, words
from tests.figures.every_figure import examples, names

BENCH = Path(__file__).parents[2] / "bench"


@pytest.mark.parametrize("name", names())
def test_every_mark_of_a_figure_is_written(name: str, monkeypatch) -> None:
    monkeypatch.syspath_prepend(str(BENCH))
    from figure_source import source

    found = [(drawn(figure), words(figure)) for figure in examples(name, 6)]
    text = source(found, 14.0)
    # At the least a line for every mark, and the words of every figure.
    assert len(text.splitlines()) >= sum(len(made.marks) for made, _ in found)
    assert all(said.split('"')[0] in text for _, said in found)
