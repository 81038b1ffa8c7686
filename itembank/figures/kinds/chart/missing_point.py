"""How it is asked where the point that is missing on a line graph should stand.

*The point for Thursday is missing: at which number should it stand, if the depth rose by 4 cm from
Wednesday to Thursday?*

>>> from itembank.figures.kinds.chart.line_graph import LineGraph
>>> days = (("Tue", 16), ("Wed", 8), ("Thu", 0))
>>> graph = LineGraph(days, 4, 1, "Depth (cm)", "Day", missing="Thu")
>>> asked = "at which number should it stand, if the depth on Thu was twice that on Wed"
>>> found = re.fullmatch(MISSING_POINT.pattern, f"the point for Thu is missing: {asked}")
>>> from itembank.notation.line import line
>>> line(MISSING_POINT.asks(graph, found).target)
'2 × a'
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from itembank.figures.figure import Asked, FigureError, Reading, Wording, read
from itembank.figures.kinds.chart.chart_held import unit_names
from itembank.figures.kinds.chart.chart_names import folded, words_of
from itembank.notation import tree as t
from itembank.notation.value import exact

if TYPE_CHECKING:
    from itembank.figures.kinds.chart.line_graph import LineGraph

PLACE = r"\{?[\w :–’'-]{1,14}?\}?"
"""The name of a place, as a question has it."""
_IN = r"(?:on|in|at|for)"
_WHAT = r"(?:number of )?(?P<what>[a-z]+(?: [a-z]+)?)"
_NUMBER = r"\{(?P<number>\d{1,6})\}(?: (?P<unit>[\w°]+))?"
_UP = "rose|increased|grew|went up"
_WAY = rf"(?P<way>{_UP}|fell|decreased|dropped|went down)"
_FROM_TO = rf"(?:from|between) (?P<first>{PLACE}) (?:to|and) (?P<second>{PLACE})"
_TIMES = {"twice": 2, "three times": 3, "four times": 4}
_COUNTS = {"three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8}
_AS_MUCH = {"as much": 1, "twice as much": 2, "three times as much": 3}


def _change(graph: LineGraph, found: re.Match[str]) -> Asked:
    """Return what stands at one end of a change, from the other end."""
    first, second = _in_order(graph, found["first"], found["second"])
    known = _other(graph, first, second)
    rises, comes_after = _rises(found), known == first
    join = t.add if rises == comes_after else t.sub
    return Asked(join(t.Sym("a"), t.Int(int(found["number"]))), (("a", _value(known)),))


def _times(graph: LineGraph, found: re.Match[str]) -> Asked:
    """Return what stands at a place that has so many times as much as another, or half of it."""
    first, second = (_place(graph, found[name]) for name in ("first", "second"))
    if found["times"].casefold() == "half":
        first, second, count = second, first, 2
    else:
        count = _TIMES[found["times"].casefold()]
    known = _other(graph, first, second)
    join = t.times(t.Int(count), t.Sym("a"))
    if known == first:
        join = t.divide(t.Sym("a"), t.Int(count))
    return Asked(join, (("a", _value(known)),))


def _of_all(graph: LineGraph, found: re.Match[str]) -> Asked:
    """Return what is missing from the mean of all, or from the total of what is counted."""
    if _COUNTS[found["count"].casefold()] != len(graph.points):
        raise FigureError(f"it has not {found['count']} places")
    if found["places"].casefold() not in {f"{word}s" for word in words_of(graph.along)}:
        raise FigureError(f"its places are no ‘{found['places']}’")
    total: t.Node = t.Int(int(found["number"]))
    if found["all"].casefold() == "mean":
        total = t.times(t.Int(len(graph.points)), total)
    elif "(" in graph.counts or "number of" not in found[0].casefold():
        raise FigureError("what is measured on a line graph is not added up")
    drawn = [name for name, _ in graph.points if name != graph.missing]
    readings = tuple(zip("abcdefgh", map(_value, drawn), strict=False))
    return Asked(t.sub(total, *(t.Sym(letter) for letter, _ in readings)), readings)


def _like_change(graph: LineGraph, found: re.Match[str]) -> Asked:
    """Return what stands at the end of a change that is told by another change."""
    start, end = _in_order(graph, found["first"], found["second"])
    before, after = _in_order(graph, found["before"], found["after"])
    if end != graph.missing:
        raise FigureError("the point that is missing is to be at the end of the first change")
    low, high = (before, after) if _rises(found) else (after, before)
    apart = exact(read(graph, _value(high))) - exact(read(graph, _value(low)))
    if apart <= 0:
        raise FigureError(f"it did not go that way from {before} to {after}")
    change: t.Node = t.Bracket(t.sub(t.Sym("b"), t.Sym("c")))
    if (count := _AS_MUCH[found["times"].casefold()]) > 1:
        change = t.times(t.Int(count), change)
    join = t.add if _rises(found) else t.sub
    readings = (("a", _value(start)), ("b", _value(high)), ("c", _value(low)))
    return Asked(join(t.Sym("a"), change), readings)


_TOLD = (
    (rf"the {_WHAT} {_WAY} by {_NUMBER} {_FROM_TO}", _change),
    (
        rf"the {_WHAT} {_IN} (?P<first>{PLACE}) was (?P<times>half|{'|'.join(_TIMES)}) "
        rf"(?:that|the number) {_IN} (?P<second>{PLACE})",
        _times,
    ),
    (
        rf"the (?P<all>mean|total) {_WHAT} {_IN} the (?P<count>{'|'.join(_COUNTS)}) "
        rf"(?P<places>[a-z]+) (?:is|was) {_NUMBER}",
        _of_all,
    ),
    (
        rf"the {_WHAT} {_WAY} (?P<times>{'|'.join(_AS_MUCH)}) {_FROM_TO} as "
        rf"(?:from|between) (?P<before>{PLACE}) (?:to|and) (?P<after>{PLACE})",
        _like_change,
    ),
)
"""What tells where the missing point stands."""


def _missing(figure: LineGraph, found: re.Match[str]) -> Asked:
    if not figure.missing or _place(figure, found["name"]) != figure.missing:
        raise FigureError(f"the point for ‘{found['name']}’ is not missing")
    for pattern, asks in _TOLD:
        if told := re.fullmatch(pattern, found["told"], re.IGNORECASE):
            _measured(figure, told)
            asked = asks(figure, told)
            _on_axis(figure, asked)
            return asked
    raise FigureError(f"‘{found['told']}’ does not tell where the missing point stands")


def _measured(graph: LineGraph, told: re.Match[str]) -> None:
    """Hold what words measure, and their unit, to the title of the axis."""
    what = told["what"].casefold().split()
    if not {*what} <= words_of(graph.counts):
        raise FigureError(f"it does not show ‘{told['what']}’")
    unit = told.groupdict().get("unit")
    if unit and not unit_fits(graph, unit):
        raise FigureError(f"it is not marked in ‘{unit}’")


def unit_fits(graph: LineGraph, unit: str) -> bool:
    """Tell whether a graph is marked in a unit, as its scale is called: degrees too.

    >>> from itembank.figures.kinds.chart.line_graph import LineGraph
    >>> warmth = LineGraph((("Mon", 4), ("Tue", 8)), 4, counts="Temperature (°C)")
    >>> unit_fits(warmth, "degrees"), unit_fits(warmth, "cm")
    (True, False)
    """
    shown = re.search(r"\(([^()]*)\)", graph.counts)
    return shown is not None and unit.casefold() in unit_names(shown[1])


def _on_axis(graph: LineGraph, asked: Asked) -> None:
    """Hold the height of the missing point to the lines of the axis, where it can be drawn."""
    values: dict[t.Node, t.Node] = {
        t.Sym(letter): read(graph, reading) for letter, reading in asked.readings
    }
    height = exact(t.replaced(asked.target, values))
    # The axis ends at the numbered line on or above the highest of the points that are drawn.
    highest = max(value for name, value in graph.points if name != graph.missing)
    if not 0 <= height <= -(-highest // graph.scale) * graph.scale:
        raise FigureError(f"the axis does not reach {height}, where the point should stand")
    if height * graph.between % graph.scale != 0:
        raise FigureError(f"the point would stand at {height}, on no line of the axis")


def _rises(found: re.Match[str]) -> bool:
    return bool(re.fullmatch(_UP, found["way"], re.IGNORECASE))


def _place(graph: LineGraph, said: str) -> str:
    for name, _ in graph.points:
        if folded(name) == folded(said.strip("{}")):
            return name
    raise FigureError(f"it has no place ‘{said}’")


def _in_order(graph: LineGraph, first: str, second: str) -> tuple[str, str]:
    """Return two places, of which the second is to be later."""
    names = [name for name, _ in graph.points]
    a, b = _place(graph, first), _place(graph, second)
    if names.index(a) >= names.index(b):
        raise FigureError("a change is to be from a point to a later one")
    return a, b


def _other(graph: LineGraph, first: str, second: str) -> str:
    """Return which of two places is drawn; raises FigureError unless the other one is missing."""
    if graph.missing not in (first, second) or first == second:
        raise FigureError("what is told is to be of the missing point and another one")
    return second if first == graph.missing else first


def _value(name: str) -> Reading:
    return Reading("value", (name,))


MISSING_POINT = Wording(
    rf"the point (?:for|at|in|on) (?P<name>{PLACE}) is missing: at which number "
    r"(?:on the axis )?should it stand,? if (?P<told>.+)",
    _missing,
)
