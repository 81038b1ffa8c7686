"""Answers as pupils type them, to questions of many topics: what each is worth, by both markers."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from itembank.items.topics.registry import find_item
from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict
from itembank.selfmark.questions import question_data
from tests.selfmark.test_same_verdict import MARK_ALL, marker_page, said

ROWS = Path(__file__).with_name("pupils_answers.txt")
VERDICTS = {
    "+": {Verdict.RIGHT},
    "~": {Verdict.WRONG_FORM},
    "-": {Verdict.WRONG, Verdict.KNOWN},
    "?": {Verdict.UNREADABLE},
}


def rows() -> Iterator[tuple[str, str, list[str]]]:
    """Yield the address, the sign and the answers of each row."""
    address = ""
    for text in ROWS.read_text("utf-8").splitlines():
        sign, _, rest = text.partition(" ")
        if sign in VERDICTS:
            yield address, sign, [one.strip().replace("\\n", "\n") for one in rest.split(" | ")]
        elif text and sign != "#":
            address = text


@pytest.mark.parametrize(("address", "sign", "answers"), rows())
def test_each_answer_is_worth_what_a_teacher_gives(address, sign, answers):
    item = find_item(address)
    for answer in answers:
        marked = mark(item, answer)
        assert marked.verdict in VERDICTS[sign], (answer, marked)
        assert "not true" not in marked.says


def test_no_message_to_a_pupil_speaks_of_how_questions_are_written():
    for address, _, answers in rows():
        assert not any("{" in mark(find_item(address), answer).says for answer in answers)


def test_the_self_marking_page_says_the_same(browser):
    cases = [(find_item(address), answers) for address, _, answers in rows()]
    page = marker_page(browser)
    found = page.evaluate(MARK_ALL, [[question_data(item), given] for item, given in cases])
    for (item, given), mine in zip(cases, found, strict=True):
        assert mine == [said(item, answer) for answer in given], item.address
    page.close()


def test_a_unit_that_stands_beside_the_letter_is_to_be_left_out():
    item = find_item("geometry.angles-at-a-point/challenge/191")  # 3k + 40, 130 and 2k degrees
    assert mark(item, "38°").says == (
        "The number is right: leave the unit out, for it stands beside the letter already."
    )
