"""An answer of the right value with work left in it, and working that leaves a unit out."""

from itertools import islice

import pytest

from itembank.items.asks import FaultyLine
from itembank.items.item import Tier
from itembank.items.topics.registry import find_topic
from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict
from itembank.notation.line import line
from tests.marking.questions import question


@pytest.mark.parametrize(
    ("key", "form", "answer"),
    [
        ("x = 2 + √3", "solution", "x = 1 + 1 + √3"),
        ("x = 2 + √3", "solution", "1 + 1 + √3"),
        ("x = 2 + √3 or x = 2 - √3", "roots", "x = 2 + √3 or x = 3 - 1 - √3"),
        ("y = 5x", "solution", "y = 2x + 3x"),
        ("x = 2a + 3", "solution", "x = a + a + 3"),
    ],
)
def test_a_solution_that_is_not_worked_out_is_not_right_yet(key, form, answer):
    asked = question(key, form)
    assert mark(asked, key).verdict is Verdict.RIGHT
    assert mark(asked, answer).verdict is Verdict.WRONG_FORM


@pytest.mark.parametrize(
    ("working", "says"),
    [
        ("3 × 40 = 120 = £1.20", ""),
        ("3 × 40 = 130 = £1.20", "The answer is right; 3 × 40 = 130 on the way is not true."),
    ],
)
def test_pence_without_their_sign_are_no_false_line(working, says):
    asked = question("£1.20", "amount", "What do {3} pens at {40p} each cost?")
    marked = mark(asked, working)
    assert (marked.verdict, marked.says) == (Verdict.RIGHT, says)


@pytest.mark.parametrize(
    ("name", "left"),
    [("algebra.factorise", "factorise"), ("algebra.expand-one-bracket", "multiply out")],
)
def test_beside_a_line_the_working_began_from_is_no_answer(name, left):
    """It is worth as much as the right result: of 2t + 6 = 2(t + 3) the one for the other."""
    topic = find_topic(name)
    items = (topic.item(tier, at) for tier in Tier for at in range(len(topic.spaces[tier])))
    spotted = list(islice((item for item in items if isinstance(item.ask, FaultyLine)), 30))
    assert len(spotted) == 30
    for item in spotted:
        number = item.key.parts[0].text
        begun = mark(item, f"{number}, {line(item.ask.question)}")
        assert begun.verdict is Verdict.WRONG_FORM
        assert left in begun.says
        assert mark(item, f"{number}, {line(item.key.parts[1])}").verdict is Verdict.RIGHT
