"""Marks follow from the lines of working, and every mark has a line."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.bank.model.content import content_hash_of
from itembank.bank.model.fields import BankItem
from itembank.bank.question.as_item import read_item
from itembank.items.item import Tier
from itembank.items.marks import marks_for, spread, step_marks, usual_marks, working_lines
from itembank.items.topics.registry import find_item, find_topic, topics
from tests.depth import cases, each, whole


@given(st.integers(1, 20), st.integers(0, 20))
def test_every_mark_has_a_line_and_the_last_line_has_the_answers(marks, lines):
    earned = spread(marks, lines)
    assert len(earned) == lines
    assert sum(earned) == (marks if lines else 0)
    if lines:
        assert earned[-1] >= 1
        # A method is one mark a line at the most; what is left over is the answer's.
        assert set(earned[:-1]) <= {0, 1}


@given(st.integers(0, 30))
def test_marks_never_fall_as_working_grows_and_a_mark_is_two_lines_at_the_most(lines):
    marks = marks_for(lines)
    assert marks_for(lines + 1) - marks in (0, 1)
    assert (marks == 1) is (lines <= 2)
    gaps = [place for place, earned in enumerate(spread(marks, lines)) if earned]
    assert all(b - a <= 2 for a, b in zip([-1, *gaps], gaps, strict=False))


EACH = cases(5, 100, 25)
"""Questions of each tier."""


@whole
@pytest.mark.parametrize("topic", each(topics(), 52), ids=lambda topic: topic.id)
def test_a_long_solution_is_worth_more_than_one_mark(topic):
    for tier in Tier:
        own = topic.spaces[tier].own  # another kind of question states its own marks
        for number in own[:: max(1, len(own) // EACH)]:
            item = topic.item(tier, number)
            lines = working_lines(item.prompt, item.steps)
            assert (item.marks > 1) is (len(lines) > 2), item.address
            assert sum(step_marks(item.prompt, item.steps, item.marks)) in (0, item.marks)


def test_eight_lines_are_four_marks_and_copying_earns_none():
    item = find_topic("ratio.combine").item(Tier.CHALLENGE, 3)
    assert len(working_lines(item.prompt, item.steps)) == 8
    assert item.marks == 4
    assert step_marks(item.prompt, item.steps, 4) == [0, 1, 0, 1, 0, 1, 0, 0, 1]
    one = find_item("equations.one-step/support/3")
    assert (one.marks, step_marks(one.prompt, one.steps, 1)) == (1, [0] * len(one.steps))


WORKING = (
    ("Take 3x from both sides", "2x + 4 = 10"),
    ("Take 4 from both sides", "2x = 6"),
    ("Divide both sides by 2", "x = 3"),
)


@pytest.mark.parametrize(
    ("working", "stated", "marks"),
    [(WORKING, None, 2), (WORKING, 1, 1), (WORKING, 5, 5), (WORKING[1:], None, 1), ((), None, 1)],
)
def test_a_banks_question_is_worth_what_its_author_says_or_its_working(working, stated, marks):
    item = BankItem(
        id="a-1",
        tier="core",
        prompt="Solve {5x + 4 = 3x + 10}.",
        key="x = 3",
        working=working,
        marks=stated,
    )
    made = read_item(item, "a:a-1", "some.topic")
    assert made.marks == marks
    assert usual_marks(made.prompt, made.steps) == (2 if len(working) == 3 else 1)


def test_a_sign_off_stands_whether_or_not_one_mark_is_written_out():
    item = BankItem(id="a-1", tier="core", prompt="Work out {1 + 1}.", key="2")
    one, two = (item.model_copy(update={"marks": marks}) for marks in (1, 2))
    hashes = [content_hash_of(each, "a.b") for each in (item, one, two)]
    assert hashes[0] == hashes[1] != hashes[2]
