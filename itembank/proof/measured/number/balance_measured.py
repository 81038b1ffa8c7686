"""Measures a balance: which blocks stand over which pan of a level beam."""

from __future__ import annotations

from itembank.figures.drawing import Area, Drawing, Stroke, Text
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring


def _relations(drawing: Drawing) -> tuple[t.Relation, ...]:
    (beam,) = drawing.of("beam")
    pans = [mark for mark in drawing.of("pan") if isinstance(mark, Stroke)]
    if not isinstance(beam, Stroke) or len({point.y for point in beam.points}) != 1:
        raise NotExact("the balance is not level")
    if len(pans) != 2 or len({point.y for pan in pans for point in pan.points}) != 1:
        raise NotExact("the pans do not stand alike")
    level = pans[0].points[0].y
    sides: list[list[t.Node]] = [[], []]
    for mark in drawing.of("weight"):
        if not isinstance(mark, Text) or isinstance(mark.content, str):
            continue
        blocks = [b for b in drawing.of("block") if isinstance(b, Area) and _inside(b, mark)]
        if len(blocks) != 1 or min(point.y for point in blocks[0].points) < level:
            raise NotExact("a weight stands on no block")
        xs = [point.x for point in blocks[0].points]
        on = [
            n
            for n, pan in enumerate(sorted(pans, key=lambda pan: pan.points[0].x))
            if pan.points[0].x <= min(xs) and max(xs) <= pan.points[-1].x
        ]
        if len(on) != 1:
            raise NotExact("a block stands on no pan")
        sides[on[0]].append(mark.content)
    if not all(sides):
        raise NotExact("a pan is empty")
    left, right = (blocks[0] if len(blocks) == 1 else t.add(*blocks) for blocks in sides)
    return (t.equals(left, right),)


def _inside(block: Area, label: Text) -> bool:
    xs, ys = [p.x for p in block.points], [p.y for p in block.points]
    return min(xs) < label.at.x < max(xs) and min(ys) < label.at.y < max(ys)


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    raise NotExact("a balance shows no amount but by what is equal")


MEASURING = Measuring(_measure, _relations)
