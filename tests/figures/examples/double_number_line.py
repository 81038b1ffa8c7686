"""Double number lines at random: prices, lengths, bare numbers."""

from __future__ import annotations

import random

from itembank.figures.kinds.number.double_number_line import DoubleNumberLine, Pair
from itembank.notation import tree as t


def example(chance: random.Random) -> DoubleNumberLine:
    """Return a double number line, sound or not."""
    steps = chance.randrange(2, 9)
    wraps = (
        t.Int,
        lambda n: t.Money(t.Int(n)),
        lambda n: t.Quantity(t.Int(n), "kg"),
    )
    over, under = chance.choice(wraps), chance.choice(wraps)
    number, other = chance.randrange(1, 12), chance.randrange(1, 12)
    known, asked = chance.sample(range(1, steps + 1), 2)
    hidden = Pair(asked, over(number * asked), t.Sym("x"))
    if chance.random() < 0.5:
        hidden = Pair(asked, t.Sym("n"), under(other * asked))
    names = ("eggs", "cost") if chance.random() < 0.5 else ("", "")
    return DoubleNumberLine(
        steps, (Pair(known, over(number * known), under(other * known)), hidden), *names
    )
