"""Distance–time graphs: what a path on a grid says of a journey, and how it is asked about."""

from __future__ import annotations

import re
from fractions import Fraction
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

from itembank.figures.figure import FigureError, Reading
from itembank.figures.kinds.grid.grid_places import Place, corners_of, in_halves, number_at
from itembank.notation import tree as t

if TYPE_CHECKING:
    from itembank.figures.kinds.grid.coordinate_grid import CoordinateGrid

Of = tuple[str, ...]

TIME_TITLE = r"Time \((hours|minutes|seconds)\)"
DISTANCE_TITLE = r"Distance from ([a-z]+) \((km|m|miles)\)"
UNIT_NAMES = {"km": "kilometres", "m": "metres", "miles": "miles"}
SECONDS = {"hour": 3600, "minute": 60, "second": 1}


class Axes(NamedTuple):
    """What the axes say: the unit of time, the place that distances are from, and their unit."""

    time: str
    place: str
    unit: str


def axes_of(titles: tuple[str, str]) -> Axes:
    """Return what the titles of a distance–time graph say.

    Raises
    ------
    FigureError
        If they are not those of one.

    >>> axes_of(("Time (minutes)", "Distance from depot (km)"))
    Axes(time='minutes', place='depot', unit='kilometres')
    """
    time = re.fullmatch(TIME_TITLE, titles[0])
    distance = re.fullmatch(DISTANCE_TITLE, titles[1])
    if time is None or distance is None:
        raise FigureError(
            "its axes are to be called as in ‘Time (minutes)’ and ‘Distance from depot (km)’"
        )
    return Axes(time[1], distance[1], UNIT_NAMES[distance[2]])


def own_axes(figure: CoordinateGrid) -> Axes:
    """Return what the axes of a graph measure, by their titles."""
    return axes_of((figure.x_title, figure.y_title))


def journey(figure: CoordinateGrid, name: str) -> list[Place]:
    """Return where a journey starts, turns and ends: a path that goes on in time, never below 0."""
    own_axes(figure)
    found = [
        shape for shape in figure.shapes if not shape.closed and (not name or shape.name == name)
    ]
    if len(found) != 1:
        raise FigureError("it does not show which journey is meant")
    kept: list[Place] = []
    for here in corners_of(found[0]):
        if kept and here[0] <= kept[-1][0]:
            raise FigureError("a journey goes on in time")
        # Two pieces in one line are one stage.
        if len(kept) > 1 and steep(kept[-2], kept[-1]) == steep(kept[-1], here):
            kept.pop()
        kept.append(here)
    if kept[0][1] == kept[1][1] or kept[-1][1] == kept[-2][1]:
        raise FigureError("a journey starts and ends on the way, not with a stop")
    if kept[0][0] < 0 or any(y < 0 for _, y in kept):
        raise FigureError("a journey starts at nought or later, and no distance is below nought")
    return kept


def steep(a: Place, b: Place) -> Fraction:
    """Return how far a stage goes in one unit of time: below 0 where it comes back."""
    return (b[1] - a[1]) / (b[0] - a[0])


def _height(stages: list[Place], time: Fraction) -> Fraction:
    for a, b in pairwise(stages):
        if a[0] <= time <= b[0]:
            return a[1] + (time - a[0]) * steep(a, b)
    raise FigureError("the journey does not go on at that time")


def _read_at(figure: CoordinateGrid, place: Place) -> Place:
    if not in_halves(figure, place):
        raise FigureError("it is not read where squares, or halves of them, meet")
    return place


def _distance_at(figure: CoordinateGrid, of: Of) -> t.Node:
    name, time = of[0], Fraction(of[1])
    return number_at(_read_at(figure, (time, _height(journey(figure, name), time)))[1])


def _time_at(figure: CoordinateGrid, of: Of) -> t.Node:
    name, wanted = of[0], Fraction(of[1])
    found = set()
    for a, b in pairwise(journey(figure, name)):
        if a[1] == b[1] == wanted:
            raise FigureError("the journey stays at that distance")
        if a[1] != b[1] and min(a[1], b[1]) <= wanted <= max(a[1], b[1]):
            found.add(a[0] + (wanted - a[1]) / steep(a, b))
    if len(found) != 1:
        raise FigureError("the journey comes to that distance not at all, or more than once")
    return number_at(_read_at(figure, (found.pop(), wanted))[0])


def _level(stages: list[Place]) -> list[tuple[Place, Place]]:
    return [(a, b) for a, b in pairwise(stages) if a[1] == b[1]]


def _stopped(figure: CoordinateGrid, of: Of) -> t.Node:
    level = _level(journey(figure, of[0]))
    if len(level) != 1:
        raise FigureError("it does not show which stop is meant")
    return number_at(level[0][1][0] - level[0][0][0])


def _stops(figure: CoordinateGrid, of: Of) -> t.Node:
    return t.Int(len(_level(journey(figure, of[0]))))


def _travelled(figure: CoordinateGrid, of: Of) -> t.Node:
    return number_at(_way(journey(figure, of[0])))


def _way(stages: list[Place]) -> Fraction:
    return sum((abs(b[1] - a[1]) for a, b in pairwise(stages)), Fraction(0))


def _farthest(figure: CoordinateGrid, of: Of) -> t.Node:
    return number_at(max(y for _, y in journey(figure, of[0])))


def _stage(stages: list[Place], called: str) -> tuple[Place, Place]:
    """Return the two ends of a stage, by its words; only one that is travelled at one speed."""
    word, _, size = called.partition(" ")
    if word in ("first", "last"):
        if word == "first" and stages[0][0]:
            raise FigureError("the journey does not start at nought")
        start, end = stages[0][0], stages[-1][0]
        ends = (start, start + Fraction(size)) if word == "first" else (end - Fraction(size), end)
        for a, b in pairwise(stages):
            if a[0] <= ends[0] < ends[1] <= b[0]:
                low, high = ((x, _height([a, b], x)) for x in ends)
                return low, high
        raise FigureError("the speed changes on the way, or the journey is shorter")
    if called == "on the way back":
        if stages[-1][1] != 0 or sum(b[1] < a[1] for a, b in pairwise(stages)) != 1:
            raise FigureError("it does not show one way back")
        return stages[-2], stages[-1]
    if len(stages) != 4 or [a[1] == b[1] for a, b in pairwise(stages)] != [False, True, False]:
        raise FigureError("it does not show one stage before a stop and one after it")
    return (stages[0], stages[1]) if called == "before the stop" else (stages[2], stages[3])


def _speed(figure: CoordinateGrid, of: Of) -> t.Node:
    name, called, unit, per = of
    axes, stages = own_axes(figure), journey(figure, name)
    if unit != axes.unit:
        raise FigureError(f"its distances are not in {unit}")
    if called == "all the way":
        way, time = _way(stages), stages[-1][0] - stages[0][0]
    else:
        a, b = _stage(stages, called)
        way, time = abs(b[1] - a[1]), b[0] - a[0]
    return number_at(way / time * SECONDS[per] / SECONDS[axes.time.removesuffix("s")])


def meeting(figure: CoordinateGrid, of: Of) -> Place:
    """Return the one place where two journeys meet, read where squares or their halves meet."""
    first, second = (journey(figure, name) for name in of)
    found = set()
    for (a, b), (c, d) in ((here, there) for here in pairwise(first) for there in pairwise(second)):
        low, high = max(a[0], c[0]), min(b[0], d[0])
        if low > high:
            continue
        gaps = [_height([a, b], x) - _height([c, d], x) for x in (low, high)]
        if gaps[0] == gaps[1] == 0 and low < high:
            raise FigureError("the journeys go together for a while")
        # The one that was ahead is ahead no more, so they meet on the way.
        if min(gaps) <= 0 <= max(gaps):
            apart = gaps[0] - gaps[1]
            at = low + (gaps[0] / apart * (high - low) if apart else 0)
            found.add((at, _height([a, b], at)))
    if len(found) != 1:
        raise FigureError("the journeys do not meet once")
    return _read_at(figure, found.pop())


OF_JOURNEYS = {
    "distance at": _distance_at,
    "time at": _time_at,
    "stopped": _stopped,
    "stops": _stops,
    "travelled": _travelled,
    "farthest": _farthest,
    "speed": _speed,
    "time of meeting": lambda figure, of: number_at(meeting(figure, of)[0]),
    "distance of meeting": lambda figure, of: number_at(meeting(figure, of)[1]),
}
"""What is read of journeys; raises FigureError where it is not shown."""


def journeys_of(figure: CoordinateGrid) -> tuple[Reading, ...]:
    """Return what may be read of each path of a distance–time graph, shown or not."""
    try:
        axes = own_axes(figure)
    except FigureError:
        return ()
    paths = [shape for shape in figure.shapes if not shape.closed]
    found = [
        Reading(what, (shape.name,))
        for shape in paths
        for what in ("stopped", "stops", "travelled", "farthest")
    ]
    each_time = axes.time.removesuffix("s")
    found += [
        Reading("speed", (shape.name, called, axes.unit, each_time))
        for shape in paths
        for called in ("all the way", "before the stop", "after the stop", "on the way back")
    ]
    found += [
        Reading("distance at", (shape.name, str(x)))
        for shape in paths
        for x, _ in corners_of(shape)
    ]
    if len(paths) == 2:
        pair = (paths[0].name, paths[1].name)
        found += [Reading(what, pair) for what in ("time of meeting", "distance of meeting")]
    return tuple(found)
