"""Bar models at random: one bar in parts, comparisons, shares; money, quantities, fractions."""

from __future__ import annotations

import random

from itembank.figures.kinds.number.bar_model import Bar, BarModel, Box
from itembank.notation import tree as t


def example(chance: random.Random) -> BarModel:
    """Return a bar model, sound or not."""
    count = chance.choice((1, 1, 2, 2, 3))
    names = chance.sample(("Ana", "Ben", "Chi", "Dev", "tulips", "bulbs"), count)
    worth = chance.choice((2, 3, 5, 12, 25))
    wrap = chance.choice((t.Int, lambda n: t.Money(t.Int(n)), lambda n: t.Quantity(t.Int(n), "kg")))
    bars, long = [], []
    for name in names:
        parts = chance.randrange(1, 9)
        shaded = chance.randrange(parts + 1) if chance.random() < 0.5 else 0
        boxes = tuple(Box(1, None, place < shaded) for place in range(parts))
        if chance.random() < 0.2:
            boxes = (Box(2), *boxes)
        size = sum(box.units for box in boxes)
        total = wrap(size * worth) if chance.random() < 0.4 else None
        bars.append(Bar(boxes, name if count > 1 or chance.random() < 0.3 else "", total))
        long.append(size)
    whole = wrap(sum(long) * worth)
    given = any(bar.total is not None for bar in bars)
    return BarModel(tuple(bars), whole if not given or chance.random() < 0.3 else None)
