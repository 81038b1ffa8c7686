"""Circles and sectors at random."""

from __future__ import annotations

import random

from itembank.figures.kinds.plane.circle import Circle
from itembank.notation import tree as t


def length(chance: random.Random, even: bool = False) -> t.Node:
    """Return a length with a unit or none."""
    n = chance.randrange(1, 20) * (2 if even else 1)
    unit = chance.choice(("cm", "m", "mm", ""))
    return t.Quantity(t.Int(n), unit) if unit else t.Int(n)


def example(chance: random.Random) -> Circle:
    """Return a circle, sound or not."""
    if chance.random() < 0.4:
        sector = chance.choice((30, 45, 60, 72, 90, 120, 135, 200, 270, 300))
        return Circle(radius=length(chance), sector=sector)
    if chance.random() < 0.2:
        return Circle(t.Quantity(t.Int(6), "cm"), t.Quantity(t.Int(12), "cm"))
    if chance.random() < 0.5:
        return Circle(radius=length(chance))
    return Circle(diameter=length(chance, True))
