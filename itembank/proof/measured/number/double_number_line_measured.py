"""Measures a double number line: each line's scale from the amounts at its marks."""

from __future__ import annotations

from itertools import pairwise

import sympy

from itembank.figures.drawing import Drawing, Stroke, Text
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring, amount_tree


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    if reading.name != "amount":
        raise NotExact("the drawing does not show it")
    rows = {role: _ticks(drawing, role) for role in ("over", "under")}
    if rows["over"] != rows["under"]:
        raise NotExact("the marks of the two lines do not stand over each other")
    amount = None
    # Both lines are held to their scale, also the one that the letter does not stand on.
    for role, ticks in rows.items():
        found = None
        scales, like = set(), None
        for mark in drawing.of(role):
            if not isinstance(mark, Text) or isinstance(mark.content, str):
                continue
            x = sympy.Rational(mark.at.x)
            if x not in ticks:
                raise NotExact("an amount stands at no mark")
            if mark.content == t.Sym(reading.of[0]):
                found = x
            elif x != ticks[0] and not isinstance(mark.content, t.Sym):
                like = mark.content
                scales.add(to_sympy(mark.content) / (x - ticks[0]))
            elif x == ticks[0] and to_sympy(mark.content) != 0:
                raise NotExact("a line does not begin at 0")
        if len(scales) != 1 or like is None:
            raise NotExact("the amounts of a line do not keep step")
        if found is not None:
            amount = amount_tree(scales.pop() * (found - ticks[0]), like)
    if amount is None:
        raise NotExact("the drawing does not show it")
    return amount


def _ticks(drawing: Drawing, role: str) -> list[sympy.Rational]:
    ticks = sorted(
        sympy.Rational(mark.points[0].x)
        for mark in drawing.of(f"{role} tick")
        if isinstance(mark, Stroke) and mark.points[0].x == mark.points[-1].x
    )
    if len({b - a for a, b in pairwise(ticks)}) != 1:
        raise NotExact("the steps of a line are not equal")
    return ticks


MEASURING = Measuring(_measure)
