"""Probability against values published elsewhere."""

from __future__ import annotations

from fractions import Fraction

import pytest

from itembank.figures.figure import Reading, drawn, read
from itembank.figures.kinds.chance.probability_table import ProbabilityTable
from itembank.figures.kinds.chance.sample_space import SampleSpace
from itembank.items.asks import Find
from itembank.items.asks.of_figure import as_find, of_figure
from itembank.items.item import Item, Tier
from itembank.notation import parse
from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.proof.exact.exact_road import by_first_road
from itembank.proof.measured.measure import as_measured, measuring
from itembank.proof.sympy.sympy_road import by_second_road

DICE = tuple(map(t.Int, range(1, 7)))


# In how many of 36 ways two dice make each total: Cardano, Liber de ludo aleae (printed 1663), from
# memory.
@pytest.mark.parametrize(
    ("total", "ways"),
    [(2, 1), (3, 2), (4, 3), (5, 4), (6, 5), (7, 6), (8, 5), (9, 4), (10, 3), (11, 2), (12, 1)],
)
def test_the_totals_of_two_dice(total: int, ways: int) -> None:
    figure = SampleSpace(DICE, DICE)
    ask = of_figure(figure, ("What is the probability that the total is ", t.Int(total), "?"))
    for found in (as_find(ask), as_measured(ask)):
        assert exact(found.target) == Fraction(ways, 36)


# The Chevalier de Méré's problem, as Pascal wrote of it to Fermat in 1654: at least one six in four
# throws of a die has the probability 671/1296; from memory.
def test_at_least_one_six_in_four_throws() -> None:
    target = parse("1 - (5/6)^4")
    item = Item(
        "a.b/core/0", "a.b", Tier.CORE, ("Work out ", target, "."), Find(target),
        parse("671/1296"), "lowest-terms", (), (), (), 1, (),
    )  # fmt: skip
    assert not by_first_road(item).fault
    assert not by_second_road(item).fault


# Three dice make 9 in 25 ways and 10 in 27 (Galileo, Sopra le scoperte dei dadi, about 1620; from
# memory), of 216.
def test_nine_and_ten_with_three_dice() -> None:
    ways = {"nine": 25, "ten": 27, "rest": 164}
    figure = ProbabilityTable(tuple(ways), tuple(t.frac(n, 216) for n in ways.values()))
    either = Reading("probability", ("nine", "ten"))
    for found in (read(figure, either), measuring(figure).measure(drawn(figure), either)):
        assert exact(found) == Fraction(52, 216)
