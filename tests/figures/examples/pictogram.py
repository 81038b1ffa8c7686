"""Pictograms at random: whole, half and quarter squares."""

from __future__ import annotations

import random

from itembank.figures.kinds.chart.pictogram import Pictogram


def example(chance: random.Random) -> Pictogram:
    """Return a pictogram, sound or not."""
    names = ("Mon", "Tue", "Wed", "Thu")[: chance.randrange(2, 5)]
    each = chance.choice((2, 4, 8, 10, 20, 100))
    part = chance.choice((1, 2, 4))
    values = tuple(each * chance.randrange(0, 5 * part) // part for _ in names)
    return Pictogram(names, values, each, chance.choice(("trays", "swimmers")))
