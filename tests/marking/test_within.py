"""An answer may be as far from the key as its item says, in the key's own unit, and no further."""

import pytest

from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict
from tests.marking.questions import question


@pytest.mark.parametrize(
    ("key", "form", "near", "far"),
    [
        ("5", "decimal", ("4.9", "5.1", "5.04"), ("4.89", "5.11", "6")),
        ("5.0 cm", "amount", ("4.9 cm", "5.1 cm", "5.1"), ("5.2 cm", "4.8 cm", "14 cm")),
        ("62 g", "amount", ("61.9 g", "62.1 g"), ("63 g", "162 g")),
        ("£2.50", "amount", ("£2.40", "£2.60"), ("£2.39", "£2.61")),
    ],
)
def test_the_limit_itself_is_right_and_what_is_past_it_wrong(key, form, near, far):
    asked = question(key, form, "Measure it.", accept=("within 0.1", "any-form", "any-places"))
    assert [text for text in near if mark(asked, text).verdict is not Verdict.RIGHT] == []
    assert [text for text in far if mark(asked, text).verdict is not Verdict.WRONG] == []


def test_an_answer_that_is_near_two_solutions_is_one_of_them():
    asked = question("x = 0.4 or x = 0.6", "roots", "Solve it.", accept=("within 0.2",))
    assert mark(asked, "x = 0.5").verdict is Verdict.WRONG
    for both in ("0.5, 0.4", "0.4, 0.5", "x = 0.6 or x = 0.4", "0.7, 0.5", "0.5, 0.3"):
        assert mark(asked, both).verdict is Verdict.RIGHT
    assert mark(asked, "0.4, 0.9").verdict is Verdict.WRONG
