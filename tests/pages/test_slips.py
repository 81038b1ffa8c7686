"""Ten questions of four topics stand on one slip, each with room to write its answer."""

from __future__ import annotations

import random
from dataclasses import replace
from functools import cache
from itertools import combinations, pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.errors import ItembankError
from itembank.items.topics.registry import find_item, topic_ids
from itembank.packs.build import choose
from itembank.packs.data.convert import Faces, picture
from itembank.packs.pack_as_data import as_data
from itembank.pages import draw
from itembank.pages.documents.slips import WIDTH, _pages, slips
from itembank.pages.engine.page import theme
from itembank.pages.engine.text.paragraph import Flow
from itembank.pages.parts.questions.even_split import evenest
from itembank.pages.parts.sheet.slip_layout import (
    APART,
    INDENT,
    LABEL,
    LINE,
    _lowest,
    _need,
    arrange_slips,
    label_room,
)
from itembank.planning.department.pack_request import PlannedTopic
from tests.depth import WHOLE, cases, whole
from tests.pages.marks import recorded
from tests.pages.sheet_samples import random_packs
from tests.pages.test_one_slide import request_on

pytestmark = pytest.mark.usefixtures("one_core")

DRAWS = cases(12, 24, 24)
ROOM_TO_WRITE = 19.8
"""7 mm, the distance of lines on narrow ruled paper (from memory), in points."""


def draws():
    """Return packs of ten questions on four topics drawn at random."""
    return random_packs(DRAWS)


@whole
def test_ten_questions_take_one_slip_in_nearly_every_draw():
    packs = draws()
    made = [_pages(pack.versions[0], pack) for pack in packs]
    drawn = [any(item.picture for item in pack.versions[0].items) for pack in packs]
    plain = [len(some) for some, pictures in zip(made, drawn, strict=True) if not pictures]
    # Of 240 draws three took a second slip: four or more questions of three lines of fractions.
    assert len(plain) > DRAWS / 2
    # Draws of two or three topics of stories take two: probability.combined is in most of them.
    assert plain.count(1) >= len(plain) - DRAWS / 6
    # Pictures take the room of several lines, but never that of a third slip.
    assert max(map(len, made)) <= 2
    for slip in (slip for some in made for slip in some):
        assert all(placed.block.size >= theme.PAPER_LEAST for placed in slip.placed)
        assert not any(placed.block.cramped for placed in slip.placed)


TIGHT = (3, 4, 6)
"""Draws of four topics that took two sides where nobody asked the slip."""


@cache
def any_four(number):
    """Return a request for slips of ten questions on four topics drawn from all there are."""
    topics = random.Random(number).sample(topic_ids(), 4)
    return replace(
        request_on(*topics, seed=number),
        questions=10,
        topics=tuple(PlannedTopic(topic, None) for topic in topics),
        slips=True,
    )


def chosen(request, fits=draw.fits_slides):
    return as_data(request, choose(request, fits))


@whole
def test_ten_questions_of_any_four_topics_are_chosen_for_one_side_of_a_slip():
    # Of 120 draws all took one side; one in four took two where nobody asked the slip.
    for number in range(12) if WHOLE else TIGHT:
        pack = chosen(any_four(number))
        assert len(_pages(pack.versions[0], pack)) == 1
        assert draw.fits_slides(pack, 1)


@whole
def test_a_starter_for_a_slide_is_as_ever_where_no_slip_holds_any(monkeypatch):
    usual = [chosen(replace(any_four(number), slips=False)) for number in range(cases(1, 2, 2))]
    monkeypatch.setattr(type(draw.fits_slides), "on_slip", lambda *_: False)
    for number, pack in enumerate(usual):
        asked = chosen(any_four(number)).versions[0].items
        assert [item.address for item in asked] == [i.address for i in pack.versions[0].items]


def test_what_a_question_takes_of_a_slip_is_told_before_it_is_drawn():
    pack = chosen(any_four(3))
    shares = [draw.fits_slides.slip_share(item) for item in pack.versions[0].items]
    assert 0.5 < sum(shares) <= 1  # it fits, and is told no room that it does not take


@whole
def test_each_answer_has_a_line_clear_of_all_words():
    free = WIDTH - INDENT - LINE - label_room(theme.PAPER_LEAST) - APART
    for pack in draws():
        for slip in _pages(pack.versions[0], pack):
            after = 0.0
            for placed in slip.placed:
                block = placed.block
                assert placed.top >= after - 1e-6
                assert placed.line >= block.height - 1e-6
                for line in block.lines:
                    clear = placed.line - line.baseline - 0.2 * block.size
                    assert line.width <= free or clear >= ROOM_TO_WRITE - 1e-6
                after = placed.top + placed.line


def test_a_picture_stands_beside_its_words_above_the_answer():
    """Ten questions have room on a slip with a few pictures, each no higher than its picture."""
    item = find_item("geometry.surface-area/support/10")
    assert item.figure is not None
    flow = Flow([*map(Faces().run, item.prompt), picture(item.figure)])
    free = WIDTH - INDENT - LINE - label_room(theme.PAPER_LEAST) - APART
    made = _lowest(flow, WIDTH - INDENT, 12.0, free)
    high = max(atom.ascent for cluster in flow.clusters for atom in cluster.atoms)
    assert _need(made, free) == pytest.approx(12.0 * high)


def test_one_answer_place_a_question(monkeypatch):
    for pack in draws()[:6]:
        with recorded(monkeypatch) as marks:
            slips(pack)
        labels = [mark for mark in marks if mark.text == LABEL]
        assert len(labels) == 2 * len(pack.versions[0].items)


def words_of(samples, count):
    return samples.item("Count " + "beans and peas " * (count // 3) + "please.", "12")


def test_what_goes_over_is_shared_evenly_over_a_second_slip(samples):
    items = [words_of(samples, 45) for _ in range(10)]
    made = arrange_slips(items, WIDTH, 470.0, (14.0, 12.0), 12.0)
    assert [len(slip.placed) for slip in made] == [5, 5]
    assert [placed.number for slip in made for placed in slip.placed] == list(range(1, 11))


def test_a_question_too_long_for_a_slip_is_named(samples):
    items = [words_of(samples, 9), words_of(samples, 600)]
    with pytest.raises(ItembankError, match=r"Question 2 \(fractions.*too long for a pupil slip"):
        arrange_slips(items, WIDTH, 470.0, (14.0, 12.0), 12.0)


@given(heights=st.lists(st.integers(1, 60), min_size=1, max_size=9), groups=st.integers(1, 4))
def test_the_evenest_split_is_whole_in_order_and_no_split_is_evener(heights, groups):
    def fullness(group, _):
        return sum(heights[i] for i in group) / 100

    found = evenest(len(heights), groups, fullness)
    cuts = combinations(range(1, len(heights)), groups - 1)
    ways = [[range(a, b) for a, b in pairwise((0, *cut, len(heights)))] for cut in cuts]
    fullest = [max(fullness(group, 0) for group in way) for way in ways]
    if found is None:
        assert all(full > 1 for full in fullest)
    else:
        assert [i for group in found for i in group] == list(range(len(heights)))
        assert len(found) == groups
        assert max(fullness(group, 0) for group in found) <= min(fullest) + 1e-6
