"""A question of a bank with a figure: read, proved, signed by what it shows."""

from __future__ import annotations

import tomllib

import pytest

from itembank.bank.index.rows.question_rows import shown
from itembank.bank.model.content import content_hash_of
from itembank.bank.model.fields import BankItem
from itembank.bank.question.as_item import read_item
from itembank.bank.question.asking import NeedsPerson
from itembank.bank.question.twins import words_key
from itembank.bank.read.item_checks import item_faults
from itembank.bank.table.cells import cell_text, cell_value
from itembank.bank.write.as_toml import item_toml
from itembank.proof.judge import judge
from itembank.proof.outcome import State

LINE = {"kind": "number line", "first": 0, "last": 1, "steps": 4, "points": {"A": 3, "B": 1}}


def question(**fields):
    stated = {"id": "line-1", "tier": "core", "prompt": "What number is at A?", "key": "3/4"}
    return BankItem(**{**stated, "figure": LINE, **fields})


def judged(item):
    return judge(read_item(item, "garden:line-1", "fractions.shaded"))


def test_the_words_ask_and_the_figure_answers_by_both_roads():
    found = judged(question())
    assert (found.state, found.first, found.second) == (State.PROVED, "3/4", "3/4")
    assert judged(question(prompt="Which letter is at {1/4}?", key='"B"')).state is State.PROVED


def test_a_key_that_the_figure_does_not_show_is_disproved():
    assert judged(question(key="1/4")).says == "It comes to 3/4, the key says 1/4."


@pytest.mark.parametrize(
    "prompt",
    ["What colour is A?", "What number is at C?", "What number is not at A?", "{1/2}"],
)
def test_words_that_ask_the_figure_for_nothing_it_shows_go_to_a_person(prompt):
    with pytest.raises(NeedsPerson):
        read_item(question(prompt=prompt), "garden:line-1", "fractions.shaded")


def test_a_figure_that_cannot_be_drawn_is_a_fault_at_its_key():
    (fault,) = item_faults(question(figure={**LINE, "steps": "four"}))
    assert fault.field == ("figure", "steps")
    assert "whole number" in fault.message


def test_a_figure_is_part_of_what_is_signed_and_twins_are_told_by_it():
    other = question(figure={**LINE, "last": 2})
    assert content_hash_of(question(), "a.b") != content_hash_of(other, "a.b")
    first, second = (read_item(i, "garden:line-1", "a.b").twin for i in (question(), other))
    assert first != second


def test_a_figure_goes_through_toml_and_a_table_and_comes_back():
    item = question()
    (again,) = tomllib.loads(item_toml(item))["items"]
    assert BankItem(**again) == item
    assert cell_value("figure", cell_text("figure", item.figure)) == item.figure
    with pytest.raises(ValueError, match="JSON"):
        cell_value("figure", "{kind")


def test_words_that_are_not_understood_are_twins_only_of_the_same_picture():
    asked = {"prompt": "What colour is A?", "key": '"red"'}
    other = question(figure={**LINE, "last": 2}, **asked)
    assert words_key(question(**asked)) == words_key(question(id="line-2", **asked))
    assert words_key(question(**asked)) != words_key(other)


def test_what_is_shown_of_a_question_holds_its_picture_and_its_words():
    found = shown(question())["picture"]
    assert found["data"] == LINE
    assert "from 0 to 1 in 4 equal steps" in found["words"]
    assert shown(question(figure=None, prompt="Work out {3 ÷ 4}."))["picture"] is None
