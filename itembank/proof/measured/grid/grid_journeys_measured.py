"""Measures a distance–time graph: strokes of a path on the grid, in sympy's geometry."""

from __future__ import annotations

import re
from itertools import pairwise, product
from typing import Any

import sympy

from itembank.figures.drawing import Drawing, Text
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.value import NotExact
from itembank.proof.measured.grid.grid_places_measured import Scale, named_tracks
from itembank.proof.measured.measure import number_tree

JOURNEY_READINGS = frozenset(
    (
        *("distance at", "time at", "stopped", "stops", "travelled", "farthest", "speed"),
        *("time of meeting", "distance of meeting"),
    )
)

_AN_HOUR = {"hour": 1, "minute": 60, "second": 3600}
_LENGTHS = {"kilometres": "km", "metres": "m", "miles": "miles"}


def of_journeys(drawing: Drawing, scale: Scale, reading: Reading) -> t.Node:
    """Return what a reading of a journey comes to on a drawing; raises NotExact."""
    what, of = reading
    if what in ("time of meeting", "distance of meeting"):
        met = _meeting(*(_track(drawing, scale, name) for name in of))
        return number_tree(met.x if what == "time of meeting" else met.y)
    track = _track(drawing, scale, of[0])
    match what:
        case "distance at":
            return number_tree(_across(track, sympy.Rational(of[1])).y)
        case "time at":
            level = sympy.Line((0, sympy.Rational(of[1])), slope=0)
            return number_tree(
                _single(p for stretch in track for p in level.intersection(stretch)).x
            )
        case "stopped":
            (stop,) = _joined([stretch for stretch in track if stretch.p1.y == stretch.p2.y])
            return number_tree(stop[1] - stop[0])
        case "stops":
            return t.Int(
                len(_joined([stretch for stretch in track if stretch.p1.y == stretch.p2.y]))
            )
        case "travelled":
            return number_tree(sum(abs(stretch.p2.y - stretch.p1.y) for stretch in track))
        case "farthest":
            return number_tree(max(end.y for stretch in track for end in stretch.points))
    return number_tree(_speed(drawing, track, *of[1:]))


def _track(drawing: Drawing, scale: Scale, name: str) -> list[Any]:
    """Return the strokes of a journey as segments of time and distance."""
    paths = [
        mark
        for own, mark in named_tracks(drawing)
        if mark.role == "path" and (not name or own == name)
    ]
    if len(paths) != 1:
        raise NotExact("it does not show which journey is meant")
    track = [sympy.Segment(a, b) for a, b in pairwise(map(scale.at, paths[0].points))]
    if any(stretch.p1.x >= stretch.p2.x for stretch in track):
        raise NotExact("the journey does not go on in time")
    return track


def _single(points: Any) -> Any:
    found = {*points}
    if len(found) != 1 or not isinstance(point := found.pop(), sympy.Point):
        raise NotExact("it is not one place of the journey")
    return point


def _across(track: list[Any], time: Any) -> Any:
    upright = sympy.Line((time, 0), (time, 1))
    return _single(p for stretch in track for p in upright.intersection(stretch))


def _joined(level: list[Any]) -> list[tuple[Any, Any]]:
    """Return from when to when each stop lasts, of strokes that follow one another."""
    stops: list[tuple[Any, Any]] = []
    for stretch in level:
        if stops and stops[-1][1] == stretch.p1.x:
            stops[-1] = (stops[-1][0], stretch.p2.x)
        else:
            stops.append((stretch.p1.x, stretch.p2.x))
    return stops


def _meeting(first: list[Any], second: list[Any]) -> Any:
    return _single(p for here, there in product(first, second) for p in here.intersection(there))


def _speed(drawing: Drawing, track: list[Any], called: str, unit: str, time_unit: str) -> Any:
    """Return a speed, by the unit of time that stands along the axis."""
    titles = [
        str(mark.content)
        for role in ("x title", "y title")
        for mark in drawing.of(role)
        if isinstance(mark, Text)
    ]
    time, length = (re.findall(r"\((\w+)\)", title) for title in titles)
    if length != [_LENGTHS[unit]]:
        raise NotExact("its distances are in another unit")
    start, end = track[0].p1, track[-1].p2
    if called == "all the way":
        gone = sum(abs(piece.direction.y) for piece in track)
        steep = gone / (end.x - start.x)
    else:
        steep = abs(_of_stage(track, called).slope)
    # So many of the axis's units in an hour, and so many of those asked for.
    return steep * _AN_HOUR[time[0].removesuffix("s")] / _AN_HOUR[time_unit]


def _of_stage(track: list[Any], called: str) -> Any:
    """Return the straight line of a stage."""
    start, end = track[0].p1, track[-1].p2
    word, _, size = called.partition(" ")
    if word in ("first", "last"):
        turn = start.x + sympy.Rational(size) if word == "first" else end.x - sympy.Rational(size)
        if word == "first" and start.x != 0:
            raise NotExact("the journey does not start at nought")
        ends = (start if word == "first" else end, _across(track, turn))
        between = [
            p for stretch in track for p in stretch.points if min(ends[0].x, ends[1].x) < p.x
            and p.x < max(ends[0].x, ends[1].x)
        ]  # fmt: skip
        if not sympy.Point.is_collinear(*ends, *between):
            raise NotExact("the speed changes on the way")
        return sympy.Line(*ends)
    if called == "on the way back":
        back = [stretch for stretch in track if stretch.slope < 0]
        if end.y != 0 or not back or len({stretch.slope for stretch in back}) != 1:
            raise NotExact("it does not show one way back")
        return sympy.Line(back[0].p1, back[-1].p2)
    ((left, right),) = _joined([stretch for stretch in track if stretch.slope == 0])
    pieces = [
        stretch
        for stretch in track
        if (stretch.p2.x <= left if called == "before the stop" else stretch.p1.x >= right)
    ]
    if not pieces or len({piece.slope for piece in pieces}) != 1:
        raise NotExact("the speed changes on the way")
    return sympy.Line(pieces[0].p1, pieces[-1].p2)
