"""Measures a timetable: the cells between its lines, and which column a time stands in."""

from __future__ import annotations

import re
from typing import Any

import sympy

from itembank.figures.drawing import Drawing
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring
from itembank.proof.measured.table.table_grid import cells_of


def _row(grid: list[list[Any]], name: str) -> int:
    found = [place for place, row in enumerate(grid) if str(row[0]).casefold() == name.casefold()]
    if len(found) != 1:
        raise NotExact(f"the drawing has not one stop ‘{name}’")
    return found[0]


def _seconds(text: str) -> Any:
    """Return the seconds from midnight to a time as words have it."""
    found = re.fullmatch(r"(\d+)(?::(\d+))? ?(am|pm)?", text)
    if found is None:
        raise NotExact(f"‘{text}’ is no time of day")
    hour, half = sympy.Integer(found[1]), found[3]
    if half:
        hour = sympy.Mod(hour, 12) + (12 if half == "pm" else 0)
    return (hour * 60 + sympy.Integer(found[2] or 0)) * 60


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    names = ("time", "latest", "next", "arrival")
    if reading.name not in names or len(reading.of) != 3:
        raise NotExact("the drawing does not show it")
    grid = cells_of(drawing)
    if reading.name == "time":
        first, told, last = reading.of
    else:
        first, last, told = reading.of
    above, below = _row(grid, first), _row(grid, last)
    if below <= above:
        raise NotExact("the drawing has these stops the other way round")
    pairs = []
    for start, end in zip(grid[above][1:], grid[below][1:], strict=True):
        if isinstance(start, t.ClockTime) and isinstance(end, t.ClockTime):
            pairs.append((to_sympy(start), to_sympy(end), start, end))
        elif {type(start), type(end)} - {str, t.ClockTime}:
            raise NotExact("a time is missing from the drawing")
    at = _seconds(told)
    if reading.name == "time":
        return _only([end for left, _, _, end in pairs if left == at])
    if reading.name == "latest":
        # The last of all that are in time, wherever it stands in the table.
        kept = [pair for pair in pairs if pair[1] <= at]
        return _only([max(kept, key=lambda pair: pair[0])[2]] if kept else [])
    kept = [pair for pair in pairs if pair[0] > at]
    if not kept or any(pair[0] == at for pair in pairs):
        raise NotExact("the drawing has no one next bus")
    soonest = min(kept, key=lambda pair: pair[0])
    return soonest[2] if reading.name == "next" else soonest[3]


def _only(found: list[t.Node]) -> t.Node:
    if len(found) != 1:
        raise NotExact("the drawing has not one bus like that")
    return found[0]


MEASURING = Measuring(_measure)
