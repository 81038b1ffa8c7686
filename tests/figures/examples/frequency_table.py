"""Frequency tables at random: of numbers and of names."""

from __future__ import annotations

import random

from itembank.figures.kinds.table.frequency_table import FrequencyTable
from itembank.notation import tree as t


def example(chance: random.Random) -> FrequencyTable:
    """Return a frequency table, sound or not."""
    if chance.random() < 0.4:
        names = chance.sample(("Rose", "Lily", "Iris", "Tulip"), chance.randrange(2, 5))
        values: tuple[t.Node, ...] = tuple(map(t.Label, names))
        heading = "Plant"
    else:
        first, count = chance.randrange(0, 20), chance.randrange(3, 7)
        values = tuple(t.Int(first + n) for n in range(count))
        heading = "Goals"
    return FrequencyTable(heading, values, tuple(chance.randrange(0, 12) for _ in values))
