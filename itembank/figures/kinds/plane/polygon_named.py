"""Whether a question calls a polygon what it is: a triangle no square, a rectangle no kite."""

from __future__ import annotations

from itembank.figures.kinds.plane.polygon_shape import Shape

BY_CORNERS = {"triangle": 3, "quadrilateral": 4, "pentagon": 5, "hexagon": 6, "octagon": 8}
_FOUR = frozenset(
    ("quadrilateral", "rectangle", "square", "parallelogram", "rhombus", "trapezium", "kite")
)
SHAPES = rf"shape|polygon|{'|'.join(dict.fromkeys((*BY_CORNERS, *sorted(_FOUR))))}"


def is_called(shape: Shape, name: str, letters: str = "") -> bool:
    """Tell whether a shape may be called by a name, and by its corners where they are given.

    >>> from fractions import Fraction
    >>> rows = ((0, 0), (7, 0), (7, 5), (0, 5))
    >>> shape = Shape("ABCD", tuple((Fraction(x), Fraction(y)) for x, y in rows))
    >>> [is_called(shape, name) for name in ("shape", "rectangle", "square", "triangle")]
    [True, True, False, False]
    >>> is_called(shape, "rectangle", "DCBA"), is_called(shape, "rectangle", "ACBD")
    (True, False)
    """
    if letters and not _in_order(shape.letters, letters.upper()):
        return False
    if name in ("shape", "polygon"):
        return True
    if name in BY_CORNERS:
        return len(shape.letters) == BY_CORNERS[name]
    return name in _FOUR and len(shape.letters) == 4 and _of_four(shape, name)


def _of_four(shape: Shape, name: str) -> bool:
    ways = [shape.way(side) for side in shape.sides]
    long = [shape.square(side) for side in shape.sides]
    level = [a * d == b * c for (a, b), (c, d) in ((ways[0], ways[2]), (ways[1], ways[3]))]
    right = all(map(shape.square_corner, shape.letters))
    neighbours = long[0] == long[1] and long[2] == long[3]
    return {
        "rectangle": right,
        "square": right and len({*long}) == 1,
        "parallelogram": all(level),
        "rhombus": len({*long}) == 1,
        "trapezium": any(level),
        "kite": neighbours or (long[1] == long[2] and long[3] == long[0]),
    }[name]


def _in_order(letters: str, given: str) -> bool:
    """Tell whether letters go round the corners, from any of them and either way."""
    return len(given) == len(letters) and (given in letters * 2 or given[::-1] in letters * 2)
