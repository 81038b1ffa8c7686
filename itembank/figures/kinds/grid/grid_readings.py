"""What is read from a coordinate grid, from its data: points, lines, and where lines cross."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from functools import lru_cache
from itertools import combinations
from typing import TYPE_CHECKING

from itembank.figures.figure import FigureError, Reading, not_shown
from itembank.figures.kinds.grid.grid_conversion import converted
from itembank.figures.kinds.grid.grid_equations import (
    Straight,
    equation_node,
    fraction_node,
    straight,
    through,
)
from itembank.figures.kinds.grid.grid_journeys import OF_JOURNEYS, journeys_of
from itembank.figures.kinds.grid.grid_move_readings import OF_MOVES
from itembank.figures.kinds.grid.grid_places import (
    Place,
    in_halves,
    line_ends,
    number_at,
    off,
    on,
    pair_at,
    places,
)
from itembank.figures.kinds.grid.grid_shape_readings import OF_SHAPES
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.parse import parse_written
from itembank.notation.value import exact

if TYPE_CHECKING:
    from itembank.figures.kinds.grid.coordinate_grid import CoordinateGrid, GridLine


def read_grid(figure: CoordinateGrid, reading: Reading) -> t.Node:
    """Return the value of a reading.

    Raises
    ------
    FigureError
        If the grid does not show it.
    """
    read = _OF_POINTS.get(reading.name)
    if read is not None:
        at = places(figure)
        names = [name.upper() for name in reading.of]
        found = read([at[name] for name in names]) if {*names} <= {*at} else None
    elif reading.name in _OTHERS:
        try:
            found = _OTHERS[reading.name](figure, reading.of)
        # A reading may come from a file, with too few words or too many.
        except (t.NotationError, ZeroDivisionError, TypeError, ValueError, LookupError):
            found = None
    else:
        found = None
    if found is None:
        raise not_shown(reading)
    return found


def _pair_of(at: list[Place]) -> t.Node | None:
    return pair_at(at[0]) if len(at) == 1 else None


def _middle(at: list[Place]) -> t.Node | None:
    if len(at) != 2:
        return None
    (a, b), (c, d) = at
    return pair_at(((a + c) / 2, (b + d) / 2))


def _length(at: list[Place]) -> t.Node | None:
    if len(at) != 2:
        return None
    (a, b), (c, d) = at
    return number_at(abs(a - c) + abs(b - d)) if (a == c) != (b == d) else None


def _slope_between(at: list[Place]) -> t.Node | None:
    if len(at) != 2 or at[0][0] == at[1][0]:
        return None
    return fraction_node(through(*at).slope)


def _fourth(at: list[Place]) -> t.Node | None:
    """Return the corner after three of a parallelogram, in order round it."""
    if len(at) != 3 or not through(at[0], at[1]).at(*at[2]):
        return None
    (a, b), (c, d), (e, f) = at
    return pair_at((a + e - c, b + f - d))


_OF_POINTS: dict[str, Callable[[list[Place]], t.Node | None]] = {
    "coordinates": _pair_of,
    "x-coordinate": lambda at: number_at(at[0][0]) if len(at) == 1 else None,
    "y-coordinate": lambda at: number_at(at[0][1]) if len(at) == 1 else None,
    "midpoint": _middle,
    "length": _length,
    "gradient between": _slope_between,
    "fourth corner": _fourth,
}
"""What is read of points, from where they are; None where they show no such thing."""

Of = tuple[str, ...]


@lru_cache(maxsize=256)
def _place(text: str) -> Place:
    """Return the place that a pair of coordinates is; raises NotationError."""
    wanted = parse_written(text)
    if not isinstance(wanted, t.Listing) or len(wanted.parts) != 2:
        raise t.NotationError("a place has two coordinates")
    return exact(wanted.parts[0]), exact(wanted.parts[1])


def _letter(figure: CoordinateGrid, of: Of) -> t.Node | None:
    (text,) = of
    wanted = _place(text)
    return next((t.Label(name) for name, at in places(figure).items() if at == wanted), None)


def _named(figure: CoordinateGrid, name: str = "") -> GridLine:
    found = [drawn for drawn in figure.lines if not name or drawn.name == name.upper()]
    if len(found) != 1:
        raise FigureError("it does not show which line is meant")
    return found[0]


def _straight(drawn: GridLine) -> Straight:
    return through(*line_ends(drawn))


def _only(names: list[str]) -> t.Node | None:
    return t.Label(names[0]) if len(names) == 1 and names[0] else None


def _point_on(figure: CoordinateGrid, of: Of) -> t.Node | None:
    drawn = _named(figure, *of)
    return _only([name for name, place in places(figure).items() if on(place, drawn)])


def _y_intercept(figure: CoordinateGrid, of: Of) -> t.Node | None:
    drawn = _named(figure, *of)
    crossing = (Fraction(0), _straight(drawn).crossing)
    # Read off, not worked out: the crossing stands on the grid, where squares or halves meet.
    if off(figure, crossing) or not on(crossing, drawn) or not in_halves(figure, crossing):
        return None
    return number_at(crossing[1])


def _crossing(figure: CoordinateGrid, of: Of) -> Place | None:
    first, second = (_named(figure, name) for name in of)
    met = _straight(first).meets(_straight(second))
    if met is None or off(figure, met) or not in_halves(figure, met):
        return None
    return met if on(met, first) and on(met, second) else None


def _crossing_pair(figure: CoordinateGrid, of: Of) -> t.Node | None:
    met = _crossing(figure, of)
    return None if met is None else pair_at(met)


def _drawn(figure: CoordinateGrid, equation: str) -> GridLine:
    """Return the line that an equation has, among those that are drawn."""
    wanted = straight(equation)
    found = [drawn for drawn in figure.lines if _straight(drawn).same(wanted)]
    if len(found) != 1:
        raise FigureError(f"no line of it has the equation {equation}")
    return found[0]


def _with_equation(figure: CoordinateGrid, of: Of) -> t.Node | None:
    return _only([_drawn(figure, of[0]).name])


def _on_equation(figure: CoordinateGrid, of: Of) -> t.Node | None:
    wanted = straight(of[0])
    return _only([name for name, at in places(figure).items() if not wanted.at(*at)])


def _through(figure: CoordinateGrid, of: Of) -> t.Node | None:
    at = _place(of[0])
    return _only([drawn.name for drawn in figure.lines if on(at, drawn)])


def _parallel(figure: CoordinateGrid, of: Of) -> t.Node | None:
    line, (x, y) = _straight(_named(figure, of[0])), _place(of[1])
    moved = Straight(line.across, line.up, -line.across * x - line.up * y)
    return None if moved.same(line) else equation_node(moved)


def _parallel_letter(figure: CoordinateGrid, of: Of) -> t.Node | None:
    """Return which line is parallel to another one, or to one that is given by its equation."""
    given = _named(figure, of[0]) if len(of[0]) == 1 else None
    wanted = straight(of[0]) if given is None else _straight(given)
    others = [drawn for drawn in figure.lines if not _straight(drawn).same(wanted)]
    return _only([drawn.name for drawn in others if not _straight(drawn).turn(wanted)])


def _solution(figure: CoordinateGrid, of: Of) -> t.Node | None:
    """Return the solution of two equations whose lines are drawn, where these cross."""
    lines = [_drawn(figure, equation) for equation in of]
    met = _crossing(figure, tuple(drawn.name for drawn in lines))
    if met is None:
        return None
    pairs = zip("xy", met, strict=True)
    return t.Listing(tuple(t.equals(t.Sym(name), number_at(value)) for name, value in pairs))


def _x_where(figure: CoordinateGrid, of: Of) -> t.Node | None:
    """Return the solution of mx + c = k, where the line y = mx + c is drawn, as x."""
    node = parse_written(of[0])
    if not (isinstance(node, t.Relation) and [op for op, _ in node.rest] == ["="]):
        return None
    drawn = _drawn(figure, f"y = {line(node.first)}")
    level = exact(node.rest[0][1])
    straight = _straight(drawn)
    if not straight.slope:
        return None
    at = ((level - straight.crossing) / straight.slope, level)
    shown = on(at, drawn) and not off(figure, at) and in_halves(figure, at)
    return number_at(at[0]) if shown else None


_OTHERS: dict[str, Callable[[CoordinateGrid, Of], t.Node | None]] = {
    "letter": _letter,
    "gradient": lambda figure, of: fraction_node(_straight(_named(figure, *of)).slope),
    "y-intercept": _y_intercept,
    "equation": lambda figure, of: equation_node(_straight(_named(figure, *of))),
    "point on the line": _point_on,
    "crossing": _crossing_pair,
    "line with equation": _with_equation,
    "point with equation": _on_equation,
    "line through": _through,
    "parallel": _parallel,
    "line parallel": _parallel_letter,
    "solution": _solution,
    "x where": _x_where,
    "converted": converted,
    **OF_MOVES,
    **OF_JOURNEYS,
    **OF_SHAPES,
}
"""What else is read, of lines and by equations; raises or returns None where it is not shown."""


def grid_readings(figure: CoordinateGrid) -> tuple[Reading, ...]:
    """Return what can be read of single points and lines, and of each two of them."""
    names = [name for name, _, _ in figure.points]
    tried = [Reading(what, (name,)) for name in names for what in ("coordinates", "y-coordinate")]
    tried += [Reading("letter", (line(pair_at(place)),)) for place in places(figure).values()]
    tried += [
        Reading(what, pair)
        for pair in combinations(names, 2)
        for what in ("midpoint", "length", "gradient between")
    ]
    tried += [
        Reading(what, (drawn.name,))
        for drawn in figure.lines
        for what in ("gradient", "y-intercept", "equation", "point on the line")
    ]
    tried += [
        Reading("line with equation", (line(equation_node(_straight(drawn))),))
        for drawn in figure.lines
        if drawn.name
    ]
    lines = [drawn.name for drawn in figure.lines]
    tried += [Reading("crossing", pair) for pair in combinations(lines, 2)]
    tried += journeys_of(figure)
    return tuple(reading for reading in tried if _shows(figure, reading))


def _shows(figure: CoordinateGrid, reading: Reading) -> bool:
    try:
        read_grid(figure, reading)
    except t.NotationError:
        return False
    return True
