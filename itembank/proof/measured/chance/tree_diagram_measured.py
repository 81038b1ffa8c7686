"""Measures a tree diagram: each branch has the probability that is nearest to it."""

from __future__ import annotations

from functools import lru_cache
from typing import Any, NamedTuple

import sympy

from itembank.figures.drawing import Drawing, Stroke, Text, text_box
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring, number_tree


class _Way(NamedTuple):
    """A branch as it is drawn: its ends, what stands at its tip, and the probability on it."""

    start: Any
    tip: Any
    outcome: str
    chance: Any


def _place(point: Any) -> Any:
    return sympy.Point(*map(sympy.Rational, point))


def _middle(label: Text) -> Any:
    box = text_box(label)
    return _place(((box.left + box.right) / 2, (box.bottom + box.top) / 2))


def _gap(here: Any, other: Any) -> Any:
    return (here.x - other.x) ** 2 + (here.y - other.y) ** 2


def _away(at: Any, start: Any, tip: Any) -> Any:
    """Return the square of how far a place is from a branch."""
    whole = _gap(start, tip)
    if not whole:
        raise NotExact("a branch goes nowhere")
    along = ((at.x - start.x) * (tip.x - start.x) + (at.y - start.y) * (tip.y - start.y)) / whole
    along = min(max(along, sympy.Integer(0)), sympy.Integer(1))
    return _gap(start + (tip - start) * along, at)


@lru_cache(maxsize=64)
def _ways(drawing: Drawing) -> list[_Way]:
    strokes = [
        (_place(mark.points[0]), _place(mark.points[-1]))
        for mark in drawing.of("branch")
        if isinstance(mark, Stroke)
    ]
    outcomes = [mark for mark in drawing.of("outcome") if isinstance(mark, Text)]
    chances: dict[int, Any] = {}
    for mark in drawing.of("chance"):
        if isinstance(mark, Text) and not isinstance(mark.content, str):
            at = _middle(mark)
            gaps = [_away(at, *stroke) for stroke in strokes]
            nearest = gaps.index(min(gaps))
            if nearest in chances or gaps.count(min(gaps)) > 1:
                raise NotExact("a probability does not stand by one branch")
            chances[nearest] = to_sympy(mark.content)
    ways = []
    for place, (start, tip) in enumerate(strokes):
        label = min(outcomes, key=lambda mark: _gap(_place(mark.at), tip))
        if _gap(_place(label.at), tip) > 1:
            raise NotExact("no outcome stands at the end of a branch")
        ways.append(_Way(start, tip, str(label.content).casefold(), chances.get(place)))
    return ways


def _sets(drawing: Drawing) -> dict[str, dict[str, Any]]:
    """Return the probabilities after each outcome, and first those after nothing."""
    ways = _ways(drawing)
    root = min(way.start.x for way in ways)
    first = [way for way in ways if way.start.x == root]
    found: dict[str, dict[str, Any]] = {}
    for way in ways:
        before = ""
        if way.start.x != root:
            before = next((branch.outcome for branch in first if branch.tip.y == way.start.y), "?")
        found.setdefault(before, {})[way.outcome] = way.chance
    if "?" in found or any(way.start != first[0].start for way in first):
        raise NotExact("a branch begins at no outcome")
    for chances in found.values():
        lacking = [name for name, chance in chances.items() if chance is None]
        rest = 1 - sum(chance for chance in chances.values() if chance is not None)
        if len(lacking) > 1 or (not lacking and rest) or rest < 0:
            raise NotExact("the branches from one place do not come to 1")
    return found


def _value(chances: dict[str, Any], outcome: str) -> Any:
    if outcome not in chances:
        raise NotExact("the drawing does not show it")
    if chances[outcome] is None:
        return 1 - sum(chance for chance in chances.values() if chance is not None)
    return chances[outcome]


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    sets = _sets(drawing)
    if reading == Reading("missing"):
        lacking = [
            (chances, name)
            for chances in sets.values()
            for name, chance in chances.items()
            if chance is None
        ]
        if len(lacking) == 1:
            return number_tree(_value(*lacking[0]))
    elif reading.name == "probability" and reading.of:
        first, *rest = (name.casefold() for name in reading.of)
        total = _value(sets[""], first)
        for second in rest:
            total *= _value(sets.get(first, {}), second)
        return number_tree(total)
    raise NotExact("the drawing does not show it")


MEASURING = Measuring(_measure)
