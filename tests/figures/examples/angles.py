"""Angles at random: on a line, round a point, crossing lines, parallel lines."""

from __future__ import annotations

import random
from itertools import pairwise

from itembank.figures.kinds.plane.angles import Angles
from itembank.notation import tree as t
from itembank.notation.parse import parse


def deg(n: int) -> t.Node:
    """Return so many degrees."""
    return t.Quantity(t.Int(n), "°")


def example(chance: random.Random) -> Angles:
    """Return a figure of angles, sound or not."""
    kind = chance.choice(("line", "point", "crossing", "parallel"))
    turn = chance.choice((0, 0, 0, 10, 340, 25))
    if kind in ("line", "point"):
        whole, count = (
            (180, chance.choice((2, 3, 3))) if kind == "line" else (360, chance.choice((3, 4)))
        )
        cuts = sorted(chance.sample(range(4, whole // 5 - 3), count - 1))
        edges = [0, *(5 * cut for cut in cuts), whole]
        sizes = tuple(b - a for a, b in pairwise(edges))
        asked = chance.randrange(count)
        labels = [deg(size) for size in sizes]
        labels[asked] = parse(chance.choice(("x", "y°", "(x+20)°", "2x", "(3x - 15)°")))
        right = tuple(k + 1 for k, size in enumerate(sizes) if size == 90 and k != asked)
        numbered = tuple((k + 1, label) for k, label in enumerate(labels) if k + 1 not in right)
        return Angles(kind, sizes, numbered, right, turn, chance.random() < 0.3)
    size = chance.randrange(35, 146)
    count = 4 if kind == "crossing" else 8
    first, other = chance.sample(range(1, count + 1), 2)
    drawn = size if first % 2 else 180 - size
    label = parse(chance.choice(("x", "y", "(2x)°", "(x+10)°")))
    return Angles(kind, (size,), ((first, deg(drawn)), (other, label)), (), turn)
