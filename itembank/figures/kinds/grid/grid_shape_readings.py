"""What is read from a coordinate grid about a shape by itself: its symmetry and its name."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from typing import TYPE_CHECKING

from itembank.figures.figure import FigureError
from itembank.figures.kinds.grid.grid_equations import equation_node, through
from itembank.figures.kinds.grid.grid_places import Place, corners_of, places
from itembank.figures.kinds.grid.names_of_shapes import best_name, corner_that_makes
from itembank.figures.kinds.symmetry.symmetry_found import mirror_of_outline, of_outline
from itembank.notation import tree as t

if TYPE_CHECKING:
    from itembank.figures.kinds.grid.coordinate_grid import CoordinateGrid

Of = tuple[str, ...]


def shape_called(figure: CoordinateGrid, name: str) -> tuple[Place, ...]:
    """Return the corners of the shape of a letter.

    Raises
    ------
    FigureError
        If there is no such shape, or the axes have not one scale.
    """
    found = [shape for shape in figure.shapes if shape.closed and shape.name == name.upper()]
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


def _squares(a: Place, b: Place) -> Fraction:
    return (a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2


def _meets(at: dict[str, Place], spot: Place, condition: str) -> bool:
    """Tell whether a place meets *nearer A B*, *as far A B* or *within 5 A*."""
    what, first, second = condition.rsplit(" ", 2)
    if what == "within":
        return _squares(spot, at[second]) < Fraction(first) ** 2
    gap = _squares(spot, at[first]) - _squares(spot, at[second])
    return gap < 0 if what == "nearer" else gap == 0


def _where(figure: CoordinateGrid, of: Of) -> t.Node | None:
    """Return the one point of some that meets all conditions: their letters, then these."""
    if figure.x_step != figure.y_step:
        raise FigureError("a square of it is not as wide as it is high")
    letters, *conditions = of
    at = places(figure)
    found = [k for k in letters if all(_meets(at, at[k], condition) for condition in conditions)]
    return t.Label(found[0]) if len(found) == 1 else None


OF_SHAPES: dict[str, Callable[[CoordinateGrid, Of], t.Node | None]] = {
    "lines of symmetry": _lines,
    "order of rotation": _order,
    "line of symmetry": _mirror,
    "best name": _best,
    "corner that makes": _makes,
    "point where": _where,
}
"""What is read of one shape; None, or a NotationError, where it is not shown."""
