"""Measures a coordinate grid: the numbers at its edges give the scale, and the rest is geometry."""

from __future__ import annotations

from typing import Any

import sympy

from itembank.figures.drawing import Drawing, Text
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.parse import parse_written
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.grid.grid_journeys_measured import JOURNEY_READINGS, of_journeys
from itembank.proof.measured.grid.grid_lines_measured import LINE_READINGS, equation_of, of_lines
from itembank.proof.measured.grid.grid_moves_measured import (
    growth,
    mirror_between,
    moving,
    shift_between,
    turning_centre,
)
from itembank.proof.measured.grid.grid_places_measured import (
    Scale,
    line_called,
    named_tracks,
    points_of,
    scale_of,
)
from itembank.proof.measured.grid.grid_shapes_measured import (
    best_fitting,
    making,
    mirrors,
    only_mirror,
    order_of_turns,
    point_where,
)
from itembank.proof.measured.measure import Measuring, number_tree

_SHAPE_READINGS = frozenset(
    (
        *("lines of symmetry", "order of rotation", "line of symmetry"),
        *("best name", "corner that makes", "point where"),
    )
)

_MOVE_READINGS = frozenset(
    (
        *("image", "object", "image like", "mirror line", "image shape"),
        *("centre of rotation", "centre of enlargement", "scale factor"),
    )
)


def _of_moves(drawing: Drawing, scale: Scale, reading: Reading) -> t.Node:
    what, of = reading
    if what in ("image", "object"):
        point = points_of(drawing)[of[0]]
        for text in of[1:] if what == "image" else reversed(of[1:]):
            point = moving(text, back=what == "object")(point)
        return _pair(point)
    names = tuple(name.upper() for name in of)
    if what == "image shape":
        return _image_shape(drawing, scale, *of)
    shapes = _shapes(drawing, scale)
    if not {*names[-2:]} <= {*shapes}:
        raise NotExact("it does not show which shape is meant")
    first, second = (shapes[name] for name in names[-2:])
    match what:
        case "image like":
            return _pair(points_of(drawing)[names[0]] + shift_between(first, second))
        case "mirror line":
            return equation_of(mirror_between(first, second))
        case "centre of rotation":
            return _pair(turning_centre(first, second))
    factor, centre = growth(first, second)
    return number_tree(factor) if what == "scale factor" else _pair(centre)


def _image_shape(drawing: Drawing, scale: Scale, name: str, move: str) -> t.Node:
    """Return the letter of the shape that has each corner of another where the move takes it."""
    shapes = [
        (own, [scale.at(corner) for corner in mark.points[:-1]])
        for own, mark in named_tracks(drawing)
        if mark.role == "shape"
    ]
    given = [corners for own, corners in shapes if own == name.upper()]
    if len(given) != 1:
        raise NotExact("it does not show which shape is meant")
    goal = list(map(moving(move), given[0]))
    found = [own for own, corners in shapes if own != name.upper() and _same_shape(corners, goal)]
    if len(found) != 1 or not found[0]:
        raise NotExact("no single shape is the image")
    return t.Label(found[0])


def _same_shape(corners: list[Any], goal: list[Any]) -> bool:
    """Tell whether two rows of corners are one outline, from whichever corner it is followed."""
    if len(corners) != len(goal):
        return False
    rows = (corners[k:] + corners[:k] for k in range(len(corners)))
    return any(row in (goal, [goal[0], *goal[:0:-1]]) for row in rows)


def _shapes(drawing: Drawing, scale: Scale) -> dict[str, list[Any]]:
    """Return the corners of each shape by its letter."""
    return {
        name: [scale.at(corner) for corner in mark.points[:-1]]
        for name, mark in named_tracks(drawing)
        if mark.role == "shape"
    }


def _of_shape(drawing: Drawing, scale: Scale, reading: Reading) -> t.Node:
    """Return what a shape is by itself."""
    if reading.name == "corner that makes":
        points, (name, *letters) = points_of(drawing), reading.of
        at = {letter.upper(): points[letter.upper()] for letter in letters}
        if scale.x[1] != scale.y[1] or len(at) != len(letters):
            raise NotExact("it does not show the points")
        first = [letter.upper() for letter in letters[:3]]
        others = {letter: at[letter] for letter in at if letter not in first}
        return t.Label(making(name, [at[letter] for letter in first], others))
    if reading.name == "point where":
        if scale.x[1] != scale.y[1]:
            raise NotExact("a square of the grid is not as wide as it is high")
        return t.Label(point_where(points_of(drawing), reading.of[0], reading.of[1:]))
    corners = _shapes(drawing, scale).get(reading.of[0].upper())
    if corners is None or scale.x[1] != scale.y[1]:
        raise NotExact("it does not show the shape")
    match reading.name:
        case "lines of symmetry":
            return t.Int(len(mirrors(corners)))
        case "order of rotation":
            return t.Int(order_of_turns(corners))
        case "best name":
            return t.Label(best_fitting(corners, reading.of[1:]))
    return equation_of(only_mirror(corners))


def _converted(drawing: Drawing, scale: Scale, of: tuple[str, ...]) -> t.Node:
    """Return where an amount meets the line that is drawn, made longer, on the other axis."""
    titles = [
        str(mark.content).casefold()
        for role in ("x title", "y title")
        for mark in drawing.of(role)
        if isinstance(mark, Text)
    ]
    if titles not in ([of[1].casefold(), of[2].casefold()], [of[2].casefold(), of[1].casefold()]):
        raise NotExact("its axes show other things")
    amount = to_sympy(parse_written(of[0]))
    upright = titles[0] == of[1].casefold()
    level = (
        sympy.Line((amount, 0), (amount, 1)) if upright else sympy.Line((0, amount), (1, amount))
    )
    line = sympy.Line(*map(scale.at, line_called(drawing, "").points))
    (met,) = line.intersection(level)
    return number_tree(met.y if upright else met.x)


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    scale = scale_of(drawing)
    if reading.name in LINE_READINGS:
        return of_lines(drawing, scale, reading)
    if reading.name in _MOVE_READINGS:
        return _of_moves(drawing, scale, reading)
    if reading.name in JOURNEY_READINGS:
        return of_journeys(drawing, scale, reading)
    if reading.name in _SHAPE_READINGS:
        return _of_shape(drawing, scale, reading)
    if reading.name == "converted":
        return _converted(drawing, scale, reading.of)
    points = points_of(drawing)
    if reading.name == "letter":
        wanted = to_sympy(parse_written(reading.of[0]))
        for name, point in points.items():
            if [point.x, point.y] == wanted:
                return t.Label(name)
        raise NotExact("no point stands there")
    if not reading.of or any(name.upper() not in points for name in reading.of):
        raise NotExact("the drawing does not show it")
    first, *others = (points[name.upper()] for name in reading.of)
    match reading.name, others:
        case "coordinates", []:
            return _pair(first)
        case "x-coordinate", []:
            return number_tree(first.x)
        case "y-coordinate", []:
            return number_tree(first.y)
        case "midpoint", [second]:
            return _pair(first.midpoint(second))
        case "length", [second]:
            return number_tree(first.distance(second))
        case "gradient between", [second]:
            return number_tree(sympy.Line(first, second).slope)
        case "fourth corner", [second, third]:
            # Half a turn about the middle of the diagonal takes the corner between to it.
            return _pair(second.rotate(sympy.pi, first.midpoint(third)))
    raise NotExact("the drawing does not show it")


def _pair(point: Any) -> t.Node:
    return t.pair(number_tree(point.x), number_tree(point.y))


MEASURING = Measuring(_measure)
