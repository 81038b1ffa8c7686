"""What is read from a coordinate grid about transformations, from its data."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from itembank.figures.figure import FigureError
from itembank.figures.kinds.grid.grid_equations import equation_node, fraction_node
from itembank.figures.kinds.grid.grid_moves import (
    enlargement_to,
    mirror_of,
    move,
    orders,
    rotation_to,
    translation_to,
)
from itembank.figures.kinds.grid.grid_places import Place, corners_of, pair_at, places
from itembank.notation import tree as t

if TYPE_CHECKING:
    from itembank.figures.kinds.grid.coordinate_grid import CoordinateGrid

Of = tuple[str, ...]


def _shape(figure: CoordinateGrid, name: str) -> tuple[Place, ...]:
    found = [shape for shape in figure.shapes if shape.closed and shape.name == name.upper()]
    if len(found) != 1:
        raise FigureError("it does not show which shape is meant")
    return corners_of(found[0])


def _two(figure: CoordinateGrid, of: Of) -> tuple[tuple[Place, ...], tuple[Place, ...]]:
    first, second = (_shape(figure, name) for name in of)
    if len(first) != len(second):
        raise FigureError("its two shapes have not as many corners")
    return first, second


def _image(figure: CoordinateGrid, of: Of) -> t.Node:
    at = places(figure)[of[0]]
    for text in of[1:]:
        at = move(text).of(at)
    return pair_at(at)


def _object(figure: CoordinateGrid, of: Of) -> t.Node:
    at = places(figure)[of[0]]
    for text in reversed(of[1:]):
        at = move(text).back().of(at)
    return pair_at(at)


def _image_like(figure: CoordinateGrid, of: Of) -> t.Node:
    return pair_at(translation_to(*_two(figure, of[1:])).of(places(figure)[of[0].upper()]))


def _image_shape(figure: CoordinateGrid, of: Of) -> t.Node | None:
    """Return which shape is the image of another after a move."""
    made = move(of[1])
    goal = list(map(made.of, _shape(figure, of[0])))
    others = [shape for shape in figure.shapes if shape.closed and shape.name != of[0].upper()]
    found = [shape.name for shape in others if goal in orders(corners_of(shape))]
    return t.Label(found[0]) if len(found) == 1 and found[0] else None


OF_MOVES: dict[str, Callable[[CoordinateGrid, Of], t.Node | None]] = {
    "image": _image,
    "object": _object,
    "image like": _image_like,
    "image shape": _image_shape,
    "mirror line": lambda figure, of: equation_node(mirror_of(*_two(figure, of))),
    "centre of rotation": lambda figure, of: pair_at(rotation_to(*_two(figure, of))),
    "centre of enlargement": lambda figure, of: pair_at(enlargement_to(*_two(figure, of))[1]),
    "scale factor": lambda figure, of: fraction_node(enlargement_to(*_two(figure, of))[0]),
}
"""What is read of moves and of pairs of shapes; raises NotationError where it is not shown."""
