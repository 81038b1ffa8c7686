"""Large-print copies: for whom they are, nothing small in them, all else as it was."""

from __future__ import annotations

import io
import json
import re

import pikepdf
import pypdfium2
import pytest

from itembank.packs.data.pack import Look, Pack
from itembank.pages.draw import draw_pack, drawers
from itembank.pages.engine.page import theme
from itembank.pages.engine.paper import Paper
from tests.depth import each, some, whole
from tests.pages.sheet_samples import real_pack
from tests.pages.test_sheets import text_of

PAPERS = ("starter", "support", "core", "challenge")
LARGE = {*(f"{name}-large.pdf" for name in PAPERS), "follow-up-answers-large.pdf"}


@pytest.fixture(scope="module")
def usual() -> dict[str, bytes]:
    return draw_pack(real_pack("9S"))


@pytest.fixture(scope="module")
def large() -> dict[str, bytes]:
    return draw_pack(real_pack("9S", look=Look(large_print=("A3", "B-1234-X", ""))))


def test_copies_are_added_and_nothing_else_changes(usual, large):
    assert set(large) - set(usual) == LARGE
    assert {name: large[name] for name in usual} == usual


def sizes(data: bytes):
    """Yield the size of all type, powers and the letters of signs too."""
    for page in pikepdf.open(io.BytesIO(data)).pages:
        for operands, operator in pikepdf.parse_content_stream(page):
            if str(operator) == "Tf":
                yield float(operands[1])


def test_no_type_is_smaller_than_18_points(large, drawn):
    # UKAAF guidance G003 (2019), from memory: large print is at least 16 pt, ideally 18.
    for name in LARGE:
        assert min(sizes(large[name])) >= 18, name
    others = [data for (_, file), data in drawn.items() if file.endswith("-large.pdf")]
    assert len(others) > 5
    for data in others:
        assert min(sizes(data)) >= 18


@pytest.mark.parametrize("name", PAPERS)
def test_each_copy_has_its_seat_and_counts_its_own_pages(large, name):
    pages = text_of(large[f"{name}-large.pdf"])
    heads = [i for i, page in enumerate(pages) if "Seat code" in page]
    assert heads[0] == 0
    assert len(heads) == 3
    seats = [re.search(r"Seat code(?: ([\w-]*\d[\w-]*)\b)?", pages[i])[1] for i in heads]
    assert seats[:2] == ["A3", "B-1234-X"]
    assert [i % 2 for i in heads] == [0, 0, 0], "a copy begins on the back of another"
    for start, end, seat in zip(
        heads, [*heads[1:], len(pages)], ("A3", "B-1234-X", ""), strict=True
    ):
        copy = [page for page in pages[start:end] if "This side is empty" not in page]
        for number, page in enumerate(copy, start=1):
            assert f"Page {number} of {len(copy)}" in page
            assert (f"• 9S • {seat}" in page) is bool(seat)
        empty = end - start - len(copy)
        assert empty == (0 if end == len(pages) else len(copy) % 2)


@pytest.mark.parametrize(("sides", "pages"), [(1, 3), (2, 3), (3, 5)])
def test_a_copy_begins_on_a_new_sheet_where_both_sides_are_printed(sides, pages):
    paper = Paper(real_pack("9S"), "Core sheet", 14, large=True, seat="A3")
    for _ in range(sides - 1):
        paper.new_page()
    paper.next_copy("C5")
    assert (paper.seat, paper.sides) == ("C5", 1)
    text = text_of(paper.finish())
    assert len(text) == pages
    assert any("This side is empty" in page for page in text) is bool(sides % 2)
    assert f"A3 Page {sides} of {sides}" in text[sides - 1]
    assert "C5 Page 1 of 1" in text[-1]


def test_the_starter_on_paper_asks_what_the_slide_asks(large):
    pack = real_pack("9S")
    text = " ".join(text_of(large["starter-large.pdf"])[:2])
    at = 0
    for number, item in enumerate(pack.versions[0].items, start=1):
        words = "".join(run.line if run.kind == "math" else run.text for run in item.prompt)
        at = text.index(f"{number} {words[:12]}", at)
        assert item.topic_title not in text  # as on the slide: that would tell the method
    assert f"out of {pack.marks}" in text


def test_parallel_versions_take_turns(drawn):
    text = " ".join(text_of(drawn["versions", "starter-large.pdf"]))
    assert re.findall(r"Starter ([ABC]) Seat", text) == ["A", "B", "C"]


def test_a_pack_of_an_older_version_that_says_true_gets_one_copy():
    pack = real_pack("8K")
    data = pack.model_dump(mode="json")
    data["schema_version"] = 4
    data["look"] = {"large_print": True, "paper": "cream", "slips": False}
    old = Pack.model_validate_json(json.dumps(data), strict=True)
    assert old.look == Look(large_print=("",), paper="cream")
    data["look"]["large_print"] = False
    assert Pack.model_validate_json(json.dumps(data), strict=True).look.large_print == ()


def test_a_pack_takes_seat_codes_alone():
    with pytest.raises(ValueError, match="takes no pupils' names"):
        Look(large_print=("Sam",))


# Tints


def grounds(data: bytes) -> list[bool]:
    """Tell of each page whether a rectangle covers it."""
    found = []
    for page in pikepdf.open(io.BytesIO(data)).pages:
        width, height = map(float, page.mediabox[2:])
        covers = False
        for operands, operator in pikepdf.parse_content_stream(page):
            if str(operator) == "re":
                _, _, w, h = map(float, operands)
                covers |= w >= width - 1 and h >= height - 1
        found.append(covers)
    return found


SLIDES = {"starter.pdf", "answers.pdf", "next-tasks.pdf"}


@whole
@pytest.mark.parametrize("printed", [False, True])
def test_a_tint_is_printed_only_where_asked_but_always_projected(printed):
    look = Look(paper="blue", print_tint=printed, slips=True, large_print=("A3",))
    pack = real_pack("8K", look=look)
    for name, drawer in some(drawers(pack).items(), 7):
        data = drawer(pack)
        assert set(grounds(data)) == {name in SLIDES or printed}, name
        corner = pypdfium2.PdfDocument(data)[0].render(scale=1).to_numpy()[2, 2]
        blue = [int(theme.PAPERS["blue"][i : i + 2], 16) for i in (5, 3, 1)]  # blue comes first
        wanted = blue if name in SLIDES or printed else [255, 255, 255]
        assert [int(value) for value in corner[:3]] == pytest.approx(wanted, abs=1), name


def colours(data: bytes):
    """Yield each colour and what is drawn in it: ``text`` or ``line``."""
    fill = stroke = (0.0, 0.0, 0.0)
    for page in pikepdf.open(io.BytesIO(data)).pages:
        for operands, operator in pikepdf.parse_content_stream(page):
            name = str(operator)
            if name == "rg":
                fill = tuple(map(float, operands))
            elif name == "RG":
                stroke = tuple(map(float, operands))
            elif name in ("Tj", "TJ"):
                yield "text", fill
            elif name in ("S", "B"):
                yield "line", stroke


@pytest.mark.parametrize("paper", each(theme.PAPERS, 2))
def test_all_that_is_drawn_suits_the_paper_in_the_tray(paper):
    """WCAG 2.2: 4.5 : 1 for text (1.4.3), 3 : 1 for lines (1.4.11), against the tint."""
    look = Look(paper=paper, slips=True, large_print=("A3",))
    ground = theme.PAPERS[paper]
    seen = set()
    for name, data in draw_pack(real_pack("8K", look=look)).items():
        for what, parts in set(colours(data)):
            colour = "#" + "".join(f"{round(part * 255):02X}" for part in parts)
            seen.add(what)
            least = 4.5 if what == "text" else 3
            assert theme.contrast(colour, ground) >= least, (name, what, colour)
    assert seen == {"text", "line"}
