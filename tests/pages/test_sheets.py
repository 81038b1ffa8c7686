"""The follow-up sheets and their answers: complete, apart, inside the margins, legible."""

from __future__ import annotations

import re

import numpy as np
import pypdfium2
import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.packs.data.pack import Look, Sheet
from itembank.pages.documents.follow_up_answers import follow_up_answers
from itembank.pages.documents.sheets import follow_up
from itembank.pages.draw import drawers
from itembank.pages.engine.page import theme
from itembank.pages.engine.paper import TOP
from itembank.pages.parts.questions.instructions import last_instruction, without
from itembank.pages.parts.questions.solutions import chain, side_before
from itembank.pages.parts.sheet.rows import rows
from itembank.pages.parts.sheet.sheet_pages import LEAST_SHARE, MOST_SHARE, Room, share_out
from tests.depth import each
from tests.pages.checkers import assert_accessible
from tests.pages.marks import key_printed, overlapping, printed, recorded
from tests.pages.sheet_samples import TOPICS, real_pack

LARGE = Look(large_print=("A3", "C5"), paper="cream")
PACKS = [("7M", Look()), ("8K", Look()), ("9S", Look()), ("8K", LARGE)]
USUAL = (
    "support.pdf",
    "core.pdf",
    "challenge.pdf",
    "follow-up-answers.pdf",
    "teacher-notes.pdf",
)
FILES = (
    *USUAL,
    "starter-large.pdf",
    "support-large.pdf",
    "core-large.pdf",
    "challenge-large.pdf",
    "follow-up-answers-large.pdf",
)


def text_of(data: bytes) -> list[str]:
    """Return the text of each page, spaces evened out."""
    out = []
    for page in pypdfium2.PdfDocument(data):
        text = page.get_textpage().get_text_range().replace("\u00a0", " ")
        out.append(re.sub(r"\s+", " ", text))
    return out


def every_pack(file):
    """Yield the packs that have a file of this name."""
    for name, look in PACKS:
        if file.endswith("-large.pdf") and not look.large_print:
            continue
        yield f"{name}{'-large' if look.large_print else ''}", real_pack(name, look=look)


# Drawing


@pytest.mark.parametrize("file", FILES)
def test_marks_are_apart_inside_the_margins_and_large_enough(file, samples, monkeypatch):
    for name, pack in [*every_pack(file), *samples.PACKS.items()]:
        if file not in drawers(pack):
            continue
        large = file.endswith("-large.pdf")
        least = theme.LARGE_TEXT if large else theme.PAPER_LEAST
        with recorded(monkeypatch) as marks:
            drawers(pack)[file](pack)
        assert len(marks) > 10
        for one, other in overlapping(marks):
            raise AssertionError(f"{name} {file}: {one} and {other}")
        for mark in marks:
            assert mark.x0 >= theme.PAPER_MARGIN - 0.01, (name, mark)
            assert mark.x1 <= theme.A4[0] - theme.PAPER_MARGIN + 0.6, (name, mark)
            assert mark.y1 <= TOP + 0.6, (name, mark)
            if not mark.artifact:
                assert mark.y0 >= 30 + least, (name, mark)
            if large or mark.kind != "Figure":  # the letter in a small sign is a picture's part
                assert mark.size >= least - 1e-6, (name, mark)


@pytest.mark.parametrize("file", ["support.pdf", "core.pdf", "challenge.pdf"])
def test_questions_are_set_at_14_points_and_18_in_large_print(file, monkeypatch):
    # Design: sheets at 14 pt, never under 12; large print at 18 or more.
    pack = real_pack("8K", look=LARGE)
    for name, size in ((file, 14), (file.replace(".pdf", "-large.pdf"), 18)):
        with recorded(monkeypatch) as marks:
            drawers(pack)[name](pack)
        words = {m.size for m in marks if m.kind == "Span" or m.kind == "LBody"}
        assert words == {size}


@pytest.mark.parametrize("file", each(FILES, 3))
def test_rendered_ink_stays_on_the_printable_page(file):
    for name, pack in every_pack(file):
        for page in pypdfium2.PdfDocument(drawers(pack)[file](pack)):
            image = np.asarray(page.render(scale=1, grayscale=True).to_numpy()).squeeze()
            dark = image < image[3, 3] - 12
            assert dark.any()
            dark[20:-20, 40:-40] = False
            assert not dark.any(), (name, file)


@pytest.mark.parametrize("file", each(FILES, 2))
def test_the_same_pack_gives_the_same_bytes(file):
    pack = real_pack("8K", look=LARGE)
    draw = drawers(pack)[file]
    assert draw(pack) == draw(pack)
    other = real_pack("8K", seed=8, look=LARGE)
    assert draw(pack) != drawers(other)[file](other)


@pytest.mark.parametrize("file", each(FILES, 2, 1))
def test_the_checkers_find_nothing(file, tmp_path):
    # In long notes the headings of questions on one topic look like a running head to outloud.
    heads = (r"\d+ [A-Z][a-z]+ing ",) if file == "teacher-notes.pdf" else ()
    for name, pack in every_pack(file):
        assert_accessible(drawers(pack)[file](pack), tmp_path / f"{name}-{file}", heads)


# What is on them


def test_a_sheet_holds_its_questions_in_order_and_no_answers():
    for _, pack in every_pack(""):
        for sheet in pack.sheets:
            text = " ".join(text_of(follow_up(pack, sheet.tier)))
            assert text.startswith(f"{sheet.tier.capitalize()} sheet")
            at = text.rindex("Answer:") if sheet.part_finished else 0
            for item in sheet.items:
                said = last_instruction(item)
                shown = said.replace("\u00a0", " ")
                assert shown[1:] in text  # its own, or once for all questions of a row
                for run in without(item, said) if said else item.prompt:
                    words = printed(run) if run.kind == "math" else run.text
                    for word in words.split():
                        found = text.find(word, at)
                        assert found >= 0, (item.address, word)
                        at = found
            if sheet.tier == "core":
                for item in sheet.items:
                    if printed(item.key).startswith("x ="):
                        assert printed(item.key) not in text


def test_sheet_head_says_whose_it_is():
    pack = real_pack("8K")
    first = text_of(follow_up(pack, "support"))[0]
    for words in ("Support sheet", "Rebuild", "Seat code", "8K", "Monday 30 November 2026"):
        assert words in first
    pages = text_of(follow_up(pack, "challenge"))
    assert f"Page {len(pages)} of {len(pages)}" in pages[-1]


def test_sheets_take_no_more_than_two_sides():
    for name in TOPICS:
        pack = real_pack(name)
        for sheet in pack.sheets:
            assert len(text_of(follow_up(pack, sheet.tier))) <= 2, (name, sheet.tier)


def test_support_opens_with_a_whole_example_and_one_to_finish():
    pack = real_pack("8K")
    sheet = pack.sheets[0]
    assert sheet.tier == "support"
    assert sheet.worked is not None
    assert sheet.part_finished is not None
    text = text_of(follow_up(pack, "support"))[0]
    before, _, rest = text.partition("Now finish this one")
    unfinished, _, _ = rest.partition("Answer:")
    for step in sheet.worked.steps:
        assert step.say in before
        if step.maths:
            assert printed(step.maths) in before
    assert sheet.worked.key.line in before.rpartition("Answer:")[2]
    lines = [printed(step.maths) for step in sheet.part_finished.steps if step.maths]
    for step in sheet.part_finished.steps:
        assert step.say in unfinished
    assert lines[0] in unfinished
    assert lines[-1] not in unfinished


def test_answers_hold_every_key_and_line_of_working():
    for _, pack in every_pack(""):
        text = " ".join(text_of(follow_up_answers(pack)))
        at = 0
        for sheet in pack.sheets:
            at = text.index(f"{sheet.tier.capitalize()} sheet", at)
            for number, item in enumerate(sheet.items, start=1):
                key = f"{number} {key_printed(item)}"
                assert text.find(key, at) >= 0, (item.address, key)
                at = text.find(key, at)
                for maths in chain(item.steps):
                    assert printed(maths) in text or printed(maths) == printed(item.key)


def test_missing_sheet_is_refused():
    pack = real_pack("8K").model_copy(update={"sheets": []})
    with pytest.raises(ValueError, match="no core sheet"):
        follow_up(pack, "core")
    assert "core.pdf" not in drawers(pack)


# Room to work


@pytest.mark.parametrize("name", TOPICS)
@pytest.mark.parametrize("size", [14.0, 18.0])
def test_each_question_stands_in_one_row(name, size):
    for sheet in real_pack(name).sheets:
        made = rows(sheet.items, size, 12.0)
        cells = [cell for row in made for cell in row.cells]
        assert [cell.number for cell in cells] == list(range(1, len(sheet.items) + 1))
        for row in made:
            assert len({cell.item.topic for cell in row.cells}) == 1 or all(
                cell.opens for cell in row.cells
            )


@given(
    which=st.lists(st.sampled_from(range(10)), min_size=1, max_size=20),
    tier=st.sampled_from([0, 1, 2]),
    first=st.floats(0, 640),
    sides=st.integers(0, 3),
)
def test_rows_are_shared_out_whole_in_order_and_fit(which, tier, first, sides):
    items = real_pack("8K").sheets[tier].items
    made = rows([items[i] for i in which], 14.0, 12.0)
    pages, share = share_out(made, Room(first, 740.0, sides))
    assert [row for page in pages for row in page] == made
    assert LEAST_SHARE <= share <= MOST_SHARE
    for number, page in enumerate(pages):
        room = 740.0 if number else first
        assert sum(row.height(share) for row in page) <= room + 1e-6
    assert all(pages[1:])


def test_topics_that_change_at_every_turn_are_not_named():
    sheet = real_pack("8K").sheets[1]
    by_topic: dict[str, list] = {}
    for item in sheet.items:
        by_topic.setdefault(item.topic, []).append(item)
    groups = list(by_topic.values())
    mixed = [group[i] for i in range(3) for group in groups]
    made = rows(mixed, 14.0, 12.0)
    assert not any(cell.opens for row in made for cell in row.cells)
    grouped = rows(sheet.items, 14.0, 12.0)
    assert sum(cell.opens for row in grouped for cell in row.cells) == len(groups)


def test_a_sheet_without_examples_starts_with_its_questions():
    pack = real_pack("8K")
    sheet = pack.sheets[0]
    bare = Sheet(tier="support", items=sheet.items)
    text = text_of(follow_up(pack.model_copy(update={"sheets": [bare]}), "support"))[0]
    assert "Worked example" not in text
    assert text.index("1 ") < text.index("2 ")


# Lines of working


def test_chain_leaves_out_what_has_been_shown(samples):
    steps = [
        samples.Step(say="Write both over 12.", maths=samples.maths("3/4 + 1/6 = 9/12 + 2/12")),
        samples.Step(say="Nothing to write."),
        samples.Step(say="Add.", maths=samples.maths("9/12 + 2/12 = 11/12")),
        samples.Step(say="Say so.", maths=samples.maths("3/4 + 1/6 = 11/12")),
        samples.Step(say="Another.", maths=samples.maths("2x = 6")),
    ]
    found = chain(steps)
    assert [maths.line for maths in found] == [
        "3/4 + 1/6 = 9/12 + 2/12",
        "= 11/12",
        "= 11/12",
        "2x = 6",
    ]
    assert found[1].words == "equals 11 twelfths"
    assert found[1].mathml.startswith('<math><mo form="infix">=</mo>')
    assert found[1].mathml.count("<mfrac>") == 1


def test_side_before_the_equals_sign(samples):
    assert side_before(samples.maths("2x + 1 = 7")).line == "2x + 1"
    assert side_before(samples.maths("x < 3")) is None


def test_a_slide_keeps_the_title_whole_before_the_date():
    title = "Sharing in a ratio, again"
    for variants in (1, 2):
        pack = real_pack("8K", variants=variants)
        lesson = pack.lesson.model_copy(update={"title": title})
        named = pack.model_copy(update={"lesson": lesson})
        asked, marked = (
            text_of(drawers(named)[f"{name}.pdf"](named))[0] for name in ("starter", "answers")
        )
        assert title in asked
        # Beside its title the answer slide says what bands are for.
        assert "not a grade" in marked
        assert "8K" in asked
        assert "8K" in marked


def test_a_start_too_wide_beside_its_words_is_written_below_them_on_one_line(samples):
    from itembank.pages.parts.questions import solutions as working

    step = samples.Step(say="Collect like terms", maths=samples.maths("x^2 + 5x + 2x + 10 = 0"))
    narrow, wide = 300.0, 3000.0
    for width, below in ((narrow, True), (wide, False)):
        row = working._row(step, 0, [0], width, 0.34 * width, 12, 18)
        assert row.below is below
        assert row.write
        assert row.maths is None or len(row.maths.lines) == 1
        assert row.height >= row.say.height + (working.WRITING * 18 if below else 0)
