"""A coordinate grid: axes with numbers, points with letters, straight lines and segments."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from itertools import combinations

from itembank.figures.figure import (
    Figure,
    FigureKind,
    Reading,
    not_shown,
    register_figure,
)
from itembank.figures.kinds.grid_drawn import Sheet, grid_drawing, unplaced
from itembank.figures.kinds.grid_wordings import GRID_WORDINGS
from itembank.figures.kinds.grid_words import from_start
from itembank.figures.written_as import written_as
from itembank.notation import tree as t
from itembank.notation.line import line, shown_line
from itembank.notation.parse import ParseError, parse_written
from itembank.notation.value import exact

MOST_ACROSS, MOST_UP = 30, 20
MOST_POINTS, MOST_LINES = 10, 4
LARGEST = 10_000


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
class CoordinateGrid(Figure):
    """Squares from `left` to `right` and from `bottom` to `top`, each `x_step` by `y_step`.

    A point is a letter with its coordinates, whole squares or halves of one.

    >>> grid = CoordinateGrid(-2, 4, -2, 4, points=(("A", t.Int(3), t.Neg(t.Int(2))),))
    >>> line(_read(grid, Reading("coordinates", ("A",))))
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


Place = tuple[Fraction, Fraction]


def _places(figure: CoordinateGrid) -> dict[str, Place]:
    return {name: (exact(x), exact(y)) for name, x, y in figure.points}


def _ends(each: GridLine) -> tuple[Place, Place]:
    (a, b), (c, d) = each.start, each.end
    return (exact(a), exact(b)), (exact(c), exact(d))


def _sheet(figure: CoordinateGrid) -> Sheet:
    return Sheet(
        (figure.left, figure.right, figure.bottom, figure.top),
        (figure.x_step, figure.y_step),
        tuple(_places(figure).items()),
        tuple((*_ends(each), each.name, each.segment) for each in figure.lines),
    )


def _off(figure: CoordinateGrid, place: Place) -> bool:
    x, y = place
    return not (figure.left <= x <= figure.right and figure.bottom <= y <= figure.top)


def _on(place: Place, each: GridLine) -> bool:
    (a, b), (c, d) = _ends(each)
    x, y = place
    if (x - a) * (d - b) != (y - b) * (c - a):
        return False
    return not each.segment or (min(a, c) <= x <= max(a, c) and min(b, d) <= y <= max(b, d))


def _fault(figure: CoordinateGrid) -> str:
    for low, high, step, most, name in (
        (figure.left, figure.right, figure.x_step, MOST_ACROSS, "across"),
        (figure.bottom, figure.top, figure.y_step, MOST_UP, "up"),
    ):
        if max(abs(low), abs(high)) > LARGEST:
            return f"its axes may go as far as {LARGEST}"
        if step < 1 or low % step or high % step:
            return f"its ends {name} are to be whole squares of {step}"
        if not 2 <= (high - low) // step <= most:
            return f"it may have 2 to {most} squares {name}"
    if len(figure.points) > MOST_POINTS or len(figure.lines) > MOST_LINES:
        return f"it may have at most {MOST_POINTS} points and {MOST_LINES} lines"
    return _fault_of_points(figure) or _fault_of_lines(figure) or unplaced(_sheet(figure))


def _fault_of_points(figure: CoordinateGrid) -> str:
    names = [name for name, _, _ in figure.points] + [each.name for each in figure.lines]
    names = [name for name in names if name]
    if any(len(name) != 1 or not "A" <= name <= "Z" for name in names):
        return "its points and lines are to be named by single capital letters"
    if twice := next((name for name in names if names.count(name) > 1), ""):
        return f"two things have the letter {twice}"
    try:
        places = _places(figure)
    except t.NotationError:
        return "coordinates are to be numbers"
    for name, place in places.items():
        if _off(figure, place):
            return f"the point {name} is at {shown_line(_pair(place))}, which is off the grid"
        if not _in_halves(figure, place):
            return f"the point {name} stands between the halves of squares"
    for (name, here), (other, there) in combinations(places.items(), 2):
        if here == there:
            return f"the points {name} and {other} stand at one place"
    return ""


def _in_halves(figure: CoordinateGrid, place: Place) -> bool:
    x, y = place
    halves = (2 * x / figure.x_step, 2 * y / figure.y_step)
    return all(value.denominator == 1 for value in halves)


def _fault_of_lines(figure: CoordinateGrid) -> str:
    places = _places(figure)
    for each in figure.lines:
        called = f"the line {each.name}" if each.name else "a line"
        try:
            ends = _ends(each)
        except t.NotationError:
            return "coordinates are to be numbers"
        if ends[0] == ends[1]:
            return f"{called} needs two places to go through"
        if any(_off(figure, end) or not _in_halves(figure, end) for end in ends):
            return f"{called} goes through a place that is not on the grid"
        for name in each.points:
            if name not in places:
                return f"{called} is said to go through {name}, and there is no such point"
            if not _on(places[name], each):
                at = shown_line(_pair(places[name]))
                return f"{called} is said to go through {name}, and misses it: {name} is at {at}"
    if len(figure.lines) > 1 and sum(not each.name for each in figure.lines) > 1:
        return "of several lines only one may have no letter"
    return ""


def _number(value: Fraction) -> t.Node:
    return written_as(value, t.Dec("0", "5"))


def _pair(place: Place) -> t.Listing:
    return t.pair(_number(place[0]), _number(place[1]))


def _words(figure: CoordinateGrid) -> str:
    out = [
        f"A grid has x from {figure.left} to {figure.right} and y from {figure.bottom} to "
        f"{figure.top}.".replace("-", "minus ")
    ]
    steps = (figure.x_step, figure.y_step)
    if steps != (1, 1):
        out.append(f"A square is {steps[0]} wide and {steps[1]} high.")
    origin = not _off(figure, (Fraction(0), Fraction(0)))
    start = (0, 0) if origin else (figure.left, figure.bottom)
    known = "the origin" if origin else "the bottom left corner"
    for name, place in _places(figure).items():
        out.append(f"The point {name} is {from_start(place, start, steps)} {known}.")
    for each in figure.lines:
        kind = "segment" if each.segment else "straight line"
        name = f" {each.name}" if each.name else ""
        ends = [from_start(end, start, steps) for end in _ends(each)]
        goes = "goes from" if each.segment else "goes through"
        joins = "to" if each.segment else "and"
        out.append(
            f"A {kind}{name} {goes} the place {ends[0]} {known} {joins} the place {ends[1]} it."
        )
    return " ".join(out)


def _line_called(figure: CoordinateGrid, reading: Reading) -> GridLine:
    name = reading.of[0].upper() if reading.of and reading.of[0] else ""
    found = [each for each in figure.lines if not name or each.name == name]
    if len(found) != 1:
        raise not_shown(reading)
    return found[0]


def _read(figure: CoordinateGrid, reading: Reading) -> t.Node:
    places = _places(figure)
    match reading:
        case Reading("gradient" | "y-intercept" | "point on the line", _):
            return _of_line(figure, reading)
        case Reading("letter", (text,)):
            try:
                wanted = parse_written(text)
                pair = tuple(exact(part) for part in t.children(wanted))
            except (ParseError, t.NotationError):
                raise not_shown(reading) from None
            for name, place in places.items():
                if isinstance(wanted, t.Listing) and place == pair:
                    return t.Label(name)
        case Reading(what, names) if all(name.upper() in places for name in names):
            at = [places[name.upper()] for name in names]
            match what, at:
                case "coordinates", [place]:
                    return _pair(place)
                case "x-coordinate", [(x, _)]:
                    return _number(x)
                case "y-coordinate", [(_, y)]:
                    return _number(y)
                case "midpoint", [(a, b), (c, d)]:
                    return _pair(((a + c) / 2, (b + d) / 2))
                case "length", [(a, b), (c, d)] if (a == c) != (b == d):
                    return _number(abs(a - c) + abs(b - d))
    raise not_shown(reading)


def _of_line(figure: CoordinateGrid, reading: Reading) -> t.Node:
    each = _line_called(figure, reading)
    (a, b), (c, d) = _ends(each)
    if reading.name == "point on the line":
        found = [name for name, place in _places(figure).items() if _on(place, each)]
        if len(found) != 1:
            raise not_shown(reading)
        return t.Label(found[0])
    if a == c:
        raise not_shown(reading)
    slope = (d - b) / (c - a)
    if reading.name == "gradient":
        whole = slope.denominator == 1
        return t.num(int(slope)) if whole else t.frac(slope.numerator, slope.denominator)
    crossing = (Fraction(0), b - slope * a)
    # Read off, not worked out: the crossing stands on the grid, where squares or halves meet.
    if _off(figure, crossing) or not _on(crossing, each) or not _in_halves(figure, crossing):
        raise not_shown(reading)
    return _number(crossing[1])


def _readings(figure: CoordinateGrid) -> tuple[Reading, ...]:
    names = [name for name, _, _ in figure.points]
    tried = [Reading(what, (name,)) for name in names for what in ("coordinates", "y-coordinate")]
    tried += [Reading("letter", (line(_pair(place)),)) for place in _places(figure).values()]
    tried += [
        Reading(what, pair) for pair in combinations(names, 2) for what in ("midpoint", "length")
    ]
    tried += [
        Reading(what, (each.name,))
        for each in figure.lines
        for what in ("gradient", "y-intercept", "point on the line")
    ]
    return tuple(reading for reading in tried if _shows(figure, reading))


def _shows(figure: CoordinateGrid, reading: Reading) -> bool:
    try:
        _read(figure, reading)
    except t.NotationError:
        return False
    return True


COORDINATE_GRID = register_figure(
    FigureKind(
        "coordinate grid",
        CoordinateGrid,
        fault=_fault,
        drawing=lambda figure: grid_drawing(_sheet(figure)),
        words=_words,
        printed=lambda figure: tuple(t.Label(name) for name, _, _ in figure.points),
        readings=_readings,
        read=_read,
        wordings=GRID_WORDINGS,
    )
)
