"""Measures a pie chart: the turn of each sector, held to the angle that is printed beside it."""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Any

import sympy

from itembank.figures.drawing import Arc, Drawing, Point, Stroke, Text
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring, number_tree

_NEAR = 1e-3
"""A place on the circle is off by less than this many degrees."""


def _way(point: Point, centre: Point) -> float:
    """Return the direction of a point, in degrees anticlockwise from the right."""
    x, y = sympy.Rational(point.x - centre.x), sympy.Rational(point.y - centre.y)
    return float((sympy.atan2(y, x) * 180 / sympy.pi).evalf(15)) % 360


def _degrees(arc: Arc) -> int:
    turn = (_way(arc.end, arc.centre) - _way(arc.start, arc.centre)) % 360
    # Points on a circle are fractions near the true ones, so that a turn is whole only nearly.
    if abs(turn - round(turn)) > _NEAR:
        raise NotExact("the angle of a sector is no whole number of degrees")
    return round(turn)


class _Sector:
    """A sector as it is drawn: its turn, its name, and the angle that is printed, if any."""

    def __init__(self, arc: Arc, drawing: Drawing) -> None:
        self.degrees = _degrees(arc)
        pointers = [m for m in drawing.of("pointer") if isinstance(m, Stroke) and _in(arc, m)]
        if len(pointers) != 1:
            raise NotExact("a sector has not one pointer to its name")
        end = pointers[0].points[-1]
        self.name = str(_beside(drawing, "name", end))
        self.printed = _beside(drawing, "angle", end)
        corners = [m for m in drawing.of("right angle") if isinstance(m, Stroke) and _in(arc, m)]
        # A square corner says 90° without a number, and has to be so in the drawing twice over.
        if corners:
            a, _, b = (sympy.Point(*map(sympy.Rational, point)) for point in corners[0].points)
            centre = sympy.Point(*map(sympy.Rational, arc.centre))
            if abs(float((a - centre).dot(b - centre))) > 1e-4 or self.degrees != 90:
                raise NotExact("a right angle is marked where there is none")
            if self.printed is not None:
                raise NotExact("a right angle has another angle printed")
            self.printed = t.Quantity(t.Int(90), "°")
        if not isinstance(self.printed, t.Quantity) or self.printed.unit != "°":
            raise NotExact(f"no angle stands at ‘{self.name}’")
        # An angle with a letter is what is asked for: what is drawn may not answer it here.
        if not t.symbols(self.printed) and to_sympy(self.printed.amount) != self.degrees:
            raise NotExact(f"the angle of ‘{self.name}’ is drawn as {self.degrees}°")


def _in(arc: Arc, stroke: Stroke) -> bool:
    """Tell whether the middle of a stroke lies in the turn of a sector."""
    point = stroke.points[len(stroke.points) // 2]
    start = _way(arc.start, arc.centre)
    return 0 < (_way(point, arc.centre) - start) % 360 < (_way(arc.end, arc.centre) - start) % 360


def _beside(drawing: Drawing, role: str, end: Point) -> Any:
    """Return what the label says that stands at the end of a pointer, else None."""
    near = [
        (float(abs(sympy.Rational(mark.at.y - end.y))), mark.content)
        for mark in drawing.of(role)
        if isinstance(mark, Text)
        and abs(mark.at.x - end.x) < sympy.Rational(1, 5)
        and abs(mark.at.y - end.y) < sympy.Rational(3, 2)
    ]
    return min(near, key=lambda pair: pair[0])[1] if near else None


@lru_cache(maxsize=64)
def _sectors(drawing: Drawing) -> tuple[_Sector, ...]:
    arcs = [mark for mark in drawing.of("sector") if isinstance(mark, Arc)]
    if len({(arc.centre, arc.radius) for arc in arcs}) != 1:
        raise NotExact("the sectors are not of one circle")
    found = tuple(_Sector(arc, drawing) for arc in arcs)
    ends = {arc.end for arc in arcs}
    # Neither is enough by itself: sectors may overlap and still come to 360°.
    if sum(sector.degrees for sector in found) != 360 or ends != {arc.start for arc in arcs}:
        raise NotExact("the sectors do not fill the circle")
    if len({sector.name for sector in found}) != len(found):
        raise NotExact("two sectors have one name")
    return found


def _total(drawing: Drawing) -> Any:
    for mark in drawing.of("total"):
        number = re.search(r"\d+", str(mark.content)) if isinstance(mark, Text) else None
        if number:
            return sympy.Integer(number[0])
    raise NotExact("the drawing does not say how many there are in all")


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    sectors = _sectors(drawing)
    if reading == Reading("total"):
        return number_tree(_total(drawing))
    if reading == Reading("each"):
        return t.Quantity(number_tree(360 / _total(drawing)), "°")
    if reading.name in ("largest", "smallest"):
        order = sorted(
            sectors, key=lambda sector: sector.degrees, reverse=reading.name == "largest"
        )
        # Of two that are equally large neither is the largest, whatever the data says.
        if order[0].degrees != order[1].degrees:
            return t.Label(order[0].name)
    for sector in sectors:
        if [sector.name.casefold()] == [name.casefold() for name in reading.of]:
            part = sympy.Rational(sector.degrees, 360)
            if reading.name == "angle":
                return t.Quantity(t.Int(sector.degrees), "°")
            if reading.name == "fraction":
                return number_tree(part)
            if reading.name == "value":
                return number_tree(part * _total(drawing))
    raise NotExact("the drawing does not show it")


def _relations(drawing: Drawing) -> tuple[t.Relation, ...]:
    sizes = [sector.printed.amount for sector in _sectors(drawing)]
    if not any(t.symbols(size) for size in sizes):
        return ()
    return (t.equals(t.add(*sizes), t.Int(360)),)


MEASURING = Measuring(_measure, _relations)
