"""Measures a prism: its edges by their directions, each direction with the label beside it."""

from __future__ import annotations

from typing import Any

import sympy

from itembank.figures.drawing import Box, Drawing, Stroke, Text, text_box
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring, amount_tree

Spot = tuple[Any, Any]


def _spot(point: tuple[Any, Any]) -> Spot:
    return sympy.Rational(point[0]), sympy.Rational(point[1])


def _way(a: Spot, b: Spot) -> str:
    """Return which way an edge goes: along the end, up it, away from us, or down its slope."""
    x, y = b[0] - a[0], b[1] - a[1]
    if y == 0:
        return "width"
    if x == 0:
        return "height"
    return "length" if 3 * x == 4 * y else "slope"


def _edges(drawing: Drawing) -> dict[str, list[tuple[Spot, Spot]]]:
    found: dict[str, list[tuple[Spot, Spot]]] = {}
    for mark in (*drawing.of("edge"), *drawing.of("hidden edge")):
        if isinstance(mark, Stroke):
            a, b = map(_spot, mark.points)
            found.setdefault(_way(a, b), []).append((a, b))
    for way, edges in found.items():
        if len({_square(a, b) for a, b in edges}) != 1:
            raise NotExact(f"the edges of its {way} are not equal")
    counts = {way: len(edges) for way, edges in found.items()}
    if counts not in (
        {"width": 4, "height": 4, "length": 4},
        {"width": 2, "height": 2, "length": 3, "slope": 2},
    ):
        raise NotExact("its edges are not those of a cuboid or of a triangular prism")
    ends: dict[Spot, int] = {}
    for edges in found.values():
        for edge in edges:
            for end in edge:
                ends[end] = ends.get(end, 0) + 1
    if {*ends.values()} != {3}:
        raise NotExact("three edges do not meet at each of its corners")
    if len(drawing.of("hidden edge")) != 3:
        raise NotExact("three of its edges are to be dashed")
    return found


def _square(a: Spot, b: Spot) -> Any:
    return (b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2


def _gap(box: Box, a: Spot, b: Spot) -> Any:
    """Return the square of the distance of an edge from a box that it does not run through."""
    left, bottom, right, top = map(sympy.Rational, (box.left, box.bottom, box.right, box.top))
    ends = [max(left - x, 0, x - right) ** 2 + max(bottom - y, 0, y - top) ** 2 for x, y in (a, b)]
    if a == b:
        return ends[0]
    corners = [
        _square((x, y), _nearest((x, y), a, b)) for x in (left, right) for y in (bottom, top)
    ]
    return min(*ends, *corners)


def _middle(a: Spot, b: Spot) -> Spot:
    return (a[0] + b[0]) / 2, (a[1] + b[1]) / 2


def _nearest(place: Spot, a: Spot, b: Spot) -> Spot:
    way = (b[0] - a[0], b[1] - a[1])
    part = ((place[0] - a[0]) * way[0] + (place[1] - a[1]) * way[1]) / _square(a, b)
    part = max(0, min(1, part))
    return a[0] + part * way[0], a[1] + part * way[1]


def _labelled(drawing: Drawing, edges: dict[str, list[tuple[Spot, Spot]]]) -> dict[str, t.Node]:
    """Return the label of each direction: of the edge that is nearest to its box."""
    found: dict[str, t.Node] = {}
    for mark in drawing.of("edge label"):
        if isinstance(mark, Text) and not isinstance(mark.content, str):
            box = text_box(mark)

            # Beside a short edge a label may be as near to a corner; then middles tell.
            gaps = {
                way: min(
                    (_gap(box, *edge), _gap(box, *[_middle(*edge)] * 2)) for edge in edges[way]
                )
                for way in edges
            }
            way = min(gaps, key=lambda name: gaps[name])
            if way in found:
                raise NotExact("two labels stand at one edge")
            found[way] = mark.content
    return found


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    edges = _edges(drawing)
    labels = _labelled(drawing, edges)
    # What leads away from us is drawn half as long.
    sizes = {
        way: sympy.sqrt(_square(*found[0])) * (2 if way == "length" else 1)
        for way, found in edges.items()
    }
    scales = {to_sympy(label) / sizes[way] for way, label in labels.items()}
    if len(scales) != 1 or not {"width", "height", "length"} <= {*labels}:
        raise NotExact("its labels do not agree with how long its edges are drawn")
    (scale,) = scales
    w, h, long = (sizes[way] * scale for way in ("width", "height", "length"))
    like = labels["width"]
    flat = "slope" in edges
    if reading == Reading("volume"):
        return _amount(w * h * long / (2 if flat else 1), like, 3)
    if reading == Reading("surface area") and flat and "slope" in labels:
        return _amount(w * h + (w + h + sizes["slope"] * scale) * long, like, 2)
    if reading == Reading("surface area") and not flat:
        return _amount(2 * (w * h + h * long + long * w), like, 2)
    raise NotExact("the drawing does not show it")


def _amount(value: Any, like: t.Node, power: int) -> t.Node:
    if isinstance(like, t.Quantity):
        return amount_tree(value, t.Quantity(t.Int(1), f"{like.unit}^{power}"))
    return amount_tree(value, like)


MEASURING = Measuring(_measure)
