"""What is read from a coordinate grid about a shape by itself: its symmetry and its name."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from itembank.figures.figure import FigureError
from itembank.figures.kinds.grid_equations import equation_node, through
from itembank.figures.kinds.grid_places import Place, corners_of, places
from itembank.figures.kinds.names_of_shapes import best_name, corner_that_makes
from itembank.figures.kinds.symmetry_found import mirror_of_outline, of_outline
from itembank.notation import tree as t

if TYPE_CHECKING:
    from itembank.figures.kinds.coordinate_grid import CoordinateGrid

Of = tuple[str, ...]


def shape_called(figure: CoordinateGrid, name: str) -> tuple[Place, ...]:
    """Return the corners of the shape of a letter.

    Raises
    ------
    FigureError
        If there is no such shape, or the axes have not one scale.
    """
    found = [each for each in figure.shapes if each.closed and each.name == name.upper()]
    if len(found) != 1:
        raise FigureError("it does not show which shape is meant")
    if figure.x_step != figure.y_step:
        # What is drawn is then another shape than the coordinates make.
        raise FigureError("a square of it is not as wide as it is high")
    return corners_of(found[0])


def _lines(figure: CoordinateGrid, of: Of) -> t.Node:
    return t.Int(of_outline(shape_called(figure, *of)).lines)


def _order(figure: CoordinateGrid, of: Of) -> t.Node:
    return t.Int(of_outline(shape_called(figure, *of)).order)


def _mirror(figure: CoordinateGrid, of: Of) -> t.Node | None:
    mirror = mirror_of_outline(shape_called(figure, *of))
    return None if mirror is None else equation_node(through(*mirror))


def _best(figure: CoordinateGrid, of: Of) -> t.Node | None:
    name = best_name(shape_called(figure, of[0]), of[1:])
    return None if name is None else t.Label(name)


def _makes(figure: CoordinateGrid, of: Of) -> t.Node | None:
    """Return which point makes a shape with three: its name, the three and the others' letters."""
    name, *letters = of
    if figure.x_step != figure.y_step:
        raise FigureError("a square of it is not as wide as it is high")
    at = places(figure)
    spots = [(letter, at[letter.upper()]) for letter in letters]
    found = corner_that_makes(name, [spot for _, spot in spots[:3]], spots[3:])
    return None if found is None else t.Label(found.upper())


OF_SHAPES: dict[str, Callable[[CoordinateGrid, Of], t.Node | None]] = {
    "lines of symmetry": _lines,
    "order of rotation": _order,
    "line of symmetry": _mirror,
    "best name": _best,
    "corner that makes": _makes,
}
"""What is read of one shape; None, or a NotationError, where it is not shown."""
