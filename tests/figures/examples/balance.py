"""Balances at random: some blocks with a letter, some with numbers."""

from __future__ import annotations

import random

from itembank.figures.kinds.number.balance import Balance
from itembank.notation import tree as t


def example(chance: random.Random) -> Balance:
    """Return a balance, sound or not."""
    letter = t.Sym(chance.choice("xnp"))
    sides = []
    for _ in range(2):
        blocks = [letter] * chance.randrange(0, 5)
        blocks += [t.Int(chance.randrange(1, 60)) for _ in range(chance.randrange(0, 3))]
        sides.append(tuple(blocks))
    return Balance(*sides)
