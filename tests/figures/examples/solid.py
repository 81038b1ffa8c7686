"""Solids at random, of every shape and base; some would have corners that run together."""

from __future__ import annotations

import random

from itembank.figures.kinds.solid.solid import Solid


def example(chance: random.Random) -> Solid:
    """Return a solid, sound or not."""
    shape = chance.choice(("prism", "prism", "pyramid", "tower", "double pyramid"))
    return Solid(shape, chance.randrange(3, 9), chance.randrange(30, 90, 5), chance.random() < 0.3)
