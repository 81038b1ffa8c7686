"""Measures a pattern of squares: its squares are turned and reflected about its middle."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

from itembank.figures.drawing import Area, Drawing, Text
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring, area_of
from itembank.proof.measured.symmetry.symmetry_measured import lines_and_order, places_of


def _squares(drawing: Drawing) -> list[Area]:
    found = [mark for mark in drawing.marks if isinstance(mark, Area)]
    if len({area_of(area.points) for area in found}) != 1:
        raise NotExact("the squares are not equal")
    return found


def _both(squares: list[Area]) -> tuple[tuple[int, int], tuple[int, int]]:
    """Return what the whole pattern has, and what its shaded squares have alone."""
    dark = [square for square in squares if square.fill != "none"]
    return lines_and_order(places_of(squares)), lines_and_order(places_of(dark))


@lru_cache(maxsize=64)
def _with_each_letter(drawing: Drawing) -> dict[str, tuple[tuple[int, int], tuple[int, int]]]:
    """Return what the pattern has, whole and alone, where the square of a letter is shaded too."""
    squares = _squares(drawing)
    found = {}
    for label in drawing.of("letter"):
        if not isinstance(label, Text) or not isinstance(label.content, str):
            continue
        (holds,) = [
            place
            for place, square in enumerate(squares)
            if min(p.x for p in square.points) < label.at.x < max(p.x for p in square.points)
            and min(p.y for p in square.points) < label.at.y < max(p.y for p in square.points)
        ]
        dark = [
            replace(area, fill="shade") if place == holds else area
            for place, area in enumerate(squares)
        ]
        found[label.content] = _both(dark)
    return found


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    which = {"lines of symmetry": 0, "order of rotation": 1}.get(reading.name)
    if which is not None and not reading.of:
        whole, alone = _both(_squares(drawing))
        if whole != alone:
            raise NotExact("its shaded squares have another symmetry alone")
        return t.Int(whole[which])
    which = {"square for lines": 0, "square for order": 1}.get(reading.name)
    if which is None or len(reading.of) != 1:
        raise NotExact("the drawing does not show it")
    wanted = int(reading.of[0])
    tried = _with_each_letter(drawing)
    fitting = [
        name for name, places in tried.items() if wanted in (places[0][which], places[1][which])
    ]
    if len(fitting) != 1 or tried[fitting[0]][0] != tried[fitting[0]][1]:
        raise NotExact("no single square makes it so")
    return t.Label(fitting[0])


MEASURING = Measuring(_measure)
