"""Starters with pictures stand on one slide too, and a picture that questions share stands once."""

from __future__ import annotations

import random
from functools import cache
from unittest.mock import patch

import numpy as np
import pypdfium2
import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.figures.drawing import WEIGHTS
from itembank.items.item import Tier
from itembank.items.topics.registry import find_topic, topic_ids
from itembank.packs.choosing.item_pool import Pool
from itembank.packs.choosing.question_room import room_of_all, shared_figure
from itembank.packs.choosing.shared_figures import about_one_figure
from itembank.packs.choosing.shorter_ones import Rooms, ShorterOnes
from itembank.packs.data.convert import Faces, pack_item
from itembank.packs.drawn_room import DrawnRoom
from itembank.pages import draw
from itembank.pages.documents.slides import TOP, answers, bottom_of, starter
from itembank.pages.engine.page import theme
from itembank.pages.engine.page.page import Page
from itembank.pages.parts.slide.board import arrange
from itembank.pages.parts.slide.slide_board import LEFT, RIGHT
from itembank.pages.parts.slide.strips import strips
from tests.depth import cases, whole
from tests.pages.checkers import assert_accessible
from tests.pages.test_layout import DOTS, boxes, ink
from tests.pages.test_one_slide import on_topics, placed, words_of

pytestmark = pytest.mark.usefixtures("one_core")

DRAWS = cases(5, 14, 14)
MANY = 4
"""With so many pictures a starter may take two slides."""


@cache
def draws():
    """Return packs on four topics drawn at random from all."""
    rng = random.Random(2)
    return [on_topics(*rng.sample(topic_ids(), 4), seed=seed) for seed in range(DRAWS)]


def pictures(pack):
    return [item for item in pack.versions[0].items if item.picture is not None]


def labels(slide):
    """Yield the type size of the labels in each picture of a slide."""
    for spot in slide.spots:
        for line in spot.cell.question.lines:
            for each in line.placed:
                if each.atom.picture is not None:
                    yield slide.size * each.scale


@whole
def test_starters_with_pictures_take_one_slide():
    few = [placed(pack) for pack in draws() if len(pictures(pack)) < MANY]
    assert any(pictures(pack) for pack in draws())
    assert sum(len(made) == 1 for made in few) >= 0.9 * len(few)
    slides = [placed(pack) for pack in draws()]
    assert max(map(len, slides)) <= 2
    assert sum(len(made) == 1 for made in slides) >= 0.75 * DRAWS
    for made in slides:
        for slide in made:
            assert slide.size >= theme.SLIDE_QUESTION[0]
            assert all(size >= theme.SLIDE_SMALL - 0.01 for size in labels(slide))


@whole
def test_questions_beside_pictures_neither_overlap_nor_leave_the_slide():
    for pack in draws():
        bottom = bottom_of(pack)
        for slide in placed(pack):
            found = list(boxes(slide))
            for number, (x0, y0, x1, y1) in found:
                assert LEFT <= x0 < x1 <= RIGHT + 0.01
                assert bottom - 0.01 <= y0 < y1 <= TOP + 0.01
                for other, (a0, b0, a1, b1) in found:
                    apart = x1 <= a0 or a1 <= x0 or y1 <= b0 + 0.01 or b1 <= y0 + 0.01
                    assert other == number or apart, (pack.lesson.title, number, other)
            for spot in slide.spots:
                made = spot.cell
                left = made.answer_x - 6
                assert spot.x + made.answer_x + made.answer.width <= spot.x + spot.width
                for line in made.question.lines:
                    for each in line.placed:
                        if each.atom.picture is None:
                            continue
                        right = made.indent + each.x + each.atom.width * each.scale * slide.size
                        foot = made.question_top + line.baseline
                        head = foot - each.atom.ascent * each.scale * slide.size
                        high, low = made.answer_top, made.answer_top + made.answer.height
                        assert right <= left or foot <= high or head >= low, spot.item.address


@whole
def test_pictures_stand_at_the_same_place_on_the_answers():
    for pack in draws()[: cases(1, 4, 4)]:
        pairs = zip(
            *(pypdfium2.PdfDocument(draw(pack)) for draw in (starter, answers)), strict=True
        )
        for (asked, marked), slide in zip(pairs, placed(pack), strict=True):
            one, two = ink(asked), ink(marked)
            for number, (x0, y0, x1, y1) in boxes(slide):
                if slide.spots[number - slide.spots[0].number].item.key_picture is not None:
                    continue
                part = np.s_[
                    round((540 - y1) * DOTS) : round((540 - y0) * DOTS),
                    round(x0 * DOTS) : round(x1 * DOTS),
                ]
                assert (one[part] & ~two[part]).sum() <= 0.05 * one[part].sum() + 2


TIMETABLES = ("measures.timetables", "graphs.conversion", "geometry.volume-of-prisms")


def test_the_checkers_find_nothing_in_timetables_beside_graphs(tmp_path):
    """Rulings of several figures are no table without cells to whoever looks for one."""
    packs = (
        on_topics(*TIMETABLES, "equations.one-step", seed=seed, fitted=False) for seed in range(40)
    )
    pack = next(pack for pack in packs if len(pictures(pack)) > 2)
    for name, drawer in (("starter", starter), ("answers", answers)):
        assert_accessible(drawer(pack), tmp_path / f"{name}.pdf")


def test_lines_of_small_pictures_are_as_thick_as_those_of_large_ones(monkeypatch):
    widths = []
    path = Page.path

    def noted(page, what, **how):
        if how.get("stroke"):
            widths.append(how["line"])
        path(page, what, **how)

    monkeypatch.setattr(Page, "path", noted)
    small = next(pack for pack in draws() if min(map(least_label, placed(pack)), default=99) < 20)
    starter(small)
    thinnest = float(min(WEIGHTS.values())) * theme.SLIDE_QUESTION[0]
    assert widths
    assert min(widths) >= thinnest - 0.01


def least_label(slide):
    return min(labels(slide), default=99)


SHARING = "statistics.bar-charts"


def pair():
    """Return questions about two bar charts, then what stands for them where room is short."""
    pool, topic = Pool(), find_topic(SHARING)
    first = pool.take(pool.at(topic, Tier.SUPPORT, 3))
    about_another = (pool.at(topic, Tier.CORE, index) for index in range(50))
    models = [first, next(c for c in about_another if c.item.figure != first.item.figure)]
    rooms = Rooms(DrawnRoom(None, (topic,), draw.fits_slides))
    swaps = about_one_figure([], models, ShorterOnes({SHARING: topic}, 1, pool, (), rooms))
    instead = {id(old): new for old, new in swaps}
    return models, [instead.get(id(candidate), candidate) for candidate in models]


def test_two_large_pictures_make_way_for_one_that_both_questions_are_about():
    models, found = pair()
    assert shared_figure(models[0]) != shared_figure(models[1])
    assert shared_figure(found[0]) == shared_figure(found[1])
    assert [each.item.tier for each in found] == [model.item.tier for model in models]
    assert found[0].item.prompt != found[1].item.prompt
    assert room_of_all(found) < room_of_all(models)


def test_a_shared_picture_stands_once_and_the_second_question_says_where(samples):
    _, found = pair()
    pack = samples.pack([pack_item(each.item, find_topic(SHARING), Faces()) for each in found])
    (slide,) = arrange(pack.versions[0].items, TOP, bottom_of(pack))
    assert len(list(labels(slide))) == 1
    assert "Use the picture in question 1." in words_of(starter(pack))
    # With other questions between them there is no room for all: each has its picture.
    items = [*pack.versions[0].items[:1], *draws()[0].versions[0].items * 2]
    slides = arrange([*items, pack.versions[0].items[1]], TOP, bottom_of(pack))
    assert len(slides) > 1
    assert slides[-1].spots[-1].item.picture is not None
    assert len(list(labels(slides[-1]))) == sum(
        spot.item.picture is not None for spot in slides[-1].spots
    )


def unknown(i, width):
    """Say of a question, before it is set, no more than that it takes some height."""
    return 0.0


class Square:
    """A question as high as it is wide to set: its words fill an area."""

    def __init__(self, area, width):
        self.height = area / width


@pytest.mark.parametrize("areas", [[9000] * 8, [4000, 90000, 4000, 4000, 90000, 4000, 4000, 4000]])
def test_strips_hold_every_question_once_in_order_across_the_whole_width(areas):
    made = strips(range(8), 904, 420, 24, 7, lambda i, width: Square(areas[i], width), unknown)
    assert [i for strip in made for side in strip.columns for i in side] == list(range(8))
    for strip in made:
        assert sum(strip.widths) + 24 * (len(strip.widths) - 1) == pytest.approx(904, abs=0.1)
        for side, width in zip(strip.columns, strip.widths, strict=True):
            assert sum(areas[i] / width for i in side) + 7 * (len(side) - 1) <= strip.height + 0.1
    assert sum(strip.height for strip in made) + 7 * (len(made) - 1) <= 420


def test_no_strips_where_there_is_no_room():
    wide = range(8), 904, 100, 24, 7, lambda i, width: Square(90000, width)
    assert strips(*wide, unknown) is None
    assert strips(range(2), 904, 400, 24, 7, lambda i, width: None, unknown) is None


@given(st.lists(st.integers(2000, 60000), min_size=2, max_size=8), st.integers(150, 500))
def test_strips_are_the_same_where_least_heights_are_told(areas, room):
    def cell(i, width):
        return Square(areas[i], width)

    def nearly(i, width):
        return 0.9 * areas[i] / width

    asked = range(len(areas)), 904, room, 24, 7, cell
    assert strips(*asked, nearly) == strips(*asked, unknown)


@given(st.lists(st.integers(2000, 60000), min_size=2, max_size=8), st.integers(75, 100))
def test_no_way_that_has_room_is_passed_over(areas, full):
    room = sum(areas) / 904 / full * 100 + 7 * len(areas) / 3
    asked = range(len(areas)), 904, room, 24, 7, lambda i, width: Square(areas[i], width), unknown
    with patch("itembank.pages.parts.slide.strips.NEARLY", 1e9):  # no way is left before its end
        tried = strips(*asked)
    assert strips(*asked) == tried
