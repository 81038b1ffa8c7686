"""Marks on paper: beside the questions, in all, beside lines of working, and what each is for."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from itembank.packs.build import build_pack
from itembank.packs.data.pack import Pack
from itembank.pages.documents.notes import teacher_notes
from itembank.pages.draw import drawers
from itembank.pages.parts.questions.marks_said import total
from itembank.pages.parts.teacher.method_marks import earned
from itembank.planning.department.large_copies import LargePrint
from itembank.planning.department.pack_request import PlannedTopic
from itembank.text.in_words import counted
from tests.packs.packs import request as asked
from tests.pages.marks import printed
from tests.pages.test_sheets import text_of

TOPICS = ("ratio.combine", "equations.one-step", "equations.both-sides-brackets")


@pytest.fixture(scope="module")
def pack() -> Pack:
    topics = tuple(map(PlannedTopic, TOPICS))
    one = LargePrint.copies(1)
    return build_pack(asked(topics=topics, follow_up=9, variants=1, large_print=one))


@pytest.fixture(params=["", "-large"], ids=["usual", "large"])
def read(request, pack) -> Callable[[str], str]:
    """Return what reads a document of the pack by its name, in usual or in large print."""
    return lambda name: joined(drawers(pack)[f"{name}{request.param}.pdf"](pack))


def joined(pdf: bytes) -> str:
    return re.sub(r"\s+", " ", " ".join(text_of(pdf)))


def test_a_sheet_says_the_marks_of_its_questions_and_their_total(pack, read):
    for sheet in pack.sheets:
        text = read(sheet.tier)
        assert f"Score out of {total(sheet.items)}" in text
        printed = [int(n) for n in re.findall(r"\[(\d+) marks\]", text)]
        assert printed == [item.marks for item in sheet.items if item.marks > 1]
        ones = [item for item in sheet.items if item.marks == 1]
        assert ("worth 1 mark" in text) is bool(ones)
        assert total(sheet.items) == sum(printed) + len(ones)


def test_answers_say_the_marks_and_the_lines_that_earn_them(pack, read):
    text = read("follow-up-answers")
    for sheet in pack.sheets:
        assert f"{sheet.tier.capitalize()} sheet: {total(sheet.items)} marks" in text
        for item in sheet.items:
            for step in [step for step in item.steps if step.marks][:-1]:
                tail = printed(step.maths).rpartition(" = ")[2]
                assert f"{tail} 1 mark" in text, item.address


def test_the_notes_say_what_each_mark_is_for(pack):
    text = joined(teacher_notes(pack))
    start = text.index("Marks on the follow-up sheets")
    text = text[start : text.index("Where each question comes from")]
    for sheet in pack.sheets:
        for item in sheet.items:
            if item.marks == 1:
                assert [one.marks for one in earned(item)] == [1]
                continue
            *method, answer = earned(item)
            assert sum(one.marks for one in method) + answer.marks == item.marks
            for one in method:
                assert f"1 mark: {one.say}: {printed(one.maths)}" in text, item.address
            worth = counted(answer.marks, "mark")
            assert f"{worth}: {printed(item.key)}" in text


def test_the_starter_says_nothing_of_marks_a_question(pack):
    text = joined(teacher_notes(pack))
    assert not re.search(r"\[\d+ marks\]", text[: text.index("Marks on the follow-up sheets")])


def test_marks_that_no_line_of_working_earns_are_said_to_be_for_the_answer(pack):
    item = next(item for sheet in pack.sheets for item in sheet.items if item.marks > 1)
    steps = [step.model_copy(update={"marks": 0}) for step in item.steps[:-1]]
    last = item.steps[-1].model_copy(update={"marks": item.marks})
    sheets = [
        pack.sheets[0].model_copy(
            update={"items": [item.model_copy(update={"steps": (*steps, last)})]}
        )
    ]
    text = joined(teacher_notes(pack.model_copy(update={"sheets": sheets})))
    assert f"for the answer alone {item.marks} marks: {printed(item.key)}" in text
