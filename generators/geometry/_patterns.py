"""Patterns of squares with the symmetry that is wanted, and shapes on a grid with theirs."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache

from generators._scatter import unlike
from itembank.figures.kinds.symmetry.symmetry_found import Symmetry, of_cells, of_cells_alone

Cell = tuple[int, int]
Cells = frozenset[Cell]
Move = Callable[[Cell, int, int], Cell]
"""Takes a square, and the last row and column, to where it goes."""


def across(at: Cell, down: int, right: int) -> Cell:
    """Reflect in the upright line through the middle."""
    return at[0], right - at[1]


def over(at: Cell, down: int, right: int) -> Cell:
    """Reflect in the level line through the middle."""
    return down - at[0], at[1]


def half(at: Cell, down: int, right: int) -> Cell:
    """Turn by half a turn about the middle."""
    return down - at[0], right - at[1]


def quarter(at: Cell, down: int, right: int) -> Cell:
    """Turn by a quarter of a turn about the middle, in a square of squares."""
    return at[1], down - at[0]


def swap(at: Cell, down: int, right: int) -> Cell:
    """Reflect in the diagonal from the top left, in a square of squares."""
    return at[1], at[0]


def swap_back(at: Cell, down: int, right: int) -> Cell:
    """Reflect in the other diagonal, in a square of squares."""
    return right - at[1], down - at[0]


GRIDS = ((3, 3), (4, 4), (5, 5), (3, 5), (4, 6))
SQUARE = 3
"""So many of the grids have as many rows as columns."""


@cache
def _orbits(grid: tuple[int, int], moves: tuple[Move, ...]) -> tuple[tuple[Cell, ...], ...]:
    """Return the squares in groups that moves take to one another."""
    down, right = grid[0] - 1, grid[1] - 1
    left = [(row, column) for row in range(grid[0]) for column in range(grid[1])]
    found = []
    while left:
        group = [left[0]]
        for at in group:
            group += [to for move in moves if (to := move(at, down, right)) not in group]
        group = [*dict.fromkeys(group)]
        found.append(tuple(group))
        left = [at for at in left if at not in group]
    return tuple(found)


def shading(grid: tuple[int, int], moves: tuple[Move, ...], seed: int) -> Cells:
    """Return a shading that the moves leave as it is: another one for each seed.

    >>> sorted(shading((3, 3), (across,), 5))[:2]
    [(0, 0), (0, 1)]
    """
    groups = _orbits(grid, moves)
    chosen = unlike(seed, len(groups), 0, 1)
    return frozenset(at for group, dark in zip(groups, chosen, strict=True) if dark for at in group)


def asked(grid: tuple[int, int], moves: tuple[Move, ...], seed: int, wanted: Symmetry) -> bool:
    """Tell whether a shading is met for the first time, and has just the symmetry wanted.

    It has it by itself too, and neither few nor most squares are shaded.
    """
    if seed >= 1 << len(_orbits(grid, moves)):
        return False
    cells = shading(grid, moves, seed)
    if not 4 <= len(cells) <= grid[0] * grid[1] * 3 // 5:
        return False
    return of_cells(*grid, cells) == wanted == of_cells_alone(cells)


def places(grid: tuple[int, int], cells: Cells) -> tuple[int, ...]:
    """Return squares by their numbers, row by row."""
    return tuple(sorted(row * grid[1] + column for row, column in cells))
