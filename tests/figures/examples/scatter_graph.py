"""Scatter graphs at random: rising, falling and all over, with a line of best fit or without."""

from __future__ import annotations

import random
from fractions import Fraction

from itembank.figures.kinds.chart.scatter_graph import ScatterGraph
from itembank.figures.written_as import written_as
from itembank.notation import tree as t


def example(chance: random.Random) -> ScatterGraph:
    """Return a scatter graph, sound or not."""
    x_step, y_step = chance.choice(((1, 5), (2, 1), (10, 100)))
    wide, high = chance.randrange(6, 13), chance.randrange(5, 11)

    def number(squares: Fraction, step: int) -> t.Node:
        return written_as(squares * step, t.Dec("0", "5"))

    def place(x: Fraction, y: Fraction) -> tuple[t.Node, t.Node]:
        return number(x, x_step), number(y, y_step)

    count = chance.randrange(4, 9)
    xs = sorted(chance.sample(range(2 * wide + 1), count))
    ys = [chance.randrange(0, 2 * high + 1) for _ in xs]
    if chance.random() < 0.5:
        ys = sorted(chance.sample(range(2 * high + 1), count), reverse=chance.random() < 0.5)
    data = tuple(place(Fraction(x, 2), Fraction(y, 2)) for x, y in zip(xs, ys, strict=True))
    best: tuple[tuple[t.Node, t.Node], ...] = ()
    if chance.random() < 0.6:
        best = (
            place(Fraction(0), Fraction(chance.randrange(0, high + 1))),
            place(Fraction(wide), Fraction(chance.randrange(0, high + 1))),
        )
    return ScatterGraph(
        *("Age (weeks)", "Height (cm)", wide * x_step, high * y_step, x_step, y_step, data, best)
    )
