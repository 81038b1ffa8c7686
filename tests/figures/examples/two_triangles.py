"""Pairs of triangles at random: told alike or not, turned over, with a label more or less."""

from __future__ import annotations

import random

from generators.geometry._congruent_drawn import RIGHT, TRIANGLES, Parts, pair, right_spots, spots
from itembank.figures.kinds.plane.two_triangles import TwoTriangles


def example(chance: random.Random) -> TwoTriangles:
    """Return a pair, sound or not."""
    if chance.random() < 0.2:
        sides = chance.choice(RIGHT)
        kept = chance.sample(range(3), 2)
        told = Parts({k: sides[k] for k in kept}, {2: 90})
        at = right_spots(sides)
        return pair(told, told, (at, at), chance.randrange(60)).figure
    sizes = chance.choice(TRIANGLES)
    both = []
    for _ in range(2):
        some = chance.sample(range(6), chance.choice((3, 3, 4)))
        both.append(
            Parts(
                {k: sizes.sides[k] for k in some if k < 3},
                {k - 3: sizes.angles[k - 3] for k in some if k > 2},
            )
        )
    if chance.random() < 0.5:
        both[1] = both[0]
    return pair(both[0], both[1], (spots(sizes), spots(sizes)), chance.randrange(60)).figure
