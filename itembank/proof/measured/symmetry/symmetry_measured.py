"""How often what is drawn falls on itself: places are turned and reflected, and looked for.

A symmetry takes the place that is furthest from the middle to one as far away, and is settled by
that one, so that all of them are tried. Places are compared to the hundredth of an em: nothing
that is drawn apart stands so near.
"""

from __future__ import annotations

import cmath
from collections.abc import Iterable, Sequence

from itembank.figures.drawing import Area
from itembank.notation.value import NotExact

Marked = tuple[complex, str]
"""A place of the drawing, and what is there: a corner, or the middle of an area by its filling."""

_NEAR = 0.01


def places_of(areas: Iterable[Area]) -> list[Marked]:
    """Return the corners of areas, each once, and their middles by how they are filled."""
    found: list[Marked] = []
    for area in areas:
        corners = [complex(float(point.x), float(point.y)) for point in area.points]
        for corner in corners:
            if not _there(found, corner, "corner"):
                found.append((corner, "corner"))
        found.append((sum(corners) / len(corners), area.fill))
    return found


def _there(places: Sequence[Marked], at: complex, kind: str) -> bool:
    return any(kind == other and abs(at - place) < _NEAR for place, other in places)


def lines_and_order(places: Sequence[Marked]) -> tuple[int, int]:
    """Return how many lines of symmetry places have, and the order of rotational symmetry.

    >>> square = [(0j, "a"), (1 + 0j, "a"), (1 + 1j, "a"), (1j, "a")]
    >>> lines_and_order(square), lines_and_order([*square[:3], (1j, "b")])
    ((4, 4), (1, 1))
    """
    middle = sum(place for place, _ in places) / len(places)
    about = [(place - middle, kind) for place, kind in places]
    furthest, kind = max(about, key=lambda row: abs(row[0]))
    if abs(furthest) < _NEAR:
        raise NotExact("what is drawn is a single place")
    turns = lines = 0
    for place, other in about:
        if other != kind or abs(abs(place) - abs(furthest)) > _NEAR:
            continue
        turn = cmath.rect(1, cmath.phase(place) - cmath.phase(furthest))
        turns += all(_there(about, at * turn, what) for at, what in about)
        flip = cmath.rect(1, cmath.phase(place) + cmath.phase(furthest))
        lines += all(_there(about, at.conjugate() * flip, what) for at, what in about)
    return lines, turns
