"""Sample spaces at random: sums, differences, products and pairs."""

from __future__ import annotations

import random

from itembank.figures.kinds.chance.sample_space import SampleSpace
from itembank.notation import tree as t


def example(chance: random.Random) -> SampleSpace:
    """Return a sample space, sound or not."""
    rule = chance.choice(("sum", "difference", "product", "pairs"))

    def outcomes() -> tuple[t.Node, ...]:
        count, start = chance.randrange(2, 7), chance.randrange(-1, 4)
        if rule == "pairs" and chance.random() < 0.5:
            return tuple(map(t.Sym, "ABCDE"[:count]))
        return tuple(t.num(start + n) for n in range(count))

    return SampleSpace(outcomes(), outcomes(), rule)
