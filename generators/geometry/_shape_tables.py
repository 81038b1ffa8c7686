"""Shapes to be named, level and tilted, and why each has its name."""

from __future__ import annotations

from generators.transformations._shapes import Spot

WHY = {
    "square": ("Both pairs of sides are parallel.", "All sides are equal, and all angles right."),
    "rectangle": ("All angles are right angles.", "Its sides are not all equal."),
    "rhombus": ("All sides are equal.", "Its angles are not right angles."),
    "parallelogram": (
        "Both pairs of sides are parallel.",
        "Its sides are not all equal, and its angles are not right angles.",
    ),
    "kite": (
        "Two sides next to each other are equal, and so are the other two.",
        "No sides are parallel.",
    ),
    "trapezium": ("One pair of sides is parallel.", "The other two sides are not parallel."),
    "isosceles trapezium": (
        "One pair of sides is parallel, and the other is not.",
        "The two sides that are not parallel are equal.",
    ),
    "right-angled": ("Its largest angle is a right angle.",),
    "obtuse-angled": ("Its largest angle is larger than a right angle.",),
}


EASY: tuple[tuple[str, tuple[Spot, ...]], ...] = (
    ("square", ((0, 0), (3, 0), (3, 3), (0, 3))),
    ("square", ((0, 0), (2, 0), (2, 2), (0, 2))),
    ("rectangle", ((0, 0), (4, 0), (4, 2), (0, 2))),
    ("rectangle", ((0, 0), (2, 0), (2, 5), (0, 5))),
    ("parallelogram", ((0, 0), (4, 0), (5, 2), (1, 2))),
    ("parallelogram", ((0, 0), (3, 0), (1, 3), (-2, 3))),
    ("rhombus", ((0, 0), (2, 1), (4, 0), (2, -1))),
    ("rhombus", ((0, 0), (1, 3), (0, 6), (-1, 3))),
    ("kite", ((0, 0), (1, 1), (0, 4), (-1, 1))),
    ("kite", ((0, 0), (2, 2), (0, 3), (-2, 2))),
    ("trapezium", ((0, 0), (4, 0), (2, 3), (0, 3))),
    ("trapezium", ((0, 0), (3, 0), (3, 4), (0, 2))),
    ("right-angled", ((0, 0), (3, 0), (0, 2))),
    ("right-angled", ((0, 0), (4, 0), (4, 4))),
    ("right-angled", ((0, 0), (2, 2), (-1, 5))),
    ("obtuse-angled", ((0, 0), (2, 0), (4, 2))),
    ("obtuse-angled", ((0, 0), (3, 0), (-1, 2))),
    ("obtuse-angled", ((0, 0), (5, 1), (2, -1))),
)
"""Shapes that stand straight, and triangles."""


TILTED: tuple[tuple[str, tuple[Spot, ...]], ...] = (
    ("square", ((0, 0), (3, 1), (2, 4), (-1, 3))),
    ("square", ((0, 0), (2, 2), (0, 4), (-2, 2))),
    ("square", ((0, 0), (3, 2), (1, 5), (-2, 3))),
    ("rectangle", ((0, 0), (3, 3), (2, 4), (-1, 1))),
    ("rectangle", ((0, 0), (4, 2), (3, 4), (-1, 2))),
    ("rectangle", ((0, 0), (1, 3), (-5, 5), (-6, 2))),
    ("rhombus", ((0, 0), (3, 1), (4, 4), (1, 3))),
    ("rhombus", ((0, 0), (4, 3), (4, 8), (0, 5))),
    ("rhombus", ((0, 0), (5, 0), (8, 4), (3, 4))),
    ("parallelogram", ((0, 0), (3, 1), (4, 3), (1, 2))),
    ("parallelogram", ((0, 0), (1, 3), (3, 4), (2, 1))),
    ("parallelogram", ((0, 0), (4, 1), (5, 4), (1, 3))),
    ("kite", ((0, 0), (3, 1), (3, 3), (1, 3))),
    ("kite", ((0, 0), (2, 0), (4, 4), (0, 2))),
    ("kite", ((0, 0), (4, 2), (4, 4), (2, 4))),
    ("trapezium", ((0, 0), (4, 2), (1, 3), (-1, 2))),
    ("trapezium", ((0, 0), (3, 3), (1, 5), (0, 4))),
    ("isosceles trapezium", ((0, 0), (5, 0), (4, 2), (1, 2))),
    ("isosceles trapezium", ((2, 0), (4, 0), (0, 4), (0, 2))),
    ("isosceles trapezium", ((0, 0), (4, 4), (4, 2), (2, 0))),
)
"""Shapes that stand aslant, or whose name says more."""
