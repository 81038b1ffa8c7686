"""Planted lies: drawings of which one mark says something else, and whether that is found out."""

from __future__ import annotations

import dataclasses
from fractions import Fraction
from typing import Any

from itembank.figures.drawing import Arc, Area, Drawing, Mark, Stroke, Text
from itembank.figures.figure import Figure, drawn, kind_of, read
from itembank.notation import tree as t
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import measuring


def places(drawing: Drawing, role: str) -> list[int]:
    """Return where the marks of a role stand among all marks."""
    found = [at for at, mark in enumerate(drawing.marks) if mark.role == role]
    assert found, f"no mark is a {role}"
    return found


def changed(drawing: Drawing, at: int, mark: Mark | None) -> Drawing:
    """Return a drawing with another mark at a place, or none there."""
    marks = list(drawing.marks)
    marks[at : at + 1] = [] if mark is None else [mark]
    return dataclasses.replace(drawing, marks=tuple(marks))


def relabelled(figure: Figure, role: str, content: t.Node | str, which: int = 0) -> Drawing:
    """Return the drawing of a figure with another text on one of its labels."""
    made = drawn(figure)
    at = places(made, role)[which]
    mark = made.marks[at]
    assert isinstance(mark, Text)
    return changed(made, at, dataclasses.replace(mark, content=content))


def swapped(figure: Figure, role: str, first: int = 0, second: int = 1) -> Drawing:
    """Return the drawing of a figure with the texts of two labels changed over."""
    made = drawn(figure)
    one_at, other_at = (places(made, role)[which] for which in (first, second))
    left, right = made.marks[one_at], made.marks[other_at]
    assert isinstance(left, Text)
    assert isinstance(right, Text)
    half = changed(made, one_at, dataclasses.replace(left, content=right.content))
    return changed(half, other_at, dataclasses.replace(right, content=left.content))


def without(figure: Figure, role: str, which: int = 0) -> Drawing:
    """Return the drawing of a figure with one mark left out."""
    made = drawn(figure)
    return changed(made, places(made, role)[which], None)


def moved(figure: Figure, role: str, x: Fraction, y: Fraction, which: int = 0) -> Drawing:
    """Return the drawing of a figure with one mark moved."""
    made = drawn(figure)
    at = places(made, role)[which]
    return changed(made, at, _moved(made.marks[at], x, y))


def stretched(figure: Figure, role: str, by: Fraction, which: int = 0) -> Drawing:
    """Return the drawing of a figure with one area as many times as high."""
    made = drawn(figure)
    at = places(made, role)[which]
    mark = made.marks[at]
    assert isinstance(mark, Area)
    corners = tuple(point._replace(y=point.y * by) for point in mark.points)
    return changed(made, at, dataclasses.replace(mark, points=corners))


def _moved(mark: Mark, x: Fraction, y: Fraction) -> Mark:
    def shift(point: Any) -> Any:
        return point._replace(x=point.x + x, y=point.y + y)

    if isinstance(mark, Stroke | Area):
        return dataclasses.replace(mark, points=tuple(map(shift, mark.points)))
    if isinstance(mark, Arc):
        ends = {"start": shift(mark.start), "end": shift(mark.end)}
        return dataclasses.replace(mark, centre=shift(mark.centre), **ends)
    assert isinstance(mark, Text)
    return dataclasses.replace(mark, at=shift(mark.at))


def found_out(figure: Figure, false: Drawing) -> bool:
    """Tell whether what is measured on a drawing is not what a figure says."""
    how = measuring(figure)
    for reading in kind_of(figure).readings(figure):
        try:
            if not _same(how.measure(false, reading), read(figure, reading)):
                return True
        except (NotExact, t.NotationError):
            return True
    said = kind_of(figure).relations(figure)
    try:
        return {_gap(relation) for relation in how.relations(false)} != {
            _gap(relation) for relation in said
        }
    except (NotExact, t.NotationError):
        return True


def _same(found: t.Node, said: t.Node) -> bool:
    if isinstance(found, t.Label) or isinstance(said, t.Label):
        return found == said
    return bool(to_sympy(found) == to_sympy(said))


def _gap(relation: t.Relation) -> Any:
    return (to_sympy(relation.first) - to_sympy(relation.rest[0][1])).expand()
