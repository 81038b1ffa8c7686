"""How often a shape or a pattern falls on itself: from rows, from corners, from parts of a turn.

Everything here goes by order and by whole numbers; nothing is drawn or measured.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import NamedTuple

Cell = tuple[int, int]
"""A square by its row from the top and its column from the left, from 0."""
Place = tuple[Fraction, Fraction]


class Symmetry(NamedTuple):
    """How many lines of symmetry there are, and the order of rotational symmetry."""

    lines: int
    order: int


def of_cells(rows: int, columns: int, cells: frozenset[Cell]) -> Symmetry:
    """Return the symmetry of a rectangle of squares of which some are shaded.

    >>> of_cells(3, 3, frozenset({(0, 0), (1, 1), (2, 2)}))
    Symmetry(lines=2, order=2)
    >>> of_cells(2, 3, frozenset({(0, 0)}))
    Symmetry(lines=0, order=1)
    """
    down, right = rows - 1, columns - 1
    moved = [
        {(row, right - column) for row, column in cells},
        {(down - row, column) for row, column in cells},
    ]
    turned = [{(down - row, right - column) for row, column in cells}]
    # Only a square may fall on itself over a diagonal, or after a quarter of a turn.
    if rows == columns:
        moved.append({(column, row) for row, column in cells})
        moved.append({(right - column, down - row) for row, column in cells})
        turned.append({(column, down - row) for row, column in cells})
        turned.append({(right - column, row) for row, column in cells})
    return Symmetry(moved.count({*cells}), 1 + turned.count({*cells}))


def of_cells_alone(cells: frozenset[Cell]) -> Symmetry:
    """Return the symmetry of shaded squares without the grid that they stand on.

    >>> of_cells_alone(frozenset({(0, 0)}))
    Symmetry(lines=4, order=4)
    """
    top, left = (min(cell[k] for cell in cells) for k in (0, 1))
    rows, columns = (max(cell[k] for cell in cells) + 1 for k in (0, 1))
    moved = frozenset((row - top, column - left) for row, column in cells)
    return of_cells(rows - top, columns - left, moved)


def of_turn(parts: Sequence[bool]) -> Symmetry:
    """Return the symmetry of a regular polygon cut from its middle to its corners.

    `parts` tells which triangles are shaded, one after another round it.

    >>> of_turn([True, False] * 3), of_turn([True, True, False])
    (Symmetry(lines=3, order=3), Symmetry(lines=1, order=1))
    """
    row = [*parts]
    turns = [row[k:] + row[:k] for k in range(len(row))]
    back = row[::-1]
    return Symmetry(turns.count(back), turns.count(row))


def of_outline(corners: Sequence[Place]) -> Symmetry:
    """Return the symmetry of a shape with straight sides, from its corners in order round it.

    Two shapes are the same if their sides, and the angles between these, follow one another in
    the same way; the angle is settled by the products of the two sides' ways.

    >>> of_outline([(Fraction(x), Fraction(y)) for x, y in ((0, 0), (2, 0), (2, 1), (0, 1))])
    Symmetry(lines=2, order=2)
    """
    there = _walk(corners)
    back = _walk([*corners][::-1])
    around = [there[k:] + there[:k] for k in range(len(there))]
    # A walk the other way round sees each turn with the opposite sign.
    mirrored = [(long, after, dot, -cross) for long, after, dot, cross in back]
    return Symmetry(around.count(mirrored), around.count(there))


def _walk(corners: Sequence[Place]) -> list[tuple[Fraction, Fraction, Fraction, Fraction]]:
    """Return at each corner the squares of the sides into and out of it, and their products."""
    found = []
    for k, (x, y) in enumerate(corners):
        (a, b), (c, d) = corners[k - 1], corners[(k + 1) % len(corners)]
        into, out = (x - a, y - b), (c - x, d - y)
        dot = into[0] * out[0] + into[1] * out[1]
        cross = into[0] * out[1] - into[1] * out[0]
        found.append((into[0] ** 2 + into[1] ** 2, out[0] ** 2 + out[1] ** 2, dot, cross))
    return found


def mirror_of_outline(corners: Sequence[Place]) -> tuple[Place, Place] | None:
    """Return two places on the one line of symmetry of a shape, or None where it has not one.

    Of the two, each is a corner that stays or the middle between two that change places.

    >>> rows = ((0, 0), (4, 0), (2, 3))
    >>> mirror_of_outline([(Fraction(x), Fraction(y)) for x, y in rows])
    ((Fraction(2, 1), Fraction(3, 1)), (Fraction(2, 1), Fraction(0, 1)))
    """
    count = len(corners)
    there = _walk(corners)
    mirrors = []
    for turn in range(count):
        image = [corners[(turn - k) % count] for k in range(count)]
        swapped = [(long, after, dot, -cross) for long, after, dot, cross in _walk(image)]
        if swapped == there:
            mirrors.append(image)
    if len(mirrors) != 1:
        return None
    middles = {
        ((a + c) / 2, (b + d) / 2) for (a, b), (c, d) in zip(corners, mirrors[0], strict=True)
    }
    first, *_, last = sorted(middles, key=lambda at: (at[1], at[0]), reverse=True)
    return first, last
