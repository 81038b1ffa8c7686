"""Nets: those of a cube, other shapes of six squares, and boxes cut open in many ways."""

from __future__ import annotations

from functools import lru_cache

from itembank.figures.kinds.solid.net_folding import Rect, box_of

Cell = tuple[int, int]


def _turned(cells: frozenset[Cell], way: int) -> tuple[Cell, ...]:
    """Return squares after so many quarter turns, and turned over from 4 on, from the corner."""
    found = [(-x, y) if way > 3 else (x, y) for x, y in cells]
    for _ in range(way % 4):
        found = [(y, -x) for x, y in found]
    low = (min(x for x, _ in found), min(y for _, y in found))
    return tuple(sorted((x - low[0], y - low[1]) for x, y in found))


@lru_cache(maxsize=1)
def hexominoes() -> tuple[frozenset[Cell], ...]:
    """Return the shapes of six squares, each once whichever way it lies.

    >>> len(hexominoes())
    35
    """
    shapes = {frozenset({(0, 0)})}
    for _ in range(5):
        grown = set()
        for shape in shapes:
            for x, y in shape:
                for at in ((x + 1, y), (x - 1, y), (x, y + 1), (x, y - 1)):
                    if at not in shape:
                        more = shape | {at}
                        grown.add(frozenset(min(_turned(more, way) for way in range(8))))
        shapes = grown
    return tuple(sorted(shapes, key=sorted))


def rects(cells: tuple[Cell, ...]) -> tuple[Rect, ...]:
    """Return squares as faces, row by row from the top."""
    return tuple((x, y, 1, 1) for x, y in sorted(cells, key=lambda at: (-at[1], at[0])))


@lru_cache(maxsize=1)
def cube_nets() -> tuple[tuple[tuple[Cell, ...], ...], ...]:
    """Return each net of a cube with all the ways it can lie.

    >>> len(cube_nets())
    11
    """
    return tuple(_ways(net) for net in hexominoes() if box_of(rects(tuple(net))) is not None)


@lru_cache(maxsize=1)
def no_nets() -> tuple[tuple[tuple[Cell, ...], ...], ...]:
    """Return each other shape of six squares with all the ways it can lie."""
    return tuple(_ways(net) for net in hexominoes() if box_of(rects(tuple(net))) is None)


def _ways(cells: frozenset[Cell]) -> tuple[tuple[Cell, ...], ...]:
    return tuple(dict.fromkeys(_turned(cells, way) for way in range(8)))


def longest_row(cells: tuple[Cell, ...]) -> int:
    """Return how many squares stand in one straight row, at most.

    >>> longest_row(((0, 0), (1, 0), (2, 0), (2, 1)))
    3
    """
    best = 0
    for dx, dy in ((1, 0), (0, 1)):
        for x, y in cells:
            count = 0
            while (x + count * dx, y + count * dy) in cells:
                count += 1
            best = max(best, count)
    return best


def has_block(cells: tuple[Cell, ...]) -> bool:
    """Tell whether four of the squares make a larger square."""
    return any({(x, y), (x + 1, y), (x, y + 1), (x + 1, y + 1)} <= {*cells} for x, y in cells)


def cut_open(a: int, b: int, c: int, low: int, high: int, turn: bool) -> tuple[Rect, ...]:
    """Return a net of a cuboid: a row of four faces, with an end below and one above.

    The row has faces a and b wide by turns, all c high. The ends hang on the face in place `low`
    and on that in place `high` of the row. With `turn` it stands upright.

    >>> box_of(cut_open(2, 3, 4, 0, 1, False))
    (2, 3, 4)
    """
    wide = (a, b, a, b)
    starts = (0, a, a + b, 2 * a + b)
    deep = {0: b, 1: a, 2: b, 3: a}
    below = max(deep[low], 0)
    row = [(starts[k], below, wide[k], c) for k in range(4)]
    ends = [
        (starts[low], 0 + below - deep[low], wide[low], deep[low]),
        (starts[high], below + c, wide[high], deep[high]),
    ]
    faces = [*row, *ends]
    return tuple((y, x, h, w) if turn else (x, y, w, h) for x, y, w, h in faces)
