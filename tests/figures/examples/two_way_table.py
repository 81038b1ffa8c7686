"""Two-way tables at random: some cells empty, totals given or not, a letter now and then."""

from __future__ import annotations

import random

from itembank.figures.kinds.table.two_way_table import TwoWayTable
from itembank.notation import tree as t


def example(chance: random.Random) -> TwoWayTable:
    """Return a two-way table, sound or not."""
    rows = ("7M", "8K", "9S")[: chance.randrange(2, 4)]
    columns = chance.choice((("walk", "bus"), ("walk", "bus", "car")))
    grid = [[chance.randrange(0, 30) for _ in columns] for _ in rows]
    grid = [[*row, sum(row)] for row in grid]
    grid.append([sum(column) for column in zip(*grid, strict=True)])
    cells: list[list[t.Node | None]] = [[t.Int(n) for n in row] for row in grid]
    places = [(r, c) for r in range(len(cells)) for c in range(len(cells[0]))]
    for number, (r, c) in enumerate(chance.sample(places, chance.randrange(0, 5))):
        cells[r][c] = t.Sym("x") if number == 0 else None
    return TwoWayTable(rows, columns, tuple(tuple(row) for row in cells))
