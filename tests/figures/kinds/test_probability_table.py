"""Tables of probabilities: words rebuild them, lies are found out, questions are read whole."""

from __future__ import annotations

import dataclasses
import re
from fractions import Fraction

import pytest
import sympy

from itembank.figures.drawing import Text
from itembank.figures.figure import FigureError, Reading, drawn, fault, kind_of, read, words
from itembank.figures.kinds.chance.probability_table import ProbabilityTable
from itembank.items.asks.of_figure import as_find, of_figure
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.parse import parse
from itembank.notation.value import NotExact, exact
from itembank.proof.measured.measure import as_measured, disagreement, measuring
from tests.figures.every_figure import examples
from tests.figures.held import LIED, TOLD, holds

TABLE = ProbabilityTable(
    ("red", "blue", "green"), tuple(map(parse, ("0.2", "0.5", "0.3"))), "Colour"
)
LETTERS = ProbabilityTable(
    ("red", "blue", "green"), tuple(map(parse, ("0.4", "x", "2x"))), "Colour"
)


def rebuilt(text: str) -> dict[str, Fraction]:
    """Return the probabilities by their outcomes from the words alone; letters by sympy."""
    found = {}
    for name, said in re.findall(r"(\w+) has ([^;.]+)", text.split(": ")[1]):
        found[name] = said
    x = sympy.Symbol("x")
    values = {name: _value(said, x) for name, said in found.items()}
    total = sympy.Add(*values.values()) - 1
    settled = sympy.solve(total, x)[0] if total.has(x) else 0
    return {name: Fraction(str(value.subs(x, settled))) for name, value in values.items()}


_PARTS = {"half": 2, "halves": 2, "third": 3, "quarter": 4, "sixth": 6, "twelfth": 12}


def _value(said: str, x: sympy.Symbol) -> sympy.Expr:
    words_ = said.split()
    if words_[-1] == "x":
        return (int(words_[0]) if len(words_) > 1 else 1) * x
    if "point" in words_:
        return sympy.Rational("".join(words_).replace("point", "."))
    top, bottom = words_
    return sympy.Rational(int(top), _PARTS.get(bottom) or _PARTS[bottom.removesuffix("s")])


@holds(TOLD, "probability table")
def test_the_words_are_enough_to_answer() -> None:
    for figure in examples("probability table", 60, seed=3):
        for name, value in rebuilt(words(figure)).items():
            assert exact(read(figure, Reading("probability", (name,)))) == value
            assert exact(read(figure, Reading("not", (name,)))) == 1 - value


@pytest.mark.parametrize(
    ("question", "answer"),
    [
        ("What is the probability of red?", "0.2"),
        ("What is the probability that it lands on blue?", "0.5"),
        ("What is the probability that the spinner lands on blue?", "0.5"),
        ("Work out the probability of red or green.", "0.5"),
        ("What is the probability that it is not green?", "0.7"),
        ("Which colour is most likely?", '"blue"'),
        ("The table is for a spinner. Which outcome is least likely?", '"red"'),
        ("What is the probability of yellow?", None),
        ("What is the probability of red and green?", None),
        ("What is the probability of red or red?", None),
        ("What is the probability that it is not red or green?", None),
        ("What is the probability of red twice?", None),
        ("Which plant is most likely?", None),
        ("How many are red?", None),
        ("What is the value of x?", None),
    ],
)
def test_a_question_is_read_whole_or_refused(question: str, answer: str | None) -> None:
    if answer is None:
        with pytest.raises(FigureError):
            as_find(of_figure(TABLE, (question,)))
        return
    for found in (
        as_find(of_figure(TABLE, (question,))),
        as_measured(of_figure(TABLE, (question,))),
    ):
        if '"' in answer:
            assert line(found.target) == answer
        else:
            assert exact(found.target) == exact(parse(answer))


def test_a_letter_is_what_is_left_of_one() -> None:
    ask = of_figure(LETTERS, ("Work out the value of ", t.Sym("x"), "."))
    for found in (as_find(ask), as_measured(ask)):
        assert [line(relation) for relation in found.relations] == ["0.4 + x + 2x = 1"]
    assert line(read(LETTERS, Reading("probability", ("green",)))) == "0.4"
    assert disagreement(LETTERS) == ""


@pytest.mark.parametrize("lie", ["a number", "two names changed over", "a letter more"])
@holds(LIED, "probability table")
def test_planted_lies_are_found_out(lie: str) -> None:
    figure = LETTERS if lie == "a letter more" else TABLE
    made = drawn(figure)
    marks = list(made.marks)
    places = {
        line(mark.content) if not isinstance(mark.content, str) else mark.content: at
        for at, mark in enumerate(marks)
        if isinstance(mark, Text)
    }
    changes: dict[str, object] = {
        "a number": {"0.5": parse("0.4")},
        "two names changed over": {"red": "blue", "blue": "red"},
        "a letter more": {"x": parse("3x")},
    }[lie]  # type: ignore[assignment]
    for old, new in changes.items():  # type: ignore[attr-defined]
        mark = marks[places[old]]
        assert isinstance(mark, Text)
        marks[places[old]] = dataclasses.replace(mark, content=new)
    false = dataclasses.replace(made, marks=tuple(marks))
    wrong = 0
    for reading in kind_of(figure).readings(figure):
        try:
            wrong += line(measuring(figure).measure(false, reading)) != line(read(figure, reading))
        except NotExact:
            wrong += 1
    assert wrong


@pytest.mark.parametrize(
    ("outcomes", "chances", "said"),
    [
        (("red", "blue"), ("0.2", "0.7"), "come to 9/10, not to 1"),
        (("red", "blue"), ("0.2", "1.8"), "between 0 and 1"),
        (("red", "Red"), ("0.2", "0.8"), "two of its names"),
        (("red", "blue"), ("x", "y"), "only one small letter"),
        (("red", "blue", "green"), ("0.5", "0.5", "x"), "leave nothing for the letter"),
        (("red",), ("1",), "2 to 6 outcomes"),
        (("red", "blue"), ("0.2",), "a probability for each outcome"),
        (("red", "blue"), ("0.2", "x + 1"), "a short fraction or decimal"),
    ],
)
def test_what_cannot_be_drawn_is_said_plainly(
    outcomes: tuple[str, ...], chances: tuple[str, ...], said: str
) -> None:
    assert said in fault(ProbabilityTable(outcomes, tuple(map(parse, chances))))


def test_ten_million_outcomes_are_refused_at_once() -> None:
    assert "2 to 6" in kind_of(TABLE).fault(ProbabilityTable(("red",) * 10**7, (t.Int(0),) * 10**7))


def test_the_sums_of_two_dice() -> None:
    """How likely the totals of two dice are, in 36ths (any table of dice; from memory)."""
    ways = {"two": 1, "three": 2, "larger": 33}
    figure = ProbabilityTable(tuple(ways), tuple(t.frac(n, 36) for n in ways.values()))
    found = measuring(figure).measure(drawn(figure), Reading("probability", ("two", "three")))
    assert exact(found) == Fraction(1, 12)
