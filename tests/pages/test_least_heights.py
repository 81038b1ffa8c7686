"""What a question's height is known to be before it is set, held against how high it is set."""

from __future__ import annotations

from collections import Counter

import pytest

from itembank.pages.documents.slides import TOP, bottom_of
from itembank.pages.parts.slide import board
from itembank.pages.parts.slide.least_heights import LeastHeights
from tests.depth import cases, spread, whole
from tests.pages.test_one_slide import draws, figure_draws, placed

pytestmark = pytest.mark.usefixtures("one_core")

MOST_MISSED = 0.02
"""The share of questions that may be lower than told: a word less on a line can save one."""


def starters():
    return [*draws(), *figure_draws()]


@pytest.fixture
def boards(monkeypatch):
    """Return the boards that are made, with all that was set on them."""
    made = []

    class Kept(board._Board):
        def __init__(self, *asked, **more):
            super().__init__(*asked, **more)
            made.append(self)

    monkeypatch.setattr(board, "_Board", Kept)
    return made


@whole
def test_hardly_any_question_is_lower_than_told(boards):
    for pack in spread(starters(), cases(6, 20, 20)):
        placed(pack)
    found = Counter(
        cell.height >= made.least(i, width, size, setting) - 0.01
        for made in boards
        for (i, width, size, setting), cell in list(made._cells.items())
        if not (cell.question.cramped or cell.answer.cramped)
    )
    assert found.total() > 1000
    assert found[False] / found.total() < MOST_MISSED


def standing(slides):
    """Return where all of a starter stands, and how high."""
    return [
        (
            slide.size,
            slide.rules,
            [(*spot[:1], *spot[3:], spot.cell.height) for spot in slide.spots],
        )
        for slide in slides
    ]


@whole
def test_slides_are_the_same_where_no_least_height_is_told(monkeypatch):
    packs = spread(starters(), cases(4, 26, 26))
    told = [standing(placed(pack)) for pack in packs]
    monkeypatch.setattr(LeastHeights, "least", lambda self, *asked: 0.0)
    for pack, slides in zip(packs, told, strict=True):
        assert standing(placed(pack)) == slides


def test_most_ways_to_set_a_full_slide_fail_before_a_question_is_set(boards):
    pack = figure_draws()[0]
    board.arrange(pack.versions[0].items, TOP, bottom_of(pack))
    plain = LeastHeights.least
    told = sum(len(made._cells) for made in boards)
    boards.clear()
    try:
        LeastHeights.least = lambda self, *asked: 0.0
        board.arrange(pack.versions[0].items, TOP, bottom_of(pack))
    finally:
        LeastHeights.least = plain
    assert told < 0.7 * sum(len(made._cells) for made in boards)
