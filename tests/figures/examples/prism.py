"""Cuboids and triangular prisms at random."""

from __future__ import annotations

import random

from itembank.figures.kinds.solid.prism import Prism
from itembank.notation import tree as t

TRIPLES = ((3, 4, 5), (6, 8, 10), (5, 12, 13), (8, 15, 17), (4, 3, 5))


def example(chance: random.Random) -> Prism:
    """Return a prism, sound or not."""
    unit = chance.choice(("cm", "m", "cm"))

    def long(n: int) -> t.Node:
        return t.Quantity(t.Int(n), unit)

    if chance.random() < 0.5:
        w, h, far = (chance.randrange(2, 13) for _ in range(3))
        return Prism("rectangle", long(w), long(h), long(far))
    w, h, slope = chance.choice(TRIPLES)
    kept = long(slope) if chance.random() < 0.6 else None
    return Prism("triangle", long(w), long(h), long(chance.randrange(3, 16)), kept)
