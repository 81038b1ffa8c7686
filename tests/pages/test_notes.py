"""The teacher's notes: everything a teacher needs to know, and a script that can be used."""

from __future__ import annotations

import io
import random
import re
from itertools import pairwise

import pikepdf
import pypdfium2
import pytest

from itembank.items.topics.registry import topic_ids
from itembank.pages.documents.notes import CAUTIONS, CHECKS, teacher_notes
from itembank.pages.documents.notes_summary import DECIDES, TO_DO, summary
from itembank.pages.engine.page import theme
from itembank.pages.engine.paper import FOOT, TOP, Paper, Part, space
from itembank.pages.engine.text.paragraph import Strong
from itembank.pages.parts.teacher.script import chosen, mid_sentence, repair_bands, scenes, telling
from tests.depth import cases, whole
from tests.pages.marks import key_printed, printed
from tests.pages.sheet_samples import TOPICS, drawn_packs, random_packs, real_pack
from tests.pages.test_one_slide import LARGE, on_topics


def test_a_pack_without_sheets_has_notes_and_no_script():
    pack = real_pack().model_copy(update={"sheets": []})
    text = " ".join(text_of(teacher_notes(pack)))
    assert "Each question: working and wrong answers" in text
    assert "Script for the repair group" not in text


def text_of(data: bytes) -> list[str]:
    out = []
    for page in pypdfium2.PdfDocument(data):
        text = page.get_textpage().get_text_range().replace("\u00a0", " ")
        out.append(re.sub(r"\s+", " ", text))
    return out


def kinds(data: bytes) -> list[str]:
    """Return the kinds of all structure elements in reading order."""
    found = []

    def walk(node):
        if isinstance(node, pikepdf.Dictionary) and "/S" in node:
            found.append(str(node.S)[1:])
            kids = node.get("/K", [])
            for kid in kids if isinstance(kids, pikepdf.Array) else [kids]:
                walk(kid)

    with pikepdf.open(io.BytesIO(data)) as pdf:
        for kid in pdf.Root.StructTreeRoot.K:
            walk(kid)
    return found


@pytest.mark.parametrize("name", TOPICS)
def test_the_first_page_is_enough(name):
    """All questions with their keys, a wrong answer to each, three things to do, the bands."""
    pack = real_pack(name)
    first = text_of(teacher_notes(pack))[0]
    for words in (*TO_DO, DECIDES):
        assert words in first
    at = 0
    for band in pack.bands:
        at = first.index(f"{band.name} {band.lowest}–{band.highest} {band.task.title}", at)
    at = first.index("Questions, keys and what to look out for")
    for number, item in enumerate(pack.versions[0].items, start=1):
        asked = next(run.text.split()[0] for run in item.prompt if run.kind == "text")
        at = first.index(f"{number} {asked}", at)
        at = first.index(printed(item.key), at)
        for slip in item.misconceptions[:1]:
            at = first.index(printed(slip.wrong), at)
            assert mid_sentence(slip.name).split()[0] in first[at:]


def summary_alone(pack) -> list[str]:
    paper = Paper(pack, "Teacher notes", theme.PAPER_LEAST)
    summary(paper, pack)
    return text_of(paper.finish())


FIRST_PAGES = cases(4, 24, 12)


@whole
def test_the_first_page_is_enough_for_eight_questions_of_any_topics():
    """A teacher who reads no other page has all of them, also where they have large pictures."""
    rng = random.Random(71)
    longer = []
    for seed in range(FIRST_PAGES):
        topics = rng.sample(topic_ids(), 4)
        pack = on_topics(*topics, seed=seed, fitted=False)
        first, *more = summary_alone(pack)
        longer += [topics] if more else []
        left_out = first.count(" is on the slide.)")
        items = pack.versions[0].items
        assert left_out <= sum(item.picture is not None for item in items)
        for item in [] if more else items:
            assert printed(item.key) in first
    assert len(longer) <= 0.05 * FIRST_PAGES, longer


def test_pictures_are_left_to_the_slide_only_where_the_first_page_has_no_room_for_them():
    # Two pie charts, a graph and a tree are too much; one number line is not.
    full = on_topics(*LARGE[:3], "statistics.pie-charts", seed=3, fitted=False)
    pictures = sum(item.picture is not None for item in full.versions[0].items)
    pages = summary_alone(full)
    assert 0 < pages[0].count(" is on the slide.)") < pictures
    assert len(pages) == 1
    few = on_topics("fractions.shaded", *TOPICS["7M"], seed=3, fitted=False)
    assert any(item.picture is not None for item in few.versions[0].items)
    assert summary_alone(few)[0].count(" is on the slide.)") == 0


def test_the_rest_says_what_else_to_check_and_how_keys_were_proved():
    pack = real_pack("8K")
    text = " ".join(text_of(teacher_notes(pack)))
    for words in (*CHECKS, *CAUTIONS):
        assert words in text
    for words in ("exact arithmetic", "computer algebra", f"seed {pack.seed}", pack.made_by):
        assert words in text


@pytest.mark.parametrize("name", TOPICS)
def test_each_question_comes_with_key_working_and_mistakes(name):
    pack = real_pack(name)
    text = " ".join(text_of(teacher_notes(pack)))
    at = text.index("Each question: working and wrong answers")
    for number, item in enumerate(pack.versions[0].items, start=1):
        at = text.index(f"{number} {item.topic_title}", at)
        end = (
            text.find(f"{number + 1} {pack.versions[0].items[number].topic_title}", at + 1)
            if (number < len(pack.versions[0].items))
            else text.index("Where each question comes from")
        )
        here = text[at:end]
        assert f"Key: {key_printed(item)} ({item.key.form_words})" in here
        for step in item.steps:
            assert step.say in here
            assert step.maths is None or printed(step.maths) in here
        for misconception in item.misconceptions:
            assert printed(misconception.wrong) in here
            assert all(word in here for word in mid_sentence(misconception.name).split())
            assert all(word in here for word in misconception.ask.split())
        on_it = [question for question in pack.versions[0].items if question.topic == item.topic]
        shown = {slip.name for question in on_it for slip in question.misconceptions}
        blind = {name for question in on_it for name in question.untested} - shown
        last = item is on_it[-1]
        assert ("on this topic looks for" in here) == (last and bool(blind))
        for name in blind if last else ():
            assert mid_sentence(name) in here


def test_a_question_is_divided_only_between_the_rows_of_its_table():
    divided = 0
    for name in TOPICS:
        pack = real_pack(name)
        pages = text_of(teacher_notes(pack))
        for number, item in enumerate(pack.versions[0].items, start=1):
            head = f"{number} {item.topic_title}"
            start = next(i for i, page in enumerate(pages) if head in page)
            # The question, its key and its working are on the page of its heading.
            here = pages[start][pages[start].index(head) :]
            assert f"Key: {key_printed(item)} ({item.key.form_words})" in here
            assert all(step.say in here for step in item.steps)
            goes_on = [i for i, page in enumerate(pages) if f"Question {number}, continued" in page]
            assert goes_on in ([], [start + 1])
            divided += len(goes_on)
            for i in goes_on:
                # The head of the table is never the last line before the footer, and is there
                # again above the rows that follow.
                assert not re.search(r"so ask Teacher notes •", pages[i - 1])
                assert re.match(rf"Question {number}, continued If you", pages[i])
    assert divided


@pytest.mark.parametrize("name", TOPICS)
def test_the_script_has_a_page_to_itself_behind_the_first(name):
    pages = text_of(teacher_notes(real_pack(name)))
    holders = [i for i, page in enumerate(pages) if "Minutes" in page]
    assert holders == [1]
    assert pages[1].startswith("Script for the repair group")
    assert "Minutes 8 to 10" in pages[1]
    assert pages[2].startswith("Each question: working and wrong answers")


def reach(page) -> float:
    """Return how far down a page its text goes, as a share of the room above the footer."""
    text = page.get_textpage()
    lowest = min(
        bottom
        for _, bottom, _, _ in map(text.get_rect, range(text.count_rects()))
        if bottom > FOOT + 10
    )
    return (TOP - lowest) / (TOP - FOOT - 10)


@whole
def test_no_page_of_the_notes_is_left_nearly_empty_and_none_ends_them_with_one_line():
    """Ten questions take a little more than the first page."""
    long = 0
    pictures = drawn_packs(cases(4, 5, 5))
    for pack in [
        *random_packs(cases(4, 6, 6)),
        *pictures,
        *map(real_pack, TOPICS),
        real_pack(variants=3),
    ]:
        pages = list(pypdfium2.PdfDocument(teacher_notes(pack)))
        # The script, which begins a page where it can be taken apart, may follow long pictures.
        assert min(map(reach, pages[:-1])) > (0.3 if pack in pictures else 0.5), pack.topics
        assert reach(pages[-1]) > 0.2
        text = [page.get_textpage().get_text_range() for page in pages]
        script = next(i for i, said in enumerate(text) if "Script for the repair group" in said)
        assert script in ((1, 2, 3) if pack in pictures else (1, 2))
        if script == 2:
            long += 1
            assert "Cautions" in text[1]
    assert long


def test_a_table_that_goes_on_over_the_page_takes_two_rows_there():
    paper = Paper(real_pack(), "Table", 12)
    rows = [Part(100.0, lambda page, x, top: tops.append((page.number, top))) for _ in range(8)]
    tops: list[tuple[int, float]] = []
    assert 7 * 100.0 < paper.full < 8 * 100.0
    with paper.document.tag("P"):
        paper.place_apart(rows, "Table, continued", space(20.0))
    assert [page for page, _ in tops] == [0] * 6 + [1] * 2


def test_the_outline_names_every_heading_in_order_with_its_page():
    pack = real_pack("8K")
    data = teacher_notes(pack)
    pages = text_of(data)
    found = []

    def walk(pdf, entries, level):
        for entry in entries:
            page = next(
                i for i, p in enumerate(pdf.pages) if p.objgen == entry.destination[0].objgen
            )
            found.append((level, " ".join(entry.title.split()), page))
            walk(pdf, entry.children, level + 1)

    with pikepdf.open(io.BytesIO(data)) as pdf, pdf.open_outline() as outline:
        walk(pdf, outline.root, 1)
    assert [f"H{level}" for level, _, _ in found] == [
        kind for kind in kinds(data) if re.fullmatch(r"H\d", kind)
    ]
    assert found[0] == (1, "Teacher notes", 0)
    assert all(title in pages[page] for _, title, page in found)
    assert (2, "Script for the repair group", 1) in found


def test_every_address_is_listed():
    pack = real_pack("7M", variants=2)
    text = " ".join(text_of(teacher_notes(pack)))
    for version in pack.versions:
        for item in version.items:
            assert item.address in text
    for sheet in pack.sheets:
        for item in sheet.items:
            assert item.address in text
    assert pack.sheets[0].worked.address in text


def test_keys_of_other_versions_are_in_a_table():
    pack = real_pack("7M", variants=3)
    text = " ".join(text_of(teacher_notes(pack)))
    table = text[text.index("Keys of the other versions") : text.index("Where each question")]
    assert "Version B" in table
    assert "Version C" in table
    for number in range(8):
        row = " ".join(key_printed(version.items[number]) for version in pack.versions[1:])
        assert f"{number + 1} {row}" in table


def test_tables_and_headings_are_tagged():
    found = kinds(teacher_notes(real_pack("8K")))
    assert found.count("H1") == 1
    assert found.count("H2") >= 6
    levels = [int(kind[1]) for kind in found if re.fullmatch(r"H\d", kind)]
    assert all(b <= a + 1 for a, b in pairwise(levels))
    tables = found.count("Table")
    items = real_pack("8K").versions[0].items
    long = [[item for item in sheet.items if item.marks > 1] for sheet in real_pack("8K").sheets]
    assert any(long)
    shown = sum(bool(item.misconceptions) for item in items)
    assert tables == 2 + shown + sum(map(bool, long))
    # Every table has three columns, but the questions four; bands and questions name their rows.
    assert found.count("TH") == 3 * tables + 1 + 3 + len(items)
    rows = sum(len(item.misconceptions) for item in items) + sum(map(len, long))
    assert found.count("TD") == 3 * rows + 2 * 3 + 3 * len(items)


def test_script_lasts_ten_minutes_and_uses_the_examples():
    pack = real_pack("8K")
    found = scenes(pack)
    spans = [tuple(map(int, re.findall(r"\d+", scene.title))) for scene in found]
    assert spans[0][0] == 0
    assert spans[-1][1] == 10
    assert all(a[1] == b[0] for a, b in pairwise(spans))
    worked = pack.sheets[0].worked
    example = next(scene for scene in found if "example" in scene.title)
    shown = [run for line in example.lines for run in line.runs]
    for step in worked.steps:
        assert any(isinstance(run, str) and step.say in run for run in shown)
        assert step.maths is None or step.maths in shown
    for scene in found:
        for line in scene.lines:
            assert line.kind in ("Say", "Ask", "Do")
            assert all(not isinstance(run, Strong) for run in line.runs)
            text = "".join(run for run in line.runs if isinstance(run, str))
            assert text.count("“") == text.count("”")
        kinds_here = {line.kind for line in scene.lines}
        assert "Ask" in kinds_here or "Say" in kinds_here


def test_the_most_telling_misconceptions_come_first():
    pack = real_pack("9S")
    topic = pack.sheets[0].worked.topic
    ranked = telling(pack, topic)
    counts: dict[str, int] = {}
    for item in pack.versions[0].items:
        for misconception in item.misconceptions:
            counts[misconception.id] = counts.get(misconception.id, 0) + 1
    assert {one.misconception.id: one.shown for one in ranked} == counts
    first = chosen(pack, topic)[0]
    same = [t for t in ranked if t.item.topic == topic]
    assert first.item.topic == topic
    assert first.shown == max(t.shown for t in same)
    assert len({t.misconception.id for t in chosen(pack, topic)}) == 2


def test_script_without_examples_or_misconceptions_still_stands():
    pack = real_pack("8K")
    bare = [item.model_copy(update={"misconceptions": []}) for item in pack.versions[0].items]
    pack = pack.model_copy(
        update={
            "versions": [pack.versions[0].model_copy(update={"items": bare})],
            "sheets": [
                sheet.model_copy(update={"worked": None, "part_finished": None})
                for sheet in pack.sheets
            ],
        }
    )
    text = " ".join(text_of(teacher_notes(pack)))
    assert "Write on the board:" in text
    # No mistake is known, so the group's own are talked about: the ten minutes have no gap.
    assert "Tell me what you did." in text
    assert "Somebody answers" not in text


def test_repair_group_is_the_bands_with_the_teacher_or_the_lowest():
    pack = real_pack("8K")
    assert [band.name for band in repair_bands(pack)] == ["Rebuild"]
    alone = [
        band.model_copy(update={"task": band.task.model_copy(update={"mode": "in pairs"})})
        for band in pack.bands
    ]
    changed = pack.model_copy(update={"bands": alone})
    assert [band.letter for band in repair_bands(changed)] == ["R"]
