"""A scatter graph: points on a grid, one for each thing, and a line of best fit where it is drawn.

What is judged by eye (how strong a correlation is, where a line of best fit should go) is not
read. A type of correlation is read only where every point further along stands higher, or every
one lower.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

from itembank.data_class import dataclass
from itembank.figures.drawing import Drawing, Mark, Stroke, drawing
from itembank.figures.figure import (
    Figure,
    FigureError,
    FigureKind,
    Reading,
    Wording,
    asks_reading,
    not_shown,
    register_figure,
)
from itembank.figures.kinds.chart.scatter_asked import GIVEN, LINE, N, known, over
from itembank.figures.kinds.grid.grid_drawn import cross_at, grid_drawing
from itembank.figures.kinds.grid.grid_sheet import Sheet
from itembank.figures.label_room import text_width
from itembank.figures.written_as import written_as
from itembank.notation import tree as t
from itembank.notation.value import exact

Place = tuple[Fraction, Fraction]
MOST_POINTS, MOST_ACROSS, MOST_UP, WIDEST_TITLE, LARGEST = 16, 16, 11, 13, 10_000
POSITIVE, NEGATIVE = t.Label("positive"), t.Label("negative")


@dataclass(frozen=True, slots=True)
class ScatterGraph(Figure):
    """Points over axes from nought, with squares of `x_step` by `y_step`.

    `data` are whole squares or halves of one; `best` are two places that the line of best fit goes
    through, from edge to edge of the grid. Titles are as in *Height (cm)*.

    >>> plants = ScatterGraph("Age (weeks)", "Height (cm)", 8, 40, 1, 5, ((t.Int(2), t.Int(10)),))
    >>> _read(plants, Reading("count"))
    Int(n=1)
    """

    x_title: str
    y_title: str
    right: int
    top: int
    x_step: int
    y_step: int
    data: tuple[tuple[t.Node, t.Node], ...]
    best: tuple[tuple[t.Node, t.Node], ...] = ()


def _places(figure: ScatterGraph) -> list[Place]:
    return [(exact(x), exact(y)) for x, y in figure.data]


def _best(figure: ScatterGraph) -> tuple[Place, Place]:
    if not figure.best:
        raise FigureError("it has no line of best fit")
    (a, b), (c, d) = figure.best
    return (exact(a), exact(b)), (exact(c), exact(d))


def _fault(figure: ScatterGraph) -> str:
    for end, step, most, name in (
        (figure.right, figure.x_step, MOST_ACROSS, "across"),
        (figure.top, figure.y_step, MOST_UP, "up"),
    ):
        if not 0 < end <= LARGEST or step < 1 or end % step:
            return f"its end {name} is to be a whole number of squares, of {LARGEST} at most"
        if not 2 <= end // step <= most:
            return f"it may have 2 to {most} squares {name}"
    for title in (figure.x_title, figure.y_title):
        if not title or not title.isprintable() or text_width(title) > WIDEST_TITLE:
            return f"both axes have a title, {WIDEST_TITLE} wide at most in heights of letters"
    if not 1 <= len(figure.data) <= MOST_POINTS:
        return f"it may have 1 to {MOST_POINTS} points"
    if len(figure.best) not in (0, 2):
        return "a line of best fit goes through two places"
    try:
        at = _places(figure)
        ends = _best(figure) if figure.best else ()
    except t.NotationError:
        return "coordinates are to be numbers"
    if any(not (0 <= x <= figure.right and 0 <= y <= figure.top) for x, y in (*at, *ends)):
        return "a point of it is off the grid"
    if any((2 * x / figure.x_step) % 1 or (2 * y / figure.y_step) % 1 for x, y in (*at, *ends)):
        return "a point of it stands between the halves of squares"
    if len({*at}) < len(at):
        return "two points of it stand at one place"
    if ends and ends[0][0] >= ends[1][0]:
        return "a line of best fit goes from left to right"
    return ""


def _sheet(figure: ScatterGraph) -> Sheet:
    lines = ((*_best(figure), "", True),) if figure.best else ()
    return Sheet(
        (0, figure.right, 0, figure.top),
        (figure.x_step, figure.y_step),
        (),
        lines,
        (),
        (figure.x_title, figure.y_title),
    )


def _drawing(figure: ScatterGraph) -> Drawing:
    sheet = _sheet(figure)
    marks: list[Mark] = list(grid_drawing(sheet).marks)
    for place in _places(figure):
        marks += [Stroke(path, "datum") for path in cross_at(sheet, place)]
    return drawing(marks)


def _words(figure: ScatterGraph) -> str:
    def squares(place: Place) -> str:
        across, up = place[0] / figure.x_step, place[1] / figure.y_step
        return f"{_number(across)} along and {_number(up)} up"

    out = [
        f"A scatter graph has {figure.x_title} along it, from 0 to {figure.right}, and "
        f"{figure.y_title} up it, from 0 to {figure.top}. A square is {figure.x_step} wide and "
        f"{figure.y_step} high."
    ]
    out.append(f"Its points, in squares: {'; '.join(map(squares, _places(figure)))}.")
    if figure.best:
        a, b = _best(figure)
        out.append(f"A line of best fit goes from {squares(a)} to {squares(b)}, in squares.")
    return " ".join(out)


def _number(value: Fraction) -> str:
    return str(float(value)).removesuffix(".0")


def _node(value: Fraction) -> t.Node:
    return written_as(value, t.Dec("0", "5"))


def _height(figure: ScatterGraph, x: Fraction) -> Fraction:
    (a, b), (c, d) = _best(figure)
    return b + (x - a) * (d - b) / (c - a)


def _halves(figure: ScatterGraph, place: Place) -> Place:
    (a, _), (c, _) = _best(figure)
    on = a <= place[0] <= c and 0 <= place[1] <= figure.top
    if not on or (2 * place[0] / figure.x_step) % 1 or (2 * place[1] / figure.y_step) % 1:
        raise FigureError("it is not read where squares, or halves of them, meet")
    return place


def _estimate(figure: ScatterGraph, axis: str, value: Fraction) -> t.Node:
    """Return what the line says up for a value along (`axis` x), or along for one up."""
    if axis == "x":
        return _node(_halves(figure, (value, _height(figure, value)))[1])
    (a, b), (c, d) = _best(figure)
    if b == d:
        raise FigureError("the line is level")
    return _node(_halves(figure, (a + (value - b) * (c - a) / (d - b), value))[0])


def _outlier(figure: ScatterGraph) -> t.Node:
    """Return the point that is more than twice as far from the line as any other."""
    # How far along the upright is in proportion to how far straight across.
    far = sorted((abs(y - _height(figure, x)), (x, y)) for x, y in _places(figure))
    if len(far) < 2 or far[-1][0] <= 2 * far[-2][0]:
        raise FigureError("no single point is far from the line")
    x, y = far[-1][1]
    return t.pair(_node(x), _node(y))


def _correlation(figure: ScatterGraph) -> t.Node:
    at = sorted(_places(figure))
    ups = {(b[0] > a[0], (b[1] > a[1]) - (b[1] < a[1])) for a, b in pairwise(at)}
    if len(at) < 4 or ups not in ({(True, 1)}, {(True, -1)}):
        raise FigureError("its points do not all rise, or all fall, one after the other")
    return POSITIVE if ups == {(True, 1)} else NEGATIVE


def _read(figure: ScatterGraph, reading: Reading) -> t.Node:
    at = _places(figure)
    match reading:
        case Reading("count", ()):
            return t.Int(len(at))
        case Reading("more" | "less" as way, (("x" | "y") as axis, value)):
            held = [place["xy".index(axis)] for place in at]
            limit = Fraction(value)
            return t.Int(sum(v > limit if way == "more" else v < limit for v in held))
        case Reading("value", (("x" | "y") as axis, value)):
            known = "xy".index(axis)
            found = [place[1 - known] for place in at if place[known] == Fraction(value)]
            if len(found) == 1:
                return _node(found[0])
        case Reading("estimate", (("x" | "y") as axis, value)):
            return _estimate(figure, axis, Fraction(value))
        case Reading("above the line" | "below the line" as side, ()):
            gaps = [y - _height(figure, x) for x, y in at]
            return t.Int(sum(gap > 0 if side[0] == "a" else gap < 0 for gap in gaps))
        case Reading("outlier", ()):
            return _outlier(figure)
        case Reading("correlation", ()):
            return _correlation(figure)
    raise not_shown(reading)


def _readings(figure: ScatterGraph) -> tuple[Reading, ...]:
    tried = [Reading("count"), Reading("outlier"), Reading("correlation")]
    tried += [Reading("above the line"), Reading("below the line")]
    for x, y in _places(figure):
        for axis, value in (("x", _number(x)), ("y", _number(y))):
            tried += [Reading(what, (axis, value)) for what in ("more", "value", "estimate")]
    found = []
    for reading in dict.fromkeys(tried):
        try:
            _read(figure, reading)
        except t.NotationError:
            continue
        found.append(reading)
    return tuple(found)


_WHAT, _OTHER = r"(?P<what>[a-z]+(?: [a-z]+)?)", r"(?P<other>[a-z]+(?: [a-z]+)?)"

SCATTER_GRAPH = register_figure(
    FigureKind(
        "scatter graph",
        ScatterGraph,
        fault=_fault,
        drawing=_drawing,
        words=_words,
        printed=lambda figure: (POSITIVE, NEGATIVE),
        readings=_readings,
        read=_read,
        wordings=(
            Wording(
                rf"(?:how many|what fraction of the) (?P<who>[a-z]+) have an? {_WHAT} of "
                rf"(?P<way>more|less) than {N}",
                over,
            ),
            Wording(
                rf"what (?:is|was) the {_WHAT}{GIVEN} of the [a-z]+ with an? {_OTHER} of {N}",
                known("value"),
            ),
            Wording(
                rf"use the {LINE} to estimate the {_WHAT}{GIVEN} of an? [a-z]+ "
                rf"with an? {_OTHER} of {N}",
                known("estimate"),
            ),
            Wording(r"how many points (?:are there|does it have)", asks_reading("count")),
            Wording(
                rf"how many points (?:are|lie) above the {LINE}", asks_reading("above the line")
            ),
            Wording(
                rf"how many points (?:are|lie) below the {LINE}", asks_reading("below the line")
            ),
            Wording(
                rf"write down the coordinates of the (?:outlier|point farthest from the {LINE})",
                asks_reading("outlier"),
            ),
            Wording(r"is the correlation positive or negative", asks_reading("correlation")),
        ),
    )
)
