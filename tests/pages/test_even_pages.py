"""Sheets and their answers over many topics: nothing alone, no half crammed, no half empty."""

from __future__ import annotations

from collections import Counter
from functools import cache

import pytest

from itembank.errors import ItembankError
from itembank.pages.documents import follow_up_answers as answer_pages
from itembank.pages.documents.follow_up_answers import follow_up_answers
from itembank.pages.documents.sheets import SIDES, follow_up, open_sheet, room_on
from itembank.pages.engine.maths.formula import scripts_at_least
from itembank.pages.engine.page import theme
from itembank.pages.engine.paper import WIDTH, Paper
from itembank.pages.parts.questions.question_cell import leaves_word
from itembank.pages.parts.sheet.rows import Row, rows
from itembank.pages.parts.sheet.sheet_pages import (
    LEAST_SHARE,
    TIGHT_SHARE,
    Room,
    on_pages,
    share_out,
)
from tests.depth import WHOLE, cases, whole
from tests.pages.marks import recorded
from tests.pages.sheet_samples import drawn_packs, random_packs, real_pack, wordy_topics

pytestmark = whole
DRAWS = cases(8, 24, 24)


def every_sheet():
    for pack in random_packs(DRAWS):
        for sheet in pack.sheets:
            yield pack, sheet


@cache
def every_row():
    """Return the rows of every sheet."""
    return [rows(sheet.items, theme.PAPER_TEXT, theme.PAPER_LEAST) for _, sheet in every_sheet()]


def columns_of(monkeypatch, pack, large=False):
    """Return, for each page of answers that holds a whole or a part of a sheet, its columns."""
    drawn = []
    real = answer_pages._columns

    def spy(paper, answers, columns):
        split = answer_pages._split(answers, columns)
        drawn.append((paper.page.number, answers[:split], answers[split:]))
        real(paper, answers, columns)

    with monkeypatch.context() as patch, recorded(patch):
        patch.setattr(answer_pages, "_columns", spy)
        follow_up_answers(pack, large)
    return drawn


def test_the_draws_hold_most_topics():
    drawn = {item.topic for _, sheet in every_sheet() for item in sheet.items}
    assert len(drawn) > (0.6 if WHOLE else 0.3) * len(wordy_topics())


def test_each_question_of_a_sheet_has_one_answer_place(monkeypatch):
    for pack, sheet in list(every_sheet())[:24]:
        with recorded(monkeypatch) as marks:
            follow_up(pack, sheet.tier)
        places = [mark for mark in marks if mark.text == "Answer"]
        assert len(places) == len(sheet.items)


def pages_of(monkeypatch, pack, tier):
    """Return the numbers of the questions on each page of a sheet, as drawn."""
    with recorded(monkeypatch) as marks:
        data = follow_up(pack, tier)
    del data
    places = Counter(mark.page for mark in marks if mark.text == "Answer")
    return [places[page] for page in range(max(mark.page for mark in marks) + 1)]


def test_no_page_of_a_sheet_holds_one_question_alone(monkeypatch):
    for pack, sheet in every_sheet():
        counts = pages_of(monkeypatch, pack, sheet.tier)
        assert 1 not in counts, (pack.lesson, sheet.tier, counts)
        assert 0 not in counts[1:]


def test_ten_questions_of_any_topics_take_two_sides_and_none_stands_alone():
    # Each topic stands in five of these packs or more, beside others, at every tier.
    for pack in random_packs(cases(2 * DRAWS, 8 * DRAWS, 2 * DRAWS)):
        for sheet in pack.sheets:
            # The layout alone: nothing but the head and the examples is drawn.
            paper = Paper(pack, sheet.tier, theme.PAPER_TEXT)
            open_sheet(paper, pack, sheet)
            room = room_on(paper)
            pages, share = on_pages(sheet.items, paper.size, paper.least, room)
            counts = [sum(len(row.cells) for row in page) for page in pages]
            assert sum(counts) == len(sheet.items)
            assert len(counts) <= SIDES, (pack.lesson, sheet.tier, counts)
            assert 1 not in counts, (pack.lesson, sheet.tier, counts)
            assert 0 not in counts[1:]
            assert share >= TIGHT_SHARE - 1e-6


def test_no_head_stands_alone_on_its_page():
    """A first page with a head and two thirds of it empty looks as if the sheet went wrong."""
    for pack in [*drawn_packs(cases(4, DRAWS, DRAWS)), *random_packs(DRAWS)]:
        for sheet in pack.sheets:
            for large in (False, True):
                paper = Paper(pack, sheet.tier, theme.PAPER_TEXT, large=large)
                open_sheet(paper, pack, sheet)
                first = room_on(paper)
                pages, _ = on_pages(sheet.items, paper.size, paper.least, first)
                told = (pack.topics, sheet.tier, large)
                assert pages[0] or first.first < 0.65 * first.full, told


def test_a_question_that_fits_below_the_examples_stands_there():
    """Half a page left empty, and a third side begun, looks like a sheet that went wrong too."""
    moved = 0
    for _, sheet in every_sheet():
        made = rows(sheet.items, theme.PAPER_TEXT, theme.PAPER_LEAST)
        for first in (160.0, 260.0, 360.0, 460.0):
            # So little room on a page that the questions take three.
            room = Room(first, 480 / 0.65, 2)
            room = room._replace(full=max(room.full, first / 0.65))
            taller = [row._replace(wish=2 * row.wish) for row in made]
            pages, _ = share_out(taller, room)
            fits = taller[0].height(LEAST_SHARE) <= first
            if fits and len(taller) > 4:
                moved += len(pages) > SIDES
                assert pages[0], (sheet.tier, first, [row.height(0.45) for row in taller])
    assert moved


def test_large_print_gives_up_no_room_for_working():
    tight = 0
    for pack, sheet in every_sheet():
        paper = Paper(pack, sheet.tier, theme.LARGE_TEXT, large=True)
        open_sheet(paper, pack, sheet)
        room = room_on(paper)
        usual = share_out(rows(sheet.items, paper.size, paper.least), room)
        found = on_pages(sheet.items, paper.size, paper.least, room)
        assert found.share >= LEAST_SHARE - 1e-6
        assert len(found.pages) <= len(usual.pages)
        less = room._replace(tight=TIGHT_SHARE)
        tight += len(on_pages(sheet.items, paper.size, paper.least, less).pages) < len(usual.pages)
    assert tight


def numbers(pages):
    return [[[cell.number for cell in row.cells] for row in page] for page in pages]


def test_rows_are_set_close_only_where_a_sheet_would_not_do_otherwise():
    sizes = (theme.PAPER_TEXT, theme.PAPER_LEAST)
    usual = close = 0
    for room in (Room(400, 740, 2), Room(0, 740, 2)):
        for _, sheet in every_sheet():
            plain = share_out(rows(sheet.items, *sizes), room)
            found = on_pages(sheet.items, *sizes, room)
            if len(plain.pages) <= room.sides and not plain.alone(room):
                assert numbers(found.pages) == numbers(plain.pages)
                assert found.share == plain.share >= LEAST_SHARE - 1e-6
                usual += 1
            else:
                close += len(found.pages) <= room.sides and not found.alone(room)
    assert usual > 2.5 * DRAWS
    assert close or not WHOLE


def test_no_word_stands_alone_above_its_equation_on_a_sheet_or_in_large_print():
    for size, least, powers in ((theme.PAPER_TEXT, theme.PAPER_LEAST, 0.0), (18.0, 18.0, 1.0)):
        with scripts_at_least(powers):
            for _, sheet in every_sheet():
                for close in (False, True):
                    for row in rows(sheet.items, size, least, close=close):
                        for cell in row.cells:
                            assert not leaves_word(cell.block), cell.item.address


def is_short(row: Row):
    half = rows([cell.item for cell in row.cells] * 2, theme.PAPER_TEXT, theme.PAPER_LEAST)
    return len(half) == 1


def test_no_short_question_stands_alone_where_its_neighbours_share_rows():
    for made in every_row():
        for number, row in enumerate(made):
            if len(row.cells) > 1 or not is_short(row):
                continue
            topic = row.cells[0].item.topic
            for other in made[max(0, number - 1) : number + 2]:
                if other is not row and other.cells[0].item.topic == topic:
                    assert len(other.cells) == 1, [cell.item.address for cell in other.cells]


def test_rows_take_the_whole_width_and_pages_of_a_sheet_are_even():
    for made in every_row():
        for row in made:
            gaps = 18.0 * (len(row.cells) - 1)
            assert row.width * len(row.cells) + gaps == pytest.approx(WIDTH)
        pages, share = share_out(made, Room(600.0, 740.0, 2))
        if len(pages) > 1:
            # No row can go to a page beside it and leave both better off.
            shares = []
            for number, page in enumerate(pages):
                room = 740.0 if number else 600.0
                fixed = sum(row.height(0.0) for row in page)
                shares.append((room - fixed) / sum(row.wish for row in page))
            assert min(shares) >= min(share, LEAST_SHARE) - 1e-6
            assert max(shares) <= 4 * min(shares), shares


def test_what_a_row_shares_is_said_once():
    seen = 0
    for made in every_row():
        for row in made:
            if row.told is not None:
                seen += 1
                assert len(row.cells) > 1
    assert seen


def test_columns_of_answers_are_even_and_no_page_holds_one(monkeypatch):
    packs = [(pack, number % 6 == 0) for number, pack in enumerate(random_packs(DRAWS))]
    for pack, large in packs:
        drawn = columns_of(monkeypatch, pack, large)
        on_page = Counter()
        for page, left, right in drawn:
            on_page[page] += len(left) + len(right)
            if not right:
                continue
            heights = [sum(answer.height for answer in side) for side in (left, right)]
            tallest = max(answer.height for answer in (*left, *right))
            # Moving one answer over cannot make them more even than by its own height.
            assert abs(heights[0] - heights[1]) <= tallest + 1e-6
        assert min(on_page.values()) > 1
        assert set(on_page) == set(range(max(on_page) + 1))


@pytest.mark.parametrize("tier", ["support", "core", "challenge"])
def test_a_question_too_long_for_a_sheet_is_named(tier, samples):
    pack = real_pack("8K")
    sheets = []
    for sheet in pack.sheets:
        long = samples.item("Count " + "beans and peas " * 400 + "please.", "12")
        sheets.append(sheet.model_copy(update={"items": [*sheet.items[:2], long]}))
    with pytest.raises(ItembankError, match=r"Question 3 \(fractions\S+\) is too long for a side"):
        follow_up(pack.model_copy(update={"sheets": sheets}), tier)
