"""Plans of cubes at random, some with empty squares inside, some at an edge."""

from __future__ import annotations

import random

from itembank.figures.kinds.solid.cube_plan import CubePlan


def example(chance: random.Random) -> CubePlan:
    """Return a plan, sound or not."""
    rows, columns = chance.randrange(1, 5), chance.randrange(1, 5)
    least = chance.choice((0, 1))
    return CubePlan(
        tuple(tuple(chance.randrange(least, 5) for _ in range(columns)) for _ in range(rows))
    )
