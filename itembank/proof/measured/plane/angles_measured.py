"""Measures angles: which rays leave each crossing, which lie in a line, and what stands between."""

from __future__ import annotations

import math
from functools import lru_cache
from itertools import combinations
from typing import Any

import sympy

from itembank.figures.drawing import Drawing, Stroke, Text
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring, number_tree
from itembank.proof.measured.plane.measured_equations import Settled, unit_of_letters

Spot = tuple[Any, Any]


def _spot(point: tuple[Any, Any]) -> Spot:
    return sympy.Rational(point[0]), sympy.Rational(point[1])


def _crossed(a: Spot, b: Spot) -> Any:
    return a[0] * b[1] - a[1] * b[0]


def _step(a: Spot, b: Spot) -> Spot:
    return b[0] - a[0], b[1] - a[1]


class Crossing:
    """A point from which rays go: their directions in order, anticlockwise."""

    def __init__(self, at: Spot, rays: list[Spot], name: int) -> None:
        self.at, self.name = at, name
        self.rays = sorted(rays, key=lambda way: math.atan2(float(way[1]), float(way[0])))
        self.labels: dict[int, Any] = {}

    def holds(self, place: Spot) -> int:
        """Return between which ray and the next a place lies."""
        way = _step(self.at, place)
        here = math.atan2(float(way[1]), float(way[0]))
        turns = [math.atan2(float(ray[1]), float(ray[0])) for ray in self.rays]
        return max((k for k, turn in enumerate(turns) if turn <= here), default=len(turns) - 1)

    def angle(self, k: int) -> Any:
        """Return the angle after a ray: what stands there, or an unknown."""
        k %= len(self.rays)
        return self.labels.get(k, sympy.Symbol(f"a{self.name}_{k}"))

    def equations(self) -> list[Any]:
        """Return that all angles make 360, and those between rays in a line 180."""
        n = len(self.rays)
        out = [sum(self.angle(k) for k in range(n)) - 360]
        for i, j in combinations(range(n), 2):
            a, b = self.rays[i], self.rays[j]
            if _crossed(a, b) == 0 and a[0] * b[0] + a[1] * b[1] < 0:
                out.append(sum(self.angle(k) for k in range(i, j)) - 180)
                out.append(sum(self.angle(k) for k in range(j, n + i)) - 180)
        return out


class Plan:
    """The crossings of a drawing with their labels."""

    def __init__(self, drawing: Drawing) -> None:
        lines = [
            (_spot(mark.points[0]), _spot(mark.points[-1]), mark.role)
            for mark in (*drawing.of("line"), *drawing.of("ray"))
            if isinstance(mark, Stroke)
        ]
        places = {
            at for (a, b, _), (c, d, _) in combinations(lines, 2) if (at := _meet(a, b, c, d))
        }
        self.crossings = []
        for name, at in enumerate(sorted(places)):
            rays = [
                _step(at, end)
                for a, b, _ in lines
                if _crossed(_step(a, b), _step(a, at)) == 0
                for end in (a, b)
                if end != at
            ]
            self.crossings.append(Crossing(at, rays, name))
        if not self.crossings:
            raise NotExact("no lines meet")
        for mark in drawing.of("right angle"):
            if isinstance(mark, Stroke):
                self._put(mark.points[1], sympy.Integer(90))
        self.trees: list[t.Node] = []
        for mark in drawing.of("angle label"):
            if isinstance(mark, Text) and not isinstance(mark.content, str):
                self._put(mark.at, to_sympy(mark.content))
                self.trees.append(mark.content)
        self.settled = Settled(self._equations(len(drawing.of("arrowhead"))))

    def _put(self, point: tuple[Any, Any], value: Any) -> None:
        place = _spot(point)
        near = min(
            self.crossings,
            key=lambda crossing: sum(part**2 for part in _step(crossing.at, place)),
        )
        k = near.holds(place)
        if k in near.labels:
            raise NotExact("two labels stand in one angle")
        near.labels[k] = value

    def _equations(self, heads: int) -> list[Any]:
        out = [equation for crossing in self.crossings for equation in crossing.equations()]
        if len(self.crossings) == 2 and heads == 2:
            first, other = self.crossings
            for k, ray in enumerate(first.rays):
                for j, also in enumerate(other.rays):
                    if _crossed(ray, also) == 0 and ray[0] * also[0] + ray[1] * also[1] > 0:
                        after = first.rays[(k + 1) % len(first.rays)]
                        too = other.rays[(j + 1) % len(other.rays)]
                        if _crossed(after, too) == 0:
                            out.append(first.angle(k) - other.angle(j))
        return out

    def check(self) -> None:
        """Refuse a drawing whose right angle is none."""
        for crossing in self.crossings:
            for k, label in crossing.labels.items():
                if label == 90:
                    a, b = crossing.rays[k], crossing.rays[(k + 1) % len(crossing.rays)]
                    if a[0] * b[0] + a[1] * b[1] != 0:
                        raise NotExact("a right angle is not drawn as one")


def _meet(a: Spot, b: Spot, c: Spot, d: Spot) -> Spot | None:
    """Return where two segments meet, if they do."""
    first, second = _step(a, b), _step(c, d)
    bottom = _crossed(first, second)
    if bottom == 0:
        return a if a in (c, d) else b if b in (c, d) else None
    s = _crossed(_step(a, c), second) / bottom
    u = _crossed(_step(a, c), first) / bottom
    return (a[0] + s * first[0], a[1] + s * first[1]) if 0 <= s <= 1 and 0 <= u <= 1 else None


@lru_cache(maxsize=128)
def _plan(drawing: Drawing) -> Plan:
    plan = Plan(drawing)
    plan.check()
    return plan


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    plan = _plan(drawing)
    if reading.name == "angle" and t.Sym(reading.of[0]) in plan.trees:
        value = plan.settled.value(sympy.Symbol(reading.of[0], real=True))
        if value is not None:
            return t.Quantity(number_tree(value), "°")
    raise NotExact("the drawing does not show it")


def _relations(drawing: Drawing) -> tuple[t.Relation, ...]:
    plan = _plan(drawing)
    return plan.settled.relations(unit_of_letters(plan.trees, "°"))


MEASURING = Measuring(_measure, _relations)
