"""What cannot be proved is said in words for a teacher, whatever went wrong inside."""

import builtins
import re

import pytest
import sympy.polys.polyerrors

from itembank.items.item import Solve
from itembank.proof import judge as judging
from itembank.proof.judge import judge
from itembank.proof.outcome import State
from itembank.proof.sympy import sympy_road
from tests.proof.asked import asked

NAMES = {
    name
    for module in (builtins, sympy.polys.polyerrors)
    for name, value in vars(module).items()
    if isinstance(value, type) and issubclass(value, BaseException)
}


def says(equation, key):
    outcome = judge(asked("solve", equation, key))
    assert outcome.state is State.NEEDS_PERSON
    assert not NAMES & set(re.findall(r"\w+", outcome.says))
    return outcome.says


@pytest.mark.parametrize(
    ("equation", "key", "why"),
    [
        ("2^x = 8", "x = 3", "letter stands in an exponent"),
        ("3^(x + 1) = 27", "x = 2", "letter stands in an exponent"),
        ("√(x + 1) + √x = 3", "x = 2", "letter stands under a root"),
        ("√(x + 1) + √x = 1", "x = 0", "letter stands under a root"),
    ],
)
def test_an_equation_beyond_the_roads_is_told_by_what_stands_in_it(equation, key, why):
    assert why in says(equation, key)


@pytest.mark.parametrize(
    "error", [sympy.PolynomialError("generators"), KeyError("x"), RecursionError("too deep")]
)
def test_no_name_of_an_exception_reaches_a_person(monkeypatch, error):
    def broken(*_):
        raise error

    monkeypatch.setitem(sympy_road.ROAD.by_kind, Solve, broken)
    assert says("2x = 6", "x = 3").startswith("This cannot be proved: the second road")
    monkeypatch.setattr(judging, "by_first_road", broken)
    found = says("2x = 6", "x = 3")
    assert found.startswith("The proof broke off at 2x = 6: ")


def test_the_test_for_names_would_see_one():
    assert {"PolynomialError", "KeyError"} <= NAMES
