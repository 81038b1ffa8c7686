"""Shapes on a grid with the symmetry that each has, and how it is told."""

from __future__ import annotations

from generators.transformations._shapes import Spot
from itembank.figures.kinds.symmetry.symmetry_found import Symmetry


class Shape:
    """A shape on a grid: what it is called, its corners, and how it is told what it has."""

    def __init__(
        self, name: str, lines: int, order: int, why: str, *corners: Spot, turn: str = ""
    ) -> None:
        self.name, self.why, self.turn, self.corners = name, why, turn, corners
        self.symmetry = Symmetry(lines, order)


HALF_TURN = "It looks the same after half a turn and after a full turn."
SHAPES = (
    Shape(
        "a parallelogram",
        *(0, 2, "Folded along a diagonal or across the middle, its halves do not match."),
        *((0, 0), (4, 0), (5, 2), (1, 2)),
        turn=HALF_TURN,
    ),
    Shape(
        "a parallelogram",
        *(0, 2, "Folded along a diagonal or across the middle, its halves do not match."),
        *((0, 0), (2, 1), (2, 4), (0, 3)),
        turn=HALF_TURN,
    ),
    Shape(
        "a rectangle",
        *(2, 2, "It folds across the middle in two ways. Along a diagonal it does not."),
        *((0, 0), (4, 0), (4, 2), (0, 2)),
        turn=HALF_TURN,
    ),
    Shape(
        "a rectangle",
        *(2, 2, "It folds across the middle in two ways. Along a diagonal it does not."),
        *((0, 0), (2, 2), (1, 3), (-1, 1)),
        turn=HALF_TURN,
    ),
    Shape(
        "a rhombus",
        *(2, 2, "It folds along both diagonals. Across the middle of its sides it does not."),
        *((0, 0), (2, 1), (4, 0), (2, -1)),
        turn=HALF_TURN,
    ),
    Shape(
        "a rhombus",
        *(2, 2, "It folds along both diagonals. Across the middle of its sides it does not."),
        *((0, 0), (3, 1), (4, 4), (1, 3)),
        turn=HALF_TURN,
    ),
    Shape(
        "a square",
        *(4, 4, "It folds along both diagonals, and across the middle in two ways."),
        *((0, 0), (3, 0), (3, 3), (0, 3)),
        turn="It looks the same after each quarter of a turn.",
    ),
    Shape(
        "a square",
        *(4, 4, "It folds along both diagonals, and across the middle in two ways."),
        *((0, 0), (3, 1), (2, 4), (-1, 3)),
        turn="It looks the same after each quarter of a turn.",
    ),
    Shape(
        "a kite",
        *(
            1,
            1,
            "It folds along one of its diagonals, and in no other way.",
        ),
        *((0, 0), (1, 2), (0, 3), (-1, 2)),
    ),
    Shape(
        "an isosceles trapezium",
        *(1, 1, "It folds across the middle of its parallel sides, and in no other way."),
        *((0, 0), (4, 0), (3, 2), (1, 2)),
    ),
    Shape(
        "a trapezium with two right angles",
        *(0, 1, "Folded across its parallel sides, its halves do not match."),
        *((0, 0), (4, 0), (2, 3), (0, 3)),
    ),
    Shape(
        "an S made of squares",
        *(0, 2, "Folded in any way, its halves do not match."),
        *((0, 0), (2, 0), (2, 1), (3, 1), (3, 2), (1, 2), (1, 1), (0, 1)),
        turn=HALF_TURN,
    ),
    Shape(
        "an L with arms of equal length",
        *(1, 1, "It folds along the line between its arms, and in no other way."),
        *((0, 0), (3, 0), (3, 1), (1, 1), (1, 3), (0, 3)),
    ),
    Shape(
        "a hexagon with two lines of symmetry",
        *(2, 2, "It folds across the middle in two ways, and in no other."),
        *((0, 0), (1, -1), (3, -1), (4, 0), (3, 1), (1, 1)),
        turn=HALF_TURN,
    ),
)
"""Shapes of every kind of symmetry, by corners from the first."""

UPRIGHT: tuple[tuple[Spot, ...], ...] = (
    ((-2, 0), (2, 0), (0, 3)),
    ((0, 0), (2, 3), (0, 4), (-2, 3)),
    ((-3, 0), (3, 0), (1, 2), (-1, 2)),
    ((0, 0), (3, -1), (0, 4), (-3, -1)),
    ((-1, 0), (1, 0), (1, 2), (0, 4), (-1, 2)),
    ((-1, 0), (1, 0), (3, 3), (0, 2), (-3, 3)),
)
"""Shapes whose one line of symmetry is x = 0."""

SLANTED: tuple[tuple[Spot, ...], ...] = (
    ((0, 0), (3, 0), (3, 1), (1, 1), (1, 3), (0, 3)),
    ((0, 0), (3, 1), (3, 3), (1, 3)),
    ((0, 0), (4, 1), (1, 4)),
    ((0, 0), (4, 1), (2, 2), (1, 4)),
    ((2, 0), (4, 0), (0, 4), (0, 2)),
    ((0, 0), (2, 0), (3, 3), (0, 2)),
)
"""Shapes whose one line of symmetry is y = x."""
