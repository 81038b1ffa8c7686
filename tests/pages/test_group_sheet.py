"""Sheets to pin up: read from a step away, by a screen reader, and never over the margin."""

import pypdfium2
import pytest

from itembank.packs.data.convert import pack_band
from itembank.pages.documents.group_sheet import SEATS, GroupPart, group_sheets
from itembank.pages.engine.page import theme
from itembank.pages.engine.paper import TOP
from itembank.planning.bands.bands import default_scheme
from tests.pages.checkers import assert_accessible
from tests.pages.marks import overlapping, recorded

BANDS = [pack_band(band) for band in default_scheme().bands(8)]
LONG = BANDS[0].model_copy(update={"name": "Putting it right together at the round table"})
ALL = [f"{row}{n}" for row in "ABCDEF" for n in range(1, 7)]
CASES = {
    "usual": [(BANDS[0], ALL[:8]), (BANDS[1], ALL[8:20]), (BANDS[2], ALL[20:])],
    "the whole class in one": [(BANDS[0], ALL)],
    "one pupil": [(BANDS[2], ALL[:1])],
    "a long name": [(LONG, ALL[:30])],
}


def sheets(name):
    return group_sheets(
        "8K on 17 November 2026",
        [
            GroupPart(band, seats, "Build it again together. Bring your starter.")
            for band, seats in CASES[name]
        ],
    )


@pytest.mark.parametrize("name", CASES)
def test_marks_are_apart_and_inside_the_margins(name, monkeypatch):
    with recorded(monkeypatch) as marks:
        sheets(name)
    for one, other in overlapping(marks):
        raise AssertionError(f"{one} and {other}")
    for mark in marks:
        assert mark.x0 >= theme.PAPER_MARGIN - 0.6, mark
        assert mark.x1 <= theme.A4[0] - theme.PAPER_MARGIN + 0.6, mark
        assert mark.y1 <= TOP + 0.6, mark


@pytest.mark.parametrize("name", CASES)
def test_a_screen_reader_can_read_it(name, tmp_path):
    assert_accessible(sheets(name), tmp_path / "groups.pdf")


@pytest.mark.parametrize("name", CASES)
def test_a_group_has_one_page_with_all_of_its_seats(name):
    with pypdfium2.PdfDocument(sheets(name)) as pdf:
        texts = [page.get_textpage().get_text_range().split() for page in pdf]
    assert len(texts) == len(CASES[name])
    for text, (_, seats) in zip(texts, CASES[name], strict=True):
        assert [word for word in text if word in ALL] == seats
        assert "grade." in text
        assert "?" not in text  # stands where the typeface lacks a character


def test_seats_are_as_large_as_the_page_holds(monkeypatch):
    sizes = {}
    for name in ("one pupil", "the whole class in one"):
        with recorded(monkeypatch) as marks:
            sheets(name)
        sizes[name] = max(mark.size for mark in marks if "A1" in mark.text)
    assert sizes["one pupil"] == SEATS[0]
    assert sizes["the whole class in one"] >= SEATS[-1]
