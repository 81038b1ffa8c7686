"""The strand's own working and spaces against published exercises and classic problems.

The two roads of the checker meet the same rows in test_worked_examples.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from generators.equations._balance import balance
from itembank.items.item import Tier
from itembank.items.topics.registry import find_topic
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.linear import linear
from itembank.notation.parse import parse
from itembank.notation.value import exact
from itembank.proof.exact.reckoning.elimination import answer
from tests.published.openstax import rows

# Exercises of OpenStax under the title of the section each is from; openstax.py beside this
# file says in which book. One, 100 − 16 = 4p − 10p − p, prints p after a number, which our
# notation reads as pence; it stands here with n.
OPENSTAX: dict[str, list[tuple[str, str]]] = {
    "Solve Equations with Fractions": [
        ("-9v = 33", "-11/3"),
        ("p - 3/10 = 5/8", "37/40"),
    ],
    "Solve Proportions and their Applications": [
        ("1.2/1.8 = d/6", "4"),
        ("x/36 = 5/9", "20"),
    ],
    "Solve Equations Using the Subtraction and Addition Properties of Equality": [
        ("b + 1/4 = 3/4", "1/2"),
        ("a - 45 = 76", "121"),
        ("c + 31 - 10 = 46", "25"),
        ("y - 3/4 = 3/5", "27/20"),
    ],
    "Solve Equations with Variables and Constants on Both Sides": [
        ("7x - 17 = -8x + 13", "2"),
        ("8x + 3/4 = 7x", "-3/4"),
        ("12x - 8 = 64", "6"),
        ("(5/4)a + 15 = (3/4)a - 5", "-40"),
        ("8c + 7 = -3c - 37", "-4"),
        ("-77 = 9b - 5", "-8"),
        ("11 - (1/5)a = (4/5)a + 4", "7"),
    ],
    "Use a General Strategy to Solve Linear Equations": [
        ("21(y - 5) = -42", "3"),
        ("15(y - 9) = -60", "5"),
        ("3(4n - 1) - 2 = 8n + 3", "2"),
        ("4(p - 4) - (p + 7) = 5(p - 3)", "-4"),
        ("35 - 5(2w + 8) = -10", "1/2"),
        ("51 + 5(4 - q) = 56", "3"),
        ("-3 - (m - 1) = 13", "-15"),
        ("4(2.5v - 0.6) = 7.6", "1"),
        ("5(8 - r) = -2(2r - 16)", "8"),
        ("15 - (3r + 8) = 28", "-7"),
        ("7(2n - 5) = 8(4n - 1) - 9", "-1"),
    ],
    "Solve Equations using the Division and Multiplication Properties of Equality": [
        ("-13x = 0", "0"),
        ("-10(q - 4) - 57 = 93", "-11"),
        ("100 - 16 = 4n - 10n - n", "-12"),
        ("-5c = 55", "-11"),
        ("w/(-2) = 99", "-198"),
        ("-(5/8)w = 40", "-64"),
        ("(9/10)x = 90", "100"),
    ],
    "Solve Equations with Fractions or Decimals": [
        ("(10y - 2)/3 + 3 = (10y + 1)/9", "-1"),
        ("0.4y - 4 = 2", "15"),
        ("0.10d + 0.25(d + 7) = 5.25", "10"),
        ("1.2x - 0.91 = 0.8x + 2.29", "8"),
        ("(5/8)b + 1/2 = -3/4", "-2"),
        ("(1/3)(x + 5) = 5/6", "-5/2"),
    ],
}

# Classic problems; from memory, each checks itself by substitution.
CLASSIC = {
    "Rhind Mathematical Papyrus 24, a quantity and its seventh": ("x + x/7 = 19", "16 5/8"),
    "Rhind Mathematical Papyrus 26, a quantity and its quarter": ("x + x/4 = 15", "12"),
    "Greek Anthology XIV 126, the age of Diophantus": (
        *("x/6 + x/12 + x/7 + 5 + x/2 + 4 = x", "84"),
    ),
    "Fibonacci, Liber Abaci, the tree below the ground": ("x/4 + x/3 = 21", "36"),
}


def _read(text: str) -> tuple[t.Relation, t.Sym]:
    equation = parse(text)
    assert isinstance(equation, t.Relation)
    (name,) = t.symbols(equation)
    return equation, t.Sym(name)


def _published(text: str) -> Fraction:
    return exact(parse(text))


@pytest.mark.parametrize(
    ("text", "value"),
    [*rows(OPENSTAX), *(pytest.param(*row, id=name) for name, row in CLASSIC.items())],
)
def test_the_strand_s_working_reaches_the_published_answer(text: str, value: str) -> None:
    """The lines of working, from the linear form of both sides, keep the published solution."""
    equation, unknown = _read(text)
    left, right = linear(equation.first), linear(equation.rest[0][1])
    name, zero = unknown.name, Fraction(0)
    steps = balance(
        unknown,
        left.get(name, zero),
        left.get("", zero),
        right.get(name, zero),
        right.get("", zero),
    )
    for step in steps:
        assert isinstance(step.maths, t.Relation)
        assert answer(unknown, (step.maths,)) == (_published(value),), step
    last = steps[-1].maths
    assert isinstance(last, t.Relation)
    assert last.first == unknown
    assert exact(last.rest[0][1]) == _published(value)


def _sides(equation: t.Relation) -> frozenset[str]:
    """Return the two sides in either order, the unknown called x."""
    (name,) = t.symbols(equation)
    pair = (equation.first, equation.rest[0][1])
    return frozenset(line(part).replace(name, "x") for part in pair)


@pytest.mark.parametrize(
    ("name", "tier", "text"),  # the text names its row in OPENSTAX above
    [
        ("two-step", Tier.SUPPORT, "12x - 8 = 64"),
        ("negative-solutions", Tier.SUPPORT, "-77 = 9b - 5"),
        ("one-step", Tier.CHALLENGE, "-5c = 55"),
        ("fractional", Tier.SUPPORT, "(9/10)x = 90"),
    ],
)
def test_a_published_question_in_a_space_has_the_published_key(
    name: str, tier: Tier, text: str
) -> None:
    every = dict(row for pairs in OPENSTAX.values() for row in pairs)
    published, wanted = every[text], _sides(_read(text)[0])
    topic = find_topic(f"equations.{name}")
    (item,) = [
        item
        for item in (topic.item(tier, index) for index in topic.spaces[tier].own)
        if any(isinstance(run, t.Relation) and _sides(run) == wanted for run in item.prompt)
    ]
    assert isinstance(item.key, t.Relation)
    assert exact(item.key.rest[0][1]) == _published(published)
