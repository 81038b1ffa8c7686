"""Transformations on the drawing of a grid, by sympy's geometry."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from itertools import combinations
from typing import Any

import sympy

from itembank.notation.parse import parse_written
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.grid.grid_shapes_measured import reflected

Moving = Callable[[Any], Any]
"""Takes a point of sympy to its image."""

_WAYS = {"right": (1, 0), "left": (-1, 0), "up": (0, 1), "down": (0, -1)}


def moving(text: str, *, back: bool = False) -> Moving:
    """Return what a transformation that is said does to a point, or what undoes it."""
    bare = text.casefold().translate({ord("{"): None, ord("}"): None, ord("−"): "-"})
    first = bare.removeprefix("a ").removeprefix("an ").split()[0]
    if first == "translation":
        shift = sympy.Point(0, 0)
        for count, way in re.findall(r"(\d+) squares? (\w+)", bare):
            shift += sympy.Point(*_WAYS[way]) * int(count)
        return lambda point: point - shift if back else point + shift
    if first == "reflection":
        mirror = _mirror(bare.rpartition(" in the ")[2])
        return lambda point: reflected(point, mirror)
    place = re.search(r"\(.+\)", bare)
    centre = sympy.Point(to_sympy(parse_written(place[0])) if place else (0, 0))
    if first == "rotation":
        (size,) = re.findall(r"(\d+)°", bare)
        angle = sympy.rad(int(size))
        if " clockwise" in bare:
            angle = -angle
        elif "anticlockwise" not in bare and size != "180":
            raise NotExact("it is not said which way it turns")
        return lambda point: point.rotate(-angle if back else angle, centre)
    if first == "enlargement":
        (size,) = re.findall(r"factor ([-\d/]+)", bare)
        factor = to_sympy(parse_written(size))
        scale = 1 / factor if back else factor
        return lambda point: point.scale(scale, scale, centre)
    raise NotExact("it is no transformation")


def _mirror(text: str) -> Any:
    if text.endswith("-axis"):
        return sympy.Line((0, 0), (1, 0) if text.startswith("x") else (0, 1))
    form = to_sympy(parse_written(text.removeprefix("line ")))
    gap = form.lhs - form.rhs
    x, y = (next((s for s in gap.free_symbols if s.name == n), sympy.Dummy()) for n in "xy")
    if gap.diff(y) == 0:
        (root,) = sympy.solve(gap, x)
        return sympy.Line((root, 0), (root, 1))
    (height,) = sympy.solve(gap, y)
    return sympy.Line(*((k, height.subs(x, k)) for k in (0, 1)))


Corners = list[Any]


def _orders(corners: Corners) -> Iterator[Corners]:
    for row in (corners, corners[::-1]):
        for start in range(len(row)):
            yield row[start:] + row[:start]


def _only(found: list[Any]) -> Any:
    kept = [move for n, move in enumerate(found) if move not in found[:n]]
    if len(kept) != 1:
        raise NotExact("it does not show which transformation takes the one to the other")
    return kept[0]


def shift_between(first: Corners, second: Corners) -> Any:
    """Return the translation between two shapes as a point: how far along and up."""
    found: list[Any] = []
    for order in _orders(second):
        shifts = {q - p for p, q in zip(first, order, strict=True)}
        found += shifts if len(shifts) == 1 else []
    return _only(found)


def mirror_between(first: Corners, second: Corners) -> Any:
    """Return the mirror line between two shapes: it halves at right angles what joins corners."""
    found = []
    for order in _orders(second):
        joins = [sympy.Segment(p, q) for p, q in zip(first, order, strict=True) if p != q]
        if not joins:
            continue
        mirror = joins[0].perpendicular_bisector()
        if all(reflected(p, mirror) == q for p, q in zip(first, order, strict=True)):
            found.append(mirror)
    kept = [move for n, move in enumerate(found) if not any(move.equals(e) for e in found[:n])]
    return _only(kept)


def turning_centre(first: Corners, second: Corners) -> Any:
    """Return the centre of the rotation between two shapes, where the bisectors of joins meet."""
    found = []
    for order in _orders(second):
        pairs = [*zip(first, order, strict=True)]
        for centre in _centres(pairs):
            for turns in (1, 2, 3):
                angle = turns * sympy.pi / 2
                if all(p.rotate(angle, centre) == q for p, q in pairs):
                    found.append(centre)
    return _only(found)


def _centres(pairs: list[tuple[Any, Any]]) -> list[Any]:
    still = [p for p, q in pairs if p == q]
    joins = [sympy.Segment(p, q) for p, q in pairs if p != q]
    if still or len(joins) < 2:
        return still
    bisectors = [join.perpendicular_bisector() for join in joins]
    if all(join.midpoint == joins[0].midpoint for join in joins):  # half a turn
        return [joins[0].midpoint]
    for first, second in combinations(bisectors, 2):
        met = first.intersection(second)
        if met and isinstance(met[0], sympy.Point):
            return [met[0]]
    return []


def growth(first: Corners, second: Corners) -> tuple[Any, Any]:
    """Return scale factor and centre of the enlargement between two shapes."""
    found = []
    for order in _orders(second):
        pairs = [*zip(first, order, strict=True)]
        lines = [sympy.Line(p, q) for p, q in pairs if p != q]
        met = sympy.intersection(*lines[:2]) if len(lines) > 1 else []
        still = [p for p, q in pairs if p == q]
        centres = still or [at for at in met if isinstance(at, sympy.Point)]
        if not centres and len(lines) > 2:
            # Two corners in line with the centre: the third is not.
            centres = [
                at for at in sympy.intersection(lines[0], lines[2]) if isinstance(at, sympy.Point)
            ]
        for centre in centres:
            far = [(centre.distance(p), centre.distance(q)) for p, q in pairs if p != centre]
            ratios = {q / p for p, q in far}
            for ratio in ratios:
                for factor in (ratio, -ratio):
                    if all(p.scale(factor, factor, centre) == q for p, q in pairs):
                        found.append((factor, centre))
    factor, centre = _only(found)
    return sympy.nsimplify(factor), centre
