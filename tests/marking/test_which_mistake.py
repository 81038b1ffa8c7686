"""The mistake that an answer shows is told by its own question to the pupil, not by another's."""

from dataclasses import replace

import pytest

from itembank.items.item import Misconception, Slip
from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict
from itembank.notation import parse
from tests.marking.questions import question

MISTAKES = [
    (Misconception("made.adds-across", "adds across", "What is added here?"), "2/5"),
    (Misconception("made.tops", "adds the tops alone", "Are these the same size?"), "2/6"),
    (Misconception("made.turns", "turns it over", "Which number is on top?"), "6/5"),
]


@pytest.mark.parametrize("number", range(len(MISTAKES)))
@pytest.mark.parametrize("turned", [False, True])
def test_each_mistake_is_told_as_itself(number, turned):
    slips = [Slip(mistake, parse(wrong)) for mistake, wrong in MISTAKES]
    asked = replace(
        question("5/6", "fraction", "Work out {1/2 + 1/3}."),
        slips=tuple(slips[::-1] if turned else slips),
    )
    mistake, wrong = MISTAKES[number]
    marked = mark(asked, wrong)
    assert marked.verdict is Verdict.KNOWN
    assert marked.misconception == mistake
    assert marked.says == mistake.ask


def test_the_first_that_gives_an_answer_is_told_where_two_give_it():
    first, second = (mistake for mistake, _ in MISTAKES[:2])
    asked = replace(
        question("5/6", "fraction", "Work out {1/2 + 1/3}."),
        slips=(Slip(first, parse("2/5")), Slip(second, parse("4/10"))),
    )
    assert mark(asked, "4/10").misconception == first
