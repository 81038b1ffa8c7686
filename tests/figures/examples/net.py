"""Nets at random: six squares that hang together, three such, and boxes cut open."""

from __future__ import annotations

import random

from itembank.figures.kinds.solid.net import Net


def _squares(chance: random.Random) -> tuple[tuple[int, int, int, int], ...]:
    found = [(4, 4)]
    while len(found) < 6:
        x, y = chance.choice(found)
        at = chance.choice(((x + 1, y), (x - 1, y), (x, y + 1), (x, y - 1)))
        if at not in found:
            found.append(at)
    return tuple((x, y, 1, 1) for x, y in found)


def example(chance: random.Random) -> Net:
    """Return a net, sound or not."""
    way = chance.randrange(3)
    if way == 0:
        return Net((_squares(chance),), letters="ABCDEF")
    if way == 1:
        return Net(tuple(_squares(chance) for _ in range(3)), "PQR")
    a, b, c = (chance.randrange(1, 5) for _ in range(3))
    low, high = chance.choice(((0, 0), (0, 2), (2, 0)))
    starts = (0, a, a + b, 2 * a + b)
    row = tuple((starts[k], b, (a, b)[k % 2], c) for k in range(4))
    return Net(((*row, (starts[low], 0, a, b), (starts[high], b + c, a, b)),), unit="cm")
