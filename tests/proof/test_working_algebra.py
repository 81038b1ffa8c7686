"""Working of questions about letters: a line that does not follow is found."""

from __future__ import annotations

import pytest

from itembank.items.item import Ask, Item, Rewrite, Solve, Step, Subject, Tier
from itembank.notation import parse
from itembank.notation import tree as t
from itembank.proof.lines.steps import step_fault


def relation(text: str) -> t.Relation:
    node = parse(text)
    assert isinstance(node, t.Relation)
    return node


def fault(ask: Ask, key: str, *lines: str) -> str:
    steps = tuple(Step("", parse(line)) for line in (*lines, key))
    return step_fault(
        Item("a:b", "t", Tier.CORE, (), ask, parse(key), "value", steps, (), (), 1, ())
    )


DOUBLE = Rewrite(parse("(x + 5)(x - 3)"), "expand")
LINEAR = Solve((relation("3(x + 2) = 21"),))
PAIR = Solve((relation("x + y = 10"), relation("x - y = 4")))
SQUARE = Solve((relation("x^2 - 6x + 7 = 0"),))
FORMULA = Subject(relation("v = u + at"), t.Sym("t"))


@pytest.mark.parametrize(
    ("ask", "key", "line"),
    [
        (DOUBLE, "x^2 + 2x - 15", "(x + 5)(x - 3) = x^2 - 3x + 5x - 15"),
        (DOUBLE, "x^2 + 2x - 15", "-3 + 5 = 2"),
        (LINEAR, "x = 5", "3x + 6 = 21"),
        (PAIR, "x = 7, y = 3", "2x = 14"),
        (SQUARE, "x = 3 + √2 or x = 3 - √2", "(x - 3)^2 = 2"),
        (FORMULA, "t = (v - u)/a", "v - u = at"),
    ],
)
def test_a_line_that_follows(ask: Ask, key: str, line: str) -> None:
    assert fault(ask, key, line) == ""


@pytest.mark.parametrize(
    ("ask", "key", "line"),
    [
        (DOUBLE, "x^2 + 2x - 15", "(x + 5)(x - 3) = x^2 + 3x + 5x - 15"),
        (DOUBLE, "x^2 + 2x - 15", "x^2 + 8x - 15"),
        (DOUBLE, "x^2 + 2x - 15", "-3 + 5 = 3"),
        (LINEAR, "x = 5", "3x + 2 = 21"),
        (PAIR, "x = 7, y = 3", "2x = 6"),
        (SQUARE, "x = 3 + √2 or x = 3 - √2", "(x - 3)^2 = 7"),
        (SQUARE, "x = 3 + √2 or x = 3 - √2", "x = 3 + √2"),
        (FORMULA, "t = (v - u)/a", "v + u = at"),
    ],
)
def test_a_line_that_does_not(ask: Ask, key: str, line: str) -> None:
    assert fault(ask, key, line).startswith("line 1 of the working ")
