"""Patterns of squares at random: any squares shaded, or so that they are symmetrical."""

from __future__ import annotations

import random

from itembank.figures.kinds.symmetry.shaded_squares import ShadedSquares


def example(chance: random.Random) -> ShadedSquares:
    """Return a pattern of squares, sound or not."""
    rows, columns = chance.choice(((3, 3), (4, 4), (5, 5), (3, 5), (2, 6), (4, 6)))
    squares = range(rows * columns)
    dark = set(chance.sample(squares, chance.randrange(1, len(squares) // 2)))
    way = chance.randrange(4)
    for place in [*dark]:
        row, column = divmod(place, columns)
        if way in (1, 3):
            dark.add(row * columns + columns - 1 - column)
        if way in (2, 3):
            dark.add((rows - 1 - row) * columns + columns - 1 - column)
    if way == 1 and chance.random() < 0.6:  # take one away, to be found again
        gone = chance.choice(sorted(dark))
        dark.discard(gone)
        free = [place for place in squares if place not in dark and place != gone]
        places = [gone, *chance.sample(free, min(3, len(free)))]
        chance.shuffle(places)
        letters = tuple(zip("ABCD", places, strict=False))
        return ShadedSquares(rows, columns, tuple(sorted(dark)), letters)
    return ShadedSquares(rows, columns, tuple(sorted(dark)))
