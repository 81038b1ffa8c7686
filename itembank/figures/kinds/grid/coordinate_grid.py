"""A coordinate grid: axes with numbers, points with letters, straight lines, shapes and paths."""

from __future__ import annotations

from itembank.data_class import dataclass
from itembank.figures.figure import Figure, FigureKind, register_figure
from itembank.figures.kinds.grid.grid_conversion import CONVERSION_WORDINGS
from itembank.figures.kinds.grid.grid_drawn import grid_drawing
from itembank.figures.kinds.grid.grid_drawn_answers import GRID_DRAWN_ANSWERS
from itembank.figures.kinds.grid.grid_faults import grid_fault
from itembank.figures.kinds.grid.grid_move_wordings import MOVE_WORDINGS
from itembank.figures.kinds.grid.grid_places import sheet_of
from itembank.figures.kinds.grid.grid_readings import grid_readings, read_grid
from itembank.figures.kinds.grid.grid_shape_wordings import SHAPE_WORDINGS
from itembank.figures.kinds.grid.grid_wordings import GRID_WORDINGS
from itembank.figures.kinds.grid.grid_words import grid_words
from itembank.figures.kinds.grid.journey_wordings import JOURNEY_WORDINGS
from itembank.notation import tree as t


@dataclass(frozen=True, slots=True)
class GridLine:
    """A straight line through two places; a `segment` ends at them.

    `points` are the letters of points that are said to lie on it.
    """

    start: tuple[t.Node, t.Node]
    end: tuple[t.Node, t.Node]
    name: str = ""
    segment: bool = False
    points: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class GridShape:
    """A shape by its corners in order, or a path from corner to corner that is not `closed`."""

    corners: tuple[tuple[t.Node, t.Node], ...]
    name: str = ""
    closed: bool = True
    dashed: bool = False


@dataclass(frozen=True, slots=True)
class CoordinateGrid(Figure):
    """Squares from `left` to `right` and from `bottom` to `top`, each `x_step` by `y_step`.

    A point is a letter with its coordinates, whole squares or halves of one; so are the corners of
    lines and shapes. Titles stand for the letters x and y where the graph is one of real life.

    >>> from itembank.figures.figure import Reading
    >>> from itembank.notation.line import line
    >>> grid = CoordinateGrid(-2, 4, -2, 4, points=(("A", t.Int(3), t.Neg(t.Int(2))),))
    >>> line(read_grid(grid, Reading("coordinates", ("A",))))
    '(3, -2)'
    """

    left: int
    right: int
    bottom: int
    top: int
    x_step: int = 1
    y_step: int = 1
    points: tuple[tuple[str, t.Node, t.Node], ...] = ()
    lines: tuple[GridLine, ...] = ()
    shapes: tuple[GridShape, ...] = ()
    x_title: str = ""
    y_title: str = ""


def _printed(figure: CoordinateGrid) -> tuple[t.Node, ...]:
    names = [name for name, _, _ in figure.points]
    names += [line.name for line in figure.lines] + [shape.name for shape in figure.shapes]
    return tuple(t.Label(name) for name in names if name)


COORDINATE_GRID = register_figure(
    FigureKind(
        "coordinate grid",
        CoordinateGrid,
        fault=grid_fault,
        drawing=lambda figure: grid_drawing(sheet_of(figure)),
        words=grid_words,
        printed=_printed,
        readings=grid_readings,
        read=read_grid,
        wordings=(
            *(*GRID_WORDINGS, *MOVE_WORDINGS, *CONVERSION_WORDINGS),
            *(*SHAPE_WORDINGS, *JOURNEY_WORDINGS),
        ),
        drawn_answers=GRID_DRAWN_ANSWERS,
    )
)
