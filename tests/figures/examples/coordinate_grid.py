"""Coordinate grids at random: one quadrant or four, steps, points, lines and segments."""

from __future__ import annotations

import random
from fractions import Fraction

from itembank.figures.kinds.grid.coordinate_grid import CoordinateGrid, GridLine, GridShape
from itembank.figures.written_as import written_as
from itembank.notation import tree as t


def example(chance: random.Random) -> CoordinateGrid:
    """Return a coordinate grid, sound or not."""
    if chance.random() < 0.15:
        return journeys(chance)
    x_step, y_step = chance.choice(((1, 1), (1, 1), (2, 5), (10, 100)))
    left, bottom = (chance.choice((0, 0, -3, -6)) for _ in range(2))
    right, top = left + chance.randrange(5, 13), bottom + chance.randrange(5, 13)
    if chance.random() < 0.1:
        left, right = left + 20, right + 20

    def place() -> tuple[t.Node, t.Node]:
        part = chance.choice((1, 1, 1, 2))
        return (
            _number(Fraction(chance.randrange(left * part, right * part + 1) * x_step, part)),
            _number(Fraction(chance.randrange(bottom * part, top * part + 1) * y_step, part)),
        )

    points = tuple((name, *place()) for name in "ABCD"[: chance.randrange(0, 5)])
    lines = tuple(
        GridLine(place(), place(), name, chance.random() < 0.4)
        for name in chance.choice((("",), (), ("L", "M"), ("P",)))
    )
    shapes = tuple(
        GridShape(
            tuple(place() for _ in range(chance.randrange(3, 5))),
            name,
            chance.random() < 0.7,
            chance.random() < 0.3,
        )
        for name in chance.choice(((), (), ("",), ("S",), ("S", "T")))
    )
    titles = chance.choice((("", ""), ("", ""), ("Time (minutes)", "Distance (km)")))
    return CoordinateGrid(
        left * x_step,
        right * x_step,
        bottom * y_step,
        top * y_step,
        x_step,
        y_step,
        points,
        lines,
        shapes,
        *titles,
    )


def journeys(chance: random.Random) -> CoordinateGrid:
    """Return a distance–time graph of one journey or two, sound or not."""
    x_step, y_step = chance.choice(((5, 2), (10, 5), (1, 20)))
    time = chance.choice(("minutes", "hours"))

    def path() -> tuple[tuple[t.Node, t.Node], ...]:
        x, y = chance.choice((0, 0, 2)), 0
        corners = [(x, y)]
        while x < 9 and len(corners) < 5:
            x += chance.randrange(1, 4)
            y = chance.choice((y, *range(9)))
            corners.append((x, y))
        return tuple((t.Int(x * x_step), t.Int(y * y_step)) for x, y in corners)

    names = chance.choice((("",), ("A", "B")))
    return CoordinateGrid(
        *(0, 12 * x_step, 0, 8 * y_step, x_step, y_step),
        shapes=tuple(GridShape(path(), name, closed=False) for name in names),
        x_title=f"Time ({time})",
        y_title="Distance from depot (km)",
    )


def _number(value: Fraction) -> t.Node:
    return written_as(value, t.Dec("0", "5"))
