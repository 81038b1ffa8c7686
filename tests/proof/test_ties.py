"""Numbers that are worth the same have no order, and no one of them is best."""

import pytest

from itembank.items.item import Choose, Order
from itembank.notation import parse
from itembank.notation import tree as t
from itembank.notation.value import NotExact
from itembank.proof.exact.exact_road import ROAD
from itembank.proof.sympy.sympy_road import ROAD as SYMPY_ROAD


@pytest.mark.parametrize("things", [("1/2", "0.5", "3"), ("3", "√9", "2"), ("√8", "1", "2√2")])
@pytest.mark.parametrize("detail", ["ascending", "descending"])
def test_equal_numbers_have_no_order(things, detail):
    ask = Order(tuple(map(parse, things)), detail)
    for key in (t.Listing(ask.things), t.Listing(ask.things[::-1])):
        with pytest.raises(NotExact, match="equal"):
            ROAD.of(ask)(ask, key)
        assert SYMPY_ROAD.of(ask)(ask, key).fault


@pytest.mark.parametrize(
    ("things", "detail"),
    [
        (("1/2", "0.5", "3"), "least"),
        (("3", "√9", "2"), "greatest"),
        (("√8", "1", "2√2"), "greatest"),
    ],
)
@pytest.mark.parametrize("road", [ROAD, SYMPY_ROAD])
def test_two_choices_that_are_equally_good_are_no_question(things, detail, road):
    ask = Choose(tuple(zip("ABC", map(parse, things), strict=True)), detail)
    for label in "ABC":
        with pytest.raises(NotExact, match="equally good"):
            road.of(ask)(ask, t.Label(label))
