"""Each condition of a question with many right answers is held to by itself, on both roads."""

import pytest

from itembank.items.asks import Condition, Give
from itembank.items.asks.give import CONDITIONS
from itembank.items.membership import unmet
from itembank.notation import parse
from itembank.notation import tree as t
from itembank.proof.exact.many_answers import find_given
from itembank.proof.sympy.sympy_giving import given as by_sympy

X, A, B = t.Sym("x"), t.Sym("a"), t.Sym("b")
SEVEN, TWELVE = t.Int(7), t.Int(12)
ALONE = [
    ("whole", (), ["-3", "0", "12"], ["0.5", "-7/3"]),
    ("positive", (), ["1/2", "12"], ["0", "-1/2"]),
    ("negative", (), ["-1/2", "-12"], ["0", "1/2"]),
    ("even", (), ["-2", "0", "36"], ["7", "1/2", "-1"]),
    ("odd", (), ["-3", "1", "37"], ["8", "0", "1/2"]),
    ("prime", (), ["2", "61"], ["1", "51", "-2", "2.5"]),
    ("square", (), ["1", "36"], ["8", "2", "2.25", "-4"]),
    ("cube", (), ["1", "27", "64"], ["9", "25", "1/8", "-8"]),
    ("multiple", (SEVEN,), ["-14", "0", "63"], ["1", "20", "3.5"]),
    ("factor", (TWELVE,), ["1", "4", "12"], ["5", "24", "-3", "0.5"]),
]


@pytest.mark.parametrize(("name", "of", "met", "broken"), ALONE, ids=[row[0] for row in ALONE])
def test_a_condition_alone_parts_right_from_wrong(name, of, met, broken):
    ask = Give((X,), (parse("-30 < x < 70"),), (Condition(name, of),))
    for text in met:
        assert unmet(ask, parse(text)) == ""
    for text in broken:
        assert unmet(ask, parse(text))
    for road in (find_given, by_sympy):
        assert [text for text in met if road(ask, parse(text)).fault] == []
        assert [text for text in broken if not road(ask, parse(text)).fault] == []


def test_numbers_that_have_to_differ():
    ask = Give((A, B), (parse("a + b = 34"),), (Condition("prime"), Condition("different")))
    assert unmet(ask, parse("17, 17")) == "the numbers are not different"
    assert unmet(ask, parse("3, 31")) == ""
    for road in (find_given, by_sympy):
        assert road(ask, parse("17, 17")).fault
        assert not road(ask, parse("31, 3")).fault


def test_the_last_of_several_conditions_counts_too():
    conditions = tuple(map(Condition, ("whole", "odd", "square")))
    ask = Give((X,), (parse("1 < x < 90"),), conditions)
    for road in (find_given, by_sympy):
        assert not road(ask, parse("49")).fault
        assert [text for text in ("16", "15", "6.25") if not road(ask, parse(text)).fault] == []


def test_no_condition_goes_without_a_test():
    assert {row[0] for row in ALONE} | {"different"} == set(CONDITIONS)
