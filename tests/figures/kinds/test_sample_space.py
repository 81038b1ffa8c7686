"""Sample spaces: two dice as tables print them, wordings, and the lies they are caught in."""

from __future__ import annotations

import itertools
import re
from contextlib import suppress
from dataclasses import replace

import pytest

from itembank.figures.figure import FigureError, Reading, drawn, fault, read, words
from itembank.figures.kinds.chance.sample_space import SampleSpace
from itembank.items.asks.of_figure import as_find, of_figure
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.parse import parse
from itembank.notation.value import NotExact, exact
from itembank.proof.measured.measure import as_measured, disagreement, measured, measuring
from tests.figures.every_figure import examples
from tests.figures.held import LIED, TOLD, holds

DIE = tuple(map(t.Int, range(1, 7)))
DICE = SampleSpace(DIE, DIE)


def test_the_totals_of_two_dice():
    """The 36 outcomes and how often each total comes, as standard tables have it (from memory)."""
    often = {2: 1, 3: 2, 4: 3, 5: 4, 6: 5, 7: 6, 8: 5, 9: 4, 10: 3, 11: 2, 12: 1}
    for way in (read, measured):
        assert way(DICE, Reading("outcomes")) == t.Int(36)
        for total, count in often.items():
            assert way(DICE, Reading("outcomes", ("is", str(total)))) == t.Int(count)


@holds(TOLD, "sample space")
def test_outcomes_are_counted_from_the_words_alone():
    for figure in examples("sample space", 40):
        found = re.match(
            r"A table has a column for each of (.+), and a row for each of (.+)\. Each cell "
            r"shows (?:their )?(.+)\. All",
            words(figure),
        )
        first, second = (group.split(", ") for group in found.groups()[:2])
        cells = list(itertools.product(first, second))
        assert read(figure, Reading("outcomes")) == t.Int(len(cells))
        if figure.rule == "pairs":
            continue
        work = {"sum": int.__add__, "product": int.__mul__, "difference": lambda a, b: abs(a - b)}
        values = [
            work[found[3]](*(int(each.replace("negative ", "-")) for each in cell))
            for cell in cells
        ]
        for value in values:
            shown = Reading("outcomes", ("is", str(value)))
            assert read(figure, shown) == t.Int(values.count(value))


@pytest.mark.parametrize(
    ("prompt", "value"),
    [
        (("How many outcomes are there?",), "36"),
        (("What is the probability that the total is ", t.Int(7), "?"), "1/6"),
        (("What is the probability of getting a total of ", t.Int(2), "?"), "1/36"),
        (("Find the probability that the total is more than ", t.Int(9), "."), "1/6"),
        (("What is the probability that the score is even?",), "1/2"),
        (("What is the probability that the sum is a multiple of ", t.Int(3), "?"), "1/3"),
        (("How many outcomes give a total of ", t.Int(5), "?"), "4"),
        (("How many of the outcomes have an odd total?",), "18"),
        (("What is the probability of a total of at least ", t.Int(11), "?"), "1/12"),
    ],
)
def test_ways_to_ask(prompt, value):
    ask = of_figure(DICE, prompt)
    assert exact(as_find(ask).target) == exact(as_measured(ask).target) == exact(parse(value))


def test_a_product_is_not_asked_of_sums():
    with pytest.raises(FigureError, match="no product"):
        of_figure(DICE, ("What is the probability that the product is ", t.Int(6), "?"))


@pytest.mark.parametrize(
    ("figure", "said"),
    [
        (SampleSpace(DIE, ()), "2 to 8 outcomes"),
        (SampleSpace(DIE, DIE * 10**5), "2 to 8 outcomes"),
        (SampleSpace(DIE, (t.Sym("H"), t.Sym("T"))), "a sum needs numbers"),
        (SampleSpace(DIE, (t.Int(1), t.frac(1, 2))), "to be whole"),
        (SampleSpace(DIE, (t.Int(1), t.Int(1)), "pairs"), "stands once"),
    ],
)
def test_a_space_that_cannot_be_is_refused(figure, said):
    assert said in fault(figure)


@pytest.mark.parametrize("role", ["cell", "first", "second", "rule"])
@holds(LIED, "sample space")
def test_a_drawing_that_lies_is_found_out(role):
    assert disagreement(DICE) == ""
    made = drawn(DICE)
    marks = list(made.marks)
    place = next(n for n, mark in enumerate(marks) if mark.role == role)
    marks[place] = replace(marks[place], content="×" if role == "rule" else t.Int(9))
    reading = Reading("outcomes", ("is", "2"))
    with suppress(NotExact):
        found = measuring(DICE).measure(replace(made, marks=tuple(marks)), reading)
        assert line(found) != line(read(DICE, reading))
