"""Answers as pupils type them, to questions of many topics: what each is worth, by both markers."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache, partial
from pathlib import Path

import pytest

from itembank.errors import ItembankError
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_item, find_topic
from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict
from itembank.notation.line import shown_line
from itembank.selfmark.questions import question_data
from tests.selfmark.test_same_verdict import MARK_ALL, marker_page, said

ROWS = Path(__file__).with_name("pupils_answers.txt")
VERDICTS = {
    "+": {Verdict.RIGHT},
    "~": {Verdict.WRONG_FORM},
    "-": {Verdict.WRONG, Verdict.KNOWN},
    "?": {Verdict.UNREADABLE},
}


def rows() -> Iterator[tuple[Item, str, list[str]]]:
    """Yield the question, the sign and the answers of each row."""
    head = ""
    for text in ROWS.read_text("utf-8").splitlines():
        sign, _, rest = text.partition(" ")
        if sign in VERDICTS:
            answers = [word.strip().replace("\\n", "\n") for word in rest.split(" | ")]
            yield item_of(head), sign, answers
        elif text and sign != "#":
            head = text


@cache
def item_of(head: str) -> Item:
    """Return the question that is meant, wherever in its tier it stands by now."""
    address, words, key = head.split(" | ")
    name, tier, _ = address.split("/")
    topic = find_topic(name)

    def meant(item: Item) -> bool:
        return (printed(item), shown_line(item.key)) == (words, key)

    try:
        if meant(item := find_item(address)):
            return item
    except ItembankError:
        pass
    space = topic.spaces[Tier(tier)]
    return next(
        item for item in map(partial(topic.item, Tier(tier)), range(len(space))) if meant(item)
    )


def printed(item: Item) -> str:
    runs = (run if isinstance(run, str) else f"{{{shown_line(run)}}}" for run in item.prompt)
    return "".join(runs).replace("\n", " ")


@pytest.mark.parametrize(
    ("item", "sign", "answers"),
    [pytest.param(*row, id=f"{row[0].topic}{row[1]}") for row in rows()],
)
def test_each_answer_is_worth_what_a_teacher_gives(item, sign, answers):
    for answer in answers:
        marked = mark(item, answer)
        assert marked.verdict in VERDICTS[sign], (answer, marked)
        assert "not true" not in marked.says


def test_no_message_to_a_pupil_speaks_of_how_questions_are_written():
    for item, _, answers in rows():
        assert not any("{" in mark(item, answer).says for answer in answers)


def test_the_self_marking_page_says_the_same(browser):
    cases = [(item, answers) for item, _, answers in rows()]
    page = marker_page(browser)
    found = page.evaluate(MARK_ALL, [[question_data(item), given] for item, given in cases])
    for (item, given), mine in zip(cases, found, strict=True):
        assert mine == [said(item, answer) for answer in given], item.address
    page.close()


def test_a_unit_that_stands_beside_the_letter_is_to_be_left_out():
    item = next(item for item, _, answers in rows() if "k=38°" in answers)  # 2k degrees
    assert mark(item, "38°").says == (
        "The number is right: leave the unit out, for it stands beside the letter already."
    )
