"""Measures a growing pattern: tiles are counted where they stand, over each pattern's number."""

from __future__ import annotations

from itertools import pairwise
from typing import Any

import sympy

from itembank.figures.drawing import Arc, Area, Drawing, Mark, Text
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring


def _middle(mark: Mark) -> tuple[Any, Any]:
    if isinstance(mark, Arc):
        return sympy.Rational(mark.centre.x), sympy.Rational(mark.centre.y)
    assert isinstance(mark, Area)
    count = len(mark.points)
    return (
        sum(sympy.Rational(point.x) for point in mark.points) / count,
        sum(sympy.Rational(point.y) for point in mark.points) / count,
    )


def _counts(drawing: Drawing) -> list[int]:
    """Return how many tiles belong to each number: those that stand nearest over it."""
    numbers = {}
    for label in drawing.of("number"):
        if isinstance(label, Text) and isinstance(label.content, str):
            numbers[int(label.content.rpartition(" ")[2])] = sympy.Rational(label.at.x)
    tiles = [_middle(m) for m in drawing.marks if isinstance(m, Area | Arc)]
    if len({*tiles}) != len(tiles):
        raise NotExact("two tiles lie on each other")
    found = dict.fromkeys(numbers, 0)
    for x, _ in tiles:
        near = sorted(numbers, key=lambda n: abs(numbers[n] - x))
        found[near[0]] += 1
    if sorted(found) != list(range(1, len(found) + 1)):
        raise NotExact("the patterns are not numbered 1, 2, 3")
    return [found[number] for number in sorted(found)]


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    counts = _counts(drawing)
    gaps = {b - a for a, b in pairwise(counts)}
    if len(gaps) != 1:
        raise NotExact("the patterns do not grow by the same number")
    n = sympy.Symbol("n")
    rule = sympy.interpolate(list(enumerate(counts, 1)), n)
    if reading.name == "tiles":
        return t.Int(int(rule.subs(n, int(reading.of[0]))))
    if reading.name == "pattern":
        (found,) = sympy.solve(rule - int(reading.of[0]), n)
        if found.is_Integer and found >= 1:
            return t.Int(int(found))
    if reading == Reading("nth term"):
        slope, rest = sympy.Poly(rule, n).all_coeffs()
        term: t.Node = t.Product(t.Int(int(slope)), (("×", t.Sym("n")),))
        return t.add(term, t.num(int(rest)))
    raise NotExact("the drawing does not show it")


MEASURING = Measuring(_measure)
