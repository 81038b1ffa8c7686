"""A question begun with the words of one of a pack: it prints, asks and proves as that one does."""

import json
import random

import pytest

from itembank.bank.model.fields import BankItem
from itembank.bank.question.as_item import read_item
from itembank.items.measures.kind_told import kind_told
from itembank.items.topics.registry import find_topic
from itembank.packs.data.convert import Faces, pack_item
from itembank.proof.judge import judge
from itembank.proof.outcome import State
from itembank.work.bank.like_printed import fields_like

CARDS = {
    "equations.one-step": {"match pairs", "odd one out", "spot the mistake", "true or false"},
    "fractions.add-unlike": {"match pairs", "spot the mistake", "true or false"},
    "ratio.simplest-form": {"match pairs", "true or false"},
}


def of_kinds(id, kinds):
    """Return a question of each of the kinds, as a topic has them."""
    topic, found = find_topic(id), {}
    for tier, space in topic.spaces.items():
        for index in random.Random(5).sample(range(len(space)), min(400, len(space))):
            item = topic.item(tier, index)
            found.setdefault(kind_told(item.ask, item.prompt), item)
    assert kinds <= set(found), set(found)
    return [(topic, found[kind]) for kind in sorted(kinds)]


def spaced(prompt):
    """Return a prompt with plain spaces: rows count, and whether a space may break does not."""
    return [run.replace("\u00a0", " ") if isinstance(run, str) else run for run in prompt]


@pytest.mark.parametrize("id", sorted(CARDS))
def test_cards_and_lines_come_back_in_their_rows(id):
    for topic, item in of_kinds(id, CARDS[id]):
        stored = json.loads(pack_item(item, topic, Faces()).model_dump_json())
        fields = fields_like(stored)
        assert "\n" not in fields["prompt"]
        again = read_item(BankItem(id="mine-1", **fields), "mine:mine-1", id)
        assert spaced(again.prompt) == spaced(item.prompt)
        assert (again.ask, again.key, again.form) == (item.ask, item.key, item.form)
        assert judge(again).state is State.PROVED


def test_a_picture_is_asked_for_the_form_it_was_asked_for():
    topic = find_topic("graphs.conversion")
    for tier in topic.spaces:
        item = topic.item(tier, 30)
        stored = json.loads(pack_item(item, topic, Faces()).model_dump_json())
        fields = BankItem(id="mine-1", **fields_like(stored))
        again = read_item(fields, "mine:mine-1", "graphs.conversion")
        assert (again.key, again.form, again.figure) == (item.key, item.form, item.figure)
