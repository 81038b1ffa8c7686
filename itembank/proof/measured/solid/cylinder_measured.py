"""Measures a cylinder: its rims as flattened circles, its walls, and the labels beside them."""

from __future__ import annotations

from typing import Any

import sympy

from itembank.figures.drawing import Area, Box, Drawing, Stroke, Text, text_box
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring, amount_tree

Spot = tuple[Any, Any]

_FLAT = sympy.Rational(10, 3)
"""How many times as wide as deep a level circle is drawn."""


def _spot(point: tuple[Any, Any]) -> Spot:
    return sympy.Rational(point[0]), sympy.Rational(point[1])


def _rim(points: list[Spot]) -> tuple[Spot, Any]:
    """Return the middle and the radius of a flattened circle, from all of its points."""
    xs, ys = [x for x, _ in points], [y for _, y in points]
    middle = ((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)
    radius = (max(xs) - min(xs)) / 2
    for x, y in points:
        if (x - middle[0]) ** 2 + ((y - middle[1]) * _FLAT) ** 2 != radius**2:
            raise NotExact("an end of the cylinder is no circle seen from the side")
    return middle, radius


def _strokes(drawing: Drawing, role: str) -> list[tuple[Spot, ...]]:
    marks = (mark for mark in drawing.of(role) if isinstance(mark, Stroke))
    return [tuple(map(_spot, mark.points)) for mark in marks]


def _body(drawing: Drawing) -> tuple[Spot, Any, Any]:
    """Return the middle of the upper end, the radius, and the height of the walls."""
    tops = [mark for mark in drawing.of("top") if isinstance(mark, Area)]
    front, back = _strokes(drawing, "edge"), _strokes(drawing, "hidden edge")
    walls = _strokes(drawing, "wall")
    if (len(tops), len(front), len(back), len(walls)) != (1, 1, 1, 2):
        raise NotExact("its edges are not those of a cylinder")
    top, radius = _rim([*map(_spot, tops[0].points)])
    foot, below = _rim([*front[0], *back[0]])
    if below != radius or foot[0] != top[0]:
        raise NotExact("the ends of the cylinder are not equal")
    if any(y > foot[1] for _, y in front[0]) or any(y < foot[1] for _, y in back[0]):
        raise NotExact("the far half of its base is to be dashed")
    sides = {
        frozenset({(foot[0] + way * radius, foot[1]), (top[0] + way * radius, top[1])})
        for way in (1, -1)
    }
    if {frozenset(wall) for wall in walls} != sides:
        raise NotExact("its walls do not join its ends")
    return top, radius, top[1] - foot[1]


def _square(a: Spot, b: Spot) -> Any:
    return (b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2


def _gap(box: Box, spot: Spot) -> Any:
    """Return the square of the distance of a place from a box."""
    left, bottom, right, top = map(sympy.Rational, box)
    (x, y) = spot
    return max(left - x, 0, x - right) ** 2 + max(bottom - y, 0, y - top) ** 2


def _beside(mark: Text, spots: dict[str, list[Spot]]) -> str:
    """Return which line a label stands at: the one whose middle is nearest."""
    box = text_box(mark)
    return min(spots, key=lambda name: min(_gap(box, spot) for spot in spots[name]))


def _sized(drawing: Drawing) -> tuple[Any, Any, t.Node]:
    """Return the radius and the height in base units, and a label to write lengths like."""
    (x, y), radius, height = _body(drawing)
    ends = {
        "radius": ((x, y), (x + radius, y)),
        "diameter": ((x - radius, y), (x + radius, y)),
    }
    drawn = {name: _strokes(drawing, name) for name in ends if drawing.of(name)}
    if len(drawn) != 1:
        raise NotExact("a radius or a diameter is to be drawn, and not both")
    ((name, lines),) = drawn.items()
    if lines != [ends[name]]:
        raise NotExact(f"the {name} is drawn from another place to another")
    middles = {
        name: [(sum(spot[0] for spot in ends[name]) / 2, y)],
        "height": [(x + way * radius, y - height / 2) for way in (1, -1)],
    }
    across = radius if name == "radius" else 2 * radius
    drawn_as = {name: across, "height": height}
    found: dict[str, t.Node] = {}
    for line in (name, "height"):
        for mark in drawing.of(f"{line} label"):
            if isinstance(mark, Text) and not isinstance(mark.content, str):
                if _beside(mark, middles) != line or line in found:
                    raise NotExact("a label stands at another line")
                found[line] = mark.content
    scales = {to_sympy(label) / drawn_as[line] for line, label in found.items()}
    if len(found) != 2 or len(scales) != 1:
        raise NotExact("its labels do not agree with how it is drawn")
    (scale,) = scales
    return radius * scale, height * scale, found["height"]


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    radius, height, like = _sized(drawing)
    if reading == Reading("radius"):
        return amount_tree(radius, like)
    if reading == Reading("diameter"):
        return amount_tree(2 * radius, like)
    base, around = radius**2, 2 * radius * height
    if reading == Reading("volume"):
        return _times_pi(base * height, like, 3)
    if reading == Reading("area of the base"):
        return _times_pi(base, like, 2)
    if reading == Reading("curved surface area"):
        return _times_pi(around, like, 2)
    if reading == Reading("surface area"):
        return _times_pi(2 * base + around, like, 2)
    raise NotExact("the drawing does not show it")


def _times_pi(value: Any, like: t.Node, power: int) -> t.Node:
    if isinstance(like, t.Quantity):
        like = t.Quantity(t.Int(1), f"{like.unit}^{power}")
    found = amount_tree(value, like)
    if isinstance(found, t.Quantity):
        return t.Quantity(t.Bracket(t.times(found.amount, t.Sym("π"))), found.unit)
    return t.times(found, t.Sym("π"))


MEASURING = Measuring(_measure)
