"""Shaded shapes at random: rectangles, bars, hundred squares, circles, several wholes."""

from __future__ import annotations

import random

from itembank.figures.kinds.number.shaded_shape import ShadedShape


def example(chance: random.Random) -> ShadedShape:
    """Return a shaded shape, sound or not."""
    wholes = chance.choice((1, 1, 1, 2, 3))
    if chance.random() < 0.4:
        columns = chance.randrange(2, 13)
        parts = columns * wholes
        shaded = chance.sample(range(parts), chance.randrange(parts + 1))
        return ShadedShape("circle", 1, columns, tuple(sorted(shaded)), wholes)
    rows, columns = chance.choice(((1, 5), (2, 4), (3, 3), (10, 10), (1, 12), (4, 6)))
    parts = rows * columns * wholes
    shaded = chance.sample(range(parts), chance.randrange(parts + 1))
    return ShadedShape("rectangle", rows, columns, tuple(sorted(shaded)), wholes)
