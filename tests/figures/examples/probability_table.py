"""Tables of probabilities at random: decimals and fractions, with a letter and without."""

from __future__ import annotations

import random
from fractions import Fraction

from itembank.figures.kinds.chance.probability_table import ProbabilityTable
from itembank.figures.written_as import written_as
from itembank.notation import tree as t


def example(chance: random.Random) -> ProbabilityTable:
    """Return a table of probabilities, sound or not."""
    names = chance.sample(("red", "blue", "green", "white", "black"), chance.randrange(2, 5))
    whole = chance.choice((10, 20, 100, 12))
    parts = [chance.randrange(1, whole // 2) for _ in names[1:]]
    values = [Fraction(part, whole) for part in (*parts, whole - sum(parts))]
    like: tuple[t.Node, ...] = () if whole == 12 else (t.Dec("0", "5"),)
    chances = [written_as(value, *like) for value in values]
    kind = chance.randrange(3)
    if kind:
        chances[-1] = t.Sym("x")
    if kind == 2 and len(names) > 2:
        chances[0] = t.juxt(t.Int(2), t.Sym("x"))
    return ProbabilityTable(tuple(names), tuple(chances), chance.choice(("Colour", "Outcome")))
