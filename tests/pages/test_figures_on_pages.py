"""Figures on the pages of a pack: with their questions, clear of the words, read out in words."""

from __future__ import annotations

import io
from itertools import chain

import pikepdf
import pytest

from itembank.figures.kinds.number.number_line import NumberLine
from itembank.figures.kinds.number.shaded_shape import ShadedShape
from itembank.notation import tree as t
from itembank.packs.data.convert import picture
from itembank.packs.data.pack import Look, Pack
from itembank.packs.data.pack_item import PackItem, Picture
from itembank.pages.documents import slides
from itembank.pages.draw import draw_pack, drawers
from itembank.pages.engine.text import text_drawn
from itembank.pages.engine.text.paragraph import answered
from itembank.pages.engine.text.picture import MARGIN, drawing_of, edges
from tests.depth import some, whole
from tests.pages.checkers import assert_accessible
from tests.pages.marks import Mark, overlapping, recorded
from tests.pages.sheet_samples import TOPICS, real_pack
from tests.pages.test_sheets import text_of
from tests.pages.test_tagging import elements

ASKED = picture(NumberLine(t.Int(0), t.Int(1), 8, points=(("A", 3),)))
ANSWERED = picture(NumberLine(t.Int(0), t.Int(1), 8, (2, 4), (("A", 3), ("B", 7))))
SHOWN = picture(ShadedShape("rectangle", 1, 8, (0, 1, 2)))
LOOK = Look(slips=True, large_print=("A3",))


def drawn_by(item: PackItem) -> PackItem:
    """Return a question with a figure, another with its answer, and one in its working."""
    first, *rest = item.steps
    steps = (first.model_copy(update={"picture": SHOWN}), *rest)
    return item.model_copy(update={"picture": ASKED, "key_picture": ANSWERED, "steps": steps})


def bare(item: PackItem) -> PackItem:
    """Return a question without the figure of its own that it may have."""
    return item.model_copy(update={"picture": None, "key_picture": None})


def rich(pack: Pack) -> Pack:
    """Return a pack in which every third question has figures, and so have all examples."""

    def some(items):
        return tuple(drawn_by(item) if n % 3 == 1 else bare(item) for n, item in enumerate(items))

    versions = [v.model_copy(update={"items": some(v.items)}) for v in pack.versions]
    sheets = [
        sheet.model_copy(
            update={
                "items": some(sheet.items),
                "worked": sheet.worked and drawn_by(sheet.worked),
                "part_finished": sheet.part_finished and drawn_by(sheet.part_finished),
            }
        )
        for sheet in pack.sheets
    ]
    return pack.model_copy(update={"versions": tuple(versions), "sheets": tuple(sheets)})


@pytest.fixture(scope="module")
def pack() -> Pack:
    return rich(real_pack("8K", look=LOOK))


@pytest.fixture(scope="module")
def files(pack) -> dict[str, bytes]:
    return draw_pack(pack)


@pytest.fixture(scope="module")
def shaded_files() -> dict[str, bytes]:
    TOPICS["shaded"] = ("fractions.shaded", "fractions.add-like")
    try:
        return draw_pack(real_pack("shaded", look=LOOK))
    finally:
        del TOPICS["shaded"]


def said(data: bytes) -> list[str]:
    """Return what is read out for each figure of a file."""
    pdf = pikepdf.open(io.BytesIO(data))
    return [str(element.Alt) for element in elements(pdf) if element.S == "/Figure"]


def count(data: bytes, shown: Picture) -> int:
    return said(data).count(shown.words)


def test_every_question_has_its_figure_on_every_page(pack, files):
    starter = sum(item.picture is not None for item in pack.versions[0].items)
    assert starter > 1
    assert count(files["starter.pdf"], ASKED) == starter
    assert count(files["answers.pdf"], ANSWERED) == starter
    assert count(files["answers.pdf"], ASKED) == 0
    assert count(files["slips.pdf"], ASKED) % starter == 0
    assert count(files["starter-large.pdf"], ASKED) == starter
    # In the table of questions, at each question, and where the script reads the example out; the
    # table says of a picture that it has no room for where that is.
    first = text_of(files["teacher-notes.pdf"])[0]
    untold = " ".join(first.split()).count("(The picture is on the slide.)")
    assert 0 < untold < starter
    assert count(files["teacher-notes.pdf"], ASKED) == 2 * starter - untold + 1
    assert count(files["teacher-notes.pdf"], ANSWERED) == starter
    for sheet in pack.sheets:
        asked = sum(item.picture is not None for item in sheet.items)
        for name in (f"{sheet.tier}.pdf", f"{sheet.tier}-large.pdf"):
            assert count(files[name], ASKED) == asked + (sheet.part_finished is not None), name
            assert count(files[name], ANSWERED) == (sheet.worked is not None), name
    keys = sum(
        item is not None and item.picture is not None
        for sheet in pack.sheets
        for item in (sheet.part_finished, *sheet.items)
    )
    for name in ("follow-up-answers.pdf", "follow-up-answers-large.pdf"):
        assert count(files[name], ANSWERED) == keys


def test_working_shows_its_figure_but_not_on_a_line_left_to_write(pack, files):
    support = next(sheet for sheet in pack.sheets if sheet.tier == "support")
    lines = [step.maths is not None for step in support.part_finished.steps]
    first_is_shown = len(lines) > 1
    assert count(files["support.pdf"], SHOWN) == 1 + first_is_shown
    assert count(files["teacher-notes.pdf"], SHOWN) > 1


def test_a_figure_stands_at_one_place_on_both_slides(pack):
    for slide in slides._slides(pack)[0]:
        for spot in slide.spots:
            block = spot.cell.question
            pairs = list(zip(block.lines, answered(block).lines, strict=True))
            assert [(a.baseline, a.width) for a, _ in pairs] == [
                (b.baseline, b.width) for _, b in pairs
            ]
            for before, after in (
                (a, b)
                for line, two in pairs
                for a, b in zip(line.placed, two.placed, strict=True)
                if a.atom.picture is not None
            ):
                assert (before.atom.picture, after.atom.picture) == (ASKED, ANSWERED)
                assert before.x == after.x
                # What the two have in common has one origin, and neither reaches out of its room.
                both = edges(ASKED, ANSWERED)
                for each in (ASKED, ANSWERED):
                    made = drawing_of(each)
                    assert both.left <= made.left
                    assert both.top >= made.top


def test_figures_are_clear_of_words_and_of_one_another(pack, monkeypatch):
    """Of a whole pack, each figure taken as its box."""
    figures: list[Mark] = []

    def note(page, shown, x, y, size, other=None, beside=0.0):
        made = edges(shown, other)
        width, height = ((float(n) + 2 * MARGIN) * size for n in (made.width, made.height))
        where = (page.number, x, y, x + width, y + height, size)
        found.append(Mark(*where, "", False, "Figure"))
        figures.append(found[-1])
        with page.figure(shown.words, (x, y, x + width, y + height)):
            page.mark()

    for name, draw in drawers(pack).items():
        with recorded(monkeypatch) as found:
            monkeypatch.setattr(text_drawn, "draw_picture", note)
            draw(pack)
        clashes = [pair for pair in overlapping(found) if "Figure" in (pair[0].kind, pair[1].kind)]
        assert not clashes, (name, clashes[:2])
    assert len(figures) > 20


@whole
def test_nothing_objects_to_pages_with_figures(files, shaded_files, tmp_path):
    few = {name: shaded_files[name] for name in ("starter.pdf", "core.pdf")}
    for name, data in chain(some(files.items(), 6), few.items()):
        assert_accessible(data, tmp_path / name, HEADS if name == "teacher-notes.pdf" else ())


HEADS = (
    r"\d+ (Adding|Ratio|Sharing|Writing|Simplif|Fractions)",
    r"If you see the pupil probably so ask",  # a table's heads, where it goes on or begins a page
)


def test_no_type_of_a_large_print_figure_is_small(files, shaded_files):
    for name, data in chain(files.items(), shaded_files.items()):
        if name.endswith("-large.pdf"):
            for page in pikepdf.open(io.BytesIO(data)).pages:
                for operands, operator in pikepdf.parse_content_stream(page):
                    assert str(operator) != "Tf" or float(operands[1]) >= 18, name
