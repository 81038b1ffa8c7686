"""Working typed with an answer: the tool's own is right, and what comes to a wrong value wrong."""

from __future__ import annotations

import random
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.bank.question.as_item import as_item
from itembank.bank.question.given.task_given import NeedsPerson
from itembank.bank.read.load import read_bank
from itembank.items.topics.registry import find_topic, topic_ids
from itembank.marking.mark import mark
from itembank.marking.typing.read_answer import LONGEST
from itembank.marking.verdict import Verdict
from itembank.notation import line
from itembank.notation import tree as t
from tests.depth import cases, each, left, whole

BANKS = Path(__file__).parents[2] / "banks"


def written(node):
    try:
        return line(node)
    except t.NotationError:
        return line(node, pence=False)


def check_working(item):
    lines = [written(step.maths) for step in item.steps if step.maths is not None]
    # A point's coordinates are worked out one a line: the last line is one of them, no answer.
    if not lines or item.form == "point":
        return
    for typed in (lines[-1], "\n".join(lines)):
        if len(typed) > LONGEST:
            continue
        marked = mark(item, typed)
        assert marked.verdict is Verdict.RIGHT, (item.address, typed, marked)
        assert not marked.says, (item.address, typed, marked)


EACH = cases(1, 8, 4)
"""Questions of each tier."""


@whole
@pytest.mark.parametrize("name", each(topic_ids(), 52, 1))
def test_working_is_right_by_its_last_line_and_whole(name):
    topic, rng = find_topic(name), random.Random(11)
    for tier, space in topic.spaces.items():
        # The answer to cards or to statements is letters; their working ends in another thing.
        for index in rng.sample(space.own, min(EACH, len(space.own))):
            check_working(topic.item(tier, index))


@pytest.mark.parametrize("bank", [left("key-stage-3"), "key-stage-4", left("larkhythe/questions")])
def test_the_working_of_a_bank_is_right(bank):
    for topic in read_bank(BANKS / bank, processes=1).topics:
        for entry in topic.entries:
            try:
                item = as_item(entry)
            except NeedsPerson:
                continue
            check_working(item)


@settings(max_examples=cases(30, 300), deadline=None)
@given(st.sampled_from(topic_ids()), st.randoms(use_true_random=False), st.integers(1, 99))
def test_no_chain_that_ends_in_another_value_is_right(name, rng, more):
    topic = find_topic(name)
    tier = rng.choice(list(topic.spaces))
    item = topic.item(tier, rng.randrange(len(topic.spaces[tier])))
    key = item.key.rest[0][1] if isinstance(item.key, t.Relation) else item.key
    if not isinstance(key.of if isinstance(key, t.Neg) else key, t.Int | t.Mixed):
        return
    if isinstance(item.key, t.Relation) and item.key.rest[0][0] != "=":
        return
    right = line(key)
    for wrong in (
        f"{right} = {right} + {more}",
        f"{right} + {more} - {more} = {right} + {more}",
        f"1 + 1 = 2, {right} + {more}",
        f"{right}, {more} × 1000 + 1/7",
        f"{right}\n{more}000003",
        f"{right} or {more}000003",
    ):
        assert mark(item, wrong).verdict is not Verdict.RIGHT, (item.address, wrong)
