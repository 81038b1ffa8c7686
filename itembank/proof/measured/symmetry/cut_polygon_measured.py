"""Measures a regular polygon in triangles: it is turned and reflected about its middle."""

from __future__ import annotations

from itembank.figures.drawing import Area, Drawing
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring
from itembank.proof.measured.symmetry.symmetry_measured import lines_and_order, places_of


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    which = {Reading("lines of symmetry"): 0, Reading("order of rotation"): 1}.get(reading)
    areas = [mark for mark in drawing.marks if isinstance(mark, Area)]
    if which is None or not areas:
        raise NotExact("the drawing does not show it")
    return t.Int(lines_and_order(places_of(areas))[which])


MEASURING = Measuring(_measure)
