"""What a search or a copy reads back from the pages."""

from __future__ import annotations

import re

import pypdfium2

from itembank.pages.documents.slides import answers


def text_of(data: bytes) -> str:
    pdf = pypdfium2.PdfDocument(data)
    text = " ".join(page.get_textpage().get_text_range() for page in pdf)
    return re.sub(r"\s+", " ", text.replace("\u00a0", " "))


def test_lines_of_formulas_are_read_back(samples, drawn):
    for name, pack in samples.PACKS.items():
        asked = text_of(drawn[name, "starter.pdf"])
        marked = text_of(drawn[name, "answers.pdf"])
        for version in pack.versions:
            for item in version.items:
                for run in item.prompt:
                    if run.kind == "math":
                        assert run.line in asked, (name, run.line)
                        assert run.line in marked
                assert item.key.line in marked, (name, item.key.line)


def test_words_are_read_in_order(drawn):
    text = text_of(drawn["plain", "starter.pdf"])
    assert "1 Work out 3/4 + 1/6. 2 Simplify the ratio 18 : 24. 3 Solve 3x + 5 = 20." in text
    assert "4(x - 2) = 2x + 7. [2 marks]" in text


def test_score_line_and_bands(drawn):
    text = text_of(drawn["plain", "answers.pdf"])
    assert "Add up your marks out of 9" in text
    for words in ("0–4 Rebuild", "5–6 Secure", "7–9 Extend"):
        assert words in text


def test_next_tasks_say_that_bands_are_no_grade(drawn, samples):
    text = text_of(drawn["plain", "next-tasks.pdf"])
    assert "They are not a grade. Your teacher may ask you to do something else." in text
    task = samples.PACKS["plain"].bands[0].task
    for words in (task.where, task.first, task.how, task.stuck, task.finished):
        assert words in text
    assert len(pypdfium2.PdfDocument(drawn["plain", "next-tasks.pdf"])) == 1


def test_slips_have_a_seat_code_and_no_name(drawn):
    text = text_of(drawn["versions", "slips.pdf"])
    assert text.count("Seat code") == 4
    assert "Name" not in text
    assert re.findall(r"Starter ([ABC])\b", text) == ["A", "B", "C", "A"]


def test_files_of_a_pack(drawn):
    files = {file for pack, file in drawn if pack == "plain"}
    assert files >= {"starter.pdf", "answers.pdf", "next-tasks.pdf"}
    assert "slips.pdf" not in files
    assert ("large", "slips.pdf") in drawn


def test_names_are_found_as_they_are_printed_without_quotation_marks(samples):
    item = samples.item("Which is right?", '"the bus depot"')
    assert item.key.line == '"the bus depot"'
    pack = samples.PACKS["plain"]
    version = pack.versions[0].model_copy(update={"items": [item]})
    text = text_of(answers(pack.model_copy(update={"versions": [version]})))
    assert "the bus depot" in text
    assert '"' not in text
