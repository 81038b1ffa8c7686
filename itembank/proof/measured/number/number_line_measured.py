"""Measures a number line: places between the numbers that stand under it."""

from __future__ import annotations

from typing import Any

import sympy

from itembank.figures.drawing import Arc, Drawing, Stroke, Text
from itembank.figures.figure import Reading
from itembank.figures.kinds.number.line_span import MOST_LISTED
from itembank.notation import tree as t
from itembank.notation.parse import parse_written
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring, number_tree


def _scale(drawing: Drawing) -> tuple[list[Any], list[tuple[Any, Any]]]:
    """Return where the marks stand, and the numbers under them with theirs."""
    ticks = [
        sympy.Rational(mark.points[0].x)
        for mark in drawing.of("tick")
        if isinstance(mark, Stroke) and mark.points[0].x == mark.points[-1].x
    ]
    numbers = []
    for mark in drawing.of("number"):
        if isinstance(mark, Text) and not isinstance(mark.content, str):
            x = sympy.Rational(mark.at.x)
            # A number a little off its mark reads as one of its neighbours, so near is not enough.
            if x not in ticks:
                raise NotExact("a number stands under no mark of the line")
            numbers.append((x, to_sympy(mark.content)))
    # One number fixes no scale: every mark could be worth anything.
    if len(numbers) < 2:
        raise NotExact("the line shows fewer than two numbers")
    (x0, low), *others = sorted(numbers, key=lambda pair: pair[0])
    # From the ends, so that each number between is held to the two that are farthest apart.
    step = (others[-1][1] - low) / (others[-1][0] - x0)
    if any(low + (x - x0) * step != value for x, value in others):
        raise NotExact("the numbers do not stand where they belong")
    gaps = {b - a for a, b in zip(sorted(ticks), sorted(ticks)[1:], strict=False)}
    if len(gaps) != 1:
        raise NotExact("the steps of the line are not equal")
    return sorted(ticks), sorted(numbers, key=lambda pair: pair[0])


def _points(drawing: Drawing) -> dict[str, Any]:
    """Return the value at which each lettered pointer points."""
    ticks, numbers = _scale(drawing)
    (x0, low), (x1, high) = numbers[0], numbers[-1]
    pointers = [mark for mark in drawing.of("pointer") if isinstance(mark, Stroke)]
    found = {}
    for mark in drawing.of("point"):
        if isinstance(mark, Text) and isinstance(mark.content, str):
            # An arrow is a letter's where it begins over it; where it points is what is measured.
            tip = next((p.points[-1].x for p in pointers if p.points[0].x == mark.at.x), None)
            if tip is None:
                raise NotExact(f"no arrow goes from {mark.content}")
            x = sympy.Rational(tip)
            if x not in ticks:
                raise NotExact(f"{mark.content} points beside the marks of the line")
            found[mark.content] = low + (x - x0) * (high - low) / (x1 - x0)
    return found


def _span(drawing: Drawing) -> list[tuple[Any, bool, str]]:
    """Return the ends of the span: the number, whether it counts, and on which side it lies."""
    ticks, numbers = _scale(drawing)
    (x0, low), (x1, high) = numbers[0], numbers[-1]
    strokes = [mark for mark in drawing.of("span") if isinstance(mark, Stroke)]
    circles = [mark for mark in drawing.of("end of span") if isinstance(mark, Arc)]
    if len(strokes) != 1 or not 1 <= len(circles) <= 2:
        raise NotExact("the drawing shows no span")
    (stroke,) = strokes
    tips = sorted(sympy.Rational(point.x) for point in (stroke.points[0], stroke.points[-1]))
    if (stroke.arrow == "end") != (len(circles) == 1):
        raise NotExact("an end of the span has neither a circle nor an arrow")
    found = []
    for circle in circles:
        x, radius = sympy.Rational(circle.centre.x), sympy.Rational(circle.radius)
        if x not in ticks or circle.fill not in ("ink", "paper") or not circle.whole:
            raise NotExact("a circle of the span stands at no mark")
        if {point.y for point in stroke.points} != {circle.centre.y}:
            raise NotExact("the span does not lie level with its circles")
        # The stroke stops at the rim: through an open circle it would read as a closed one.
        if x + radius == tips[0]:
            side = "low"
        elif x - radius == tips[1]:
            side = "high"
        else:
            raise NotExact("the span does not end at its circles")
        value = low + (x - x0) * (high - low) / (x1 - x0)
        found.append((value, circle.fill == "ink", side))
    if len(circles) == 1:
        ((_, _, side),) = found
        tip = sympy.Rational(stroke.points[-1].x)
        # An arrow goes away from its circle, or the span would hold the numbers it leaves out.
        if (tip == tips[1]) != (side == "low"):
            raise NotExact("the arrow of the span points to its circle")
    return found


def _of_span(drawing: Drawing, reading: Reading) -> t.Node:
    ends = {side: (value, counts) for value, counts, side in _span(drawing)}
    low, high = ends.get("low"), ends.get("high")
    if reading.name == "inequality":
        x = t.Sym(reading.of[0])
        if low and high:
            signs: list[t.RelationOp] = ["≤" if counts else "<" for _, counts in (low, high)]
            return t.Relation(
                number_tree(low[0]), ((signs[0], x), (signs[1], number_tree(high[0])))
            )
        if low:
            return t.relate(x, "≥" if low[1] else ">", number_tree(low[0]))
        assert high
        return t.relate(x, "≤" if high[1] else "<", number_tree(high[0]))
    domain = sympy.Interval(
        low[0] if low else -sympy.oo,
        high[0] if high else sympy.oo,
        left_open=not (low and low[1]),
        right_open=not (high and high[1]),
    )
    whole = sympy.Intersection(domain, sympy.S.Integers)
    if whole is sympy.S.EmptySet:
        raise NotExact("no integer is under the line")
    if reading == Reading("least integer") and low:
        return number_tree(sympy.Integer(whole.inf))
    if reading == Reading("greatest integer") and high:
        return number_tree(sympy.Integer(whole.sup))
    if reading == Reading("integers") and low and high and whole.sup - whole.inf < MOST_LISTED:
        return t.Listing(tuple(map(number_tree, sorted(whole))))
    raise NotExact("the drawing does not show it")


def _jump(drawing: Drawing, reading: Reading) -> t.Node:
    """Return where a jump's arrow lands, or how long it is; it starts and ends over marks."""
    ticks, numbers = _scale(drawing)
    (x0, low), (x1, high) = numbers[0], numbers[-1]
    strokes = [mark for mark in drawing.of("jump") if isinstance(mark, Stroke)]
    place = int(reading.of[0]) - 1
    if not 0 <= place < len(strokes) or strokes[place].arrow != "end":
        raise NotExact("the drawing shows no such jump")
    start, end = (sympy.Rational(strokes[place].points[at].x) for at in (0, -1))
    # Its length is told by the marks under its ends, so it has to stand over some.
    if start not in ticks or end not in ticks:
        raise NotExact("a jump goes from, or to, a place beside the marks of the line")
    scale = (high - low) / (x1 - x0)
    if reading.name == "jump size":
        return number_tree(abs(end - start) * scale)
    return number_tree(low + (end - x0) * scale)


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    if reading == Reading("step"):
        ticks, numbers = _scale(drawing)
        (x0, low), (x1, high) = numbers[0], numbers[-1]
        return number_tree((ticks[1] - ticks[0]) * (high - low) / (x1 - x0))
    if reading.name in ("jump end", "jump size"):
        return _jump(drawing, reading)
    if reading.name == "inequality" or "integer" in reading.name:
        return _of_span(drawing, reading)
    points = _points(drawing)
    if reading.name == "number" and reading.of[0].upper() in points:
        return number_tree(points[reading.of[0].upper()])
    if reading.name == "letter":
        wanted = to_sympy(parse_written(reading.of[0]))
        for name, value in points.items():
            if value == wanted:
                return t.Label(name)
    raise NotExact("the drawing does not show it")


MEASURING = Measuring(_measure)
