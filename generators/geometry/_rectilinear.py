"""Shapes whose sides meet at right angles: an L, a T and a U, with some sides labelled."""

from __future__ import annotations

from generators._corners import at
from generators.geometry._areas import length
from itembank.figures.kinds.plane.polygon import Polygon


def ell(a: int, b: int, c: int, d: int, unit: str, labelled: str, flip: bool = False) -> Polygon:
    """Return an L: a wide, b high, its upright arm c wide, its lower arm d high.

    `labelled` are the sides that say how long they are, by numbers from 1 (the base), round the
    shape; with `flip` its mirror image.
    """
    spots = [(0, 0), (a, 0), (a, d), (c, d), (c, b), (0, b)]
    sizes = (a, d, a - c, b - d, c, b)
    right = "ABCEF"
    return _labelled(spots, sizes, right, unit, labelled, flip, a)


def tee(a: int, b: int, c: int, d: int, unit: str, labelled: str, flip: bool = False) -> Polygon:
    """Return a T upside down: its foot a wide and d high, its stem c wide, all of it b high.

    The stem stands in the middle, so that its two shoulders are equal; a − c is even.
    """
    edge = (a - c) // 2
    spots = [
        (0, 0),
        (a, 0),
        (a, d),
        (a - edge, d),
        (a - edge, b),
        (edge, b),
        (edge, d),
        (0, d),
    ]
    sizes = (a, d, edge, b - d, c, b - d, edge, d)
    return _labelled(spots, sizes, "ABCEFH", unit, labelled, flip, a)


def cut(a: int, b: int, c: int, d: int, unit: str, labelled: str, flip: bool = False) -> Polygon:
    """Return a rectangle a by b with a piece c wide and b − d deep cut out of its top."""
    edge = (a - c) // 2
    spots = [(0, 0), (a, 0), (a, b), (a - edge, b), (a - edge, d), (edge, d), (edge, b), (0, b)]
    sizes = (a, b, edge, b - d, c, b - d, edge, b)
    return _labelled(spots, sizes, "ABCDGH", unit, labelled, flip, a)


def _labelled(
    spots: list[tuple[int, int]],
    sizes: tuple[int, ...],
    right: str,
    unit: str,
    labelled: str,
    flip: bool,
    wide: int,
) -> Polygon:
    names = "ABCDEFGH"[: len(spots)]
    sides = tuple(
        (names[k] + names[(k + 1) % len(spots)], length(sizes[k], unit))
        for k in (int(number) - 1 for number in labelled)
    )
    placed = [(wide - x, y) for x, y in spots] if flip else spots
    # Of a shape that is the same on both sides dashes say so, and fewer lengths are needed.
    equal = (("CD", "GH"), ("BC", "HA")) if len(spots) == 8 else ()
    return Polygon(at(*placed), sides=sides, right=right, equal=equal)
