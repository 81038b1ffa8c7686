"""Units of one letter typed close up, where no letter of the question is meant."""

from __future__ import annotations

import pytest

from itembank.bank.model.fields import BankItem
from itembank.bank.question.as_item import read_item
from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict


def asked(prompt, key):
    return read_item(
        BankItem(id="a-1", tier="core", prompt=prompt, key=key), "try:a-1", "try.units"
    )


@pytest.mark.parametrize("answer", ["3500g", "3,500g", "3500 g", "3 500g"])
def test_grams_close_up_are_grams(answer):
    assert mark(asked("Change {3.5 kg} to grams.", "3500 g"), answer).verdict is Verdict.RIGHT


def test_a_wrong_number_of_grams_is_wrong_and_a_letter_stays_a_letter():
    assert mark(asked("Change {3.5 kg} to grams.", "3500 g"), "350g").verdict is Verdict.WRONG
    assert mark(asked("Simplify {2m + 3m}.", "5m"), "5 m").verdict is Verdict.RIGHT


@pytest.mark.parametrize(
    "words",
    [
        "Change {3.5 kg} to grams.",
        "Write {3.5 kg} in grams.",
        "How many grams are there in {3.5 kg}?",
        "A sack holds {3.5 kg}. How many grams is that?",
        "In grams, what is {3.5 kg}?",
    ],
)
def test_an_answer_in_the_unit_it_was_changed_from_is_not_right(words):
    marked = mark(asked(words, "3500 g"), "3.5 kg")
    assert marked.verdict is Verdict.WRONG_FORM
