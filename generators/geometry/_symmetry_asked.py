"""What is asked about symmetry, and where a shape stands."""

from __future__ import annotations

from generators._scatter import unlike
from generators.transformations._shapes import Spot

LINES_ASKED = ("How many lines of symmetry does the pattern have?",)


ORDER_ASKED = ("What is the order of rotational symmetry of the pattern?",)


class Core:
    """What is asked in the core tier."""

    LINES, ORDER, CUT_LINES, CUT_ORDER, SHAPE_LINES, SHAPE_ORDER = range(6)


def place_of(seed: int) -> Spot:
    """Return where a shape stands on its grid."""
    x, y = unlike(seed, 2, -5, 5)
    return x, y


class Hard:
    """What is asked in the challenge tier."""

    SQUARE, STRAIGHT, SLANTING = range(3)
