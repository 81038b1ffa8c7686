"""Cylinders at random."""

from __future__ import annotations

import random

from itembank.figures.kinds.solid.cylinder import Cylinder
from itembank.notation import tree as t
from itembank.notation.parse import parse


def example(chance: random.Random) -> Cylinder:
    """Return a cylinder, sound or not."""
    unit = chance.choice(("cm", "m", "mm", ""))

    def long(most: int) -> t.Node:
        tenths = "" if chance.random() < 0.6 else f".{chance.randrange(1, 10)}"
        return parse(f"{chance.randrange(2, most)}{tenths} {unit}".strip())

    if chance.random() < 0.5:
        return Cylinder(long(30), radius=long(20))
    return Cylinder(long(30), diameter=long(30))
