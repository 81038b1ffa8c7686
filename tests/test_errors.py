"""Errors keep their parts, and each way to the tool puts its own words in."""

import pickle

import pytest

from itembank import matters
from itembank.cli.words.matters import WORDS, at_terminal
from itembank.errors import CheckFailed, ItembankError, Matter
from itembank.files.faults import Fault, FileFaults


def test_a_message_is_whole_in_plain_words_and_in_those_of_a_terminal():
    error = ItembankError("Name another place", matters.ELSEWHERE, ".")
    assert str(error) == "Name another place."
    assert at_terminal(error) == "Name another place with --output."


@pytest.mark.parametrize(
    "error",
    [
        ItembankError("Change ", matters.QUESTIONS, "."),
        CheckFailed("The key is wrong."),
        FileFaults([Fault("bank.toml", 3, "There is no = here.")]),
    ],
)
def test_an_error_from_another_process_says_and_holds_the_same(error):
    again = pickle.loads(pickle.dumps(error))
    assert type(again) is type(error)
    assert str(again) == str(error)
    assert at_terminal(again) == at_terminal(error)
    assert again.__dict__ == error.__dict__


def test_a_terminal_has_words_for_every_matter():
    named = {value.name for value in vars(matters).values() if isinstance(value, Matter)}
    assert named == set(WORDS)
