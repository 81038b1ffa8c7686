"""Pages of questions that people wrote: every kind of mathematics, and the state of each item."""

from __future__ import annotations

import re

import pytest

from itembank.packs.data.pack import Pack
from itembank.packs.data.pack_item import Maths
from itembank.packs.data.pack_item import Step as PackStep
from itembank.packs.sources.sources_in_words import provenance_words, source_words
from itembank.pages.documents.notes import teacher_notes
from itembank.pages.draw import draw_pack
from itembank.pages.engine.maths.formula import formula, pieces
from itembank.pages.engine.text.paragraph import Flow, measure
from itembank.pages.parts.questions.solutions import chain, side_before
from itembank.pages.parts.teacher.script import scenes
from tests.depth import some, whole
from tests.pages.bank_samples import ASKED, asked, packs
from tests.pages.checkers import assert_accessible
from tests.pages.samples import maths, pack
from tests.pages.sheet_samples import real_pack
from tests.pages.test_notes import text_of

PACKS = packs()


@pytest.fixture(scope="module")
def files():
    return [draw_pack(one) for one in PACKS]


def read(data: bytes) -> str:
    return " ".join(text_of(data))


@pytest.mark.parametrize("number", range(len(PACKS)))
def test_every_kind_of_key_can_be_read_back_from_the_answers(files, number):
    for name in ("answers.pdf", "follow-up-answers.pdf", "teacher-notes.pdf"):
        text = re.sub(r"\s+", "", read(files[number][name]))
        for item in PACKS[number].versions[0].items:
            assert re.sub(r"\s+", "", item.key.line) in text, (name, item.key.line)


@whole
@pytest.mark.parametrize("number", range(len(PACKS)))
def test_the_checkers_find_nothing_on_any_page_of_a_bank_or_its_list_of_addresses(
    files, number, tmp_path
):
    for name, data in some(files[number].items(), 4):
        # In long notes the headings of questions on one topic look like a running head.
        heads = (r"\d+ [A-Z]",) if name == "teacher-notes.pdf" else ()
        assert_accessible(data, tmp_path / name, heads)


def test_every_kind_stands_in_some_pack():
    asked_for = {item.key.line for one in PACKS for item in one.versions[0].items}
    assert {asked(kind).key.line for kind in ASKED} == asked_for


@pytest.mark.parametrize("number", range(len(PACKS)))
def test_notes_list_the_state_of_every_question_beside_its_address(files, number):
    text = read(files[number]["teacher-notes.pdf"])
    at = text.index("Where each question comes from")
    one = PACKS[number]
    for items in (one.versions[0].items, one.sheets[0].items):
        for place, item in enumerate(items, 1):
            said = source_words(item.source).replace("\u00a0", " ")
            row = "".join(f"{place}{item.address}{said}".split())
            squeezed = "".join(text[at:].split())
            start = squeezed.index(f"{place}{item.address}"[:12])
            # An address over two lines is read in two pieces, round its state.
            assert sorted(row) == sorted(squeezed[start : start + len(row)])


def test_notes_name_each_licence_once():
    (first, *rest) = PACKS[0].versions[0].items
    source = first.source.model_copy(update={"bank": "club", "licence": "CC0-1.0"})
    licensed = [item.model_copy(update={"source": source}) for item in (first, *rest[:2])]
    version = PACKS[0].versions[0].model_copy(update={"items": [*licensed, *rest[2:]]})
    text = read(teacher_notes(PACKS[0].model_copy(update={"versions": [version]})))
    assert text.count("Licence of the questions of club: CC0-1.0.") == 1


def test_notes_say_what_was_drawn_and_left_out(files):
    text = read(files[0]["teacher-notes.pdf"])
    assert provenance_words(PACKS[0]) in text
    assert "1 disproved and 2 need a person" in text
    assert "Proved from its model" in text


def test_notes_of_a_generated_pack_say_it_once():
    text = read(teacher_notes(real_pack("8K")))
    assert "Every key here is proved; generated questions need no sign-off." in text
    assert "unsigned" not in text


# Where a long answer breaks


def lines_at(line: str, width: float, size: float = 28) -> int:
    """Return on how many lines a formula is set; none is wider than there is room for."""
    block = measure(Flow([maths(line)]), width, size)
    assert all(line.width <= width + 0.01 for line in block.lines)
    return len(block.lines)


ROOTS = "x = 3 - √2 or x = 3 + √2"
PAIRS = "x = 2, y = 5 or x = -1, y = 3"


def test_alternatives_are_cut_before_or():
    first, second = pieces(maths(ROOTS).mathml, "or")
    assert pieces(maths("x = 3 - √2").mathml, "or") == (first,)
    assert second.startswith("<math><mtext>or")
    assert len(pieces(maths(PAIRS).mathml, "or")) == 2
    assert len(pieces(maths(PAIRS).mathml, "comma")) == 4
    assert len(pieces(maths("x = 7").mathml, "or")) == 1


def test_no_alternative_is_broken_while_each_has_room():
    """Narrower and narrower: as long as one solution fits, lines end before ‘or’ alone."""
    whole = formula(maths(ROOTS).mathml).width * 28
    longest = max(formula(part).width for part in pieces(maths(ROOTS).mathml, "or")) * 28
    width = whole
    while (width := width - 10) > longest * 1.25:
        assert lines_at(ROOTS, width) == 2
    assert lines_at(ROOTS, longest * 0.7) > 2


def test_several_equations_on_a_line_are_not_shortened():
    def step(line: str) -> PackStep:
        return PackStep(say="Do it.", maths=maths(line))

    shown = [one.line for one in chain([step("x = 6 + 1"), step(ROOTS), step("x = 4 + 3")])]
    assert shown == ["x = 6 + 1", ROOTS, "x = 4 + 3"]
    assert [one.line for one in chain([step("x = 6 + 1"), step("x = 7")])] == ["x = 6 + 1", "= 7"]
    swapped = ["4(y + 3) = x", "x = 4(y + 3)"]
    assert [one.line for one in chain(map(step, swapped))] == swapped
    assert side_before(maths(ROOTS)) is None
    assert side_before(maths("x = 2, y = 5")) is None
    before = side_before(maths("x + 1 = 5"))
    assert isinstance(before, Maths)
    assert before.line == "x + 1"


# Questions with little beside the key


def bare() -> Pack:
    """Return a pack whose questions have no working and no likely mistakes."""
    items = [
        asked(kind, 2).model_copy(update={"steps": [], "misconceptions": []})
        for kind in list(ASKED)[:8]
    ]
    made = pack(items)
    sheet = made.sheets[0].model_copy(
        update={"tier": "support", "worked": items[0], "part_finished": items[1]}
    )
    return made.model_copy(update={"sheets": [sheet]})


def test_questions_without_working_or_mistakes_make_whole_pages():
    made = draw_pack(bare())
    assert "Worked example" in read(made["support.pdf"])
    titles = [scene.title for scene in scenes(bare())]
    minutes = [re.match(r"Minutes (\d+) to (\d+)", title).groups() for title in titles]
    assert minutes == [("0", "2"), ("2", "4"), ("4", "6"), ("6", "8"), ("8", "10")]
    assert "Uncover line" not in read(made["teacher-notes.pdf"])


def test_a_line_of_working_without_words_is_drawn():
    items = list(PACKS[0].versions[0].items)
    items[0] = items[0].model_copy(
        update={"steps": [PackStep(say="", maths=maths("1 + 1 = 2")), PackStep(say="Check.")]}
    )
    made = pack(items)
    sheet = made.sheets[0].model_copy(update={"tier": "support", "worked": items[0]})
    text = read(draw_pack(made.model_copy(update={"sheets": [sheet]}))["teacher-notes.pdf"])
    assert "“”" not in text
    assert "1 + 1 = 2" in text
