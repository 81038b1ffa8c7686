"""Every topic at every tier: rendered ink stays in its box, boxes stay apart, nothing spills."""

from __future__ import annotations

import datetime
from functools import cache

import pypdfium2
import pytest

from itembank.items.topics.registry import topic_ids
from itembank.packs.build import choose
from itembank.packs.data.pack import Pack, Sheet, Version
from itembank.packs.pack_as_data import as_data
from itembank.pages.draw import drawers
from itembank.pages.engine.page import theme
from itembank.planning.bands.bands import default_scheme
from itembank.planning.department.large_copies import LargePrint
from itembank.planning.department.pack_request import PackRequest, PlannedTopic
from tests.depth import each
from tests.pages.marks import overlapping, recorded
from tests.pages.test_layout import DOTS, TOP, bottom_of, boxes, ink, slides_of

QUESTIONS = 8


# A topic's tests run after each other, so on one worker, which makes its pack once.
each_topic = pytest.mark.parametrize("topic", each(topic_ids(), 5), scope="module")


@cache
def pack_of(topic: str) -> Pack:
    request = PackRequest(
        school="Larkhythe School",
        class_name="8K",
        date=datetime.date(2026, 11, 30),
        title="Everything on one topic",
        topics=(PlannedTopic(topic, None),),
        questions=3,  # each tier's sheet becomes a starter below
        seed=11,
        follow_up=QUESTIONS,
        variants=1,
        large_print=LargePrint.copies(1),
        paper="white",
        print_tint=False,
        self_mark="when done",
        slips=True,
        bands=default_scheme(3),
    )
    return as_data(request, choose(request))


def starter_of(pack: Pack, sheet: Sheet) -> Pack:
    """Return the pack with the sheet's questions as its starter, one mark each."""
    items = [item.model_copy(update={"marks": 1}) for item in sheet.items[:QUESTIONS]]
    return pack.model_copy(update={"versions": [Version(letter="A", items=items)]})


def check_slides(pack: Pack, where: str) -> None:
    """Ink of each question lies in its own measured box, and boxes are apart."""
    asked = pypdfium2.PdfDocument(drawers(pack)["starter.pdf"](pack))
    marked = pypdfium2.PdfDocument(drawers(pack)["answers.pdf"](pack))
    slides = list(slides_of(pack))
    assert len(slides) == len(asked) == len(marked), where
    height = theme.SLIDE[1]
    for page, slide in zip(asked, slides, strict=True):
        assert slide.size >= theme.SLIDE_QUESTION[0], where
        dark = ink(page)[
            round((height - TOP - 6) * DOTS) : round((height - bottom_of(pack)) * DOTS)
        ].copy()
        placed = list(boxes(slide))
        for number, (x0, y0, x1, y1) in placed:
            for other, (a0, b0, a1, b1) in placed:
                apart = x1 <= a0 or a1 <= x0 or y1 <= b0 + 0.01 or b1 <= y0 + 0.01
                assert other == number or apart, (where, number, other)
            rows = slice(max(0, round((TOP + 4 - y1) * DOTS)), round((TOP + 8 - y0) * DOTS))
            columns = slice(round((x0 - 2) * DOTS), round((x1 + 3) * DOTS))
            assert dark[rows, columns].any(), (where, number)
            dark[rows, columns] = False
        for y in slide.rules:  # between strips of questions
            dark[round((TOP + 6 - y - 2) * DOTS) : round((TOP + 6 - y + 2) * DOTS)] = False
        assert not dark.any(), where
    for page in marked:
        edge = round(11 * DOTS)
        dark = ink(page)
        dark[edge:-edge, edge:-edge] = False
        assert not dark.any(), where


@each_topic
def test_slides_of_every_tier_keep_apart(topic):
    pack = pack_of(topic)
    for sheet in pack.sheets:
        check_slides(starter_of(pack, sheet), f"{topic} {sheet.tier}")


@each_topic
def test_paper_of_every_tier_keeps_apart(topic, monkeypatch):
    pack = pack_of(topic)
    for file, draw in drawers(pack).items():
        if file in ("starter.pdf", "answers.pdf", "next-tasks.pdf", "slips.pdf"):
            continue
        with recorded(monkeypatch) as marks:
            draw(pack)
        for one, other in overlapping(marks):
            raise AssertionError(f"{topic} {file}: {one} and {other}")
        for mark in marks:
            assert mark.x0 >= theme.PAPER_MARGIN - 0.01, (topic, file, mark)
            assert mark.x1 <= theme.A4[0] - theme.PAPER_MARGIN + 0.6, (topic, file, mark)
            assert mark.y0 >= 12, (topic, file, mark)
