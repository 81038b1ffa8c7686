"""Measures a net: a box is rolled over what is drawn, and each face notes which side lies on it.

The box lies on the first rectangle. Rolled over an edge, it lies on the next one: that has to be
as wide and as high as the side that comes down. So nothing is folded, and no place in space is
worked out.
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from typing import Any, NamedTuple

import sympy

from itembank.figures.drawing import Area, Drawing, Text
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring, area_of, number_tree


class _Box(NamedTuple):
    """Which side of a box is down, and so on, and how far it reaches along, up and high."""

    down: int
    top: int
    left: int
    right: int
    front: int
    back: int
    along: Any
    up: Any
    high: Any

    def rolled(self, way: str) -> _Box:
        """Return the box after a quarter turn over one of its lower edges."""
        down, top, left, right, front, back, along, up, high = self
        if way == "right":
            return _Box(right, left, down, top, front, back, high, up, along)
        if way == "left":
            return _Box(left, right, top, down, front, back, high, up, along)
        if way == "up":
            return _Box(back, front, left, right, down, top, along, high, up)
        return _Box(front, back, left, right, top, down, along, high, up)


class _Face(NamedTuple):
    left: Any
    bottom: Any
    right: Any
    top: Any


def _edges(area: Area) -> _Face:
    xs = sorted({sympy.Rational(point.x) for point in area.points})
    ys = sorted({sympy.Rational(point.y) for point in area.points})
    if len(xs) != 2 or len(ys) != 2 or area_of(area.points) != (xs[1] - xs[0]) * (ys[1] - ys[0]):
        raise NotExact("a face is no rectangle")
    return _Face(xs[0], ys[0], xs[1], ys[1])


def _way(face: _Face, other: _Face) -> str:
    if (face.bottom, face.top) == (other.bottom, other.top):
        return "right" if face.right == other.left else "left" if face.left == other.right else ""
    if (face.left, face.right) == (other.left, other.right):
        return "up" if face.top == other.bottom else "down" if face.bottom == other.top else ""
    return ""


def _rolled(faces: list[_Face]) -> tuple[dict[int, int], tuple[Any, Any, Any]] | None:
    """Return which side of a box lies on each face, and its edges; None where it is no net."""
    first = faces[0]
    wide, tall = first.right - first.left, first.top - first.bottom
    # How high it is shows beside the first face: what is next to it comes down there.
    for near in faces:
        way = _way(first, near)
        if way:
            across = near.right - near.left, near.top - near.bottom
            high = across[0] if way in ("left", "right") else across[1]
            break
    else:
        return None
    boxes = {0: _Box(0, 1, 2, 3, 4, 5, wide, tall, high)}
    waiting = [0]
    while waiting:
        place = waiting.pop()
        for number, face in enumerate(faces):
            way = _way(faces[place], face)
            if not way:
                continue
            box = boxes[place].rolled(way)
            if (box.along, box.up) != (face.right - face.left, face.top - face.bottom):
                return None
            if number in boxes and boxes[number].down != box.down:
                return None  # round a block of faces it would come to lie otherwise
            if number not in boxes:
                boxes[number] = box
                waiting.append(number)
    downs = {place: box.down for place, box in boxes.items()}
    if len(faces) != 6 or sorted(downs.values()) != list(range(6)):
        return None
    return downs, (wide, tall, high)


_SCALE = re.compile(r"The squares have sides of (?P<size>[1-9]\d*) (?P<unit>\w+)\.")
_PAIRS = {0: 1, 1: 0, 2: 3, 3: 2, 4: 5, 5: 4}


def _pieces(drawing: Drawing) -> list[list[Area]]:
    found: dict[str, list[Area]] = {}
    for mark in drawing.marks:
        if isinstance(mark, Area) and mark.role.startswith("face "):
            found.setdefault(mark.role, []).append(mark)
    return list(found.values())


def _opposite(drawing: Drawing, name: str) -> t.Node:
    (areas,) = _pieces(drawing)
    faces = [_edges(area) for area in areas]
    rolled = _rolled(faces)
    letters = {}
    for label in drawing.of("letter"):
        if isinstance(label, Text):
            x, y = (sympy.Rational(value) for value in label.at)
            for place, face in enumerate(faces):
                if face.left < x < face.right and face.bottom < y < face.top:
                    letters[place] = str(label.content)
    if rolled is None or sorted(letters) != list(range(6)):
        raise NotExact("it is no net of a box with a letter on each face")
    downs, _ = rolled
    (own,) = [place for place, letter in letters.items() if letter == name.upper()]
    (other,) = [place for place, side in downs.items() if side == _PAIRS[downs[own]]]
    return t.Label(letters[other])


def _cube(drawing: Drawing) -> t.Node:
    """Return the name of the only piece that a cube can be rolled over, side by side."""
    found = []
    for areas in _pieces(drawing):
        faces = [_edges(area) for area in areas]
        rolled = _rolled(faces)
        if rolled is not None and len({*rolled[1]}) == 1:
            middle = (min(f.left for f in faces) + max(f.right for f in faces)) / 2
            names = [mark for mark in drawing.of("name") if isinstance(mark, Text)]
            nearest = min(names, key=lambda mark: abs(sympy.Rational(mark.at.x) - middle))
            found.append(str(nearest.content))
    if len(found) != 1:
        raise NotExact("not one of the shapes is a net of a cube")
    return t.Label(found[0])


def _of_box(drawing: Drawing, what: str) -> t.Node:
    (areas,) = _pieces(drawing)
    faces = [_edges(area) for area in areas]
    rolled = _rolled(faces)
    scales = [str(mark.content) for mark in drawing.of("scale") if isinstance(mark, Text)]
    lines = [mark.points for mark in drawing.marks if mark.role == "square line"]  # type: ignore[union-attr]
    if rolled is None or len(scales) != 1:
        raise NotExact("it is no net of a box with a scale")
    # Every line between squares stands a whole number of squares from the edge of its face.
    edges = sorted(rolled[1])
    steps = {
        sympy.Rational(abs(point - edge))
        for start, end in lines
        for k in (0, 1)
        if start[k] == end[k]
        for point in (start[k],)
        for edge in {sympy.Rational(value) for face in faces for value in (face[k], face[k + 2])}
        if point != edge
    }
    gaps = [step for step in (*steps, *edges) if step]
    side = _largest_step(gaps)
    told = _SCALE.fullmatch(scales[0])
    if told is None or not to_sympy(t.Quantity(t.Int(1), told["unit"])):
        raise NotExact("it is not said how long the sides of its squares are")
    unit, each_side = told["unit"], int(told["size"])
    squares = [edge / side for edge in edges]
    if not all(square.is_Integer for square in squares):
        raise NotExact("its edges are no whole numbers of squares")
    a, b, c = (square * each_side for square in squares)
    if what == "volume":
        return t.Quantity(number_tree(a * b * c), f"{unit}^3")
    if what == "surface area":
        total = sum(area_of(area.points) for area in areas) * (each_side / side) ** 2
        return t.Quantity(number_tree(total), f"{unit}^2")
    return t.Quantity(number_tree(c), unit)


def _largest_step(lengths: Sequence[sympy.Rational]) -> sympy.Rational:
    """Return the longest length of which each of some is a whole number.

    sympy's own `gcd_list` stops at 1, so that 2, 3 and 1/2 have 1 for it.

    >>> _largest_step([sympy.Integer(2), sympy.Integer(3), sympy.Rational(1, 2)])
    1/2
    """
    under = math.lcm(*(int(length.q) for length in lengths))
    return sympy.Rational(math.gcd(*(int(length * under) for length in lengths)), under)


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    if reading == Reading("net of a cube"):
        return _cube(drawing)
    if reading.name in ("volume", "surface area", "longest edge"):
        return _of_box(drawing, reading.name)
    if reading.name == "opposite" and len(_pieces(drawing)) == 1:
        return _opposite(drawing, *reading.of)
    raise NotExact("the drawing does not show it")


MEASURING = Measuring(_measure)
