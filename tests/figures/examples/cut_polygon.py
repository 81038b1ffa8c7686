"""Regular polygons at random: whole, or cut into triangles of which some are shaded."""

from __future__ import annotations

import random

from itembank.figures.kinds.symmetry.cut_polygon import CutPolygon


def example(chance: random.Random) -> CutPolygon:
    """Return a polygon, sound or not."""
    sides = chance.randrange(3, 11)
    if chance.random() < 0.2:
        return CutPolygon(sides)
    steps = [k for k in range(2, sides + 1) if sides % k == 0]
    step = chance.choice(steps)
    first = chance.sample(range(step), chance.randrange(1, step))
    return CutPolygon(sides, tuple(sorted(k + n for k in first for n in range(0, sides, step))))
