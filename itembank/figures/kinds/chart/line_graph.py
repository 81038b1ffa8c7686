"""A line graph: points over named places, such as times, each joined to the next.

One point may be missing: a place with a name at which nothing is drawn yet.
"""

from __future__ import annotations

import re
from fractions import Fraction
from itertools import pairwise

from itembank.data_class import dataclass
from itembank.figures.drawing import Arc, Drawing, Mark, Point, Stroke, Text, drawing
from itembank.figures.figure import (
    Asked,
    Figure,
    FigureError,
    FigureKind,
    Reading,
    Wording,
    not_shown,
    register_figure,
)
from itembank.figures.kinds.chart.chart_axis import LINE, axis_lines, scale_fault, step_words
from itembank.figures.kinds.chart.chart_held import scaled
from itembank.figures.kinds.chart.chart_names import (
    Shown,
    asked,
    folded,
    names_fault,
    titles_fault,
    with_sizes,
    words_of,
)
from itembank.figures.kinds.chart.chart_readings import chart_read, chart_readings
from itembank.figures.kinds.chart.missing_point import MISSING_POINT, PLACE, unit_fits
from itembank.figures.label_room import room, text_width
from itembank.notation import tree as t

_WIDE = Fraction(14)


@dataclass(frozen=True, slots=True)
class LineGraph(Figure):
    """Points at named places along, joined by straight lines; what is between is not read.

    The axis is numbered in steps of `scale`, each cut in `between`. `counts` says what goes up,
    and `along` what goes along. No point is drawn at the place that is named `missing`, and its
    neighbours are not joined to it; the number given there is 0 and says nothing.

    >>> LineGraph((("09:00", 12), ("10:00", 15)), 5, 5, "Temperature", along="Time").points[0]
    ('09:00', 12)
    """

    points: tuple[tuple[str, int], ...]
    scale: int
    between: int = 1
    counts: str = ""
    along: str = ""
    title: str = ""
    missing: str = ""


def _drawn(figure: LineGraph) -> tuple[tuple[str, int], ...]:
    """Return the points that are drawn."""
    return tuple(point for point in figure.points if point[0] != figure.missing)


def _fault(figure: LineGraph) -> str:
    names = tuple(name for name, _ in figure.points)
    if wrong := names_fault(names, "place") or titles_fault(
        figure.counts, figure.along, figure.title
    ):
        return wrong
    if not figure.counts:
        return "its scale needs a title: say in ‘counts’ what it shows"
    if figure.missing and (figure.missing, 0) not in figure.points:
        return "the point that is missing is to be one of its places, with 0 for its number"
    if wrong := scale_fault([value for _, value in _drawn(figure)], figure.scale, figure.between):
        return wrong
    if _column(figure) * len(names) > _WIDE:
        return "the names along it do not fit side by side: shorten them"
    return ""


def _column(figure: LineGraph) -> Fraction:
    widest = max(text_width(name) for name, _ in figure.points)
    return max(widest + Fraction(2, 5), Fraction(2))


def _lines(figure: LineGraph) -> int:
    """Return how many numbered lines its axis has above 0."""
    return -(-max(value for _, value in _drawn(figure)) // figure.scale)


def _drawing(figure: LineGraph) -> Drawing:
    wide, lines = _column(figure), _lines(figure)
    high, across = lines * LINE, wide * len(figure.points)
    marks: list[Mark] = axis_lines(lines, figure.scale, figure.between, across)
    marks.append(Stroke((Point(0, 0), Point(0, high + Fraction(1, 4))), "axis"))
    runs: list[list[Point]] = [[]]
    for place, (name, value) in enumerate(figure.points):
        x = wide * place + wide / 2
        marks.append(Stroke((Point(x, -Fraction(1, 5)), Point(x, high)), "upright", "faint"))
        marks.append(Text(Point(x, -Fraction(3, 10)), name, up="top", role="place"))
        if name == figure.missing:
            runs.append([])
        else:
            runs[-1].append(Point(x, Fraction(value, figure.scale) * LINE))
    marks += [Stroke(tuple(run), "graph", "heavy") for run in runs if len(run) > 1]
    marks += [Arc(at, Fraction(3, 20), at, at, "point", "ink") for run in runs for at in run]
    y = high + Fraction(1, 2)
    marks.append(Text(Point(-Fraction(1, 5), y), figure.counts, "left", "bottom", "counts"))
    if figure.title:
        y += room(figure.counts).height + Fraction(1, 5)
        marks.append(Text(Point(across / 2, y), figure.title, up="bottom", role="title", bold=True))
    if figure.along:
        low = -Fraction(1, 2) - room("Time").height
        marks.append(Text(Point(across / 2, low), figure.along, up="top", role="along"))
    return drawing(marks)


def _cells(figure: LineGraph) -> dict[tuple[str, ...], int]:
    return {(name,): value for name, value in _drawn(figure)}


def _read(figure: LineGraph, reading: Reading) -> t.Node:
    if reading.name == "total":  # of a temperature there is none
        raise not_shown(reading)
    if figure.missing and reading.name != "value":
        # The point that is missing could be the highest, or stand where another does.
        if reading == Reading("missing"):
            return t.Label(figure.missing)
        raise not_shown(reading)
    if reading.name == "place" and len(reading.of) == 1:
        names = [name for name, value in figure.points if str(value) == reading.of[0]]
        if len(names) != 1:
            raise FigureError(f"not one point of it stands at {reading.of[0]}")
        return t.Label(names[0])
    return chart_read(_cells(figure), reading)


def _readings(figure: LineGraph) -> tuple[Reading, ...]:
    found = [reading for reading in chart_readings(_cells(figure)) if reading.name != "total"]
    if figure.missing:
        return (*(reading for reading in found if reading.name == "value"), Reading("missing"))
    values = [value for _, value in figure.points]
    found += [Reading("place", (str(value),)) for value in values if values.count(value) == 1]
    return tuple(found)


def _words(figure: LineGraph) -> str:
    of = f" of {figure.title}" if figure.title else ""
    names = ", ".join(name for name, _ in _drawn(figure))
    along = f" for {figure.along}" if figure.along else ""
    out = [f"A line graph{of} has points at {names}{along}."]
    cut = f", with {figure.between} equal steps from one number to the next"
    out.append(
        f"The axis shows {figure.counts} and is numbered from 0 to "
        f"{_lines(figure) * figure.scale} in steps of {figure.scale}"
        f"{cut if figure.between > 1 else ''}."
    )
    for name, value in figure.points:
        if name == figure.missing:
            out.append(f"No point is drawn at {name}.")
            continue
        out.append(f"The point at {name} stands {step_words(value, figure.scale, figure.between)}.")
    return " ".join(out)


def _printed(figure: LineGraph) -> tuple[t.Node, ...]:
    numbers = [t.Int(number * figure.scale) for number in range(_lines(figure) + 1)]
    return (*numbers, *(t.Label(name) for name, _ in figure.points))


def _asked(figure: LineGraph, found: re.Match[str]) -> Asked:
    names = tuple(name for name, _ in figure.points)
    shown = Shown(names, (), figure.counts, figure.title, f"{figure.along} time point line month")
    what = asked(shown, re.sub(r"^at what\b", "at which", found["all"], flags=re.IGNORECASE))
    if any(reading.name == "total" for _, reading in what.readings) or len(what.readings) == 3:
        raise FigureError("what stands at the points of a line graph is not added up")
    if isinstance(what.target, t.Sum) and what.target.rest[0][0] == "+":
        raise FigureError("what stands at the points of a line graph is not added up")
    return with_sizes(figure, what, found["all"])


_UP = "rise|increase|go up|grow"


def _change(figure: LineGraph, found: re.Match[str]) -> Asked:
    """Return by how much it goes up, or down, from one place to another."""
    known = {folded(name): place for place, (name, _) in enumerate(figure.points)}
    first, second = (folded(found[name].strip("{}")) for name in ("first", "second"))
    if not {*found["what"].casefold().split()} <= words_of(figure.counts):
        raise FigureError(f"it does not show ‘{found['what']}’")
    counted = (found["counted"] or "").casefold()
    if counted and counted not in words_of(figure.counts) and not unit_fits(figure, counted):
        raise FigureError(f"it does not count ‘{counted}’")
    if scaled(f"{figure.counts} {figure.title}"):
        raise FigureError("a change is to be of what its numbers count, each for one")
    if first not in known or second not in known or known[first] >= known[second]:
        raise FigureError("a change is to be from a point to a later one")
    a, b = (Reading("value", (figure.points[known[name]][0],)) for name in (first, second))
    up = re.fullmatch(_UP, found["way"], re.IGNORECASE)
    readings = (("a", b), ("b", a)) if up else (("a", a), ("b", b))
    return with_sizes(figure, Asked(t.sub(t.Sym("a"), t.Sym("b")), readings), found[0])


def _place(figure: LineGraph, found: re.Match[str]) -> Asked:
    """Return the point that stands at a number: *at what time was the temperature {15}*."""
    if found["what"].casefold() not in words_of(figure.counts) or found[
        "sort"
    ].casefold() not in _sorts(figure):
        raise FigureError(f"it does not show the ‘{found['what']}’ of a ‘{found['sort']}’")
    if found["unit"] and not unit_fits(figure, found["unit"]):
        raise FigureError(f"it is not marked in ‘{found['unit']}’")
    return Asked(t.Sym("r"), (("r", Reading("place", (found["number"],))),))


def _doubtful(figure: LineGraph, reading: Reading) -> str:
    """Return that the line goes through a number on its way from one point to the next, too."""
    if reading.name == "place":
        number = int(reading.of[0])
        if any(min(a, b) < number < max(a, b) for (_, a), (_, b) in pairwise(figure.points)):
            return f"the line passes {number} between two of its points as well"
    return ""


def _sorts(figure: LineGraph) -> list[str]:
    return f"{figure.along} time point day month week year".casefold().split()


LINE_GRAPH = register_figure(
    FigureKind(
        "line graph",
        LineGraph,
        fault=_fault,
        drawing=_drawing,
        words=_words,
        printed=_printed,
        readings=_readings,
        read=_read,
        doubtful=_doubtful,
        wordings=(
            MISSING_POINT,
            Wording(
                r"(?:by )?how (?:much|many (?P<counted>\w+)) (?:did|does) the (?:number of )?"
                r"(?P<what>[\w’'-]+(?: [\w’'-]+)?) "
                rf"(?P<way>{_UP}|fall|drop|decrease|go down) (?:by )?(?:between|from) "
                rf"(?P<first>{PLACE}) (?:and|to) (?P<second>{PLACE})",
                _change,
            ),
            Wording(
                r"(?:at what|in which|on which) (?P<sort>\w+) (?:is|was) the "
                r"(?P<what>[\w’'-]+) \{(?P<number>\d{1,7})\}(?: (?P<unit>[\w°]+))?",
                _place,
            ),
            Wording(
                r"(?P<all>(?:how many|what (?:is|was)|which|(?:on|in|at|for) which|"
                r"at what|find|work out) .+)",
                _asked,
            ),
        ),
    )
)
